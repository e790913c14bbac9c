"""Seeded draws: the same on every run, spread as the triangle says, and never luck of pairing.

Triangular distribution: mean (low + likely + high) / 3, and a share (likely − low) / (high − low)
of it lies below the likely value.
"""

from dataclasses import replace
from statistics import fmean

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.estimate import Estimate
from engine.generator import mixed
from engine.loads.day_use import day_use
from engine.loads.draws import (
    DRAWS,
    HABITS,
    drawn,
    habits,
    quantile,
    shuffled,
    triangle,
)
from engine.loads.load import Load, Supply
from engine.units import Volt

PLAIN = Supply(Volt(12.0))
ORDER = [203, 218, 3, 118, 428]
few = settings(max_examples=25)
"""Each example draws whole days."""


def between(least, most):
    return st.floats(least, most, allow_nan=False)


estimates = st.lists(between(0.01, 50.0), min_size=3, max_size=3).map(
    lambda ends: Estimate(*sorted(ends))
)
hours = st.lists(between(0.1, 24.0), min_size=3, max_size=3).map(
    lambda ends: Estimate(*sorted(ends))
)


@st.composite
def boats(draw):
    count = draw(st.integers(1, 6))
    return tuple(
        Load(f"L{n:02d}", f"load {n}", draw=draw(estimates), hours=(draw(hours),) * 4)
        for n in range(1, count + 1)
    )


def test_unchanged_order_of_one_load():
    """Pasted from a first run, to show that no machine and no release draws otherwise."""
    assert [round(share * DRAWS - 0.5) for share in shuffled("L11")[:5]] == ORDER


def test_the_mix_is_whole_number_arithmetic():
    """(1 xor 66) × (2⁴⁰ + 435) = 67 × 1 099 511 628 211."""
    assert mixed(1, "B") == 67 * 1099511628211


def test_every_stratum_is_drawn_once():
    assert sorted(shuffled("L11")) == [(n + 0.5) / DRAWS for n in range(DRAWS)]
    assert shuffled("L11") != shuffled("L12")


@few
@given(estimates)
def test_draws_have_the_mean_of_their_triangle(estimate):
    found = fmean(drawn("any", estimate))
    mean = (estimate.low + estimate.likely + estimate.high) / 3
    assert found == pytest.approx(mean, rel=1e-3)


@given(estimates, between(0.0, 1.0), between(0.0, 1.0))
def test_a_greater_share_lies_higher_and_within_the_ends(estimate, one, other):
    low, high = (triangle(estimate, share) for share in sorted((one, other)))
    assert estimate.low - 1e-9 <= low <= high + 1e-9
    assert high <= estimate.high + 1e-9


def test_a_sure_value_has_no_spread():
    assert triangle(Estimate.exact(3.0), 0.9) == 3.0
    assert set(drawn("any", Estimate.exact(3.0))) == {3.0}


def test_the_likely_value_has_its_share_below_it():
    """(2 − 0) / (8 − 0) = 0.25."""
    assert triangle(Estimate(0.0, 2.0, 8.0), 0.25) == pytest.approx(2.0)


def test_habits_and_heat_reach_every_day_alike():
    """Low half and high half of the days have the triangle's mean, (0.84 + 1 + 1.18) / 3."""
    mean = (HABITS.low + HABITS.likely + HABITS.high) / 3
    half = DRAWS // 2
    assert len(habits()) == DRAWS
    assert fmean(habits()[:half]) == pytest.approx(mean, abs=0.001)
    assert fmean(habits()[half:]) == pytest.approx(mean, abs=0.001)


def test_a_quantile_between_neighbours():
    assert quantile([10.0, 20.0, 40.0], 0.75) == 30.0
    assert quantile([7.0], 0.9) == 7.0


@few
@given(boats())
def test_the_median_lies_between_everything_low_and_everything_high(loads):
    answer = day_use(loads, "anchor", PLAIN)
    total, band = answer.total, answer.band
    assert total.low * HABITS.low <= band.p10 <= band.median <= band.p90
    assert band.p90 <= total.high * HABITS.high
    apart = answer.independent
    assert total.low - 1e-9 <= apart.p10 <= apart.median <= apart.p90 <= total.high + 1e-9


@few
@given(boats())
def test_the_shared_factor_spreads_a_sure_day_by_itself(loads):
    """A day without any range has the factor's own: 0.84 to 1.18, 0.92 to 1.10 in its middle."""
    sure = tuple(
        replace(one, draw=Estimate.exact(1.0), hours=(Estimate.exact(2.0),) * 4) for one in loads
    )
    answer = day_use(sure, "anchor", PLAIN)
    day = answer.total.likely
    assert answer.independent.p10 == answer.independent.p90 == pytest.approx(day)
    ends = [triangle(HABITS, share) * day for share in (0.1, 0.5, 0.9)]
    band = answer.band
    assert [band.p10, band.median, band.p90] == pytest.approx(ends, rel=0.005)


@few
@given(boats())
def test_another_load_never_makes_a_day_cheaper(loads):
    fewer = day_use(loads[:-1], "anchor", PLAIN).total
    more = day_use(loads, "anchor", PLAIN).total
    assert fewer.low <= more.low
    assert fewer.likely <= more.likely
    assert fewer.high <= more.high


@few
@given(boats())
def test_the_same_boat_has_the_same_figures(loads):
    first = day_use(loads, "anchor", PLAIN)
    for kept in (drawn, shuffled, habits, day_use):
        kept.cache_clear()
    assert day_use(loads, "anchor", PLAIN) == first


@few
@given(boats(), between(0.5, 2.0))
def test_twice_the_volts_take_half_the_charge_of_a_load_in_watts(loads, factor):
    stated = tuple(Load(one.ident, one.name, watts=one.draw, hours=one.hours) for one in loads)
    one = day_use(stated, "anchor", Supply(Volt(12.0))).total.likely
    other = day_use(stated, "anchor", Supply(Volt(12.0 * factor))).total.likely
    assert one == pytest.approx(other * factor)
