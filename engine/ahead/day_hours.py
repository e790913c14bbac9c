"""One day hour by hour: what the loads take, and what the sun brings on a likely day."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.ahead.by_clock import uses_of
from engine.ahead.panels import Under, array_day
from engine.ahead.place import where_of
from engine.simulate.use import profile
from engine.units import Amp, Hour

if TYPE_CHECKING:
    from engine.plan.parts import Plan

HOUR: Final = Hour(1.0)
HOURS: Final = 24


@dataclass(frozen=True, slots=True)
class DayHours:
    """Means of each hour of a day, shape ``(24,)`` each (A), and sunrise and sunset (h)."""

    use: tuple[Amp, ...]
    sun: tuple[Amp, ...]
    sunrise: Hour
    sunset: Hour


@lru_cache(maxsize=8)
def day_hours(plan: Plan, condition: str) -> DayHours | None:
    """Return a day by the hour; None where place or month is not stated, or nothing flows.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    """
    where = where_of(plan)
    if where is None:
        return None
    use = profile(uses_of(plan, condition), where.daylight, HOUR)
    sun = [0.0] * HOURS
    for one in plan.sources:
        if one.kind != "solar" or not one.counted or not one.watts or where.days is None:
            continue
        sky = Under(where, where.days.mean, condition)
        made = array_day(one.panels, one.watts, sky, plan.boat.volts).profile
        each = len(made) // HOURS
        for hour in range(HOURS):
            sun[hour] += sum(made[hour * each : (hour + 1) * each]) / each
    if not any(use) and not any(sun):
        return None
    daylight = where.daylight
    return DayHours(use, tuple(Amp(one) for one in sun), daylight.sunrise, daylight.sunset)
