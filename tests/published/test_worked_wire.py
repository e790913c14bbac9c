"""Worked examples of the wire trade, as printed.

W01: a pump on a maker's page, 12 V, 3 %, 10 A, 11 + 10 ft, K = 10.75. W03: the same pump by a
cable catalogue's tables. W04, W07: FAA AC 43.13-1B, table 11-7, with its own ohms per foot. W15:
a maker's page on constant power, closed form. W06 and W09 of the same papers are misprints, held
against theirs in ``test_protection``. W12: FAA AC 43.13-1B, page 11-27, example 2: the length that
a warm wire may have; its rise itself is by another law. W16: Lessons In Electric Circuits, 25 A
and 5 V a wire over 2300 ft with 10.09 Ω·cmil/ft, pure copper.
"""

import pytest

from engine.conductors.carrying import Surroundings
from engine.conductors.drop import FOOT, Task, circular_mils_needed, loop_drop
from engine.conductors.sizes import read_size
from engine.conductors.sizing import least_size
from engine.inverter.sag import operating_point
from engine.protection.fault import cold_cable
from engine.units import Amp, Celsius, Metre, Ohm, OhmPerKm, Share, Volt, Watt


def pump(allowed: float) -> Task:
    return Task(Volt(12.0), Amp(10.0), Metre(21 / 2 * FOOT), Share(allowed))


def test_w01_circular_mils_and_the_catalogue_that_decides():
    assert circular_mils_needed(pump(0.03)) == pytest.approx(6270.83, abs=0.005)
    assert str(least_size("awg", pump(0.03), Surroundings()).for_drop) == "12 AWG"
    assert str(least_size("sae", pump(0.03), Surroundings()).for_drop) == "10 SAE"


def test_w03_the_same_pump_by_the_two_tables():
    assert str(least_size("sae", pump(0.03), Surroundings()).for_drop) == "10 SAE"
    assert str(least_size("sae", pump(0.10), Surroundings()).for_drop) == "16 SAE"


@pytest.mark.parametrize(
    ("amps", "feet", "ohms_per_foot", "printed"),
    [(20, 107, 0.00044, 0.942), (20, 100, 0.00306, 6.12)],
)
def test_w04_w07_drop_by_ohms_per_foot(amps, feet, ohms_per_foot, printed):
    """A single wire with the hull as return: half of a loop."""
    per_km = OhmPerKm(ohms_per_foot / FOOT * 1000)
    drop = loop_drop(Amp(amps), Metre(feet * FOOT), per_km) / 2
    assert drop == pytest.approx(printed, abs=0.0005)


def test_w15_constant_power_at_the_end_of_a_wire():
    """10 W at 12 V, 12 m at 40 mV per ampere and metre: 0.8631 A and 0.4143 V lost."""
    point = operating_point(Volt(12.0), Ohm(12 * 0.040), Watt(10.0))
    assert point is not None
    assert point.current == pytest.approx(0.8631, abs=0.00005)
    assert 12.0 - point.volts == pytest.approx(0.4143, abs=0.00005)


def test_w12_a_warm_wire_must_be_shorter():
    """14 AWG at 181.6 °C: L2 = 254.5 × 15.5 / (234.5 + 181.6) = 9.48 ft, about 9.5 printed."""
    size = read_size("14 AWG")
    cold, warm = (cold_cable(Metre(1.0), size, Celsius(one)) for one in (20.0, 181.6))
    assert 15.5 * cold / warm == pytest.approx(254.5 * 15.5 / (234.5 + 181.6), abs=0.005)
    assert 15.5 * cold / warm == pytest.approx(9.5, abs=0.05)


def test_w16_the_thickness_of_a_long_line():
    """10.09 × 25 × 2300 / 5 = 116 035 cmil, 2/0; with K = 10.75 123 625, 2/0 too."""
    line = Task(Volt(100.0), Amp(25.0), Metre(2300 * FOOT), Share(0.10))
    assert circular_mils_needed(line) * 10.09 / 10.75 == pytest.approx(116_035)
    assert str(least_size("awg", line, Surroundings()).for_drop) == "2/0 AWG"
