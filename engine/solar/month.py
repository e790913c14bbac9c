"""A month of sun at a place: likely day, clear day and dull day, and how far to trust them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.estimate import Estimate
from engine.solar.cloud import at_score, clearness_of
from engine.solar.clouded import outside_day
from engine.solar.dates import mean_day
from engine.solar.place import Climate, climate, is_dark
from engine.solar.sky import clear_day
from engine.units import Share, said

DOUBT: Final = Share(0.15)
"""How far a month's mean may be out, either way; monthly rms against nine stations 12.8 %."""
FAR_DOUBT: Final = Share(0.30)
"""The same where the nearest cell must speak for a place beyond all of them."""
ONE_IN_TEN: Final = -1.2816
"""Normal score that one day in ten stays below."""


@dataclass(frozen=True, slots=True)
class MonthSun:
    """A month of sun on a level plane: kWh/m² of a likely, a clear and a dull day.

    A dull day is one that nine days in ten pass. ``clearness`` is the month's, None where it is
    dark.
    """

    irradiation: Estimate
    clear: float
    dull: float
    clearness: Share | None
    words: str


def month_irradiation(latitude: float, longitude: float, month: int) -> Estimate:
    """Return a month's mean daily irradiation of a level plane.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    longitude : float
        East positive. [°]
    month : int
        From 1 to 12. [1]

    Returns
    -------
    Estimate
        Give or take 15 %; beyond the cells, 30 %. [kWh/m²]

    Raises
    ------
    Problem
        If no such place or month is.
    """
    here = climate(latitude, longitude, month)
    likely = here.clearness * outside_day(latitude, mean_day(month).of_year) / 1000
    doubt = FAR_DOUBT if here.beyond else DOUBT
    return Estimate(likely * (1 - doubt), likely, likely * (1 + doubt), "default")


def month_sun(latitude: float, longitude: float, month: int) -> MonthSun:
    """Return a month of sun at a place.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    longitude : float
        East positive. [°]
    month : int
        From 1 to 12. [1]

    Raises
    ------
    Problem
        If no such place or month is.
    """
    if is_dark(latitude, month):
        none = Estimate.exact(0.0, "default")
        return MonthSun(none, 0.0, 0.0, None, "There is no sun this month.")
    here = climate(latitude, longitude, month)
    day = mean_day(month).of_year
    outside = outside_day(latitude, day) / 1000
    clear = max(clear_day(latitude, day) / 1000, here.clearness * outside)
    days = clearness_of(here.clearness, here.spread, Share(clear / outside))
    dull = at_score(days, ONE_IN_TEN) * outside
    likely = month_irradiation(latitude, longitude, month)
    return MonthSun(likely, clear, dull, here.clearness, _words(likely, clear, dull, here))


def _words(likely: Estimate, clear: float, dull: float, here: Climate) -> str:
    text = (
        f"{said(likely.likely)} kWh/m² on the mean day, "
        f"{said(likely.low)} to {said(likely.high)} for all this program knows; "
        f"{said(clear)} on a clear day, under {said(dull)} one day in ten."
    )
    if here.beyond:
        text += " No cell of the climatology lies so near the pole; the nearest speaks for it."
    return text
