"""Which rule governs, by hand: K = 10.75, table 5 of 33 CFR 183.425."""

import pytest

from engine.conductors.carrying import HEAT, Surroundings
from engine.conductors.drop import (
    ALLOWED,
    CLASSES,
    DROP,
    Task,
    longest_run,
    loop_drop,
    rule_drop,
    square_mm_of,
)
from engine.conductors.sizes import read_size
from engine.conductors.sizing import least_size
from engine.units import Amp, Metre, OhmPerKm, Share, Volt


def task(current: float, run: float, allowed: float = 0.03) -> Task:
    return Task(Volt(12.0), Amp(current), Metre(run), Share(allowed))


def test_a_long_run_is_governed_by_drop():
    """10 A, 10.5 ft: 6271 cmil, so 10 SAE; heat asks 18 SAE (20 A)."""
    found = least_size("sae", task(10, 3.2004), Surroundings())
    assert (str(found.size), found.governing) == ("10 SAE", DROP)
    assert str(found.for_heat) == "18 SAE"
    assert found.circular_mils == pytest.approx(6270.83, abs=0.005)


def test_a_short_run_is_governed_by_heat():
    """100 A, 1 ft at 10 %: 1792 cmil, 16 AWG; heat asks 6 AWG (120 A)."""
    found = least_size("awg", task(100, 0.3048, 0.10), Surroundings())
    assert (str(found.size), found.governing) == ("6 AWG", HEAT)


def test_where_both_agree_drop_is_named():
    """25 A is 16 AWG by heat; over 1.5 m at 10 % it is 2204 cmil, 16 AWG by drop."""
    found = least_size("awg", task(25, 1.5, 0.10), Surroundings())
    assert str(found.for_drop) == str(found.for_heat) == "16 AWG"
    assert found.governing is DROP


def test_no_size_is_thick_enough():
    drop = least_size("sae", task(300, 30), Surroundings())
    assert (drop.size, drop.governing) == (None, DROP)
    heat = least_size("sae", task(500, 0.1, 0.10), Surroundings())
    assert (heat.size, heat.governing) == (None, HEAT)
    assert heat.for_drop is not None


def test_drops_by_rule_and_by_physics():
    """14 A, 6.1 m, 8 AWG: 10.75 × 14 × 40.026 ft / 16 510 cmil = 0.3649 V; 6.0185 m uses 0.36 V."""
    size = read_size("8 AWG")
    assert rule_drop(Amp(14.0), Metre(6.1), size) == pytest.approx(0.3649, abs=0.00005)
    assert longest_run(task(14, 6.1), size) == pytest.approx(6.0185, abs=0.00005)
    assert loop_drop(Amp(10.0), Metre(5.0), OhmPerKm(7.98)) == pytest.approx(0.798)
    assert task(14, 6.1).loop == pytest.approx(12.2)
    assert square_mm_of(10383.0) == pytest.approx(5.2611, abs=0.0001)


def test_every_drop_class_has_its_share():
    assert [ALLOWED[name] for name, _ in CLASSES] == [0.03, 0.10]
