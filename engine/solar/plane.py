"""What falls on a tilted plane, after Hay and Davies, and what its glass lets in."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import cos, exp, gcd, radians, sin, sqrt
from typing import TYPE_CHECKING, Final

from engine.solar.clouded import clouded_light
from engine.solar.sky import DAY, STEP, Frame
from engine.source import Source

if TYPE_CHECKING:
    from engine.solar.sky import Light, Moment
    from engine.units import Share

ALBEDO: Final = 0.06
"""Light that the sea throws back. A white deck throws back 0.2 to 0.5."""
LOWEST: Final = 0.01745
"""Cosine of the zenith, 89°, below which the sun's ring is not blown up further."""
INDEX: Final = 1.526
ABSORBED: Final = 4.0 * 0.002
"""Extinction of clear glass, 4 per metre, times its 2 mm."""

TILTED: Final = Source(
    "Hay and Davies", "1980, as Duffie and Beckman give it", "beam, ring round the sun, sky"
)
GLASS: Final = Source("Duffie and Beckman", "chapter 5", "one pane, n 1.526, 4 per m, 2 mm")


@dataclass(frozen=True, slots=True)
class Plane:
    """A plane: tilt from level and azimuth from true north in °, and the albedo round it."""

    tilt: float = 0.0
    azimuth: float = 180.0
    albedo: float = ALBEDO


FLAT: Final = Plane()


@dataclass(frozen=True, slots=True)
class Fallen:
    """Light on a plane: straight and from everywhere else in W/m², and the cosine of incidence."""

    straight: float
    scattered: float
    incidence: float

    @property
    def total(self) -> float:
        """All of it, W/m²."""
        return self.straight + self.scattered


def fallen(moment: Moment, plane: Plane) -> Fallen:
    """Return the light on a plane.

    Parameters
    ----------
    moment : Moment
        Sun and light.
    plane : Plane
        Where it falls.

    References
    ----------
    .. [1] Hay and Davies 1980, as Duffie and Beckman, "Solar Engineering", chapter 2, give it.
    """
    zenith, tilt = radians(moment.zenith), radians(plane.tilt)
    turned = radians(moment.azimuth - plane.azimuth)
    incidence = cos(zenith) * cos(tilt) + sin(zenith) * sin(tilt) * cos(turned)
    facing = max(incidence, 0.0)
    ring = moment.beam / moment.outside
    from_ring = ring * facing / max(cos(zenith), LOWEST)
    from_sky = (1 - ring) * (1 + cos(tilt)) / 2
    from_sea = moment.level * plane.albedo * (1 - cos(tilt)) / 2
    scattered = moment.diffuse * (from_ring + from_sky) + from_sea
    return Fallen(moment.beam * facing, scattered, facing)


def through_glass(incidence: float) -> float:
    """Return the share of the beam that glass lets in, over that at a right angle.

    Parameters
    ----------
    incidence : float
        Cosine of the angle from the perpendicular, 0 to 1. [1]

    Returns
    -------
    float
        0 at grazing light. [1]

    References
    ----------
    .. [1] Duffie and Beckman, "Solar Engineering", chapter 5: Snell, Fresnel and Bouguer.

    Examples
    --------
    >>> [through_glass(cos(radians(angle))) for angle in (0, 60, 75)]
    [1.0, 0.94600, 0.77406]
    """
    if incidence <= 0:
        return 0.0
    inside = sqrt(1 - (1 - incidence**2) / INDEX**2)
    across = ((incidence - INDEX * inside) / (incidence + INDEX * inside)) ** 2
    along = ((inside - INDEX * incidence) / (inside + INDEX * incidence)) ** 2
    passed = exp(-ABSORBED / inside) * (1 - (across + along) / 2)
    upright = exp(-ABSORBED) * (1 - ((1 - INDEX) / (1 + INDEX)) ** 2)
    return passed / upright


def tilted(light: Light, plane: Plane) -> float:
    """Return a day's irradiation of a plane.

    Parameters
    ----------
    light : Light
        Of the day.
    plane : Plane
        Where it falls.

    Returns
    -------
    float
        Of the day. [Wh/m²]
    """
    return light.hours * sum(fallen(moment, plane).total for moment in light.moments)


@lru_cache(maxsize=1024)
def day_profile(
    latitude: float,
    day_of_year: int,
    clearness: Share,
    step_minutes: int = 15,
    plane: Plane = FLAT,
) -> tuple[float, ...]:
    """Return a day of a given clearness as averages over equal steps, for a simulation.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    day_of_year : int
        From 1. [1]
    clearness : Share
        Irradiation over that outside the air. [1]
    step_minutes : int
        Must divide a day. [min]
    plane : Plane
        Where it falls; level by default.

    Returns
    -------
    tuple of float
        Shape ``(1440 / step_minutes,)`` from midnight of local mean time; times the step it sums
        to the day's irradiation of the plane. [W/m²]

    Raises
    ------
    Problem
        If the latitude lies beyond a pole, or the step does not divide a day.

    Notes
    -----
    Kept by its arguments: a simulation that rounds clearness to 0.01 asks for each day once.
    """
    Frame(step=step_minutes)
    fine = gcd(step_minutes, STEP)
    light = clouded_light(latitude, day_of_year, clearness, Frame(step=fine))
    steps = [0.0] * (DAY // step_minutes)
    for moment in light.moments:
        place = int(moment.hour * 60 // step_minutes)
        steps[place] += fallen(moment, plane).total * fine / step_minutes
    return tuple(steps)
