"""What is left at hand after a while?"""

from __future__ import annotations

from typing import Final

from engine.batteries.two_well import TWO_WELL as MODEL
from engine.batteries.two_well import State, Wells, most_charge, most_discharge, step
from engine.field import Field
from engine.finding import CLOSE, Step
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.sums.titles import LATE_TITLES
from engine.units import (
    CHARGE,
    CURRENT,
    FRACTION,
    RATE,
    TIME,
    Amp,
    AmpHour,
    Hour,
    PerHour,
    Share,
    said,
)

SEEPS: Final = Field(
    "rate", "Rate at which the wells level out", RATE,
    "The k of the closed form. Typical: flooded 0.376, AGM 0.325, gel 0.345 an hour.", "",
    0.001, 10.0, like="0.376 /h",
)  # fmt: skip
AT_HAND: Final = Field(
    "share",
    "Share at hand",
    FRACTION,
    "Typical: flooded 42 %, AGM 62 %, gel 52 %.",
    "",
    0.05,
    0.95,
    like="42 %",
)
FULL: Final = Field(
    "full", "Both wells when full", CHARGE, "More than the label says: by 9 to 19 % for lead.", "",
    0.01, 100000.0,
)  # fmt: skip
AVAILABLE: Final = Field("available", "At hand now", CHARGE, "", "", 0.0, 100000.0, like="92 Ah")
BOUND: Final = Field("bound", "Bound now", CHARGE, "", "", 0.0, 100000.0, like="128 Ah")
FLOW: Final = Field(
    "current", "Current", CURRENT, "Above zero on discharge, below on charge.", "",
    -5000.0, 5000.0,
)  # fmt: skip
STEP: Final = Field("step", "For how long", TIME, "", "", 0.0001, 1000.0)


def answer(inputs: Inputs) -> Outcome:
    """Return both wells after the step, and the most current for so long.

    Raises
    ------
    Problem
        If a well is said to hold more than it can.
    """
    wells = Wells(PerHour(inputs["rate"]), Share(inputs["share"]), AmpHour(inputs["full"]))
    before = State(AmpHour(inputs["available"]), AmpHour(inputs["bound"]))
    asked, time = Amp(inputs["current"]), Hour(inputs["step"])
    after, flowed = step(wells, before, asked, time)
    most, least = most_discharge(wells, before, time), most_charge(wells, before, time)
    answers = {
        "available": Value(after.available, "Ah", "at hand"),
        "bound": Value(after.bound, "Ah", "bound"),
        "most_current": Value(most, "A", "most it gives for so long"),
        "most_charge": Value(least, "A", "most it takes for so long, below zero"),
    }
    steps = (
        Step("most discharge", "the current that just empties what is at hand", f"{said(most)} A",
             MODEL),
        Step("most charge", "the current that just fills it", f"{said(least)} A", MODEL),
        Step("total", "available + bound − current × step", f"{said(after.total, 5)} Ah"),
        Step("at hand", "what is left of it, what seeps across, less what flows",
             f"{said(after.available, 5)} Ah", MODEL),
    )  # fmt: skip
    found = (
        f"After {said(time)} h at {said(flowed)} A the bank holds {said(after.total, 4)} Ah, "
        f"of which {said(after.available, 4)} Ah at hand."
    )
    notes: tuple[str, ...] = ()
    if abs(asked - flowed) > CLOSE * abs(asked):
        verb = "give" if asked > 0 else "take"
        notes = (
            f"The bank cannot {verb} {said(abs(asked))} A for so long; {said(abs(flowed))} A is "
            "the most, and was reckoned with.",
        )
    return Outcome(answers, found, steps, None, notes)


TWO_WELL: Final = Sum(
    "two-well",
    LATE_TITLES["two-well"],
    "The two-well model of a lead-acid bank: one step at one current, from any state.",
    (SEEPS, AT_HAND, FULL, AVAILABLE, BOUND, FLOW, STEP),
    answer,
)
