"""Leakage protection: where it belongs, what it lets pass, how fast it opens."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Finding, Rule, Severity, Verdict, Who, meets
from engine.problem import Problem
from engine.shore.leakage_asks import (
    MAIN_TIME,
    MAIN_TRIP,
    RECEPTACLE_MUST,
    WET_OUTLETS_230,
    WET_PLACES,
    main_asks,
    outlets_ask,
)
from engine.shore.panel import NEAR
from engine.source import Source
from engine.units import Amp, Metre, said

if TYPE_CHECKING:
    from engine.shore.services import Service

QUIET: Final = Amp(0.015)
"""Leakage at which a 30 mA device must not open yet, A."""
RECEPTACLE_MAY: Final = Amp(0.004)
"""A receptacle's device may open from 4 mA, and not below."""
RECEPTACLE_LEAST_TIME: Final = 0.025
"""Longest time from 264 mA up, s."""

EXEMPT: Final = Rule(
    "leakage exemption",
    "an isolation transformer within 3 m (10 ft) of the inlet stands in for it",
    Source("ABYC E-11", "as reprinted", "11.11.1, exemption"),
)
TRIP_TIME: Final = Rule(
    "trip time",
    "a 5 mA device opens within (20 / mA) ^ 1.43 seconds",
    Source("UL 943", "as reprinted", "class A"),
)
DOCK_RECEPTACLE: Final = Rule(
    "dock leakage",
    "a dock outlet opens at 30 mA, a dock feeder at 100 mA",
    Source("NFPA 70 (NEC)", "2020, as reprinted", "555.35(A) and (B)"),
)
NO_NUISANCE: Final = Rule(
    "half the rating",
    "a 30 mA device does not open at 15 mA, so the boat's standing leakage stays below",
    Source("BS 7671", "as reprinted", "no trip at half the rated residual current"),
)


def longest_trip(leak: Amp) -> float | None:
    """Return the longest a 5 mA device may take to open, or None where it need not open.

    Parameters
    ----------
    leak : Amp
        Not coming back by the neutral. [A]

    Returns
    -------
    float or None
        ``(20 / mA) ^ 1.43``, and from 264 mA up the 25 ms it gives there. [s]

    Raises
    ------
    Problem
        If the leakage is negative.

    References
    ----------
    .. [1] UL 943, class A.

    Examples
    --------
    >>> longest_trip(Amp(0.006)), longest_trip(Amp(0.264)), longest_trip(Amp(0.005))
    (5.594, 0.025, None)
    """
    _check(leak)
    if not meets(RECEPTACLE_MUST, leak):
        return None
    return max(float((0.020 / leak) ** 1.43), RECEPTACLE_LEAST_TIME)


def may_open(leak: Amp) -> bool:
    """Return whether a 5 mA device may open at all at a leakage.

    Parameters
    ----------
    leak : Amp
        Not coming back by the neutral. [A]

    Raises
    ------
    Problem
        If the leakage is negative.
    """
    _check(leak)
    return meets(RECEPTACLE_MAY, leak)


def _check(leak: Amp) -> None:
    if leak < 0:
        raise Problem("leak", f"A leakage of {said(leak * 1000)} mA is none.", "Enter 0 or more.")


@dataclass(frozen=True, slots=True)
class Guard:
    """Leakage protection at the main: opens at A within s. Both None where there is none."""

    trip: Amp | None = None
    time: float | None = None


def judge_main_leakage(
    guard: Guard, transformer: Metre | None = None, service: Service | None = None
) -> Finding | None:
    """Return what is wrong with the leakage protection at the main, or None.

    Parameters
    ----------
    guard : Guard
        As it is.
    transformer : Metre or None
        Metres along the conductor from the inlet to an isolation transformer, None without. [m]
    service : Service or None
        What the inlet is for; where None, what no rule lets pass.
    """
    if transformer is not None and meets(transformer, NEAR):
        return None
    mend = "Leakage protection of 30 mA and 100 ms with or beside the main breaker."
    asks, severity = main_asks(service), Severity.BEFORE_LEAVING
    rule = asks.rule
    if guard.trip is None:
        words = "No leakage protection stands at the main."
        if transformer is not None:
            rule = EXEMPT
            words += f" The isolation transformer is {said(transformer)} m from the inlet."
        return Finding("shore.leakage", Verdict.STOP, severity, words, mend, rule, Who.LICENSED)
    if not meets(guard.trip, MAIN_TRIP):
        words = f"The main's leakage protection opens at {said(guard.trip * 1000)} mA, not 30."
        return Finding("shore.leakage", Verdict.STOP, severity, words, mend, rule, Who.LICENSED)
    if guard.time is None:
        severity = Severity.SHOULD
        words = "How fast the main's leakage protection opens is not known."
        return Finding(
            "shore.leakage", Verdict.NOT_KNOWN, severity, words, mend, rule, Who.LICENSED
        )
    if meets(guard.time, MAIN_TIME):
        return None
    verdict, most = Verdict.STOP, asks.time or MAIN_TIME
    limit = said(most * 1000)
    if meets(guard.time, most):
        verdict, severity, limit = Verdict.SHOULD, Severity.SHOULD, f"100 but within {limit}"
    took = said(guard.time * 1000)
    words = f"The main's leakage protection takes {took} ms, more than {limit}."
    return Finding("shore.leakage", verdict, severity, words, mend, rule, Who.LICENSED)


def judge_receptacle(
    place: str, trip: Amp | None, service: Service | None = None
) -> Finding | None:
    """Return what is wrong with a receptacle where people are wet, or None.

    Parameters
    ----------
    place : str
        Where it is; ``WET_PLACES`` count.
    trip : Amp or None
        What its protection opens at, None without any. [A]
    service : Service or None
        What the inlet is for; where None, what no rule lets pass.
    """
    asks = outlets_ask(service)
    if place.strip().lower() not in WET_PLACES or (trip is not None and meets(trip, asks.trip)):
        return None
    has = "none" if trip is None else f"{said(trip * 1000)} mA"
    mend = "A receptacle or branch with 5 mA protection."
    if asks.rule is WET_OUTLETS_230:
        mend = "Leakage protection of 30 mA at the main or on the branch."
    return Finding(
        f"shore.receptacles.{place}",
        Verdict.STOP,
        Severity.BEFORE_LEAVING,
        f"The receptacle in the {place} has leakage protection of: {has}.",
        mend,
        asks.rule,
        Who.LICENSED,
    )


def judge_standing(leaks: tuple[Amp, ...]) -> Verdict:
    """Return whether the leakage all appliances have from new leaves a 30 mA device quiet.

    Parameters
    ----------
    leaks : tuple of Amp
        Of each appliance, shape ``(n,)``. [A]

    Returns
    -------
    Verdict
        Should from 15 mA, where a device may open; stop from 30 mA, where it must.

    Raises
    ------
    Problem
        If a leakage is negative.

    Examples
    --------
    >>> [judge_standing((Amp(leak),)).value for leak in (0.010, 0.020, 0.031)]
    ['within limit', 'should', 'stop']
    """
    for leak in leaks:
        _check(leak)
    whole = sum(leaks)
    if meets(MAIN_TRIP, whole):
        return Verdict.STOP
    return Verdict.FINE if meets(whole, QUIET) else Verdict.SHOULD
