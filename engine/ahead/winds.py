"""The plan's turbines: what they feel of the wind, and what they bring on a day."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING, Final

from engine.ahead.panels import charging_volts
from engine.charging.site import OPEN, apparent_speed, speed_at_hub
from engine.charging.wind import Turbine, mean_power, power_at
from engine.units import MetrePerSecond, SquareMetre

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.ahead.place import Where
    from engine.plan.source_parts import SourcePlan
    from engine.units import Volt, Watt

ABEAM: Final = 90.0
"""Angle of the true wind from the bow under way, °."""
STEADIEST: Final = 3.0
"""Wind over the mean wind beyond which no steady wind is looked for."""
HALVINGS: Final = 40


def turbine_of(source: SourcePlan) -> Turbine | None:
    """Return the turbine of a source; None where its size is not known.

    Parameters
    ----------
    source : SourcePlan
        Of kind wind.
    """
    across = source.rotor.diameter
    if across is None:
        return None
    area = SquareMetre(pi / 4 * across**2)
    if source.watts is None:
        return Turbine(area, source.rotor.coefficient)
    return Turbine(area, source.rotor.coefficient, source.watts)


def wind_at(source: SourcePlan, where: Where | None, condition: str) -> MetrePerSecond | None:
    """Return the mean wind a turbine feels.

    Parameters
    ----------
    source : SourcePlan
        Of kind wind.
    where : Where or None
        Place and month, whose wind counts where none is stated.
    condition : str
        One of CONDITIONS; on passage there is no shelter, and the wind counts as abeam.

    Returns
    -------
    MetrePerSecond or None
        At the hub; None where no wind is known. [m/s]
    """
    rotor = source.rotor
    open_wind = rotor.wind_speed or (where.wind if where else None)
    if open_wind is None:
        return None
    if condition != "passage":
        return speed_at_hub(open_wind, rotor.height, rotor.shelter)
    return apparent_speed(speed_at_hub(open_wind, rotor.height, OPEN), rotor.boat_speed, ABEAM)


def turbines_of(
    sources: tuple[SourcePlan, ...], where: Where, condition: str
) -> tuple[tuple[Turbine, MetrePerSecond], ...]:
    """Return each turbine of known size, and the mean wind it feels.

    Parameters
    ----------
    sources : tuple of SourcePlan
        Shape ``(n,)``.
    where : Where
        Place and month.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    tuple of tuple
        Shape ``(m, 2)``; the wind at the hub. [m/s]
    """
    found = []
    for one in sources:
        turbine, speed = turbine_of(one), wind_at(one, where, condition)
        if one.kind == "wind" and turbine and speed:
            found.append((turbine, speed))
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Winds:
    """What the turbines of a plan bring on a day, by its wind over the mean wind."""

    turbines: tuple[tuple[Turbine, MetrePerSecond], ...]
    volts: Volt

    def __call__(self, over_mean: float) -> float:
        """Return the mean current of a day, A."""
        return self._current(power_at, over_mean)

    @property
    def mean(self) -> float:
        """Mean current of many days, A."""
        return self._current(mean_power, 1.0)

    def _current(
        self, rule: Callable[[Turbine, MetrePerSecond], Watt], over_mean: float
    ) -> float:  # fmt: skip
        watts = sum(
            rule(turbine, MetrePerSecond(speed * over_mean)) for turbine, speed in self.turbines
        )
        return watts / charging_volts(self.volts)

    @property
    def steady(self) -> float:
        """The steady wind, over the mean wind, that brings what many days bring on average."""
        low, high = 0.0, STEADIEST
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            low, high = (middle, high) if self(middle) < self.mean else (low, middle)
        return high
