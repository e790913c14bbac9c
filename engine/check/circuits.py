"""Is each conductor enough, and does its protection fit?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.conductors.carrying import HEAT, carries, working_of_carries, working_temperature
from engine.conductors.drop import ALLOWED, DROP, K, Task, longest_run, loop_drop, rule_drop
from engine.conductors.resistance import resistance, source_of
from engine.conductors.sizing import Choice, least_size
from engine.estimate import Estimate
from engine.finding import Step, Verdict, meets
from engine.protection.window import Judgement, Window, judge, window
from engine.units import Amp, Celsius, Metre, Share, Volt, said

if TYPE_CHECKING:
    from engine.conductors.carrying import Surroundings
    from engine.conductors.sizes import Size
    from engine.finding import Rule
    from engine.plan.parts import Circuit

WORST_FIRST: Final = (
    Verdict.STOP,
    Verdict.SHOULD,
    Verdict.CANNOT_SAY,
    Verdict.NOT_KNOWN,
    Verdict.FINE,
)


@dataclass(frozen=True, slots=True)
class Part:
    """One question about a circuit: its rule, the verdict, and why."""

    rule: Rule
    verdict: Verdict
    words: str
    mend: str = ""


@dataclass(frozen=True, slots=True)
class Wire:
    """The figures of one circuit: drops in V, shares of its volts, heat in A and °C."""

    drop: Volt
    share: Estimate
    allowed: Share
    physical: Volt
    temperature: Celsius
    at_load: Volt
    carries: Amp
    window: Window


@dataclass(frozen=True, slots=True)
class CircuitAnswer:
    """What is found of one circuit."""

    circuit: Circuit
    wire: Wire | None
    choice: Choice | None
    parts: tuple[Part, ...]
    missing: tuple[str, ...]
    working: tuple[Step, ...]

    @property
    def verdict(self) -> Verdict:
        """The gravest of its parts."""
        found = {part.verdict for part in self.parts}
        if self.missing:
            found.add(Verdict.NOT_KNOWN)
        return next((one for one in WORST_FIRST if one in found), Verdict.NOT_KNOWN)

    @property
    def governing(self) -> str:
        """The rule behind the verdict; within limits, the one that asks for more copper."""
        for part in self.parts:
            if part.verdict == self.verdict and part.verdict != Verdict.FINE:
                return part.rule.name
        return self.choice.governing.name if self.choice else ""


@lru_cache(maxsize=2048)
def circuit_answer(circuit: Circuit, catalogue: str) -> CircuitAnswer:
    """Return what is found of one circuit.

    Parameters
    ----------
    circuit : Circuit
        As stated.
    catalogue : str
        The one new sizes are offered from where the circuit has none yet.
    """
    named = {
        "the run": circuit.run,
        "the design current": circuit.current,
        "the conductor": circuit.size,
        "the protection": circuit.rating,
        "the insulation": circuit.around,
    }
    missing = tuple(name for name, value in named.items() if value is None)
    run, current, around = circuit.run, circuit.current, circuit.around
    if run is None or current is None or around is None:
        return CircuitAnswer(circuit, None, None, (), missing, ())
    task = Task(
        circuit.volts, Amp(current.likely), Metre(run.likely), Share(ALLOWED[circuit.allowed])
    )
    size = circuit.size
    choice = least_size(size.catalogue if size else catalogue, task, around)
    if size is None or not size.counts_as:
        return CircuitAnswer(circuit, None, choice, (), missing, ())
    wire = _wire(circuit, task, size, around)
    parts = [_drop(circuit, wire, choice), _heat(circuit, wire, choice)]
    if circuit.rating is not None:
        parts.append(_protection(circuit.rating, circuit.abreast, wire.window))
    return CircuitAnswer(
        circuit, wire, choice, tuple(parts), missing, _working(circuit, task, wire, size, around)
    )


def _wire(circuit: Circuit, task: Task, size: Size, around: Surroundings) -> Wire:
    run, current = circuit.run, circuit.current
    assert run is not None  # noqa: S101 - the caller has both
    assert current is not None  # noqa: S101
    low, likely, high = (
        rule_drop(Amp(amperes), Metre(metres), size)
        for amperes, metres in (
            (current.low, run.low),
            (current.likely, run.likely),
            (current.high, run.high),
        )
    )
    warm = working_temperature(size, around, task.current)
    physical = loop_drop(task.current, task.run, resistance(size, warm))
    limit = carries(size, around)
    return Wire(
        likely,
        Estimate(low, likely, high).scaled(1 / task.volts),
        task.allowed,
        physical,
        warm,
        Volt(max(task.volts - physical, 0.0)),
        limit,
        window(Amp(task.current / circuit.abreast), limit, continuous=circuit.continuous),
    )


def percent(share: float, digits: int = 2) -> str:
    """Return a share as people read it.

    Parameters
    ----------
    share : float
        Of the whole. [1]
    digits : int
        Significant digits. [1]

    Examples
    --------
    >>> percent(0.0304), percent(0.1)
    ('3 %', '10 %')
    """
    return f"{said(share * 100, digits)} %"


def _drop(circuit: Circuit, wire: Wire, choice: Choice) -> Part:
    """Return the verdict on the drop, which length and current may straddle."""
    limit = percent(wire.allowed)
    share = f"drop is {percent(wire.share.likely, 3)} of the {limit} you chose"
    buy = f"Use {choice.for_drop}." if choice.for_drop else "No single conductor will do."
    if meets(wire.share.high, wire.allowed):
        return Part(DROP, Verdict.FINE, f"{share.capitalize()}.")
    if not meets(wire.share.low, wire.allowed):
        return Part(DROP, Verdict.SHOULD, f"{share.capitalize()}.", buy)
    low, high = percent(wire.share.low), percent(wire.share.high)
    assert circuit.run is not None  # noqa: S101 - there is a wire
    assert circuit.current is not None  # noqa: S101
    swing = (circuit.run.high - circuit.run.low) / 2
    why = (
        f"the run is good to ± {said(swing, 2)} m"
        if circuit.current.certain
        else "the run and the current are not sure"
    )
    words = f"{share.capitalize()}; {why}, so it may be {low} to {high}."
    return Part(DROP, Verdict.CANNOT_SAY, words, f"Measure the drop itself, end to end. {buy}")


def _heat(circuit: Circuit, wire: Wire, choice: Choice) -> Part:
    """Return the verdict on heat, which the current may straddle."""
    current = circuit.current
    assert current is not None  # noqa: S101 - there is a wire
    carries_words = f"it carries {said(wire.carries)} A here"
    asked = f"{said(current.likely)} A asked, and {carries_words}."
    buy = f"Use {choice.for_heat}." if choice.for_heat else "No single conductor will do."
    if meets(current.high, wire.carries):
        return Part(HEAT, Verdict.FINE, asked)
    if not meets(current.low, wire.carries):
        return Part(HEAT, Verdict.STOP, f"{asked} Its insulation would spoil.", buy)
    return Part(HEAT, Verdict.CANNOT_SAY, f"{asked} The current is not sure.", "Measure it.")


def _protection(rating: Amp, abreast: int, limits: Window) -> Part:
    """Return the verdict on the rating; several abreast must together not pass the conductor."""
    found: Judgement = judge(rating, limits)
    if abreast > 1 and found.verdict == Verdict.FINE:
        together = judge(Amp(rating * abreast), limits)
        found = together if together.verdict == Verdict.STOP else found
    return Part(found.rule, found.verdict, found.words, found.mend)


def _working(
    circuit: Circuit, task: Task, wire: Wire, size: Size, around: Surroundings
) -> tuple[Step, ...]:
    by_rule = f"{said(wire.drop)} V, {percent(wire.share.likely, 3)} of {said(task.volts)} V"
    ohms = resistance(size, wire.temperature)
    least, most = said(wire.window.least), said(wire.window.most)
    each = " / number side by side" if circuit.abreast > 1 else ""
    factor = " / 0.8" if circuit.continuous else ""
    return (
        Step("loop", "run × 2", f"{said(task.loop)} m, {said(task.loop / 0.3048)} ft"),
        Step(
            "drop by the rule",
            f"{K} × {said(task.current)} A × loop in ft / {said(size.circular_mils, 5)} cmil",
            by_rule,
            DROP.source,
        ),
        Step(
            "drop by physics",
            f"loop × {said(ohms)} Ω/km at {said(wire.temperature)} °C × current",
            f"{said(wire.physical)} V",
            source_of(size),
        ),
        Step(
            "longest run within the class",
            "the rule turned round",
            f"{said(longest_run(task, size))} m one way",
        ),
        *working_of_carries(size, around),
        Step("protection window", f"current{each}{factor} to what it carries",
             f"{least} to {most} A"),
    )  # fmt: skip
