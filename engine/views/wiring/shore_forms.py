"""What is stated of shore power, and the results of a licensed person."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.plan.shore_fields import RECORD
from engine.views.parts.form import cell, entry
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import button

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

WAY_IN: Final = ("service", "cord_length", "cord_size", "feed_length", "feed_size", "main_rating",
                 "main_poles")  # fmt: skip
FOLDED: Final = (
    (
        "Leakage, polarity, interrupting ratings",
        "guard",
        ("leakage", "leakage_trip", "leakage_time", "polarity", "main_interrupting",
         "branch_interrupting"),
    ),
    (
        "Sources aboard, transfer, and where neutral meets ground",
        "sources",
        ("transfer", "transfer_interlock", "transfer_breaks", "transfer_neutral", "panel_bond",
         "inverter_bond", "generator_bond", "generator_rating"),
    ),
    (
        "Isolation",
        "isolation",
        ("isolation", "isolator_rating", "isolator_closes", "isolator_watched",
         "transformer_rating", "transformer_distance"),
    ),
    (
        "The inverter-charger",
        "inverter",
        ("limit", "charger_circuit", "wave", "air"),
    ),
    ("Another dock, two inlets, note", "dock", ("dock", "inlets", "feeding", "note")),
)  # fmt: skip
COLUMNS: Final = ("name", "found", "result", "person", "date")


def forms(scene: Scene) -> tuple[Html, ...]:
    """Return the fields of shore power; what is seldom needed is folded."""
    return (
        tag("h2", "The way in"),
        _fields(scene, *WAY_IN),
        tag("div", entry(scene, "shore.feed_guarded"), entry(scene, "shore.one_phase"),
            class_="ticks"),
        *(
            tag("details", tag("summary", label), _fields(scene, *names), class_="why",
                id=f"more-shore-{ident}")
            for label, ident, names in FOLDED
        ),
    )  # fmt: skip


def _fields(scene: Scene, *names: str) -> Html:
    return tag("div", *(entry(scene, f"shore.{name}") for name in names), class_="fields")


def records(scene: Scene) -> Html:
    """Return the results a licensed person measured and signs for."""
    rows = [
        tag(
            "tr",
            *(
                tag(
                    "td",
                    cell(
                        scene,
                        f"records.{one.ident}.{name}",
                        f"{one.ident}, {RECORD[name].label.lower()}",
                    ),
                    data_label=RECORD[name].label,
                )
                for name in COLUMNS
            ),
            tag("td", button("Delete", "delete-row", f"records.{one.ident}")),
            id=f"row-{one.ident}",
        )
        for one in scene.plan.shore.records
    ]
    table = tag(
        "table",
        head(*(RECORD[name].label for name in COLUMNS), ""),
        tag("tbody", *rows),
        class_="grid cards stack records",
    )
    return joined(
        tag("h2", "A licensed person's results"),
        tag("p", "Measured and signed for by them, entered here by you. A pass "
            "without a name and a date does not count; a fail always does.", class_="note"),
        table if rows else None,
        tag("p", button("Add a result", "add-record"), class_="actions"),
    )  # fmt: skip
