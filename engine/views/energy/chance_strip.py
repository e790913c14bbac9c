"""How often something is needed within so many days, of ten times: a cell a day."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.ahead.told import TEN, times_in_ten
from engine.units import said
from engine.views.parts.html import Html, head, tag

if TYPE_CHECKING:
    from collections.abc import Sequence

SHORT: Final = {"under 1": "< 1", "over 9": "> 9"}
"""What fits a cell."""


@dataclass(frozen=True, slots=True)
class Odds:
    """How likely something is within so many days, and the standard error of that (1)."""

    share: float
    error: float


def chance_strip(  # noqa: PLR0913, PLR0917 - what is told, and how far it has come
    ident: str,
    what: str,
    odds: Sequence[Odds],
    runs: int,
    asked: int,
    stop: Html | None = None,
) -> Html:
    """Return the chance of something by each day: ten marks, a figure, and a table.

    Parameters
    ----------
    ident : str
        Of the figure; one on its page.
    what : str
        What is needed, as “engine needed”.
    odds : sequence of Odds
        By day 1, 2, 3 …, shape ``(days,)``.
    runs, asked : int
        Runs done, and runs in all. [1]
    stop : Html or None
        What ends it early, shown while runs are under way.
    """
    cells = [
        tag(
            "li",
            tag("span", tag("span", "by ", class_="quiet"), f"day {place}", class_="by"),
            _ten(round(one.share * TEN)),
            tag("b", SHORT.get(told := times_in_ten(one.share), told)),
            tag("span", " times in 10", class_="quiet"),
        )
        for place, one in enumerate(odds, 1)
    ]
    return tag(
        "figure",
        _under_way(runs, asked, stop) if runs < asked else None,
        tag("ol", *cells, class_="chances", aria_label=f"{what.capitalize()}, times in 10"),
        tag("figcaption", f"{what.capitalize()} by that day, times in 10, of {runs} runs."),
        _table(ident, what, odds) if odds else None,
        class_="chart",
        id=ident,
    )


def _ten(count: int) -> Html:
    """Draw ten small marks, so many of them filled."""
    squares = [f"M{2 + place % 5 * 10} {2 + place // 5 * 10}h7v7h-7z" for place in range(TEN)]
    return tag(
        "svg",
        tag("path", d="".join(squares[:count]), class_="fill") if count else None,
        tag("path", d="".join(squares[count:]), class_="open") if count < TEN else None,
        viewBox="0 0 51 21",
        aria_hidden="true",
    )


def _under_way(runs: int, asked: int, stop: Html | None) -> Html:
    told = f"{runs} of {asked} runs"
    return tag(
        "div",
        tag("progress", told, value=runs, max=asked, aria_label="Runs done"),
        tag("span", told),
        stop,
        class_="under-way no-print",
    )


def _table(ident: str, what: str, odds: Sequence[Odds]) -> Html:
    rows = [
        tag(
            "tr",
            tag("th", f"Day {place}", scope="row"),
            tag("td", times_in_ten(one.share), class_="n"),
            tag("td", f"{said(one.share * 100)} %", class_="n"),
            tag("td", f"± {said(one.error * 100, 2)} %", class_="n"),
        )
        for place, one in enumerate(odds, 1)
    ]
    heads = ("Times in 10", "Chance", "Standard error")
    return tag(
        "details",
        tag("summary", "The chances as figures"),
        tag(
            "table",
            tag("caption", f"{what.capitalize()} within so many days"),
            head("By", *heads, numbers=heads),
            tag("tbody", *rows),
            class_="grid",
        ),
        class_="why",
        id=f"{ident}-table",
    )
