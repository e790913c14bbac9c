"""How many volts does a run lose?"""

from __future__ import annotations

from typing import Final

from engine.conductors.drop import DROP as DROP_RULE
from engine.conductors.drop import K, loop_drop, rule_drop
from engine.conductors.resistance import resistance, source_of
from engine.conductors.sizes import read_size
from engine.field import Field
from engine.finding import Step
from engine.problem import Problem
from engine.sums.inputs import CURRENT_FIELD, RUN, SIZE_FIELD, VOLTS_FIELD, catalogue
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import TEMPERATURE, Amp, Celsius, Metre, said

COPPER: Final = Field(
    "temperature", "Copper's temperature", TEMPERATURE,
    "20 °C when cold; a loaded conductor in an engine space may reach 75.", "20 degC", -60.0, 250.0,
)  # fmt: skip


def answer(inputs: Inputs) -> Outcome:
    """Return the drop by physics and by the compliance rule, which are two answers.

    Raises
    ------
    Problem
        If the size cannot be read.
    """
    try:
        size = read_size(inputs.texts["size"], inputs.texts["catalogue"])
    except Problem as problem:
        raise problem.at("size") from None
    volts, current, run = inputs["volts"], Amp(inputs["current"]), Metre(inputs["run"])
    ohms = resistance(size, Celsius(inputs["temperature"]))
    lost, by_rule = loop_drop(current, run, ohms), rule_drop(current, run, size)
    answers = {
        "drop": Value(lost, "V", "drop, by physics"),
        "share": Value(lost / volts, "share", "share of the volts"),
        "volts_at_load": Value(max(volts - lost, 0.0), "V", "volts at the load"),
        "rule_drop": Value(by_rule, "V", "drop, by the compliance rule"),
    }
    steps = (
        Step("loop", "run × 2", f"{said(2 * run)} m, {said(2 * run / 0.3048)} ft"),
        Step("resistance", f"{size}, stranded and tinned, at {said(inputs['temperature'])} °C",
             f"{said(ohms)} Ω/km", source_of(size)),
        Step("drop by physics", "loop × resistance × current", f"{said(lost)} V"),
        Step("drop by the rule",
             f"{K} × current × loop in ft / {said(size.circular_mils, 5)} cmil",
             f"{said(by_rule)} V, {said(by_rule / volts * 100)} %", DROP_RULE.source),
    )  # fmt: skip
    found = (
        f"{size} loses {said(lost)} V of {said(volts)} V, {said(lost / volts * 100)} %; "
        f"by the compliance rule {said(by_rule / volts * 100)} %. "
        f"There and back {said(2 * run)} m, {said(2 * run / 0.3048)} ft."
    )
    notes: tuple[str, ...] = ()
    if lost >= volts:
        notes = ("This conductor cannot pass that current at these volts: all of them are lost.",)
    return Outcome(answers, found, steps, None, notes)


DROP: Final = Sum(
    "drop",
    "How many volts does a run lose?",
    "By physics with the real conductor, and by the compliance rule beside it.",
    (CURRENT_FIELD, RUN, SIZE_FIELD, VOLTS_FIELD, catalogue("awg"), COPPER),
    answer,
)
