"""Opening times between rows and beyond, and the heat that comes through."""

import pytest

from engine.conductors.sizes import read_size
from engine.conductors.withstand import limit
from engine.finding import Verdict
from engine.problem import Problem
from engine.protection.clearing import band, let_through, withstands
from engine.protection.motor import judge_stall, stalled_current
from engine.units import Amp


@pytest.mark.parametrize(
    ("times", "found"),
    [
        (0.5, (360000, None)),
        (1.2, (0.75, None)),
        (1.35, (0.75, 600)),
        (1.5, (0.25, 600)),
        (6.0, (0.02, 0.1)),
        (7.0, (0, 0.1)),
    ],
)
def test_rows_on_either_side_bound_a_blade(times, found):
    assert band("blade", times) == found


@pytest.mark.parametrize("series", ["terminal-mount", "plate", "magnetic breaker"])
def test_no_times_are_known(series):
    assert band(series, 2.0) is None
    assert let_through(series, Amp(100.0), Amp(5000.0)) is None


@pytest.mark.parametrize(
    ("series", "rating", "fault", "most"),
    [
        ("blade", 10, 15, None),
        ("blade", 10, 20, 20**2 * 5),
        ("blade", 10, 34, 20**2 * 5),
        ("blade", 10, 35, 35**2 * 0.5),
        ("blade", 10, 1000, 60**2 * 0.1),
        ("bolt-down large", 200, 600, None),
        ("bolt-down large", 200, 700, 700**2 * 5),
        ("bolt-down large", 200, 5000, 1200**2 * 1),
        ("class T", 200, 9000, None),
    ],
)
def test_the_heat_let_through_by_hand(series, rating, fault, most):
    """(multiple × rating)² × the row's most time, for rows that open within 5 s."""
    found = let_through(series, Amp(rating), Amp(fault))
    assert found == (None if most is None else pytest.approx(most))


def test_a_conductor_and_its_fuse():
    """18 AWG bears (87.57 × 0.823)² = 5194 A²s; a blade of 30 A lets through up to 3240."""
    bears = limit(read_size("18 AWG"))
    assert bears == pytest.approx(5194, rel=0.001)
    through = let_through("blade", Amp(30.0), Amp(2000.0))
    assert through == pytest.approx(3240)
    assert withstands(bears, through).verdict is Verdict.FINE
    more = let_through("blade", Amp(40.0), Amp(2000.0))
    assert withstands(bears, more).verdict is Verdict.SHOULD
    unknown = withstands(bears, None)
    assert unknown.verdict is Verdict.CANNOT_SAY
    assert "5190 A²s" in unknown.words


@pytest.mark.parametrize(
    ("ask", "numbers"),
    [
        (band, ("blade", 0.0)),
        (let_through, ("blade", 0.0, 100.0)),
        (let_through, ("blade", 10.0, -1.0)),
        (judge_stall, (5.0, 0.0)),
        (stalled_current, (12.0, 0.0, 0.1, 0.0)),
        (stalled_current, (12.0, 14.0, -0.1, 0.0)),
    ],
)
def test_what_cannot_be_is_refused(ask, numbers):
    with pytest.raises(Problem) as raised:
        ask(*numbers)
    assert raised.value.mend
