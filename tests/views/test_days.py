"""The Days ahead page: the answer first, every run on request, and words for what cannot be."""

import pytest

from engine.plan.document import new_document
from tests.views.test_pages import check

HERE = "#energy/ahead"


@pytest.fixture
def page(visit):
    """Return a visit to the made-up boat's days ahead."""
    visit.go(HERE)
    return visit


def text(visit, ident="page"):
    return visit.screen.at(ident).text.replace("\u00a0", " ")


def until_done(visit):
    while visit.reply.get("more"):
        visit.send({"kind": "more", "steps": 10})


def test_the_answer_stands_first_and_is_an_estimate_until_all_runs_are_done(page):
    early = text(page, "days-answer")
    assert "The engine is likely needed for charging about once in " in early
    assert "A first estimate, of 20 runs out of 500." in early
    assert "Stop" in text(page, "days-chance")
    until_done(page)
    assert "A first estimate" not in text(page, "days-answer")
    assert "of 500 runs." in text(page, "days-chance")
    assert "Stop" not in text(page, "days-chance")
    assert "standard error" in text(page, "days-answer")


def test_stopped_runs_keep_what_they_came_to_and_go_on(page):
    page.send({"kind": "more", "steps": 5})  # the first draws the page
    page.do("stop-work")
    assert "of 40 runs out of 500" in text(page, "days-answer")
    assert "Go on with the runs" in text(page, "days-chance")
    page.do("go-on")
    until_done(page)
    assert "A first estimate" not in text(page)


def test_the_same_plan_gives_the_same_page(page):
    until_done(page)
    first = text(page)
    page.go("#wiring")
    page.go(HERE)
    until_done(page)
    assert text(page) == first


def test_how_far_and_under_what_sky(page):
    assert "Day 14" in text(page, "days-each")
    page.set("show.days", "7")
    assert "Day 8" not in text(page, "days-each")
    page.set("show.sky", "dull")
    assert "The engine runs" in text(page, "days-each")
    assert "The charge, dull sky" in text(page, "days-curve")
    page.set("show.sky", "mixed")
    assert "no forecast" in text(page, "days-curve")
    page.set("show.days", "30")
    assert "Day 30" in text(page, "days-each")
    for path, text_ in (("show.days", "3000"), ("show.sky", "green")):
        page.set(path, text_)
    assert (page.state.days, page.state.sky) == ("30", "mixed")
    check(page.screen)


def test_the_ledger_closes_on_the_page(page):
    """By hand from the figures shown, in both units, to their rounding."""
    rows = [row.named("td") for row in page.screen.at("days-ledger").named("tr")[1:]]
    for column, off in ((0, 0.3), (1, 3.0)):
        start, sources, engine, out, lost, end = (float(row[column].text) for row in rows[:6])
        assert start + sources + engine - out - lost == pytest.approx(end, abs=off)


def test_the_policy_is_edited_here(page):
    until_done(page)
    before = text(page, "days-skies")
    page.set("policy.engine_on_at", "50 %")
    assert page.document["policy"]["engine_on_at"] == "50 %"
    assert "A first estimate" in text(page, "days-answer")
    assert text(page, "days-skies") != before
    page.set("policy.never", "yes")
    assert "Any charging is first called for" in text(page, "days-answer")
    assert "Engine a week" not in text(page, "days-skies")
    page.set("policy.source", "S99")
    assert "S99, which is not here" in text(page, "days-form")


def test_hours_that_do_not_fit_are_a_problem_with_the_form_below(page):
    for name, hours in (("quiet_from", "1 h"), ("quiet_to", "0.5 h"), ("least_run", "5 h")):
        page.set(f"policy.{name}", hours)
    told = text(page, "days-answer")
    assert "does not fit between quiet hours" in told
    assert "shorten the quiet hours" in told
    assert page.screen.at("f-policy-least_run")
    check(page.screen)


def test_what_is_lacking_is_asked_for_with_its_fields(visit):
    visit.state.open_own(new_document())
    visit.go(HERE)
    assert "Enter the bank's chemistry, a load that runs at anchor" in text(visit)
    for ident in ("f-bank-chemistry", "f-bank-capacity", "f-boat-latitude", "f-boat-month"):
        assert visit.screen.at(ident)
    visit.set("boat.latitude", "95 N")
    assert "f-boat-latitude-p" in str(visit.screen.at("f-boat-latitude").attributes)
    check(visit.screen)


def test_polar_night_and_what_is_not_counted_are_said(page):
    page.set("boat.latitude", "80 N")
    page.set("boat.month", "december")
    assert "There is no sun in that month." in text(page, "days-notes")
    page.set("sources.S01.marked", "")
    assert "is not counted: enter its amperes." in text(page, "days-notes")
    assert "No engine or generator that charges is in the plan." in text(page, "days-form")
    check(page.screen)


def test_home_tells_the_days_ahead_in_a_sentence(visit):
    assert "Sun brings" in text(visit, "home-ahead")
    assert "Engine needed within three days" in text(visit, "home-ahead")
    visit.set("bank.capacity", "")
    assert text(visit, "home-ahead") == ""


def test_home_says_nothing_before_the_rooms_are_here(visit, monkeypatch):
    monkeypatch.setattr("engine.views.home.home.here", lambda: False)
    visit.set("show.condition", "passage")
    assert text(visit, "home-ahead") == ""


def test_quiet_hours_are_typed_as_people_write_them(page):
    page.set("policy.quiet_from", "9 pm")
    page.set("policy.quiet_to", "08:00")
    assert "Read as 21:00" in text(page, "days-form")
    assert "Read as 08:00" not in text(page, "days-form")
    page.set("policy.quiet_from", "25:00")
    assert "“25:00” is no time of the day." in text(page)


def test_where_low_volts_take_the_loads_off_is_told_with_its_source(page):
    why = text(page, "days-answer")
    assert "low volts take off every load that is not essential" in why
    assert "low-voltage disconnect at 20 % of lead, 10 % lithium" in why


def test_with_no_engine_the_chance_is_of_charging(page):
    assert "Chance that the engine is needed" in text(page, "days-chance")
    page.set("show.condition", "unattended")
    assert "Chance that charging is needed" in text(page, "days-chance")
