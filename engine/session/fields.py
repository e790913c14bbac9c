"""A field was changed: in the plan, in a quick sum, in the first questions, or in the showing."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.network import LEVELS
from engine.check.users import used_in
from engine.field import CHOICE, SIZE, TEXT, YES_NO, Field, value_of
from engine.loads.common import COMMON
from engine.loads.generic import GENERIC
from engine.loads.load import CONDITIONS
from engine.plan.edit import rows_of, value_at, with_row, with_value, without_row
from engine.plan.fields import field_at
from engine.problem import Problem
from engine.session.charging import set_place
from engine.units import FRACTION, NUMBER, TIME, Kind, read, said
from engine.views.frame import CHOICES, VIEWS
from engine.views.home.sums import route_of
from engine.views.parts.scene import DAYS, SKIES_SHOWN, Units

if TYPE_CHECKING:
    from engine.loads.common import Common
    from engine.plan.document import Document
    from engine.session.state import State

SETTINGS: Final = {
    "view": tuple(name for name, _ in VIEWS),
    **{name: tuple(value for value, _ in values) for name, (_, values) in CHOICES.items()},
}
HUM: Final = Field("hum", "Hours in 24", TIME, above=True, least=0.0, most=24.0)
TICKS: Final = {str(place): one for place, one in enumerate(COMMON)}
WIDE_DUTY: Final = "0.45 (0.25 to 0.7)"
"""A fridge's duty when nobody has listened."""


def set_field(state: State, path: str, text: str, *, typing: bool) -> None:
    """Do what a changed field asks.

    Raises
    ------
    Problem
        If there is no such field.
    """
    part, _, rest = path.partition(".")
    if part == "settings":
        _set_setting(state, rest, text)
    elif part == "show":
        _set_shown(state, rest, text)
    elif part == "sum" and "." in rest:
        _set_sum(state, path, text, typing=typing)
    elif part == "start" and "." in rest:  # without one it is a field of the start bank
        _set_start(state, path, text)
    else:
        _set_plan(state, path, text)


def _set_setting(state: State, name: str, text: str) -> None:
    if text in SETTINGS.get(name, ()):
        state.settings[name] = text
        state.reply["settings"] = dict(state.settings)


def _set_shown(state: State, name: str, text: str) -> None:
    if name == "condition" and text in CONDITIONS:
        state.condition = text
        state.running = state.before = None
    elif name == "level" and text in LEVELS:
        state.level = text
    elif name == "days" and text in DAYS:
        state.days = text
    elif name == "sky" and text in SKIES_SHOWN:
        state.sky = text
    elif name.startswith("tonight."):
        state.tonight = {**state.tonight, name.partition(".")[2][:20]: text.strip()[:20]}
    elif name.startswith("running."):
        _switch(state, name.partition(".")[2], on=text == "yes")
    elif name == "group" and text in {"", "zone", "circuit"}:
        state.group = text
    elif name.startswith("shore."):
        _plug(state, name.partition(".")[2], on=text == "yes")
    elif name.startswith("together."):
        ident = name.partition(".")[2]
        state.chosen = state.chosen | {ident} if text == "yes" else state.chosen - {ident}


def _switch(state: State, ident: str, *, on: bool) -> None:
    """Switch a load on or off in the DC network."""
    running = state.running
    if running is None:
        running = used_in(state.plan(), state.condition)
    state.before = running
    state.running = running | {ident} if on else running - {ident}


def _plug(state: State, ident: str, *, on: bool) -> None:
    """Switch an appliance on or off on the load board."""
    plugged = state.plan().shore.planned if state.plugged is None else state.plugged
    state.plugged = plugged | {ident} if on else plugged - {ident}


def _set_sum(state: State, path: str, text: str, *, typing: bool) -> None:
    _, name, field = path.split(".", 2)
    state.sum_inputs = {**state.sum_inputs, field: text}
    state.sums_kept = {**state.sums_kept, name: state.sum_inputs}
    state.quiet_field = path if typing else ""
    if not typing:
        state.reply["route"] = "#" + route_of(name, state.sum_inputs)


