"""Reads the alternating-current side; every problem is collected with its path."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.plan.read_ac import ac_circuit_of, amp, apart_by_name, record_of, thousandth
from engine.plan.reader import Reader
from engine.plan.shore_fields import SHORE
from engine.plan.shore_parts import (
    Bonds,
    Changeover,
    Feed,
    Isolated,
    Leakage,
    MainBreaker,
    OnInverter,
    ShorePlan,
)
from engine.problem import Problem, quoted
from engine.shore.earthing import Supply
from engine.shore.isolation import Isolation
from engine.shore.services import Service, service
from engine.shore.transfer import Transfer
from engine.units import Amp, Celsius, Metre, Watt

if TYPE_CHECKING:
    from engine.plan.document import Document, Row
    from engine.plan.shore_parts import AcCircuit


def _known(reader: Reader, name: str) -> bool | None:
    """Return a yes or no, None where neither was chosen."""
    return {"yes": True, "no": False}.get(reader.choice(name))


def _metre(reader: Reader, name: str) -> Metre | None:
    value = reader.value(name)
    return None if value is None else Metre(value)


def _watt(reader: Reader, name: str) -> Watt | None:
    value = reader.value(name)
    return None if value is None else Watt(value)


def _service(reader: Reader, name: str) -> Service | None:
    chosen = reader.choice(name)
    return service(chosen) if chosen else None


def _sources(reader: Reader, *, inverter: bool) -> tuple[Supply | str, ...]:
    """Return every source of alternating current that was stated."""
    two = reader.choice("inlets") == "2" and reader.choice("feeding") == "selector"
    shore: tuple[Supply | str, ...] = ("shore 1", "shore 2") if two else (Supply.SHORE,)
    found = shore if reader.choice("service") else ()
    bond = reader.choice("inverter_bond")
    if bond not in {"", "absent"} or (inverter and not bond):
        found = (*found, Supply.INVERTER)
    generator = reader.choice("generator_bond")
    if generator not in {"", "absent"} or reader.row.get("generator_rating"):
        found = (*found, Supply.GENERATOR)
    return found


def _changeover(reader: Reader, *, inverter: bool) -> Changeover:
    kind = reader.choice("transfer")
    interlocked, breaks_first, neutral = (
        _known(reader, f"transfer_{name}") for name in ("interlock", "breaks", "neutral")
    )
    chooses = None
    sources = _sources(reader, inverter=inverter)
    if sources or kind not in {"", "none"}:
        try:
            chooses = Transfer(
                sources,
                kind != "none" and interlocked is not False,
                breaks_first is not False,
                neutral is not False,
            )
        except Problem as problem:
            reader.problems.append(problem.at(f"{reader.where}.transfer"))
    return Changeover(kind, interlocked, breaks_first, neutral, chooses)


def shore_of(
    document: Document, catalogue: str, *, inverter: bool
) -> tuple[ShorePlan, list[Problem]]:
    """Return the alternating-current side a document states, and what cannot be read of it."""
    row: Row = document.get("shore", {})
    reader = Reader("shore", row, SHORE)
    home, kind = _service(reader, "service"), reader.choice("isolation")
    air = reader.value("air")
    circuits: list[AcCircuit] = []
    problems: list[Problem] = []
    for one in document.get("ac", []):
        circuit, found = ac_circuit_of(tuple(one.items()), catalogue, home)
        circuits.append(circuit)
        problems += found
    plan = ShorePlan(
        home,
        _service(reader, "dock"),
        int(reader.choice("inlets")),
        reader.choice("feeding"),
        reader.yes("one_phase"),
        Feed(
            _metre(reader, "cord_length"),
            reader.size("cord_size", catalogue),
            _metre(reader, "feed_length"),
            reader.size("feed_size", catalogue),
            reader.yes("feed_guarded"),
        ),
        _main(reader, circuits),
        _leakage(reader),
        _changeover(reader, inverter=inverter),
        _known(reader, "polarity"),
        Isolated(
            Isolation(kind) if kind else None,
            amp(reader, "isolator_rating"),
            _known(reader, "isolator_closes"),
            _known(reader, "isolator_watched"),
            _watt(reader, "transformer_rating"),
            _metre(reader, "transformer_distance"),
        ),
        Bonds(
            _known(reader, "panel_bond"),
            reader.choice("inverter_bond"),
            reader.choice("generator_bond"),
        ),
        OnInverter(
            reader.choice("wave"),
            None if air is None else Celsius(air),
            amp(reader, "limit"),
            row.get("charger_circuit", "").strip().upper(),
        ),
        _watt(reader, "generator_rating"),
        _service(reader, "abroad"),
        apart_by_name(circuits),
        tuple(record_of(tuple(one.items())) for one in document.get("records", [])),
    )
    return plan, [*reader.problems, *problems, *_charger(plan)]


def _main(reader: Reader, circuits: list[AcCircuit]) -> MainBreaker:
    """Return the main from its own fields, or from the inlet's circuit where they are empty."""
    chosen = reader.choice("main_poles")
    rating, poles = amp(reader, "main_rating"), int(chosen) if chosen else None
    inlet = next((one for one in circuits if one.supply == "inlet"), None)
    ident, also, its_poles = (
        (inlet.ident, inlet.breaker, inlet.poles) if inlet else ("", None, None)
    )
    return MainBreaker(
        also if rating is None else rating,
        its_poles if poles is None else poles,
        amp(reader, "main_interrupting"),
        amp(reader, "branch_interrupting"),
        (
            None if rating is None or also == rating else also,
            None if poles is None or its_poles == poles else its_poles,
        ),
        ident,
    )


def _leakage(reader: Reader) -> Leakage:
    fitted, trip = _known(reader, "leakage"), thousandth(reader, "leakage_trip")
    if fitted is None and trip is not None:
        fitted = True
    return Leakage(fitted, None if trip is None else Amp(trip), thousandth(reader, "leakage_time"))


def _charger(plan: ShorePlan) -> list[Problem]:
    """Return what is wrong with the circuit named for the inverter-charger's input."""
    named = plan.on_inverter.circuit
    if named in {"", "?"} or named in {one.ident for one in plan.circuits}:
        return []
    return [
        Problem(
            "shore.charger_circuit",
            f"There is no AC circuit {quoted(named)}.",
            "Enter an id from the list, such as A02.",
        )
    ]
