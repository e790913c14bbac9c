"""An evening as the crew states it: what the monitor shows, the time, and tomorrow's sky."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.field import CHOICE, Field, by_name, value_of
from engine.problem import Problem
from engine.simulate.weather import SKIES
from engine.units import CLOCK, FRACTION, Share, clock

if TYPE_CHECKING:
    from collections.abc import Mapping

SKY_WORDS: Final = (("clear", "clear"), ("part", "part cloud"), ("dull", "dull"))
MINUTES: Final = 5
"""A time is told in steps of so many."""
FIELDS: Final = by_name(
    Field("charge", "Charge now", FRACTION, "As the monitor shows it.", "", 0.0, 1.0),
    Field("time", "Time now", CLOCK, "Such as 19:30.", "19:00"),
    Field("sky", "Sky tomorrow", CHOICE, "", "part", choices=SKY_WORDS),
)
"""What is asked; it belongs to the evening, not to the plan."""


@dataclass(frozen=True, slots=True)
class Evening:
    """Now: what the monitor shows (1), the hour of the clock (h), and the sky ahead."""

    charge: Share
    hour: float
    sky: str


def evening_of(texts: Mapping[str, str], charge: Share) -> tuple[Evening, dict[str, Problem]]:
    """Return now as typed, and what could not be read by the name of its field.

    Parameters
    ----------
    texts : mapping of str to str
        By the names of FIELDS; what is missing has its default.
    charge : Share
        The plan's, where none is typed. [1]
    """
    problems: dict[str, Problem] = {}
    typed, hour = charge, 0.0
    try:
        found = value_of(FIELDS["charge"], texts.get("charge", "")).likely
        typed = charge if found is None else Share(found)
    except Problem as problem:
        problems["charge"] = problem
    try:
        hour = clock(texts.get("time", "") or FIELDS["time"].default)
    except Problem as problem:
        problems["time"] = problem
    sky = texts.get("sky", "") or FIELDS["sky"].default
    return Evening(typed, hour, sky if sky in SKIES else FIELDS["sky"].default), problems


def plain_hour(hours: float) -> tuple[int, str]:
    """Return the day from today (0) and the time on the clock.

    Parameters
    ----------
    hours : float
        Since today's midnight. [h]

    Examples
    --------
    >>> plain_hour(29.66)
    (1, '05:40')
    """
    minutes = round(hours * 60 / MINUTES) * MINUTES
    day, rest = divmod(minutes, 24 * 60)
    return day, f"{rest // 60:02d}:{rest % 60:02d}"
