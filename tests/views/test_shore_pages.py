"""Every AC page carries both danger lines first, and none tells an owner how to work on it."""

import re
from copy import deepcopy

import pytest

from engine.check.shore import shore_asked
from engine.finding import Verdict
from engine.plan.document import new_document, shaped
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.plan.shore_fields import AC, DRAWN, SHORE
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from engine.shore.generator import EXHAUST_CAUTION
from engine.views.papers.papers import moment
from engine.views.parts.asked import Questions, Row, asked_part
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
    dangers = [one for one in every if "danger" in str(one.attributes.get("class"))
               and one.attributes["id"] != "caution-generator"]  # fmt: skip
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
    for name in ("Name", "Licence", "Signed", "Date"):
        assert f"{name}: ____" in page.text
    blanks = [one for one in page.every() if one.attributes.get("class") == "blank"]
    assert page.text.count("____") == len(blanks) == 3 * 5 + 4 + 3


def test_the_strip_names_every_protection_in_order(visit):
    page = shown(visit, "made up", "#wiring/shore")
    title = page.named("svg")
    words = next(one.named("title")[0].text for one in title
                 if "From dock to panel" in one.named("title")[0].text)  # fmt: skip
    places = [words.index(one) for one in ("dock,", "inlet,", "main,", "leakage trip,", "panel,")]
    assert places == sorted(places)


def changed(**shore):
    document = deepcopy(made_up_document())
    return {**document, "shore": {**document["shore"], **shore}}


def own(visit, document, route="#wiring/shore"):
    visit.state.open_own(shaped(document))
    visit.go(route)
    return visit.screen.at("page")


def cells(page, label):
    return [one.text for one in page.named("td") if one.attributes.get("data-label") == label]


def test_an_open_question_is_counted_before_any_verdict_that_is_kind(visit):
    page = own(visit, {**new_document(), "shore": {"service": "30 A 120 V"},
                       "looks": {"lead": "no"}})  # fmt: skip
    part = page.at("shore-asked")
    summary = part.named("summary")[0]
    open_ = len(part.at("shore-open").named("li"))
    assert open_ > 5
    assert summary.text.endswith(f"asked, {open_} not known")
    assert "Within limit" not in summary.text
    shapes = [one.attributes["class"] for one in summary.named("span")]
    assert shapes == ["verdict unknown"]


def test_what_is_grave_is_said_beside_what_is_open(visit):
    page = own(visit, {**new_document(), "shore": {"service": "30 A 120 V"},
                       "looks": {"lead": "no", "inlet": "yes"}})  # fmt: skip
    summary = page.at("shore-asked").named("summary")[0].text
    assert re.fullmatch(r"\d+ asked, \d+ not known, the gravest: Stop", summary)


def test_all_is_said_only_where_nothing_is_open():
    row = Row("Load", Verdict.FINE, ())
    whole = str(asked_part(Questions((row,), (), ()), "x"))
    part = str(asked_part(Questions((row,), ("Enter watts.",), ()), "x"))
    assert "1 asked, all:" in whole
    assert "all:" not in part
    assert "not known</span>" in part


def test_what_passes_power_on_abroad_is_no_appliance_to_leave_off(visit):
    page = own(visit, changed(abroad="16 A 230 V")).at("shore-abroad")
    leave_off, passing = (one.text for one in page.named("p") if one.text.startswith("On 16 A"))
    assert leave_off.startswith("On 16 A 230 V, 50 Hz, do not use the kettle, ")
    assert "charger" not in leave_off
    assert "do not feed the charger either: its own plate would do" in passing


@pytest.mark.parametrize("route", ["#wiring/shore", "#wiring/shore/licensed"])
def test_on_a_dock_of_other_volts_no_circuit_has_amperes_or_a_kind_verdict(visit, route):
    page = own(visit, changed(dock="16 A 230 V"), route)
    assert "No shore power is stated yet" not in page.text
    assert "No load is reckoned" in page.text
    assert set(cells(page, "All on") + cells(page, "Planned")) == {"–"}
    part = page.at("shore-circuits" if "licensed" not in route else "licensed-circuits")
    assert set(cells(part, "Verdict")) == {"–", "the main"}


def test_on_a_dock_of_other_volts_a_breaker_too_large_still_says_stop(visit):
    document = changed(dock="16 A 230 V")
    document["ac"][1]["breaker"] = "100 A"
    part = own(visit, document).at("shore-circuits")
    assert cells(part, "Verdict")[1] == "Stop"


def test_before_a_service_is_chosen_no_circuit_has_amperes(visit):
    page = own(visit, {**new_document(), "ac": [{"id": "A01", "appliances": "kettle 1000 W"}]})
    assert cells(page, "All on") == ["–"]


