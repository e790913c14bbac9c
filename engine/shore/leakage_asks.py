"""What is asked of leakage protection: at the main and at outlets, by the service."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Rule
from engine.source import Source
from engine.units import Amp

if TYPE_CHECKING:
    from engine.shore.services import Service

MAIN_TRIP: Final = Amp(0.030)
"""Leakage at which the main's protection has opened, A."""
MAIN_TIME: Final = 0.100
"""Longest it may take, s."""
MAIN_TIME_230: Final = 0.300
"""Longest at 230 V, at the leakage it is marked with, s; 100 ms is the stricter habit."""
RECEPTACLE_MUST: Final = Amp(0.006)
"""Leakage from which a receptacle's device must open, A."""

MAIN_LEAKAGE: Final = Rule(
    "leakage at the main",
    "leakage protection of at most 30 mA and 100 ms stands with or beside the main breaker",
    Source("ABYC E-11", "as reprinted", "11.11.1 and 11.11.1.1"),
)
MAIN_LEAKAGE_230: Final = Rule(
    "leakage at the main, 230 V",
    "leakage protection of at most 30 mA that opens within 300 ms stands with or beside the main "
    "breaker; 100 ms is the stricter habit",
    Source("BS 7671", "as reprinted", "30 mA at its marked leakage, 300 ms"),
)
WET_RECEPTACLE: Final = Rule(
    "wet receptacles",
    "receptacles in head, galley, machinery space and on deck open at 5 mA nominal",
    Source("ABYC E-11", "as reprinted", "receptacles with ground-fault protection"),
)
WET_OUTLETS_230: Final = Rule(
    "outlets at 230 V",
    "outlets in head, galley, machinery space and on deck stand behind leakage protection of at "
    "most 30 mA, their own or the main's",
    Source("ISO 13297", "as remembered", "residual-current device", typical=True),
)
WET_PLACES: Final = ("head", "galley", "machinery space", "weather deck")
"""Where a receptacle asks for leakage protection."""


@dataclass(frozen=True, slots=True)
class Ask:
    """What a rule asks of leakage protection: opened at A, within s; None where no time is.

    ``habit`` is a stricter time some standards ask, in s.
    """

    trip: Amp
    time: float | None
    rule: Rule
    habit: float | None = None


def main_asks(service: Service | None) -> Ask:
    """Return what is asked of the leakage protection at the main, by the service.

    Parameters
    ----------
    service : Service or None
        What the inlet is for; where None, what no rule lets pass.

    Examples
    --------
    >>> from engine.shore.services import service
    >>> [main_asks(service(name)).time for name in ("30 A 120 V", "16 A 230 V")]
    [0.1, 0.3]
    """
    if service is not None and service.american:
        return Ask(MAIN_TRIP, MAIN_TIME, MAIN_LEAKAGE)
    return Ask(MAIN_TRIP, MAIN_TIME_230, MAIN_LEAKAGE_230, MAIN_TIME)


def outlets_ask(service: Service | None) -> Ask:
    """Return what is asked of outlets where people are wet, by the service.

    Parameters
    ----------
    service : Service or None
        What the inlet is for; where None, what no rule lets pass.

    Examples
    --------
    >>> from engine.shore.services import service
    >>> [outlets_ask(service(name)).trip for name in ("30 A 120 V", "16 A 230 V")]
    [0.006, 0.03]
    """
    if service is not None and service.american:
        return Ask(RECEPTACLE_MUST, None, WET_RECEPTACLE)
    return Ask(MAIN_TRIP, None, WET_OUTLETS_230)
