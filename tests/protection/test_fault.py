"""Fault current and interrupting rating, by hand."""

import pytest

from engine.conductors.resistance import resistance
from engine.conductors.sizes import STOCKED, read_size
from engine.finding import Verdict
from engine.problem import Problem
from engine.protection.fault import cold_cable, fault_current, strings
from engine.protection.interrupting import (
    INTERRUPTS,
    MINIMUM,
    asked,
    enough,
    maker_minimum,
    published_minimum,
)
from engine.protection.kinds import VOLTS_RATED
from engine.units import Amp, Celsius, Metre, Ohm, Volt


def test_a_cable_by_hand():
    """2 × 5 m / 58 / 10 mm² = 17.24 mΩ; 100 K warmer 39.3 % more."""
    size = read_size("10 mm2")
    assert cold_cable(Metre(5.0), size) == pytest.approx(0.017241, abs=1e-6)
    warm = cold_cable(Metre(5.0), size, Celsius(120.0))
    assert warm == pytest.approx(0.017241 * 1.393, rel=1e-4)


@pytest.mark.parametrize("size", [one for row in STOCKED.values() for one in row], ids=str)
def test_a_real_conductor_never_resists_less(size):
    """Strands and tin add 2 % at least to plain copper of the same area."""
    real = 2 * 5 / 1000 * resistance(size, Celsius(20.0))
    assert cold_cable(Metre(5.0), size) < real


def test_a_fault_by_hand():
    """12.8 / (0.004 + 0.010 + 0.002) = 800 A."""
    assert fault_current(Volt(12.8), Ohm(0.004), Ohm(0.010), Ohm(0.002)) == pytest.approx(800)


@pytest.mark.parametrize(
    ("volts", "ohms", "words"),
    [
        (12.0, (0.0, 0.0, 0.0), "Nothing resists"),
        (12.0, (0.004, -0.001, 0.0), "less than none"),
        (-12.0, (0.004, 0.0, 0.0), "less than none"),
    ],
)
def test_a_fault_that_is_none(volts, ohms, words):
    with pytest.raises(Problem, match=words):
        fault_current(Volt(volts), *(Ohm(one) for one in ohms))


@pytest.mark.parametrize(("metres", "degrees"), [(-1.0, 20.0), (1.0, -200.0)])
def test_a_cable_that_is_none(metres, degrees):
    with pytest.raises(Problem):
        cold_cable(Metre(metres), read_size("10 AWG"), Celsius(degrees))


@pytest.mark.parametrize(("series", "parallel"), [(0, 1), (1, 0), (-2, 1)])
def test_a_bank_without_a_battery(series, parallel):
    with pytest.raises(Problem, match="no battery"):
        strings(Ohm(0.003), series, parallel)


def test_volts_at_rest_find_the_row_of_their_system():
    """A full lithium 24 V bank rests at 26.8 V; 32 V has its own rows; 36 V has none."""
    assert published_minimum(Volt(26.8), Amp(1200), main=True) == 5000.0
    assert published_minimum(Volt(32.0), Amp(1200), main=True) == 3000.0
    assert published_minimum(Volt(32.0), Amp(1300), main=False) == 2500.0
    assert published_minimum(Volt(33.7), Amp(300), main=True) == 3000.0
    assert published_minimum(Volt(36.0), Amp(300), main=True) is None


def test_unknown_cranking_amperes_count_as_the_least_row():
    assert published_minimum(Volt(12.0), None, main=True) == 1500.0


def test_a_large_bank_goes_by_its_maker():
    assert maker_minimum(Amp(10_000.0)) == 10_000.0
    assert maker_minimum(Amp(10_001.0)) == 20_000.0


def test_the_greater_governs():
    assert asked(None, None) is None
    for fault, minimum, least, rule in (
        (Amp(2400), Amp(1500), 2400, INTERRUPTS),
        (Amp(900), Amp(1500), 1500, MINIMUM),
        (None, Amp(1500), 1500, MINIMUM),
        (Amp(900), None, 900, INTERRUPTS),
    ):
        found = asked(fault, minimum)
        assert found is not None
        assert (found.least, found.rule) == (least, rule)


@pytest.mark.parametrize(
    ("rating", "fault", "minimum", "verdict", "rule"),
    [
        (5000, 2400, 3000, Verdict.FINE, MINIMUM),
        (1000, 2400, 1500, Verdict.STOP, INTERRUPTS),
        (2500, 2400, 3000, Verdict.SHOULD, MINIMUM),
        (2500, None, 3000, Verdict.STOP, MINIMUM),
        (5000, None, 3000, Verdict.FINE, MINIMUM),
        (5000, None, None, Verdict.CANNOT_SAY, INTERRUPTS),
        (None, 2400, 3000, Verdict.STOP, VOLTS_RATED),
    ],
)
def test_enough(rating, fault, minimum, verdict, rule):
    found = enough(rating, fault, minimum)
    assert (found.verdict, found.rule) == (verdict, rule)
    assert bool(found.mend) == (verdict is not Verdict.FINE)


def test_lithium_needs_the_computed_figure():
    assert enough(Amp(5000), None, Amp(3000), lithium=True).verdict is Verdict.CANNOT_SAY
    assert enough(Amp(1000), None, Amp(3000), lithium=True).verdict is Verdict.STOP
    assert enough(Amp(5000), Amp(4467), Amp(3000), lithium=True).verdict is Verdict.FINE
