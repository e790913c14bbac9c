"""The Bank page: its order, its warnings, and every field within reach."""

import pytest

from engine.plan.document import shaped
from engine.plan.start_fields import BANK_MORE, START
from tests.views.boats import BOATS

BLOCKS = ["bank-head", "bank-answer", "bank-care", "bank-card", "bank-form", "bank-typical",
          "bank-rates", "bank-sizing", "bank-compare", "bank-rest", "bank-start"]  # fmt: skip


def shown(visit, boat="made up"):
    visit.state.open_own(shaped(BOATS[boat]))
    visit.state.document = {**visit.state.document, "made_up": boat == "made up"}
    visit.go("#energy/bank")
    return visit.screen.at("page")


def test_the_answer_stands_first_and_the_rest_in_its_order(visit):
    page = shown(visit)
    idents = [str(one.attributes.get("id", "")) for one in page.every()]
    assert [one for one in idents if one in BLOCKS] == BLOCKS
    answer = page.at("bank-answer").text
    assert "221 Ah of 276" in answer
    assert "1.5 days" in answer


@pytest.mark.parametrize("boat", ["made up", "empty"])
def test_every_field_can_be_reached(visit, boat):
    page = shown(visit, boat)
    for name in BANK_MORE:
        if boat == "made up" or name not in {"days_wanted", "daily_depth", "end_of_life", "margin"}:
            assert page.at(f"f-bank-{name}")
    visit.set("start.joined", "relay")
    assert visit.screen.at("f-start-parts")
    visit.set("start.joined", "converter")
    for name in set(START) - {"parts"}:
        assert visit.screen.at(f"f-start-{name}")


def test_a_lithium_bank_is_warned_of_its_volts_and_lead_is_not(visit):
    page = shown(visit)
    assert "never read its charge from the volts" in page.at("bank-rest").text
    assert "volts tell nothing here" in page.at("bank-rest").text
    visit.set("bank.chemistry", "agm")
    rest = visit.screen.at("bank-rest").text
    assert "volts tell nothing here" not in rest
    assert "ested two hours" in rest


def test_the_warning_of_lithium_stands_where_lithium_may_be_chosen(visit):
    shown(visit)
    visit.set("bank.chemistry", "agm")
    assert "Lithium is a system" in visit.screen.at("bank-compare").text


def test_a_join_that_flattens_both_is_said_at_once_and_can_be_undone(visit):
    shown(visit)
    visit.set("start.joined", "selector")
    visit.set("start.parts", "no")
    assert "the engine does not start" in visit.screen.at("bank-start").text
    visit.go("#home/findings")
    links = [one.attributes["href"] for one in visit.screen.at("page").named("a")]
    assert "#energy/bank" in links


def test_as_found_beside_planned(visit):
    text = shown(visit).at("bank-compare").text
    assert "As found" in text
    assert "466 Ah" in text


def test_a_bank_too_small_says_so(visit):
    shown(visit)
    visit.set("bank.days_wanted", "9")
    assert "Too small" in visit.screen.at("bank-sizing").text
    visit.set("bank.health", "50 %")
    assert "counts as" in visit.screen.at("bank-sizing").text


@pytest.mark.parametrize(
    ("series", "strings", "words"),
    [("6 V", "1", "2 batteries in series"), ("12 V", "2", "2 batteries side by side"),
     ("6 V", "2", "4 batteries, each 6 V 140 Ah: 2 in series")],
)  # fmt: skip
def test_batteries_in_series_and_side_by_side_are_told_apart(visit, series, strings, words):
    shown(visit)
    visit.set("bank.battery_volts", series)
    visit.set("bank.strings", strings)
    assert words in visit.screen.at("bank-card").text


def test_a_frozen_lithium_bank_takes_no_current_and_says_why(visit):
    shown(visit)
    visit.set("bank.temperature", "-4 degC")
    text = visit.screen.at("bank-card").text
    assert "cannot be charged" in text
    assert "none" in text


def test_one_day_is_one_day(visit):
    text = shown(visit).at("bank-sizing").text
    assert "1 days" not in text
    assert "1 day at anchor without charging asks for" in text


def test_what_is_lacking_is_named(visit):
    shown(visit, "empty")
    visit.set("bank.capacity", "220")
    assert "Enter its chemistry" in visit.screen.at("bank-answer").text
    visit.set("bank.chemistry", "agm")
    visit.set("bank.capacity", "0")
    assert "Enter its capacity" in visit.screen.at("bank-answer").text
    assert "must be above 0" in visit.screen.at("bank-form").text


def test_lead_carries_no_note_of_lithium(visit):
    shown(visit)
    visit.set("bank.chemistry", "flooded")
    typical = visit.screen.at("bank-typical").text
    assert "Inner resistance" in typical
    assert "protection board" not in typical
    assert "lithium plates" not in typical


def test_a_worn_bank_is_worded_and_a_rested_pack_shows_more(visit):
    shown(visit)
    visit.set("bank.health", "61 %")
    rates = visit.screen.at("bank-rates").text.replace("\u00a0", " ")
    assert "Now, health 61 %" in rates
    assert "the same amperes are a faster discharge for it" in rates
    assert "a rested pack shows 0.05 to 0.1 V more" in visit.screen.at("bank-rest").text.replace(
        "\u00a0", " ")  # fmt: skip
    visit.set("bank.chemistry", "flooded")
    assert "rested pack" not in visit.screen.at("bank-rest").text


def test_ampere_hours_name_their_volts_and_stay_in_ah(visit):
    page = shown(visit)
    assert "are at the system's 12 V." in page.at("bank-card").text.replace("\u00a0", " ")
    visit.set("settings.charge", "Wh")
    card = visit.screen.at("bank-card").text.replace("\u00a0", " ")
    assert "Charge stays in ampere-hours on this page." in card
