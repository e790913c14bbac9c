"""Proving, for now: four looks before anything else, and what to measure next."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.findings import looked
from engine.estimate import KNOWN_BY
from engine.plan.fields import LOOKS
from engine.views.home.home import banner, conditions, finding_row, measure_next
from engine.views.parts.cautions import MEASURING, caution
from engine.views.parts.html import Block, Html, block, tag

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene


def proving(scene: Scene) -> tuple[Block, ...]:
    """Return the Proving page."""
    found = looked(dict(scene.plan.looks))
    return (
        block("proving-head", banner(scene), tag("h1", "Look and measure")),
        block(
            "proving-looks",
            tag("h2", "Four looks first"),
            tag("p", "No tools, nothing opened, nothing touched.", class_="note"),
            *(look(scene, name) for name in LOOKS),
            tag("ul", *(finding_row(one) for one in found), class_="list") if found else None,
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


def look(scene: Scene, name: str) -> Html:
    """Return one of the four looks as a question."""
    field = LOOKS[name]
    chosen = dict(scene.plan.looks).get(name, "")
    labels = [
        tag(
            "label",
            tag("input", type="radio", name=f"looks.{name}", value=value, checked=value == chosen),
            word,
        )
        for value, word in field.choices
    ]
    return tag("fieldset", tag("legend", field.label), *labels, class_="choices")


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
        tag(
            "thead",
            tag(
                "tr",
                tag("th", "Known by", scope="col"),
                tag("th", "Loads", scope="col", class_="n"),
                tag("th", "Meaning", scope="col"),
            ),
        ),
        tag("tbody", *rows),
        class_="grid",
    )
