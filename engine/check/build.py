"""Is the conductor itself fit for its place: thick enough to handle, insulated, side by side?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.part import Part, judged
from engine.conductors.mechanics import (
    PARALLEL,
    insulation_judgement,
    parallel_allowed,
    smallest_judgement,
)
from engine.finding import Severity, Verdict

if TYPE_CHECKING:
    from engine.conductors.carrying import Surroundings
    from engine.conductors.sizes import Size
    from engine.plan.parts import Circuit


def build(circuit: Circuit, size: Size, around: Surroundings) -> list[Part]:
    """Return what is found of a circuit's conductor apart from drop and heat.

    Parameters
    ----------
    circuit : Circuit
        As stated.
    size : Size
        Of its conductor.
    around : Surroundings
        Where it lives.
    """
    parts = [thickness(circuit, size)]
    if around.engine_space:
        hot = insulation_judgement(around.insulation, engine_space=True)
        parts.append(Part(hot.rule, hot.verdict, hot.words, hot.mend, Severity.BEFORE_LEAVING))
    if circuit.parallel > 1:
        parts.append(_parallel(circuit.parallel, size))
    return parts


def thickness(circuit: Circuit, size: Size) -> Part:
    """Return whether a circuit's conductor is thick enough to bear handling."""
    return judged(smallest_judgement(size, sheathed=circuit.in_sheath))


def _parallel(count: int, size: Size) -> Part:
    words = f"{count} of {size} side by side"
    if parallel_allowed(size):
        words += ": cut them to the same length, and end them on the same studs."
        return Part(PARALLEL, Verdict.FINE, words)
    mend = "Use one thicker conductor."
    words += ", where only 1/0 AWG and thicker may be: if one lets go the other burns."
    return Part(PARALLEL, Verdict.SHOULD, words, mend)
