"""Constant power on a supply that sags: the less it shows, the more the inverter takes."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf, sqrt
from typing import Final

from engine.finding import Rule, meets
from engine.source import Source
from engine.units import Amp, Ohm, Volt, Watt

SAG: Final = Source("Ohm's law", "constant power", "I = (E − √(E² − 4 R P)) / (2 R)")

OPERATES: Final = Rule(
    "operating point",
    "bank and cable can bring the inverter the watts it asks for",
    SAG,
)
TRIPS: Final = Rule(
    "cut-off",
    "the volts at the inverter stay above its low-voltage cut-off",
    Source("inverter makers' sheets", "common", "10.5 V of a nominal 12 V", typical=True),
)
CUT_OFF_SHARE: Final = 10.5 / 12.0
"""Where an inverter commonly cuts off, over the nominal volts; its sheet says."""


@dataclass(frozen=True, slots=True)
class OperatingPoint:
    """Current drawn in A, and volts at the inverter in V."""

    current: Amp
    volts: Volt


def collapse_power(open_volts: Volt, resistance: Ohm) -> Watt:
    """Return the most watts a sagging supply can give at all.

    Parameters
    ----------
    open_volts : Volt
        At rest, above zero. [V]
    resistance : Ohm
        Of bank and cable there and back. [Ω]

    Returns
    -------
    Watt
        ``E² / (4 R)``, where half the volts are left. [W]

    Examples
    --------
    >>> collapse_power(Volt(12.0), Ohm(0.01))
    3600.0
    """
    return Watt(open_volts**2 / (4 * resistance)) if resistance > 0 else Watt(inf)


def operating_point(open_volts: Volt, resistance: Ohm, watts: Watt) -> OperatingPoint | None:
    """Return where a constant-power load settles, or None where it never does.

    Parameters
    ----------
    open_volts : Volt
        At rest, above zero. [V]
    resistance : Ohm
        Of bank and cable there and back. [Ω]
    watts : Watt
        Taken at the inverter's terminals. [W]

    Returns
    -------
    OperatingPoint or None
        The upper root; None beyond the collapse power, which is a finding and no error.

    Notes
    -----
    ``I = 2 P / (E + √(E² − 4 R P))`` is the quadratic's root written so that a small resistance
    loses no digits.

    Examples
    --------
    >>> point = operating_point(Volt(12.4), Ohm(0.006), Watt(2000.0))
    >>> round(point.current, 1), round(point.volts, 2)
    (176.3, 11.34)
    >>> operating_point(Volt(12.0), Ohm(0.01), Watt(4000.0)) is None
    True
    """
    if not meets(watts, collapse_power(open_volts, resistance)):
        return None
    both = open_volts + sqrt(max(open_volts**2 - 4 * resistance * watts, 0.0))
    return OperatingPoint(Amp(2 * watts / both), Volt(both / 2))
