"""Are the main and branch breakers where and what they should be, and is leakage caught?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.asked import Asked, fine, part_of, wrong
from engine.check.part import Part, open_question
from engine.conductors.carrying import Surroundings, carries
from engine.finding import Severity, Verdict, Who
from engine.problem import Problem
from engine.shore.leakage import (
    MAIN_LEAKAGE,
    WET_PLACES,
    WET_RECEPTACLE,
    Guard,
    judge_main_leakage,
    judge_receptacle,
)
from engine.shore.panel import (
    BRANCH_PROTECTS,
    DOUBLE_POLE,
    INTERRUPTS_ENOUGH,
    MAIN_FITS,
    MAIN_NEAR,
    Main,
    interrupts_needed,
    judge_branch,
    judge_interrupting,
    judge_main,
)
from engine.shore.services import service as service_named
from engine.shore.together import TRIPS, Branch, judged, total
from engine.units import Amp, Metre, said

if TYPE_CHECKING:
    from engine.plan.shore_parts import AcCircuit, ShorePlan
    from engine.shore.services import Service

FITTING: Final = Metre(0.0)


def main_asked(shore: ShorePlan) -> Asked:
    """Return what is found of the main breaker.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    service, main, away = shore.service, shore.main, shore.feed.length
    where = "shore.main_rating"
    if service is None or main.rating is None:
        part = open_question(MAIN_FITS, "Enter the shore service and the main breaker's rating.")
        return Asked("main breaker", where, (part,))
    parts = [
        part_of(one)
        for one in judge_main(
            Main(
                main.rating,
                FITTING if away is None else away,
                2 if main.poles is None else main.poles,
                shore.feed.guarded,
            ),
            service,
        )
    ]
    if not parts:
        parts.append(fine(MAIN_FITS, _main_words(shore)))
    if away is None:
        parts.append(open_question(MAIN_NEAR, "Enter how far the main is from the inlet."))
    if main.poles is None:
        parts.append(open_question(DOUBLE_POLE, "Enter how many poles the main has."))
    return Asked("main breaker", where, tuple(parts))


def _main_words(shore: ShorePlan) -> str:
    main, away = shore.main, shore.feed.length
    poles = {1: "one pole", 2: "two poles"}.get(main.poles or 0, "")
    said_poles = f" of {poles}" if poles else ""
    at = "" if away is None else f", {said(away)} m along the conductor from the inlet"
    guarded = ", that run guarded" if shore.feed.guarded and away else ""
    return f"Main breaker {said(main.rating or 0.0)} A{said_poles}{at}{guarded}."


def interrupting_asked(shore: ShorePlan) -> Asked:
    """Return what is found of the interrupting ratings.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    service = shore.service
    where = "shore.main_interrupting"
    if service is None:
        part = open_question(INTERRUPTS_ENOUGH, "Choose the shore service first.")
        return Asked("interrupting rating", where, (part,))
    parts = [
        _interrupts(rating, service, main=main)
        for rating, main in (
            (shore.main.interrupts, True),
            (shore.main.branches_interrupt, False),
        )
    ]
    return Asked("interrupting rating", where, tuple(parts))


def _interrupts(rating: Amp | None, service: Service, *, main: bool) -> Part:
    name = "main" if main else "branches"
    needed = interrupts_needed(service, main=main)
    if needed is None:
        text = "No table at hand says it for this service; ask for the dock's fault current."
        return open_question(INTERRUPTS_ENOUGH, text, Verdict.CANNOT_SAY)
    least = said(needed[0], 4)
    if rating is None:
        text = f"Enter what the {name} interrupt{'s' if main else ''}; {least} A is the least."
        return open_question(INTERRUPTS_ENOUGH, text)
    found = judge_interrupting(rating, service, main=main)
    if found is not None:
        return part_of(found)
    verb = "The main interrupts" if main else "Branches interrupt"
    return fine(INTERRUPTS_ENOUGH, f"{verb} {said(rating, 4)} A; {least} A is the least.")


def leakage_asked(shore: ShorePlan) -> Asked:
    """Return what is found of the leakage protection at the main.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    leakage, where = shore.leakage, "shore.leakage"
    distance = shore.isolated.distance if shore.isolated.kind == "isolation transformer" else None
    if shore.service is None or leakage.fitted is None:
        text = "Say whether the main has leakage protection: look for its test button."
        return Asked("leakage protection", where, (open_question(MAIN_LEAKAGE, text),))
    if leakage.fitted and leakage.trip is None:
        part = open_question(MAIN_LEAKAGE, "Enter the leakage it opens at, marked on it.")
        return Asked("leakage protection", where, (part,))
    guard = Guard(leakage.trip if leakage.fitted else None, leakage.time)
    found = judge_main_leakage(guard, distance)
    if found is None:
        text = "An isolation transformer near the inlet stands in for it."
        if guard.trip is not None:
            text = f"Opens at {said(guard.trip * 1000)} mA"
            text += f" within {said((guard.time or 0.0) * 1000)} ms." if guard.time else "."
        return Asked("leakage protection", where, (fine(MAIN_LEAKAGE, text),))
    if found.verdict is Verdict.NOT_KNOWN:
        return Asked("leakage protection", where, (open_question(MAIN_LEAKAGE, found.words),))
    return Asked("leakage protection", where, (part_of(found),))


