"""Is there a protection, and does its rating suit load, conductor and label?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.part import Part
from engine.finding import Rule, Severity, Verdict, Who, meets
from engine.protection.motor import MOTOR_LINE, motor_limit
from engine.protection.placement import STARTER
from engine.protection.series import SERIES, ratings_of, smallest_in
from engine.protection.window import CONTINUOUS, HOLDS, PROTECTS, judge
from engine.source import Source, common_practice
from engine.units import Amp, said

if TYPE_CHECKING:
    from engine.check.path import Path
    from engine.check.wire import Wire
    from engine.plan.parts import Circuit
    from engine.protection.window import Window

FITTED: Final = Rule(
    "protection fitted",
    "every conductor that is not the starter's has a protection where its power comes from",
    Source("33 CFR", "in force", "183.455(a) and (b)"),
)
FED: Final = Rule(
    "fed",
    "every circuit hangs on the bank by circuits that are in the plan",
    common_practice("one tree from the bank to every load"),
)
LABEL: Final = Rule(
    "label",
    "a rating is at most what the gear's own label asks for",
    Source("maker's label", "on the gear", "largest protection"),
)


def guard(circuit: Circuit, wire: Wire | None, path: Path) -> list[Part]:
    """Return what is found of a circuit's protection by its rating alone.

    Parameters
    ----------
    circuit : Circuit
        As stated.
    wire : Wire or None
        None where run, current or conductor is not known.
    path : Path
        Feeders on the way may protect it.
    """
    parts = []
    if path.lost:
        mend = "Enter what feeds it, or the bank."
        parts.append(Part(FED, Verdict.STOP, path.lost, mend, Severity.BEFORE_LEAVING))
    if not circuit.guard.fitted:
        return [*parts, _unfitted(circuit, wire, path)]
    if circuit.rating is None:
        return parts
    if wire is not None:
        parts.append(_window(circuit, circuit.rating, wire, main=is_main(circuit, path)))
    if circuit.feeds == "motor" and circuit.current and circuit.guard.label_most is None:
        parts += _motor(circuit, circuit.rating, Amp(circuit.current.likely))
    most = circuit.guard.label_most
    if most is not None and not meets(circuit.rating, most):
        words = f"{said(circuit.rating)} A where its label asks for {said(most)} A at most."
        mend = f"Fit {said(most)} A: the gear may burn before a larger one opens."
        parts.append(Part(LABEL, Verdict.STOP, words, mend, Severity.BEFORE_LEAVING))
    return parts


def _unfitted(circuit: Circuit, wire: Wire | None, path: Path) -> Part:
    if circuit.feeds == "starter":
        words = (
            "The starter's conductor may go without: it is exempt, since a fuse that starts an "
            "engine protects little. Its heat and drop still count."
        )
        return Part(STARTER, Verdict.FINE, words)
    limit = wire.carries if wire else None
    apart = circuit.guard.self_limiting and not circuit.on_bank
    if apart and wire is not None and meets(circuit_high(circuit), wire.carries):
        words = "None, but its source limits its own current to what the conductor carries."
        return Part(PROTECTS, Verdict.FINE, words)
    if limit is not None and path.guard is not None and meets(path.guard, limit):
        words = f"None of its own; the {said(path.guard)} A of {path.guarded_by} protects it."
        return Part(PROTECTS, Verdict.FINE, words)
    above = ""
    if limit is not None and path.guard is not None:
        above = (
            f" The {said(path.guard)} A of {path.guarded_by} is more than the {said(limit)} A it "
            "carries."
        )
    fit = "Do not use it until it has one close to its source"
    if wire is not None and not wire.window.empty:
        fit += f", {said(wire.window.least)} to {said(wire.window.most)} A"
    words = f"No protection: if it shorts, nothing opens.{above}"
    return Part(FITTED, Verdict.STOP, words, f"{fit}.", who=Who.TWO)


def circuit_high(circuit: Circuit) -> float:
    """Return the most current a circuit may be asked for. [A]."""
    return circuit.current.high if circuit.current else 0.0


def is_main(circuit: Circuit, path: Path) -> bool:
    """Return whether a protection is a main: of a bus or panel, or on the bank itself."""
    return circuit.feeds == "bus" or path.at_bank


def _window(circuit: Circuit, rating: Amp, wire: Wire, *, main: bool) -> Part:
    """Return the verdict on the rating; several abreast must together not pass the conductor."""
    guard, current = circuit.guard, circuit.current
    series = guard.series if guard.abreast == 1 else ""
    found = judge(rating, wire.window, series=series, main=main)
    if guard.abreast > 1:
        together = judge(Amp(rating * guard.abreast), wire.window)
        found = together if together.verdict == Verdict.STOP else found
    mend = found.mend
    if found.verdict != Verdict.FINE:
        mend = f"{mend} {_standard(wire.window, guard.series)}".strip()
    if found.rule is HOLDS and circuit.continuous:
        mend += " If it never runs for three hours, untick that: then the load itself counts."
    assert current is not None  # noqa: S101 - there is a wire
    at_worst = current.high / guard.abreast / (CONTINUOUS if circuit.continuous else 1.0)
    if found.verdict == Verdict.FINE and not meets(at_worst, rating):
        words = f"{said(rating)} A; the current is not sure, and at worst asks for "
        words += f"{said(at_worst)} A."
        return Part(HOLDS, Verdict.CANNOT_SAY, words, "Measure the current.")
    return Part(found.rule, found.verdict, found.words, mend)


def _standard(limits: Window, series: str) -> str:
    """Return the standard rating to buy, or that there is none."""
    if series not in SERIES or limits.empty:
        return ""
    fitting = smallest_in(limits, series)
    if fitting is None:
        return f"No {series} rating lies between: a thicker conductor widens it."
    return f"Of {series}, {said(fitting)} A."


def _motor(circuit: Circuit, rating: Amp, current: Amp) -> list[Part]:
    """Return the finding that a motor's protection is larger than its line, if so."""
    limit = motor_limit(current)
    series = circuit.guard.series if circuit.guard.series in SERIES else "magnetic breaker"
    above = next((one for one in ratings_of(series) if meets(limit, one)), limit)
    if meets(rating, above):
        return []
    words = (
        f"{said(rating)} A on a motor of {said(current)} A, where 125 % of it, or the next "
        f"standard rating, {said(above)} A, is the most."
    )
    mend = "Enter what the motor's label asks for, or fit that."
    return [Part(MOTOR_LINE, Verdict.SHOULD, words, mend)]
