"""Would a stuck motor open its protection?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.part import Part, open_question
from engine.finding import Severity, Verdict
from engine.protection.fault import cold_cable
from engine.protection.motor import STALLED, judge_stall, stalled_current
from engine.units import Metre, Ohm

if TYPE_CHECKING:
    from engine.conductors.sizes import Size
    from engine.plan.parts import Circuit


def stalled(circuit: Circuit, size: Size) -> list[Part]:
    """Return whether a circuit's protection opens with its motor stuck.

    Parameters
    ----------
    circuit : Circuit
        With a run.
    size : Size
        Of its conductor.
    """
    if circuit.feeds != "motor" or circuit.rating is None or not circuit.guard.fitted:
        return []
    if circuit.stall is None or circuit.run is None:
        return [open_question(STALLED, "What its motor draws when stuck is not entered.")]
    cable = Ohm(cold_cable(Metre(circuit.run.likely), size) / circuit.parallel)
    stuck = stalled_current(circuit.volts, circuit.stall, cable, circuit.joints or Ohm(0.0))
    found = judge_stall(stuck, circuit.rating)
    grave = Severity.BEFORE_LEAVING if found.verdict == Verdict.STOP else None
    return [Part(found.rule, found.verdict, found.words, found.mend, grave)]
