"""The light of a day of a given clearness: the clear day's shape, split by Erbs."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians

from engine.solar.daylight import day_outside, normal_outside, sunset_angle
from engine.solar.sky import USUAL, Frame, Light, clear_light
from engine.solar.sun import NOON, checked_latitude, orbit
from engine.units import Hour, Share


def outside_day(latitude: float, day_of_year: int, frame: Frame = USUAL) -> float:
    """Return a day's irradiation above the air on a level plane.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    day_of_year : int
        From 1. [1]
    frame : Frame
        How the day is reckoned.

    Returns
    -------
    float
        0 in polar night. [Wh/m²]

    Raises
    ------
    Problem
        If the latitude lies beyond a pole.
    """
    tilt = _noon_tilt(day_of_year, frame)
    return day_outside(
        checked_latitude(latitude), tilt, normal_outside(day_of_year, frame.constant)
    )


def _noon_tilt(day_of_year: int, frame: Frame) -> float:
    return orbit(day_of_year, Hour(NOON - frame.longitude / 15), frame.year).declination


def diffuse_share(clearness: Share, sunset: float) -> Share:
    """Return how much of a day's sun comes from the whole sky and not straight from the sun.

    Parameters
    ----------
    clearness : Share
        Irradiation over that outside the air. [1]
    sunset : float
        Hour angle at sunset. [°]

    Returns
    -------
    Share
        Of the irradiation of a level plane. [1]

    References
    ----------
    .. [1] Erbs, Klein and Duffie, Solar Energy 28 (1982) 293, as Duffie and Beckman 2.11 gives it.

    Examples
    --------
    >>> diffuse_share(Share(0.5), 90.0), diffuse_share(Share(0.8), 90.0)
    (0.608, 0.175)
    """
    k = clearness
    if sunset < 81.4:
        if k >= 0.715:
            return Share(0.143)
        return Share(1 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + k * 9.3879))))
    if k >= 0.722:
        return Share(0.175)
    return Share(1 + k * (0.2832 + k * (-2.5557 + k * 0.8448)))


def clouded_light(
    latitude: float, day_of_year: int, clearness: Share, frame: Frame = USUAL
) -> Light:
    """Return the light of a day of a given clearness.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    day_of_year : int
        From 1. [1]
    clearness : Share
        Irradiation over that outside the air. [1]
    frame : Frame
        How the day is reckoned.

    Raises
    ------
    Problem
        If the latitude lies beyond a pole or the year has no such day.

    Notes
    -----
    Every step of the clear day shrinks alike, and the same share of each comes from the whole sky.
    """
    clear = clear_light(latitude, day_of_year, None, frame)
    whole = clear.irradiation
    if whole <= 0:
        return clear
    factor = clearness * outside_day(latitude, day_of_year, frame) / whole
    sunset = sunset_angle(latitude, _noon_tilt(day_of_year, frame))
    scattered = diffuse_share(clearness, sunset)
    moments = []
    for moment in clear.moments:
        level = moment.level * factor
        beam = level * (1 - scattered) / cos(radians(moment.zenith))
        moments.append(replace(moment, level=level, beam=beam, diffuse=level * scattered))
    return Light(tuple(moments), clear.hours)
