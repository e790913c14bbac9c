"""How a bank takes charge: its limit, its taper, what is lost, and what the cold forbids."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.charging.tables import COLD_CHARGE, COULOMBIC, MOST_CHARGE, TAPER
from engine.derate import Derate, derated
from engine.problem import Problem
from engine.source import common_practice
from engine.units import Amp, AmpHour, Celsius, PerHour, Share, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry

LOSSLESS: Final = Share(1.0)
STOPS_AT: Final = Celsius(3.0)
"""Where a sensor on a lithium bank is set to stop charging."""
STOPS: Final = common_practice("a cold sensor is set a little above 0 °C")


@dataclass(frozen=True, slots=True)
class Intake:
    """How a bank takes charge.

    ``capacity`` (Ah); ``limit``, the most current for each ampere-hour, 0 where it must not be
    charged, and ``taper``, the current for each ampere-hour it still lacks (both 1/h);
    ``efficiency``, ampere-hours kept of those put in (1).
    """

    capacity: AmpHour
    limit: PerHour
    taper: PerHour
    efficiency: Share = LOSSLESS

    def __post_init__(self) -> None:
        if not self.capacity > 0:
            raise Problem(
                "capacity", f"A bank of {said(self.capacity)} Ah takes no charge.", "Enter 220 Ah."
            )
        if not self.limit >= 0:
            raise Problem("limit", f"{said(self.limit)} /h is below zero.", "Enter 0.25 /h.")
        if not self.taper > 0:
            raise Problem("taper", f"{said(self.taper)} /h never fills a bank.", "Enter 0.6 /h.")
        if not 0 < self.efficiency <= 1:
            raise Problem(
                "efficiency",
                f"{said(self.efficiency * 100)} % of the charge cannot be kept.",
                "Enter more than 0 and at most 100 %.",
            )

    def bulk(self, source: Amp) -> Amp:
        """Return the current before the taper.

        Parameters
        ----------
        source : Amp
            What the source has over, after the loads. [A]

        Returns
        -------
        Amp
            The lesser of source and limit. [A]
        """
        return Amp(min(max(source, 0.0), self.limit * self.capacity))

    def taper_line(self, source: Amp) -> Share:
        """Return the charge at which the taper begins.

        Parameters
        ----------
        source : Amp
            What the source has over, after the loads. [A]

        Returns
        -------
        Share
            0 where it tapers from the first. [1]
        """
        return Share(max(1 - self.bulk(source) / (self.taper * self.capacity), 0.0))


@dataclass(frozen=True, slots=True)
class Limit:
    """Most charging current: ``warm`` (A), what the cold takes off, and whether it is stated."""

    warm: Amp
    cold: tuple[Derate, ...]
    stated: bool

    @property
    def current(self) -> Amp:
        """What is left as cold as the bank is, A; 0 where it must not be charged."""
        return Amp(derated(self.warm, self.cold))


def limit_of(
    chemistry: Chemistry,
    capacity: AmpHour,
    temperature: Celsius,
    stated: Amp | None = None,
    *,
    sensor: bool = False,
) -> Limit:
    """Return the most current a bank should be charged with.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    capacity : AmpHour
        As it is now. [Ah]
    temperature : Celsius
        Of the cells. [°C]
    stated : Amp or None
        By its label; the lesser of it and the usual one counts. [A]
    sensor : bool
        Whether a sensor stops charging a lithium bank that is cold.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> lithium = CHEMISTRIES["lithium"]
    >>> limit_of(lithium, AmpHour(280.0), Celsius(25.0)).current
    140.0
    >>> limit_of(lithium, AmpHour(280.0), Celsius(5.0), Amp(22.0)).current
    22.0
    """
    usual = MOST_CHARGE[chemistry.name] * capacity
    known = stated is not None and stated <= usual
    warm = Amp(stated if known and stated is not None else usual)
    if sensor and not chemistry.lead and chemistry.coldest_charge <= temperature < STOPS_AT:
        why = f"its sensor stops charging below {said(STOPS_AT)} °C"
        return Limit(warm, (Derate("cold", 0.0, why, STOPS),), known)
    each = PerHour(warm / capacity) if capacity > 0 else None
    return Limit(warm, cold_derates(chemistry, temperature, each), known)


def cold_derates(
    chemistry: Chemistry, temperature: Celsius, most: PerHour | None = None
) -> tuple[Derate, ...]:
    """Return what the cold takes off the limit of a bank.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    temperature : Celsius
        Of the cells. [°C]
    most : PerHour or None
        The limit for each ampere-hour; None for the usual one. [1/h]

    Returns
    -------
    tuple of Derate
        Shape ``(0,)`` where the cold changes nothing; a factor of 0 means it cannot be charged.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> from engine.units import Celsius
    >>> lithium = CHEMISTRIES["lithium"]
    >>> [cold_derates(lithium, Celsius(c))[0].factor for c in (-1.0, 0.0, 5.0)]
    [0.0, 0.2, 0.4]
    >>> cold_derates(lithium, Celsius(10.0))
    ()
    """
    cells, coldest = f"cells at {said(temperature)} °C", chemistry.coldest_charge
    if temperature < coldest:
        why = f"{cells} cannot be charged: below {said(coldest)} °C charging spoils them"
        return (Derate("cold", 0.0, why, COLD_CHARGE.source),)
    if chemistry.lead:
        return ()
    for below, cold in COLD_CHARGE.rows.items():
        if temperature < below:
            why = f"{cells} take at most {said(cold)} A for each ampere-hour"
            factor = cold / (most or MOST_CHARGE[chemistry.name])
            return (Derate("cold", factor, why, COLD_CHARGE.source),) if factor < 1 else ()
    return ()


def intake_of(chemistry: Chemistry, capacity: AmpHour, temperature: Celsius) -> Intake:
    """Return how a bank of a chemistry typically takes charge.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    capacity : AmpHour
        As it is now. [Ah]
    temperature : Celsius
        Of the cells. [°C]
    """
    name = chemistry.name
    limit = derated(MOST_CHARGE[name], cold_derates(chemistry, temperature))
    return Intake(capacity, PerHour(limit), PerHour(TAPER[name]), Share(COULOMBIC[name]))
