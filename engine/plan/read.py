"""Reads a document into a plan. Every problem is collected with its path; the rest goes on."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.conductors.carrying import Surroundings
from engine.conductors.sizes import read_size
from engine.estimate import Estimate
from engine.field import chosen, estimate_of, value_of, yes
from engine.inverter.efficiency import preset
from engine.inverter.sag import CUT_OFF_SHARE
from engine.loads.load import CONDITIONS, Load, Supply
from engine.plan.fields import BANK, BOAT, CIRCUIT, INVERTER, LOAD
from engine.plan.parts import Bank, Boat, Circuit, InverterPlan, Plan
from engine.problem import Problem, quoted
from engine.units import (
    POWER,
    Amp,
    AmpHour,
    Celsius,
    Hour,
    Metre,
    Ohm,
    Share,
    Volt,
    Watt,
    converts,
    read,
)

if TYPE_CHECKING:
    from engine.conductors.sizes import Size
    from engine.field import Field
    from engine.plan.document import Document, Row

NEW: Final = {"new", "0", "0 years", "not bought"}
"""Ages that need no test of capacity."""


class _Reader:
    """Reads the fields of one row, keeping every problem."""

    def __init__(self, where: str, row: Row, fields: dict[str, Field]) -> None:
        self.where = where
        self.row = row
        self.fields = fields
        self.problems: list[Problem] = []

    def text(self, name: str) -> str:
        return self.row.get(name, "") or self.fields[name].default

    def value(self, name: str) -> float | None:
        """Return the likely value, or None where it is unknown or cannot be read."""
        try:
            return value_of(self.fields[name], self.text(name)).likely
        except Problem as problem:
            self.problems.append(problem.at(f"{self.where}.{name}"))
            return None

    def sure(self, name: str) -> float:
        """Return the value, or the field's default where it is unknown or cannot be read."""
        value = self.value(name)
        if value is None:
            value = value_of(self.fields[name], self.fields[name].default).likely
        return value or 0.0

    def estimate(self, name: str, by: str = "") -> Estimate | None:
        try:
            return estimate_of(self.fields[name], self.text(name), by=by)
        except Problem as problem:
            self.problems.append(problem.at(f"{self.where}.{name}"))
            return None

    def choice(self, name: str) -> str:
        return chosen(self.fields[name], self.text(name))

    def yes(self, name: str) -> bool:
        try:
            return yes(self.text(name))
        except Problem as problem:
            self.problems.append(problem.at(f"{self.where}.{name}"))
            return False

    def size(self, name: str, catalogue: str) -> Size | None:
        text = self.text(name)
        if text.strip() in {"", "?"}:
            return None
        try:
            return read_size(text, catalogue if catalogue == "metric" else "")
        except Problem as problem:
            self.problems.append(problem.at(f"{self.where}.{name}"))
            return None


@lru_cache(maxsize=4096)
def is_power(text: str) -> bool:
    """Return whether a draw was typed as power rather than current.

    Examples
    --------
    >>> is_power("60 W"), is_power("4.6 A")
    (True, False)
    """
    units = [word for word in _words(text) if word]
    for unit in units:
        try:
            converts(unit, POWER)
        except Problem:
            continue
        return True
    return False


def _words(text: str) -> list[str]:
    return "".join(c if c.isalpha() else " " for c in text).split()


@lru_cache(maxsize=2048)
def _load(stated: tuple[tuple[str, str], ...]) -> tuple[Load, tuple[Problem, ...]]:
    """Return a load; a row that says the same is not read again."""
    row = dict(stated)
    reader = _Reader(f"loads.{row['id']}", row, LOAD)
    by = row.get("draw_by", "")
    draw = watts = None
    if is_power(reader.text("draw")):
        watts = _power(reader, by)
    else:
        draw = reader.estimate("draw", by)
    surge_text = reader.text("surge")
    surge = _surge(reader, watts is not None) if surge_text else None
    load = Load(
        row["id"],
        row.get("name", "") or row["id"],
        reader.choice("supply"),
        draw,
        watts,
        surge,
        tuple(reader.estimate(f"hours_{name}") for name in CONDITIONS),
        reader.estimate("duty"),
        reader.choice("window"),
        reader.yes("essential"),
        reader.yes("always_live"),
        row.get("zone", ""),
        row.get("circuit", ""),
    )
    return load, tuple(reader.problems)


def _power(reader: _Reader, by: str) -> Estimate | None:
    """Return a draw typed in watts."""
    try:
        typed = read(reader.text("draw"), POWER)
    except Problem as problem:
        reader.problems.append(problem.at(f"{reader.where}.draw"))
        return None
    low, likely, high = typed.low or 0.0, typed.likely or 0.0, typed.high or 0.0
    most = reader.fields["draw"].most * 12
    if low < 0 or high > most:
        reader.problems.append(
            Problem(
                f"{reader.where}.draw",
                f"{quoted(reader.text('draw'))} is not a power a load aboard can have.",
                f"Enter 0 to {most:.0f} W.",
            )
        )
        return None
    return Estimate(low, likely, high, by or "estimate")


