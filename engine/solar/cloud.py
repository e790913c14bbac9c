"""Cloudy spells: daily clearness with a Beta spread, and days that resemble the day before.

The clearness of a day is the Beta quantile of a normal score, and the scores follow each other
with a fixed correlation. A seed gives the same days on every machine.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import cos, erfc, exp, lgamma, log, log1p, pi, sqrt
from typing import Final

from engine.generator import mixed, share_of, stepped
from engine.source import Source
from engine.units import Share

DARKEST_DAY: Final = Share(0.03)
BRIGHTEST_DAY: Final = Share(0.85)
ABOVE_CLEAR: Final = 0.03
"""How far a day's clearness may pass that of the clear-sky model."""
LIKE_YESTERDAY: Final = 0.29
"""Correlation of the normal scores of two days that follow each other."""
WIDEST: Final = 0.95
"""Most of a variance that a Beta between two ends may have, over a toss between the ends."""
FARTHEST: Final = 4.0
"""Normal score beyond which every day counts as the last."""
PER_SCORE: Final = 10
"""Tabled quantiles for each unit of score."""
HALVINGS: Final = 30
TERMS: Final = 300
TINY: Final = 1e-300

SPELLS: Final = Source(
    "Graham and Hollands", "Solar Energy 44 (1990) 333", "form; correlation 0.29", typical=True
)


@dataclass(frozen=True, slots=True)
class Clearness:
    """Daily clearness of a month: mean, spread (one standard deviation), and the clearest day."""

    mean: Share
    spread: float
    clearest: Share

    def shape(self) -> tuple[float, float]:
        """Return the two exponents of the Beta between the darkest and the clearest day."""
        width = self.clearest - DARKEST_DAY
        mean = (self.mean - DARKEST_DAY) / width
        mean = min(max(mean, 0.01), 0.99)
        variance = min((self.spread / width) ** 2, WIDEST * mean * (1 - mean))
        total = mean * (1 - mean) / max(variance, 1e-6) - 1
        return mean * total, (1 - mean) * total


def clearness_of(mean: Share, spread: float, clear: Share) -> Clearness:
    """Return a month's daily clearness.

    Parameters
    ----------
    mean : Share
        Of the month. [1]
    spread : float
        Standard deviation from day to day. [1]
    clear : Share
        Of a clear day by the model. [1]
    """
    clearest = min(max(clear, mean) + ABOVE_CLEAR, BRIGHTEST_DAY)
    return Clearness(Share(mean), spread, Share(max(clearest, DARKEST_DAY + 0.01)))


def _continued(a: float, b: float, x: float) -> float:
    """Return the continued fraction of the incomplete Beta, by Lentz's rule (DLMF 8.17.22)."""
    upper, lower = 1.0, 1 / _kept(1 - (a + b) * x / (a + 1))
    found = lower
    for m in range(1, TERMS):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for term in (even, odd):
            lower = 1 / _kept(1 + term * lower)
            upper = _kept(1 + term / upper)
            found *= upper * lower
        if abs(upper * lower - 1) < 1e-12:
            break
    return found


def _kept(value: float) -> float:
    return value if abs(value) > TINY else TINY


def below(a: float, b: float, x: float) -> float:
    """Return the share of a Beta that lies below a value.

    Parameters
    ----------
    a : float
        First exponent. [1]
    b : float
        Second exponent. [1]
    x : float
        From 0 to 1. [1]

    Returns
    -------
    float
        The regularised incomplete Beta. [1]

    References
    ----------
    .. [1] NIST Digital Library of Mathematical Functions, 8.17.22.

    Examples
    --------
    >>> below(2.0, 2.0, 0.5), below(1.0, 3.0, 0.2)
    (0.5, 0.488)
    """
    if x <= 0 or x >= 1:
        return float(x > 0)
    front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log1p(-x))
    if x < (a + 1) / (a + b + 2):
        return front * _continued(a, b, x) / a
    return 1 - front * _continued(b, a, 1 - x) / b


def _solved(a: float, b: float, share: float, least: float) -> float:
    """Return the value below which a share of a Beta lies; it is known to be at least so much."""
    low, high = least, 1.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if below(a, b, middle) < share else (low, middle)
    return (low + high) / 2


@lru_cache(maxsize=64)
def _quantiles(days: Clearness) -> tuple[float, ...]:
    """Return the clearness at even steps of the normal score, from −FARTHEST to FARTHEST."""
    a, b = days.shape()
    width, found, value = days.clearest - DARKEST_DAY, [], 0.0
    for step in range(round(2 * FARTHEST * PER_SCORE) + 1):
        score = step / PER_SCORE - FARTHEST
        value = _solved(a, b, erfc(-score / sqrt(2)) / 2, value)
        found.append(DARKEST_DAY + width * value)
    return tuple(found)


def at_score(days: Clearness, score: float) -> Share:
    """Return the clearness of a day by its normal score.

    Parameters
    ----------
    days : Clearness
        Of the month.
    score : float
        0 is the middle day, −1.2816 is passed nine days in ten. [1]

    Returns
    -------
    Share
        Straight between tabled quantiles. [1]
    """
    tabled = _quantiles(days)
    place = (min(max(score, -FARTHEST), FARTHEST) + FARTHEST) * PER_SCORE
    low = min(int(place), len(tabled) - 2)
    return Share(tabled[low] + (place - low) * (tabled[low + 1] - tabled[low]))


def spell(days: Clearness, length: int, seed: int) -> tuple[Share, ...]:
    """Return the clearness of days that follow each other.

    Parameters
    ----------
    days : Clearness
        Of the month.
    length : int
        How many days. [1]
    seed : int
        Any; the same gives the same days. [1]

    Returns
    -------
    tuple of Share
        Shape ``(length,)``. [1]

    References
    ----------
    .. [1] Graham and Hollands, Solar Energy 44 (1990) 333, for the form.
    """
    state, found = mixed(seed, "clearness"), []
    score, fresh = 0.0, 1.0
    for _ in range(length):
        radius = stepped(state)
        state = stepped(radius)
        normal = sqrt(-2 * log(share_of(radius))) * cos(2 * pi * share_of(state))
        score = sqrt(1 - fresh) * score + sqrt(fresh) * normal
        fresh = 1 - LIKE_YESTERDAY**2
        found.append(at_score(days, score))
    return tuple(found)
