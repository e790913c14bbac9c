"""What conductor does a run need?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.conductors.carrying import HEAT, carries, working_of_carries, working_temperature
from engine.conductors.drop import DROP as DROP_RULE
from engine.conductors.drop import FOOT, PHYSICS, K, Task, loop_drop, rule_drop, square_mm_of
from engine.conductors.resistance import resistance, source_of
from engine.conductors.sizes import METRIC, Size, read_size
from engine.conductors.sizing import Choice, least_size
from engine.field import TEXT, Field
from engine.finding import Step, meets
from engine.problem import Problem
from engine.protection.window import window
from engine.sums.inputs import (
    AMBIENT,
    BUNDLE,
    CURRENT_FIELD,
    ENGINE,
    INSULATION,
    RUN,
    VOLTS_FIELD,
    catalogue,
    surroundings_of,
)
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import FRACTION, Amp, Metre, Share, Volt, said

if TYPE_CHECKING:
    from engine.conductors.carrying import Surroundings

ALLOWED: Final = Field(
    "allowed", "Drop allowed", FRACTION,
    "3 % for panel feeds, navigation lights, pumps and electronics; 10 % for the rest.", "3 %",
    0.0, 0.5, above=True,
)  # fmt: skip
IN_HAND: Final = Field(
    "in_hand", "Conductor in hand", TEXT, "If you have one already: 14 AWG, 14 SAE or 2.5 mm2."
)
TOO_THICK: Final = (
    "No single conductor of this catalogue is thick enough. Shorten the run, move the source "
    "nearer, raise the system volts, or ask a person of the trade about conductors in parallel."
)


def answer(inputs: Inputs) -> Outcome:
    """Return the sizes for drop and heat, which governs, and what the chosen one does."""
    task = Task(
        Volt(inputs["volts"]),
        Amp(inputs["current"]),
        Metre(inputs["run"]),
        Share(inputs["allowed"]),
    )
    around = surroundings_of(inputs)
    choice = least_size(inputs.texts["catalogue"], task, around)
    size = choice.size
    answers = {
        "size": Value(_name(size), label="size to buy"),
        "size_for_drop": Value(_name(choice.for_drop), label="least for the drop"),
        "size_for_heat": Value(_name(choice.for_heat), label="least for heat"),
        "circular_mils": Value(choice.circular_mils, "cmil", "copper needed for the drop"),
    }
    steps = _asked(task, choice, inputs.texts["catalogue"])
    if size is None:
        answers |= {
            "drop": Value(None, "V", "drop"),
            "share": Value(None, "share", "share of the volts"),
            "carries": Value(None, "A", "carries"),
        }
        return Outcome(answers, TOO_THICK, steps, choice.governing.name, (TOO_THICK,))
    by_rule = rule_drop(task.current, task.run, size)
    warm = working_temperature(size, around, task.current)
    physical = loop_drop(task.current, task.run, resistance(size, warm))
    limit = carries(size, around)
    fuse = window(task.current, limit)
    answers |= {
        "drop": Value(by_rule, "V", "drop, by the rule"),
        "share": Value(by_rule / task.volts, "share", "share of the volts, by the rule"),
        "carries": Value(limit, "A", "carries"),
        "working_temperature": Value(warm, "°C", "the copper runs at"),
        "working_drop": Value(physical, "V", "drop, by physics at that temperature"),
        "working_share": Value(physical / task.volts, "share", "share, by physics"),
        "volts_at_load": Value(task.volts - physical, "V", "volts at the load"),
        "protection_least": Value(fuse.least, "A", "protection, at least"),
        "protection_most": Value(fuse.most, "A", "protection, at most"),
    }
    steps += (
        *working_of_carries(size, around),
        Step(
            "drop by the rule",
            f"{K} × {said(task.current)} A × loop in ft / {said(size.circular_mils, 5)} cmil",
            f"{said(by_rule)} V, {said(by_rule / task.volts * 100)} % of {said(task.volts)} V",
            DROP_RULE.source,
        ),
        Step(
            "drop by physics",
            f"2 × run × {said(resistance(size, warm))} Ω/km at {said(warm)} °C × current",
            f"{said(physical)} V, {said(physical / task.volts * 100)} %",
            source_of(size),
        ),
        Step("volts at the load", "nominal volts − drop by physics",
             f"{said(task.volts - physical, 4)} V", PHYSICS),
    )  # fmt: skip
    found = (
        f"{size}: {choice.governing.name} governs. It loses "
        f"{said(by_rule / task.volts * 100)} % by the rule and carries {said(limit)} A. "
        f"Protection {said(fuse.least)} to {said(fuse.most)} A. "
        f"There and back {said(task.loop)} m, {said(task.loop / FOOT)} ft."
    )
    if inputs.texts["in_hand"]:
        word, hand = _in_hand(inputs.texts["in_hand"], task, around)
        found = f"{hand} {found}"
        answers["in_hand"] = Value(word, label="conductor in hand")
    return Outcome(answers, found, steps, choice.governing.name)


def _in_hand(text: str, task: Task, around: Surroundings) -> tuple[str, str]:
    """Return whether the conductor in hand is enough, and the sentence that says why."""
    try:
        size = read_size(text)
        limit = carries(size, around)
    except Problem as problem:
        raise problem.at("in_hand") from None
    share = rule_drop(task.current, task.run, size) / task.volts
    lost = f"{said(share * 100)} % where {said(task.allowed * 100)} % may be lost"
    too_little = [
        rule.name
        for rule, kept in (
            (DROP_RULE, meets(share, task.allowed)),
            (HEAT, meets(task.current, limit)),
        )
        if not kept
    ]
    if too_little:
        why = " and ".join(too_little)
        words = (
            f"{size} in hand is not enough, by {why}: it loses {lost}, and carries {said(limit)} A."
        )
        return f"not enough, by {why}", words
    fuse = window(task.current, limit)
    marked = f"protection {said(fuse.least)} to {said(fuse.most)} A"
    return (
        "enough",
        f"{size} in hand is enough: it loses {lost}, carries {said(limit)} A; {marked}.",
    )


def _name(size: Size | None) -> str | None:
    return None if size is None else str(size)


def _asked(task: Task, choice: Choice, chosen: str) -> tuple[Step, ...]:
    """Return what each rule asks for."""
    needed = choice.circular_mils
    copper = f"{said(needed, 5)} cmil"
    if chosen == METRIC:
        copper += f", {said(square_mm_of(needed))} mm²"
    return (
        Step("loop", "run × 2", f"{said(task.loop)} m, {said(task.loop / FOOT)} ft"),
        Step("volts that may be lost", "system volts × drop allowed",
             f"{said(task.volts_allowed)} V"),
        Step("copper for the drop", f"{K} × current × loop in ft / volts that may be lost", copper,
             DROP_RULE.source),
        Step("least for the drop", "first size with that much copper",
             _name(choice.for_drop) or "none"),
        Step("least for heat", "first size that carries the current",
             _name(choice.for_heat) or "none", HEAT.source),
    )  # fmt: skip


CONDUCTOR: Final = Sum(
    "conductor",
    "What conductor for a run?",
    "Least size for the drop and for heat, and which of the two governs.",
    (
        CURRENT_FIELD, RUN, ALLOWED, IN_HAND, VOLTS_FIELD, catalogue("sae"), INSULATION, ENGINE,
        BUNDLE, AMBIENT,
    ),
    answer,
)  # fmt: skip
