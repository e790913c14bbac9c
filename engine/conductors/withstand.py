"""What short-circuit heat a conductor bears before its insulation spoils."""

from __future__ import annotations

from math import log, sqrt
from typing import TYPE_CHECKING, Final

from engine.finding import Rule
from engine.problem import Problem
from engine.source import Source
from engine.units import Amp, Celsius, fixed, said

if TYPE_CHECKING:
    from engine.conductors.sizes import Size

COPPER: Final = 226.0
"""Of copper, A·√s/mm²."""
ZERO: Final = 234.5
"""Degrees below 0 °C at which copper's resistance would vanish along its straight line, °C."""
BOAT_CABLE: Final = (Celsius(105.0), Celsius(160.0))
"""PVC boat cable of 105 °C: as hot as its class allows when the fault comes, and PVC's end, °C."""
ADIABATIC: Final = 5.0
"""Longest time for which no heat is reckoned to leave the copper, s."""

WITHSTANDS: Final = Rule(
    "withstand",
    "a fault lets through no more heat than the conductor bears: I²t is at most (k S)²",
    Source("BS 7671 and IEC 60364-4-43", "as reprinted", "adiabatic equation, to about 5 s"),
)
BOAT_CABLE_SOURCE: Final = Source(
    "adiabatic equation", "own derivation", "105 to 160 °C, k = 87.6; stricter than PVC at 70 °C"
)


def k_of(initial: Celsius, final: Celsius) -> float:
    """Return the factor k of copper between two temperatures.

    Parameters
    ----------
    initial : Celsius
        Of the copper when the fault comes. [°C]
    final : Celsius
        That its insulation bears for seconds. [°C]

    Returns
    -------
    float
        ``226 √ln((234.5 + Tf) / (234.5 + Ti))``. [A·√s/mm²]

    Raises
    ------
    Problem
        If the final temperature is not above the initial, or the initial beyond belief.

    References
    ----------
    .. [1] BS 7671, table 43.1; the formula reproduces its six values for copper.

    Examples
    --------
    >>> k_of(Celsius(70.0), Celsius(160.0)), k_of(*BOAT_CABLE)
    (115.0, 87.6)
    """
    if initial <= -ZERO or final <= initial:
        raise Problem(
            "final",
            f"Copper cannot warm from {said(initial)} to {said(final)} °C.",
            "Enter a final temperature above the initial, such as 160 degC.",
        )
    return COPPER * sqrt(log((ZERO + final) / (ZERO + initial)))


def limit(size: Size, initial: Celsius = BOAT_CABLE[0], final: Celsius = BOAT_CABLE[1]) -> float:
    """Return the heat a conductor bears, as I²t.

    Parameters
    ----------
    size : Size
        Of any catalogue.
    initial : Celsius
        Of the copper when the fault comes. [°C]
    final : Celsius
        That its insulation bears for seconds. [°C]

    Returns
    -------
    float
        ``(k S)²``. [A²s]

    Raises
    ------
    Problem
        If the final temperature is not above the initial.

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> limit(read_size("10 mm2"), Celsius(70.0), Celsius(160.0)) / 1e6
    1.322
    """
    return (k_of(initial, final) * size.area) ** 2


def energy(current: Amp, time: float) -> float:
    """Return the heat of a steady current, as I²t.

    Parameters
    ----------
    current : Amp
        Steady. [A]
    time : float
        That it flows. [s]

    Returns
    -------
    float
        Per ohm of conductor. [A²s]

    Examples
    --------
    >>> energy(Amp(1000.0), 0.1)
    100000.0
    """
    return current**2 * time


def heat(value: float) -> str:
    """Return an I²t for people, to three digits and never in powers of ten.

    Parameters
    ----------
    value : float
        As I²t. [A²s]

    Examples
    --------
    >>> heat(1356947.0), heat(5.25)
    ('1360000 A²s', '5.25 A²s')
    """
    figure = said(value)
    return f"{fixed(float(figure), 0) if 'e' in figure else figure} A²s"
