"""Can each protection break the fault it may meet, and does the conductor live through it?"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from engine.check.guard import is_main
from engine.check.part import Part, judged, open_question
from engine.check.path import cold_ohms
from engine.conductors.withstand import BOAT_CABLE, limit
from engine.finding import Verdict, Who, meets
from engine.protection.clearing import let_through, withstands
from engine.protection.fault import cold_cable, fault_current
from engine.protection.interrupting import (
    INTERRUPTS,
    asked,
    enough,
    is_large,
    maker_minimum,
    published_minimum,
)
from engine.protection.kinds import interrupts, judge_volts, kinds_for
from engine.units import Amp, Metre, Ohm, said
from engine.units import words as words_of

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
    if not guard.fitted or circuit.rating is None:
        return []
    if not guard.series:
        return [open_question(INTERRUPTS, "Its protection's type is not entered.")]
    parts = []
    volts = judge_volts(guard.series, circuit.volts)
    if volts.verdict != Verdict.FINE:
        parts.append(judged(volts, Who.TWO))
    if not circuit.on_bank or path.lost:
        return parts
    fault = fault_at_start(circuit, size, path)
    rating = guard.interrupting or interrupts(guard.series, circuit.volts)
    if rating is not None:
        parts.append(_interrupts(circuit, rating, fault, path))
    if fault is not None:
        parts.append(_withstands(circuit, size, fault, path))
    return parts


def _interrupts(circuit: Circuit, rating: Amp, fault: Amp | None, path: Path) -> Part:
    """Return whether the protection can break what it may meet."""
    minimum = asked_minimum(circuit, path)
    found = enough(rating, fault, minimum, lithium=path.lithium)
    fails = found.verdict in {Verdict.STOP, Verdict.SHOULD}
    unknown = fault is None and (path.cranking is None or path.lithium)
    if path.other_bank and not fails:
        words = "Another bank adds to the fault; what it brings is not known."
        return open_question(INTERRUPTS, words)
    if unknown and not fails:
        words = "The bank, or a circuit on the way, is not known: so is not its fault current."
        return open_question(INTERRUPTS, words)
    if not fails:
        return judged(found, Who.TWO)
    mend = found.mend
    demand = asked(fault, minimum)
    kinds = kinds_for(demand.least, circuit.volts) if demand else ()
    if kinds:
        mend += f" Typical of {words_of(kinds, 'or')}."
    return judged(replace(found, mend=mend), Who.TWO)


def asked_minimum(circuit: Circuit, path: Path) -> Amp | None:
    """Return the published minimum for a circuit's protection; of a large bank, its maker's.

    Parameters
    ----------
    circuit : Circuit
        As stated.
    path : Path
        From the bank.

    Returns
    -------
    Amp or None
        The bank's own short-circuit current stands for its maker's figure. [A]
    """
    main = is_main(circuit, path)
    minimum = published_minimum(circuit.volts, path.cranking, main=main, capacity=path.capacity)
    large = is_large(path.cranking, path.capacity)
    if not (large and main and path.volts and path.bank):
        return minimum
    makers = maker_minimum(Amp(path.volts / path.bank))
    return Amp(max(minimum or 0.0, makers))


def _withstands(circuit: Circuit, size: Size, fault: Amp, path: Path) -> Part:
    """Return whether one conductor bears what the protection lets through, near and far."""
    bears = limit(size, *BOAT_CABLE)
    assert circuit.rating is not None  # noqa: S101 - the caller has one
    far = fault_at_end(circuit, path)
    through = [
        let_through(circuit.guard.series, circuit.rating, one)
        for one in (fault, far)
        if one is not None
    ]
    known = [one for one in through if one is not None]
    over = [one for one in known if not meets(one, bears)]
    worst = max(over or known) if over or len(known) == len(through) else None
    found = withstands(bears, worst)
    if found.verdict != Verdict.CANNOT_SAY:
        return judged(found, Who.TWO)
    held = bears / fault / fault * 1000
    words = f"{found.words[:-1]}, {said(held, 2)} ms at {said(fault)} A."
    return open_question(found.rule, f"{words} {found.mend}", found.verdict)
