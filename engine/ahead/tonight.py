"""What buys a day: from the charge the monitor shows now to the reserve, and what puts that off."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from math import ceil
from typing import TYPE_CHECKING, Final

from engine.ahead.evening import MINUTES
from engine.ahead.setup import outlook_of
from engine.estimate import Estimate
from engine.loads.day_use import day_use
from engine.loads.load import CONDITIONS
from engine.simulate.days import Days
from engine.simulate.march import march_of
from engine.simulate.policy import DAY, NEVER, Setup
from engine.simulate.use import intervals

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.ahead.evening import Evening
    from engine.plan.parts import Plan
    from engine.simulate.weather import Outlook
    from engine.units import Share

AHEAD: Final = 8
"""Days looked ahead."""
MOST_ENGINE: Final = 12.0
"""Hours of engine beyond which it is no remedy for one day."""
HALVINGS: Final = 12


@dataclass(frozen=True, slots=True)
class LeftOff:
    """A load left off from now on: its id and name, and the hours it puts off the reserve (h)."""

    ident: str
    name: str
    hours: float

    @property
    def a_day(self) -> bool:
        """True where it buys a whole day alone."""
        return self.hours >= DAY


@dataclass(frozen=True, slots=True)
class Tonight:
    """How long the charge lasts, and what buys one more day.

    ``reserve_in`` is hours from now (None beyond AHEAD days, 0 where it is below already);
    ``engine`` hours of it from ``engine_from`` on, counted from now (None where there is none, or
    it is too long): at once if that helps, else when the charge comes down to the reserve;
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
    reached = _down_at(outlook, now, 0.0, 0.0)
    if reached is None:
        return Tonight(reserve, None, None, 0.0, (), ())
    target = reached + DAY
    policy = outlook.setup.policy
    start = policy.may_start(now.hour) - now.hour
    engine = _engine_time(outlook, now, start, target)
    if engine is None:
        start = policy.may_start(now.hour + reached) - now.hour
        engine = _engine_time(outlook, now, start, target)
    singles = _left_off(plan, condition, now, reached) if reached > 0 else ()
    together: tuple[LeftOff, ...] = ()
    if singles and not any(one.a_day for one in singles):
        together = _together(plan, condition, now, singles, target)
    return Tonight(reserve, reached, engine, start, singles, together)


def inputs_from(outlook: Outlook, now: Evening) -> Days:
    """Return loads and sources from this hour on.

    Parameters
    ----------
    outlook : Outlook
        What lies ahead.
    now : Evening
        Its hour counts to the nearest step.

    Returns
    -------
    Days
        AHEAD days of 24 hours that begin now, not at midnight.
    """
    whole = replace(outlook, days=AHEAD + 1).under(now.sky)
    first = round(now.hour / whole.step) % intervals(whole.step)
    when = slice(first, first + AHEAD * intervals(whole.step))
    return Days(
        whole.loads[when],
        whole.essential[when],
        whole.sun[when],
        whole.wind[when],
        whole.shore[when],
        whole.step,
    )


def _down_at(outlook: Outlook, now: Evening, start: float, engine: float) -> float | None:
    """Return when the reserve is reached, with some hours of engine from a start on."""
    house = replace(outlook.setup.house, start=now.charge)
    days = inputs_from(outlook, now)
    source = outlook.setup.engine
    free = days.free
    if engine > 0 and source:
        step = days.step
        for place in range(min(ceil((start + engine) / step), len(free))):
            inside = min((place + 1) * step, start + engine) - max(place * step, start)
            free[place] += source.current * max(inside, 0.0) / step
    march = march_of(Setup(house, NEVER))
    march.go(days.loads, days.kept_on, free, days.step)
    if engine <= 0 and now.charge > house.reserve:
        return march.switches.needed_at
    line = house.reserve * march.bank.full
    first = ceil((start + engine) / days.step) if engine > 0 else 0
    below = (place for place in range(first, len(march.totals)) if march.totals[place] <= line)
    found = next(below, None)
    return None if found is None else found * days.step


def _engine_time(outlook: Outlook, now: Evening, start: float, target: float) -> float | None:
    if outlook.setup.engine is None or outlook.setup.policy.never:
        return None

    def enough(time: float) -> bool:
        reached = _down_at(outlook, now, start, time)
        return reached is None or reached >= target

    found = _least(enough, MOST_ENGINE)
    return None if found is None else ceil(found * 60 / MINUTES) * MINUTES / 60


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
    for load in (one.load for one in largest if not one.load.essential):
        hours = _lasts(plan, condition, now, frozenset({load.ident})) - reached
        found.append(LeftOff(load.ident, load.name, hours))
    return tuple(sorted(found, key=lambda one: -one.hours))


def _lasts(plan: Plan, condition: str, now: Evening, off: frozenset[str]) -> float:
    outlook = outlook_of(without(plan, condition, off), condition)
    reached = _down_at(outlook, now, 0.0, 0.0) if outlook else None
    return AHEAD * DAY if reached is None else reached


def without(plan: Plan, condition: str, off: frozenset[str]) -> Plan:
    """Return the plan with some loads left off.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    off : frozenset of str
        Ids of loads.
    """
    place = list(CONDITIONS).index(condition)
    none = Estimate.exact(0.0)
    loads = tuple(
        replace(one, hours=(*one.hours[:place], none, *one.hours[place + 1 :]))
        if one.ident in off
        else one
        for one in plan.loads
    )
    return replace(plan, loads=loads)


def _together(
    plan: Plan, condition: str, now: Evening, singles: tuple[LeftOff, ...], target: float
) -> tuple[LeftOff, ...]:
    """Return the fewest of the largest users that buy a day together; none where all do not."""
    for count in range(2, len(singles) + 1):
        some = singles[:count]
        if _lasts(plan, condition, now, frozenset(one.ident for one in some)) >= target:
            return some
    return ()
