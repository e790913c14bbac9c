"""The state of charge over some days, drawn like a tide table's curve, with its table and reading.

A wide page shows all days side by side, a phone a week a line: the same strokes used twice.
"""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING, Final

from engine.views.energy.course import DAY, LOOKS, percent, read_off
from engine.views.energy.curve_words import about, key, marks_table, reading, table
from engine.views.energy.drawn import FINE, boxes, fine, picture, rules, thinned, trail, write
from engine.views.parts.html import Html, tag

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from engine.views.energy.course import Course

WIDE: Final = 704
"""Width of all days on a wide page, picture units."""
NARROW: Final = 308
"""Width of a week on a phone, picture units."""
WEEK: Final = 7
TOP: Final = 34
LEFT: Final = 42
TALL: Final = 200
"""Height from 0 to 100 %, picture units."""
FOOT: Final = TOP + TALL
OFF: Final = 0.003
"""The most a thinned curve lies off, 1: little more than half a picture unit; a band twice that."""
MONTH: Final = 21
FIVE: Final = 5
"""Of more days than the first, side by side, only every so many are numbered."""
TITLE: Final = 80
"""Width of the title in the corner, picture units."""
WORDS: Final = 90
"""Width of the words at a line, picture units."""
APART: Final = 15
"""Room a mark's letter takes, picture units."""


class _Frame:
    """One line of days: where a time and a charge lie in it."""

    def __init__(self, course: Course, first: int, last: int, width: int) -> None:
        self.course = course
        self.first, self.last = first, last
        self.narrow = width == NARROW
        self.width = LEFT + width + 10
        self.per = width / (WEEK if self.narrow else max(course.days, 1))
        self.right = LEFT + self.per * (last - first)

    def across(self, hours: float) -> float:
        return min(max(LEFT + self.per * (hours / DAY - self.first), LEFT), self.right)

    def holds(self, hours: float) -> bool:
        return self.first * DAY <= hours <= self.last * DAY


def up(share: float) -> float:
    """Return where a charge lies.

    Parameters
    ----------
    share : float
        From 0 to 1. [1]

    Returns
    -------
    float
        From the top. [picture units]
    """
    return TOP + TALL * (1 - min(max(share, 0.0), 1.0))


def curve(ident: str, title: str, course: Course) -> Html:
    """Return the charge over some days: picture, reading, key and table.

    Parameters
    ----------
    ident : str
        Of the figure; one on its page.
    title : str
        Said first to those who do not see it.
    course : Course
        What is shown.
    """
    strokes = f"{ident}-lines"
    weeks = [
        _drawn(
            _Frame(course, first, min(first + WEEK, course.days), NARROW),
            title if first == 0 else f"{title}, from {course.named(first)}",
            tag("use", href=f"#{strokes}"),
        )
        for first in range(0, course.days, WEEK)
    ]
    whole = tag("g", *_strokes(course), id=strokes)
    return tag(
        "figure",
        _drawn(_Frame(course, 0, course.days, WIDE), title, whole),
        *weeks,
        reading(ident, course),
        key(course),
        table(ident, course),
        marks_table(ident, course),
        class_="chart",
        id=ident,
    )


def _strokes(course: Course) -> Iterator[Html]:
    """Draw band and curves in parts of a unit, all days ``WIDE`` wide, 100 % at the top."""
    if course.band and course.lines:
        lows, middles, highs = zip(*course.band, strict=True)
        over, under = (_points(course, one, course.band_step, 2 * OFF) for one in (highs, lows))
        yield tag("path", d=trail([*over, *reversed(under)]) + "z", class_="band")
        if course.traces:
            middle = _points(course, middles, course.band_step, 2 * OFF)
            yield tag("path", d=trail(middle), class_="line soft middle")
    for look, (one, step) in zip(LOOKS, course.lines, strict=False):
        yield tag("path", d=trail(_points(course, one.charges, step)), class_=f"line {look}")


def _points(
    course: Course, shares: Sequence[float], step: float, off: float = OFF
) -> list[tuple[int, int]]:
    inside = [min(max(one, 0.0), 1.0) for one in shares[: round(course.hours / step) + 1]]
    return [
        (fine(WIDE * place * step / course.hours), fine(TALL * (1 - inside[place])))
        for place in thinned(inside, off)
    ]


