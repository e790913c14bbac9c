"""Resistance and size of conductors against physics and against other printed tables.

IEC 60028 (1925): 1/58 Ω·mm²/m and 0.00393 per degree at 20 °C. NFPA 70 (NEC) chapter 9 table 8
(stranded, at 75 °C) and IEC 60228:2004 table 3 (class 5, at 20 °C), both as reprinted. ASTM B258
diameters in inches to four places; circular mils of solid wire to four figures from Lessons In
Electric Circuits, volume V. FAA AC 43.13-1B table 11-9: largest resistance of tin-plated wire.
"""

from itertools import pairwise
from math import pi, sqrt

import pytest

from engine.conductors.resistance import COPPER_AT_20, COPPER_AT_75, KFT_PER_KM, resistance
from engine.conductors.sizes import KNOWN, MM2_PER_CIRCULAR_MIL, area_of_awg
from engine.conductors.tables import (
    ALL_GAUGES,
    RESISTANCE_CLASS_5,
    RESISTANCE_STRANDED_75,
    SAE_CIRCULAR_MILS,
)
from engine.units import Celsius

INCHES = {
    "18": 0.0403, "16": 0.0508, "14": 0.0641, "12": 0.0808, "10": 0.1019, "8": 0.1285,
    "6": 0.1620, "4": 0.2043, "3": 0.2294, "2": 0.2576, "1": 0.2893, "1/0": 0.3249,
    "2/0": 0.3648, "3/0": 0.4096, "4/0": 0.4600,
}  # fmt: skip
CIRCULAR_MILS = {
    "18": 1624, "16": 2583, "14": 4107, "12": 6530, "10": 10380, "8": 16510, "6": 26250,
    "4": 41740, "3": 52630, "2": 66370, "1": 83690, "1/0": 105500, "2/0": 133100, "3/0": 167800,
    "4/0": 211600,
}  # fmt: skip
TIN_PLATED_20 = {
    "18": (6.23, 1900), "16": (4.81, 2426), "14": (3.06, 3831), "12": (2.02, 5874),
    "10": (1.26, 9354), "8": (0.70, 16983), "6": (0.44, 26818), "4": (0.28, 42615),
    "2": (0.18, 66500), "1": (0.15, 81700), "1/0": (0.12, 104500), "2/0": (0.09, 133000),
    "3/0": (0.07, 166500), "4/0": (0.06, 210900),
}  # fmt: skip
"""Ω/kft and circular mils."""
PLAIN_75 = {
    "18": 7.95, "16": 4.99, "14": 3.14, "12": 1.98, "10": 1.24, "8": 0.778, "6": 0.491, "4": 0.308,
    "3": 0.245, "2": 0.194, "1": 0.154, "1/0": 0.122, "2/0": 0.0967, "3/0": 0.0766, "4/0": 0.0608,
}  # fmt: skip


@pytest.mark.parametrize("gauge", ALL_GAUGES)
def test_diameter_and_area_as_printed(gauge):
    assert sqrt(area_of_awg(gauge) * 4 / pi) / 25.4 == pytest.approx(INCHES[gauge], abs=0.00005)
    mils = KNOWN["awg"][gauge].circular_mils
    assert float(f"{mils:.4g}") == CIRCULAR_MILS[gauge]


def test_area_of_one_circular_mil():
    """5.0670748e-4 mm², by the exact inch."""
    assert pytest.approx(5.0670748e-4, abs=5e-12) == MM2_PER_CIRCULAR_MIL


@pytest.mark.parametrize("gauge", SAE_CIRCULAR_MILS.rows)
def test_sae_has_2_to_12_percent_less_copper_than_awg(gauge):
    assert 0.88 < KNOWN["sae"][gauge].area / KNOWN["awg"][gauge].area < 0.98


@pytest.mark.parametrize("gauge", ALL_GAUGES)
def test_stranded_coated_copper_near_the_physics(gauge):
    """Ω·cmil/ft at 75 °C: 12.61 of solid copper; coated strands print 13.25 to 13.69."""
    mils = {"6": 26240, "3": 52620, "2": 66360}.get(gauge, CIRCULAR_MILS[gauge])
    coated = RESISTANCE_STRANDED_75[gauge] / 1000 * mils
    assert 13.2 < coated < 13.75
    assert 1.02 < RESISTANCE_STRANDED_75[gauge] / PLAIN_75[gauge] < 1.07


@pytest.mark.parametrize("name", RESISTANCE_CLASS_5.rows)
def test_class_5_is_6_to_20_percent_above_solid_copper(name):
    assert 1.06 < RESISTANCE_CLASS_5[name] * float(name) * 58 / 1000 < 1.20


@pytest.mark.parametrize("table", [RESISTANCE_CLASS_5, RESISTANCE_STRANDED_75])
def test_a_thicker_conductor_resists_less(table):
    assert all(one > other for one, other in pairwise(table.rows.values()))


def test_the_two_temperature_rules_agree():
    """0.00323 at 75 °C is 0.00393 at 20 °C, referred: 0.00393 / (1 + 0.00393 × 55)."""
    assert pytest.approx(COPPER_AT_20 / (1 + COPPER_AT_20 * 55), abs=5e-6) == COPPER_AT_75


@pytest.mark.parametrize("gauge", TIN_PLATED_20)
def test_mil_for_mil_near_the_aviation_table_at_20_degrees(gauge):
    """The largest allowed, to one or two figures: 3 to 17 % above the trade's strands."""
    per_kft, mils = TIN_PLATED_20[gauge]
    size = KNOWN["awg"][gauge]
    ours = resistance(size, Celsius(20.0)) / KFT_PER_KM * size.circular_mils
    assert 1.03 < per_kft * mils / ours < 1.17


def test_resistance_moves_with_temperature_as_printed():
    """Class 5, 6 mm², coated: 3.39 Ω/km at 20 °C, 4.123 at 75 °C by 0.00393."""
    six = KNOWN["metric"]["6"]
    assert resistance(six, Celsius(20.0)) == pytest.approx(3.39)
    assert resistance(six, Celsius(75.0)) == pytest.approx(4.123, abs=0.0005)
    ten = KNOWN["awg"]["10"]
    assert resistance(ten, Celsius(75.0)) == pytest.approx(4.2323, abs=0.00005)


def test_an_sae_size_resists_more_by_its_missing_copper():
    """10 SAE has 9343 cmil, 10 AWG 10 383: 4.2323 × 10383 / 9343 = 4.7034 Ω/km."""
    assert resistance(KNOWN["sae"]["10"], Celsius(75.0)) == pytest.approx(4.7034, abs=0.0005)
