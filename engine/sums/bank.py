"""How large must the bank be?"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from engine.batteries.sizing import Need, worksheet
from engine.field import Field
from engine.plan.start_fields import BANK_MORE, DAILY_HELP
from engine.sums.inputs import DAILY
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.sums.titles import LATE_TITLES
from engine.units import CURRENT, FRACTION, NUMBER, Amp, AmpHour, Share, said

SPELL: Final = replace(BANK_MORE["days_wanted"], name="days", default="")
DEPTH: Final = Field(
    "depth", "Deepest in the spell", FRACTION, "Half for lead-acid, 80 % for lithium.", "",
    0.05, 1.0, like="50 %",
)  # fmt: skip
DAILY_DEPTH: Final = replace(BANK_MORE["daily_depth"], help=DAILY_HELP, like="20 %")
END_OF_LIFE: Final = replace(BANK_MORE["end_of_life"], default="", like="80 %")
WARMTH: Final = Field(
    "temperature_factor", "Factor for temperature", NUMBER,
    "Of the cell size, lead-acid: 1 at 25 °C, 1.11 at 15.6, 1.19 at 10, 1.30 at 4.4.", "1",
    0.9, 3.0,
)  # fmt: skip
MARGIN: Final = replace(BANK_MORE["margin"], default="", like="1.1")
LARGEST: Final = Field(
    "largest_current", "Largest running current", CURRENT, "The most that runs at one time.", "",
    0.01, 5000.0, like="25 A",
)  # fmt: skip


def answer(inputs: Inputs) -> Outcome:
    """Return the capacity by the sizing worksheet, with each of its three demands."""
    need = Need(
        AmpHour(inputs["daily"]),
        inputs["days"],
        Share(inputs["depth"]),
        Share(inputs["daily_depth"]),
        Share(inputs["end_of_life"]),
        Amp(inputs["largest_current"]),
        inputs["temperature_factor"],
        inputs["margin"],
    )
    sheet = worksheet(need)
    depth, daily_depth, age = (one.least for one in sheet.demands)
    answers = {
        "capacity": Value(sheet.capacity, "Ah", "capacity"),
        "hour_rate": Value(sheet.hour_rate, "h", "at this hour rate"),
        "unadjusted": Value(sheet.unadjusted, "Ah", "the spell's use"),
        "by_depth": Value(depth, "Ah", "by depth in the spell"),
        "by_daily_depth": Value(daily_depth, "Ah", "by depth in a day"),
        "by_age": Value(age, "Ah", "by age"),
    }
    rule = sheet.governing.rule.name
    found = (
        f"{said(sheet.capacity)} Ah at the {said(sheet.hour_rate)} h rate: {rule} asks for most, "
        f"{said(sheet.governing.least)} Ah before temperature and margin."
    )
    return Outcome(answers, found, sheet.working, rule)


BANK: Final = Sum(
    "bank",
    LATE_TITLES["bank"],
    "By the sizing worksheet: the greatest of three demands, then temperature and margin.",
    (DAILY, SPELL, DEPTH, DAILY_DEPTH, END_OF_LIFE, WARMTH, MARGIN, LARGEST),
    answer,
)
