"""The page as the engine's door knows it: sends events, keeps what fragments make of it."""

from __future__ import annotations

import json
from types import SimpleNamespace
from typing import Any

from engine import door
from engine.session.state import State
from tests.views.markup import Element, parsed

PARTS = ("strip", "rail", "page")


class Page:
    """One visit: what the engine was told, what it answered, and what stands on the screen."""

    def __init__(self, monkeypatch: Any) -> None:
        self.desk = SimpleNamespace(state=State(), shown=())
        monkeypatch.setattr(door, "_desk", self.desk)
        self.screen = Element("body", {}, [Element("div", {"id": one}) for one in PARTS])
        self.reply: dict[str, Any] = {}

    @property
    def state(self) -> State:
        """Return the engine's side."""
        found: State = self.desk.state
        return found

    @property
    def document(self) -> dict[str, Any]:
        """Return the open plan."""
        return self.state.document

    def send(self, *events: dict[str, Any]) -> dict[str, Any]:
        """Send events in one batch and put the fragments on the screen."""
        self.reply = json.loads(door.answer(json.dumps({"events": list(events)})))
        for ident, html in self.reply["fragments"]:
            self.screen.at(ident).inside = parsed(html).inside
        return self.reply

    def open(self, route: str = "#home", **more: Any) -> dict[str, Any]:
        """Begin a visit."""
        return self.send({"kind": "open", "record": None, "settings": {}, "route": route,
                          "plans": [], "today": "2026-11-25", "version": "0.1.0",
                          "tab": "writer", **more})  # fmt: skip

    def go(self, route: str) -> dict[str, Any]:
        """Follow an address."""
        return self.send({"kind": "go", "route": route})

    def set(self, path: str, value: str | None, *, typing: bool = False) -> dict[str, Any]:
        """Change a field."""
        return self.send({"kind": "set", "path": path, "value": value, "typing": typing})

    def do(self, name: str, arg: str = "", **form: str) -> dict[str, Any]:
        """Press a button."""
        return self.send({"kind": "do", "name": name, "arg": arg, "form": form})

    def sent(self) -> list[str]:
        """Return the ids of the fragments that came last."""
        return [ident for ident, _ in self.reply["fragments"]]

    def notice(self) -> str:
        """Return what stands on top of the page when something went wrong."""
        return self.screen.at("notice").text
