"""What charging burns: an AC generator by its load, and the boat's own engine at idle."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.charging.tables import ENGINE_FUEL, GENERATOR_FUEL
from engine.estimate import Estimate
from engine.finding import meets
from engine.problem import Problem
from engine.units import Watt, said

KILO: Final = 1000.0


@dataclass(frozen=True, slots=True)
class Generator:
    """A diesel generator: ``rated`` (W), and its fuel for each kW of rating and of load (L/kWh)."""

    rated: Watt
    standing: float = GENERATOR_FUEL["rating"]
    running: float = GENERATOR_FUEL["load"]

    def __post_init__(self) -> None:
        if not self.rated > 0:
            raise Problem("rated", f"A rating of {said(self.rated)} W is none.", "Enter 4000 W.")
        for name in ("standing", "running"):
            if not getattr(self, name) >= 0:
                what = f"{said(getattr(self, name))} L/kWh is below zero."
                raise Problem(name, what, "Enter 0.08 standing and 0.25 running.")


def generator_fuel(generator: Generator, load: Watt) -> float:
    """Return what a running generator burns.

    Parameters
    ----------
    generator : Generator
        As fitted.
    load : Watt
        On its AC side. [W]

    Returns
    -------
    float
        ``standing × rating + running × load``. [L/h]

    Raises
    ------
    Problem
        If the load is below zero or more than the rating.

    References
    ----------
    .. [1] Skarstein and Uhlen, fuel of diesel sets in wind-diesel systems, 1989.

    Examples
    --------
    >>> generator_fuel(Generator(Watt(4000.0)), Watt(2000.0))
    0.829
    """
    if load < 0 or not meets(load, generator.rated):
        raise Problem(
            "load",
            f"{said(load)} W is not a load of a generator of {said(generator.rated)} W.",
            f"Enter 0 to {said(generator.rated)} W.",
        )
    return (generator.standing * generator.rated + generator.running * load) / KILO


def engine_fuel(made: Watt) -> Estimate:
    """Return what a boat's engine burns when it runs at idle only to charge.

    Parameters
    ----------
    made : Watt
        By its alternator, electrical. [W]

    Returns
    -------
    Estimate
        Idling and what the alternator adds. [L/h]

    Examples
    --------
    >>> engine_fuel(Watt(700.0)).likely
    1.42
    """
    if made < 0:
        raise Problem("made", f"{said(made)} W is below zero.", "Enter 700 W.")
    idle, each = ENGINE_FUEL["idling"], ENGINE_FUEL["each kWh"]
    low, likely, high = (one + more * made / KILO for one, more in zip(idle, each, strict=True))
    return Estimate(low, likely, high, "default")
