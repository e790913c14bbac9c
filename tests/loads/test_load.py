"""One load and the current it takes; every figure is a hand sum shown beside it."""

import pytest

from engine.estimate import Estimate
from engine.inverter.efficiency import Curve
from engine.loads.load import (
    Load,
    Supply,
    ac_power,
    bank_current,
    running_hours,
    surge_current,
)
from engine.units import Volt, Watt

PLAIN = Supply(Volt(12.0))
CURVE = Curve(Watt(1000.0), 0.01, 0.05, 0.0)
INVERTED = Supply(Volt(12.0), CURVE)
POWER = Estimate(60.0, 120.0, 240.0, "nameplate")
HALF_DAY = (Estimate(6.0, 12.0, 18.0), None, Estimate.exact(0.0), Estimate.exact(24.0))


def test_watts_on_the_dc_side_are_divided_by_the_volts():
    """120 W / 12 V = 10 A; 60 and 240 W give 5 and 20."""
    found = bank_current(Load("L01", "lamp", watts=POWER), PLAIN)
    assert found == Estimate(5.0, 10.0, 20.0, "nameplate")


def test_an_ac_load_pays_the_loss_at_its_own_power():
    """120 W: 120 + 0.01 × 1000 + 0.05 × 120 = 136 W, 11.33 A; 60 W: 73 W; 240 W: 262 W."""
    found = bank_current(Load("L01", "lamp", supply="inverter", watts=POWER), INVERTED)
    assert found is not None
    assert [found.low, found.likely, found.high] == pytest.approx([73 / 12, 136 / 12, 262 / 12])
    assert found.known_by == "nameplate"


def test_what_cannot_be_said_is_none():
    assert bank_current(Load("L01", "lamp"), PLAIN) is None
    assert bank_current(Load("L01", "lamp", supply="inverter", watts=POWER), PLAIN) is None
    assert Load("L01", "lamp").known_by == "unknown"


def test_from_shore_the_bank_gives_nothing():
    heater = Load("L01", "heater", supply="shore", watts=POWER, surge=500.0)
    assert bank_current(heater, PLAIN) == Estimate.exact(0.0, "nameplate")
    assert surge_current(heater, PLAIN) is None


def test_power_at_the_plug():
    """Of 136 W taken 120 W come out; a draw read on the DC side is turned round."""
    by_watts = Load("L01", "kettle", supply="inverter", watts=POWER)
    by_amperes = Load("L01", "kettle", supply="inverter", draw=Estimate.exact(136 / 12))
    assert ac_power(by_watts, INVERTED) == 120.0
    assert ac_power(by_amperes, INVERTED) == pytest.approx(120.0)
    assert ac_power(by_amperes, PLAIN) is None
    assert ac_power(Load("L01", "lamp", watts=POWER), INVERTED) is None


def test_surge_is_in_the_unit_of_the_draw():
    """240 W / 12 V = 20 A; through the inverter (240 + 10 + 12) / 12 = 21.83 A."""
    none = Load("L01", "pump", draw=Estimate.exact(5.0))
    amperes = Load("L01", "pump", draw=Estimate.exact(5.0), surge=14.0)
    watts = Load("L01", "pump", watts=POWER, surge=240.0)
    plugged = Load("L01", "pump", supply="inverter", watts=POWER, surge=240.0)
    assert surge_current(none, PLAIN) is None
    assert surge_current(amperes, PLAIN) == 14.0
    assert surge_current(watts, PLAIN) == 20.0
    assert surge_current(plugged, INVERTED) == pytest.approx(262 / 12)
    assert surge_current(plugged, PLAIN) is None


def test_running_hours_are_hours_times_duty():
    """12 h × 0.4 = 4.8 h."""
    fridge = Load("L01", "fridge", hours=HALF_DAY, duty=Estimate.exact(0.4))
    assert running_hours(fridge, "anchor") == pytest.approx(4.8)
    assert running_hours(Load("L01", "lamp", hours=HALF_DAY), "anchor") == 12.0
    assert running_hours(fridge, "passage") is None
