"""Batteries against printed tables other than those the program reads.

Lead and cold: NREL System Advisor Model, default lead-acid table (°C, % of capacity), over its own
24.6 °C row. Low-rate gain: the two-well model of Manwell and McGowan, Solar Energy 50 (1993) 399,
fitted here as NREL SSC fits it (scan of k by 0.001) to Peukert at 1, 10 and 20 h; SSC's unit test
battery of 100, 93 and 60 Ah holds 108.16 Ah. Cell volts: E ≈ specific gravity + 0.845.
"""

from math import exp

import pytest

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.temperature import capacity_factor
from engine.batteries.voltage import open_circuit, resistance
from engine.units import AmpHour, Celsius, Share, Volt

SAM_LEAD = {
    -8.748: 62.038, -3.988: 67.127, 0.772: 72.129, 5.531: 77.162, 10.291: 82.269, 15.051: 87.454,
    19.811: 92.665, 24.571: 97.792,
}  # fmt: skip


@pytest.mark.parametrize(("celsius", "percent"), SAM_LEAD.items())
def test_cold_lead_near_another_table(celsius, percent):
    found = capacity_factor(CHEMISTRIES["flooded"], Celsius(celsius))
    assert found == pytest.approx(percent / 97.792, abs=0.03)


@pytest.mark.parametrize(
    ("celsius", "multiplier"), [(4.4, 1.30), (10, 1.19), (15.6, 1.11), (21.1, 1.04)]
)
def test_lead_is_one_over_the_printed_multiplier(celsius, multiplier):
    assert capacity_factor(CHEMISTRIES["gel"], Celsius(celsius)) == pytest.approx(1 / multiplier)


def test_cold_lithium_by_its_table():
    """88.8 % at 0 °C; 96.667 at 23 and 101.0 at 45 give 97.061 at 25 °C."""
    found = capacity_factor(CHEMISTRIES["lithium"], Celsius(0.0))
    assert found == pytest.approx(88.8 / 97.061, abs=0.00005)


def all_held(hours_1: float, hours_10: float, hours_20: float) -> float:
    """Return what both wells hold, from what is given at 1, 10 and 20 h."""

    def share(ratio: float, time: float, slow: float, k: float) -> float:
        top = ratio * (1 - exp(-k * time)) * slow - (1 - exp(-k * slow)) * time
        return top / (top - k * ratio * time * slow + k * time * slow)

    def gap(k: float) -> float:
        one = share(hours_1 / hours_20, 1, 20, k)
        return abs(one - share(hours_1 / hours_10, 1, 10, k))

    k = min((n / 1000 for n in range(1, 5000)), key=gap)
    c = share(hours_1 / hours_20, 1, 20, k)
    return hours_20 * ((1 - exp(-20 * k)) * (1 - c) + 20 * k * c) / (20 * k * c)


def test_the_two_well_fit_gives_its_published_figure():
    assert all_held(60, 93, 100) == pytest.approx(108.16, abs=0.05)


@pytest.mark.parametrize("name", CHEMISTRIES)
def test_low_rate_gain_is_the_two_wells_of_the_likely_exponent(name):
    k = CHEMISTRIES[name].exponent.likely
    given = [100 * (hours / 20) ** ((k - 1) / k) for hours in (1, 10, 20)]
    assert CHEMISTRIES[name].low_rate_gain == pytest.approx(all_held(*given) / 100, abs=0.006)


@pytest.mark.parametrize(
    ("charge", "gravity", "volts"),
    [
        (1.0, 1.265, 12.65),
        (0.75, 1.225, 12.45),
        (0.5, 1.190, 12.24),
        (0.25, 1.155, 12.06),
        (0, 1.12, 11.89),
    ],
)
def test_rested_flooded_volts_as_printed_and_near_their_gravity(charge, gravity, volts):
    found = open_circuit(CHEMISTRIES["flooded"], Share(charge), Volt(12.0))
    assert found == pytest.approx(volts)
    assert found == pytest.approx(6 * (gravity + 0.845), abs=0.1)


@pytest.mark.parametrize("name", ["agm", "gel"])
def test_sealed_lead_rests_higher(name):
    above = open_circuit(CHEMISTRIES[name], Share(0.6), Volt(12.0)) - open_circuit(
        CHEMISTRIES["flooded"], Share(0.6), Volt(12.0)
    )
    assert 0.10 <= above <= 0.20


def test_lithium_volts_say_nothing_of_the_middle():
    """13.24 V at 90 % and 12.80 V at 30 %, C/20; less than half a volt between."""
    found = [open_circuit(CHEMISTRIES["lithium"], Share(s), Volt(12.0)) for s in (0.9, 0.3)]
    assert found == pytest.approx([13.24, 12.80], abs=0.005)


def test_resistance_by_hand():
    """Gel, 200 Ah at 24 V, 20 %, 0 °C: 6 mΩ × 100/200 × 2 × 1.5 × 1.75 = 15.75 mΩ."""
    found = resistance(CHEMISTRIES["gel"], AmpHour(200.0), Volt(24.0), Share(0.2), Celsius(0.0))
    assert found == pytest.approx(0.01575)
