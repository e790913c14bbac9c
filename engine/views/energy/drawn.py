"""Strokes the charts share: text, lines, whole-number paths, and a curve thinned to what shows."""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING, Final

from engine.views.parts.html import Html, tag

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

FINE: Final = 3
"""Parts of a picture's unit that a path counts in, so that whole numbers are smooth."""
Point = tuple[int, int]


def picture(  # noqa: PLR0913 - its size, its words, and what it holds
    width: int,
    height: int,
    title: str,
    about: str,
    *content: Html | None,
    class_: str,
    plot: str = "",
) -> Html:
    """Return a picture with its title and its words for those who do not see it.

    Parameters
    ----------
    width, height : int
        Of its frame. [picture units]
    title, about : str
        Its name, and what it shows in words.
    *content : Html or None
        What is drawn.
    class_ : str
        ``wide`` or ``narrow`` where it is drawn twice.
    plot : str
        Left, right, top and foot of what can be touched, and the places read from left to right.
    """
    return tag(
        "svg",
        tag("title", title),
        tag("desc", about),
        *content,
        viewBox=f"0 0 {width} {height}",
        role="img",
        class_=class_,
        data_plot=plot or None,
    )


def write(x: float, y: float, words: str, anchor: str = "middle", class_: str = "ink") -> Html:
    """Return words in a picture.

    Parameters
    ----------
    x, y : float
        Where they stand. [picture units]
    words : str
        What is written.
    anchor : str
        ``start``, ``middle`` or ``end``.
    class_ : str
        How it looks.
    """
    return tag("text", words, x=round(x), y=round(y), text_anchor=anchor, class_=class_)


def rules(ends: Iterable[tuple[float, float, float, float]], class_: str = "soft") -> Html | None:
    """Return straight lines as one stroke, or nothing where there are none.

    Parameters
    ----------
    ends : iterable of tuple of float
        Both ends of each, shape ``(n, 4)``. [picture units]
    class_ : str
        How they look.
    """
    ways = "".join(trail([(round(a), round(b)), (round(c), round(d))]) for a, b, c, d in ends)
    return tag("path", d=ways, class_=f"line {class_}") if ways else None


def boxes(corners: Iterable[tuple[float, float, float, float]], class_: str) -> Html | None:
    """Return rectangles as one shape, or nothing where there are none.

    Parameters
    ----------
    corners : iterable of tuple of float
        Left, top, right and foot of each, shape ``(n, 4)``. [picture units]
    class_ : str
        How they look.
    """
    ways = ""
    for sides in corners:
        left, top, right, foot = (round(one) for one in sides)
        ways += f"M{left} {top}h{right - left}v{foot - top}h{left - right}z"
    return tag("path", d=ways, class_=class_) if ways else None


def trail(points: Iterable[Point]) -> str:
    """Return the path through some points, as short as whole numbers make it.

    Parameters
    ----------
    points : iterable of tuple of int
        Shape ``(n, 2)``. [picture units]

    Examples
    --------
    >>> trail([(0, 5), (4, 5), (4, 9), (7, 6)])
    'M0 5h4v4l3-3'
    """
    parts: list[str] = []
    here: Point | None = None
    for there in points:
        if here is None:
            parts.append(f"M{there[0]} {there[1]}")
        else:
            across, down = there[0] - here[0], there[1] - here[1]
            if down == 0 and across == 0:
                continue
            if down == 0:
                parts.append(f"h{across}")
            elif across == 0:
                parts.append(f"v{down}")
            else:
                parts.append(f"l{across}{down}" if down < 0 else f"l{across} {down}")
        here = there
    return "".join(parts)


def thinned(values: Sequence[float], most: float) -> list[int]:
    """Return which values must be kept so that straight lines between them miss none by much.

    Parameters
    ----------
    values : sequence of float
        At even steps, shape ``(n,)``. [any]
    most : float
        The most a value that is left out may lie off its line. [any]

    Returns
    -------
    list of int
        Places, the first and the last always among them. [1]

    Examples
    --------
    >>> thinned([0.0, 1.0, 2.0, 3.0, 3.0, 3.0], 0.1)
    [0, 3, 5]
    """
    last = len(values) - 1
    kept = [0] if values else []
    while kept and kept[-1] < last:
        kept.append(_farthest(values, kept[-1], most))
    return kept


def _farthest(values: Sequence[float], start: int, most: float) -> int:
    """Return the farthest place one straight line from the start reaches past all between."""
    low, high, found = -inf, inf, start + 1
    for place in range(start + 1, len(values)):
        run, rise = place - start, values[place] - values[start]
        if low <= rise / run <= high:
            found = place
        low, high = max(low, (rise - most) / run), min(high, (rise + most) / run)
        if low > high:
            break
    return found


def fine(scale: float) -> int:
    """Return a length in the whole parts a path counts in.

    Parameters
    ----------
    scale : float
        The length. [picture units]

    Returns
    -------
    int
        [third of a picture unit]
    """
    return round(scale * FINE)


def swatch(name: str, *shapes: Html) -> Html:
    """Return a look, drawn small, with its name."""
    sample = tag("svg", *shapes, viewBox="0 0 36 18", width=36, height=18, aria_hidden="true")
    return tag("span", sample, name)
