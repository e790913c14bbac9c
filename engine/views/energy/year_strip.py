"""The twelve months of a place side by side: sun, days until charging is needed, engine hours."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.units import said
from engine.views.energy.drawn import boxes, picture, rules, write
from engine.views.parts.html import Html, head, tag
from engine.views.parts.say import hours, whole

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from engine.estimate import Estimate

ROW: Final = 108
"""Height of one row of bars with its figures and its name, picture units."""
BAR: Final = 48
"""Height of the highest bar, picture units."""
ROOM: Final = 40
"""Width of a month below which its words are set smaller, picture units."""


@dataclass(frozen=True, slots=True)
class Month:
    """One month: sun of an average day, days until charging is needed and engine hours a week.

    ``days`` is None where there is no need, ``engine`` where no engine runs; ``dark`` is a month
    without sun; ``unknown`` says why a month cannot be told.
    """

    name: str
    sun: Estimate
    days: Estimate | None = None
    engine: Estimate | None = None
    dark: bool = False
    unknown: str = ""


def year_strip(
    ident: str, title: str, months: Sequence[Month], chosen: int | None, sun_unit: str = "Ah"
) -> Html:
    """Return the year as three rows of bars with their figures, and the same as a table.

    Parameters
    ----------
    ident : str
        Of the figure; one on its page.
    title : str
        Said first to those who do not see it.
    months : sequence of Month
        From January on, shape ``(12,)``.
    chosen : int or None
        The month planned for, from 1. [1]
    sun_unit : str
        Of the sun of a day.
    """
    return tag(
        "figure",
        _drawn(title, months, chosen, sun_unit, 760),
        _drawn(title, months, chosen, sun_unit, 360),
        tag("figcaption", "Whiskers: low to high.", _marked(months, chosen)),
        _table(ident, months, chosen, sun_unit),
        class_="chart",
        id=ident,
    )


def _marked(months: Sequence[Month], chosen: int | None) -> str | None:
    return None if chosen is None else f" ▲ {months[chosen - 1].name}, the month chosen."


def _drawn(
    title: str, months: Sequence[Month], chosen: int | None, sun_unit: str, width: int
) -> Html:
    per = (width - 4) / len(months)
    rows: tuple[tuple[str, list[Estimate | None], str], ...] = (
        (f"sun of an average day, {sun_unit}", [one.sun for one in months], "no sun"),
        ("days until charging is needed", [one.days for one in months], "no need"),
        ("engine, hours a week", [one.engine for one in months], "0"),
    )
    parts: list[Html | None] = []
    names: list[Html] = []
    for place, (name, spans, none) in enumerate(rows):
        parts += _row(spans, months, none, per, place * ROW + 46 + BAR)
        names.append(write(2, place * ROW + 15, name, "start", "soft halo"))
    foot = len(rows) * ROW + 6
    for place, month in enumerate(months):
        middle = 2 + per * (place + 0.5)
        short = month.name[:3] if width > 400 else month.name[:1]
        here = place + 1 == chosen
        parts.append(write(middle, foot + 8, short, class_="strong" if here else "soft"))
        if here:
            parts.append(tag("path", d=f"M{round(middle)} {foot + 14}l8 13h-16z", class_="mark"))
            edges = (middle - per / 2, 22, middle + per / 2, foot + 31)
            parts.append(boxes([edges], "here"))
    return picture(
        width, foot + 34, title, _about(months, chosen), *parts, *names,
        class_="wide" if width > 400 else "narrow",
    )  # fmt: skip


def _row(
    spans: Sequence[Estimate | None], months: Sequence[Month], none: str, per: float, foot: float
) -> Iterator[Html | None]:
    most = max((one.high for one in spans if one), default=0.0) or 1.0
    bars, whiskers = [], [(2.0, foot, 2 + per * len(spans), foot)]
    half = min(per * 0.3, 14)
    for place, span in enumerate(spans):
        middle = 2 + per * (place + 0.5)
        words = _words(span, months[place], none)
        for line, word in enumerate(reversed(words.split())):
            yield write(
                middle,
                foot - 7 - 15 * line,
                word,
                class_="soft small" if per > ROOM else "soft tiny",
            )
        if words or not span:
            continue
        low, likely, high = (foot - BAR * one / most for one in (span.low, span.likely, span.high))
        bars.append((middle - half, likely, middle + half, foot))
        whiskers.append((middle, low, middle, high))
        whiskers += [(middle - 4, end, middle + 4, end) for end in (low, high)]
        shown = whole(span.likely)
        yield write(middle, min(high, likely) - 5, shown, class_="ink" if per > ROOM else "small")
    yield boxes(bars, "tint")
    yield rules(whiskers, "ink")


def _words(span: Estimate | None, month: Month, none: str) -> str:
    """Return the word that stands where there is no bar."""
    if month.unknown:
        return "?"
    if none == "no sun":
        return "no sun" if month.dark else ""
    return none if span is None else ""


def _about(months: Sequence[Month], chosen: int | None) -> str:
    if chosen is None:
        return "Sun, days until charging is needed and engine hours, month by month."
    month = months[chosen - 1]
    if month.unknown:
        return f"{month.name}: {month.unknown}"
    need = "no need for charging" if month.days is None else (
        f"charging needed after {said(month.days.likely, 2)} days"
    )  # fmt: skip
    return f"{month.name}: {need}{', no sun' if month.dark else ''}."


def _table(ident: str, months: Sequence[Month], chosen: int | None, sun_unit: str) -> Html:
    sun, days, engine = f"Sun a day, {sun_unit}", "Days until charging", "Engine a week"
    rows = []
    for place, month in enumerate(months, 1):
        here = " ▲ chosen" if place == chosen else ""
        if month.unknown:
            cells = [tag("td", month.unknown, colspan=3)]
        else:
            cells = [
                tag("td", "no sun" if month.dark else _told(month.sun), class_="n"),
                tag("td", "no need" if month.days is None else _told(month.days), class_="n"),
                tag("td", "0" if month.engine is None else _hours(month.engine), class_="n"),
            ]
        rows.append(tag("tr", tag("th", month.name, here, scope="row"), *cells))
    return tag(
        "details",
        tag("summary", "The year as a table"),
        tag(
            "table",
            head("Month", sun, days, engine, numbers=(sun, days, engine)),
            tag("tbody", *rows),
            class_="grid",
        ),
        class_="why",
        id=f"{ident}-table",
    )


def _told(span: Estimate) -> Html:
    low, likely, high = (whole(one) for one in (span.low, span.likely, span.high))
    return _with_range(likely, f"{low} to {high}")


def _hours(span: Estimate) -> Html:
    return _with_range(hours(span.likely), f"{hours(span.low)} to {hours(span.high)}")


def _with_range(likely: str, span: str) -> Html:
    return tag("span", likely, tag("small", span, class_="range"))
