"""What the Charging page asks of a session: to add a source, and to choose a place."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.late import here
from engine.plan.edit import value_at, with_row, with_value
from engine.plan.source_fields import KINDS
from engine.problem import Problem
from engine.units import LATITUDE, LONGITUDE, on_earth, read

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


def set_place(state: State, which: str, text: str) -> None:
    """Put the boat in a sea area, or where the map was tapped, in one step.

    Raises
    ------
    Problem
        If the list is not here yet, or no such place is.
    """
    if not here():
        raise Problem("area", "The sea areas are still being fetched.", "Try again in a moment.")
    if which == "area" and text:
        _set_area(state, text)
    elif which == "spot":
        _set_spot(state, text)


def _set_area(state: State, name: str) -> None:
    from engine.solar.tables import SEA_AREAS  # noqa: PLC0415 - comes with the late parcel

    if name not in SEA_AREAS:
        raise Problem("area", "No such sea area.", "Choose one from the list.")
    told = _move(state, *SEA_AREAS[name], name)
    state.reply["say"] = f"{name}: {told}"


def _set_spot(state: State, text: str) -> None:
    from engine.solar.nearest import nearest_sea  # noqa: PLC0415 - comes with the late parcel

    north, _, east = text.partition(",")
    latitude, longitude = read(north, LATITUDE).likely, read(east, LONGITUDE).likely
    if latitude is None or longitude is None:
        raise Problem("area", "That is no place on the map.", "Tap the sea.")
    sea = nearest_sea(latitude, longitude)
    told = _move(state, *sea, "")
    ashore = "" if sea == (latitude, longitude) else "That is land; the nearest sea is "
    state.reply["say"] = f"{ashore}{told}"


def _move(state: State, latitude: float, longitude: float, name: str) -> str:
    """Move the boat and return where to; a name of the owner's own stays."""
    from engine.solar.tables import SEA_AREAS  # noqa: PLC0415 - comes with the late parcel

    before = value_at(state.document, "boat.place")
    place = {
        "latitude": on_earth(latitude, LATITUDE),
        "longitude": on_earth(longitude, LONGITUDE),
        "place": name if before in SEA_AREAS.rows else before or name,
    }
    document = state.document
    for field, text in place.items():
        document = with_value(document, f"boat.{field}", text)
        state.typed.pop(f"boat.{field}", None)
        state.refused.pop(f"boat.{field}", None)
    state.edit("place of the boat", document)
    return f"{place['latitude']}, {place['longitude']}"
