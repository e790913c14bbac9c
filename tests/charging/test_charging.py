"""Charging that cannot be, each with its words; and the reasons a source gives less."""

from typing import Any

import pytest

from engine.batteries.chemistry import CHEMISTRIES
from engine.charging.acceptance import acceptance, charge_for, time_to_charge
from engine.charging.alternator import Alternator, output
from engine.charging.generator import Generator, engine_fuel, generator_fuel
from engine.charging.intake import Intake, cold_derates, intake_of
from engine.charging.mains import Charger
from engine.charging.mains import output as charger_output
from engine.charging.site import speed_at_hub
from engine.charging.water import Rotor, power
from engine.charging.wind import Turbine, mean_power
from engine.derate import Derate, derated, working_of
from engine.problem import Problem
from engine.units import (
    Amp,
    AmpHour,
    Celsius,
    Hour,
    Metre,
    MetrePerSecond,
    PerHour,
    Share,
    SquareMetre,
    Volt,
    Watt,
)

BANK: dict[str, Any] = {
    "capacity": AmpHour(400.0), "limit": PerHour(0.25), "taper": PerHour(0.6),
    "efficiency": Share(0.9),
}  # fmt: skip
FLOODED = Intake(**BANK)


@pytest.mark.parametrize(
    ("name", "value"),
    [("capacity", 0.0), ("limit", -0.1), ("taper", 0.0), ("efficiency", 0.0), ("efficiency", 1.2)],
)
def test_a_bank_that_takes_no_charge_so(name, value):
    with pytest.raises(Problem) as raised:
        Intake(**{**BANK, name: value})
    assert raised.value.where == name
    assert raised.value.mend


@pytest.mark.parametrize(
    ("where", "start", "end"),
    [("to", 0.8, 0.8), ("to", 0.8, 0.5), ("to", 0.5, 1.0), ("from", -0.1, 0.5), ("to", 0.5, 1.4)],
)
def test_ends_that_are_no_charge(where, start, end):
    with pytest.raises(Problem) as raised:
        time_to_charge(FLOODED, Share(start), Share(end), Amp(40.0))
    assert raised.value.where == where
    assert raised.value.mend


def test_no_state_of_charge():
    with pytest.raises(Problem, match="no state of charge"):
        acceptance(FLOODED, Share(1.2), Amp(40.0))


def test_a_lithium_bank_below_freezing_cannot_be_charged():
    lithium = CHEMISTRIES["lithium"]
    frozen = intake_of(lithium, AmpHour(280.0), Celsius(-1.0))
    (line,) = cold_derates(lithium, Celsius(-1.0))
    assert "cannot be charged" in line.why
    assert frozen.limit == 0.0
    assert acceptance(frozen, Share(0.5), Amp(50.0)) == 0.0
    assert time_to_charge(frozen, Share(0.5), Share(0.9), Amp(50.0)) is None
    found = charge_for(frozen, Share(0.5), Amp(50.0), Hour(2.0))
    assert (found.charge, found.taken, found.curtailed) == (0.5, 0.0, 100.0)


@pytest.mark.parametrize(("celsius", "most"), [(0, 28), (4.9, 28), (5, 56), (9.9, 56), (10, 140)])
def test_a_cold_lithium_bank_is_charged_slowly(celsius, most):
    """A tenth of 280 Ah below 5 °C, a fifth below 10, half above."""
    bank = intake_of(CHEMISTRIES["lithium"], AmpHour(280.0), Celsius(celsius))
    assert acceptance(bank, Share(0.5), Amp(500.0)) == pytest.approx(most)


def test_cold_lead_is_charged_until_it_may_freeze():
    agm = CHEMISTRIES["agm"]
    assert cold_derates(agm, Celsius(-15.0)) == ()
    assert cold_derates(agm, Celsius(-25.0))[0].factor == 0.0


def test_no_source_takes_for_ever():
    assert time_to_charge(FLOODED, Share(0.5), Share(0.9), Amp(0.0)) is None
    assert time_to_charge(FLOODED, Share(0.5), Share(0.9), Amp(-5.0)) is None
    assert charge_for(FLOODED, Share(0.5), Amp(-5.0), Hour(1.0)).taken == 0.0


