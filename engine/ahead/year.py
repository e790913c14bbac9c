"""The plan in every month: sun of a mean day, days until charging is needed, engine hours."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.ahead.place import where_of
from engine.ahead.runs import engine_runs
from engine.ahead.setup import outlook_in
from engine.ahead.taking import Curtailed, curtailed_of
from engine.estimate import Estimate
from engine.simulate.run import run
from engine.simulate.use import STEP

if TYPE_CHECKING:
    from collections.abc import Iterator

    from engine.ahead.place import Where
    from engine.plan.parts import Plan
    from engine.simulate.run import Series
    from engine.simulate.weather import Outlook, Sun

IN_A_YEAR: Final = 12
SUNS: Final = ("less", "likely", "more")
"""Suns a month is run under."""


@dataclass(frozen=True, slots=True)
class MonthAhead:
    """A month of the plan under its likely sky, and under as much more or less as may be.

    ``sun`` is what all panels bring on a mean day (Ah); ``days`` until charging is needed (d), None
    where it is not needed within the days run; ``engine`` in a week (h), None without an engine.
    ``dark`` is a month without sun.
    """

    month: int
    sun: Estimate
    days: Estimate | None
    engine: Estimate | None
    dark: bool


@dataclass(frozen=True, slots=True)
class Year:
    """The months so far, and what clear days of the plan's own month bring too much."""

    curtailed: Curtailed | None
    months: tuple[MonthAhead, ...] = ()


def year_of(plan: Plan, condition: str) -> Iterator[tuple[float, Year]]:
    """Yield the months so far, each time with the share of the work that is done.

    Parameters
    ----------
    plan : Plan
        As read; without a place, a bank or loads there is no year.
    condition : str
        One of CONDITIONS.

    Yields
    ------
    tuple of float and Year
        After the clear days, and after each run of a month; a month is in it once its three runs
        are. [1]

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    year, steps = Year(curtailed_of(plan, condition)), 1 + IN_A_YEAR * len(SUNS)
    done = 1
    yield done / steps, year
    for month in range(1, IN_A_YEAR + 1):
        where = where_of(plan, month)
        outlook = outlook_in(plan, condition, where)
        if where is None or outlook is None:
            return
        runs: list[Series] = []
        for clearness in _skies(where):
            runs.append(_run(outlook, clearness))
            if len(runs) == len(SUNS):
                year = Year(year.curtailed, (*year.months, _month(where, outlook, runs)))
            done += 1
            yield done / steps, year


def _month(where: Where, outlook: Outlook, runs: list[Series]) -> MonthAhead:
    less, likely, more = runs
    days = None
    if less.needed_at is not None:
        days = _spread(less.days_until_needed, likely.days_until_needed, more.days_until_needed)
    engine = None
    if engine_runs(outlook):
        weeks = (one.engine_hours_a_week for one in runs)
        engine = _spread(*weeks)
    sun = _sun(outlook.sun, where)
    return MonthAhead(where.month, sun, days, engine, dark=where.days is None)


def _skies(where: Where) -> tuple[float, float, float]:
    """Return the month's mean clearness and what it may be out by, no clearer than a clear day."""
    if where.days is None:
        return 1.0, 1.0, 1.0
    mean, most = where.days.mean, where.days.clearest
    return mean * (1 - where.doubt), mean, min(mean * (1 + where.doubt), most)


def _run(outlook: Outlook, clearness: float) -> Series:
    """Return days all alike."""
    winds = [outlook.steady_wind] * outlook.days
    return run(outlook.setup, outlook.ahead([clearness] * outlook.days, winds, 1.0))


def _sun(sun: Sun, where: Where) -> Estimate:
    return _spread(*(sum(sun.at(clearness)) * STEP for clearness in _skies(where)))


def _spread(one: float, likely: float, other: float) -> Estimate:
    """Return a likely figure between two ends; an engine run more or less may turn them round."""
    return Estimate(min(one, likely, other), likely, max(one, likely, other), "default")
