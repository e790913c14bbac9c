"""The house bank as a run of days sees it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from engine.batteries.temperature import RATED
from engine.batteries.two_well import Wells, wells_of
from engine.charging.intake import Intake, intake_of
from engine.problem import Problem
from engine.source import common_practice
from engine.units import Amp, AmpHour, Celsius, PerHour, Share, Volt, said

if TYPE_CHECKING:
    from collections.abc import Mapping

    from engine.batteries.chemistry import Chemistry

FULL: Final = Share(0.98)
"""What most call full; a tapering current never comes to 100 %."""
APART: Final = Share(0.02)
"""Least distance of reconnecting above disconnecting."""
RECONNECT: Final = Share(0.1)
"""Charge above the disconnect at which loads come back, where nothing is said."""
DISCONNECT: Final[Mapping[bool, Share]] = {True: Share(0.2), False: Share(0.1)}
"""Charge at which the loads are taken off, for lead (True) and lithium."""
BELOW: Final = Share(0.02)
"""Least distance of the disconnect below a stated reserve."""
DISCONNECT_SOURCE: Final = common_practice("low-voltage disconnect at 20 % of lead, 10 % lithium")


@dataclass(frozen=True, slots=True)
class House:
    """A house bank.

    ``capacity`` as it is now (Ah); ``start``, ``reserve``, ``disconnect`` and ``reconnect`` are
    shares of what it holds (1); ``wells`` is None where it is counted in ampere-hours, as lithium
    is; ``largest`` is the most discharge it may see, None for no bound (A).
    """

    chemistry: Chemistry
    volts: Volt
    capacity: AmpHour
    start: Share
    reserve: Share
    disconnect: Share
    reconnect: Share
    intake: Intake
    wells: Wells | None = None
    largest: Amp | None = None

    def __post_init__(self) -> None:
        if not self.capacity > 0:
            raise Problem(
                "capacity", f"A bank of {said(self.capacity)} Ah holds nothing.", "Enter 220 Ah."
            )
        if not self.volts > 0:
            raise Problem("volts", f"A bank of {said(self.volts)} V drives nothing.", "Enter 12 V.")
        for name in ("start", "reserve", "disconnect", "reconnect"):
            if not 0 <= getattr(self, name) <= 1:
                raise Problem(
                    name,
                    f"{said(getattr(self, name) * 100)} % is no state of charge.",
                    "Enter 0 to 100 %.",
                )
        if self.reconnect < self.disconnect + APART:
            raise Problem(
                "reconnect",
                f"Loads that come back at {said(self.reconnect * 100)} % and leave at "
                f"{said(self.disconnect * 100)} % would switch on and off.",
                f"Enter at least {said((self.disconnect + APART) * 100)} %.",
            )
        if self.largest is not None and not self.largest > 0:
            raise Problem(
                "largest", f"A bank that gives {said(self.largest)} A is none.", "Enter 100 A."
            )

    @property
    def full(self) -> AmpHour:
        """What the bank holds when charge is 1, Ah: both wells, or the capacity."""
        return self.wells.full if self.wells else self.capacity

    @property
    def filling(self) -> Intake:
        """How it takes charge for each ampere-hour of all it holds, so that shares fit ``full``."""
        intake, part = self.intake, self.intake.capacity / self.full
        limit, taper = PerHour(intake.limit * part), PerHour(intake.taper * part)
        return Intake(self.full, limit, taper, intake.efficiency)


def house_of(  # noqa: PLR0913, PLR0917
    chemistry: Chemistry,
    capacity: AmpHour,
    volts: Volt,
    start: Share,
    reserve: Share | None = None,
    temperature: Celsius = RATED,
    limit: Amp | None = None,
) -> House:
    """Return a bank as its chemistry typically is.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank; lead gets two wells.
    capacity : AmpHour
        At 20 hours, as it is now. [Ah]
    volts : Volt
        Of the system. [V]
    start : Share
        Charge as the days begin. [1]
    reserve : Share or None
        Charge below which the plan never goes; None for what the chemistry leaves unused. [1]
    temperature : Celsius
        Of the cells. [°C]
    limit : Amp or None
        Most charging current, as the cold leaves it; None for the usual one. [A]

    Notes
    -----
    The loads are never taken off at or above the reserve: the disconnect lies 2 points below it
    at least.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> bank = house_of(CHEMISTRIES["lithium"], AmpHour(280.0), Volt(12.0), Share(0.95))
    >>> bank.full, round(bank.reserve, 2), bank.wells
    (280.0, 0.2, None)
    """
    kept = Share(1 - chemistry.usable) if reserve is None else reserve
    disconnect = Share(max(min(DISCONNECT[chemistry.lead], kept - BELOW), 0.0))
    intake = intake_of(chemistry, capacity, temperature)
    if limit is not None:
        intake = replace(intake, limit=PerHour(limit / capacity))
    return House(
        chemistry=chemistry,
        volts=volts,
        capacity=capacity,
        start=start,
        reserve=kept,
        disconnect=disconnect,
        reconnect=Share(disconnect + RECONNECT),
        intake=intake,
        wells=wells_of(chemistry, capacity) if chemistry.lead else None,
    )
