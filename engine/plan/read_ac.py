"""Reads AC circuits with their appliances and plates, and a licensed person's results."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from functools import lru_cache
from math import ceil
from typing import TYPE_CHECKING, Final

from engine.conductors.carrying import Surroundings
from engine.plan.reader import Reader
from engine.plan.shore_fields import AC, RECORD
from engine.plan.shore_parts import BOTH, AcCircuit, Item, Record
from engine.problem import Problem, quoted
from engine.shore.abroad import Plate, plate_of
from engine.shore.appliances import Appliance, Listed, Nature, listed
from engine.units import Amp, Volt, number, said

if TYPE_CHECKING:
    from engine.shore.services import Service

Stated = tuple[tuple[str, str], ...]
FOR_HOME: Final = frozenset({Nature.RESISTIVE, Nature.MOTOR, Nature.TRANSFORMER})
"""Classes that count as made for the boat's own service where no plate was read."""
_UP: Final = r"(?:\s*(?:to|-|–)\s*(\d+(?:[.,]\d+)?))?"
PLATE: Final = re.compile(
    rf"(.+?)[\s:]+(\d+(?:[.,]\d+)?){_UP}\s*V[\s,/]*(\d+(?:[.,]\d+)?){_UP}\s*Hz", re.IGNORECASE
)


def amp(reader: Reader, name: str) -> Amp | None:
    """Return a current, None where it is not known."""
    value = reader.value(name)
    return None if value is None else Amp(value)


def thousandth(reader: Reader, name: str) -> float | None:
    """Return a figure typed in thousandths in whole units, None where it is not known."""
    value = reader.value(name)
    return None if value is None else value / 1000


def whole(reader: Reader, name: str) -> int | None:
    """Return a count, None where it is not known."""
    value = reader.value(name)
    return None if value is None else ceil(value)


def _insulation(reader: Reader) -> int | None:
    """Return the class of insulation, None where it is not known or no table has it."""
    stated = whole(reader, "insulation")
    if stated is None:
        return None
    try:
        return Surroundings(insulation=stated).insulation
    except Problem as problem:
        reader.problems.append(problem.at(f"{reader.where}.insulation"))
        return None


def plates_of(text: str) -> dict[str, Plate]:
    """Return the plates that were copied, by the appliance's name in small letters.

    Parameters
    ----------
    text : str
        Such as ``charger 90 to 265 V 47 to 63 Hz; laptop 100-240 V 50-60 Hz``.

    Raises
    ------
    Problem
        If a part of it names no volts and hertz.

    Examples
    --------
    >>> plates_of("charger 90 to 265 V, 47 to 63 Hz")
    {'charger': Plate(volts=(90.0, 265.0), hertz=(47.0, 63.0))}
    """
    found = {}
    parts = re.split(r"[;\n]|(?<=Hz)\s*,", text, flags=re.IGNORECASE)
    for part in (one.strip() for one in parts):
        if not part:
            continue
        read = PLATE.fullmatch(part)
        if not read:
            raise Problem(
                "",
                f"{quoted(part)} names no volts and hertz.",
                "Enter such as charger 90 to 265 V 47 to 63 Hz.",
            )
        low, high, slow, fast = read[2], read[3] or read[2], read[4], read[5] or read[4]
        found[read[1].strip().lower()] = Plate(
            (Volt(number(low)), Volt(number(high))), (number(slow), number(fast))
        )
    return found


def _plates(reader: Reader) -> dict[str, Plate]:
    text = reader.text("plates")
    if text.strip() in {"", "?"}:
        return {}
    try:
        return plates_of(text)
    except Problem as problem:
        reader.problems.append(problem.at(f"{reader.where}.plates"))
        return {}


def _appliances(reader: Reader) -> tuple[Listed, ...]:
    """Return what the list holds; an entry that cannot be read is kept as not known."""
    text = reader.text("appliances").strip()
    if not text:
        return ()
    where = f"{reader.where}.appliances"
    try:
        found = listed(text)
    except Problem as problem:
        reader.problems.append(problem.at(where))
        return (Listed(text),)
    reader.problems += [one.problem.at(where) for one in found if one.problem]
    return found


@lru_cache(maxsize=512)
def ac_circuit_of(
    stated: Stated, catalogue: str, home: Service | None
) -> tuple[AcCircuit, tuple[Problem, ...]]:
    """Return an AC circuit; a row that says the same is not read again."""
    row = dict(stated)
    ident = row["id"]
    reader = Reader(f"ac.{ident}", row, AC)
    supply, planned, leg = reader.choice("supply"), reader.yes("together"), reader.choice("leg")
    plates, entries = _plates(reader), _appliances(reader)
    if leg == BOTH and home is not None and home.legs == 2:
        home = replace(home, volts=Volt(home.volts * 2))
    elif leg == BOTH:
        leg = "1"
    items = tuple(
        Item(
            f"{ident}.{place}",
            one,
            ident,
            leg,
            plates.get(one.name.lower(), _home_plate(one, home)),
            planned,
            supply == "inverter",
        )
        for place, one in enumerate((entry.appliance for entry in entries), 1)
        if one is not None
    )
    opens, poles = thousandth(reader, "ground_fault"), reader.choice("poles")
    circuit = AcCircuit(
        ident,
        row.get("name", "") or ident,
        supply,
        amp(reader, "breaker"),
        int(poles) if poles else None,
        reader.size("size", catalogue),
        _insulation(reader),
        whole(reader, "bundle"),
        reader.yes("engine_space"),
        reader.choice("place"),
        whole(reader, "outlets"),
        amp(reader, "outlet_rating"),
        None if opens is None else Amp(opens),
        leg,
        items,
        tuple(one.text for one in entries if one.appliance is None),
        planned,
    )
    return circuit, tuple(reader.problems)


def apart_by_name(circuits: list[AcCircuit]) -> tuple[AcCircuit, ...]:
    """Return the circuits with the circuit, or watts as well, added to names that stand twice.

    Parameters
    ----------
    circuits : list of AcCircuit
        Shape ``(n,)``.
    """
    items = [one for circuit in circuits for one in circuit.items]
    names = Counter(one.appliance.name.lower() for one in items)
    here = Counter((one.appliance.name.lower(), one.circuit) for one in items)

    def told(one: Item) -> Item:
        name = one.appliance.name
        if names[name.lower()] == 1:
            return one
        more = f", {said(one.appliance.watts, 4)} W" if here[name.lower(), one.circuit] > 1 else ""
        label = f"{name} ({one.circuit}{more})"
        return replace(one, appliance=replace(one.appliance, name=label))

    return tuple(
        replace(circuit, items=tuple(told(one) for one in circuit.items)) for circuit in circuits
    )


def _home_plate(appliance: Appliance, home: Service | None) -> Plate | None:
    return plate_of(home) if home and appliance.nature in FOR_HOME else None


@lru_cache(maxsize=512)
def record_of(stated: Stated) -> Record:
    """Return a licensed person's result."""
    row = dict(stated)
    result = Reader(f"records.{row['id']}", row, RECORD).choice("result")
    return Record(
        row["id"],
        row.get("name", "") or row["id"],
        row.get("found", ""),
        result,
        row.get("person", "").strip(),
        row.get("date", ""),
        row.get("note", ""),
    )
