"""Runs of days against a general solver, closed forms reckoned elsewhere, and sums by hand.

The equation of the two wells is Manwell and McGowan's (Solar Energy 50 (1993) 399), with charging
held to the source, the limit and the taper (Mas' law); what overfills the well at hand goes to the
bound one. SciPy integrates it.
Hours of charging a 400 Ah bank from 80 A: a march in steps of one second, kept to 0.01 h.
Days alone: an invented boat's bank of 280 Ah, 132.4 Ah a day, 1.7 days.
"""

from math import pi

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.stats import rayleigh as rayleigh_of

from engine.charging.intake import Intake
from engine.simulate.days import Days
from engine.simulate.march import march_of
from engine.simulate.run import days_alone, run
from engine.simulate.weather import rayleigh, windy
from engine.units import Amp, AmpHour, PerHour, Share
from tests.simulate.banks import alone, flooded, lithium, steady

STEP = 0.25


def day_of(load, peak, days=1):
    """Return days of a steady load with an evening hour, and a sun that shines from 6 to 18 h."""
    hours = (np.arange(96) + 0.5) * STEP
    sun = np.maximum(np.sin((hours - 6) / 12 * pi), 0.0) * peak
    loads = np.full(96, load) + np.where((hours > 19) & (hours < 20), 8.0, 0.0)
    return Days(tuple(map(Amp, loads)) * days, sun=tuple(map(Amp, sun)) * days)


def integrated(house, days):
    """Return both wells together at each step, by a general solver, from the equation alone."""
    wells, intake = house.wells, house.intake
    k, c, full = wells.rate, wells.share, wells.full
    taper = intake.taper * intake.capacity / full

    def stored(net, total):
        if net < 0:
            return net
        accepted = min(net, intake.limit * intake.capacity, taper * (full - total))
        return intake.efficiency * accepted

    def slope(_, held, net):
        flow = stored(net, held[0] + held[1])
        across = k * ((1 - c) * held[0] - c * held[1])
        return [flow - across, across]

    def brimming(_, held, _net):
        return held[0] - c * full

    vars(brimming).update(terminal=True, direction=1)

    def slope_when_brimming(_, held, net):
        return [0.0, stored(net, c * full + held[1])]

    held = np.array([c * full, (1 - c) * full]) * house.start
    found, tight = [held.sum()], {"rtol": 1e-11, "atol": 1e-11}
    for load, sun in zip(days.loads, days.sun, strict=True):
        net, time, full_well = sun - load, 0.0, held[0] >= c * full - 1e-9
        across = k * ((1 - c) * c * full - c * held[1])
        if not (full_well and stored(net, held.sum()) >= across):
            part = solve_ivp(
                slope, (0.0, STEP), held, args=(net,), events=brimming, max_step=0.02, **tight
            )
            held, time = part.y[:, -1], part.t[-1]
        if time < STEP:
            part = solve_ivp(slope_when_brimming, (time, STEP), held, args=(net,), **tight)
            held = np.array([c * full, part.y[1, -1]])
        found.append(held.sum())
    return np.array(found)


@pytest.mark.parametrize(
    ("start", "load", "peak"),
    [(0.9, 3.0, 0.0), (0.6, 4.0, 18.0), (0.85, 2.0, 30.0), (0.7, 1.0, 60.0)],
    ids=["no sun", "sun", "taper", "brimming"],
)
def test_a_whole_day_of_two_wells_is_that_of_the_equation(start, load, peak):
    house, days = flooded(start=start, disconnect=Share(0.0)), day_of(load, peak)
    march = march_of(alone(house))
    march.go(days.loads, days.kept_on, days.free, days.step)
    assert march.totals == pytest.approx(integrated(house, days), rel=1e-6)


@pytest.mark.parametrize(
    ("limit", "taper", "spells"),
    [
        (0.25, 0.6, (1.68, 1.16, 1.16, 1.53)),
        (0.40, 1.0, (1.50, 0.69, 0.69, 0.92)),
        (0.50, 10.0, (1.50, 0.50, 0.25, 0.15)),
    ],
    ids=["flooded", "AGM", "lithium"],
)
def test_a_bank_is_full_when_a_march_of_seconds_says(limit, taper, spells):
    """From 50 % to 98 %: the four printed spells, each rounded to 0.01 h."""
    intake = Intake(AmpHour(400.0), PerHour(limit), PerHour(taper))
    house = lithium(capacity=400.0, start=0.5, intake=intake)
    found = run(alone(house), steady(0.0, shore=80.0))
    assert found.full_at == pytest.approx(sum(spells), abs=0.02)


def test_a_lithium_bank_counts_ampere_hours():
    """280 Ah at 95 %: 266; 10 h at 12 A leave 146; 14 h at 8 A in, of which 0.98: 255.76 Ah."""
    intake = Intake(AmpHour(280.0), PerHour(0.5), PerHour(10.0), Share(0.98))
    house = lithium(capacity=280.0, start=0.95, intake=intake)
    sun = (Amp(0.0),) * 40 + (Amp(20.0),) * 56
    found = run(alone(house), Days((Amp(12.0),) * 96, sun=sun))
    assert found.charges[40] * 280 == pytest.approx(146.0, rel=1e-12)
    assert found.charges[96] * 280 == pytest.approx(146.0 + 14 * 8 * 0.98, rel=1e-12)
    assert found.charge.lost == pytest.approx(14 * 8 * 0.02, rel=1e-9)


def test_an_invented_boat_lies_alone_for_1_7_days():
    house = lithium(capacity=280.0)
    found = days_alone(alone(house), steady(132.4 / 24, days=3))
    assert found is not None
    assert found == pytest.approx(280 * 0.8 / 132.4, rel=1e-9)
    assert round(found, 1) == 1.7


def test_winds_are_spread_as_rayleigh_found():
    mean = rayleigh_of.mean()
    for above in (0.99, 0.5, 0.1, 0.01):
        assert rayleigh(above) == pytest.approx(rayleigh_of.isf(above) / mean, rel=1e-12)


def test_winds_follow_each_other_as_told():
    """Mean 1, mean of cubes 6/π = 1.91, and neighbours that resemble each other by about a half."""
    winds = np.array(windy(20000, 7))
    assert winds.mean() == pytest.approx(1.0, abs=0.02)
    assert (winds**3).mean() == pytest.approx(6 / pi, rel=0.04)
    assert np.corrcoef(winds[1:], winds[:-1])[0, 1] == pytest.approx(0.48, abs=0.04)
