"""A day's use by load: a table whose bars run with whiskers from low to high."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.pictures import bar

if TYPE_CHECKING:
    from collections.abc import Sequence

    from engine.estimate import Estimate


@dataclass(frozen=True, slots=True)
class Bar:
    """One row: what it is and its plain name, what it takes a day, and that as it is said."""

    name: str | Html
    label: str
    day: Estimate
    shown: str
    span: str


def day_bars(ident: str, bars: Sequence[Bar], unit: str, shown: int = 8) -> Html:
    """Return bars from the largest down, the rest folded away; the row holds its own figures.

    Parameters
    ----------
    ident : str
        Of the table; one on its page.
    bars : sequence of Bar
        In any order, shape ``(n,)``.
    unit : str
        Of the figures, as ``Ah``.
    shown : int
        How many stand open. [1]
    """
    ranked = sorted(bars, key=lambda one: -one.day.likely)
    most = max((one.day.high for one in ranked), default=1.0)
    rest = ranked[shown:]
    return joined(
        _table(ident, ranked[:shown], unit, most),
        tag(
            "details",
            tag("summary", f"{len(rest)} more"),
            _table(f"{ident}-rest", rest, unit, most),
            class_="why",
            id=f"{ident}-more",
        )
        if rest
        else None,
    )


def _table(ident: str, bars: Sequence[Bar], unit: str, most: float) -> Html:
    rows = [
        tag(
            "tr",
            tag("td", one.name),
            tag("td", bar(one.day, most, _title(one, unit))),
            tag("td", one.shown, tag("small", one.span, class_="range"), class_="n"),
        )
        for one in bars
    ]
    a_day = f"{unit} a day"
    top = head("Load", "Bar from low to high", a_day, numbers=(a_day,))
    return tag("table", top, tag("tbody", *rows), class_="grid bars", id=ident)


def _title(one: Bar, unit: str) -> str:
    return f"{one.label}: {one.shown} {unit}, {one.span}"
