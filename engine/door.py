"""The only thing the page calls: events in, changed fragments out."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any
from urllib.parse import parse_qsl

from engine.plan.link import is_link
from engine.problem import Problem
from engine.session.commands import do, look_at, look_at_table
from engine.session.fields import SETTINGS, set_field
from engine.session.state import State
from engine.session.work import advance, tend
from engine.views.page import title_of, whole_page
from engine.views.parts.html import Block, changed
from engine.views.parts.scene import Kept

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping


class _Desk:
    """The one session of this page, and what the page shows now."""

    def __init__(self) -> None:
        self.state = State()
        self.shown: tuple[Block, ...] = ()


_desk = _Desk()


def answer(text: str) -> str:
    """Return the reply to a batch of events, as JSON.

    Every event is applied in order and the page is drawn once. Work under way waits while there
    is anything else to do.
    """
    state = _desk.state
    state.reply = {}
    events = json.loads(text)["events"]
    for event in events:
        if event["kind"] == "more" and len(events) > 1:
            continue
        state.notice = ""
        try:
            EVENTS[event["kind"]](state, event)
        except Problem as problem:
            state.notice = str(problem.at(""))
    tend(state)
    scene = state.scene()
    pages = whole_page(scene)
    reply: dict[str, Any] = {**state.reply, "title": title_of(scene)}
    reply["fragments"] = _fragments(pages)
    _desk.shown = pages
    return json.dumps(reply, ensure_ascii=False)


def _fragments(pages: tuple[Block, ...]) -> list[tuple[str, str]]:
    if not _desk.shown:
        return [(page.ident, page.inner) for page in pages]
    return [
        part
        for before, after in zip(_desk.shown, pages, strict=True)
        for part in changed(before, after)
    ]


def _open(state: State, event: Mapping[str, Any]) -> None:
    """Take what the device holds, once the page is awake."""
    _desk.shown = ()
    given = {str(key): str(value) for key, value in (event.get("settings") or {}).items()}
    state.settings = {
        key: value for key, value in given.items() if value in SETTINGS.get(key, (value,))
    }
    state.plans = _kept(event.get("plans") or [])
    for key in ("today", "version", "tab", "base"):
        state.device[key] = str(event.get(key) or "")
    record = event.get("record")
    _go(state, {"route": ""})
    if record:
        state.open_record(record)
    _go(state, event)


def _kept(plans: list[Mapping[str, Any]]) -> tuple[Kept, ...]:
    return tuple(
        Kept(str(one.get("id")), str(one.get("name") or ""), str(one.get("saved") or ""))
        for one in plans
    )


def _go(state: State, event: Mapping[str, Any]) -> None:
    """Follow the address."""
    fragment = str(event.get("route") or "").lstrip("#")
    state.refused = {}
    state.typed = {}
    state.asked = ""
    if is_link(fragment):
        look_at(state, fragment)
        return
    path, _, query = fragment.partition("?")
    route = tuple(part for part in path.split("/") if part) or ("home",)
    if route[0] == "start" and not state.mine:
        state.start_own()
    if route[:2] != ("papers", "receive"):
        state.incoming = None
    if route[0] == "sum":
        given = {key: value[:200] for key, value in parse_qsl(query)[:40]}
        if given or state.route[:2] != route[:2]:
            state.sum_inputs = given or state.sums_kept.get(route[-1], {})
        state.quiet_field = ""
    state.route = route
    if route[0] == "proving" and len(route) > 1:
        state.reply["focus"] = f"look-{route[1]}"


def _set(state: State, event: Mapping[str, Any]) -> None:
    value = event.get("value")
    text = "" if value is None else str(value)
    set_field(state, str(event["path"]), text, typing=bool(event.get("typing")))


def _do(state: State, event: Mapping[str, Any]) -> None:
    form = {str(key): str(value) for key, value in (event.get("form") or {}).items()}
    do(state, str(event["name"]), str(event.get("arg") or ""), form)


def _file(state: State, event: Mapping[str, Any]) -> None:
    """Look at a chosen file: a plan, or a table where the page asks for one."""
    text = event.get("text")
    table = state.route[:2] == ("energy", "paste")
    if text is None:
        problem = Problem("receive", "That file is too large.", "A plan has 2 MB at most.")
        state.refused["paste" if table else "receive"] = problem
        return
    if table:
        look_at_table(state, str(text))
    else:
        look_at(state, str(text))


def _record(state: State, event: Mapping[str, Any]) -> None:
    """Open a stored plan that was asked for."""
    record = event.get("record")
    if not record:
        raise Problem("", "That plan is not stored here any more.", "Open your backup file.")
    state.open_record(str(record))
    state.route = ("home",)
    state.reply["route"] = "#home"


def _more(state: State, event: Mapping[str, Any]) -> None:
    """Take one more slice of the work under way, of so many steps."""
    advance(state, int(event.get("steps") or 1))


def _state(state: State, event: Mapping[str, Any]) -> None:
    """Note what the device says: saved, offline, storage, update, plans."""
    key, value = str(event["key"]), event.get("value")
    if key == "plans":
        state.plans = _kept(json.loads(value) if isinstance(value, str) else value or [])
        return
    state.device[key] = str(value)


EVENTS: dict[str, Callable[[State, Mapping[str, Any]], None]] = {
    "open": _open,
    "go": _go,
    "set": _set,
    "do": _do,
    "file": _file,
    "record": _record,
    "state": _state,
    "more": _more,
}
"""What the page may send."""


def first_page() -> dict[str, str]:
    """Return the page a first visit shows before any Python runs, by element."""
    return {page.ident: page.inner for page in whole_page(State().scene())}


def warm() -> None:
    """Exercise every page once and leave no trace, so that a memory snapshot starts warm.

    What it remembers besides is let go by whoever takes the snapshot.
    """
    routes = (
        "home", "energy/use", "energy/use/L11", "energy/paste", "wiring/circuits",
        "wiring/circuits/D14", "wiring/network", "wiring/heavy", "wiring/inverter",
        "wiring/shore", "wiring/shore/A03", "wiring/shore/licensed",
        "proving", "papers", "start/1",
        "sum/conductor?current=6+A&run=16+ft", "sum/drop?current=6+A&run=16+ft&size=14+AWG",
        "sum/runtime?watts=1000&capacity=280+Ah&exponent=1.03",
    )  # fmt: skip
    for route in routes:
        answer(json.dumps({"events": [{"kind": "open", "route": f"#{route}"}]}))
    edit = {"kind": "set", "path": "loads.L11.draw", "value": "5 A"}
    answer(json.dumps({"events": [edit, {"kind": "do", "name": "undo"}]}))
    _desk.state = State()
    _desk.shown = ()
