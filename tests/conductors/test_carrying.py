"""Carrying capacity and working temperature, by hand from 33 CFR 183.425, table 5."""

from math import sqrt

import pytest

from engine.conductors.carrying import (
    AMBIENT_SOURCE,
    Surroundings,
    carries,
    printed_amperes,
    warmth_factor,
    working_of_carries,
    working_temperature,
)
from engine.conductors.resistance import resistance, source_of
from engine.conductors.sizes import KNOWN, read_size
from engine.problem import Problem
from engine.units import Amp, Celsius

TEN = read_size("10 AWG")


def test_an_insulation_no_table_has_is_refused():
    with pytest.raises(Problem, match="No table gives insulation of 70 °C"):
        Surroundings(70)


def test_a_size_thinner_than_the_table_is_refused():
    with pytest.raises(Problem, match=r"0\.75 mm2 is thinner than any row") as caught:
        printed_amperes(KNOWN["metric"]["0.75"], 105)
    assert caught.value.where == "size"


def test_another_ambient_by_the_heat_balance():
    """105 °C at 40 °C: √(65/75) = 0.931; 60 A × 0.931 = 55.9 A."""
    around = Surroundings(ambient=Celsius(40.0))
    assert carries(TEN, around) == pytest.approx(60 * sqrt(65 / 75))


def test_air_as_hot_as_the_insulation_leaves_nothing():
    assert not carries(TEN, Surroundings(60, ambient=Celsius(60.0)))
    assert not carries(TEN, Surroundings(60, ambient=Celsius(70.0)))


def test_a_hot_engine_space_takes_the_smaller_factor():
    """0.85 printed; √(35/75) = 0.683 at 70 °C; cooler than 30 °C the printed factor stays."""
    assert warmth_factor(Surroundings(engine_space=True, ambient=Celsius(70.0))) == pytest.approx(
        sqrt(35 / 75)
    )
    assert warmth_factor(Surroundings(engine_space=True, ambient=Celsius(40.0))) == 0.85
    assert warmth_factor(Surroundings(engine_space=True, ambient=Celsius(10.0))) == 0.85


def test_half_the_current_makes_a_quarter_of_the_rise():
    """30 A of 60 A at 30 °C: 30 + 75 / 4 = 48.75 °C; in an engine space from 50 °C."""
    assert working_temperature(TEN, Surroundings(), Amp(30.0)) == pytest.approx(48.75)
    inside = Surroundings(engine_space=True)
    assert working_temperature(TEN, inside, Amp(30.0)) == pytest.approx(68.75)


def test_the_working_shows_every_factor_that_acts():
    plain = [str(step) for step in working_of_carries(TEN, Surroundings())]
    assert plain == [
        "printed amperes at 30 °C: 10 AWG row, 105 °C insulation = 60 A"
        " [33 CFR, in force, 183.425, table 5]",
        "carries: amperes × factors = 60 A",
    ]
    inside = working_of_carries(read_size("6 mm2"), Surroundings(engine_space=True, bundle=6))
    assert "6 mm2 counts as the 10 AWG row" in inside[0].formula
    assert [step.value for step in inside] == ["60 A", "0.85", "0.6", "30.6 A"]
    warm = working_of_carries(TEN, Surroundings(ambient=Celsius(40.0)))
    assert warm[1].formula == "air, 40 °C stated"
    assert warm[1].source is AMBIENT_SOURCE


def test_resistance_says_its_table():
    assert source_of(TEN).document == "NFPA 70 (NEC)"
    assert source_of(read_size("6 mm2")).document == "IEC 60228"
    assert resistance(read_size("6 mm2"), Celsius(20.0)) == pytest.approx(3.39)