def _surge(reader: _Reader, in_watts: bool) -> float | None:  # noqa: FBT001
    """Return the surge in the unit of the draw: W beside W, A beside A."""
    text = reader.text("surge")
    if in_watts != is_power(text):
        if not in_watts or any(map(str.isalpha, text)):
            unit = "watts" if in_watts else "amperes"
            reader.problems.append(
                Problem(
                    f"{reader.where}.surge",
                    f"{quoted(text)} is not in the unit of the draw.",
                    f"Enter {unit}, as the draw is.",
                )
            )
            return None
        text = f"{text} W"
    if not in_watts:
        return reader.value("surge")
    try:
        return read(text, POWER).likely
    except Problem as problem:
        reader.problems.append(problem.at(f"{reader.where}.surge"))
        return None


def _run(reader: _Reader, tape: Metre) -> Estimate | None:
    """Return the run; one typed without a range may be off by the tape's accuracy."""
    run = reader.estimate("run", reader.row.get("run_by", ""))
    if run is None or not run.certain:
        return run
    least = min(run.likely, 0.01)
    return Estimate(max(run.likely - tape, least), run.likely, run.likely + tape, run.known_by)


@lru_cache(maxsize=2048)
def _circuit(
    stated: tuple[tuple[str, str], ...], boat: Boat
) -> tuple[Circuit, tuple[Problem, ...]]:
    """Return a circuit; a row that says the same on the same boat is not read again."""
    row = dict(stated)
    reader = _Reader(f"circuits.{row['id']}", row, CIRCUIT)
    size = reader.size("size", boat.catalogue)
    around = None
    try:
        around = Surroundings(
            round(reader.sure("insulation")),
            reader.yes("engine_space"),
            round(reader.sure("bundle")),
            Celsius(reader.sure("ambient")),
        )
    except Problem as problem:
        reader.problems.append(problem.at(f"{reader.where}.insulation"))
    own = reader.value("volts")
    rating = reader.value("protection")
    circuit = Circuit(
        row["id"],
        row.get("name", "") or row["id"],
        _run(reader, boat.tape),
        reader.estimate("current", row.get("current_by", "")),
        size,
        around,
        reader.choice("allowed"),
        Volt(own) if own else boat.volts,
        Amp(rating) if rating else None,
        round(reader.sure("abreast")),
        row.get("protection_kind", ""),
        reader.yes("continuous"),
    )
    return circuit, tuple(reader.problems)


def _boat(row: Row) -> tuple[Boat, tuple[Problem, ...]]:
    reader = _Reader("boat", row, BOAT)
    boat = Boat(
        row.get("name", ""),
        Volt(reader.sure("volts")),
        Metre(reader.sure("tape")),
        reader.choice("catalogue"),
        reader.choice("month"),
        row.get("place", ""),
        row.get("revision", ""),
    )
    reader.value("people")
    return boat, tuple(reader.problems)


def _bank(row: Row, boat: Boat) -> tuple[Bank | None, tuple[Problem, ...]]:
    reader = _Reader("bank", row, BANK)
    name = reader.choice("chemistry")
    capacity, health = reader.value("capacity"), reader.estimate("health")
    reserve, exponent = reader.value("reserve"), reader.value("exponent")
    resistance, charge = reader.value("resistance"), reader.sure("charge")
    hours, temperature = reader.sure("rated_hours"), reader.sure("temperature")
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
    )
    return bank, tuple(reader.problems)


def _inverter(row: Row, boat: Boat) -> tuple[InverterPlan | None, tuple[Problem, ...]]:
    reader = _Reader("inverter", row, INVERTER)
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
    loads, circuits = [], []
    found = list(problems)
    for row in document.get("loads", []):
        load, problems = _load(tuple(row.items()))
        loads.append(load)
        found += problems
    for row in document.get("circuits", []):
        circuit, problems = _circuit(tuple(row.items()), boat)
        circuits.append(circuit)
        found += problems
    bank, problems = _bank(document.get("bank", {}), boat)
    found += problems
    inverter, problems = _inverter(document.get("inverter", {}), boat)
    found += problems
    return Plan(
        bool(document.get("made_up")),
        boat,
        tuple(loads),
        tuple(circuits),
        bank,
        inverter,
        Supply(boat.volts, inverter.curve if inverter else None),
        tuple(document.get("looks", {}).items()),
        tuple(found),
    )
