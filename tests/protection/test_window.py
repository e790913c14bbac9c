"""The fuse window, by hand: load over 0.8 to what the conductor carries."""

import pytest

from engine.finding import Verdict
from engine.protection.series import SERIES, ratings_of, smallest_in
from engine.protection.window import (
    HOLDS,
    LAW,
    PROTECTS,
    Window,
    judge,
    limit_by_law,
    window,
)
from engine.units import Amp


def test_a_load_of_hours_takes_four_fifths():
    """16 A / 0.8 = 20 A; a windlass of 80 A runs for minutes."""
    assert window(Amp(16.0), Amp(51.0)) == Window(Amp(20.0), Amp(51.0))
    assert window(Amp(80.0), Amp(120.0), continuous=False) == Window(Amp(80.0), Amp(120.0))


def test_a_rating_inside_its_window():
    found = judge(Amp(30.0), Window(Amp(20.0), Amp(51.0)))
    assert (found.verdict, found.mend) == (Verdict.FINE, "")
    assert found.words == "30 A lies within 20 A to 51 A."


@pytest.mark.parametrize("rating", [20.0, 51.0])
def test_the_ends_belong_to_the_window(rating):
    assert judge(Amp(rating), Window(Amp(20.0), Amp(51.0))).verdict is Verdict.FINE


def test_a_rating_below_the_load_should_be_larger():
    found = judge(Amp(15.0), Window(Amp(20.0), Amp(51.0)))
    assert (found.verdict, found.rule, found.mend) == (Verdict.SHOULD, HOLDS, "Use 20 A to 51 A.")
    assert "it will open in use" in found.words


def test_a_rating_above_the_conductor_stops():
    found = judge(Amp(60.0), Window(Amp(20.0), Amp(51.0)))
    assert (found.verdict, found.rule, found.mend) == (Verdict.STOP, PROTECTS, "Use 20 A to 51 A.")
    assert "the 51 A the conductor carries" in found.words


@pytest.mark.parametrize(
    ("rating", "verdict"), [(40.0, Verdict.SHOULD), (60.0, Verdict.STOP), (52.0, Verdict.STOP)]
)
def test_an_empty_window_says_that_the_conductor_is_too_thin(rating, verdict):
    narrow = Window(Amp(60.0), Amp(51.0))
    assert narrow.empty
    found = judge(Amp(rating), narrow)
    assert found.verdict is verdict
    assert "too thin for its load: it carries 51 A." in found.words
    assert "carries at least 60 A" in found.mend


def test_parallel_conductors_carry_together():
    """Two of 51 A carry 102 A behind one protection."""
    narrow = Window(Amp(60.0), Amp(51.0))
    assert judge(Amp(80.0), narrow, parallel=2).verdict is Verdict.FINE
    assert judge(Amp(110.0), narrow, parallel=2).verdict is Verdict.STOP


def test_the_law_is_looser_and_shown_apart():
    """33 CFR 183.455(c)(1): 150 % of the printed 60 A."""
    assert limit_by_law(Amp(60.0)) == 90.0
    assert not LAW.source.typical
    assert PROTECTS.source.typical


@pytest.mark.parametrize("name", SERIES)
def test_a_series_runs_small_to_large_and_is_typical(name):
    ratings = ratings_of(name)
    assert list(ratings) == sorted(set(ratings))
    assert SERIES[name].source.typical


def test_the_smallest_that_fits():
    assert smallest_in(Window(Amp(17.5), Amp(25.0)), "blade") == 20.0
    assert smallest_in(Window(Amp(5.75), Amp(20.0)), "blade") == 7.5
    assert smallest_in(Window(Amp(31.0), Amp(60.0)), "blade") is None
    assert smallest_in(Window(Amp(177.5), Amp(285.0)), "class T") == 200.0
    assert smallest_in(Window(Amp(16.0), Amp(19.0)), "magnetic breaker") is None
