"""Do branch breakers protect conductor and outlets, and what hangs on each?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.asked import Asked, fine, part_of, wrong
from engine.check.part import Part, open_question
from engine.check.shore_carrying import protects, run_of
from engine.check.shore_dock import wrong_dock
from engine.check.shore_said import unread_words
from engine.finding import Severity, Verdict, Who, meets
from engine.shore.leakage import judge_receptacle
from engine.shore.leakage_asks import WET_OUTLETS_230, WET_PLACES, outlets_ask
from engine.shore.outlets import SERVICE_FIRST, outlets_fit
from engine.shore.panel import BRANCH_PROTECTS
from engine.shore.services import service as service_named
from engine.shore.together import TRIPS, judged, total
from engine.units import Amp, said

if TYPE_CHECKING:
    from engine.plan.shore_parts import AcCircuit, ShorePlan


def branch_asked(shore: ShorePlan, circuit: AcCircuit) -> Asked:
    """Return what is found of one AC circuit.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    circuit : AcCircuit
        One of its branches.
    """
    parts = (
        _protects(circuit),
        None if wrong_dock(shore) else _carries(shore, circuit),
        _outlets(shore, circuit),
        _wet(shore, circuit),
    )
    return Asked(
        circuit.ident, f"ac.{circuit.ident}", tuple(one for one in parts if one is not None)
    )


def _protects(circuit: AcCircuit) -> Part:
    name = f"{circuit.ident} {circuit.name}"
    if circuit.breaker is None or circuit.size is None:
        what = "breaker" if circuit.breaker is None else "conductor"
        return open_question(BRANCH_PROTECTS, f"{name}: enter its {what}.")
    return protects(name, circuit.breaker, run_of(circuit, circuit.size))


def on_it(shore: ShorePlan, circuit: AcCircuit, *, planned: bool = False) -> Amp:
    """Return what a circuit carries with all its appliances on, or the planned ones, A.

    The circuit of an inverter-charger's input carries what passes through it as well.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    circuit : AcCircuit
        One of its circuits.
    planned : bool
        Only what is planned to run together.
    """
    service = shore.service or service_named("30 A 120 V")
    through = circuit.ident == shore.on_inverter.circuit
    loads = tuple(
        one.on_leg
        for one in shore.items
        if (one.circuit == circuit.ident or (through and one.inverter) or circuit.supply == "inlet")
        and (one.planned or not planned)
    )
    return total(loads, service.volts, service.volts)


def unread_on(shore: ShorePlan, circuit: AcCircuit) -> tuple[AcCircuit, ...]:
    """Return the circuits with entries of unknown watts whose current a circuit carries.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    circuit : AcCircuit
        One of its circuits.
    """
    through = circuit.ident == shore.on_inverter.circuit
    return tuple(
        one for one in shore.circuits
        if one.unknown
        and (one.ident == circuit.ident or (through and one.supply == "inverter")
             or circuit.supply == "inlet")
    )  # fmt: skip


def _carries(shore: ShorePlan, circuit: AcCircuit) -> Part | None:
    if circuit.breaker is None or shore.service is None:
        return None
    name = f"{circuit.ident} {circuit.name}"
    found = judged(on_it(shore, circuit, planned=True), circuit.breaker)
    every = on_it(shore, circuit)
    text = f"{name}: {said(found.current)} A of {said(circuit.breaker)} A planned"
    text += f", {said(every)} A with all of it on." if every > found.current else "."
    untold = unread_words(unread_on(shore, circuit))
    if untold and found.verdict is not Verdict.STOP:
        return open_question(found.rule, f"{text} {untold[0].upper()}{untold[1:]}.")
    if found.verdict is Verdict.FINE:
        return fine(found.rule, text)
    grave = Severity.BEFORE_LEAVING if found.verdict is Verdict.STOP else Severity.SHOULD
    mend = "Run less on it at one time, or move an appliance to another circuit."
    rule = TRIPS if found.verdict is Verdict.STOP else found.rule
    return wrong(rule, found.verdict, text, mend, grave, Who.OWNER)


def _outlets(shore: ShorePlan, circuit: AcCircuit) -> Part | None:
    if circuit.breaker is None or (not circuit.place and circuit.outlet_rating is None):
        return None
    found = outlets_fit(circuit.breaker, circuit.outlet_rating, circuit.outlets, shore.service)
    if found is None:
        return None
    text = f"{circuit.ident} {circuit.name}: {found.words}"
    if found.verdict is Verdict.FINE:
        return fine(found.rule, text)
    if found.verdict is Verdict.NOT_KNOWN:
        return open_question(found.rule, text)
    mend = "A smaller breaker, or outlets marked for this one."
    grave = Severity.BEFORE_LEAVING if found.verdict is Verdict.STOP else Severity.SHOULD
    return wrong(found.rule, found.verdict, text, mend, grave)


def _wet(shore: ShorePlan, circuit: AcCircuit) -> Part | None:
    if circuit.place not in WET_PLACES or circuit.outlets == 0:
        return None
    opens, name = circuit.outlets_open, f"{circuit.ident} {circuit.name}"
    asks = outlets_ask(shore.service)
    if shore.service is None:
        return open_question(asks.rule, f"{name}: {SERVICE_FIRST}")
    main = shore.leakage.trip if shore.leakage.fitted else None
    if asks.rule is WET_OUTLETS_230 and main is not None and meets(main, asks.trip):
        return fine(asks.rule, f"{name}: behind the main's {said(main * 1000)} mA.")
    if opens is None:
        text = f"{name}: enter the leakage its outlets in the {circuit.place} open at."
        return open_question(asks.rule, text)
    found = judge_receptacle(circuit.place, opens or None, shore.service)
    if found is None:
        return fine(asks.rule, f"{name}: outlets open at {said(opens * 1000)} mA.")
    return part_of(found)
