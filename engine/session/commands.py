"""A button was pressed: one function a command."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.estimate import SURENESS
from engine.loads.common import FRIDGES
from engine.loads.generic import GENERIC
from engine.plan.compose import with_sureness
from engine.plan.document import new_document, written
from engine.plan.edit import (
    moved_row,
    row_of,
    rows_of,
    value_at,
    with_row,
    with_value,
    without_row,
)
from engine.plan.fields import LONGEST_NAME, ROWS, SINGLE, field_at
from engine.plan.link import length_words, packed
from engine.plan.made_up import AS_FOUND
from engine.plan.read_load import is_power
from engine.plan.receive import Received, received
from engine.plan.table_in import Incoming, exported, incoming
from engine.problem import Problem
from engine.session.charging import add_source
from engine.session.fields import WIDE_DUTY, is_field, set_field
from engine.session.what_if import add_variant, keep_variant
from engine.session.work import hold, resume
from engine.units import POWER

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.session.state import State

Form = dict[str, str]


def go(state: State, *route: str, focus: str = "") -> None:
    """Show another page."""
    state.route = route
    state.reply["route"] = "#" + "/".join(route)
    if focus:
        state.reply["focus"] = focus


def _undo(state: State, _arg: str, _form: Form) -> None:
    state.undo()


def _redo(state: State, _arg: str, _form: Form) -> None:
    state.redo()


def _start_own(state: State, _arg: str, _form: Form) -> None:
    state.start_own()
    go(state, "start", "1")


def _look_around(state: State, _arg: str, _form: Form) -> None:
    if state.mine:
        state.open_made_up()
    state.settings["chosen"] = "looked"
    state.reply["settings"] = dict(state.settings)
    go(state, "home")


def _as_found(state: State, _arg: str, _form: Form) -> None:
    state.open_made_up(AS_FOUND)
    state.settings["chosen"] = "looked"
    state.reply["settings"] = dict(state.settings)
    go(state, "home", "findings")


def _as_planned(state: State, _arg: str, _form: Form) -> None:
    state.open_made_up()
    go(state, "home")


def _run_none(state: State, _arg: str, _form: Form) -> None:
    state.before, state.running = state.running, frozenset()


def _run_condition(state: State, _arg: str, _form: Form) -> None:
    state.before, state.running = state.running, None


def _chooser(state: State, _arg: str, _form: Form) -> None:
    state.settings.pop("chosen", None)
    state.reply["settings"] = dict(state.settings)
    go(state, "home")


def _receive(state: State, _arg: str, _form: Form) -> None:
    state.incoming = None
    go(state, "papers", "receive")


def _add_load(state: State, _arg: str, _form: Form) -> None:
    document, ident = with_row(state.document, "loads", {})
    state.edit("add a load", document)
    go(state, "energy", "use", ident, focus=f"f-loads-{ident}-name")


def _add_generic(state: State, _arg: str, form: Form) -> None:
    one = GENERIC.get(form.get("pick", ""))
    if one is None:
        raise Problem("pick", "No such typical load.", "Choose one from the list.")
    document, ident = with_row(state.document, "loads", one.as_row())
    state.edit(f"add {one.name}", document)
    state.reply["focus"] = f"f-loads-{ident}-name"
    state.reply["say"] = f"Added {one.name} as {ident}, with typical values"


def _add_circuit(state: State, _arg: str, _form: Form) -> None:
    document, ident = with_row(state.document, "circuits", {})
    state.edit("add a circuit", document)
    go(state, "wiring", "circuits", ident, focus=f"f-circuits-{ident}-run")


def _add_leg(state: State, _arg: str, _form: Form) -> None:
    document, ident = with_row(state.document, "legs", {})
    state.edit("add a leg", document)
    state.reply["focus"] = f"f-legs-{ident}-name"


def _add_appliance(state: State, _arg: str, _form: Form) -> None:
    document, ident = with_row(state.document, "loads", {"supply": "inverter"})
    state.edit("add an AC load", document)
    go(state, "energy", "use", ident, focus=f"f-loads-{ident}-draw")


def _add_ac(state: State, _arg: str, _form: Form) -> None:
    document, ident = with_row(state.document, "ac", {})
    state.edit("add an AC circuit", document)
    go(state, "wiring", "shore", ident, focus=f"f-ac-{ident}-name")


def _add_record(state: State, _arg: str, _form: Form) -> None:
    document, ident = with_row(state.document, "records", {})
    state.edit("add a licensed person's result", document)
    state.reply["focus"] = f"f-records-{ident}-name"


def _plug_none(state: State, _arg: str, _form: Form) -> None:
    state.plugged = frozenset()


def _plug_planned(state: State, _arg: str, _form: Form) -> None:
    state.plugged = None


def _keep_circuit(state: State, _arg: str, _form: Form) -> None:
    names = ("run", "current", "insulation", "engine_space", "bundle", "ambient")
    kept = {name: state.sum_inputs[name] for name in names if state.sum_inputs.get(name)}
    document, ident = with_row(state.document, "circuits", kept)
    state.edit("keep the sum as a circuit", document)
    go(state, "wiring", "circuits", ident, focus=f"f-circuits-{ident}-name")


def copy_of(name: str) -> str:
    """Return a copy's name, no longer than a plan keeps.

    Examples
    --------
    >>> copy_of("Fridge"), len(copy_of("x" * LONGEST_NAME))
    ('Fridge, copy', 200)
    """
    return f"{name[: LONGEST_NAME - len(', copy')]}, copy"


def _part_and_id(arg: str) -> tuple[str, str]:
    part, _, ident = arg.partition(".")
    return part, ident


def _copy_row(state: State, arg: str, _form: Form) -> None:
    part, ident = _part_and_id(arg)
    row = row_of(state.document, part, ident)
    name = row.get("name", "")
    copied = {**row, "name": copy_of(name)} if name else dict(row)
    document, new = with_row(state.document, part, copied, after=ident)
    state.edit(f"copy {name or ident}", document)
    state.reply["say"] = f"Copied as {new}"
    first = "name" if "name" in ROWS[part] else "marked"
    state.reply["focus"] = f"f-{part}-{new}-{first}"


def _delete_row(state: State, arg: str, _form: Form) -> None:
    part, ident = _part_and_id(arg)
    name = row_of(state.document, part, ident).get("name") or ident
    state.edit(f"delete {name}", without_row(state.document, part, ident))
    state.reply["say"] = f"Deleted {name}. Undo brings it back"
    if len(state.route) > 2 and state.route[2] == ident:
        go(state, *state.route[:2])


def _move(by: int) -> Callable[[State, str, Form], None]:
    def move(state: State, arg: str, _form: Form) -> None:
        part, ident = _part_and_id(arg)
        name = row_of(state.document, part, ident).get("name") or ident
        state.edit(f"move {name}", moved_row(state.document, part, ident, by))
        place = [row["id"] for row in rows_of(state.document, part)].index(ident) + 1
        state.reply["say"] = f"{name} is now number {place}"

    return move


def _how_sure(state: State, arg: str, _form: Form) -> None:
    path, _, sureness = arg.partition("|")
    if not is_field(path) or sureness not in SURENESS:
        raise Problem(path, "There is no such field.", "Reload the page.")
    field = field_at(path)
    text = value_at(state.document, path) or field.default
    kind = POWER if field.name == "draw" and is_power(text) else field.kind
    try:
        changed = with_sureness(text, sureness, kind)
    except Problem as problem:
        state.refused[path] = problem
        return
    state.edit(f"how sure of the {field.label.lower()}", with_value(state.document, path, changed))


def _dont_know(state: State, arg: str, _form: Form) -> None:
    if arg == "4":
        document = state.document
        for row in rows_of(document, "loads"):
            if row.get("name") in FRIDGES:
                document = with_value(document, f"loads.{row['id']}.duty", WIDE_DUTY)
        state.edit("hours the fridge hums not known", document)
    number = int(arg) if arg.isdecimal() else 7
    go(state, "start", str(number + 1) if number < 7 else "answer")


def _share(state: State, _arg: str, _form: Form) -> None:
    fragment = packed(state.document)
    base = state.device.get("base", "")
    state.link = f"{base}#{fragment}"
    state.reply["copy"] = state.link
    name = state.document.get("boat", {}).get("name", "a boat")
    state.reply["share"] = {"title": f"Plan of {name}", "url": state.link}
    state.reply["say"] = f"Link made: {length_words(state.link)}"


def _export(state: State, _arg: str, _form: Form) -> None:
    name = state.document.get("boat", {}).get("name", "plan")
    state.reply["download"] = {
        "name": f"{_file_name(name)}.json",
        "type": "application/json",
        "text": written(state.document),
    }


def _export_loads(state: State, _arg: str, _form: Form) -> None:
    name = state.document.get("boat", {}).get("name", "plan")
    state.reply["download"] = {
        "name": f"{_file_name(name)}-loads.csv",
        "type": "text/csv",
        "text": "\ufeff" + exported(state.document),
    }


def _file_name(name: str) -> str:
    plain = "".join(c if c.isalnum() else "-" for c in name.lower()).strip("-")
    return plain[:60] or "plan"


def look_at(state: State, text: str) -> None:
    """Preview a plan that came in; a damaged one says so and opens nothing."""
    state.refused.pop("receive", None)
    state.incoming = None
    try:
        state.incoming = received(text)
    except Problem as problem:
        state.refused["receive"] = problem
        state.reply["focus"] = "problems"
    go(state, "papers", "receive")


def _receive_text(state: State, _arg: str, form: Form) -> None:
    look_at(state, form.get("text", ""))


def _accept(state: State, _arg: str, _form: Form) -> None:
    if isinstance(state.incoming, Received):
        made_up = state.incoming.made_up
        document = state.incoming.document
        state.open_own(document)
        if made_up:
            state.document = {**state.document, "made_up": True}
            state.keep()
        go(state, "home")


def _refuse(state: State, _arg: str, _form: Form) -> None:
    state.incoming = None
    go(state, "papers")


def look_at_table(state: State, text: str) -> None:
    """Preview a pasted table."""
    state.refused.pop("paste", None)
    state.pasted = None
    state.typed["paste"] = text[:400_000]
    try:
        state.pasted = incoming(text)
    except Problem as problem:
        state.refused["paste"] = problem
        state.reply["focus"] = "problems"


def _paste(state: State, _arg: str, form: Form) -> None:
    look_at_table(state, form.get("table", ""))


def _take_table(state: State, _arg: str, _form: Form) -> None:
    if not isinstance(state.pasted, Incoming):
        return
    document = state.document
    lines = state.pasted.lines
    for line in lines:
        document, _ = with_row(document, "loads", line.row)
    state.edit(f"add {len(lines)} loads from a table", document)
    _leave_table(state, "", {})
    go(state, "energy", "use")
    state.reply["say"] = f"Added {len(lines)} loads. Undo takes them back"


def _leave_table(state: State, _arg: str, _form: Form) -> None:
    state.pasted = None
    state.typed.pop("paste", None)


def _open_plan(state: State, arg: str, _form: Form) -> None:
    state.reply["want"] = arg


def _ask_delete(state: State, arg: str, _form: Form) -> None:
    state.asked = arg


def _delete_plan(state: State, arg: str, _form: Form) -> None:
    state.asked = ""
    state.plans = tuple(kept for kept in state.plans if kept.ident != arg)
    state.reply["drop"] = arg
    if arg == state.plan_id:
        state.open_made_up()


def _copy_plan(state: State, _arg: str, _form: Form) -> None:
    boat = state.document.get("boat", {})
    named = {**boat, "name": copy_of(boat.get("name", "")).lstrip(", ")}
    state.open_own({**new_document(), **state.document, "boat": named})
    state.reply["say"] = "This is the copy"


def _copy_sum(state: State, arg: str, _form: Form) -> None:
    state.reply["copy"] = f"{state.device.get('base', '')}#{arg}"
    state.reply["say"] = "Link copied"


def _stop_work(state: State, _arg: str, _form: Form) -> None:
    hold(state)


def _go_on(state: State, _arg: str, _form: Form) -> None:
    resume(state)


COMMANDS: Final[dict[str, Callable[[State, str, Form], None]]] = {
    "undo": _undo,
    "redo": _redo,
    "start-own": _start_own,
    "look-around": _look_around,
    "as-found": _as_found,
    "as-planned": _as_planned,
    "run-none": _run_none,
    "run-condition": _run_condition,
    "chooser": _chooser,
    "receive": _receive,
    "add-load": _add_load,
    "add-generic": _add_generic,
    "add-circuit": _add_circuit,
    "add-leg": _add_leg,
    "add-appliance": _add_appliance,
    "add-ac": _add_ac,
    "add-record": _add_record,
    "add-source": add_source,
    "add-variant": add_variant,
    "keep-variant": keep_variant,
    "plug-none": _plug_none,
    "plug-planned": _plug_planned,
    "keep-circuit": _keep_circuit,
    "copy-row": _copy_row,
    "delete-row": _delete_row,
    "move-up": _move(-1),
    "move-down": _move(1),
    "how-sure": _how_sure,
    "dont-know": _dont_know,
    "share": _share,
    "export": _export,
    "export-loads": _export_loads,
    "receive-text": _receive_text,
    "accept": _accept,
    "refuse": _refuse,
    "paste": _paste,
    "take-table": _take_table,
    "leave-table": _leave_table,
    "open-plan": _open_plan,
    "ask-delete": _ask_delete,
    "delete-plan": _delete_plan,
    "copy-plan": _copy_plan,
    "copy-sum": _copy_sum,
    "stop-work": _stop_work,
    "go-on": _go_on,
}
"""Every command a button may name."""


def do(state: State, name: str, arg: str, form: Form) -> None:
    """Do a command; fields of its form that belong to the plan are set first.

    Raises
    ------
    Problem
        If it cannot be done.
    """
    for path, text in form.items():
        if "." in path and path.split(".")[0] in SINGLE | ROWS:
            set_field(state, path, text, typing=False)
    command = COMMANDS.get(name)
    if command:
        command(state, arg, form)
