"""Every AC page carries both danger lines first, and none tells an owner how to work on it."""

import re

import pytest

from engine.check.shore import shore_asked
from engine.plan.document import shaped
from engine.plan.read import plan_of
from engine.plan.shore_fields import AC, SHORE
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from tests.views.boats import BOATS

AC_PAGES = ("#wiring/shore", "#wiring/shore/A01", "#wiring/shore/A99", "#wiring/shore/licensed")
HOW_TO = re.compile(
    r"\b(?:unscrew|screwdriver|probe|multimeter|voltmeter|strip the|bypass|jumper|reset the|"
    r"clamp (?:on|round)|touch the|open the (?:panel|cover)|remove the cover|"
    r"set (?:your|the) meter)",
    re.IGNORECASE,
)


def shown(visit, boat, route):
    visit.state.open_own(shaped(BOATS[boat]))
    visit.go(route)
    return visit.screen.at("page")


@pytest.mark.parametrize("boat", BOATS)
@pytest.mark.parametrize("route", AC_PAGES)
def test_both_danger_lines_stand_first(visit, boat, route):
    page = shown(visit, boat, route)
    text = page.text
    for line in (CAUTION, SWIM_CAUTION):
        assert line in text
    first = next(one for one in page.every() if one.name in {"table", "svg", "input", "select"}
                 or one.attributes.get("class") == "answer") if page.named(
        "table", "svg", "input", "select") else None  # fmt: skip
    every = list(page.every())
    dangers = [one for one in every if "danger" in str(one.attributes.get("class"))]
    assert len(dangers) == 2
    if first is not None:
        assert max(every.index(one) for one in dangers) < every.index(first)


@pytest.mark.parametrize("route", [*AC_PAGES, "#wiring/inverter"])
def test_no_page_tells_how_to_work_on_live_conductors(visit, route):
    text = shown(visit, "made up", route).text
    assert not HOW_TO.search(text)
    assert CAUTION in text


@pytest.mark.parametrize("boat", BOATS)
def test_no_question_tells_how_to_work_on_live_conductors(boat):
    for asked in shore_asked(plan_of(shaped(BOATS[boat]))):
        for part in asked.parts:
            assert not HOW_TO.search(f"{part.words} {part.mend}")


def test_the_words_that_tell_how_would_be_seen():
    assert HOW_TO.search("Open the panel and touch the probe to it")


@pytest.mark.parametrize("boat", ["made up", "empty"])
def test_every_field_can_be_reached(visit, boat):
    shown(visit, boat, "#wiring/shore")
    for name in SHORE:
        assert visit.screen.at(f"f-shore-{name}")


def test_every_field_of_a_circuit_can_be_reached(visit):
    shown(visit, "made up", "#wiring/shore/A03")
    for name in AC:
        assert visit.screen.at(f"f-ac-A03-{name}")


def test_the_sheet_has_a_foot_and_room_to_write(visit):
    page = shown(visit, "made up", "#wiring/shore/licensed")
    feet = [one for one in page.every() if "print-foot" in str(one.attributes.get("class"))]
    assert len(feet) == 1
    assert "Prepared by" in feet[0].text
    assert "Licence: ____" in page.text


def test_the_strip_names_every_protection_in_order(visit):
    page = shown(visit, "made up", "#wiring/shore")
    title = page.named("svg")
    words = next(one.named("title")[0].text for one in title
                 if "From dock to panel" in one.named("title")[0].text)  # fmt: skip
    places = [words.index(one) for one in ("dock,", "inlet,", "main,", "leakage trip,", "panel,")]
    assert places == sorted(places)
