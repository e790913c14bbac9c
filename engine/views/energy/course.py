"""What a curve of some days shows: charges, band, nights and marks, and what is read off them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Sequence

DAY: Final = 24.0
LOOKS: Final = ("solid", "dashed", "dotted")
"""How the first, second and third curve are drawn; never by hue alone."""


@dataclass(frozen=True, slots=True)
class Trace:
    """One curve: its name and its charges (1) at the start and after every step."""

    name: str
    charges: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Mark:
    """Something that happened: ``time`` since the first midnight (h), charge (1) and words."""

    time: float
    share: float
    words: str


@dataclass(frozen=True, slots=True)
class Course:
    """What a curve shows of some days.

    ``step`` lies between charges (h). ``band`` is low, middle and high (1) every ``band_step``;
    ``nights`` run from sunset to sunrise, since the first midnight (h). The first of the traces
    feeds the table; without any, the band's middle does.
    """

    days: int
    step: float = 0.25
    traces: tuple[Trace, ...] = ()
    band: tuple[tuple[float, float, float], ...] = ()
    band_step: float = 3.0
    reserve: float | None = None
    disconnect: float | None = None
    nights: tuple[tuple[float, float], ...] = ()
    marks: tuple[Mark, ...] = ()

    @property
    def hours(self) -> float:
        """Length of the course, h."""
        return self.days * DAY

    @property
    def lines(self) -> tuple[tuple[Trace, float], ...]:
        """The curves to draw, each with the step between its charges (h)."""
        middle = Trace("middle of all runs", tuple(one[1] for one in self.band))
        drawn = [(one, self.step) for one in self.traces] or [(middle, self.band_step)]
        return tuple(one for one in drawn[: len(LOOKS)] if one[0].charges and self.days > 0)

    @property
    def letters(self) -> dict[str, str]:
        """A letter for each kind of mark, in order of their first time."""
        kinds = dict.fromkeys(one.words for one in self.marks_in_order)
        return {words: chr(ord("A") + place % 26) for place, words in enumerate(kinds)}

    @property
    def marks_in_order(self) -> list[Mark]:
        """Marks by time."""
        return sorted(self.marks, key=lambda one: one.time)

    def named(self, day: int) -> str:
        """Return a day's name within a sentence.

        Parameters
        ----------
        day : int
            From 0. [1]
        """
        return f"day {day + 1}"

    def titled(self, day: int) -> str:
        """Return a day's name at the head of a line.

        Parameters
        ----------
        day : int
            From 0. [1]
        """
        name = self.named(day)
        return name[:1].upper() + name[1:]

    def dawn(self, day: int) -> float | None:
        """Return when a day's night ends.

        Parameters
        ----------
        day : int
            From 0. [1]

        Returns
        -------
        float or None
            Since the first midnight; None where no night ends in it. [h]
        """
        return self._within(day, [stop for _, stop in self.nights])

    def sunset(self, day: int) -> float | None:
        """Return when a day's next night begins.

        Parameters
        ----------
        day : int
            From 0. [1]

        Returns
        -------
        float or None
            Since the first midnight; None where no night begins in it. [h]
        """
        return self._within(day, [start for start, _ in self.nights])

    def _within(self, day: int, times: list[float]) -> float | None:
        return next((one for one in times if day * DAY < one < (day + 1) * DAY), None)


def read_off(values: Sequence[float], step: float, hours: float) -> float:
    """Return the value of a curve at a time, as it is drawn; past its end, its last.

    Parameters
    ----------
    values : sequence of float
        At the start and after each step, shape ``(n,)``. [any]
    step : float
        Between values. [h]
    hours : float
        Since the start. [h]

    Returns
    -------
    float
        [any]

    Examples
    --------
    >>> round(read_off([0.9, 0.8, 0.7], 3.0, 4.5), 3)
    0.75
    """
    place = min(int(hours / step), len(values) - 1)
    after = values[min(place + 1, len(values) - 1)]
    return values[place] + (after - values[place]) * min(hours / step - place, 1.0)


def lowest_of(values: Sequence[float], step: float, day: int) -> tuple[float, float]:
    """Return the lowest value of a day and when it was.

    Parameters
    ----------
    values : sequence of float
        At the start and after each step, shape ``(n,)``. [any]
    step : float
        Between values. [h]
    day : int
        From 0. [1]

    Returns
    -------
    tuple of float
        Value and time since the first midnight. [any, h]
    """
    count = round(DAY / step)
    places = range(min(day * count, len(values) - 1), min((day + 1) * count, len(values)))
    place = min(places, key=values.__getitem__)
    return values[place], place * step


def nights_of(sunrise: float, sunset: float, days: int) -> tuple[tuple[float, float], ...]:
    """Return the nights of some days that are alike, from sunset to sunrise.

    Parameters
    ----------
    sunrise, sunset : float
        Hours of the day. [h]
    days : int
        How many. [1]

    Returns
    -------
    tuple of tuple of float
        Shape ``(days + 1, 2)``, since the first midnight. [h]

    Examples
    --------
    >>> nights_of(6.0, 18.0, 1)
    ((0.0, 6.0), (18.0, 24.0))
    """
    end = days * DAY
    spans = ((day * DAY + sunset, (day + 1) * DAY + sunrise) for day in range(-1, days))
    return tuple((max(start, 0.0), min(stop, end)) for start, stop in spans)


def clock(hours: float) -> str:
    """Return the time of day.

    Parameters
    ----------
    hours : float
        Since any midnight. [h]

    Examples
    --------
    >>> clock(30.25), clock(47.999)
    ('06:15', '00:00')
    """
    minutes = round(hours * 60) % 1440
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def percent(share: float) -> str:
    """Return a share in whole percent, without its sign.

    Parameters
    ----------
    share : float
        From 0 to 1. [1]
    """
    return str(round(share * 100))
