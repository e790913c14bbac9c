"""An inverter-charger on shore power: what passes through, and what is left to charge with."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Rule
from engine.problem import Problem
from engine.shore.together import CONTINUOUS
from engine.source import Source
from engine.units import Amp, Volt, Watt, said

if TYPE_CHECKING:
    from engine.shore.services import Service

CURRENT_LIMIT: Final = Rule(
    "current limit",
    "the limit set in an inverter-charger leaves the dock's breaker within 80 % of its rating",
    Source("inverter-charger makers' sheets", "common", "input current limit", typical=True),
)


@dataclass(frozen=True, slots=True)
class PassThrough:
    """Taken from shore in A, charging watts left, and watts the bank must add."""

    shore: Amp
    charging: Watt
    from_bank: Watt


def pass_through(limit: Amp, volts: Volt, loads: Watt, charger: Watt) -> PassThrough:
    """Return how an inverter-charger shares its input: loads first, the charger with what is left.

    Parameters
    ----------
    limit : Amp
        Input current limit as set. [A]
    volts : Volt
        At its input. [V]
    loads : Watt
        Behind its output. [W]
    charger : Watt
        AC watts the charger would take if it could. [W]

    Returns
    -------
    PassThrough
        The bank adds what the limit does not cover; only units that assist can do so, the others
        trip.

    Raises
    ------
    Problem
        If limit or volts are not above zero, or watts are negative.

    Examples
    --------
    >>> pass_through(Amp(10.0), Volt(120.0), Watt(700.0), Watt(680.0))
    PassThrough(shore=10.0, charging=500.0, from_bank=0.0)
    """
    if limit <= 0 or volts <= 0:
        raise Problem(
            "limit",
            f"A limit of {said(limit)} A at {said(volts)} V lets nothing in.",
            "Enter such as 12 A at 120 V.",
        )
    if loads < 0 or charger < 0:
        raise Problem("loads", "Watts of a load cannot be negative.", "Enter 0 W or more.")
    allowed = limit * volts
    charging = max(min(charger, allowed - loads), 0.0)
    from_bank = max(loads - allowed, 0.0)
    return PassThrough(Amp((loads + charging - from_bank) / volts), Watt(charging), Watt(from_bank))


def limit_setting(service: Service, beside: Amp) -> Amp | None:
    """Return the largest current limit to set, or None where nothing is left.

    Parameters
    ----------
    service : Service
        What the dock offers.
    beside : Amp
        Drawn from the same inlet beside the inverter-charger. [A]

    Returns
    -------
    Amp or None
        80 % of the service less what runs beside. [A]

    Examples
    --------
    >>> from engine.shore.services import service
    >>> limit_setting(service("30 A 120 V"), Amp(18.0))
    6.0
    """
    left = CONTINUOUS * service.rating - beside
    return Amp(left) if left > 0 else None
