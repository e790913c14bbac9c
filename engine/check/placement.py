"""Does each protection stand near enough to its source, and is there one at every source?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.part import Part, judged, open_question
from engine.finding import Verdict, Who, meets
from engine.protection.placement import PLACED, TWO_SOURCES, End, placed, two_sources
from engine.units import Amp, said

if TYPE_CHECKING:
    from engine.check.path import Path
    from engine.check.wire import Wire
    from engine.plan.parts import Circuit

BOTH_ENDS: Final = {"source": "charging source", "bank": "other bank"}
"""What brings power to a circuit's far end."""


def placement(circuit: Circuit, wire: Wire, path: Path) -> list[Part]:
    """Return what is found of where a circuit's protection stands.

    Parameters
    ----------
    circuit : Circuit
        As stated.
    wire : Wire
        Its figures.
    path : Path
        Whether it starts at the bank itself.
    """
    parts = []
    guard = circuit.guard
    if guard.fitted:
        parts.append(_near_end(circuit, wire, path))
    if circuit.feeds in BOTH_ENDS and guard.fitted:
        parts.append(_far_end(circuit, wire))
    return parts


def _near_end(circuit: Circuit, wire: Wire, path: Path) -> Part:
    distance = circuit.guard.distance
    if distance is None:
        return open_question(PLACED, "Where its protection stands is not entered.")
    if circuit.run and distance.low > circuit.run.high:
        words = "Its protection cannot stand further along than the run is long."
        return open_question(PLACED, words)
    if path.guard is not None and meets(path.guard, wire.carries):
        words = (
            f"Wherever it stands, the {said(path.guard)} A of {path.guarded_by} protects the "
            "length before it."
        )
        return Part(PLACED, Verdict.FINE, words)
    if path.lost:
        return open_question(PLACED, "What feeds it is not here, so its source is not known.")
    at_bank = path.at_bank and circuit.on_bank
    found = placed(distance, sheathed=circuit.guard.sheathed, at_battery=at_bank)
    return judged(found, Who.TWO)


def _far_end(circuit: Circuit, wire: Wire) -> Part:
    guard, name = circuit.guard, BOTH_ENDS[circuit.feeds]
    if not guard.far_end and not guard.self_limiting:
        words = f"Whether it is protected at the {name} too is not entered."
        return Part(TWO_SOURCES, Verdict.NOT_KNOWN, words)
    most = Amp(circuit.current.high) if circuit.current else None
    far = End(name, guard.far_end == "yes", guard.self_limiting, most)
    return judged(two_sources(End("bank's end", protected=True), far, wire.carries))
