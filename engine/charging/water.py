"""A towed generator: what it gives, and the drag it costs."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import Final

from engine.problem import Problem
from engine.units import Metre, MetrePerSecond, Share, Watt, said

SEA: Final = 1025.0
"""kg/m³ of sea water."""
BETZ: Final = Share(16 / 27)
COEFFICIENT: Final = Share(0.30)
MOST: Final = Watt(500.0)
"""Typical of a towed rotor, until its sheet is read."""
ELECTRICAL: Final = Share(0.75)
"""Electrical over shaft power."""
ROTOR: Final = Share(0.6)
"""Shaft power over what the drag costs the boat."""


@dataclass(frozen=True, slots=True)
class Rotor:
    """A rotor: ``diameter`` (m), ``power_coefficient`` to its terminals (1), ``most`` power (W)."""

    diameter: Metre
    power_coefficient: Share = COEFFICIENT
    most: Watt = MOST

    def __post_init__(self) -> None:
        if not self.diameter > 0:
            raise Problem(
                "diameter", f"A rotor of {said(self.diameter)} m is none.", "Enter 0.24 m."
            )
        if not 0 < self.power_coefficient <= BETZ:
            raise Problem(
                "power_coefficient",
                f"No rotor takes {said(self.power_coefficient * 100)} % of the stream's power.",
                "Enter more than 0 and at most 59.2 %, such as 30 %.",
            )
        if not self.most > 0:
            raise Problem("most", f"A limit of {said(self.most)} W gives none.", "Enter 500 W.")


def power(rotor: Rotor, speed: MetrePerSecond) -> Watt:
    """Return what a towed rotor gives.

    Parameters
    ----------
    rotor : Rotor
        As towed.
    speed : MetrePerSecond
        Of the boat through the water, not negative. [m/s]

    Returns
    -------
    Watt
        Electrical, held to its most. [W]

    Raises
    ------
    Problem
        If the speed is below zero.

    Examples
    --------
    >>> [round(power(Rotor(Metre(0.24)), MetrePerSecond(kn * 1852 / 3600))) for kn in (4, 6, 9)]
    [61, 205, 500]
    """
    if not speed >= 0:
        raise Problem("speed", f"{said(speed)} m/s is astern.", "Enter 5 kn.")
    area = pi / 4 * rotor.diameter**2
    return Watt(min(0.5 * SEA * area * speed**3 * rotor.power_coefficient, rotor.most))


def drag(rotor: Rotor, speed: MetrePerSecond) -> float:
    """Return the force a towed rotor holds the boat back with.

    Parameters
    ----------
    rotor : Rotor
        As towed.
    speed : MetrePerSecond
        Of the boat through the water, not negative. [m/s]

    Returns
    -------
    float
        Typical; for the power it gives, so more where its regulator sheds power. [N]

    Examples
    --------
    >>> [round(drag(Rotor(Metre(0.24)), MetrePerSecond(kn * 1852 / 3600))) for kn in (0, 5, 6)]
    [0, 102, 147]
    """
    return power(rotor, speed) / (ELECTRICAL * ROTOR * speed) if speed > 0 else 0.0
