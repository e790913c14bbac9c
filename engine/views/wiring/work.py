"""For whoever does the work: limits by law, fault current, colours, support, terminals."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.short_circuit import fault_at_end, fault_at_start
from engine.conductors.carrying import printed_amperes
from engine.conductors.colours import YELLOW_CLASH, colours, table_of
from engine.conductors.mechanics import (
    SUPPORT_LAW,
    SUPPORT_USUAL,
    pull_newton,
    swap_note,
)
from engine.conductors.tables import PULL, STRANDS
from engine.protection.motor import MOTOR_LINE, motor_limit
from engine.protection.placement import PLACED_FROM_CHARGER
from engine.protection.window import LAW, limit_by_law
from engine.units import Amp, fixed, said, words
from engine.views.parts.html import Html, joined, tag
from engine.views.parts.say import figures, length

if TYPE_CHECKING:
    from engine.check.circuits import CircuitAnswer
    from engine.views.parts.scene import Scene


def work_notes(scene: Scene, answer: CircuitAnswer) -> Html | None:
    """Return what the hands need to know of a circuit, beside its verdict."""
    circuit = answer.circuit
    size, around = circuit.size, circuit.around
    if size is None or around is None or not size.counts_as:
        return None
    law = limit_by_law(printed_amperes(size, around.insulation), circuit.volts)
    pairs = [("most by law, before any factor", f"{said(law * circuit.parallel)} A")]
    for label, fault in (
        ("short circuit at its protection", fault_at_start(circuit, size, answer.path)),
        ("short circuit at its far end", fault_at_end(circuit, answer.path)),
    ):
        pairs.append((label, f"{said(fault)} A" if fault is not None else "not known"))
    if circuit.feeds == "motor" and circuit.current:
        limit = motor_limit(Amp(circuit.current.likely))
        pairs.append(("motor line, most", f"{said(limit)} A"))
    if size.counts_as in PULL:
        pounds = PULL[size.counts_as]
        pull = f"{fixed(pull_newton(size.counts_as), 0)} N ({said(pounds)} lb)"
        pairs.append(("pull test of a crimp, 1 min", pull))
    if size.counts_as in STRANDS:
        pairs.append(("strands, most flexible type", str(STRANDS[size.counts_as])))
    usual, by_law = (length(metres, scene.units) for metres in (SUPPORT_USUAL, SUPPORT_LAW))
    pairs.append(("support", f"every {usual}; by law {by_law}"))
    sources = [f"{LAW.source}, looser than what the conductor carries here"]
    if circuit.feeds == "source":
        sources.append(f"{PLACED_FROM_CHARGER.words}, {PLACED_FROM_CHARGER.source}")
    if circuit.feeds == "motor":
        sources.append(str(MOTOR_LINE.source))
    return joined(
        tag("h2", "For the work"),
        figures(*pairs),
        tag("p", swap_note(size), class_="note"),
        _colours(circuit.function),
        tag("p", f"Sources: {'; '.join(sources)}; pull and strands typical.", class_="note"),
    )


def _colours(function: str) -> Html:
    name = function or "DC positive"
    own = colours(name)
    text = f"{name[0].upper()}{name[1:]}: {words(own, 'or')}. "
    negative = f"DC negative: {words(colours('DC negative'), 'or')}."
    clash = None
    if "yellow" in (*own, *colours("DC negative")):
        clash = tag("p", YELLOW_CLASH, class_="note")
    return joined(
        tag("p", tag("b", "Colours. "), text, negative, f" {table_of(name).source}.",
            class_="note"),
        clash,
    )  # fmt: skip
