"""Where and when the days ahead lie, and what sun and wind that place has."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.simulate.use import Daylight
from engine.solar.cloud import Clearness, clearness_of
from engine.solar.clouded import outside_day
from engine.solar.dates import MONTHS, mean_day
from engine.solar.daylight import day_length
from engine.solar.month import DOUBT, FAR_DOUBT
from engine.solar.place import Climate, climate, grid, is_dark
from engine.solar.sky import clear_day
from engine.units import Hour, MetrePerSecond, Share

if TYPE_CHECKING:
    from engine.plan.parts import Plan

LEAST_SUN: Final = 50.0
"""Irradiation of a clear day below which it counts as none, Wh/m²."""


@dataclass(frozen=True, slots=True)
class Where:
    """A place in a month: latitude and longitude (°), and what sun and wind it has.

    ``longitude`` is None where it is not stated, and the mean over the sea at that latitude
    speaks. ``days`` is the spread of daily clearness, None where the month is dark; ``doubt`` is
    how far the month's sun may be out (1); ``wind`` blows ten metres above open water (m/s).
    """

    latitude: float
    longitude: float | None
    month: int
    days: Clearness | None
    wind: MetrePerSecond | None
    doubt: Share
    daylight: Daylight

    @property
    def day_of_year(self) -> int:
        """The month's mean day."""
        return mean_day(self.month).of_year

    @property
    def clear(self) -> Share:
        """Clearness of a clear day; 0 in a dark month."""
        outside = outside_day(self.latitude, self.day_of_year)
        return Share(clear_day(self.latitude, self.day_of_year) / outside if self.days else 0.0)


def place_lacking(plan: Plan) -> tuple[str, ...]:
    """Return what must be entered before the place's sun and wind are known.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    boat = plan.boat
    latitude = ("the boat's latitude",) if boat.latitude is None else ()
    return latitude if boat.month else (*latitude, "the month")


def where_of(plan: Plan, month: int | None = None) -> Where | None:
    """Return where a plan lies and when; None where latitude or month is not stated.

    Parameters
    ----------
    plan : Plan
        As read.
    month : int, optional
        From 1 to 12; left out, the plan's. [1]
    """
    boat = plan.boat
    number = MONTHS.index(boat.month) + 1 if boat.month else 0
    chosen = month or number
    if boat.latitude is None or not chosen:
        return None
    return place(boat.latitude, boat.longitude, chosen)


@lru_cache(maxsize=256)
def place(latitude: float, longitude: float | None, month: int) -> Where:
    """Return a place in a month.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    longitude : float or None
        East positive; None for the mean over the sea at that latitude. [°]
    month : int
        From 1 to 12. [1]

    Raises
    ------
    Problem
        If no such place or month is.

    Examples
    --------
    >>> here = place(43.0, -47.0, 7)
    >>> round(here.daylight.sunset - here.daylight.sunrise, 1), here.doubt
    (15.0, 0.15)
    """
    day = mean_day(month).of_year
    up = day_length(latitude, day)
    daylight = Daylight(Hour(12 - up / 2), Hour(12 + up / 2))
    here = _over_the_sea(latitude, month) if longitude is None else climate(
        latitude, longitude, month
    )  # fmt: skip
    doubt = FAR_DOUBT if here.beyond or longitude is None else DOUBT
    days = None
    if not is_dark(latitude, month) and clear_day(latitude, day) >= LEAST_SUN:
        clear = Share(clear_day(latitude, day) / outside_day(latitude, day))
        days = clearness_of(here.clearness, here.spread, clear)
    wind = None if here.wind is None else MetrePerSecond(here.wind)
    return Where(latitude, longitude, month, days, wind, doubt, daylight)


def _over_the_sea(latitude: float, month: int) -> Climate:
    """Return the mean of what ships met round the world at a latitude."""
    cells = grid()
    found = []
    for column in range(cells.columns):
        one = climate(latitude, cells.west + column * cells.step, month)
        if one.wind is not None:
            found.append(one)
    winds = [one.wind for one in found if one.wind is not None]
    return Climate(
        Share(sum(one.clearness for one in found) / len(found)),
        sum(one.spread for one in found) / len(found),
        sum(winds) / len(winds),
        any(one.beyond for one in found),
    )
