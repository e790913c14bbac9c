"""What the place of a plan has in a month: sun, wind and the length of the night."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.estimate import Estimate
from engine.simulate.policy import DAY
from engine.simulate.weather import SKIES
from engine.solar.cloud import at_score
from engine.solar.clouded import outside_day
from engine.solar.month import ONE_IN_TEN
from engine.units import Hour

if TYPE_CHECKING:
    from engine.ahead.place import Where
    from engine.units import MetrePerSecond, Share

KILO: Final = 1000.0


@dataclass(frozen=True, slots=True)
class MonthAt:
    """A month of a place: sun on a level plane (kWh/m² a day), wind (m/s) and night (h).

    ``dull`` is a quarter of a clear day; ``tenth`` is what nine days in ten pass. ``doubt`` is how
    far the mean may be out (1). A dark month has no sun.
    """

    likely: Estimate
    clear: float
    dull: float
    tenth: float
    wind: MetrePerSecond | None
    night: Hour
    doubt: Share
    dark: bool


def month_at(where: Where) -> MonthAt:
    """Return what a place has in its month.

    Parameters
    ----------
    where : Where
        Place and month.

    Examples
    --------
    >>> from engine.ahead.place import place
    >>> found = month_at(place(43.0, -47.0, 7))
    >>> round(found.night, 1), found.dull < found.likely.likely < found.clear
    (9.0, True)
    """
    up = where.daylight.sunset - where.daylight.sunrise
    likely = clear = tenth = 0.0
    if where.days:
        outside = outside_day(where.latitude, where.day_of_year) / KILO
        likely, clear = where.days.mean * outside, where.clear * outside
        tenth = at_score(where.days, ONE_IN_TEN) * outside
    span = Estimate(likely * (1 - where.doubt), likely, likely * (1 + where.doubt), "default")
    return MonthAt(
        span, clear, clear * SKIES["dull"], tenth, where.wind, Hour(DAY - up), where.doubt,
        dark=where.days is None,
    )  # fmt: skip
