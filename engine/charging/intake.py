"""How a bank takes charge: its limit, its taper, what is lost, and what the cold forbids."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.charging.tables import COLD_CHARGE, COULOMBIC, MOST_CHARGE, TAPER
from engine.derate import Derate, derated
from engine.problem import Problem
from engine.units import Amp, AmpHour, PerHour, Share, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry
    from engine.units import Celsius

LOSSLESS: Final = Share(1.0)


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


def cold_derates(chemistry: Chemistry, temperature: Celsius) -> tuple[Derate, ...]:
    """Return what the cold takes off the limit of a bank.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    temperature : Celsius
        Of the cells. [°C]

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
    for below, most in COLD_CHARGE.rows.items():
        if temperature < below:
            why = f"{cells} take at most {said(most)} A for each ampere-hour"
            factor = min(most / MOST_CHARGE[chemistry.name], 1.0)
            return (Derate("cold", factor, why, COLD_CHARGE.source),)
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
