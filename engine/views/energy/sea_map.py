"""A small map of the world's seas on which a tap, or arrows and Enter, choose a place."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.units import LATITUDE, LONGITUDE, on_earth
from engine.views.energy.drawn import Point, boxes, picture, rules, trail, write
from engine.views.parts.html import Html, tag

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

STEP: Final = 3.0
"""Size of a cell, °."""
NORTH: Final = 64.5
"""Upper edge of the first row, °."""
WEST: Final = -181.5
"""Left edge of the first column, °."""
LARGE: Final = 6
SMALL: Final = 3
"""Size of a cell on a wide page and on a phone, picture units."""


def sea_map(
    ident: str,
    cells: Sequence[Sequence[bool]],
    latitude: float | None,
    longitude: float | None,
    path: str = "start.place.spot",
) -> Html:
    """Return the map; a place chosen on it is sent as one entry, such as 46 N, 1 W.

    Parameters
    ----------
    ident : str
        Of the figure; one on its page.
    cells : sequence of sequence of bool
        True where there is sea, from the north-west, shape ``(rows, columns)``.
    latitude, longitude : float or None
        The place marked, north and east positive. [°]
    path : str
        What a chosen place is sent as.
    """
    south = NORTH - STEP * len(cells)
    east = WEST + STEP * len(cells[0])
    land = f"{ident}-land"
    shapes = "".join(f"{trail(one)}z" for one in outlines(cells))
    known = latitude is not None and longitude is not None
    where = "No place yet"
    if latitude is not None and longitude is not None:
        where = f"{on_earth(latitude, LATITUDE)}, {on_earth(longitude, LONGITUDE)}"
    place = (latitude or 0.0, longitude or 0.0) if known else None
    return tag(
        "figure",
        tag(
            "div",
            _drawn(cells, place, where, LARGE, tag("path", d=shapes, id=land, class_="land")),
            _drawn(cells, place, where, SMALL, tag("use", href=f"#{land}")),
            class_="pick",
            tabindex=0,
            role="application",
            aria_label="Map. Arrows move by 3°, Enter takes the place.",
            aria_describedby=f"{ident}-said",
            data_field=path,
            data_across=f"{WEST + STEP / 2:g} {east:g} W E",
            data_down=f"{NORTH:g} {south:g} S N",
            data_grain=f"{STEP:g}",
            data_at=f"{place[0]:g} {place[1]:g}" if place else None,
        ),
        tag("input", type="text", name=path, hidden=True, aria_label="Place on the map"),
        tag(
            "figcaption",
            tag("output", where, id=f"{ident}-said", aria_live="polite"),
            tag("span", " · Tap the map to move the boat there.", class_="no-print"),
        ),
        class_="chart",
        id=ident,
    )


def _drawn(
    cells: Sequence[Sequence[bool]],
    place: tuple[float, float] | None,
    where: str,
    size: int,
    land: Html,
) -> Html:
    """Draw land, graticule and mark, a cell so many units wide."""
    wide, tall = size * len(cells[0]), size * len(cells)
    per = size / STEP
    parts: list[Html | None] = [tag("g", land, transform=f"translate(1 1) scale({size})")]
    marked = (60, 30, 0, -30) if size > SMALL else (30, 0, -30)
    across = [(degrees, 1 + (NORTH - degrees) * per) for degrees in marked]
    down = [
        (degrees, 1 + (degrees - WEST) * per)
        for degrees in range(-120, 121, 60 if size > SMALL else 120)
    ]
    parts.append(rules(((1, y, 1 + wide, y) for degrees, y in across if degrees), "faint"))
    parts.append(rules(((x, 1, x, 1 + tall) for _, x in down), "faint"))
    parts.append(rules(((1, y, 1 + wide, y) for degrees, y in across if not degrees), "soft"))
    parts += [
        write(4, y - 4 if y > 20 else y + 14, on_earth(one, LATITUDE), "start", "soft halo")
        for one, y in across
    ]
    parts += [write(x, tall + 18, on_earth(one, LONGITUDE), class_="soft") for one, x in down]
    parts.append(boxes([(1, 1, wide + 1, tall + 1)], "frame"))
    if place:
        south = NORTH - STEP * len(cells)
        x = round(1 + (place[1] - WEST) * per)
        y = round(1 + (NORTH - min(max(place[0], south), NORTH)) * per)
        parts.append(tag("path", d=f"M{x} {y - 22}v14m0 16v14m-22-22h14m16 0h14", class_="aim"))
        parts.append(tag("circle", cx=x, cy=y, r=5, class_="mark"))
    return picture(
        wide + 2, tall + 24, "Map of the seas", where, *parts,
        class_="wide" if size > SMALL else "narrow",
        plot=f"{1 + size / 2:g} {wide + 1} 1 {tall + 1}",
    )  # fmt: skip


def outlines(cells: Sequence[Sequence[bool]]) -> list[list[Point]]:
    """Return the coasts: closed ways round the cells without sea, land on the right.

    Parameters
    ----------
    cells : sequence of sequence of bool
        True where there is sea, shape ``(rows, columns)``.

    Returns
    -------
    list of list of tuple of int
        Corners of each way, across and down. [cells]

    Examples
    --------
    >>> outlines([[True, False], [True, True]])
    [[(1, 0), (2, 0), (2, 1), (1, 1)]]
    """
    ends: dict[Point, list[Point]] = {}
    for start, end in _edges(cells):
        ends.setdefault(start, []).append(end)
    ways = []
    while ends:
        here = first = min(ends)
        way: list[Point] = []
        while True:
            there = ends[here].pop(0)
            if not ends[here]:
                del ends[here]
            way.append(here)
            here = there
            if here == first:
                break
        ways.append(_corners(way))
    return ways


def _edges(cells: Sequence[Sequence[bool]]) -> Iterator[tuple[Point, Point]]:
    """Give each side of a land cell that meets sea or the map's edge."""
    rows, columns = len(cells), len(cells[0])

    def dry(row: int, column: int) -> bool:
        return 0 <= row < rows and 0 <= column < columns and not cells[row][column]

    for y in range(rows):
        for x in range(columns):
            if not dry(y, x):
                continue
            if not dry(y - 1, x):
                yield (x, y), (x + 1, y)
            if not dry(y, x + 1):
                yield (x + 1, y), (x + 1, y + 1)
            if not dry(y + 1, x):
                yield (x + 1, y + 1), (x, y + 1)
            if not dry(y, x - 1):
                yield (x, y + 1), (x, y)


def _corners(way: list[Point]) -> list[Point]:
    """Return a closed way without the points where it goes straight on."""
    count = len(way)
    return [
        way[place]
        for place in range(count)
        if not _straight(way[place - 1], way[place], way[(place + 1) % count])
    ]


def _straight(one: Point, two: Point, three: Point) -> bool:
    return (one[0] == two[0] == three[0]) or (one[1] == two[1] == three[1])