def _set_plan(state: State, path: str, text: str) -> None:
    field = field_at(path) if is_field(path) else None
    if field is None:
        raise Problem(path, "There is no such field.", "Reload the page.")
    value_at(state.document, path)  # a row that is gone is said on top, not beside a field
    if field.kind is YES_NO and field.default == "yes" and text != "yes":
        text = "no"
    if field.name in {"fed_from", "circuit"} and text.strip().lower() in {"none", "bank"}:
        text = ""
    units = Units(state.settings.get("length", "m"), state.settings.get("temperature", "degC"))
    text = with_unit(text.strip(), field.kind, units, voltage_like=field.name == "volts")
    try:
        document = with_value(state.document, path, text)
    except Problem as problem:
        state.refused[path] = problem
        state.typed[path] = text[:500]
        return
    state.refused.pop(path, None)
    state.typed.pop(path, None)
    where = _named(state.document, path)
    state.edit(f"{field.label.lower()} of {where}" if where else field.label.lower(), document)


def is_field(path: str) -> bool:
    """Return whether a path names a field of the plan.

    Examples
    --------
    >>> is_field("bank.capacity"), is_field("loads.L11.wheels"), is_field("loads")
    (True, False, False)
    """
    try:
        field_at(path)
    except (KeyError, ValueError):
        return False
    return True


def _named(document: Document, path: str) -> str:
    part, *rest = path.split(".")
    if len(rest) < 2:
        return {
            "boat": "the boat",
            "bank": "the bank",
            "start": "the start bank",
            "policy": "when the engine charges",
            "inverter": "the inverter",
            "shore": "shore power",
        }.get(part, "")
    return next(
        (row.get("name") or row["id"] for row in rows_of(document, part) if row["id"] == rest[0]),
        rest[0],
    )


def with_unit(text: str, kind: Kind, units: Units, *, voltage_like: bool = False) -> str:
    """Return an entry with the unit shown beside it, where it was typed without one.

    What was typed with a unit stays as it is. Shares and plain numbers have none.

    Examples
    --------
    >>> from engine.units import LENGTH
    >>> with_unit("14", LENGTH, Units("ft")), with_unit("4.5 m", LENGTH, Units("ft"))
    ('14 ft', '4.5 m')
    """
    if not text or kind in (TEXT, CHOICE, YES_NO, SIZE, FRACTION, NUMBER):
        return text
    try:
        typed = read(text, kind, units.of(kind))
    except Problem:
        return text
    if not typed.bare or (voltage_like and not typed.known):
        return text
    head, mark, tail = text.partition("(")
    joined = f"{head.rstrip()} {units.of(kind)}"
    return f"{joined} {mark}{tail}" if mark else joined


def _set_start(state: State, path: str, text: str) -> None:
    _, what, which = path.split(".", 2)
    if what == "have" and which in TICKS:
        _tick(state, TICKS[which], on=text == "yes")
    elif what == "source":
        _source(state, which, text.strip())
    elif what == "hum":
        _hum(state, path, which, text)
    elif what == "place":
        set_place(state, which, text)


def _tick(state: State, one: Common, *, on: bool) -> None:
    """Add or take away a common load."""
    document = state.document
    present = [row["id"] for row in rows_of(document, "loads") if row.get("name") == one.words]
    if on and not present:
        document, _ = with_row(document, "loads", GENERIC[one.generic].as_row(one.words, one.count))
        state.edit(f"add {one.words}", document)
    elif not on and present:
        for ident in present:
            document = without_row(document, "loads", ident)
        state.edit(f"take away {one.words}", document)


def _source(state: State, kind: str, text: str) -> None:
    """Keep what charges, for the answer that comes later."""
    document = state.document
    present = [row["id"] for row in rows_of(document, "sources") if row.get("kind") == kind]
    unit = {"solar": "W", "alternator": "A"}.get(kind, "")
    if text and text.replace(".", "").isdigit():
        text = f"{text} {unit}".strip()
    if present:
        document = with_value(document, f"sources.{present[0]}.marked", text)
    elif text:
        document, _ = with_row(document, "sources", {"kind": kind, "marked": text})
    state.edit(f"what the {kind} is marked", document)


def _hum(state: State, path: str, ident: str, text: str) -> None:
    """Turn hours of humming into a duty."""
    state.typed[path] = text
    state.refused.pop(path, None)
    if not text.strip():
        return
    try:
        typed = value_of(HUM, text)
    except Problem as problem:
        state.refused[path] = problem
        return
    duty = WIDE_DUTY
    if typed.low is not None and typed.likely is not None and typed.high is not None:
        ends = [said(hours / 24, 2) for hours in (typed.low, typed.likely, typed.high)]
        duty = ends[1] if ends[0] == ends[2] else f"{ends[1]} ({ends[0]} to {ends[2]})"
    state.edit("hours the fridge hums", with_value(state.document, f"loads.{ident}.duty", duty))
