"""What stands round a curve in words: its reading by hand, its key, and its tables."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.views.energy.course import DAY, LOOKS, clock, lowest_of, percent, read_off
from engine.views.energy.drawn import swatch
from engine.views.parts.html import Html, head, tag

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from engine.views.energy.course import Course

MIDDLE: Final = "the middle run"
BAND: Final = "8 runs in 10"


def about(course: Course, first: int, last: int) -> str:
    """Return what a line of days shows, in a sentence.

    Parameters
    ----------
    course : Course
        What is shown.
    first, last : int
        Days it shows, the last not among them. [1]
    """
    if not course.lines:
        return "Nothing is reckoned yet."
    trace, step = course.lines[0]
    start, end = (read_off(trace.charges, step, day * DAY) for day in (first, last))
    low, when = min(lowest_of(trace.charges, step, day) for day in range(first, last))
    that_day = course.named(min(int(when // DAY), last - 1))
    return (
        f"From {percent(start)} % to {percent(end)} % at the end of {course.named(last - 1)}. "
        f"Lowest {percent(low)} %, {that_day} at {clock(when)}."
    )


def reading(ident: str, course: Course) -> Html | None:
    """Return the knob that reads the curves hour by hour, and what they say there.

    Parameters
    ----------
    ident : str
        Of the figure.
    course : Course
        What is shown.
    """
    if not course.lines:
        return None
    words, columns = "{0}, {1}: ", [
        (24, [course.titled(day) for day in range(course.days + 1)]),
        (1, [clock(hour) for hour in range(24)]),
    ]  # fmt: skip
    parts = []
    for trace, step in course.lines:
        name = f"{trace.name} " if len(course.lines) > 1 else ""
        parts.append(f"{name}{{{len(columns)}}} %")
        columns.append((1, _hourly(course, trace.charges, step)))
    if course.band:
        place = len(columns)
        parts.append(f"{BAND} between {{{place}}} and {{{place + 1}}} %")
        columns += [(-3, [percent(one[end]) for one in _band(course)]) for end in (0, 2)]
    return tag(
        "div",
        tag("button", "−", type="button", data_by=-1, aria_label="An hour earlier"),
        tag(
            "input", type="range", min=0, max=round(course.hours), step=1, value=0,
            aria_label="Hour to read", aria_controls=f"{ident}-said",
        ),
        tag("button", "+", type="button", data_by=1, aria_label="An hour later"),
        tag("output", ASK, id=f"{ident}-said", aria_live="polite"),
        class_="reading no-print",
        data_words=words + ", ".join(parts),
        data_columns="\n".join("\t".join([str(every), *texts]) for every, texts in columns),
    )  # fmt: skip


ASK: Final = "Tap the curve, or move the knob, to read it."


def _hourly(course: Course, charges: Sequence[float], step: float) -> list[str]:
    return [percent(read_off(charges, step, hour)) for hour in range(round(course.hours) + 1)]


def _band(course: Course) -> list[tuple[float, float, float]]:
    """Return the band every three hours; what lies between is as drawn, a straight line."""
    return [read_off_row(course, 3.0 * place) for place in range(round(course.hours / 3) + 1)]


def read_off_row(course: Course, at: float) -> tuple[float, float, float]:
    """Return the band at a time, as it is drawn.

    Parameters
    ----------
    course : Course
        What is shown.
    at : float
        Since the first midnight. [h]

    Returns
    -------
    tuple of float
        Shape ``(3,)``: low, middle, high. [1]
    """
    low, middle, high = (
        read_off([row[end] for row in course.band], course.band_step, at) for end in range(3)
    )
    return low, middle, high


def key(course: Course) -> Html:
    """Return the key: each look with its name.

    Parameters
    ----------
    course : Course
        What is shown.
    """
    entries = [
        swatch(trace.name, tag("path", d="M0 9h36", class_=f"line {look}"))
        for look, (trace, _) in zip(LOOKS, course.lines, strict=False)
    ]
    if course.band:
        if course.traces:
            entries.append(swatch(MIDDLE, tag("path", d="M0 9h36", class_="line soft middle")))
        band = tag("rect", x=1, y=2, width=34, height=14, class_="band")
        entries.append(swatch(BAND, band))
    if course.nights:
        night = (
            tag("rect", x=0, y=0, width=36, height=11, class_="night"),
            tag("rect", x=0, y=13, width=36, height=5, class_="dusk"),
        )
        entries.append(swatch("night", *night))
    return tag("figcaption", *entries, class_="key")


def table(ident: str, course: Course) -> Html | None:
    """Return the days as a table, folded until asked for.

    Parameters
    ----------
    ident : str
        Of the figure.
    course : Course
        What is shown.
    """
    if not course.lines:
        return None
    rows = [
        tag(
            "tr",
            tag("th", course.titled(day), scope="row"),
            *(tag("td", text, data_label=label, class_="n") for label, text in _cells(course, day)),
        )
        for day in range(course.days)
    ]
    heads = [label for label, _ in _cells(course, 0)]
    return tag(
        "details",
        tag("summary", "Day by day"),
        tag(
            "table",
            head("Day", *heads, numbers=tuple(heads)),
            tag("tbody", *rows),
            class_="grid cards",
        ),
        class_="why",
        id=f"{ident}-table",
    )


def _cells(course: Course, day: int) -> Iterator[tuple[str, str]]:
    """Give a day's heads and figures; heads are the same for every day."""
    main, step = course.lines[0]
    low, when = lowest_of(main.charges, step, day)
    yield "Lowest", f"{percent(low)} % at {clock(when)}"
    for other, its in course.lines[1:]:
        yield f"Lowest, {other.name}", f"{percent(lowest_of(other.charges, its, day)[0])} %"
    for label, time in (("At dawn", course.dawn(day)), ("At sunset", course.sunset(day))):
        if course.nights:
            known = "none" if time is None else f"{percent(read_off(main.charges, step, time))} %"
            yield label, known
    if course.band:
        low, _, high = read_off_row(course, (day + 1) * DAY)
        yield "8 in 10, at end", f"{percent(low)} to {percent(high)} %"


def marks_table(ident: str, course: Course) -> Html | None:
    """Return what the letters mean and when each of them was.

    Parameters
    ----------
    ident : str
        Of the figure.
    course : Course
        What is shown.
    """
    if not course.marks:
        return None
    rows = []
    for words, letter in course.letters.items():
        times = [
            f"{course.named(min(int(one.time // DAY), course.days - 1))} {clock(one.time)}"
            for one in course.marks_in_order
            if one.words == words
        ]
        rows.append(
            tag(
                "tr",
                tag("th", tag("b", letter), f" {words}", scope="row"),
                tag("td", ", ".join(times)),
            )
        )
    return tag(
        "table",
        head("Mark", "When"),
        tag("tbody", *rows),
        class_="grid marks",
        id=f"{ident}-marks",
    )
