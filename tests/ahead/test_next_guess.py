"""Measure this next. JCGM 100:2008 (GUM), 5.1.2: independent doubts add by their squares."""

import pytest

from engine.ahead.compare import FAR, Figures
from engine.ahead.next_guess import Guess, guesses_of, next_guess
from engine.check.doubts import doubts_of
from engine.plan.edit import with_value
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.units import Hour, Share
from tests.ahead.plans import median, read, small

BOAT = made_up_document()


def found_in(document):
    return next_guess(guesses_of(read(document), "anchor"))


def told(part, engine=0.0):
    return Figures(part, part, Hour(engine), 0.0, Share(0.5), has_engine=True)


def guess(path, low, high, engine=(0.0, 0.0)):
    return Guess(path, path, "estimate", told(low, engine[0]), told(high, engine[1]))


def test_spreads_of_three_and_four_days_make_five():
    """GUM 5.1.2, and the oldest right triangle there is."""
    found = next_guess([guess("a", 2.0, 5.0), guess("b", 6.0, 2.0)])
    assert [one.path for one in found.guesses] == ["b", "a"]
    assert found.spread == pytest.approx(5)
    assert found.without(found.guesses[0]) == pytest.approx(3)
    assert found.without(found.guesses[1]) == pytest.approx(4)


def test_more_days_than_are_looked_at_count_as_those_looked_at():
    assert guess("a", None, 5.0).days == (5.0, FAR)


def test_equal_days_stand_in_order_of_engine_hours():
    found = next_guess([guess("a", 3.0, 3.0, (1.0, 2.0)), guess("b", 3.0, 3.0, (5.0, 1.0))])
    assert [one.path for one in found.guesses] == ["b", "a"]
    assert found.guesses[0].engine == (1.0, 5.0)


def test_a_plan_without_guesses_has_nothing_to_measure():
    assert found_in(small()).guesses == ()
    assert found_in(small()).spread == 0


def test_one_load_by_hand():
    """By hand: 192 Ah over the day's use at 3 A and at 5 A."""
    document = small("4 A (3 to 5)")
    (only,) = found_in(document).guesses
    assert (only.path, only.known_by) == ("loads.L01.draw", "estimate")
    expected = [192 / median(small(f"{amps} A")) for amps in (5, 3)]
    assert only.days == pytest.approx(expected, rel=1e-9)


def test_a_bank_nobody_tested_is_60_to_100_percent():
    """By hand: 0.6 of 192 Ah, and all of it."""
    document = with_value(small(), "bank.age", "")
    (only,) = found_in(document).guesses
    assert (only.path, only.known_by) == ("bank.health", "unknown")
    whole = 192 / median(small())
    assert only.days == pytest.approx((0.6 * whole, whole), rel=1e-9)


def test_the_fridges_duty_is_what_to_measure_on_the_made_up_boat():
    """The design says it ran 52 % where 40 % was planned, and that this explains nearly all."""
    found = found_in(BOAT)
    assert found.guesses[0].path == "loads.L11.duty"
    assert found.guesses[0].known_by == "estimate"


def test_shade_an_unread_alternator_and_the_wind_are_guesses_too():
    old = {one.path for one in found_in(made_up_document(AS_FOUND)).guesses}
    assert {"sources.S02.overall", "sources.S01.read"} <= old
    measured = with_value(made_up_document(AS_FOUND), "sources.S02.overall", "50 %")
    measured = with_value(measured, "sources.S01.read", "40 A")
    paths = {one.path for one in found_in(measured).guesses}
    assert not {"sources.S02.overall", "sources.S01.read"} & paths
    windy = with_value(BOAT, "sources.S04.counted", "yes")
    windy = with_value(windy, "sources.S04.wind_speed", "6 m/s")
    assert "sources.S04.wind_speed" in {one.path for one in found_in(windy).guesses}


def test_what_cannot_be_run_has_no_guesses():
    assert found_in({"format": 1, "boat": {}}).guesses == ()
    unheard = with_value(small(), "boat.month", "")
    assert found_in(unheard).guesses == ()


def test_a_guess_that_moves_nothing_worth_a_word_is_left_out():
    """Of 0.01 A either way at 4 A: 192 Ah last 0.005 of two days more or less, and no engine."""
    assert found_in(small("4 A (3.99 to 4.01)")).guesses == ()


def test_a_measured_draw_says_nothing_of_hours_and_duty():
    loads = [{"id": "L01", "name": "Fridge", "draw": "4 A (3.5 to 4.5)", "draw_by": "measured",
              "hours_anchor": "24 h (20 to 24)", "duty": "50 % (40 to 60)"}]  # fmt: skip
    known = {one.path: one.known_by for one in found_in(small(loads=loads)).guesses}
    assert known == {
        "loads.L01.draw": "measured",
        "loads.L01.hours_anchor": "estimate",
        "loads.L01.duty": "estimate",
    }
    found = {one.part: one.known_by for one in doubts_of(read(small(loads=loads)), "anchor", 9)}
    assert found == {"draw": "measured", "hours": "estimate", "duty": "estimate"}
