"""From the charge of this evening down to the reserve: when it comes, with and without engine."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, inf
from typing import TYPE_CHECKING

from engine.simulate.days import Days
from engine.simulate.march import march_of
from engine.simulate.policy import DAY, NEVER, Setup
from engine.simulate.use import intervals

if TYPE_CHECKING:
    from engine.ahead.evening import Evening
    from engine.simulate.weather import Outlook


def inputs_from(outlook: Outlook, now: Evening) -> Days:
    """Return loads and sources of the 24 hours from this hour on; every day after is the same.

    Parameters
    ----------
    outlook : Outlook
        What lies ahead.
    now : Evening
        Its hour counts to the nearest step.

    Returns
    -------
    Days
        One day that begins now, not at midnight.
    """
    whole = replace(outlook, days=2).under(now.sky)
    first = round(now.hour / whole.step) % intervals(whole.step)
    when = slice(first, first + intervals(whole.step))
    return Days(
        whole.loads[when],
        whole.essential[when],
        whole.sun[when],
        whole.wind[when],
        whole.shore[when],
        whole.step,
    )


def down_at(outlook: Outlook, now: Evening, most: int) -> float | None:
    """Return when the reserve is reached with no engine.

    Parameters
    ----------
    outlook : Outlook
        What lies ahead.
    now : Evening
        Charge, hour and sky.
    most : int
        Days looked ahead. [1]

    Returns
    -------
    float or None
        From now; None beyond those days. [h]
    """
    house = replace(outlook.setup.house, start=now.charge)
    march = march_of(Setup(house, NEVER))
    if now.charge <= house.reserve:
        return 0.0
    days = inputs_from(outlook, now)
    kept_on, free = days.kept_on, days.free
    for day in range(most):
        march.go(days.loads, kept_on, free, days.step)
        if march.switches.needed_at is not None:
            return day * DAY + march.switches.needed_at
    return None


def down_after(outlook: Outlook, now: Evening, start: float, engine: float, until: float) -> float:
    """Return when the reserve comes once the engine has run.

    Parameters
    ----------
    outlook : Outlook
        What lies ahead.
    now : Evening
        Charge, hour and sky.
    start : float
        When the engine starts, from now. [h]
    engine : float
        For how long it runs. [h]
    until : float
        Nothing is looked at beyond the day of that. [h]

    Returns
    -------
    float
        From now; infinite where it has not come by then. [h]
    """
    source = outlook.setup.engine
    house = replace(outlook.setup.house, start=now.charge)
    march = march_of(Setup(house, NEVER))
    days = inputs_from(outlook, now)
    step, count = days.step, len(days.loads)
    end, line = start + engine, house.reserve * march.bank.full
    for day in range(ceil(until / DAY) + 1):
        free = days.free
        for place in range(count if source and day * DAY < end else 0):
            early = day * DAY + place * step
            inside = min(early + step, end) - max(early, start)
            free[place] += source.current * max(inside, 0.0) / step if source else 0.0
        march.totals.clear()
        march.go(days.loads, days.kept_on, free, step)
        first = max(ceil((end - day * DAY) / step), 0)
        below = (place for place in range(first, count + 1) if march.totals[place] <= line)
        found = next(below, None)
        if found is not None:
            return day * DAY + found * step
    return inf
