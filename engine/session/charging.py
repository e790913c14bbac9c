"""What the Charging page asks of a session: to add a source, and to choose a sea area."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.late import here
from engine.plan.edit import value_at, with_row, with_value
from engine.plan.source_fields import KINDS
from engine.problem import Problem
from engine.units import LATITUDE, LONGITUDE, on_earth

if TYPE_CHECKING:
    from engine.session.state import State


def add_source(state: State, arg: str, _form: dict[str, str]) -> None:
    """Add a source of a kind, to be told of at its first field."""
    spoken = dict(KINDS).get(arg, "source")
    known = {"kind": arg} if arg in dict(KINDS) else {}
    document, ident = with_row(state.document, "sources", known)
    state.edit(f"add {spoken}", document)
    state.reply["focus"] = f"f-sources-{ident}-{'marked' if known else 'kind'}"
    state.reply["say"] = f"Added {spoken} as {ident}"


def set_area(state: State, _arg: str, form: dict[str, str]) -> None:
    """Put the boat in a sea area, in one step.

    Raises
    ------
    Problem
        If the list is not here yet, or no such area is.
    """
    if not here():
        raise Problem("area", "The sea areas are still being fetched.", "Try again in a moment.")
    from engine.solar.tables import SEA_AREAS  # noqa: PLC0415 - comes with the late parcel

    name = form.get("area", "")
    if name not in SEA_AREAS:
        raise Problem("area", "No such sea area.", "Choose one from the list.")
    latitude, longitude = SEA_AREAS[name]
    place = {
        "latitude": on_earth(latitude, LATITUDE),
        "longitude": on_earth(longitude, LONGITUDE),
        "place": value_at(state.document, "boat.place") or name,
    }
    document = state.document
    for field, text in place.items():
        document = with_value(document, f"boat.{field}", text)
        state.typed.pop(f"boat.{field}", None)
        state.refused.pop(f"boat.{field}", None)
    state.edit("place of the boat", document)
    state.reply["say"] = f"{name}: {place['latitude']}, {place['longitude']}"
