"""The figures of one run: drop, heat, and what its protection may be marked."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.check.part import Part
from engine.conductors.carrying import HEAT, carries, working_of_carries, working_temperature
from engine.conductors.drop import DROP, K, Task, longest_run, loop_drop, rule_drop
from engine.conductors.resistance import resistance, source_of
from engine.estimate import Estimate
from engine.finding import Step, Verdict, meets
from engine.protection.window import Window, window
from engine.units import Amp, Celsius, Metre, Share, Volt, said

if TYPE_CHECKING:
    from engine.conductors.carrying import Surroundings
    from engine.conductors.sizes import Size
    from engine.conductors.sizing import Choice
    from engine.plan.parts import Circuit


@dataclass(frozen=True, slots=True)
class Wire:
    """The figures of one circuit: drops in V, shares of its volts, heat in A and °C.

    ``copper`` and ``joints`` are the two parts of ``physical``, V; ``carries`` is for all
    conductors side by side.
    """

    drop: Volt
    share: Estimate
    allowed: Share
    copper: Volt
    joints: Volt
    temperature: Celsius
    at_load: Volt
    carries: Amp
    window: Window

    @property
    def physical(self) -> Volt:
        """Volts lost by physics, copper and joints."""
        return Volt(self.copper + self.joints)


def wire_of(circuit: Circuit, task: Task, size: Size, around: Surroundings) -> Wire:
    """Return the figures of a circuit.

    Parameters
    ----------
    circuit : Circuit
        With a run and a current.
    task : Task
        For one of its conductors side by side.
    size : Size
        In the carrying table.
    around : Surroundings
        Where it lives.
    """
    run, current = circuit.run, circuit.current
    assert run is not None  # noqa: S101 - the caller has both
    assert current is not None  # noqa: S101
    side = circuit.parallel
    low, likely, high = (
        rule_drop(Amp(amperes / side), Metre(metres), size)
        for amperes, metres in (
            (current.low, run.low),
            (current.likely, run.likely),
            (current.high, run.high),
        )
    )
    warm = working_temperature(size, around, task.current)
    warm = Celsius(min(warm, around.insulation))  # beyond it the verdict on heat says stop
    copper = loop_drop(task.current, task.run, resistance(size, warm))
    joints = Volt((circuit.joints or 0.0) * current.likely)
    limit = Amp(carries(size, around) * side)
    return Wire(
        likely,
        Estimate(low, likely, high).scaled(1 / task.volts),
        task.allowed,
        copper,
        joints,
        warm,
        Volt(max(task.volts - copper - joints, 0.0)),
        limit,
        window(Amp(current.likely / circuit.guard.abreast), limit, continuous=circuit.continuous),
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


def drop(circuit: Circuit, wire: Wire, choice: Choice) -> Part:
    """Return the verdict on the drop, which length and current may straddle.

    Parameters
    ----------
    circuit : Circuit
        With a wire.
    wire : Wire
        Its figures.
    choice : Choice
        What to buy.
    """
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


def heat(circuit: Circuit, wire: Wire, choice: Choice) -> Part:
    """Return the verdict on heat, which the current may straddle.

    Parameters
    ----------
    circuit : Circuit
        With a wire.
    wire : Wire
        Its figures.
    choice : Choice
        What to buy.
    """
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


def working(
    circuit: Circuit, task: Task, wire: Wire, size: Size, around: Surroundings
) -> tuple[Step, ...]:
    """Return how the figures were reached."""
    by_rule = f"{said(wire.drop)} V, {percent(wire.share.likely, 3)} of {said(task.volts)} V"
    ohms = resistance(size, wire.temperature)
    least, most = said(wire.window.least), said(wire.window.most)
    each = " / number side by side" if circuit.guard.abreast > 1 else ""
    shared = f" each, {circuit.parallel} side by side" if circuit.parallel > 1 else ""
    factor = " / 0.8" if circuit.continuous else ""
    return (
        Step("loop", "run × 2", f"{said(task.loop)} m, {said(task.loop / 0.3048)} ft"),
        Step(
            "drop by the rule",
            f"{K} × {said(task.current)} A{shared} × loop in ft / "
            f"{said(size.circular_mils, 5)} cmil",
            by_rule,
            DROP.source,
        ),
        Step(
            "drop by physics",
            f"loop × {said(ohms)} Ω/km at {said(wire.temperature)} °C × current",
            f"{said(wire.copper)} V",
            source_of(size),
        ),
        *_joint_step(circuit, wire),
        Step(
            "longest run within the class",
            "the rule turned round",
            f"{said(longest_run(task, size))} m one way",
        ),
        *working_of_carries(size, around),
        Step("protection window", f"current{each}{factor} to what it carries",
             f"{least} to {most} A"),
    )  # fmt: skip


def _joint_step(circuit: Circuit, wire: Wire) -> tuple[Step, ...]:
    if not circuit.joints:
        return ()
    formula = f"{said(circuit.joints * 1000)} mΩ × current"
    return (Step("joints and contacts", formula, f"{said(wire.joints)} V"),)
