"""Every question asked of one circuit, and its verdict."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from engine.check.build import build, thickness
from engine.check.guard import guard
from engine.check.part import WORST_FIRST, Part
from engine.check.path import Path, whole_plan
from engine.check.placement import placement
from engine.check.readings import joints, readings
from engine.check.short_circuit import short_circuit
from engine.check.stalled import stalled
from engine.check.wire import Wire, drop, heat, wire_of, working
from engine.conductors.drop import ALLOWED, Task
from engine.conductors.sizing import Choice, least_size
from engine.finding import Verdict
from engine.units import Amp, Metre, Share

if TYPE_CHECKING:
    from engine.finding import Step
    from engine.plan.parts import Circuit, Plan


@dataclass(frozen=True, slots=True)
class CircuitAnswer:
    """What is found of one circuit."""

    circuit: Circuit
    path: Path
    wire: Wire | None
    choice: Choice | None
    parts: tuple[Part, ...]
    missing: tuple[str, ...]
    working: tuple[Step, ...]

    @property
    def weighing(self) -> tuple[Part, ...]:
        """The parts that decide its verdict."""
        return tuple(part for part in self.parts if part.weighs)

    @property
    def verdict(self) -> Verdict:
        """The gravest of its parts."""
        found = {part.verdict for part in self.weighing}
        if self.missing:
            found.add(Verdict.NOT_KNOWN)
        return next((one for one in WORST_FIRST if one in found), Verdict.NOT_KNOWN)

    @property
    def governing(self) -> str:
        """The rule behind the verdict; within limits, the one that asks for more copper."""
        for part in self.weighing:
            if part.verdict == self.verdict and part.verdict != Verdict.FINE:
                return part.rule.name
        return self.choice.governing.name if self.choice else ""


@lru_cache(maxsize=2048)
def circuit_answer(circuit: Circuit, catalogue: str, path: Path) -> CircuitAnswer:
    """Return what is found of one circuit.

    Parameters
    ----------
    circuit : Circuit
        As stated.
    catalogue : str
        The one new sizes are offered from where the circuit has none yet.
    path : Path
        What lies between it and the bank.
    """
    named = {
        "the run": circuit.run,
        "the design current": circuit.current,
        "the conductor": circuit.size,
        "the protection": circuit.rating or not circuit.guard.fitted or None,
        "the insulation": circuit.around,
    }
    missing = tuple(name for name, value in named.items() if value is None)
    run, current, around = circuit.run, circuit.current, circuit.around
    if run is None or current is None or around is None:
        parts = guard(circuit, None, path)
        return CircuitAnswer(circuit, path, None, None, tuple(parts), missing, ())
    task = Task(
        circuit.volts,
        Amp(current.likely / circuit.parallel),
        Metre(run.likely),
        Share(ALLOWED[circuit.allowed]),
    )
    size = circuit.size
    choice = least_size(size.catalogue if size else catalogue, task, around)
    if size is None or not size.counts_as:
        parts = guard(circuit, None, path)
        if size is not None:
            parts.append(thickness(circuit, size))
            missing = (*missing, f"what {size} carries, which is in no row of the table")
        return CircuitAnswer(circuit, path, None, choice, tuple(parts), missing, ())
    wire = wire_of(circuit, task, size, around)
    first = drop(circuit, wire, choice)
    parts = [
        first,
        heat(circuit, wire, choice),
        *guard(circuit, wire, path),
        *build(circuit, size, around),
        *placement(circuit, wire, path),
        *short_circuit(circuit, size, path),
        *stalled(circuit, size, path),
        *readings(circuit, wire, size, first),
        *joints(circuit, wire),
    ]
    return CircuitAnswer(
        circuit,
        path,
        wire,
        choice,
        tuple(parts),
        missing,
        working(circuit, task, wire, size, around),
    )


def answers_of(plan: Plan) -> tuple[CircuitAnswer, ...]:
    """Return what is found of every circuit of a plan.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    paths = whole_plan(plan)
    return tuple(
        circuit_answer(one, plan.boat.catalogue, paths[one.ident]) for one in plan.circuits
    )
