"""The runs of the days ahead: under three skies, as weather may mix them, and as chance has it."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.ahead.place import where_of
from engine.ahead.setup import outlook_of
from engine.loads.draws import DRAWS, SEED
from engine.simulate.chance import chances
from engine.simulate.run import days_alone, run
from engine.simulate.stretch import heard
from engine.simulate.weather import FORTNIGHT, SKIES
from engine.solar.cloud import at_score

if TYPE_CHECKING:
    from collections.abc import Iterator

    from engine.plan.parts import Plan
    from engine.simulate.chance import Chance
    from engine.simulate.run import Series
    from engine.simulate.weather import Outlook

MIXED: Final = "mixed"
"""The name of the run whose days are unlike each other."""
MANY: Final = 9
"""Weathers the mixed run is the middle one of."""
FIRST: Final = 20
"""Runs of the first estimate of a chance."""
EVERY: Final = 10
"""Runs between two estimates while the page waits."""
LONGEST: Final = 60
"""Days after which a bank without charging is not followed any more."""
MOST_DAYS: Final = 1.2816
"""Normal score either side of the middle between which 8 days in 10 lie."""


@lru_cache(maxsize=16)
def _skies(plan: Plan, condition: str, days: int) -> tuple[Series, ...]:
    outlook = outlook_of(plan, condition, days)
    return tuple(run(outlook.setup, outlook.under(sky)) for sky in SKIES.rows) if outlook else ()


def three_skies(plan: Plan, condition: str, days: int = FORTNIGHT) -> dict[str, Series]:
    """Return what days come to that are all clear, all part cloud or all dull.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    days : int
        How many, 1 to 60. [1]

    Returns
    -------
    dict of str to Series
        By the rows of SKIES; empty where something of `lacking` is not known.

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    return dict(zip(SKIES.rows, _skies(plan, condition, days), strict=False))


@lru_cache(maxsize=16)
def mixed_days(plan: Plan, condition: str, days: int = FORTNIGHT) -> Series | None:
    """Return what days come to whose weather changes: the middle one of nine drawn.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    days : int
        How many, 1 to 60. [1]

    Returns
    -------
    Series or None
        In the middle by what sources bring less what is used; the same seed, the same days.

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    outlook = outlook_of(plan, condition, days)
    if outlook is None:
        return None
    drawn = [outlook.drawn_days(number, SEED) for number in range(MANY)]
    drawn.sort(key=lambda one: sum(one.free) - sum(one.loads))
    return run(outlook.setup, drawn[MANY // 2])


@lru_cache(maxsize=16)
def alone_days(plan: Plan, condition: str) -> float | None:
    """Return how long the bank lasts to its reserve from its charge now, if nothing charges it.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    float or None
        None where that takes more than LONGEST days, or cannot be said. [d]

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    for days in (FORTNIGHT, LONGEST):
        outlook = outlook_of(plan, condition, days)
        reached = days_alone(outlook.setup, outlook.under("dull")) if outlook else None
        if reached is not None:
            return reached
    return None


def ahead_of(plan: Plan, condition: str, days: int = FORTNIGHT) -> Outlook | None:
    """Return what the chance runs run through: never less than a fortnight.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    days : int
        How many are shown. [1]

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    return outlook_of(plan, condition, max(days, FORTNIGHT))


def engine_runs(outlook: Outlook) -> bool:
    """Return whether anything is started to charge.

    Parameters
    ----------
    outlook : Outlook
        What lies ahead.
    """
    return outlook.setup.engine is not None and not outlook.setup.policy.never


def slices(plan: Plan, condition: str, days: int = FORTNIGHT) -> Iterator[tuple[float, Chance]]:
    """Yield the chance of the days ahead as it grows, with the share of runs done.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    days : int
        How many are shown. [1]

    Yields
    ------
    tuple of float and Chance
        Nothing where something of `lacking` is not known.

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    outlook = ahead_of(plan, condition, days)
    if outlook:
        for one in chances(outlook, every=EVERY):
            yield one.runs / one.asked, one


@lru_cache(maxsize=16)
def first_chance(plan: Plan, condition: str, days: int = FORTNIGHT) -> Chance | None:
    """Return the first estimate of the chance, of few runs.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    days : int
        How many are shown. [1]

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    outlook = ahead_of(plan, condition, days)
    return next(chances(outlook, every=FIRST)) if outlook else None


@lru_cache(maxsize=16)
def chance_of(plan: Plan, condition: str, runs: int = DRAWS) -> Chance | None:
    """Return the chance of a fortnight in one go.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    runs : int
        How many. [1]

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    outlook = ahead_of(plan, condition)
    return next(chances(outlook, runs, every=runs)) if outlook else None


@lru_cache(maxsize=16)
def sun_of_most_days(plan: Plan, condition: str) -> tuple[float, float] | None:
    """Return between what the sun of 8 days in 10 lies.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    tuple of float or None
        None where there is no sun, or nothing can be said. [Ah]

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    outlook, where = outlook_of(plan, condition), where_of(plan)
    if outlook is None or where is None or where.days is None:
        return None
    ends = (at_score(where.days, score) for score in (-MOST_DAYS, MOST_DAYS))
    low, high = (heard(sum(outlook.sun.at(one)) * outlook.step) for one in ends)
    return (low, high) if high > 0 else None
