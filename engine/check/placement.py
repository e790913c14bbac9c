"""Does each protection stand near enough to its source, and is there one at every source?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.part import Part, open_question
from engine.finding import Severity, Verdict, Who
from engine.protection.placement import PLACED, TWO_SOURCES, End, placed, two_sources
from engine.units import Amp

if TYPE_CHECKING:
    from engine.check.path import Path
    from engine.check.wire import Wire
    from engine.finding import Judgement
    from engine.plan.parts import Circuit

BOTH_ENDS: Final = {"source": "charging source", "bank": "other bank"}
"""What brings power to a circuit's far end."""


def _part(found: Judgement) -> Part:
    grave = Severity.BEFORE_LEAVING if found.verdict == Verdict.STOP else None
    return Part(found.rule, found.verdict, found.words, found.mend, grave, Who.TWO)


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
    if guard.fitted and circuit.feeds != "starter":
        if guard.distance is None:
            parts.append(open_question(PLACED, "Where its protection stands is not entered."))
        else:
            at_bank = not path.feeders and circuit.on_bank
            found = placed(guard.distance, sheathed=guard.sheathed, at_battery=at_bank)
            parts.append(_part(found))
    if circuit.feeds in BOTH_ENDS:
        parts.append(_far_end(circuit, wire))
    return parts


def _far_end(circuit: Circuit, wire: Wire) -> Part:
    guard, name = circuit.guard, BOTH_ENDS[circuit.feeds]
    if not guard.far_end and not guard.self_limiting:
        words = f"Whether it is protected at the {name} too is not entered."
        return open_question(TWO_SOURCES, words)
    most = Amp(circuit.current.likely) if circuit.current else None
    far = End(name, guard.far_end == "yes", guard.self_limiting, most)
    return _part(two_sources(End("bank's end", protected=True), far, wire.carries))
