"""A generator aboard: how large, and what it burns."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from engine.finding import Demand, Rule, meets
from engine.problem import Problem
from engine.shore.tables import FUEL_8_KW, FUEL_20_KW
from engine.source import Source, common_practice
from engine.units import Share, Watt, said

if TYPE_CHECKING:
    from engine.table import Table

EXHAUST_CAUTION: Final = (
    "Danger. Exhaust of a generator kills without smell. Carbon monoxide alarm first; nobody "
    "asleep near."
)
STEADY: Final = Share(0.8)
"""Share of its rating that a generator gives for hours."""
LEAST_LOAD: Final = Share(0.3)
"""Share of its rating below which a diesel runs too cool."""

RUNS: Final = Rule(
    "generator runs",
    "what runs for hours is at most 80 % of the rating",
    common_practice("one fifth in hand"),
)
STARTS: Final = Rule(
    "generator starts",
    "the largest start, with all that runs, is within the rating",
    common_practice("no overload counted on for a start"),
)
WORKS: Final = Rule(
    "generator works",
    "a diesel carries at least 30 % of its rating, or it soots and glazes",
    common_practice("30 %"),
)
FUEL: Final = Source(
    "diesel generator fuel chart", "public", "8 and 20 kW rows; straight lines between"
)

_SMALL: Final = Watt(8000.0)
_LARGE: Final = Watt(20000.0)


def size_needed(running: Watt, starting: Watt) -> tuple[Demand, Demand]:
    """Return the two demands on a generator's rating; the larger governs.

    Parameters
    ----------
    running : Watt
        Of all that runs for hours. [W]
    starting : Watt
        The worst start with all that runs by then. [W]

    Returns
    -------
    tuple of Demand
        Watts by running and by starting. [W]

    Raises
    ------
    Problem
        If watts are negative.

    Examples
    --------
    >>> from engine.finding import governing
    >>> governing(size_needed(Watt(3000.0), Watt(4500.0))).least
    4500.0
    """
    if running < 0 or starting < 0:
        raise Problem("watts", "Watts of a load cannot be negative.", "Enter 0 W or more.")
    return (
        Demand(RUNS, running / STEADY, f"{said(running)} W / 0.8"),
        Demand(STARTS, starting, f"{said(starting)} W for a moment"),
    )


def fuel(rating: Watt, load: Watt) -> float:
    """Return what a diesel generator burns.

    Parameters
    ----------
    rating : Watt
        Continuous, on its plate. [W]
    load : Watt
        What it gives. [W]

    Returns
    -------
    float
        Litres an hour by the chart; between its two sizes and its quarter loads by straight
        lines, beyond its sizes in proportion to the rating, below its lightest load along its
        last line. [L/h]

    Raises
    ------
    Problem
        If the rating is not above zero, or the load not within it.

    Examples
    --------
    >>> fuel(Watt(20000.0), Watt(10000.0)), fuel(Watt(8000.0), Watt(6000.0))
    (3.4, 2.05)
    """
    if rating <= 0:
        raise Problem("rating", f"A generator of {said(rating)} W is none.", "Enter such as 8 kW.")
    if load < 0 or not meets(load, rating):
        raise Problem(
            "load",
            f"{said(load)} W is no load for a generator of {said(rating)} W.",
            f"Enter 0 to {said(rating)} W.",
        )
    share = load / rating
    small, large = _at(FUEL_8_KW, share) / _SMALL, _at(FUEL_20_KW, share) / _LARGE
    part = min(max((rating - _SMALL) / (_LARGE - _SMALL), 0.0), 1.0)
    return rating * (small + (large - small) * part)


def _at(chart: Table[float, float], share: float) -> float:
    """Return L/h at a share of the rating, along the line it lies on or the nearest one."""
    lines = list(pairwise(chart.rows.items()))
    line = next((one for one in lines if share <= one[1][0]), lines[-1])
    (low, less), (high, more) = line
    return less + (more - less) * (share - low) / (high - low)


def charted(rating: Watt, load: Watt) -> bool:
    """Return whether a rating and a load lie within what the chart prints.

    Parameters
    ----------
    rating : Watt
        Continuous, on its plate, above zero. [W]
    load : Watt
        What it gives. [W]
    """
    lightest = min(FUEL_20_KW.rows if rating >= _LARGE else FUEL_8_KW.rows)
    return _SMALL <= rating <= _LARGE and meets(lightest, load / rating)


def works_hard_enough(rating: Watt, load: Watt) -> bool:
    """Return whether a diesel carries enough to keep itself clean.

    Parameters
    ----------
    rating : Watt
        Continuous, on its plate, above zero. [W]
    load : Watt
        What it gives. [W]

    Examples
    --------
    >>> works_hard_enough(Watt(8000.0), Watt(2000.0))
    False
    """
    return meets(LEAST_LOAD, load / rating)
