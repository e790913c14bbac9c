"""Two pictures of shore power: the way from dock to panel, and the load bar."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.shore.isolation import Isolation
from engine.units import fixed, said
from engine.views.parts.html import Html, tag
from engine.views.parts.pictures import drawing
from engine.views.parts.say import length

if TYPE_CHECKING:
    from engine.check.shore_load import LoadAnswer
    from engine.plan.shore_parts import ShorePlan
    from engine.views.parts.scene import Scene

UNKNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Place:
    """One place on the way in: its name, what it is marked, the run before it, and whether bare."""

    name: str
    marked: str
    before: str = ""
    bare: bool = False


def inlet_strip(scene: Scene) -> Html | None:
    """Return the way from the dock to the panel with every protection in its order."""
    shore = scene.plan.shore
    if shore.service is None:
        return None
    places = way_in(scene, shore)
    ground = _ground(shore)
    title = "From dock to panel: " + "; ".join(f"{one.name}, {one.marked}" for one in places)
    return tag(
        "figure",
        _wide(places, ground, title),
        _narrow(places, ground, title),
        tag("figcaption", "Each protection in its order. The safety ground goes all the way from "
            "the dock to the boat and is never cut."),
    )  # fmt: skip


def way_in(scene: Scene, shore: ShorePlan) -> tuple[Place, ...]:
    """Return every place on the way from the dock to the panel."""
    service, feed, main, leakage = shore.service, shore.feed, shore.main, shore.leakage
    inlet = service.name if service else UNKNOWN
    dock = shore.dock.name if shore.dock else inlet
    inlet, dock = (one.replace(" A ", " A, ") for one in (inlet, dock))
    places = [
        Place("dock", dock),
        Place(
            "inlet" if shore.inlets == 1 else "two inlets",
            inlet,
            _run(scene, feed.cord_length, feed.cord_size, "cord"),
        ),
    ]
    poles = {1: ", one pole", 2: ", two poles"}.get(main.poles or 0, "")
    rating = f"{said(main.rating)} A{poles}" if main.rating else UNKNOWN
    run = _run(scene, feed.length, feed.size, "feed")
    places.append(Place("main", rating, run, bare=main.rating is None))
    places.append(Place("leakage trip", _leakage(shore), bare=leakage.fitted is False))
    if shore.isolated.kind is Isolation.TRANSFORMER:
        marked = shore.isolated.transformer
        places.append(Place("transformer", f"{said(marked, 4)} VA" if marked else UNKNOWN))
    if shore.changeover.chooses is not None and len(shore.changeover.chooses.sources) > 1:
        places.append(Place("transfer", shore.changeover.kind or UNKNOWN))
    count = len(shore.branches)
    places.append(Place("panel", f"{count} branch{'es' * (count != 1)}"))
    return tuple(places)


def _run(scene: Scene, metres: float | None, size: object, name: str) -> str:
    parts = [length(metres, scene.units)] if metres is not None else []
    parts += [str(size)] if size is not None else []
    return ", ".join(parts) or f"{name} not known"


def _leakage(shore: ShorePlan) -> str:
    leakage = shore.leakage
    if leakage.fitted is False:
        return "none"
    if leakage.trip is None:
        return UNKNOWN
    time = f", {said(leakage.time * 1000)} ms" if leakage.time else ""
    return f"{said(leakage.trip * 1000)} mA{time}"


def _ground(shore: ShorePlan) -> str:
    isolated = shore.isolated
    if isolated.kind is None:
        return "isolation not known"
    if isolated.kind is Isolation.ISOLATOR:
        rating = f" {said(isolated.rating)} A" if isolated.rating else ""
        return f"galvanic isolator{rating}"
    return "no isolator" if isolated.kind is Isolation.NONE else "isolation transformer"


def _text(x: float, y: float, text: str, anchor: str = "middle", class_: str = "ink") -> Html:
    return tag("text", text, x=fixed(x, 1), y=fixed(y, 1), text_anchor=anchor, class_=class_)


def _wide(places: tuple[Place, ...], ground: str, title: str) -> Html:
    """Return the strip lying down: names and runs above the line, what is marked below it."""
    width, inset, y, earth = 760, 48, 92.0, 182
    step = (width - 2 * inset) / (len(places) - 1)
    marks = [tag("line", x1=inset, y1=y, x2=width - inset, y2=y, class_="ink", stroke_width=3)]
    for number, place in enumerate(places):
        x = inset + step * number
        anchor, at = "middle", x
        if number in {0, len(places) - 1}:
            anchor, at = ("start", 2.0) if number == 0 else ("end", width - 2.0)
        first, _, second = place.marked.partition(", ")
        run, _, size = place.before.partition(", ")
        marks += [
            tag("circle", cx=fixed(x, 1), cy=fixed(y, 1), r=7, class_="paper", stroke_width=3),
            _text(at, 22, place.name, anchor),
            _text(at, 120, first, anchor, "limit" if place.bare else "ink"),
            _text(at, 142, second, anchor, "soft"),
            _text(x - step / 2, 52, run, class_="soft"),
            _text(x - step / 2, 74, size, class_="soft"),
        ]
    marks += [
        tag("line", x1=inset, y1=earth, x2=width - inset, y2=earth, class_="soft"),
        tag("rect", x=fixed(inset + step * 1.5 - 12, 1), y=earth - 7, width=24, height=14,
            class_="paper"),
        _text(inset + step * 1.5 + 20, earth - 8, ground, "start"),
        _text(width - 2, earth + 22, "safety ground, never cut", "end", "soft"),
    ]  # fmt: skip
    return drawing(width, 214, title, *marks, class_="wide")


def _narrow(places: tuple[Place, ...], ground: str, title: str) -> Html:
    row, x = 58, 20
    end = 24 + row * (len(places) - 1)
    marks = [tag("line", x1=x, y1=24, x2=x, y2=end, class_="ink", stroke_width=3)]
    for number, place in enumerate(places):
        y = 24 + row * number
        class_ = "limit" if place.bare else "ink"
        marks += [
            tag("circle", cx=x, cy=y, r=7, class_="paper", stroke_width=3),
            _text(x + 20, y + 5, place.name, "start"),
            _text(340, y + 5, place.marked, "end", class_),
        ]
        if place.before:
            marks.append(_text(x + 20, y - row / 2 + 5, place.before, "start", "soft"))
    marks.append(_text(x + 20, end + 34, f"safety ground: {ground}", "start", "soft"))
    return drawing(360, end + 48, title, *marks, class_="narrow")


def load_bars(found: LoadAnswer) -> Html:
    """Return a bar for each leg or inlet that fills toward 80 and 100 % of what it may carry."""
    most = max(1.2, *(side.now.share * 1.05 for side in found.sides))
    shares = "; ".join(
        f"{side.name or 'shore power'} {said(side.now.current)} A, "
        f"{round(side.now.share * 100)} % of {said(side.rating)} A"
        for side in found.sides
    )
    return tag(
        "figure",
        _bars(found, most, shares, narrow=False),
        _bars(found, most, shares, narrow=True),
    )


def _bars(found: LoadAnswer, most: float, title: str, *, narrow: bool) -> Html:
    width, row = (360, 58) if narrow else (760, 58)
    per = (width - 8) / most
    marks = []
    for number, side in enumerate(found.sides):
        top = 30 + row * number
        share = side.now.share
        name = f"{side.name}: " if side.name else ""
        marks += [
            tag("rect", x=4, y=top, width=fixed(max(share * per, 1.0), 1), height=26,
                class_="fill"),
            tag("rect", x=4, y=top, width=fixed(per, 1), height=26, class_="line"),
            _text(4, top + 47, f"{name}{said(side.now.current)} A of {said(side.rating)} A, "
                  f"{round(share * 100)} %", "start"),
        ]  # fmt: skip
    bottom = 30 + row * (len(found.sides) - 1) + 30
    for limit, label, class_, anchor, away in (
        (0.8, "80 % for hours", "soft", "end", -4),
        (1.0, "100 %", "limit", "start", 4),
    ):
        x = 4 + limit * per
        marks += [
            tag("line", x1=fixed(x, 1), y1=20, x2=fixed(x, 1), y2=bottom, class_=class_),
            _text(x + away, 16, label, anchor, class_),
        ]
    height = 30 + row * len(found.sides)
    return drawing(width, height, title, *marks, class_="narrow" if narrow else "wide")
