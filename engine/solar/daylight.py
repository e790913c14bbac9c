"""How long the sun is up, and what reaches the top of the air."""

from __future__ import annotations

from dataclasses import dataclass
from math import acos, cos, degrees, pi, radians, sin
from typing import Final

from engine.solar.sun import checked_latitude, declination, orbit
from engine.source import Source
from engine.units import Hour

CONSTANT: Final = 1361.0
"""The solar constant, W/m² (Kopp and Lean 2011); older books and pvlib use 1366.1."""
SUNRISE: Final = -0.833
"""Altitude of the sun's centre as its upper edge appears, refraction and radius taken, °."""
OUTSIDE: Final = Source("Spencer", "Search 2 (1971) 172", "eccentricity correction")


@dataclass(frozen=True, slots=True)
class SunTimes:
    """Rise, noon and set, hours UTC; rise and set are None where the sun does not cross."""

    rise: Hour | None
    noon: Hour
    set: Hour | None
    night: Hour


def _half_day(latitude: float, tilt: float, altitude: float = 0.0) -> float:
    """Return the hour angle at which the sun passes an altitude, °: 0 to 180."""
    across = cos(radians(latitude)) * cos(radians(tilt))
    above = sin(radians(altitude)) - sin(radians(latitude)) * sin(radians(tilt))
    if across < 1e-12:
        return 0.0 if above > 0 else 180.0
    return degrees(acos(max(-1.0, min(1.0, above / across))))


def day_length(latitude: float, day_of_year: int, altitude: float = SUNRISE) -> Hour:
    """Return how long the sun is up; the night is the rest of 24 h.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    day_of_year : int
        From 1. [1]
    altitude : float
        Of the sun's centre at rise and set; 0 for the bare geometry. [°]

    Returns
    -------
    Hour
        From 0 in polar night to 24. [h]

    Raises
    ------
    Problem
        If the latitude lies beyond a pole.

    Examples
    --------
    >>> day_length(43.0, 198), day_length(75.0, 355)
    (15.0, 0.0)
    """
    tilt = declination(day_of_year)
    return Hour(2 * _half_day(checked_latitude(latitude), tilt, altitude) / 15)


def sun_times(latitude: float, longitude: float, day_of_year: int) -> SunTimes:
    """Return when the sun rises, stands highest, and sets.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    longitude : float
        East positive; 0 gives local mean time anywhere. [°]
    day_of_year : int
        From 1. [1]

    Raises
    ------
    Problem
        If the latitude lies beyond a pole.

    Notes
    -----
    Declination and equation of time are those of noon, so that near the poles' circles a rise or
    set may be some minutes out.
    """
    up = day_length(latitude, day_of_year)
    noon = 12 - longitude / 15 - orbit(day_of_year).equation / 60
    crosses = 0 < up < 24
    return SunTimes(
        Hour((noon - up / 2) % 24) if crosses else None,
        Hour(noon % 24),
        Hour((noon + up / 2) % 24) if crosses else None,
        Hour(24 - up),
    )


def sunset_angle(latitude: float, tilt: float) -> float:
    """Return the hour angle at sunset, without air.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    tilt : float
        The sun's declination. [°]

    Returns
    -------
    float
        From 0 in polar night to 180. [°]
    """
    return _half_day(latitude, tilt)


def normal_outside(day_of_year: int, constant: float = CONSTANT) -> float:
    """Return the sun's power above the air on a plane that faces it.

    Parameters
    ----------
    day_of_year : int
        From 1. [1]
    constant : float
        The solar constant. [W/m²]

    Returns
    -------
    float
        3.4 % more in January, less in July. [W/m²]

    References
    ----------
    .. [1] Spencer, Search 2 (1971) 172.
    """
    g = 2 * pi * (day_of_year - 1) / 365
    once = 0.034221 * cos(g) + 0.00128 * sin(g)
    return constant * (1.00011 + once + 0.000719 * cos(2 * g) + 0.000077 * sin(2 * g))


def day_outside(latitude: float, tilt: float, normal: float) -> float:
    """Return a day's irradiation above the air on a level plane.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    tilt : float
        The sun's declination. [°]
    normal : float
        Its power on a plane that faces it. [W/m²]

    Returns
    -------
    float
        Of the day. [Wh/m²]

    References
    ----------
    .. [1] FAO Irrigation and Drainage Paper 56, 1998, equation 21.

    Examples
    --------
    >>> day_outside(-20.0, degrees(0.120), 1366.67 * 0.985) * 0.0036
    32.2
    """
    half = radians(sunset_angle(latitude, tilt))
    north, sun = radians(latitude), radians(tilt)
    shape = cos(north) * cos(sun) * sin(half) + half * sin(north) * sin(sun)
    return max(24 / pi * normal * shape, 0.0)
