"""What the What if page asks of a session: to keep or add a variant."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.plan.edit import with_row

if TYPE_CHECKING:
    from engine.session.state import State


def keep_variant(state: State, arg: str, _form: dict[str, str]) -> None:
    """Keep a single change as a variant; ``arg`` is its name and its lines, parted by a bar."""
    name, _, changes = arg.partition("|")
    document, ident = with_row(state.document, "variants", {"name": name, "changes": changes})
    state.edit(f"keep {name}", document)
    state.reply["say"] = f"Kept as {ident}"


def add_variant(state: State, _arg: str, _form: dict[str, str]) -> None:
    """Add an empty variant."""
    document, ident = with_row(state.document, "variants", {})
    state.edit("add a variant", document)
    state.reply["focus"] = f"f-variants-{ident}-name"
