"""33 CFR 183.425, table 5, whole, with note 1 (engine spaces) and note 2 (bundles); public law.

The rows are typed here a second time, column by column, from the printed table. The bundle cells
are the 105 °C tables of ABYC E-11 as a cable catalogue reprints them, rounded to 0.1 A there and
to 0.5 A in another reprint.
"""

from math import sqrt

import pytest

from engine.conductors.carrying import Surroundings, bundle_factor, carries, warmth_factor
from engine.conductors.sizes import KNOWN, read_size
from engine.conductors.tables import ALL_GAUGES, INSULATIONS
from engine.units import Celsius

TABLE_5 = {
    60: "10 15 20 25 40 55 80 105 120 140 165 195 225 260 300",
    75: "10 15 20 25 40 65 95 125 145 170 195 230 265 310 360",
    80: "15 20 25 35 50 70 100 130 150 175 210 245 285 330 385",
    90: "20 25 30 40 55 70 100 135 155 180 210 245 285 330 385",
    105: "20 25 35 45 60 80 120 160 180 210 245 285 330 385 445",
    125: "25 30 40 50 70 90 125 170 195 225 265 305 355 410 475",
    200: "25 35 45 55 70 100 135 180 210 240 280 325 370 430 510",
}
"""Amperes by insulation, 18 AWG to 4/0."""
NOTE_1 = {60: 0.58, 75: 0.75, 80: 0.78, 90: 0.82, 105: 0.85, 125: 0.89, 200: 1.00}
NOTE_2 = {3: 0.70, 4: 0.60, 6: 0.60, 7: 0.50, 24: 0.50, 25: 0.40, 60: 0.40}

BUNDLES_105 = {
    (2, False): "20 25 35 45 60 80 120 160 210 245 285 330 385 445",
    (2, True): "17 21.3 29.8 38.3 51 68 102 136 178.5 208.3 242.3 280.5 327.3 378.3",
    (3, False): "14 17.5 24.5 31.5 42 56 84 112 147 171.5 199.5 231 269.5 311.5",
    (3, True): "11.9 14.9 20.8 26.8 35.7 47.6 71.4 95.2 125 145.8 169.6 196.4 229.1 264.8",
    (6, False): "12 15 21 27 36 48 72 96 126 147 171 198 231 267",
    (6, True): "10.2 12.8 17.9 23 30.6 40.8 61.2 81.6 107.1 125 145.4 168.3 196.4 227",
    (24, False): "10 12.5 17.5 22.5 30 40 60 80 105 122.5 142.5 165 192.5 222.5",
    (24, True): "8.5 10.6 14.9 19.1 25.5 34 51 68 89.3 104.1 121.1 140.3 163.6 189.1",
}
"""Amperes by bundle and engine space, 18 AWG to 4/0 without 3 AWG."""


@pytest.mark.parametrize("insulation", INSULATIONS)
def test_a_column_of_table_5(insulation):
    printed = [float(cell) for cell in TABLE_5[insulation].split()]
    sizes = [KNOWN["awg"][gauge] for gauge in ALL_GAUGES]
    assert [carries(size, Surroundings(insulation)) for size in sizes] == printed


@pytest.mark.parametrize(("insulation", "factor"), NOTE_1.items())
def test_note_1_as_printed_and_near_its_physics(insulation, factor):
    """√((T − 50)/(T − 30)) but for 200 °C, where the table is 6 % bolder than the heat."""
    assert warmth_factor(Surroundings(insulation, engine_space=True)) == factor
    by_heat = sqrt((insulation - 50) / (insulation - 30))
    assert factor == pytest.approx(by_heat, abs=0.065 if insulation == 200 else 0.0075)
    at_50 = warmth_factor(Surroundings(insulation, ambient=Celsius(50.0)))
    assert at_50 == pytest.approx(by_heat, rel=1e-9)


@pytest.mark.parametrize(("bundle", "factor"), NOTE_2.items())
def test_note_2_as_printed(bundle, factor):
    assert bundle_factor(bundle) == factor


def test_the_factors_multiply():
    """10 AWG of 105 °C: 60 × 0.85 = 51 A (W22); 16 AWG in 7 to 24: 25 × 0.5 × 0.85 (W24)."""
    ten = carries(read_size("10 AWG"), Surroundings(engine_space=True))
    assert ten == pytest.approx(51.0)
    sixteen = carries(read_size("16 AWG"), Surroundings(engine_space=True, bundle=12))
    assert sixteen == pytest.approx(10.625)


@pytest.mark.parametrize(("bundle", "engine_space"), BUNDLES_105)
def test_the_105_degree_bundle_tables(bundle, engine_space):
    printed = [float(cell) for cell in BUNDLES_105[bundle, engine_space].split()]
    around = Surroundings(engine_space=engine_space, bundle=bundle)
    gauges = [gauge for gauge in ALL_GAUGES if gauge != "3"]
    assert len(printed) == len(gauges) == 14
    for gauge, amperes in zip(gauges, printed, strict=True):
        assert carries(KNOWN["awg"][gauge], around) == pytest.approx(amperes, abs=0.5)
