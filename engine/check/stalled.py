"""Would a stuck motor open its protection?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.part import Part, judged, open_question
from engine.conductors.drop import loop_drop
from engine.conductors.resistance import resistance
from engine.protection.motor import STALLED, judge_stall, stalled_current
from engine.units import Amp, Celsius, Metre, Ohm

if TYPE_CHECKING:
    from engine.check.path import Path
    from engine.conductors.sizes import Size
    from engine.plan.parts import Circuit


def stalled(circuit: Circuit, size: Size, path: Path) -> list[Part]:
    """Return whether a circuit's protection opens with its motor stuck.

    Judged at its worst: the conductor as warm as its insulation may get, the run at its longest,
    behind the bank and every feeder.

    Parameters
    ----------
    circuit : Circuit
        With a run.
    size : Size
        Of its conductor.
    path : Path
        From the bank.
    """
    if circuit.feeds != "motor" or circuit.rating is None or not circuit.guard.fitted:
        return []
    if circuit.stall is None or circuit.run is None or circuit.around is None:
        return [open_question(STALLED, "What its motor draws when stuck is not entered.")]
    hot = resistance(size, Celsius(circuit.around.insulation))
    cable = loop_drop(Amp(1.0), Metre(circuit.run.high), hot) / circuit.parallel
    rest = (circuit.joints or 0.0) + (path.warm or 0.0) + (path.bank or 0.0)
    stuck = stalled_current(circuit.volts, circuit.stall, Ohm(cable), Ohm(rest))
    found = judge_stall(stuck, circuit.rating, circuit.guard.series)
    return [judged(found)]
