"""Seeded draws: how a day's total spreads when every guess may be off.

Each load's day is drawn from the triangle between its low, likely and high; then the whole
day is multiplied by one shared factor for habits and heat. Independent draws alone mislead: their
errors cancel, and the band comes out far too narrow. Real errors move together, since hot water
makes fridge, fans and watermaker work harder at once and a guest uses more of everything.
"""

from __future__ import annotations

from functools import lru_cache
from math import sqrt
from typing import Final

from engine.estimate import Estimate
from engine.generator import mixed, stepped
from engine.source import common_practice

DRAWS: Final = 500
"""Days drawn. The strata of every figure are even, so that few draws say much."""
SEED: Final = 20270515
HABITS: Final = Estimate(0.84, 1.0, 1.18, "default")
"""The shared factor for habits and heat, low, likely and high."""
GOLDEN: Final = (sqrt(5) - 1) / 2
HABITS_SOURCE: Final = common_practice("shared habits-and-heat factor 0.84 to 1.18")


def triangle(estimate: Estimate, share: float) -> float:
    """Return the value below which a share of a triangular distribution lies.

    Parameters
    ----------
    estimate : Estimate
        Low, likely and high. [any]
    share : float
        From 0 to 1. [1]

    Returns
    -------
    float
        In the estimate's unit. [any]

    Examples
    --------
    >>> triangle(Estimate(0.0, 1.0, 2.0), 0.5)
    1.0
    """
    width = estimate.high - estimate.low
    if width <= 0:
        return estimate.likely
    left = estimate.likely - estimate.low
    if share * width <= left:
        return estimate.low + sqrt(share * width * left)
    return estimate.high - sqrt((1 - share) * width * (estimate.high - estimate.likely))


@lru_cache(maxsize=512)
def shuffled(name: str) -> tuple[float, ...]:
    """Return the middles of DRAWS even strata of 0 to 1, in an order that the name decides.

    Parameters
    ----------
    name : str
        What the draw is for, such as a load's id.

    Returns
    -------
    tuple of float
        Shape ``(DRAWS,)``. [1]
    """
    order = list(range(DRAWS))
    state = mixed(SEED, name)
    for last in range(DRAWS - 1, 0, -1):
        state = stepped(state)
        pick = (state >> 33) % (last + 1)
        order[last], order[pick] = order[pick], order[last]
    return tuple((stratum + 0.5) / DRAWS for stratum in order)


@lru_cache(maxsize=1024)
def drawn(name: str, estimate: Estimate) -> tuple[float, ...]:
    """Return seeded draws of one figure.

    Parameters
    ----------
    name : str
        What the draw is for.
    estimate : Estimate
        Its range. [any]

    Returns
    -------
    tuple of float
        Shape ``(DRAWS,)``. [any]
    """
    return tuple(triangle(estimate, share) for share in shuffled(name))


@lru_cache(maxsize=1)
def habits() -> tuple[float, ...]:
    """Return the shared factor of each day, for days put in order from small to large.

    Steps of the golden ratio give small days and large ones alike every factor, so that the band
    does not hang on which day met which.

    Returns
    -------
    tuple of float
        Shape ``(DRAWS,)``. [1]
    """
    return tuple(triangle(HABITS, (day + 0.5) * GOLDEN % 1) for day in range(DRAWS))


def quantile(ordered: list[float], share: float) -> float:
    """Return the value below which a share of an ordered sample lies.

    Parameters
    ----------
    ordered : list of float
        Shape ``(n,)``, small to large. [any]
    share : float
        From 0 to 1. [1]

    Returns
    -------
    float
        Between neighbours in proportion. [any]

    Examples
    --------
    >>> quantile([0.0, 1.0, 2.0], 0.25)
    0.5
    """
    place = share * (len(ordered) - 1)
    below = int(place)
    above = min(below + 1, len(ordered) - 1)
    return ordered[below] + (ordered[above] - ordered[below]) * (place - below)
