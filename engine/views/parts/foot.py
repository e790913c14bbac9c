"""The foot of every printed sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.views.parts.html import Html, joined, tag
from engine.views.parts.say import blank

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene


def foot(scene: Scene) -> Html:
    """Return the line every printed sheet carries."""
    boat = scene.plan.boat
    whose = ", ".join(one for one in (boat.name or "No name yet", boat.revision) if one)
    when = scene.device.get("today", "")
    made_up = " Made-up boat." if scene.plan.made_up else ""
    return tag(
        "p",
        f"{whose}.{f' {when}.' if when else ''}{made_up} Planning aid, not a survey, design "
        "approval or certificate. Check against local rules and makers' instructions.",
        *(joined(f" {one}: ", blank()) for one in ("Prepared by", "Checked by", "Date")),
        class_="print-foot print-only",
    )
