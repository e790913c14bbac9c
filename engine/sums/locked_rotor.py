"""Does a stalled motor open its fuse?"""

from __future__ import annotations

from typing import Final

from engine.conductors.resistance import IACS, resistance, source_of
from engine.conductors.sizes import read_size
from engine.field import Field
from engine.finding import Step, Verdict
from engine.problem import Problem
from engine.protection.fault import cold_cable
from engine.protection.motor import STALLED, judge_stall, stalled_current
from engine.sums.inputs import RUN, SIZE_FIELD, VOLTS_FIELD
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import CURRENT, RESISTANCE, Amp, Celsius, Metre, Ohm, Volt, said

HOT: Final = Celsius(105.0)
"""Class temperature of most boat cable, °C."""

STALL: Final = Field(
    "stall_current", "Stalled current", CURRENT,
    "Of the motor at its own terminals, rotor held; often three to six times its draw.",
    above=True, least=0.0, most=5000.0,
)  # fmt: skip
CONTACTS: Final = Field(
    "contacts", "Contacts", RESISTANCE, "Float switch, switch and joints together.", "0 ohm",
    0.0, 10.0,
)  # fmt: skip
MARKED: Final = Field(
    "rating", "Protection rating", CURRENT, "What the fuse is marked.", above=True, least=0.0,
    most=5000.0,
)  # fmt: skip


def answer(inputs: Inputs) -> Outcome:
    """Return the stalled current over the rating, cold and with a hot conductor.

    Raises
    ------
    Problem
        If the size cannot be read.
    """
    try:
        size = read_size(inputs.texts["size"], "awg")
    except Problem as problem:
        raise problem.at("size") from None
    volts, stall, run = Volt(inputs["volts"]), Amp(inputs["stall_current"]), Metre(inputs["run"])
    contacts, rating = Ohm(inputs["contacts"]), Amp(inputs["rating"])
    cold = cold_cable(run, size)
    hot = Ohm(2 * run / 1000 * resistance(size, HOT))
    current = stalled_current(volts, stall, cold, contacts)
    hot_current = stalled_current(volts, stall, hot, contacts)
    judged, worst = judge_stall(current, rating), judge_stall(hot_current, rating)
    motor = f"{said(volts / stall)} Ω of the motor"
    steps = (
        Step("cable, there and back", f"{size}, plain copper at 20 °C",
             f"{said(cold * 1000)} mΩ", IACS),
        Step("stalled current", f"volts / ({motor} + cable + contacts)", f"{said(current, 4)} A",
             STALLED.source),
        Step("over the rating", "at least 1.35, better 2", said(current / rating)),
        Step("cable, hot", f"{size}, stranded and tinned, at {said(HOT)} °C",
             f"{said(hot * 1000)} mΩ", source_of(size)),
        Step("over the rating, hot", f"{said(hot_current)} A / {said(rating)} A",
             said(hot_current / rating)),
    )  # fmt: skip
    found = (
        f"{judged.words} A hot tinned conductor passes less: {said(hot_current / rating)} times. "
        f"{judged.mend}"
    ).strip()
    notes: tuple[str, ...] = ()
    if judged.verdict not in (worst.verdict, Verdict.STOP):
        notes = (f"With the conductor hot: {worst.words}",)
    return Outcome(
        {
            "current": Value(current, "A", "stalled current"),
            "ratio": Value(current / rating, "", "over the rating"),
            "verdict": Value(judged.verdict.value, "", "verdict"),
            "worst_ratio": Value(hot_current / rating, "", "over the rating, conductor hot"),
        },
        found,
        steps,
        STALLED.name,
        notes,
    )


LOCKED_ROTOR: Final = Sum(
    "locked-rotor",
    "Does a stalled motor open its fuse?",
    "A long thin conductor can keep a jammed pump's current below what opens the fuse.",
    (STALL, MARKED, RUN, SIZE_FIELD, VOLTS_FIELD, CONTACTS),
    answer,
)
