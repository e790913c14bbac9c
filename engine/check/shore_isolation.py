"""What keeps galvanic current off the safety ground, and what does it cost without?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.check.asked import Asked, fine, part_of, wrong
from engine.check.part import open_question
from engine.finding import Rule, Severity, Verdict
from engine.shore.isolation import (
    CARRIES_FAULT,
    STAYS_CLOSED,
    GreenWire,
    Isolation,
    Isolator,
    Transformer,
    green_wire,
    judge_isolator,
    transformer,
)
from engine.source import common_practice
from engine.units import Metre, Ohm, Volt, said

if TYPE_CHECKING:
    from engine.plan.shore_parts import ShorePlan

ISOLATED: Final = Rule(
    "galvanic isolation",
    "a boat that is plugged in for days keeps galvanic current off its safety ground",
    common_practice("an isolator or a transformer, never a cut"),
)
DRIVE: Final = Volt(0.35)
PATH: Final = Ohm(0.5)
"""A usual couple of zinc and a neighbour's steel, and a usual path through water."""


@dataclass(frozen=True, slots=True)
class IsolationAnswer:
    """What the choice brings: the transformer's figures, or what the green wire costs."""

    asked: Asked
    transformer: Transformer | None
    without: GreenWire


def isolation_answer(shore: ShorePlan) -> IsolationAnswer:
    """Return what is found of the isolation.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    stated, service = shore.isolated, shore.service
    found = None
    if stated.kind is Isolation.TRANSFORMER and stated.transformer and service:
        found = transformer(stated.transformer, service.volts, stated.distance or Metre(0.0))
    return IsolationAnswer(isolation_asked(shore), found, green_wire(DRIVE, PATH))


def isolation_asked(shore: ShorePlan) -> Asked:
    """Return whether the isolation is what the inlet asks for.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    stated, service, where = shore.isolated, shore.service, "shore.isolation"
    name = ISOLATED.name
    if stated.kind is None or service is None:
        text = "Say what stands in the safety ground: none, an isolator, or a transformer."
        return Asked(name, where, (open_question(ISOLATED, text),))
    if stated.kind is Isolation.NONE:
        lost = green_wire(DRIVE, PATH)
        text = (
            f"Nothing isolates the safety ground: {said(DRIVE)} V through {said(PATH)} Ω are "
            f"{said(lost.current)} A, {said(lost.zinc, 2)} kg of zinc in a year plugged in."
        )
        mend = "A galvanic isolator or an isolation transformer. Never a cut in the safety ground."
        return Asked(name, where, (wrong(ISOLATED, Verdict.SHOULD, text, mend, Severity.SHOULD),))
    if stated.kind is Isolation.TRANSFORMER:
        text = "The transformer leaves no path for galvanic current."
        if stated.transformer is None:
            text += " Enter its VA for weight and loss."
        return Asked(name, where, (fine(ISOLATED, text),))
    if stated.rating is None:
        part = open_question(CARRIES_FAULT, "Enter what the isolator is marked.")
        return Asked(name, where, (part,))
    unknown = stated.closes is None and not stated.watched
    judged = judge_isolator(
        Isolator(stated.rating, stated.closes is not False, bool(stated.watched)), service.rating
    )
    parts = [part_of(one) for one in judged]
    if not parts:
        text = f"An isolator of {said(stated.rating)} A for an inlet of {said(service.rating)} A."
        parts.append(fine(CARRIES_FAULT, text))
    if unknown:
        parts.append(open_question(STAYS_CLOSED, "Say whether it fails closed."))
    return Asked(name, where, tuple(parts))
