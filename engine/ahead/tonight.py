"""What buys a day: from the charge the monitor shows now to the reserve, and what puts that off."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, inf
from typing import TYPE_CHECKING, Final

from engine.ahead.evening import MINUTES
from engine.ahead.left_off import may_be_left, without
from engine.ahead.runs import engine_runs
from engine.ahead.setup import outlook_of
from engine.ahead.until_reserve import down_after, down_at
from engine.loads.day_use import day_use
from engine.simulate.policy import DAY

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.ahead.evening import Evening
    from engine.plan.parts import Plan
    from engine.simulate.weather import Outlook
    from engine.units import Share

AHEAD: Final = 8
"""Days looked ahead for the reserve."""
FAR: Final = 60
"""Days looked ahead for what leaving a load off comes to."""
MOST_ENGINE: Final = 12.0
"""Hours of engine beyond which it is no remedy for one day."""
HALVINGS: Final = 12


@dataclass(frozen=True, slots=True)
class LeftOff:
    """A load left off from now on: its id and name, and the hours it puts off the reserve (h).

    ``beyond`` is true where the reserve does not come within FAR days: the hours are the least.
    """

    ident: str
    name: str
    hours: float
    beyond: bool = False

    @property
    def a_day(self) -> bool:
        """True where it buys a whole day alone."""
        return self.hours >= DAY


@dataclass(frozen=True, slots=True)
class Tonight:
    """How long the charge lasts, and what buys one more day.

    ``reserve_in`` is hours from now (None beyond AHEAD days, 0 where it is below already);
    ``engine`` hours of it from ``engine_from`` on, counted from now (None where there is none, or
    it is too long): at once if that helps before the quiet hours, else when these end, else when
    the charge comes down to the reserve;
    ``together`` are loads that buy a day if all are left off, fewest first.
    """

    reserve: Share
    reserve_in: float | None
    engine: float | None
    engine_from: float
    singles: tuple[LeftOff, ...]
    together: tuple[LeftOff, ...]


@lru_cache(maxsize=16)
def tonight(plan: Plan, condition: str, now: Evening) -> Tonight | None:
    """Return how long the charge lasts from now, and what buys a day.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    now : Evening
        Charge, hour and sky; the sky counts for the rest of today too.

    Returns
    -------
    Tonight or None
        None where something is lacking.

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    outlook = outlook_of(plan, condition)
    if outlook is None:
        return None
    reserve = outlook.setup.house.reserve
    reached = down_at(outlook, now, AHEAD)
    if reached is None:
        return Tonight(reserve, None, None, 0.0, (), ())
    target = reached + DAY
    engine, start = _engine(outlook, now, reached)
    singles = _left_off(plan, condition, now, reached) if reached > 0 else ()
    together: tuple[LeftOff, ...] = ()
    if singles and not any(one.a_day for one in singles):
        together = _together(plan, condition, now, singles, target)
    return Tonight(reserve, reached, engine, start, singles, together)


def _engine(outlook: Outlook, now: Evening, reached: float) -> tuple[float | None, float]:
    """Return hours of engine that buy a day, and when they begin, out of the quiet hours."""
    policy = outlook.setup.policy
    if not engine_runs(outlook):
        return None, 0.0
    clock = now.hour
    first, down = policy.may_start(clock), policy.may_start(clock + reached)
    later = [one + policy.until_quiet(one) for one in (first, down)]
    morning, after = (policy.may_start(one) if one < inf else inf for one in later)
    for start in (first, min(morning, down), down, after):
        if start < inf:
            most = min(MOST_ENGINE, policy.until_quiet(start))
            found = _engine_time(outlook, now, start - clock, reached + DAY, most)
            if found is not None:
                return found, start - clock
    return None, 0.0


def _engine_time(
    outlook: Outlook, now: Evening, start: float, target: float, most: float
) -> float | None:
    """Return the least hours of engine that put off the reserve to a target; None if too many."""

    def enough(time: float) -> bool:
        return down_after(outlook, now, start, time, max(target, start + time)) >= target

    found = _least(enough, most)
    if found is None:
        return None
    return min(max(ceil(found * 60 / MINUTES) * MINUTES / 60, outlook.setup.policy.least_run), most)


def _least(enough: Callable[[float], bool], most: float) -> float | None:
    """Return the least that is enough; None where the most is not."""
    if not enough(most):
        return None
    low, high = 0.0, most
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return high


def _left_off(plan: Plan, condition: str, now: Evening, reached: float) -> tuple[LeftOff, ...]:
    largest = day_use(plan.loads, condition, plan.supply).largest
    found = []
    for load in (one.load for one in largest if may_be_left(one.load)):
        lasts = _lasts(plan, condition, now, frozenset({load.ident}))
        hours = (FAR * DAY if lasts is None else lasts) - reached
        found.append(LeftOff(load.ident, load.name, hours, lasts is None))
    return tuple(sorted(found, key=lambda one: -one.hours))


def _lasts(plan: Plan, condition: str, now: Evening, off: frozenset[str]) -> float | None:
    """Return when the reserve is reached with loads left off; None beyond FAR days."""
    outlook = outlook_of(without(plan, condition, off), condition)
    return down_at(outlook, now, FAR) if outlook else 0.0


def _together(
    plan: Plan, condition: str, now: Evening, singles: tuple[LeftOff, ...], target: float
) -> tuple[LeftOff, ...]:
    """Return the fewest of the largest users that buy a day together; none where all do not."""
    for count in range(2, len(singles) + 1):
        some = singles[:count]
        lasts = _lasts(plan, condition, now, frozenset(one.ident for one in some))
        if lasts is None or lasts >= target:
            return some
    return ()