@pytest.mark.parametrize("factor", [-0.1, float("nan"), float("inf")])
def test_a_factor_that_cannot_be(factor):
    with pytest.raises(Problem, match="factor"):
        Derate("heat", factor, "hot")


def test_each_derate_is_a_line():
    lines = (Derate("speed", 0.8, "slow"), Derate("heat", 0.5, "hot"))
    assert derated(100.0, lines) == pytest.approx(40.0)
    shown = [str(line) for line in working_of(100.0, "A", lines)]
    assert shown == ["speed: slow, × 0.8 = 80 A", "heat: hot, × 0.5 = 40 A"]


IMPOSSIBLE = [
    ("marked", lambda: Alternator(Amp(0.0))),
    ("ratio", lambda: Alternator(Amp(90.0), 0.0)),
    ("hot", lambda: Alternator(Amp(90.0), hot=Share(0.0))),
    ("limit", lambda: Alternator(Amp(90.0), limit=Amp(-1.0))),
    ("ratio", lambda: output(Alternator(Amp(90.0), 4.0), 5000.0)),
    ("engine_speed", lambda: output(Alternator(Amp(90.0)), -1.0)),
    ("marked", lambda: Charger(Amp(0.0))),
    ("efficiency", lambda: Charger(Amp(40.0), Share(1.1))),
    ("power_factor", lambda: Charger(Amp(40.0), power_factor=Share(0.0))),
    ("area", lambda: Turbine(SquareMetre(0.0))),
    ("power_coefficient", lambda: Turbine(SquareMetre(1.0), Share(0.7))),
    ("rated", lambda: Turbine(SquareMetre(1.0), rated=Watt(0.0))),
    ("furl", lambda: Turbine(SquareMetre(1.0), cut_in=MetrePerSecond(20.0))),
    ("height", lambda: speed_at_hub(MetrePerSecond(5.0), Metre(0.0))),
    ("diameter", lambda: Rotor(Metre(0.0))),
    ("power_coefficient", lambda: Rotor(Metre(0.24), Share(0.6))),
    ("most", lambda: Rotor(Metre(0.24), most=Watt(0.0))),
    ("speed", lambda: power(Rotor(Metre(0.24)), MetrePerSecond(-1.0))),
    ("rated", lambda: Generator(Watt(0.0))),
    ("running", lambda: Generator(Watt(4000.0), running=-1.0)),
    ("load", lambda: generator_fuel(Generator(Watt(4000.0)), Watt(4100.0))),
    ("load", lambda: generator_fuel(Generator(Watt(4000.0)), Watt(-1.0))),
    ("made", lambda: engine_fuel(Watt(-1.0))),
]


@pytest.mark.parametrize(
    ("where", "make"),
    IMPOSSIBLE,
    ids=[f"{n} {where}" for n, (where, _) in enumerate(IMPOSSIBLE)],
)
def test_gear_that_cannot_be(where, make):
    with pytest.raises(Problem) as raised:
        make()
    assert raised.value.where == where
    assert raised.value.what
    assert raised.value.mend


def test_an_engine_that_does_not_turn_charges_nothing():
    assert output(Alternator(Amp(90.0), limit=Amp(50.0)), 0.0).current == 0.0


def test_a_charger_gives_way_on_a_small_inlet():
    """5.65 A asked and 2.82 over: half of 40 A, in words; nothing left gives nothing."""
    given = Charger(Amp(40.0)), Volt(14.4), Volt(120.0)
    current, (line,) = charger_output(*given, Amp(2.8235))
    assert current == pytest.approx(20.0, abs=0.01)
    assert "inlet" in line.why
    assert charger_output(*given, Amp(-3.0))[0] == 0.0


def test_no_wind_gives_no_power():
    assert mean_power(Turbine(SquareMetre(1.0)), MetrePerSecond(0.0)) == 0.0
