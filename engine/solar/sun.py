"""Where the sun stands."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import asin, atan2, cos, degrees, radians, sin, tan
from typing import Final

from engine.problem import Problem
from engine.solar.dates import YEAR
from engine.source import Source
from engine.units import Hour, said

NOON: Final = Hour(12.0)

SUN: Final = Source(
    "NOAA solar calculator", "after Meeus 1991, low order", "declination, equation of time"
)


@dataclass(frozen=True, slots=True)
class Orbit:
    """The sun seen from the earth's centre: declination in °, equation of time in minutes."""

    declination: float
    equation: float


@dataclass(frozen=True, slots=True)
class Position:
    """The sun in the sky: zenith as seen through the air, and azimuth from true north, in °."""

    zenith: float
    azimuth: float


def checked_latitude(latitude: float) -> float:
    """Return a latitude, if the earth has it.

    Parameters
    ----------
    latitude : float
        North positive. [°]

    Returns
    -------
    float
        The same. [°]

    Raises
    ------
    Problem
        If it lies beyond a pole.
    """
    if not -90 <= latitude <= 90:
        raise Problem(
            "latitude",
            f"A latitude of {said(latitude, 6)}° lies beyond the pole.",
            "Enter -90 to 90, such as 43.5 N or 12°30' S.",
        )
    return latitude


@lru_cache(maxsize=4096)
def orbit(day_of_year: int, hour: Hour = NOON, year: int = YEAR) -> Orbit:
    """Return declination and equation of time.

    Parameters
    ----------
    day_of_year : int
        From 1. [1]
    hour : Hour
        UTC; may run beyond the day. [h]
    year : int
        Of our calendar. [1]

    References
    ----------
    .. [1] NOAA solar calculator, after Meeus, "Astronomical Algorithms", 1991.
    """
    before = year - 1
    leap_days = before // 4 - before // 100 + before // 400 - 484
    days = 365 * (year - 2000) + leap_days + day_of_year - 1 + (hour - 12) / 24
    t = days / 36525
    mean_longitude = radians((280.46646 + t * (36000.76983 + 0.0003032 * t)) % 360)
    anomaly = radians(357.52911 + t * (35999.05029 - 0.0001537 * t))
    eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t)
    centre = (
        sin(anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t))
        + sin(2 * anomaly) * (0.019993 - 0.000101 * t)
        + sin(3 * anomaly) * 0.000289
    )
    node = radians(125.04 - 1934.136 * t)
    longitude = mean_longitude + radians(centre - 0.00569 - 0.00478 * sin(node))
    seconds = 21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))
    obliquity = radians(23 + (26 + seconds / 60) / 60 + 0.00256 * cos(node))
    y = tan(obliquity / 2) ** 2
    equation = (
        y * sin(2 * mean_longitude)
        - 2 * eccentricity * sin(anomaly)
        + 4 * eccentricity * y * sin(anomaly) * cos(2 * mean_longitude)
        - y * y / 2 * sin(4 * mean_longitude)
        - 5 / 4 * eccentricity**2 * sin(2 * anomaly)
    )
    return Orbit(degrees(asin(sin(obliquity) * sin(longitude))), 4 * degrees(equation))


def declination(day_of_year: int) -> float:
    """Return how far north of the equator the sun stands at noon in Greenwich.

    Parameters
    ----------
    day_of_year : int
        From 1. [1]

    Returns
    -------
    float
        North positive. [°]

    Examples
    --------
    >>> declination(172)
    23.43
    """
    return orbit(day_of_year).declination


def _refraction(altitude: float) -> float:
    """Return how much higher the air makes the sun appear, °."""
    if altitude > 85:
        return 0.0
    slope = tan(radians(altitude))
    if altitude > 5:
        seconds = 58.1 / slope - 0.07 / slope**3 + 0.000086 / slope**5
    elif altitude > -0.575:
        terms = 103.4 + altitude * (-12.79 + altitude * 0.711)
        seconds = 1735 + altitude * (-518.2 + altitude * terms)
    else:
        seconds = -20.774 / slope
    return seconds / 3600


def position(latitude: float, longitude: float, sun: Orbit, hour: Hour) -> Position:
    """Return where the sun stands.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    longitude : float
        East positive. [°]
    sun : Orbit
        At that moment.
    hour : Hour
        UTC. [h]

    References
    ----------
    .. [1] NOAA solar calculator, with its refraction.
    """
    turned = hour * 15 + longitude - 180 + sun.equation / 4
    angle, north, tilt = radians(turned), radians(latitude), radians(sun.declination)
    up = sin(north) * sin(tilt) + cos(north) * cos(tilt) * cos(angle)
    altitude = degrees(asin(max(-1.0, min(1.0, up))))
    west = cos(tilt) * sin(angle)
    south = sin(north) * cos(tilt) * cos(angle) - cos(north) * sin(tilt)
    azimuth = (degrees(atan2(west, south)) + 180) % 360
    return Position(90 - altitude - _refraction(altitude), azimuth)
