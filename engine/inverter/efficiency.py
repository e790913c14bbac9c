"""What an inverter takes from the bank for what it gives."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Final

from engine.source import Source
from engine.table import Table
from engine.units import Watt

CURVE: Final = Source(
    "Schmidt and Sauer", "1996", "p_dc = p + p0 + v p + r p², per unit of rating", typical=True
)

PRESETS: Final = Table(
    title="Losses of an inverter, per unit of its rating",
    key="kind",
    value="fixed, in proportion, by the square",
    source=Source("own fit", "to common catalogue efficiencies", "Schmidt form", typical=True),
    rows={
        "good": (0.006, 0.025, 0.04),
        "typical": (0.010, 0.04, 0.06),
        "basic": (0.020, 0.05, 0.10),
    },
)


@dataclass(frozen=True, slots=True)
class Curve:
    """Rating in W and the three losses per unit of it: idle, in proportion, and by the square."""

    rating: Watt
    fixed: float
    linear: float
    square: float


def preset(kind: str, rating: Watt) -> Curve:
    """Return the typical curve of a kind of inverter.

    Parameters
    ----------
    kind : str
        ``good``, ``typical`` or ``basic``.
    rating : Watt
        Continuous. [W]

    Examples
    --------
    >>> preset("good", Watt(2000.0))
    Curve(rating=2000.0, fixed=0.006, linear=0.025, square=0.04)
    """
    return Curve(rating, *PRESETS[kind])


def dc_watts(curve: Curve, ac_watts: Watt) -> Watt:
    """Return what the inverter takes from the bank.

    Parameters
    ----------
    curve : Curve
        Of the inverter.
    ac_watts : Watt
        Out of it, not negative. [W]

    Returns
    -------
    Watt
        Its idle draw where nothing is asked of it. [W]

    References
    ----------
    .. [1] Schmidt and Sauer, "Wechselrichter-Wirkungsgrade", Sonnenenergie 4 (1996).

    Examples
    --------
    >>> dc_watts(preset("typical", Watt(2000.0)), Watt(1000.0))
    1090.0
    """
    part = ac_watts / curve.rating
    return Watt(
        curve.rating * (part + curve.fixed + curve.linear * part + curve.square * part * part)
    )


def efficiency(curve: Curve, ac_watts: Watt) -> float:
    """Return watts out over watts in.

    Parameters
    ----------
    curve : Curve
        Of the inverter.
    ac_watts : Watt
        Out of it, not negative. [W]

    Returns
    -------
    float
        0 where nothing is asked of it. [1]

    Examples
    --------
    >>> efficiency(preset("typical", Watt(2000.0)), Watt(200.0))
    0.8726
    """
    return ac_watts / dc_watts(curve, ac_watts) if ac_watts > 0 else 0.0


def best_load(curve: Curve) -> Watt:
    """Return the load at which the inverter wastes the least per watt.

    Parameters
    ----------
    curve : Curve
        Of the inverter.

    Returns
    -------
    Watt
        Where fixed and square losses are equal, but no more than the rating. [W]

    Examples
    --------
    >>> best_load(preset("typical", Watt(2000.0)))
    816.5
    """
    if curve.fixed >= curve.square:
        return curve.rating
    return Watt(curve.rating * sqrt(curve.fixed / curve.square))


def ac_watts_of(curve: Curve, taken: Watt) -> Watt:
    """Return what an inverter gives for what it takes: the other way through the curve.

    Parameters
    ----------
    curve : Curve
        Of the inverter.
    taken : Watt
        From the bank. [W]

    Returns
    -------
    Watt
        0 where no more than the idle draw is taken. [W]

    Examples
    --------
    >>> ac_watts_of(preset("typical", Watt(2000.0)), Watt(1090.0))
    1000.0
    """
    spare = taken / curve.rating - curve.fixed
    if spare <= 0:
        return Watt(0.0)
    slope = 1 + curve.linear
    if curve.square == 0:
        return Watt(curve.rating * spare / slope)
    part = (sqrt(slope * slope + 4 * curve.square * spare) - slope) / (2 * curve.square)
    return Watt(curve.rating * part)
