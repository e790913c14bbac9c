"""One day hour by hour: what is used and what the sun brings, as two stepped outlines."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.units import said
from engine.views.energy.drawn import Point, boxes, picture, rules, swatch, trail, write
from engine.views.parts.html import Html, head, tag
from engine.views.parts.pictures import nice_step

if TYPE_CHECKING:
    from collections.abc import Sequence

HOURS: Final = 24
TOP: Final = 30
LEFT: Final = 42
TALL: Final = 150
"""Height from nothing to the end of the scale, picture units."""
FOOT: Final = TOP + TALL
WIDE: Final = 704
NARROW: Final = 308


def tide_day(  # noqa: PLR0913, PLR0917 - two outlines and what stands round them
    ident: str,
    title: str,
    use: Sequence[float],
    sun: Sequence[float],
    unit: str = "A",
    nights: Sequence[tuple[float, float]] = (),
) -> Html:
    """Return a day's use and sun by the hour: outlines, key and table.

    Parameters
    ----------
    ident : str
        Of the figure; one on its page.
    title : str
        Said first to those who do not see it.
    use, sun : sequence of float
        Means of each hour, shape ``(24,)``. [unit]
    unit : str
        Of both.
    nights : sequence of tuple of float
        Hours without sun, shape ``(n, 2)``. [h]
    """
    hour = max(range(HOURS), key=use.__getitem__)
    about = (
        f"Most used between {hour}:00 and {hour + 1}:00: {said(use[hour])} {unit}. "
        f"Most sun: {said(max(sun))} {unit}."
    )
    return tag(
        "figure",
        *(_drawn(title, about, use, sun, unit, nights, width) for width in (WIDE, NARROW)),
        tag(
            "figcaption",
            swatch("use", tag("path", d="M0 9h36", class_="line solid")),
            swatch("likely sun", tag("rect", x=1, y=2, width=34, height=14, class_="band")),
            class_="key",
        ),
        _table(ident, use, sun, unit),
        class_="chart",
        id=ident,
    )


def _drawn(  # noqa: PLR0913, PLR0917 - both outlines and what stands round them
    title: str,
    about: str,
    use: Sequence[float],
    sun: Sequence[float],
    unit: str,
    nights: Sequence[tuple[float, float]],
    width: int,
) -> Html:
    most = max(*use, *sun, 1.0)
    step = nice_step(most, 5)
    count = int(most / step) + 1
    per = TALL / (count * step)

    def across(hours: float) -> float:
        return LEFT + width * hours / HOURS

    def up(value: float) -> float:
        return FOOT - per * value

    def outline(values: Sequence[float]) -> list[Point]:
        return [
            (round(across(hour + end)), round(up(value)))
            for hour, value in enumerate(values)
            for end in (0, 1)
        ]

    marks = [step * place for place in range(count + 1)]
    dark = [(across(start), across(stop)) for start, stop in nights]
    area = [(LEFT, FOOT), *outline(sun), (LEFT + width, FOOT)]
    return picture(
        LEFT + width + 16,
        FOOT + 52,
        title,
        about,
        boxes(((left, TOP, right, FOOT) for left, right in dark), "night"),
        boxes(((left, FOOT + 3, right, FOOT + 8) for left, right in dark), "dusk"),
        write(0, 14, unit, "start", "soft"),
        rules(((LEFT, up(one), LEFT + width, up(one)) for one in marks[1:]), "faint"),
        tag("path", d=f"{trail(area)}z", class_="band"),
        tag("path", d=trail(outline(use)), class_="line solid"),
        rules([(LEFT, FOOT, LEFT + width, FOOT)], "ink"),
        *(write(LEFT - 8, up(one) + 5, said(one), "end", "soft") for one in marks),
        *(write(across(one), FOOT + 25, str(one), class_="soft") for one in range(0, 25, 6)),
        write(LEFT + width / 2, FOOT + 43, "hour of the day", class_="soft"),
        class_="wide" if width == WIDE else "narrow",
    )


def _table(ident: str, use: Sequence[float], sun: Sequence[float], unit: str) -> Html:
    rows = [
        tag(
            "tr",
            tag("th", f"{hour}:00", scope="row"),
            tag("td", said(use[hour], 2), class_="n"),
            tag("td", said(sun[hour], 2), class_="n"),
        )
        for hour in range(HOURS)
    ]
    heads = (f"Use, {unit}", f"Sun, {unit}")
    return tag(
        "details",
        tag("summary", "Hour by hour"),
        tag("table", head("From", *heads, numbers=heads), tag("tbody", *rows), class_="grid"),
        class_="why",
        id=f"{ident}-table",
    )
