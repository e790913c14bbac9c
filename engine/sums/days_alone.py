"""How many days does the bank last without charging?"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from engine.batteries.sizing import days_alone
from engine.field import Field
from engine.finding import Step
from engine.sums.inputs import CAPACITY, DAILY, USABLE
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.sums.titles import LATE_TITLES
from engine.units import CHARGE, FRACTION, AmpHour, Share, said

USED: Final = replace(USABLE, default="", least=0.05, above=False, like="50 %")
HEALTH: Final = Field(
    "health", "Health", FRACTION, "Tested capacity over the label's; 100 % when new.", "100 %",
    0.05, 1.2,
)  # fmt: skip
INCOME: Final = Field(
    "income", "Charge that comes in each day", CHARGE, "From sun or wind; none to be alone.",
    "0 Ah", 0.0, 100000.0,
)  # fmt: skip


def answer(inputs: Inputs) -> Outcome:
    """Return the days from full to the reserve."""
    daily, income = inputs["daily"], inputs["income"]
    capacity, usable, health = (
        AmpHour(inputs["capacity"]), Share(inputs["usable"]), Share(inputs["health"])
    )  # fmt: skip
    stored = capacity * health * usable
    days = days_alone(capacity, usable, health, AmpHour(daily - income))
    steps = (
        Step("to be used", "capacity × health × usable", f"{said(stored)} Ah"),
        Step("net use", "daily − what comes in", f"{said(daily - income)} Ah a day"),
        Step("days", "to be used / net use", f"{said(days)}" if days else "cannot say"),
    )
    answers = {"days": Value(days, "days", "days")}
    if days is None:
        found = (
            f"No limit by this sum: {said(income)} Ah come in each day and {said(daily)} Ah are "
            "used. Grey days set the limit, not the mean."
        )
        return Outcome(answers, found, steps)
    found = f"{said(days)} days: {said(stored)} Ah at {said(daily - income)} Ah a day."
    return Outcome(answers, found, steps)


DAYS_ALONE: Final = Sum(
    "days-alone",
    LATE_TITLES["days-alone"],
    "From full down to the reserve, at a steady day's use.",
    (DAILY, CAPACITY, USED, HEALTH, INCOME),
    answer,
)
