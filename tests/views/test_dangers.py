"""Whatever shows alternating current carries the danger line, and shore power the swimmer's too.

What counts as showing it is read from the page itself, so that a new page cannot be forgotten.
"""

import re

import pytest

from engine.check.findings import findings_of
from engine.check.shore_gravest import LOOKS
from engine.plan.document import shaped
from engine.plan.read import plan_of
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from engine.shore.generator import EXHAUST_CAUTION
from engine.sums import SUMS
from engine.sums.sum import answered
from engine.views.page import NAMED, PAGES
from tests.views.boats import BOATS, ROUTES

AC_WORDS = re.compile(
    r"\bAC\b|\bshore (?:power|service|inlet|cord)\b|\bleakage\b|\b(?:120|230) V\b"
)
SHORE_WORDS = re.compile(r"\bshore (?:power|inlet|cord)\b|\bdock breaker\b")
SUM_WORDS = re.compile(r"\b(?:AC|shore|dock|inverter|generator)\b", re.IGNORECASE)
SWIM_WORDS = re.compile(r"\b(?:shore|dock)\b|code letter", re.IGNORECASE)
LINKS_ONLY = {"home-sums", "sum-others", "notice", "load-beside", "ac-beside"}
"""Blocks that only lead to other pages."""
ALWAYS = ("#wiring/shore", "#wiring/shore/A01", "#wiring/shore/licensed", "#wiring/inverter",
          "#proving", "#papers", "#start/answer")  # fmt: skip


def shown(visit, boat, route):
    visit.state.open_own(shaped(BOATS[boat]))
    visit.state.document = {**visit.state.document, "made_up": boat == "made up"}
    visit.go(route)
    return visit.screen.at("page")


def said_by(page):
    """Return the text of a page without cautions, forms' choices, and links to elsewhere."""
    if isinstance(page, str):
        return page
    attributes = page.attributes
    if (
        str(attributes.get("class")).split()[0] in {"caution", "help", "banner"}
        or attributes.get("id") in LINKS_ONLY
        or page.name in {"select", "a", "button", "summary", "label"}
    ):
        return ""
    return " ".join(said_by(one) for one in page.inside)


@pytest.mark.parametrize("boat", BOATS)
@pytest.mark.parametrize("route", ROUTES)
def test_a_page_that_shows_ac_carries_the_danger_line(visit, boat, route):
    page = shown(visit, boat, route)
    text = said_by(page)
    if route in ALWAYS or AC_WORDS.search(text):
        assert CAUTION in page.text, AC_WORDS.findall(text)
    if SHORE_WORDS.search(text):
        assert SWIM_CAUTION in page.text, SHORE_WORDS.findall(text)


def test_every_page_is_walked():
    """A page that is added must be added to the walk."""
    walked = {tuple(f"{one.lstrip('#').partition('?')[0]}//".split("/")[:2]) for one in ROUTES}
    assert {one for one in PAGES if one[1]} <= walked
    assert set(NAMED) <= {section for section, _ in walked}


@pytest.mark.parametrize("name", SUMS)
def test_a_sum_about_ac_warns_before_there_is_a_result(visit, name):
    one = SUMS[name]
    words = " ".join([one.title, one.asks, *(f"{f.label} {f.help}" for f in one.fields)])
    visit.go(f"#sum/{name}")
    page = visit.screen.at("page")
    assert (CAUTION in page.text) == bool(SUM_WORDS.search(words))
    assert (SWIM_CAUTION in page.text) == bool(SWIM_WORDS.search(words))
    told = answered(one, {})["cautions"]
    assert (CAUTION in told) == (CAUTION in page.text)
    assert (SWIM_CAUTION in told) == (SWIM_CAUTION in page.text)
    assert one.asks in page.text


@pytest.mark.parametrize("query", ["service=30+A&loads=kettle+1000+W", "service=30+A&loads="])
def test_a_sum_warns_once(visit, query):
    visit.go(f"#sum/shore-load?{query}")
    text = visit.screen.at("page").text
    assert text.count(CAUTION) == text.count(SWIM_CAUTION) == 1


@pytest.mark.parametrize("boat", BOATS)
@pytest.mark.parametrize("route", ["#home", "#home/findings"])
def test_findings_about_ac_stand_under_the_danger_line(visit, boat, route):
    page = shown(visit, boat, route)
    plan = plan_of(shaped(BOATS[boat]))
    found = [one for one in findings_of(plan) if one.severity.value != "note"]
    found = found[:4] if route == "#home" else found
    near = any(
        one.where.partition(".")[0] in {"shore", "ac", "records"} or one.where in LOOKS
        for one in found
    )
    assert (SWIM_CAUTION in page.text) == near
    every = list(page.every())
    for danger in [one for one in every if "danger" in str(one.attributes.get("class"))]:
        row = next(one for one in every if one.attributes.get("class") == "list")
        assert every.index(danger) < every.index(row)


def test_a_sums_verdict_keeps_its_shape_and_says_what_it_is_about(visit):
    visit.go("#sum/shore-load?service=30+A&loads=kettle+2000+W,+heater+2000+W")
    answer = visit.screen.at("sum-answer")
    assert "verdict on the load alone" in answer.text
    shapes = [one.attributes["class"] for one in answer.named("span")
              if "verdict" in str(one.attributes.get("class"))]  # fmt: skip
    assert shapes == ["verdict stop"]


def test_a_motors_horsepower_is_asked_in_horsepower(visit):
    visit.go("#sum/motor-start?horsepower=0.5&code=L")
    form = visit.screen.at("sum-form").text
    assert "Horsepower (hp)" in form
    assert "Watts at the shaft (W)" in form
    names = [one.text for one in visit.screen.at("sum-answer").named("dt")]
    assert len(names) == len(set(names))


def test_what_only_should_be_mended_is_no_stop_sign(visit):
    document = {**BOATS["empty"], "looks": {"isolator": "no", "inlet": "yes"}}
    visit.state.open_own(shaped(document))
    visit.go("#home/findings")
    shapes = {one.text: one.attributes["class"] for one in visit.screen.at("findings").named("span")
              if "verdict" in str(one.attributes.get("class"))}  # fmt: skip
    assert shapes == {"Stop now": "verdict stop", "Should": "verdict care"}


@pytest.mark.parametrize("name", SUMS)
def test_what_a_generator_burns_is_told_under_its_exhaust(visit, name):
    visit.go(f"#sum/{name}")
    assert (EXHAUST_CAUTION in visit.screen.at("page").text) == (name == "generator-fuel")
    assert (EXHAUST_CAUTION in answered(SUMS[name], {})["cautions"]) == (name == "generator-fuel")
