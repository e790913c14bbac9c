"""The wind where the turbine is: lower down, behind the land, or on a boat that moves."""

from __future__ import annotations

from math import cos, radians, sqrt
from typing import Final

from engine.derate import Derate, derated
from engine.problem import Problem
from engine.source import Source, common_practice
from engine.units import Metre, MetrePerSecond, Share, said

MEASURED_AT: Final = Metre(10.0)
"""Height above the water that wind tables are for, m."""
SHEAR: Final = 1 / 7
"""How the wind grows with height: 0.11 over open sea to 0.14 over land."""

HEIGHT: Final = Source("one-seventh power law", "wind energy textbooks", "v = v10 (h / 10)^(1/7)")
SHELTER: Final = common_practice("an anchorage has 0.5 to 0.7 of the open wind")
OPEN: Final = Share(1.0)
"""Nothing between the boat and the open wind."""


def site_derates(height: Metre, shelter: Share) -> tuple[Derate, ...]:
    """Return what height and shelter do to the wind of a table.

    Parameters
    ----------
    height : Metre
        Of the hub above the water, above zero. [m]
    shelter : Share
        Of the open wind that reaches the boat. [1]

    Examples
    --------
    >>> [round(one.factor, 2) for one in site_derates(Metre(4.0), Share(0.6))]
    [0.88, 0.6]
    """
    if not height > 0:
        raise Problem("height", f"A hub at {said(height)} m is in the water.", "Enter 3.5 m.")
    grown = (height / MEASURED_AT) ** SHEAR
    return (
        Derate("height", grown, f"hub {said(height)} m above the water", HEIGHT),
        Derate("shelter", shelter, f"{said(shelter * 100)} % of the open wind", SHELTER),
    )


def speed_at_hub(
    open_speed: MetrePerSecond, height: Metre, shelter: Share = OPEN
) -> MetrePerSecond:
    """Return the wind where the turbine is.

    Parameters
    ----------
    open_speed : MetrePerSecond
        Ten metres above open water. [m/s]
    height : Metre
        Of the hub above the water, above zero. [m]
    shelter : Share
        Of the open wind that reaches the boat. [1]

    Returns
    -------
    MetrePerSecond
        At the hub. [m/s]

    Examples
    --------
    >>> round(speed_at_hub(MetrePerSecond(6.0), Metre(50.0)), 2)
    7.55
    """
    return MetrePerSecond(derated(open_speed, site_derates(height, shelter)))


def apparent_speed(
    true_speed: MetrePerSecond, boat_speed: MetrePerSecond, angle: float
) -> MetrePerSecond:
    """Return the wind a turbine feels under way.

    Parameters
    ----------
    true_speed : MetrePerSecond
        Over the water. [m/s]
    boat_speed : MetrePerSecond
        Through the water. [m/s]
    angle : float
        Of the true wind from the bow: 0 ahead, 180 astern. [°]

    Returns
    -------
    MetrePerSecond
        Apparent. [m/s]

    Examples
    --------
    >>> [apparent_speed(MetrePerSecond(8.0), MetrePerSecond(3.0), a) for a in (0.0, 180.0)]
    [11.0, 5.0]
    """
    along = true_speed * cos(radians(angle))
    square = true_speed**2 + boat_speed**2 + 2 * along * boat_speed
    return MetrePerSecond(sqrt(max(square, 0.0)))
