"""Banks and days that several tests use."""

from dataclasses import replace

from engine.batteries.chemistry import CHEMISTRIES
from engine.charging.intake import Intake
from engine.simulate.days import Days
from engine.simulate.house import House, house_of
from engine.simulate.policy import NEVER, Engine, Policy, Setup
from engine.units import Amp, AmpHour, PerHour, Share, Volt

STEPS = 96


def lithium(capacity=240.0, start=1.0, **changes) -> House:
    """Return a lithium bank that loses nothing in charging and takes 0.5 A for each Ah."""
    house = house_of(CHEMISTRIES["lithium"], AmpHour(capacity), Volt(12.0), Share(start))
    lossless = Intake(AmpHour(capacity), PerHour(0.5), PerHour(10.0))
    return replace(house, **{"intake": lossless, **changes})


def flooded(capacity=200.0, start=1.0, **changes) -> House:
    """Return a flooded bank as it typically is."""
    house = house_of(CHEMISTRIES["flooded"], AmpHour(capacity), Volt(12.0), Share(start))
    return replace(house, **changes)


def alone(house: House) -> Setup:
    """Return a bank without an engine."""
    return Setup(house, NEVER)


def driven(house: House, current=50.0, fuel=1.0, **policy) -> Setup:
    """Return a bank with an engine."""
    return Setup(house, Policy(**policy), Engine(Amp(current), fuel))


def steady(load: float, days=1, **sources: float) -> Days:
    """Return days on which nothing changes."""
    rows = {name: (Amp(value),) * STEPS * days for name, value in sources.items()}
    return Days((Amp(load),) * STEPS * days, **rows)
