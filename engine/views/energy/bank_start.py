"""The start bank, how it is joined to the house bank, and what was asked of both."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.bank_asked import bank_asked
from engine.plan.start_fields import CONVERTER, RELAY, SELECTOR
from engine.views.parts.asked import asked_part, questions
from engine.views.parts.form import entry
from engine.views.parts.html import Html, joined, tag

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

ALWAYS_ASKED: Final = ("joined", "chemistry", "capacity")


def start_bank(scene: Scene) -> Html:
    """Return the start bank's fields and every question about both banks."""
    how = scene.plan.start.joined
    more = {CONVERTER: ("converter",), RELAY: ("parts",), SELECTOR: ("parts",)}.get(how, ())
    names = (ALWAYS_ASKED[0], *more, *ALWAYS_ASKED[1:], "note")
    return joined(
        tag("h2", "Start bank"),
        tag("p", "It starts the engine and does nothing else, so that the house bank can run down "
            "and the engine still starts."),
        tag("div", *(entry(scene, f"start.{name}") for name in names), class_="fields"),
        asked_part(questions(bank_asked(scene.plan)), "bank"),
    )  # fmt: skip
