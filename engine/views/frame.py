"""The strip on top and the rail: whose boat, what is left to do, saved and offline state."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.findings import findings_of
from engine.finding import Severity
from engine.views.parts.html import Block, Html, block, joined, tag
from engine.views.parts.say import button, link

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

SECTIONS: Final = (
    ("home", "Home"),
    ("energy", "Energy"),
    ("wiring", "Wiring"),
    ("proving", "Proving"),
    ("papers", "Papers"),
)
VIEWS: Final = (
    ("plain", "Plain view"),
    ("sun", "Sun view"),
    ("dim-red", "Dim red"),
    ("dim-plain", "Dim plain"),
)
CHOICES: Final = {
    "length": ("Lengths in", (("m", "metres"), ("ft", "feet"))),
    "temperature": ("Temperatures in", (("degC", "°C"), ("degF", "°F"))),
    "charge": ("A day's use in", (("Ah", "ampere-hours"), ("Wh", "watt-hours"))),
    "hand": ("Rail on the", (("left", "left"), ("right", "right"))),
    "extra_dim": ("Dimmer still", (("0", "no"), ("1", "a little"), ("2", "more"), ("3", "most"))),
}
"""Choices of showing: label and values. None of them changes what is stored."""


def _choice(scene: Scene, name: str, label: str, values: tuple[tuple[str, str], ...]) -> Html:
    chosen = scene.settings.get(name, values[0][0])
    options = [tag("option", word, value=value, selected=value == chosen) for value, word in values]
    return tag(
        "div",
        tag("label", label, for_=f"s-{name}"),
        tag("select", *options, name=f"settings.{name}", id=f"s-{name}"),
        class_="field",
    )


def saved_words(scene: Scene) -> str:
    """Return whether the plan is kept, in words."""
    if not scene.mine:
        return ""
    saved = scene.device.get("saved", "")
    if saved.startswith("failed"):
        return f"Not saved: {saved.removeprefix('failed:').strip()}"
    if scene.device.get("tab") == "reader":
        return "Read only: open in another tab"
    return f"Saved {saved}" if saved else ""


def offline_words(scene: Scene) -> str:
    """Return the offline state in words."""
    state = scene.device.get("offline", "")
    if state == "ready":
        return "Ready offline"
    if state == "checking":
        return "Getting ready for offline"
    return "Not ready offline" if state.startswith("failed") else ""


def _to_do(scene: Scene) -> Html | None:
    found = findings_of(scene.plan, scene.chosen)
    grave = [one for one in found if one.severity != Severity.NOTE]
    if not grave:
        return None
    stop = sum(1 for one in grave if one.severity == Severity.STOP_NOW)
    count = f"{len(grave)} to do" + (f", {stop} to stop now" if stop else "")
    return link("home/findings", count, class_="to-do")


def strip(scene: Scene) -> Block:
    """Return the strip."""
    boat = scene.plan.boat
    name = boat.name or ("Your boat" if scene.mine else "No boat yet")
    state = [saved_words(scene), offline_words(scene)]
    if scene.device.get("update") == "waiting":
        state.append("New version ready")
    return block(
        "strip",
        link("home", name, class_="boat"),
        tag("span", boat.revision, class_="revision") if boat.revision else None,
        tag("span", "made-up boat", class_="made-up") if scene.plan.made_up else None,
        _to_do(scene),
        tag(
            "span",
            *(tag("span", words) for words in state if words),
            tag("span", data_progress=True, class_="progress"),
            class_="state",
        ),
        _tools(scene),
        name="header",
        class_="strip",
    )


def _tools(scene: Scene) -> Html:
    view = scene.settings.get("view", "plain")
    options = [tag("option", word, value=value, selected=value == view) for value, word in VIEWS]
    menu = tag(
        "details",
        tag("summary", "Show as"),
        tag(
            "div",
            *(_choice(scene, name, label, values) for name, (label, values) in CHOICES.items()),
            tag("button", "Splash lock", type="button", data_local="lock"),
            class_="fields",
        ),
        class_="menu",
        id="menu",
    )
    return tag(
        "span",
        button(
            "Undo", "undo", title=f"Undo: {scene.undo}" if scene.undo else "Nothing to undo",
            disabled=not scene.undo, id="undo",
        ),
        button(
            "Redo", "redo", title=f"Redo: {scene.redo}" if scene.redo else "Nothing to redo",
            disabled=not scene.redo, id="redo",
        ),
        tag("select", *options, name="settings.view", id="s-view", aria_label="View"),
        menu,
        class_="tools",
    )  # fmt: skip


def rail(scene: Scene) -> Block:
    """Return the rail of five."""
    section = scene.route[0] if scene.route else "home"
    here = "home" if section in {"start", "sum"} else section
    links = [
        link(name, label, aria_current="page") if name == here else link(name, label)
        for name, label in SECTIONS
    ]
    return block("rail", joined(*links), name="nav", class_="rail")
