"""Reads a document into a plan. Every problem is collected with its path; the rest goes on."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.inverter.efficiency import preset
from engine.inverter.sag import CUT_OFF_SHARE
from engine.loads.load import Supply
from engine.plan.fields import BANK, BOAT, INVERTER
from engine.plan.look_fields import LOOKS
from engine.plan.parts import Bank, Boat, InverterPlan, Link, Plan
from engine.plan.read_circuit import circuit_of, fed_problems, leg_of, ways_of
from engine.plan.read_load import load_of
from engine.plan.read_shore import shore_of
from engine.plan.read_source import sources_of
from engine.plan.read_start import more_of, start_of, wanted_of
from engine.plan.reader import Reader
from engine.units import (
    Amp,
    AmpHour,
    Celsius,
    Hour,
    Metre,
    Ohm,
    Share,
    Volt,
    Watt,
)

if TYPE_CHECKING:
    from engine.plan.document import Document, Row
    from engine.problem import Problem

NEW: Final = {"new", "0", "0 years", "not bought"}
"""Ages that need no test of capacity."""


def _boat(row: Row) -> tuple[Boat, tuple[Problem, ...]]:
    reader = Reader("boat", row, BOAT)
    boat = Boat(
        row.get("name", ""),
        Volt(reader.sure("volts")),
        Metre(reader.sure("tape")),
        Volt(reader.sure("meter")),
        reader.choice("catalogue"),
        reader.choice("month"),
        row.get("place", ""),
        row.get("revision", ""),
        reader.value("latitude"),
        reader.value("longitude"),
    )
    reader.value("people")
    return boat, tuple(reader.problems)


def _bank(row: Row, boat: Boat) -> tuple[Bank | None, tuple[Problem, ...]]:
    reader = Reader("bank", row, BANK)
    name = reader.choice("chemistry")
    capacity, health = reader.value("capacity"), reader.estimate("health")
    reserve, exponent = reader.value("reserve"), reader.value("exponent")
    resistance, charge = reader.value("resistance"), reader.sure("charge")
    hours, temperature = reader.sure("rated_hours"), reader.sure("temperature")
    cranking, strings = reader.value("cranking"), round(reader.sure("strings"))
    link = Link(reader.estimate("link_run"), reader.size("link_size", boat.catalogue))
    more, wanted = more_of(reader, boat.volts), wanted_of(reader)
    if not name:
        return None, tuple(reader.problems)
    typical = CHEMISTRIES[name]
    bank = Bank(
        name,
        AmpHour(capacity) if capacity else None,
        Hour(hours),
        health,
        row.get("age", "").strip().lower() in NEW,
        Share(charge),
        Share(1 - typical.usable if reserve is None else reserve),
        Celsius(temperature),
        typical.exponent.likely if exponent is None else exponent,
        Ohm(resistance) if resistance else None,
        boat.volts,
        Amp(cranking) if cranking else None,
        strings,
        reader.choice("take_off"),
        link,
        more,
        wanted,
    )
    return bank, tuple(reader.problems)


def _inverter(row: Row, boat: Boat) -> tuple[InverterPlan | None, tuple[Problem, ...]]:
    reader = Reader("inverter", row, INVERTER)
    rating, surge = reader.value("rating"), reader.value("surge")
    idle, cutoff = reader.value("idle"), reader.value("cutoff")
    kind = reader.choice("curve")
    if rating is None:
        return None, tuple(reader.problems)
    curve = preset(kind, Watt(rating))
    if idle is not None:
        curve = replace(curve, fixed=idle / rating)
    if cutoff is None:
        cutoff = CUT_OFF_SHARE * boat.volts
    inverter = InverterPlan(
        Watt(rating),
        Watt(surge) if surge else None,
        curve,
        Volt(cutoff),
        row.get("circuit", ""),
    )
    return inverter, tuple(reader.problems)


def plan_of(document: Document) -> Plan:
    """Return the plan a document states; what cannot be read counts as not known."""
    boat, problems = _boat(document.get("boat", {}))
    loads, circuits, legs = [], [], []
    found = list(problems)
    for row in document.get("loads", []):
        load, problems = load_of(tuple(row.items()))
        loads.append(load)
        found += problems
    for row in document.get("legs", []):
        leg, problems = leg_of(tuple(row.items()), boat)
        legs.append(leg)
        found += problems
    followed = {leg.ident: leg for leg in legs}
    for row in document.get("circuits", []):
        circuit, problems = circuit_of(tuple(row.items()), boat, ways_of(row, followed))
        circuits.append(circuit)
        found += problems
    bank, problems = _bank(document.get("bank", {}), boat)
    found += problems
    start, problems = start_of(document.get("start", {}))
    found += problems
    inverter, problems = _inverter(document.get("inverter", {}), boat)
    found += problems
    seen = Reader("looks", document.get("looks", {}), LOOKS)
    stack, standing = seen.value("stack"), seen.estimate("standing", "measured")
    shore, ac_problems = shore_of(document, boat.catalogue, inverter=inverter is not None)
    sources, policy, charging_problems = sources_of(document)
    found += [*seen.problems, *charging_problems, *fed_problems(tuple(circuits)), *ac_problems]
    return Plan(
        bool(document.get("made_up")),
        boat,
        tuple(loads),
        tuple(circuits),
        tuple(legs),
        bank,
        start,
        inverter,
        Supply(boat.volts, inverter.curve if inverter else None),
        tuple(document.get("looks", {}).items()),
        stack,
        standing,
        shore,
        sources,
        policy,
        tuple(found),
    )
