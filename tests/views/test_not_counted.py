"""What an answer leaves out stands under every lead, and good news waits for it."""

import pytest

from engine.plan.edit import with_row
from engine.plan.made_up import made_up_document

PAGES = {
    "#energy/bank": "bank-answer", "#energy/charging": "charging-answer",
    "#energy/ahead": "days-answer", "#energy/what-if": "whatif-answer",
    "#energy/use": "use-answer", "#home": "home-ahead",
}  # fmt: skip


def text(visit, ident="page"):
    return visit.screen.at(ident).text.replace("\u00a0", " ")


def lacking(**bank):
    """Return the made-up boat with a freezer of which nothing is known."""
    document, _ = with_row(made_up_document(), "loads", {"name": "Freezer", "hours_anchor": "24 h"})
    return {**document, "bank": {**document["bank"], **bank}}


@pytest.mark.parametrize("route", PAGES)
def test_a_load_of_unknown_draw_is_told_under_every_lead(visit, route):
    visit.state.open_own(lacking())
    visit.go(route)
    told = text(visit)
    assert "1 load not known and not counted: Freezer. The true answer is worse." in told


def test_good_news_says_cannot_say_first(visit):
    visit.state.open_own(lacking(capacity="4000 Ah"))
    visit.go("#energy/ahead")
    assert "Cannot say: loads are missing." in text(visit, "days-answer")
    visit.set("sources.S02.watts", "4000 W")
    visit.go("#energy/charging")
    assert text(visit, "charging-answer").index("Cannot say") < text(
        visit, "charging-answer"
    ).index("Likely sun")


def test_a_sun_nobody_can_tell_is_no_sun_of_zero(visit):
    visit.state.open_own(made_up_document())
    visit.set("boat.month", "")
    visit.go("#energy/charging")
    told = text(visit, "charging-answer")
    assert "Cannot say what the sun brings: the month not known" in told
    assert "short by" not in told
    assert "latitude" not in told


@pytest.mark.parametrize("charge", ["", "?"])
def test_an_unstated_charge_is_said_to_be_full(visit, charge):
    visit.state.open_own(lacking(charge=charge))
    visit.go("#energy/ahead")
    assert "from full, as no charge is stated" in text(visit, "days-answer")
    visit.go("#energy/what-if")
    assert "from full, as no charge is stated" in text(visit, "whatif-answer")
    assert "Enter the charge the monitor shows now." in text(visit, "whatif-tonight")
    visit.set("show.tonight.charge", "70 %")
    assert "At 70 % now" in text(visit, "whatif-tonight")


def test_an_engine_started_below_the_reserve_is_told(visit):
    visit.state.open_own(made_up_document())
    visit.set("policy.engine_on_at", "5 %")
    visit.go("#energy/ahead")
    assert "is below the reserve line of" in text(visit, "days-answer")
    assert "is below the reserve line of" in text(visit, "days-form")


def test_work_that_was_stopped_says_so(visit):
    visit.go("#energy/what-if")
    visit.do("stop-work")
    assert "Reckoning" not in text(visit)
    assert "Stopped." in text(visit, "whatif-ranking")


def test_strings_are_whole_and_no_more_than_panels(visit):
    visit.state.open_own(made_up_document())
    visit.set("sources.S02.strings", "9")
    visit.go("#energy/charging")
    assert "9 strings are more than the panels" in text(visit)
    visit.set("sources.S02.strings", "1.5")
    assert "1.5 is no whole number. Enter 2." in text(visit)
