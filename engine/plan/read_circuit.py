"""Reads a circuit, and the legs a run may be built from."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.conductors.carrying import Surroundings
from engine.estimate import Estimate
from engine.plan.circuit_fields import CIRCUIT, LEG
from engine.plan.parts import Circuit, Guard, Leg, Reading
from engine.plan.reader import Reader
from engine.problem import Problem, quoted
from engine.units import Amp, Celsius, Metre, Ohm, Volt

if TYPE_CHECKING:
    from engine.plan.document import Row
    from engine.plan.parts import Boat

Stated = tuple[tuple[str, str], ...]
SHORTEST: Final = Metre(0.01)
"""A run that a tape may be off by more than its length still has some, m."""


def _taped(length: Estimate | None, tape: Metre) -> Estimate | None:
    """Return a length that may be off by the tape's accuracy, unless a range was typed."""
    if length is None or not length.certain:
        return length
    least = min(length.likely, SHORTEST)
    low = max(length.likely - tape, least)
    return Estimate(low, length.likely, length.likely + tape, length.known_by)


@lru_cache(maxsize=1024)
def leg_of(stated: Stated, boat: Boat) -> tuple[Leg, tuple[Problem, ...]]:
    """Return a leg; a row that says the same on the same boat is not read again."""
    row = dict(stated)
    reader = Reader(f"legs.{row['id']}", row, LEG)
    length = _taped(reader.estimate("length", row.get("length_by", "")), boat.tape)
    return Leg(row["id"], row.get("name", "") or row["id"], length), tuple(reader.problems)


def legs_named(row: Row) -> list[str]:
    """Return the legs a circuit names, in order."""
    return row.get("legs", "").upper().replace(",", " ").replace("+", " ").split()


def ways_of(row: Row, legs: dict[str, Leg]) -> tuple[Leg | str, ...]:
    """Return the legs a circuit follows; a name that is no leg stays a word."""
    return tuple(legs.get(name, name) for name in legs_named(row))


def _run(reader: Reader, tape: Metre, ways: tuple[Leg | str, ...]) -> Estimate | None:
    """Return the run as typed, or the sum of its legs with the allowance for bends."""
    run = _taped(reader.estimate("run", reader.row.get("run_by", "")), tape)
    if run is not None or not ways:
        return run
    whole = Estimate.exact(0.0, "estimate")
    for leg in ways:
        if isinstance(leg, str):
            problem = Problem(
                f"{reader.where}.legs", f"There is no leg {quoted(leg)}.", "Enter it, or another."
            )
            reader.problems.append(problem)
            return None
        if leg.length is None:
            return None
        whole = Estimate(
            whole.low + leg.length.low,
            whole.likely + leg.length.likely,
            whole.high + leg.length.high,
            leg.length.known_by,
        )
    return whole.scaled(1 + reader.sure("bends"))


def _around(reader: Reader) -> Surroundings | None:
    """Return where the conductor lives; those side by side share a bundle."""
    side = round(reader.sure("parallel"))
    try:
        return Surroundings(
            round(reader.sure("insulation")),
            reader.yes("engine_space"),
            max(round(reader.sure("bundle")), 2 * side if side > 1 else 1),
            Celsius(reader.sure("ambient")),
        )
    except Problem as problem:
        reader.problems.append(problem.at(f"{reader.where}.insulation"))
        return None


def _guard(reader: Reader) -> Guard:
    rating, interrupting = reader.value("protection"), reader.value("interrupting")
    label = reader.value("label_most")
    return Guard(
        Amp(rating) if rating else None,
        reader.choice("series"),
        reader.row.get("protection_kind", ""),
        Amp(interrupting) if interrupting else None,
        reader.estimate("to_protection"),
        reader.yes("sheathed"),
        round(reader.sure("abreast")),
        reader.choice("far_end"),
        reader.yes("self_limiting"),
        Amp(label) if label else None,
    )


@lru_cache(maxsize=2048)
def circuit_of(
    stated: Stated, boat: Boat, ways: tuple[Leg | str, ...]
) -> tuple[Circuit, tuple[Problem, ...]]:
    """Return a circuit; a row that says the same on the same boat is not read again."""
    row = dict(stated)
    reader = Reader(f"circuits.{row['id']}", row, CIRCUIT)
    own, joints, stall = reader.value("volts"), reader.value("joints"), reader.value("stall")
    read_drop = reader.value("read_drop")
    circuit = Circuit(
        row["id"],
        row.get("name", "") or row["id"],
        _run(reader, boat.tape, ways),
        reader.estimate("current", row.get("current_by", "")),
        reader.size("size", boat.catalogue),
        _around(reader),
        reader.choice("allowed"),
        Volt(own) if own else boat.volts,
        _guard(reader),
        reader.yes("continuous"),
        row.get("fed_from", "").strip().upper(),
        reader.choice("feeds"),
        round(reader.sure("parallel")),
        None if joints is None else Ohm(joints),
        reader.yes("in_sheath"),
        reader.choice("function"),
        Amp(stall) if stall else None,
        None if read_drop is None else Reading(Volt(read_drop), boat.meter),
        on_bank=not own or own == boat.volts,
    )
    return circuit, tuple(reader.problems)


def fed_problems(circuits: tuple[Circuit, ...]) -> list[Problem]:
    """Return what is wrong with who feeds whom: a stranger, a circuit itself, a ring."""
    by_id = {circuit.ident: circuit for circuit in circuits}
    found = []
    for circuit in circuits:
        where = f"circuits.{circuit.ident}.fed_from"
        if circuit.fed_from == circuit.ident:
            what, mend = f"{circuit.ident} feeds itself.", "Enter the circuit before it, or none."
        elif circuit.fed_from and circuit.fed_from not in by_id:
            what = f"There is no circuit {quoted(circuit.fed_from)} to feed {circuit.ident}."
            mend = "Enter an id from the list, such as D01, or nothing for the bank."
        elif ring := _ring(circuit, by_id):
            what = f"{', '.join(ring)} feed one another in a ring."
            mend = "Feed one of them from the bank."
        else:
            continue
        found.append(Problem(where, what, mend))
    return found


def _ring(circuit: Circuit, by_id: dict[str, Circuit]) -> tuple[str, ...]:
    """Return the circuits of the ring a circuit belongs to; none where its way ends."""
    way = [circuit.ident]
    above = by_id.get(circuit.fed_from)
    while above is not None and above.ident not in way:
        way.append(above.ident)
        above = by_id.get(above.fed_from)
    return tuple(way) if above is not None and above.ident == circuit.ident else ()
