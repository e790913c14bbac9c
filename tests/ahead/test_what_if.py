"""The long work behind a comparison, in slices."""

import pytest

from engine.ahead.what_if import CHANGE_RUNS, COLUMN_RUNS, reckoned
from engine.plan.edit import with_value
from engine.plan.made_up import made_up_document
from engine.simulate.chance import chances
from tests.ahead.plans import ahead, read, small

BOAT = made_up_document()


@pytest.fixture(scope="module")
def whole():
    """Return every step of the made-up boat's comparison."""
    return list(reckoned(BOAT, "anchor"))


def test_the_share_done_rises_to_one_and_only_the_last_is_done(whole):
    shares = [one.share for one in whole]
    assert shares == sorted(shares)
    assert [one.done for one in whole].index(True) == len(whole) - 1
    assert whole[-1].share == 1
    assert whole[-1].next_guess.guesses


def test_slices_change_no_figure(whole):
    *_, other = reckoned(BOAT, "anchor", every=37)
    assert other == whole[-1]


def test_a_columns_chances_are_those_of_its_plan_alone(whole):
    *_, alone = chances(ahead(read(BOAT)), COLUMN_RUNS)
    assert whole[-1].chance_of("") == alone
    assert whole[-1].chance_of("V99") is None


def within_5(found, ident):
    return found.chance_of(ident).needed_by(5)


def test_the_lesson_of_the_made_up_boat(whole):
    """The design's table of variants: a third panel beats all, and to leave the watermaker off is
    worth as much as the turbine; the larger lead bank is no better than the plan."""
    last = whole[-1]
    plan, wind, water, panel = (within_5(last, ident) for ident in ("", "V01", "V02", "V03"))
    assert panel < water <= wind < plan
    lead = with_value(with_value(BOAT, "variants.V01.shown", "no"), "variants.V04.shown", "yes")
    *_, other = reckoned(lead, "anchor")
    assert within_5(other, "V04") >= plan
    gains = {single.name: gained for single, gained in last.gains}
    assert gains["100 W more panel"].days > gains["100 Ah more bank"].days
    assert gains["Watermaker, 30 L/h off"].days >= gains["S04 wind turbine counted"].days


def test_a_plan_that_cannot_be_run_asks_for_no_work():
    assert list(reckoned({"format": 1, "boat": {}}, "anchor")) == []
    assert list(reckoned(with_value(small(), "bank.capacity", ""), "anchor")) == []


def test_a_change_that_cannot_be_made_is_left_out_of_the_ranking():
    full = small(sources=[{"id": f"S{n:02d}", "kind": "shore"} for n in range(1, 51)])
    *_, last = reckoned(full, "anchor")
    names = [single.name for single, _ in last.gains]
    assert "a 100 W panel" not in names
    assert "100 Ah more bank" in names
    assert last.asked >= CHANGE_RUNS
