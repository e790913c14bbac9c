"""What a licensed person's words say: figures of a leakage trip, and joins source by source."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from engine.problem import Problem
from engine.shore.earthing import Supply
from engine.units import Amp, number, said

_UNITS: Final = {"ma": 0.001, "milliamp": 0.001, "ms": 0.001, "millis": 0.001, "a": 1.0, "s": 1.0}
"""How each unit begins, and what it is in A or s."""
_FIGURE: Final = re.compile(
    r"(\d+(?:[.,]\d+)?)\s*(mA|milliamp\w*|ms|msecs?|milliseconds?|A|amps?|s|secs?|seconds?)(?!\w)",
    re.IGNORECASE,
)
LARGEST: Final = Amp(1.0)
"""From here up a current is a breaker's rating, not a leakage, A."""
_HELD: Final = re.compile(
    r"\b(?:(?:no|not|never|without)\s+(?:a\s+)?(?:trip\w*|open\w*)|holds?|held)\b"
    r"[^,;]*?\d+(?:[.,]\d+)?\s*m?A\b",
    re.IGNORECASE,
)
"""A current it did not open at."""
_TESTED_AT: Final = re.compile(r"(?<=s)\s*(?:at|@)\s*150\s*mA\b", re.IGNORECASE)
"""A time taken at five times 30 mA: the current it was tested with, not what it opens at."""

ABOUT_TRIP: Final = re.compile(r"\b(?:leakage|residual|elci|rcd|rcbo|gfci)\b", re.IGNORECASE)
ABOUT_OUTLETS: Final = re.compile(r"\b(?:outlets?|receptacles?|sockets?|gfci)\b", re.IGNORECASE)
ABOUT_JOIN: Final = re.compile(
    r"\bneutral\b.*\b(?:ground|earth|pe)\b|\b(?:ground|earth|pe)\b.*\bneutral\b|\bn[-–]p?[eg]\b",
    re.IGNORECASE,
)

NAMES: Final = {
    Supply.SHORE: re.compile(r"\b(?:shore|dock\w*|plugged|cord|pedestal)\b", re.IGNORECASE),
    Supply.INVERTER: re.compile(r"\b(?:invert\w*)\b", re.IGNORECASE),
    Supply.GENERATOR: re.compile(r"\b(?:generat\w*|genset)\b", re.IGNORECASE),
    Supply.TRANSFORMER: re.compile(r"\b(?:transformer\w*|secondary)\b", re.IGNORECASE),
}
"""Words that name each source in use."""
_STATE: Final = r"(?:open|joined|join|closed|bonded|connected|continu\w+|separate|apart)"
_CLAUSES: Final = re.compile(
    rf"[;\n]|[,.](?!\d)|\bbut\b|\band\b(?=\s+(?:is\s+|are\s+|was\s+)?(?:not\s+)?{_STATE}\b)",
    re.IGNORECASE,
)
_JOINED: Final = re.compile(
    r"\b(?:joined|join|closed|bonded|bond|connected|continuous|continuity)\b", re.IGNORECASE
)
_OPEN: Final = re.compile(r"\b(?:open|separate|apart|unbonded|disconnected)\b", re.IGNORECASE)
_NOT: Final = re.compile(r"\b(?:no|not|never|none|isn't)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Trip:
    """What was read of a leakage trip: every current in A and every time in s."""

    currents: tuple[Amp, ...]
    times: tuple[float, ...]


def trip_of(text: str) -> Trip:
    """Return the currents and times that words about a leakage trip name.

    A current it held at is left out, and so is 150 mA where a time was taken at it.

    Parameters
    ----------
    text : str
        As the licensed person gave it.

    Examples
    --------
    >>> trip_of("24 mA, 38 ms")
    Trip(currents=(0.024,), times=(0.038,))
    >>> trip_of("no trip at 15 mA, opens at 0.045 A in 0.4 s")
    Trip(currents=(0.045,), times=(0.4,))
    >>> trip_of("quick enough")
    Trip(currents=(), times=())
    """
    currents: list[Amp] = []
    times: list[float] = []
    for figure, unit in _FIGURE.findall(_TESTED_AT.sub("", _HELD.sub("", text))):
        factor = next(one for start, one in _UNITS.items() if unit.lower().startswith(start))
        try:
            value = number(figure) * factor
        except Problem:
            continue
        if unit.lower().startswith(("ms", "millis", "s")):
            times.append(value)
        elif value < LARGEST:
            currents.append(Amp(value))
    return Trip(tuple(currents), tuple(times))


def about_trip(name: str, text: str) -> bool:
    """Return whether a result is about a leakage trip, by its words or by its figures.

    Parameters
    ----------
    name : str
        What was tested.
    text : str
        What was found.
    """
    trip = trip_of(text)
    return bool(ABOUT_TRIP.search(f"{name} {text}") or (trip.currents and trip.times))


def over(trip: Trip, most: Amp, longest: float | None) -> tuple[str, ...]:
    """Return, in words, each figure that passes what the rule asks.

    Parameters
    ----------
    trip : Trip
        As read.
    most : Amp
        Leakage it has opened at by the rule. [A]
    longest : float or None
        It may take; None where no time is asked. [s]

    Examples
    --------
    >>> over(Trip((Amp(0.045),), (0.4,)), Amp(0.03), 0.1)
    ('45 mA is more than 30 mA', '400 ms is more than 100 ms')
    """
    found = [(one, most, "mA") for one in trip.currents]
    if longest is not None:
        found += [(Amp(one), Amp(longest), "ms") for one in trip.times]
    return tuple(
        f"{said(value * 1000)} {unit} is more than {said(limit * 1000)} {unit}"
        for value, limit, unit in found
        if value > limit * (1 + 1e-9)
    )


def said_of(supply: Supply, text: str) -> str:
    """Return the part of a result that names a source in use; empty where none does.

    Parameters
    ----------
    supply : Supply
        In use.
    text : str
        As the licensed person gave it.

    Examples
    --------
    >>> said_of(Supply.INVERTER, "open on shore, joined while inverting")
    'joined while inverting'
    """
    clauses = (one.strip() for one in _CLAUSES.split(text))
    return "; ".join(one for one in clauses if NAMES[supply].search(one))


def joined_in(text: str) -> bool | None:
    """Return whether words say that neutral and ground are joined; None where they say neither.

    Parameters
    ----------
    text : str
        One part of a result.

    Examples
    --------
    >>> [joined_in(one) for one in ("joined on shore", "no join on shore", "open", "0.2 ohm")]
    [True, False, False, None]
    """
    joined, apart = bool(_JOINED.search(text)), bool(_OPEN.search(text))
    if joined == apart:
        return None
    return joined != bool(_NOT.search(text))


def joined_on_shore(name: str, text: str) -> bool | None:
    """Return whether a result says that neutral and ground are joined aboard on shore power.

    Parameters
    ----------
    name : str
        What was tested.
    text : str
        What was found.

    Examples
    --------
    >>> joined_on_shore("Neutral to safety ground", "open on shore, joined while inverting")
    False
    >>> joined_on_shore("Neutral to ground on shore power", "bonded")
    True
    """
    if not ABOUT_JOIN.search(f"{name} {text}"):
        return None
    found = [joined_in(one) for one in _CLAUSES.split(text) if NAMES[Supply.SHORE].search(one)]
    if not found and NAMES[Supply.SHORE].search(name):
        found = [joined_in(text)]
    known = [one for one in found if one is not None]
    return any(known) if known else None
