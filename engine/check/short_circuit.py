"""Can each protection break the fault it may meet, and does the conductor live through it?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.part import Part, open_question
from engine.check.path import cold_ohms
from engine.conductors.withstand import BOAT_CABLE, limit
from engine.finding import Judgement, Verdict, Who
from engine.protection.clearing import let_through, withstands
from engine.protection.fault import cold_cable, fault_current
from engine.protection.interrupting import INTERRUPTS, enough, published_minimum
from engine.protection.kinds import interrupts, judge_volts
from engine.units import Amp, Metre, Ohm, said

if TYPE_CHECKING:
    from engine.check.path import Path
    from engine.conductors.sizes import Size
    from engine.plan.parts import Circuit


def fault_at_start(circuit: Circuit, size: Size, path: Path) -> Amp | None:
    """Return the fault current through a circuit's protection, shorted just behind it.

    Parameters
    ----------
    circuit : Circuit
        As stated; its protection may stand some way along it.
    size : Size
        Of its conductor.
    path : Path
        From the bank.

    Returns
    -------
    Amp or None
        None where the bank or a feeder is not known. [A]
    """
    distance = circuit.guard.distance
    way = Metre(distance.low if distance else 0.0)
    return _fault(path, Ohm(cold_cable(way, size) / circuit.parallel))


def fault_at_end(circuit: Circuit, path: Path) -> Amp | None:
    """Return the fault current of a short at a circuit's far end; None where not known. [A]."""
    own = cold_ohms(circuit)
    return None if own is None else _fault(path, own)


def _fault(path: Path, own: Ohm) -> Amp | None:
    if path.volts is None or path.bank is None or path.upstream is None:
        return None
    if path.bank + path.upstream + own <= 0:
        return None
    return fault_current(path.volts, path.bank, own, path.upstream)


def short_circuit(circuit: Circuit, size: Size, path: Path) -> list[Part]:
    """Return what is found of a circuit's protection in a short circuit.

    Parameters
    ----------
    circuit : Circuit
        As stated.
    size : Size
        Of its conductor.
    path : Path
        From the bank.
    """
    guard = circuit.guard
    if not guard.fitted or circuit.rating is None or circuit.feeds == "starter":
        return []
    if not guard.series:
        return [open_question(INTERRUPTS, "Its protection's type is not entered.")]
    parts = []
    volts = judge_volts(guard.series, circuit.volts)
    if volts.verdict != Verdict.FINE and guard.interrupting is None:
        parts.append(_part(volts))
    if not circuit.on_bank:
        return parts
    fault = fault_at_start(circuit, size, path)
    rating = guard.interrupting or interrupts(guard.series, circuit.volts)
    if rating is not None:
        main = circuit.feeds == "bus" or not path.feeders
        minimum = published_minimum(
            circuit.volts, path.cranking, main=main, capacity=path.capacity
        )  # fmt: skip
        found = enough(rating, fault, minimum, lithium=path.lithium)
        parts.append(_part(found, weighs=found.verdict != Verdict.CANNOT_SAY))
    if fault is not None:
        bears = limit(size, *BOAT_CABLE) * circuit.parallel**2
        through = let_through(guard.series, circuit.rating, fault)
        found = withstands(bears, through)
        if found.verdict == Verdict.CANNOT_SAY:
            held = bears / fault**2 * 1000
            words = f"{found.words[:-1]}, {said(held, 2)} ms at {said(fault)} A."
            parts.append(open_question(found.rule, f"{words} {found.mend}", found.verdict))
        else:
            parts.append(_part(found))
    return parts


def _part(found: Judgement, *, weighs: bool = True) -> Part:
    return Part(found.rule, found.verdict, found.words, found.mend, who=Who.TWO, weighs=weighs)
