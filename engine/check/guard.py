"""Is there a protection, and does its rating suit load, conductor and label?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.part import Part
from engine.finding import Rule, Severity, Verdict, Who, meets
from engine.protection.placement import STARTER
from engine.protection.window import PROTECTS, judge
from engine.source import Source
from engine.units import Amp, said

if TYPE_CHECKING:
    from engine.check.path import Path
    from engine.check.wire import Wire
    from engine.plan.parts import Circuit

FITTED: Final = Rule(
    "protection fitted",
    "every conductor that is not the starter's has a protection where its power comes from",
    Source("33 CFR", "in force", "183.455(a) and (b)"),
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
    if not circuit.guard.fitted:
        return [_unfitted(circuit, wire, path)]
    if circuit.rating is None:
        return []
    parts = []
    if wire is not None:
        parts.append(_window(circuit, circuit.rating, wire))
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


def _window(circuit: Circuit, rating: Amp, wire: Wire) -> Part:
    """Return the verdict on the rating; several abreast must together not pass the conductor."""
    side = circuit.guard.abreast
    main = circuit.feeds == "bus"
    found = judge(rating, wire.window, series=circuit.guard.series, main=main)
    if side > 1 and found.verdict == Verdict.FINE:
        together = judge(Amp(rating * side), wire.window)
        found = together if together.verdict == Verdict.STOP else found
    return Part(found.rule, found.verdict, found.words, found.mend)