def _drawn(frame: _Frame, title: str, strokes: Html) -> Html:
    """Draw one line of days with all that stands round the strokes."""
    course = frame.course
    stretch = frame.per * course.days / WIDE / FINE
    left = -frame.per * frame.first
    shift = f"translate({left:g} {TOP}) scale({stretch:.5g} {1 / FINE:.5g})"
    window = tag(
        "svg", tag("g", strokes, transform=shift),
        x=LEFT, y=0, width=round(frame.right - LEFT), height=FOOT + 2,
    )  # fmt: skip
    return picture(
        frame.width,
        FOOT + 50,
        title,
        about(course, frame.first, frame.last),
        *_nights(frame),
        *_scale(frame),
        window,
        *_limits(frame),
        *_marks(frame),
        class_="narrow" if frame.narrow else "wide",
        plot=f"{LEFT} {round(frame.right)} {TOP} {FOOT} {frame.first * 24} {frame.last * 24}",
    )


def _nights(frame: _Frame) -> Iterator[Html | None]:
    """Shade the nights, and bar them along the foot for views without shades."""
    spans = [(frame.across(start), frame.across(stop)) for start, stop in frame.course.nights]
    dark = [(left, right) for left, right in spans if right > left]
    yield boxes(((left, TOP, right, FOOT) for left, right in dark), "night")
    yield boxes(((left, FOOT + 3, right, FOOT + 8) for left, right in dark), "dusk")


def _scale(frame: _Frame) -> Iterator[Html | None]:
    yield write(0, 16, "charge, %", "start", "soft")
    shares = (0.2, 0.4, 0.6, 0.8, 1.0)
    yield rules(((LEFT, up(one), frame.right, up(one)) for one in shares), "faint")
    yield rules([(LEFT, FOOT, frame.right, FOOT)], "ink")
    for share in (0.0, *shares):
        yield write(LEFT - 8, up(share) + 5, percent(share), "end", "soft")
    edges = [LEFT + frame.per * day for day in range(1, frame.last - frame.first)]
    yield rules(((x, FOOT, x, FOOT + 8) for x in edges), "soft")
    widest = len(str(frame.course.days))
    every = ceil((widest * 8 + 6) / frame.per)
    first = frame.first
    if not frame.narrow and frame.course.days > MONTH:
        every, first = FIVE, FIVE - 1
    for day in range(first, frame.last, every):
        x = LEFT + frame.per * (day - frame.first + 0.5)
        yield write(x, FOOT + 25, str(day + 1), class_="soft")
    yield write((LEFT + frame.right) / 2, FOOT + 44, "day", class_="soft")


def _limits(frame: _Frame) -> Iterator[Html | None]:
    reserve, off = frame.course.reserve, frame.course.disconnect
    if reserve is not None:
        words = f"reserve {percent(reserve)} %"
        yield rules([(LEFT, up(reserve), frame.right, up(reserve))], "limit")
        yield write(_free(frame, up(reserve) - 11), up(reserve) - 6, words, "start", "limit halo")
    if off:
        words = f"loads off {percent(off)} %"
        yield rules([(LEFT, up(off), frame.right, up(off))], "off")
        yield write(frame.right - 5, min(up(off) + 16, FOOT - 3), words, "end", "halo")


def _free(frame: _Frame, y: float) -> float:
    """Return where along a line its words are farthest from every curve."""
    course = frame.course
    last = max(round(frame.right) - WORDS, LEFT + 5)

    def room(left: float) -> float:
        hours = [
            (frame.first + (left + WORDS * part / 6 - LEFT) / frame.per) * DAY for part in range(7)
        ]
        return min(
            (abs(up(read_off(one.charges, step, hour)) - y) for one, step in course.lines
             for hour in hours),
            default=0.0,
        )  # fmt: skip

    return max(range(LEFT + 5, last + 1, 20), key=room)


def _marks(frame: _Frame) -> Iterator[Html]:
    """Mark what happened; a letter too near to its like is left out, the mark stays."""
    letters = frame.course.letters
    before: dict[str, float] = {}
    ways = ""
    together: dict[tuple[int, int], str] = {}
    for one in frame.course.marks_in_order:
        if frame.holds(one.time):
            place = round(frame.across(one.time)), round(up(one.share))
            found = dict.fromkeys([*filter(None, together.get(place, "").split(", ")),
                                   letters[one.words]])  # fmt: skip
            together[place] = ", ".join(found)
    for one in frame.course.marks_in_order:
        if not frame.holds(one.time):
            continue
        x, y = round(frame.across(one.time)), round(up(one.share))
        ways += f"M{x} {y - 3}l-5-9h10z"
        letter = together.pop((x, y), "")
        if letter and x - before.get(letter, -APART) >= APART:
            under = x < TITLE and y - 15 < TOP
            yield write(x, y + 18 if under else y - 15, letter, class_="letter halo")
            before[letter] = x
    if ways:
        yield tag("path", d=ways, class_="mark")
