"""Proving, for now: looking round before anything else, and what to measure next."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.looked import looked
from engine.estimate import KNOWN_BY
from engine.field import CHOICE
from engine.plan.look_fields import FIRST, MORE, SHORE
from engine.views.home.home import banner, conditions, finding_row, measure_next
from engine.views.parts.cautions import MEASURING, caution, dangers
from engine.views.parts.form import entry
from engine.views.parts.html import Block, Html, block, head, tag

if TYPE_CHECKING:
    from engine.field import Field
    from engine.views.parts.scene import Scene


def proving(scene: Scene) -> tuple[Block, ...]:
    """Return the Proving page."""
    found = looked(scene.plan)
    return (
        block("proving-head", banner(scene), tag("h1", "Look and measure")),
        block(
            "proving-looks",
            tag("h2", "Four looks first"),
            dangers("looks"),
            tag("p", "No tools, nothing opened, nothing touched.", class_="note"),
            *(look(scene, field) for field in FIRST),
        ),
        block("proving-more", tag("h2", "More to look at"), *(look(scene, one) for one in MORE)),
        block(
            "proving-shore",
            tag("h2", "Shore power, only looking"),
            dangers("shore-looks"),
            *(look(scene, one) for one in SHORE),
        ),
        block(
            "proving-found",
            tag("h2", "What looking turned up"),
            tag("ul", *(finding_row(one) for one in found), class_="list")
            if found
            else tag("p", "Nothing in what you answered.", class_="empty"),
        ),
        block(
            "proving-next",
            tag("h2", "Measure this next"),
            conditions(scene),
            caution(MEASURING, "next"),
            measure_next(scene, 8),
        ),
        block("proving-known", tag("h2", "How the loads are known"), _known(scene)),
    )


def look(scene: Scene, field: Field) -> Html:
    """Return one thing to look at as a question, or as a figure to read."""
    place = f"look-{field.name}"
    if field.kind is not CHOICE:
        return tag("div", entry(scene, f"looks.{field.name}"), id=place, tabindex="-1")
    chosen = dict(scene.plan.looks).get(field.name, "")
    labels = [
        tag(
            "label",
            tag(
                "input",
                type="radio",
                name=f"looks.{field.name}",
                value=value,
                checked=value == chosen,
            ),
            word,
        )
        for value, word in field.choices
    ]  # fmt: skip
    return tag(
        "fieldset",
        tag("legend", field.label),
        *labels,
        class_="choices",
        id=place,
        tabindex="-1",
    )


def _known(scene: Scene) -> Html:
    counts = dict.fromkeys(KNOWN_BY, 0)
    for load in scene.plan.loads:
        counts[load.known_by] += 1
    rows = [
        tag(
            "tr",
            tag("th", name, scope="row"),
            tag("td", str(counts[name]), class_="n"),
            tag("td", meaning, class_="known"),
        )
        for name, meaning in KNOWN_BY.items()
    ]
    return tag(
        "table",
        head("Known by", "Loads", "Meaning", numbers=("Loads",)),
        tag("tbody", *rows),
        class_="grid",
    )
