"""Entries that no bank can be: each names itself and its mend."""

from typing import Any

import pytest

from engine.batteries.ageing import cycle_life
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.sizing import Need, days_alone
from engine.batteries.two_well import State, Wells, state_at, step
from engine.batteries.voltage import resting_caution
from engine.problem import Problem
from engine.units import Amp, AmpHour, Hour, PerHour, Share

WELLS: dict[str, Any] = {"rate": PerHour(0.4), "share": Share(0.4), "full": AmpHour(100.0)}
NEED: dict[str, Any] = {
    "daily": AmpHour(50.0), "days": 2.0, "depth": Share(0.5), "daily_depth": Share(0.2),
    "end_of_life": Share(0.8), "largest_current": Amp(5.0), "temperature_factor": 1.0,
    "margin": 1.1,
}  # fmt: skip


@pytest.mark.parametrize(
    ("name", "value"), [("rate", 0.0), ("share", 0.0), ("share", 1.0), ("full", -5.0)]
)
def test_wells_that_cannot_be(name, value):
    with pytest.raises(Problem) as raised:
        Wells(**{**WELLS, name: value})
    assert raised.value.where == name
    assert raised.value.mend


@pytest.mark.parametrize(
    ("name", "state"),
    [
        ("available", State(AmpHour(41.0), AmpHour(10.0))),
        ("available", State(AmpHour(-1.0), AmpHour(10.0))),
        ("bound", State(AmpHour(10.0), AmpHour(61.0))),
        ("bound", State(AmpHour(10.0), AmpHour(float("nan")))),
    ],
)
def test_a_well_that_holds_what_it_cannot(name, state):
    with pytest.raises(Problem) as raised:
        step(Wells(**WELLS), state, Amp(1.0), Hour(1.0))
    assert raised.value.where == name


def test_a_rested_bank_left_alone_stays_as_it_is():
    wells = Wells(**WELLS)
    start = state_at(wells, Share(0.7))
    after, flowed = step(wells, start, Amp(0.0), Hour(100.0))
    assert flowed == 0.0
    assert [after.available, after.bound] == pytest.approx([28.0, 42.0])


@pytest.mark.parametrize(
    ("name", "value"),
    [(name, 0.0) for name in NEED] + [("depth", 1.2), ("daily_depth", -0.1), ("margin", -1.0)],
)
def test_a_need_that_sizes_no_bank(name, value):
    with pytest.raises(Problem) as raised:
        Need(**{**NEED, name: value})
    assert raised.value.where == name
    assert raised.value.mend


def test_days_alone_with_as_much_coming_in_cannot_be_said():
    given = AmpHour(100.0), Share(0.5), Share(1.0)
    assert days_alone(*given, AmpHour(0.0)) is None
    assert days_alone(*given, AmpHour(-3.0)) is None


@pytest.mark.parametrize("depth", [0.0, -0.5, 1.01])
def test_no_cycle_of_that_depth(depth):
    with pytest.raises(Problem, match="depth"):
        cycle_life(CHEMISTRIES["agm"], Share(depth))


def test_lithium_volts_at_rest_are_warned_of_only_where_they_are_flat():
    lithium = CHEMISTRIES["lithium"]
    warned = [bool(resting_caution(lithium, Share(s))) for s in (0.2, 0.3, 0.6, 0.9, 0.95)]
    assert warned == [False, True, True, True, False]
    assert "0.44 V" in (resting_caution(lithium, Share(0.5)) or "")
