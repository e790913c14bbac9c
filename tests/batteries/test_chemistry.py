"""Defaults of each chemistry: complete, in order, and never shown as more than typical."""

import pytest

from engine.batteries import tables
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.temperature import between, capacity_factor
from engine.batteries.voltage import blocks, open_circuit, resistance
from engine.table import Table
from engine.units import AmpHour, Celsius, Share, Volt


@pytest.mark.parametrize("name", CHEMISTRIES)
def test_a_chemistry_is_complete_and_in_order(name):
    chemistry = CHEMISTRIES[name]
    assert chemistry.name == name
    assert 1.0 < chemistry.exponent.low < chemistry.exponent.likely < chemistry.exponent.high
    assert chemistry.milliohms.low < chemistry.milliohms.likely < chemistry.milliohms.high
    assert chemistry.exponent.known_by == chemistry.milliohms.known_by == "default"
    assert 1.0 < chemistry.low_rate_gain < 1.2
    assert chemistry.lead == (name != "lithium")
    assert chemistry.cut_off < chemistry.block_volts


def test_what_is_remembered_is_called_typical():
    read = {
        tables.SIZE_MULTIPLIER, tables.LITHIUM_CAPACITY, tables.RESTING_FLOODED,
        tables.RESTING_LITHIUM, tables.CYCLES_LEAD, tables.CYCLES_LITHIUM,
    }  # fmt: skip
    found = {one for one in vars(tables).values() if isinstance(one, Table)}
    assert {one for one in found if not one.source.typical} == read


def test_between_rows_and_beyond_them():
    rows = {0.0: 10.0, 1.0: 20.0, 2.0: 40.0}
    found = [between(rows, at) for at in (-1.0, 0.0, 0.5, 1.0, 1.5, 2.0, 3.0)]
    assert found == pytest.approx([0.0, 10.0, 15.0, 20.0, 30.0, 40.0, 60.0])


@pytest.mark.parametrize("name", CHEMISTRIES)
def test_no_credit_for_warmth_and_never_less_than_nothing(name):
    chemistry = CHEMISTRIES[name]
    assert capacity_factor(chemistry, Celsius(25.0)) == 1.0
    assert capacity_factor(chemistry, Celsius(45.0)) == 1.0
    assert capacity_factor(chemistry, Celsius(24.999)) == pytest.approx(1.0, abs=1e-4)
    assert capacity_factor(chemistry, Celsius(-200.0)) == 0.0


def test_below_the_coldest_row_by_hand():
    """Lead at −5.6 °C: 1/1.30 − 0.009 × 10 = 0.6792. Lithium at −25 °C: 0.947 % per degree on."""
    lead = capacity_factor(CHEMISTRIES["agm"], Celsius(-5.6))
    assert lead == pytest.approx(1 / 1.30 - 0.09)
    cold = capacity_factor(CHEMISTRIES["lithium"], Celsius(-25.0))
    assert cold == pytest.approx((72.333 - 5 * 0.9467) / 97.061, abs=1e-5)


def test_volts_and_resistance_scale_with_the_system():
    agm = CHEMISTRIES["agm"]
    assert open_circuit(agm, Share(0.5), Volt(48.0)) == pytest.approx(4 * (12.24 + 0.175))
    one = resistance(agm, AmpHour(100.0), Volt(12.0))
    assert one == pytest.approx(0.004)
    assert resistance(agm, AmpHour(400.0), Volt(24.0)) == pytest.approx(one / 4 * 2)


def test_a_lithium_pack_may_be_named_by_its_label():
    """12.8 V and 51.2 V are 4 and 16 cells of 3.2 V; a 12 V and a 48 V system have as many."""
    lithium = CHEMISTRIES["lithium"]
    for system, label in ((12.0, 12.8), (24.0, 25.6), (48.0, 51.2)):
        one = open_circuit(lithium, Share(0.5), Volt(system))
        assert open_circuit(lithium, Share(0.5), Volt(label)) == pytest.approx(one)
    assert blocks(CHEMISTRIES["flooded"], Volt(32.0)) == pytest.approx(16 / 6)


def test_a_full_lithium_bank_shows_no_surface_charge():
    lithium = CHEMISTRIES["lithium"]
    assert open_circuit(lithium, Share(1.0), Volt(12.0)) == pytest.approx(13.247)


def test_lithium_resistance_does_not_rise_as_it_empties_but_does_in_the_cold():
    lithium = CHEMISTRIES["lithium"]
    half = resistance(lithium, AmpHour(100.0), Volt(12.0))
    assert resistance(lithium, AmpHour(100.0), Volt(12.0), Share(0.2)) == half
    cold = resistance(lithium, AmpHour(100.0), Volt(12.0), Share(0.5), Celsius(0.0))
    assert cold == pytest.approx(1.75 * half)