def test_the_sheet_tells_a_conductors_insulation_and_bundle_and_what_breakers_interrupt(visit):
    document = changed(main_interrupting="5000 A", branch_interrupting="")
    document["ac"][0] |= {"insulation": "", "bundle": ""}
    document["ac"][1] |= {"insulation": "105 degC", "bundle": "4"}
    page = own(visit, document, "#wiring/shore/licensed").at("licensed-circuits")
    labels = [one.text for one in page.named("thead")[0].named("th")]
    for one in ("Interrupts", "Insulation", "Bundle", "All on", "Planned"):
        assert one in labels
    assert "Current" not in labels
    assert cells(page, "Interrupts") == ["5000 A", *["not known"] * 5]
    assert cells(page, "Insulation")[:2] == ["not known", "105 °C"]
    assert cells(page, "Bundle")[:2] == ["not known", "4"]
    assert cells(page, "All on")[5] != cells(page, "Planned")[5]


@pytest.mark.parametrize(
    "name", ["size", "insulation", "bundle"]
)  # fmt: skip
def test_no_help_sends_an_owner_behind_the_panel(name):
    assert AC[name].help.endswith(DRAWN)


@pytest.mark.parametrize(
    "name", ["feed_length", "feed_size", "main_interrupting", "branch_interrupting"]
)
def test_nor_to_the_back_of_the_inlet(name):
    assert SHORE[name].help.endswith(DRAWN)
    assert "open nothing" in DRAWN


@pytest.mark.parametrize("facts", [{"generator_rating": "6 kW"}, {"generator_bond": "own"}])
def test_where_an_ac_generator_stands_its_exhaust_is_a_danger(visit, facts):
    part = own(visit, changed(**facts)).at("shore-generator")
    assert EXHAUST_CAUTION in part.text
    assert "All that is planned asks for" in part.text
    assert EXHAUST_CAUTION not in own(visit, made_up_document()).text


def test_a_generator_is_told_of_without_an_inverter(visit):
    document = {**new_document(), "shore": {"service": "30 A 120 V", "generator_rating": "3 kW"},
                "ac": [{"id": "A01", "appliances": "kettle 1000 W"}]}  # fmt: skip
    assert "the generator has 3000" in own(visit, document).at("shore-generator").text


def test_a_plans_saved_time_is_one_that_people_read(visit):
    kept = [{"id": "plan-2", "name": "Tern", "saved": "2026-11-28T07:20:07.554Z"}]
    visit.open(route="#papers", plans=kept)
    assert cells(visit.screen.at("papers-plans"), "Saved") == ["28 November 2026, 07:20 UTC"]


@pytest.mark.parametrize("stamp", ["9:00", "", "2026-13-28T07:20:07Z", "2026-11-28"])
def test_a_stamp_that_is_none_is_shown_as_it_came(stamp):
    assert moment(stamp) == stamp


def test_the_neutral_of_two_legs_on_one_phase_has_a_bar_of_its_own(visit):
    """33 A and 29 A of one phase add in the neutral: 4000 W and 3500 W at 120 V are 62.5 A."""
    document = {
        **new_document(),
        "shore": {"service": "50 A 125/250 V", "one_phase": "yes"},
        "ac": [{"id": "A01", "appliances": "boiler 4000 W", "leg": "1"},
               {"id": "A02", "appliances": "oven 3500 W", "leg": "2"}],
    }  # fmt: skip
    title = own(visit, document).at("shore-load").named("title")[0].text
    assert "the neutral 62.5 A, 125 % of 50 A" in title
    assert "neutral" not in own(visit, made_up_document()).at("shore-load").text


@pytest.mark.parametrize("route", ["#wiring/shore", "#wiring/shore/licensed"])
def test_an_appliance_whose_watts_are_not_known_stays_in_sight(visit, route):
    document = {
        **new_document(),
        "shore": {"service": "30 A 120 V"},
        "ac": [{"id": "A01", "appliances": "kettle 1000 W, toaster"},
               {"id": "A02", "appliances": "iron"}],
    }  # fmt: skip
    page = own(visit, document, route)
    assert "kettle 1000 W" in page.text
    assert "toaster: watts not known" in page.text
    assert cells(page, "All on") == ["at least 8.33 A", "not known"]


def test_what_stands_across_both_legs_shows_what_each_carries(visit):
    """4800 W across 240 V are 20 A, and 40 A across 120 V."""
    document = {
        **new_document(),
        "shore": {"service": "50 A 125/250 V"},
        "ac": [{"id": "A01", "appliances": "boiler 4800 W", "leg": "both"}],
    }
    assert "4800 W, 20 A on each leg" in own(visit, document).at("shore-load").text
