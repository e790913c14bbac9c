"""An inverter's wave, its idle and search draw, and what warm air leaves of its rating."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from engine.finding import Rule, Verdict
from engine.problem import Problem
from engine.shore.appliances import Nature
from engine.shore.tables import IDLE_SHARE, INVERTER_DERATE, SEARCH_WATTS
from engine.source import common_practice
from engine.units import Celsius, Hour, Share, Watt, said

WAVE: Final = Rule(
    "wave",
    "a modified wave feeds heaters; motors, transformers and chargers ask for a pure one",
    common_practice("pure wave for all but heaters and filament lamps"),
)


@dataclass(frozen=True, slots=True)
class OnModified:
    """How an appliance takes a modified wave."""

    verdict: Verdict
    words: str


MODIFIED: Final = {
    Nature.RESISTIVE: OnModified(
        Verdict.FINE, "Heats as usual; a thermostat with electronics in it may not."
    ),
    Nature.MOTOR: OnModified(
        Verdict.SHOULD, "Runs warmer by about a fifth, hums, and starts with less force."
    ),
    Nature.TRANSFORMER: OnModified(
        Verdict.SHOULD, "Buzzes and runs warm; a microwave cooks slower and its clock drifts."
    ),
    Nature.ELECTRONIC: OnModified(
        Verdict.SHOULD, "Most run; dimmers, small capacitive supplies and sound equipment do not."
    ),
    Nature.CONSTANT_POWER: OnModified(
        Verdict.STOP, "Chargers for tools and batteries may overheat: pure wave only."
    ),
}
"""How each class of appliance takes a modified wave. All take a pure one."""


def idle(rating: Watt) -> tuple[Watt, Watt, Watt]:
    """Return what an inverter switched on takes with no load: low, likely and high.

    Parameters
    ----------
    rating : Watt
        Continuous. [W]

    Returns
    -------
    tuple of Watt
        From the bank. [W]

    Raises
    ------
    Problem
        If the rating is not above zero.

    Examples
    --------
    >>> idle(Watt(2000.0))
    (10.0, 20.0, 40.0)
    """
    if rating <= 0:
        raise Problem(
            "rating", f"An inverter of {said(rating)} W is none.", "Enter such as 2000 W."
        )
    low, likely, high = IDLE_SHARE["on"]
    return Watt(low * rating), Watt(likely * rating), Watt(high * rating)


def saved_by_search(rating: Watt, idle_hours: Hour) -> float:
    """Return what search mode saves in a day, at the likely figures.

    Parameters
    ----------
    rating : Watt
        Continuous. [W]
    idle_hours : Hour
        On with nothing to feed, in a day. [h]

    Returns
    -------
    float
        Never below zero; a load under the search threshold is then not seen. [Wh]

    Raises
    ------
    Problem
        If the rating is not above zero or the hours are no part of a day.

    Examples
    --------
    >>> saved_by_search(Watt(2000.0), Hour(20.0))
    360.0
    """
    if not 0 <= idle_hours <= 24:
        raise Problem("hours", f"{said(idle_hours)} h is no part of a day.", "Enter 0 to 24 h.")
    return max(idle(rating)[1] - SEARCH_WATTS["search"][1], 0.0) * idle_hours


def warm_share(air: Celsius) -> Share | None:
    """Return what warm air leaves of an inverter's rating, or None where it switches itself off.

    Parameters
    ----------
    air : Celsius
        At its intake. [°C]

    Returns
    -------
    Share or None
        Straight lines between the typical points; 1 below the first. [1]

    Examples
    --------
    >>> [warm_share(Celsius(air)) for air in (20.0, 40.0, 50.0, 61.0)]
    [1.0, 0.8, 0.65, None]
    """
    points = list(INVERTER_DERATE.rows.items())
    if air <= points[0][0]:
        return Share(points[0][1])
    for (cool, more), (warm, less) in pairwise(points):
        if air <= warm:
            return Share(more + (less - more) * (air - cool) / (warm - cool))
    return None
