"""What the air lets through on a clear day, and on a day of a given clearness.

A day runs from midnight to midnight of local mean time and is reckoned at the middle of equal
steps, sunlit ones only.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import cos, exp, floor, radians
from typing import Final

from engine.problem import Problem
from engine.solar.dates import YEAR, month_of
from engine.solar.daylight import CONSTANT, normal_outside
from engine.solar.sun import checked_latitude, orbit, position
from engine.solar.tables import BAND, TURBIDITY
from engine.source import Source
from engine.units import Hour

DAY: Final = 24 * 60
STEP: Final = 5
"""Minutes of a step where nothing else is stated."""

CLEAR_SKY: Final = Source(
    "Ineichen and Perez", "Solar Energy 73 (2002) 151", "at sea level, without enhancement"
)
AIR_MASS: Final = Source("Kasten and Young", "Applied Optics 28 (1989) 4735", "air mass")
DIFFUSE: Final = Source(
    "Erbs, Klein and Duffie", "Solar Energy 28 (1982) 293", "of a day", typical=True
)


@dataclass(frozen=True, slots=True)
class Frame:
    """How a day is reckoned: longitude in °, year, solar constant in W/m², step in minutes."""

    longitude: float = 0.0
    year: int = YEAR
    constant: float = CONSTANT
    step: int = STEP

    def __post_init__(self) -> None:
        if self.step < 1 or DAY % self.step:
            raise Problem(
                "step", f"A step of {self.step} minutes does not divide a day.", "Enter 15."
            )


USUAL: Final = Frame()


@dataclass(frozen=True, slots=True)
class Moment:
    """The middle of a step: hour of local mean time, sun in °, light in W/m².

    ``level`` falls on a level plane, ``beam`` on one that faces the sun, ``diffuse`` comes from
    the whole sky; ``outside`` faces the sun above the air.
    """

    hour: Hour
    zenith: float
    azimuth: float
    level: float
    beam: float
    diffuse: float
    outside: float


@dataclass(frozen=True, slots=True)
class Light:
    """The sunlit steps of a day; none in polar night."""

    moments: tuple[Moment, ...]
    hours: Hour
    """Length of one step, h."""

    @property
    def irradiation(self) -> float:
        """A day's sun on a level plane, Wh/m²."""
        return self.hours * sum(moment.level for moment in self.moments)


def turbidity_at(latitude: float, month: int) -> float:
    """Return Linke's turbidity over the sea.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    month : int
        From 1 to 12. [1]

    Returns
    -------
    float
        Straight between the middles of the bands; beyond the last middle that band's. [1]

    Examples
    --------
    >>> turbidity_at(45.0, 7), turbidity_at(40.0, 7), turbidity_at(80.0, 7)
    (3.51, 3.655, 2.73)
    """
    south, north = min(TURBIDITY.rows), max(TURBIDITY.rows)
    middle = min(max(latitude - BAND / 2, south), north)
    lower = min(floor(middle / BAND) * BAND, north - BAND)
    share = (middle - lower) / BAND
    below, above = (TURBIDITY[edge][month - 1] for edge in (lower, lower + BAND))
    return below + share * (above - below)


def air_mass(zenith: float) -> float:
    """Return how much air the sun shines through, over that straight above.

    Parameters
    ----------
    zenith : float
        As seen through the air, below 90. [°]

    Returns
    -------
    float
        1 at the zenith, 38 at the horizon. [1]

    References
    ----------
    .. [1] Kasten and Young, Applied Optics 28 (1989) 4735.

    Examples
    --------
    >>> air_mass(0.0), air_mass(50.11162)
    (1.000, 1.557)
    """
    return 1 / (cos(radians(zenith)) + 0.50572 * float((96.07995 - zenith) ** -1.6364))


def clear_air(zenith: float, turbidity: float, outside: float) -> tuple[float, float, float]:
    """Return the light of a clear sky at sea level.

    Parameters
    ----------
    zenith : float
        As seen through the air, below 90. [°]
    turbidity : float
        Linke's. [1]
    outside : float
        Above the air, facing the sun. [W/m²]

    Returns
    -------
    tuple of float
        Shape ``(3,)``: on a level plane, beam, diffuse. [W/m²]

    References
    ----------
    .. [1] Ineichen and Perez, Solar Energy 73 (2002) 151.

    Examples
    --------
    >>> clear_air(50.11162, 3.5, 1375.791)
    (620.21, 801.52, 106.20)
    """
    up, mass = cos(radians(zenith)), air_mass(zenith)
    level = 0.868 * outside * up * exp(-0.0387 * mass * turbidity)
    straight = (0.664 + 0.163) * outside * exp(-0.09 * mass * (turbidity - 1))
    most = level * (1 - (0.1 - 0.2 * exp(-turbidity)) / (0.1 + 0.882)) / up
    beam = min(straight, max(most, 0.0))
    return level, beam, level - beam * up


@lru_cache(maxsize=256)
def clear_light(
    latitude: float, day_of_year: int, turbidity: float | None = None, frame: Frame = USUAL
) -> Light:
    """Return the light of a clear day at sea level.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    day_of_year : int
        From 1. [1]
    turbidity : float, optional
        Linke's; by latitude and month where none is given. [1]
    frame : Frame
        How the day is reckoned.

    Raises
    ------
    Problem
        If the latitude lies beyond a pole or the year has no such day.
    """
    checked_latitude(latitude)
    month = month_of(day_of_year, frame.year)
    haze = turbidity_at(latitude, month) if turbidity is None else turbidity
    outside = normal_outside(day_of_year, frame.constant)
    moments = []
    for minute in range(0, DAY, frame.step):
        hour = Hour((minute + frame.step / 2) / 60)
        utc = Hour(hour - frame.longitude / 15)
        sun = position(latitude, frame.longitude, orbit(day_of_year, utc, frame.year), utc)
        if sun.zenith < 90:
            light = clear_air(sun.zenith, haze, outside)
            moments.append(Moment(hour, sun.zenith, sun.azimuth, *light, outside))
    return Light(tuple(moments), Hour(frame.step / 60))


def clear_day(
    latitude: float, day_of_year: int, turbidity: float | None = None, frame: Frame = USUAL
) -> float:
    """Return a clear day's irradiation of a level plane at sea level.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    day_of_year : int
        From 1. [1]
    turbidity : float, optional
        Linke's; by latitude and month where none is given. [1]
    frame : Frame
        How the day is reckoned.

    Returns
    -------
    float
        0 in polar night. [Wh/m²]

    Raises
    ------
    Problem
        If the latitude lies beyond a pole or the year has no such day.

    Examples
    --------
    >>> clear_day(75.0, 355)
    0.0
    """
    return clear_light(latitude, day_of_year, turbidity, frame).irradiation
