"""A wind turbine over many days: the mean of its power in winds that come as Rayleigh found them.

The mean wind says little: power goes with the cube, and half of it comes in the few strong hours.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import erf, exp, pi, sqrt
from typing import Final

from engine.problem import Problem
from engine.source import Source
from engine.units import MetrePerSecond, Share, SquareMetre, Watt, said

AIR: Final = 1.225
"""kg/m³ at sea level and 15 °C."""
BETZ: Final = Share(16 / 27)
"""The most any rotor can take out of the wind."""
FURLED: Final = Share(0.5)
"""What a turbine gives of its rating between furling and stopping."""
COEFFICIENT: Final = Share(0.25)
RATED: Final = Watt(400.0)
CUT_IN: Final = MetrePerSecond(3.0)
FURL: Final = MetrePerSecond(18.0)
CUT_OUT: Final = MetrePerSecond(25.0)
"""Typical of a small turbine, until its sheet is read."""

RAYLEIGH: Final = Source(
    "Rayleigh distribution", "wind energy textbooks", "f = π v / (2 V²) exp(−π/4 (v / V)²)"
)


@dataclass(frozen=True, slots=True)
class Turbine:
    """A turbine: swept ``area`` (m²), ``power_coefficient`` up to its terminals (1), ``rated`` (W).

    It starts at ``cut_in``, gives half its rating from ``furl`` on and nothing from ``cut_out`` on
    (all m/s).
    """

    area: SquareMetre
    power_coefficient: Share = COEFFICIENT
    rated: Watt = RATED
    cut_in: MetrePerSecond = CUT_IN
    furl: MetrePerSecond = FURL
    cut_out: MetrePerSecond = CUT_OUT

    def __post_init__(self) -> None:
        if not self.area > 0:
            raise Problem("area", f"{said(self.area)} m² catches no wind.", "Enter 1.1 m2.")
        if not 0 < self.power_coefficient <= BETZ:
            raise Problem(
                "power_coefficient",
                f"No turbine takes {said(self.power_coefficient * 100)} % of the wind's power.",
                "Enter more than 0 and at most 59.2 %, such as 25 %.",
            )
        if not self.rated > 0:
            raise Problem("rated", f"A rating of {said(self.rated)} W is none.", "Enter 400 W.")
        if not 0 <= self.cut_in <= self.furl <= self.cut_out:
            raise Problem(
                "furl",
                f"{said(self.cut_in)}, {said(self.furl)} and {said(self.cut_out)} m/s do not rise.",
                "Enter cut-in, furling and cut-out from small to large, such as 3, 18 and 25 m/s.",
            )

    @property
    def per_cube(self) -> float:
        """Power for each cube of the wind's speed, W s³/m³."""
        return 0.5 * AIR * self.area * self.power_coefficient

    @property
    def full_speed(self) -> MetrePerSecond:
        """Wind at which the rating is reached, m/s."""
        return MetrePerSecond((self.rated / self.per_cube) ** (1 / 3))


def power_at(turbine: Turbine, speed: MetrePerSecond) -> Watt:
    """Return the power in a steady wind.

    Parameters
    ----------
    turbine : Turbine
        As fitted.
    speed : MetrePerSecond
        At the hub. [m/s]

    Returns
    -------
    Watt
        Electrical. [W]

    Examples
    --------
    >>> turbine = Turbine(SquareMetre(1.04), Share(0.30))
    >>> [round(power_at(turbine, MetrePerSecond(v)), 2) for v in (2.0, 5.0, 15.0, 20.0, 30.0)]
    [0.0, 23.89, 400.0, 200.0, 0.0]
    """
    if not turbine.cut_in <= speed < turbine.cut_out:
        return Watt(0.0)
    most = turbine.rated if speed < turbine.furl else turbine.rated * FURLED
    return Watt(min(turbine.per_cube * speed**3, most))


def mean_power(turbine: Turbine, mean_speed: MetrePerSecond) -> Watt:
    """Return the mean power over many days.

    Parameters
    ----------
    turbine : Turbine
        As fitted.
    mean_speed : MetrePerSecond
        At the hub. [m/s]

    Returns
    -------
    Watt
        Electrical. [W]

    Notes
    -----
    The integral of the power over Rayleigh's distribution, in closed form: with
    ``x = π/4 (v / V)²`` it is a sum of incomplete gamma functions of 5/2 and of exponentials.

    References
    ----------
    .. [1] Rayleigh distribution, in any textbook of wind energy.

    Examples
    --------
    >>> round(mean_power(Turbine(SquareMetre(1.04), Share(0.30)), MetrePerSecond(5.0)), 3)
    44.392
    """
    if not mean_speed > 0:
        return Watt(0.0)
    rising = min(max(turbine.full_speed, turbine.cut_in), turbine.furl)
    half = (turbine.rated * FURLED / turbine.per_cube) ** (1 / 3)
    furled = min(max(half, turbine.furl), turbine.cut_out)
    cubes = _cubes(mean_speed, turbine.cut_in, rising) + _cubes(mean_speed, turbine.furl, furled)
    return Watt(
        turbine.per_cube * cubes
        + turbine.rated * _chance(mean_speed, rising, turbine.furl)
        + turbine.rated * FURLED * _chance(mean_speed, furled, turbine.cut_out)
    )


def density(mean_speed: MetrePerSecond) -> float:
    """Return the mean power of the wind itself.

    Parameters
    ----------
    mean_speed : MetrePerSecond
        Where the rotor is. [m/s]

    Returns
    -------
    float
        ``6/π × ½ × air × V³``, which is 1.91 times what the mean wind has. [W/m²]

    Examples
    --------
    >>> density(MetrePerSecond(6.0))
    252.67
    """
    return 6 / pi * 0.5 * AIR * mean_speed**3


def _chance(mean_speed: float, low: float, high: float) -> float:
    """Return the share of time the wind is between two speeds."""
    return exp(-pi / 4 * (low / mean_speed) ** 2) - exp(-pi / 4 * (high / mean_speed) ** 2)


def _cubes(mean_speed: float, low: float, high: float) -> float:
    """Return the mean of the cube of the wind, counting only what is between two speeds."""
    scale = 2 * mean_speed / sqrt(pi)
    return scale**3 * (_gamma(high / scale) - _gamma(low / scale))


def _gamma(root: float) -> float:
    """Return the lower incomplete gamma function of 5/2 at the square of a root."""
    falling = exp(-(root**2)) * (root**3 + 1.5 * root)
    return 0.75 * sqrt(pi) * erf(root) - falling
