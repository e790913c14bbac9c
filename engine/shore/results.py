"""What a licensed person's words say of a leakage trip: what it opened at, and what it held."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from engine.finding import Verdict, meets
from engine.problem import Problem
from engine.units import Amp, number, said, words

_UNITS: Final = {"ma": 0.001, "milliamp": 0.001, "ms": 0.001, "millis": 0.001, "a": 1.0, "s": 1.0}
"""How each unit begins, and what it is in A or s."""
_NUMBER: Final = r"\d+(?:[.,]\d+)?"
_FIGURE: Final = re.compile(
    rf"({_NUMBER})\s*(mA|milliamp\w*|ms|msecs?|milliseconds?|A|amps?|s|secs?|seconds?)(?!\w)",
    re.IGNORECASE,
)
_TIME: Final = rf"{_NUMBER}\s*(?:ms|msecs?|milliseconds?|s|secs?|seconds?)(?!\w)"
LARGEST: Final = Amp(1.0)
"""From here up a current is a breaker's rating, not a leakage, A."""
_OPENS: Final = (
    r"(?:trip|open|operat|react|respon|switch|cut|disconnect|work|releas)\w*|within\b"
    r"|act(?:s|ed)?\b"
)
_NOT_OPEN: Final = re.compile(
    r"\b(?:no|not|never|without|cannot|\w+n't|(?:fail|refus)\w*\s+to|unable\s+to)[\s-]+"
    rf"(?:(?:a|any|yet|even|ever|once|always)\s+)*(?:{_OPENS})"
    r"|\b(?:holds?|held|holding)\b|\bstay(?:s|ed)?\s+(?:in|on|closed|shut)\b"
    r"|\b(?:does|did|do)\s+nothing\b|\bnothing\s+happen\w*|\bno\s+(?:effect|reaction)\b"
    r"|\b(?<!not\s)(?:dead|inoperative|stuck|jammed)\b"
    rf"|(?:>|\b(?:over|above|beyond|exceed\w*|(?:more|longer)\s+than))\s*(?={_NUMBER})",
    re.IGNORECASE,
)
"""It did not open, or only above a figure."""
_AFTER: Final = re.compile(rf"\s*(?:for|in|within|after)\s+{_TIME}", re.IGNORECASE)
"""How long it was held."""
_BEFORE: Final = re.compile(rf"({_NUMBER}\s*m?A)\s*[,:]\s*(?={_NOT_OPEN.pattern})", re.IGNORECASE)
"""The current stands before the words that it did not open."""
_CLAUSES: Final = re.compile(r"[;\n]|[,.](?!\d)|\b(?:and|but|then)\b", re.IGNORECASE)
_HALF: Final = re.compile(r"\bhalf\b|1/2|½|\b0[.,]5\s*[x×]|\b[x×]\s*0[.,]5", re.IGNORECASE)
"""Tried at half of what it is marked."""
_TESTED_AT: Final = re.compile(
    rf"(?<=s)\s*(?:at|@)\s*150\s*mA\b|(?:^|(?<=[;,]))\s*150\s*mA\s*[:=]\s*(?={_TIME})",
    re.IGNORECASE,
)
"""A time taken at five times 30 mA: the current it was tested with, not what it opens at."""

ABOUT_TRIP: Final = re.compile(
    r"\b(?:leakage|residual|elci|rcd|rcbo|gfci|trip\w*|test\s+button)\b", re.IGNORECASE
)
ABOUT_OUTLETS: Final = re.compile(r"\b(?:outlets?|receptacles?|sockets?|gfci)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Trip:
    """What was read of a leakage trip: what it opened at in A and s, and what it held, in A.

    ``never`` is true where it did not open and no current is told.
    """

    currents: tuple[Amp, ...] = ()
    times: tuple[float, ...] = ()
    held: tuple[Amp, ...] = ()
    never: bool = False


def trip_of(text: str) -> Trip:
    """Return the currents and times that words about a leakage trip name.

    A current it held at is told apart, and 150 mA where a time was taken at it is left out.

    Parameters
    ----------
    text : str
        As the licensed person gave it.

    Examples
    --------
    >>> trip_of("24 mA, 38 ms")
    Trip(currents=(0.024,), times=(0.038,), held=(), never=False)
    >>> found = trip_of("no trip at 15 mA for 2 s, opens at 0.045 A in 0.4 s")
    >>> found.currents, found.times, found.held
    ((0.045,), (0.4,), (0.015,))
    >>> trip_of("test button does nothing").never, trip_of("quick enough") == Trip()
    (True, True)
    """
    plain = _BEFORE.sub(r"\1 ", _TESTED_AT.sub("", text.replace("\u2019", "'")))
    found = Trip()
    for clause in _CLAUSES.split(plain):
        found = _with(found, clause)
    return found


def _with(found: Trip, clause: str) -> Trip:
    """Return what was read so far, and what one clause adds."""
    shut = _NOT_OPEN.search(clause)
    if shut is None:
        currents, times = _figures(clause)
        return Trip(found.currents + currents, found.times + times, found.held, found.never)
    before, after = clause[: shut.start()], clause[shut.end() :]
    current = next((one for one in _FIGURE.finditer(after) if _figures(one[0])[0]), None)
    if current is not None:
        held, _ = _figures(current[0])
        currents, times = _figures(before)
        so_far = Trip(
            found.currents + currents, found.times + times, found.held + held, found.never
        )
        return _with(so_far, _AFTER.sub("", after[current.end() :]))
    held, _ = _figures(before)
    never = not held and _HALF.search(clause) is None
    return Trip(found.currents, found.times, found.held + held, found.never or never)


def _figures(text: str) -> tuple[tuple[Amp, ...], tuple[float, ...]]:
    """Return every current below a breaker's rating, A, and every time, s."""
    currents: list[Amp] = []
    times: list[float] = []
    for figure, unit in _FIGURE.findall(text):
        factor = next(one for start, one in _UNITS.items() if unit.lower().startswith(start))
        try:
            value = number(figure) * factor
        except Problem:
            continue
        if unit.lower().startswith(("ms", "millis", "s")):
            times.append(value)
        elif value < LARGEST:
            currents.append(Amp(value))
    return tuple(currents), tuple(times)


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
    told = trip.held or (trip.currents and trip.times)
    return bool(told or ABOUT_TRIP.search(f"{name} {text}"))


def held_against(trip: Trip, most: Amp) -> tuple[Verdict, str]:
    """Return whether it held where it had to open, and in words what it held.

    Parameters
    ----------
    trip : Trip
        As read.
    most : Amp
        Leakage it has opened at by the rule. [A]

    Returns
    -------
    tuple of Verdict and str
        Stop from the rule's current up, or where no current is told; not known above half of it,
        where it may open and need not; else within limit and no words.

    Examples
    --------
    >>> held_against(trip_of("held at 60 mA"), Amp(0.03))
    (<Verdict.STOP: 'stop'>, 'it did not open at 60 mA')
    >>> held_against(trip_of("no trip at 15 mA, 24 mA, 38 ms"), Amp(0.03))[0].value
    'within limit'
    """
    if trip.never:
        return Verdict.STOP, "it did not open"
    above = [one for one in trip.held if not meets(one, most / 2)]
    if not above:
        return Verdict.FINE, ""
    told = f"it did not open at {words(f'{said(one * 1000)} mA' for one in above)}"
    late = any(meets(most, one) for one in above)
    return (Verdict.STOP if late else Verdict.NOT_KNOWN), told


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
        if not meets(value, limit)
    )