def branch_asked(shore: ShorePlan, circuit: AcCircuit) -> Asked:
    """Return what is found of one AC circuit.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    circuit : AcCircuit
        One of its branches.
    """
    parts = [_protects(circuit), _carries(shore, circuit), _wet(circuit)]
    return Asked(
        circuit.ident, f"ac.{circuit.ident}", tuple(one for one in parts if one is not None)
    )


def _protects(circuit: AcCircuit) -> Part:
    name = f"{circuit.ident} {circuit.name}"
    if circuit.breaker is None or circuit.size is None:
        what = "breaker" if circuit.breaker is None else "conductor"
        return open_question(BRANCH_PROTECTS, f"{name}: enter its {what}.")
    around = Surroundings(engine_space=circuit.engine_space)
    try:
        found = judge_branch(Branch(name, circuit.breaker), circuit.size, around)
        most = carries(circuit.size, around)
    except Problem as problem:
        return wrong(
            BRANCH_PROTECTS, Verdict.STOP, f"{name}: {problem.what}", problem.mend,
            Severity.BEFORE_LEAVING,
        )  # fmt: skip
    if found is not None:
        return part_of(found)
    text = f"{name}: {said(circuit.breaker)} A protects {circuit.size}, which carries "
    return fine(BRANCH_PROTECTS, f"{text}{said(most)} A here.")


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
        one.appliance
        for one in shore.items
        if (one.circuit == circuit.ident or (through and one.inverter) or circuit.fed_by == "inlet")
        and (one.planned or not planned)
    )
    return total(loads, service.volts, service.volts)


def _carries(shore: ShorePlan, circuit: AcCircuit) -> Part | None:
    if circuit.breaker is None or shore.service is None:
        return None
    name = f"{circuit.ident} {circuit.name}"
    found = judged(on_it(shore, circuit, planned=True), circuit.breaker)
    every = on_it(shore, circuit)
    text = f"{name}: {said(found.current)} A of {said(circuit.breaker)} A planned"
    text += f", {said(every)} A with all of it on." if every > found.current else "."
    if found.verdict is Verdict.FINE:
        return fine(found.rule, text)
    grave = Severity.BEFORE_LEAVING if found.verdict is Verdict.STOP else Severity.SHOULD
    mend = "Run less on it at one time, or move an appliance to another circuit."
    rule = TRIPS if found.verdict is Verdict.STOP else found.rule
    return wrong(rule, found.verdict, text, mend, grave, Who.OWNER)


def _wet(circuit: AcCircuit) -> Part | None:
    if circuit.place not in WET_PLACES:
        return None
    opens, name = circuit.outlets_open, f"{circuit.ident} {circuit.name}"
    if opens is None:
        text = f"{name}: enter the leakage its outlets in the {circuit.place} open at."
        return open_question(WET_RECEPTACLE, text)
    found = judge_receptacle(circuit.place, opens or None)
    if found is None:
        return fine(WET_RECEPTACLE, f"{name}: outlets open at {said(opens * 1000)} mA.")
    return part_of(found)
