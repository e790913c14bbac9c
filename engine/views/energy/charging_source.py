"""One source on the Charging page: from what is marked to what it brings, and its fields."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.ahead.source_facts import by_controller, dock_watts, drag_of, wind_facts, working
from engine.loads.load import CONDITIONS
from engine.plan.edit import value_at
from engine.plan.source_fields import CONTROLLERS
from engine.solar.panel import CONTROLLER
from engine.units import said, words
from engine.views.home.home import charge
from engine.views.parts.cautions import (
    BLADES,
    EXHAUST,
    PANELS,
    SHORE,
    TOWED,
    TURNING,
    Caution,
    caution,
)
from engine.views.parts.form import entry, problem_at
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import button, capital, figures, titled

if TYPE_CHECKING:
    from engine.ahead.brought import Brought
    from engine.finding import Step
    from engine.views.parts.scene import Scene

FIELDS: Final[dict[str, tuple[tuple[str, ...], tuple[str, ...]]]] = {
    "solar": (
        ("marked", "watts", "panels", "strings", "panel_volts", "controller", "shade"),
        ("tilt", "facing", "mount", "dirt", "overall"),
    ),
    "alternator": (
        ("marked", "current", "limit", "read", "speed"), ("ratio", "hot", "fuel"),
    ),
    "shore": (("marked", "current", "hours"), ()),
    "wind": (
        ("marked", "watts", "diameter", "shelter", "height"),
        ("coefficient", "wind_speed", "boat_speed"),
    ),
    "water": (("marked", "watts", "diameter", "boat_speed", "hours"), ("coefficient",)),
    "generator": (("marked", "watts", "current"), ("fuel",)),
}  # fmt: skip
"""Fields of a kind: those that come first, and those less often changed."""
CAUTIONS: Final[dict[str, Caution]] = {
    "solar": PANELS, "alternator": TURNING, "shore": SHORE, "wind": BLADES, "water": TOWED,
    "generator": EXHAUST,
}  # fmt: skip
LEFT: Final = "Left"


def source_block(scene: Scene, one: Brought) -> Block:
    """Return one source."""
    source = one.source
    path = f"sources.{source.ident}"
    marked = value_at(scene.document, f"{path}.marked")
    care = CAUTIONS.get(source.kind)
    return block(
        f"source-{source.ident}",
        tag("h3", titled(source.ident, source.name), f": {marked}" if marked else ""),
        caution(care, f"source-{source.ident}") if care else None,
        _brings(scene, one),
        _working(scene, one),
        _facts(scene, one),
        tag("div", entry(scene, f"{path}.counted"), class_="ticks"),
        _fields(scene, one, path),
        tag(
            "p",
            button("Copy", "copy-row", path, aria_label=f"Copy {source.ident}"),
            button("Delete", "delete-row", path, aria_label=f"Delete {source.ident}"),
            class_="actions",
        ),
        class_="fitted",
    )


def _fields(scene: Scene, one: Brought, path: str) -> Html:
    """Return its fields, unfolded where something is missing or cannot be read."""
    first, seldom = FIELDS.get(one.source.kind, (("kind",), ()))
    rest = (*seldom, *(name for name in ("kind", "note") if name not in first))
    wrong = any(problem_at(scene, f"{path}.{name}") for name in (*first, *rest))
    return tag(
        "details",
        tag("summary", "What is fitted"),
        tag("div", *(entry(scene, f"{path}.{name}") for name in first), class_="fields"),
        tag("h4", "Less often changed"),
        tag("div", *(entry(scene, f"{path}.{name}") for name in rest), class_="fields"),
        class_="why",
        id=f"fields-{one.source.ident}",
        open=bool(one.missing) or wrong,
    )


def _brings(scene: Scene, one: Brought) -> Html:
    """Return what a source brings, first of all."""
    unit, spoken = scene.units.charge, CONDITIONS[scene.condition]
    if one.missing:
        return tag("p", f"Not known yet: {words(one.missing)}.", class_="answer")
    parts: list[str | Html] = []
    if one.started and one.current is not None:
        parts += ["Gives ", tag("b", f"{said(one.current)} A"), " while it runs"]
        if one.fuel:
            parts += [" and burns ", tag("b", f"{said(one.fuel, 2)} L/h")]
    elif one.clear > 0:
        parts += ["Brings ", tag("b", f"{charge(scene, one.likely)} {unit}"), f" a day {spoken}"]
        if one.clear > one.likely:
            parts.append(
                f", {charge(scene, one.clear)} on a clear day and {charge(scene, one.dull)} on a "
                "dull one"
            )
    elif not one.words:
        parts.append(f"Brings nothing {spoken}")
    ending = "." if parts else ""
    after = one.words if one.words.endswith(".") else f"{capital(one.words)}."
    return tag(
        "p",
        *parts,
        ending,
        f" {after}" if one.words else "",
        "" if one.source.counted else " It does not count in this plan.",
        class_="answer",
    )


def _working(scene: Scene, one: Brought) -> Html | None:
    steps = working(one, scene.plan, scene.condition)
    if not steps:
        return None
    return tag(
        "table",
        tag("caption", "From what is marked, line by line", class_="quiet"),
        head("Line", "Why", LEFT, numbers=(LEFT,)),
        tag("tbody", *(_line(step) for step in steps)),
        class_="grid",
    )


def _line(step: Step) -> Html:
    source = tag("span", f" {step.source}", class_="source") if step.source else None
    return tag(
        "tr",
        tag("th", capital(step.what), scope="row"),
        tag("td", step.formula, source),
        tag("td", step.value, class_="n"),
    )


def _facts(scene: Scene, one: Brought) -> Html | None:
    """Return what is worth knowing of a kind beside what it brings."""
    kind = one.source.kind
    if one.missing:
        return None
    if kind == "solar":
        return _controllers(scene, one)
    if kind == "wind":
        return _wind(scene, one)
    if kind == "water":
        drag = drag_of(one.source)
        if drag is None:
            return None
        return joined(
            figures(("Drag", f"{said(drag.newtons)} N, {said(drag.kilograms, 2)} kgf")),
            tag("p", "At that speed. What it costs in knots depends on hull and wind and is not "
                "said here.", class_="note"),
        )  # fmt: skip
    watts = dock_watts(one.source, scene.plan) if kind == "shore" else None
    return figures(("Asks of the dock", f"{said(watts)} W")) if watts else None


def _controllers(scene: Scene, one: Brought) -> Html:
    likely, dull = f"Likely, {scene.units.charge} a day", "Dull day"
    rows = []
    both = by_controller(one.source, scene.plan, scene.condition)
    for (name, spoken), found in zip(CONTROLLERS, both, strict=True):
        here = " (fitted)" if name == one.source.panels.controller else ""
        reason = found.lines[-1].why if found.lines else ""
        rows.append(
            tag(
                "tr",
                tag("th", f"{capital(spoken)}{here}",
                    tag("small", reason, class_="range"), scope="row"),
                tag("td", charge(scene, found.likely), class_="n"),
                tag("td", charge(scene, found.dull), class_="n"),
            )
        )  # fmt: skip
    measured = None
    if one.source.panels.overall is not None:
        measured = tag("p", "Both reckoned; the measured whole is left out here.", class_="note")
    return joined(
        tag(
            "table",
            tag(
                "caption",
                "The same panels with either controller ",
                tag("span", str(CONTROLLER), class_="source"),
                class_="quiet",
            ),
            head("Controller", likely, dull, numbers=(likely, dull)),
            tag("tbody", *rows),
            class_="grid",
        ),
        measured,
    )


def _wind(scene: Scene, one: Brought) -> Html | None:
    facts = wind_facts(one.source, scene.plan, scene.condition)
    if facts is None:
        return None
    return joined(
        figures(
            ("Mean wind at the hub", f"{said(facts.hub)} m/s"),
            ("Power, mean of all winds", f"{said(facts.mean, 2)} W"),
            ("Power in the mean wind", f"{said(facts.at_mean, 2)} W"),
        ),
        tag(
            "p",
            "Power goes with the cube of the wind, and most of it comes in the few strong hours. "
            "The mean of all winds (Rayleigh's) counts, not the power in the mean wind."
            + (" The mean wind alone does not even start it." if facts.at_mean <= 0 else ""),
            class_="note",
        ),
    )
