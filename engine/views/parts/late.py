"""What a page says while the part of the engine it needs is still on its way."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.views.parts.html import Block, block, tag

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene


def fetching(scene: Scene) -> Block:
    """Return one quiet block: that the part is being fetched, or why not, and the mend."""
    state, _, reason = scene.device.get("later", "").partition(": ")
    if state != "missing":
        return block("late", tag("p", "Fetching the part that reckons days ahead…", class_="empty"))
    return block(
        "late",
        tag("p", f"The part that reckons days ahead could not be fetched ({reason})."),
        tag("p", "Connect once, then it stays here.", class_="note"),
    )
