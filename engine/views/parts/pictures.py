"""Pictures drawn from the engine's own figures, each with its title and its words beside it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.units import fixed, said
from engine.views.parts.html import Html, tag

if TYPE_CHECKING:
    from engine.estimate import Estimate


@dataclass(frozen=True, slots=True)
class Stop:
    """One point of a run: what it is, the volts there, and its place from 0 to 1."""

    name: str
    below: str
    place: float


def _text(x: float, y: float, words: str, anchor: str = "middle", class_: str = "ink") -> Html:
    return tag("text", words, x=fixed(x, 1), y=fixed(y, 1), text_anchor=anchor, class_=class_)


def _line(  # noqa: PLR0913, PLR0917 - two ends and how it looks
    x1: float, y1: float, x2: float, y2: float, class_: str = "ink", width: int = 2
) -> Html:
    return tag(
        "line",
        x1=fixed(x1, 1),
        y1=fixed(y1, 1),
        x2=fixed(x2, 1),
        y2=fixed(y2, 1),
        class_=class_,
        stroke_width=width,
    )


def drawing(width: int, height: int, title: str, *content: Html, class_: str = "") -> Html:
    """Return a picture with its title for those who do not see it."""
    return tag(
        "svg",
        tag("title", title),
        *content,
        viewBox=f"0 0 {width} {height}",
        role="img",
        aria_label=title,
        class_=class_ or None,
    )


def strip_picture(  # noqa: PLR0913 - a strip, its words, and what of it is bare
    stops: list[Stop],
    above: str,
    below: str,
    title: str,
    *,
    narrow: bool,
    bare: float = 0.0,
    bare_words: str = "no protection here",
) -> Html:
    """Return the run as a strip with its points, what it is above, what it costs below.

    The length no protection guards, ``bare`` of it from the start, is drawn broken and named.
    """
    width, inset = (360, 44) if narrow else (760, 50)
    span = width - 2 * inset
    marks = []
    for stop in stops:
        x = inset + span * stop.place
        anchor = "middle" if 0 < stop.place < 1 else ("start" if stop.place == 0 else "end")
        edge = x if anchor == "middle" else x + (-20 if anchor == "start" else 20)
        marks += [
            tag("circle", cx=fixed(x, 1), cy=90, r=7, class_="paper", stroke_width=3),
            _text(edge, 66, stop.name, anchor),
            _text(edge, 122, stop.below, anchor),
        ]
    middle = inset + span * (stops[-2].place + stops[-1].place) / 2
    if narrow:
        words = [_text(width / 2, 28, above), _text(width / 2, 154, below, class_="soft")]
    else:
        words = [_text(middle, 78, above), _text(middle, 112, below, class_="soft")]
    edge = inset + span * bare
    runs = [_line(edge, 90, width - inset, 90, width=3)] if bare < 1 else []
    if bare > 0:
        runs += [
            _line(inset, 90, edge, 90, "bare", 3),
            _text((inset + edge) / 2, 44 if narrow else 38, bare_words, class_="limit"),
        ]
    return drawing(
        width, 165 if narrow else 140, title, *runs, *words, *marks,
        class_="narrow" if narrow else "wide",
    )  # fmt: skip


def nice_step(most: float, marks: int = 8) -> float:
    """Return a round distance between marks of a scale.

    Parameters
    ----------
    most : float
        End of the scale. [any]
    marks : int
        About how many. [1]

    Returns
    -------
    float
        1, 2 or 5 times a power of ten. [any]

    Examples
    --------
    >>> nice_step(95.0), nice_step(420.0)
    (20.0, 100.0)
    """
    step = 10.0 ** len(str(int(most / marks))) if most >= marks else 1.0
    return next(step * part for part in (0.1, 0.2, 0.5, 1.0) if most / (step * part) <= marks)


@dataclass(frozen=True, slots=True)
class Scale:
    """The window of ratings: load, least, most and the rating marked, all in A."""

    load: float
    least: float
    most: float
    rating: float | None
    mark: str
    most_word: str = "carries"


def scale_picture(scale: Scale, title: str, *, narrow: bool) -> Html:
    """Return the fuse window as a scale with load, rating and carrying capacity marked."""
    width, inset = (360, 24) if narrow else (760, 30)
    end = max(scale.most, scale.rating or 0.0, scale.least) * 1.12
    per = (width - 2 * inset) / end

    def at(amperes: float) -> float:
        return inset + amperes * per

    step = nice_step(end, 5 if narrow else 9)
    ticks = []
    value = 0.0
    while value <= end:
        ticks += [
            _line(at(value), 96, at(value), 104, "soft", 1),
            _text(at(value), 124, said(value), class_="soft"),
        ]
        value += step
    band = []
    if scale.most > scale.least:
        band = [
            tag(
                "rect", x=fixed(at(scale.least), 1), y=66,
                width=fixed(at(scale.most) - at(scale.least), 1), height=30, class_="band",
            )
        ]  # fmt: skip
    load = f"load {said(scale.load)} A"
    most = f"{scale.most_word} {said(scale.most)} A"
    over = [
        _line(at(scale.load), 42, at(scale.load), 96),
        _text(at(scale.load), 36, load, _side(at(scale.load), width)),
        _line(at(scale.most), 22, at(scale.most), 96),
        _text(at(scale.most), 16, most, _side(at(scale.most), width)),
    ]
    if scale.rating is not None:
        x = at(scale.rating)
        over += [
            tag("path", d=f"M{fixed(x, 1)} 96 l-10 -24 h20 z", class_="mark"),
            _text(*_beside(x, width, narrow=narrow), scale.mark, _side(x, width)),
        ]
    return drawing(
        width, 134, title, *band, _line(inset, 96, width - inset / 2, 96), *ticks, *over,
        class_="narrow" if narrow else "wide",
    )  # fmt: skip


def _side(x: float, width: int) -> str:
    return "start" if x < width * 0.6 else "end"


def _beside(x: float, width: int, *, narrow: bool) -> tuple[float, float]:
    away = 14 if x < width * 0.6 else -14
    return (x + away, 62 if narrow else 88)


def bar(day: Estimate, most: float, title: str) -> Html:
    """Return one user's bar with its whisker from low to high."""
    width = 240
    per = (width - 8) / most if most > 0 else 0.0
    likely, low, high = day.likely * per, day.low * per, day.high * per
    return drawing(
        width,
        18,
        title,
        tag("rect", x=0, y=4, width=fixed(max(likely, 1.0), 1), height=10, class_="fill"),
        _line(low, 9, high, 9, "soft", 2),
        _line(low, 4, low, 14, "soft", 2),
        _line(high, 4, high, 14, "soft", 2),
        class_="bar",
    )


def share_bar(share: Estimate, allowed: float, title: str) -> Html:
    """Return a drop against its limit: the bar, its whisker, and the limit's line."""
    width = 160
    end = max(allowed * 1.6, share.high * 1.05)
    per = (width - 4) / end
    return drawing(
        width,
        18,
        title,
        tag("rect", x=0, y=5, width=fixed(share.likely * per, 1), height=8, class_="fill"),
        _line(share.low * per, 9, share.high * per, 9, "soft", 2),
        _line(allowed * per, 0, allowed * per, 18, "limit", 3),
        class_="bar",
    )
