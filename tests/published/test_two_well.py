"""The two-well model against a published library's unit test, its own differential equation, and
rows fitted elsewhere.

NREL SSC, unit test of its two-well battery: q20 = 100, q10 = 93, q1 = 60 Ah, half charged, steps of
one hour. Its fit, on a grid of 0.001, is k = 0.677 /h, c = 0.4751, full = 108.16 Ah.
Fitted rows: wells that give Peukert's capacity at 1, 10 and 20 h, with their error at other rates.
PyBaMM: ampere-hours of a lithium iron phosphate cell by rate (Prada 2013, single particle).
"""

from math import exp

import pytest
from scipy.integrate import solve_ivp

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.two_well import (
    State,
    Wells,
    capacity_at,
    most_charge,
    most_discharge,
    state_at,
    step,
    wells_of,
)
from engine.units import Amp, AmpHour, Hour, PerHour, Share

SSC = Wells(PerHour(0.677), Share(0.4751), AmpHour(108.16))
HOUR = Hour(1.0)


def test_the_library_s_sequence_of_steps():
    """1.5, 3, 490 and 490 A asked for: both wells hold 52.58, 49.58, 22.927 and 16.67 Ah."""
    state, totals, charges = state_at(SSC, Share(0.5)), [], []
    for current in (1.5, 3.0, 490.0, 490.0):
        state, _ = step(SSC, state, Amp(current), HOUR)
        totals.append(state.total)
        charges.append(100 * state.total / SSC.full)
    assert totals == pytest.approx([52.58, 49.58, 22.927, 16.67], abs=0.01)
    assert charges == pytest.approx([48.613, 45.839, 21.19, 15.413], abs=0.01)


def test_the_library_s_two_wells_apart():
    """After 1.5 and 3 A: 22.1211 and 27.4586 Ah. After 30 A: 0.0 and 24.0796 Ah."""
    start = state_at(SSC, Share(0.5))
    first, _ = step(SSC, start, Amp(1.5), HOUR)
    second, _ = step(SSC, first, Amp(3.0), HOUR)
    assert [second.available, second.bound] == pytest.approx([22.1211, 27.4586], abs=0.01)
    emptied, _ = step(SSC, start, Amp(30.0), HOUR)
    assert [emptied.available, emptied.bound] == pytest.approx([0.0, 24.0796], abs=0.01)


@pytest.mark.parametrize(("hours", "given"), [(1.0, 60.0), (10.0, 93.0), (20.0, 100.0)])
def test_the_library_s_ratings_come_out_of_its_fit(hours, given):
    assert capacity_at(SSC, Hour(hours)) == pytest.approx(given, abs=0.05)


@pytest.mark.parametrize(
    ("wells", "start", "current", "hours"),
    [
        (SSC, State(AmpHour(30.0), AmpHour(20.0)), 12.0, 1.5),
        (SSC, State(AmpHour(5.0), AmpHour(50.0)), -20.0, 0.25),
        (SSC, State(AmpHour(45.0), AmpHour(5.0)), 0.0, 30.0),
        (wells_of(CHEMISTRIES["flooded"], AmpHour(440.0)),
         State(AmpHour(200.0), AmpHour(250.0)), 40.0, 3.0),
        (wells_of(CHEMISTRIES["lithium"], AmpHour(280.0)),
         State(AmpHour(100.0), AmpHour(30.0)), -60.0, 0.01),
    ],
)  # fmt: skip
def test_the_closed_form_solves_the_equations(wells, start, current, hours):
    """dq1/dt = −I − k ((1 − c) q1 − c q2) and dq2/dt = k ((1 − c) q1 − c q2), by SciPy."""
    rate, share = wells.rate, wells.share

    def slopes(_time, held):
        seeping = rate * ((1 - share) * held[0] - share * held[1])
        return [-current - seeping, seeping]

    solved = solve_ivp(
        slopes, (0, hours), [start.available, start.bound], "DOP853", rtol=1e-13, atol=1e-12
    )
    after, flowed = step(wells, start, Amp(current), Hour(hours))
    assert flowed == current
    assert [after.available, after.bound] == pytest.approx(solved.y[:, -1].tolist(), rel=1e-9)


def test_the_most_current_just_empties_or_fills_the_well_at_hand():
    """The printed solutions, put in by hand: with e = exp(−k t) and c (k t − 1 + e)."""
    state, time = State(AmpHour(20.0), AmpHour(40.0)), Hour(0.5)
    rate, share, full = SSC.rate, SSC.share, SSC.full
    kept = exp(-rate * time)
    below = 1 - kept + share * (rate * time - 1 + kept)
    above = rate * 20.0 * kept + 60.0 * rate * share * (1 - kept)
    assert most_discharge(SSC, state, time) == pytest.approx(above / below, rel=1e-9)
    expected = (above - rate * share * full) / below
    assert most_charge(SSC, state, time) == pytest.approx(expected, rel=1e-9)


FITTED = [
    (1.03, 0.2855, 0.8817, 102.34, -0.55, -1.28, -2.8),
    (1.05, 0.2942, 0.814, 103.87, -0.9, -2.08, -4.53),
    (1.1, 0.3153, 0.6749, 107.62, -1.74, -3.91, -8.42),
    (1.15, 0.3359, 0.5684, 111.29, -2.5, -5.52, -11.78),
    (1.2, 0.356, 0.4851, 114.89, -3.22, -6.93, -14.68),
    (1.25, 0.3756, 0.4189, 118.46, -3.87, -8.16, -17.2),
    (1.3, 0.3948, 0.3653, 121.99, -4.44, -9.24, -19.4),
    (1.4, 0.4321, 0.2851, 129.02, -5.42, -11.03, -23.01),
]
"""Exponent, k, c, full for 100 Ah, and percent off Peukert's capacity at 5, 50 and 100 h."""


@pytest.mark.parametrize("row", FITTED)
def test_fitted_rows_keep_peukert_where_they_were_fitted_and_saturate_elsewhere(row):
    exponent, rate, share, full, *errors = row
    wells = Wells(PerHour(rate), Share(share), AmpHour(full))

    def off_at(hours):
        law = 100 * (hours / 20) ** ((exponent - 1) / exponent)
        return 100 * (capacity_at(wells, Hour(hours)) / law - 1)

    assert [off_at(hours) for hours in (1, 10, 20)] == pytest.approx([0, 0, 0], abs=0.05)
    assert [off_at(hours) for hours in (5, 50, 100)] == pytest.approx(errors, abs=0.05)


@pytest.mark.parametrize("name", CHEMISTRIES)
def test_typical_wells_give_what_the_likely_exponent_gives(name):
    """Within 1.5 %: rate and share are kept to two or three digits."""
    wells = wells_of(CHEMISTRIES[name], AmpHour(100.0))
    exponent = CHEMISTRIES[name].exponent.likely
    for hours in (1.0, 10.0, 20.0):
        law = 100 * (hours / 20) ** ((exponent - 1) / exponent)
        assert capacity_at(wells, Hour(hours)) == pytest.approx(law, rel=0.015)


@pytest.mark.parametrize(("hours", "share"), [(10, 0.9918), (5, 0.9755), (2, 0.9276), (1, 0.849)])
def test_lithium_wells_stay_near_a_cell_model(hours, share):
    """2.2659, 2.2287, 2.1193 and 1.9396 of 2.2846 Ah: no more than 9 % off at any rate."""
    wells = wells_of(CHEMISTRIES["lithium"], AmpHour(100.0))
    assert capacity_at(wells, Hour(hours)) == pytest.approx(100 * share, rel=0.09)
