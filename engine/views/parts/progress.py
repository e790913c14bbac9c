"""How far the work of a page has come, with the button that stops it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.units import fixed
from engine.views.parts.html import Html, tag
from engine.views.parts.say import button

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene


def progress_of(scene: Scene, doing: str) -> Html | None:
    """Return a bar with the share done; None where all is done or there is nothing to do.

    Parameters
    ----------
    scene : Scene
        With its progress.
    doing : str
        What is being done, such as “Drawing weathers”.
    """
    found = scene.progress
    if found is None or found.done >= 1:
        return None
    if found.trouble:
        return tag("p", found.trouble, class_="problems")
    share = f"{fixed(found.done * 100, 0)} %"
    if found.stopped:
        return tag("p", f"Stopped after {share}. ", button("Go on", "go-on"), class_="work")
    bar = tag("progress", share, max="100", value=fixed(found.done * 100, 0), aria_label=doing)
    return tag("p", f"{doing}: {share} ", bar, button("Stop", "stop-work"), class_="work")


def waiting(scene: Scene) -> str:
    """Return what stands in the place of an answer that is not reckoned yet."""
    return "Stopped." if scene.progress and scene.progress.stopped else "Reckoning…"
