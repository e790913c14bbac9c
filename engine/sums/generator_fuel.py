"""What does a generator burn?"""

from __future__ import annotations

from typing import Final

from engine.field import TEXT, Field
from engine.finding import Step
from engine.plan.read_load import is_power
from engine.problem import Problem
from engine.shore.earthing import CAUTION
from engine.shore.generator import (
    EXHAUST_CAUTION,
    FUEL,
    WORKS,
    charted,
    fuel,
    works_hard_enough,
)
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import FRACTION, POWER, TIME, Watt, read, said

RATING: Final = Field(
    "rating", "Rating", POWER, "Continuous, on its plate: 8 kW.", above=True, least=0.0,
    most=200000.0, like="8 kW",
)  # fmt: skip
LOAD: Final = Field("load", "Load", TEXT, "In watts, or as a share of the rating: 4 kW or 50 %.")
HOURS: Final = Field(
    "hours", "Hours", TIME, "If the whole amount is asked.", above=True, least=0.0, most=10000.0,
    needed=False,
)  # fmt: skip
MEND: Final = "Enter 4 kW or 50 %."


def load_of(text: str, rating: Watt) -> Watt:
    """Return a load typed in watts or as a share of the rating.

    Parameters
    ----------
    text : str
        Such as ``4 kW``, ``50 %`` or ``0.5``; a bare figure up to 1 is a share.
    rating : Watt
        Of the generator. [W]

    Raises
    ------
    Problem
        If it cannot be read.
    """
    typed = read(text, POWER if is_power(text) else FRACTION)
    if typed.likely is None:
        raise Problem("load", "Load is not given.", MEND)
    if is_power(text) or (typed.bare and typed.likely > 1):
        return Watt(typed.likely)
    return Watt(typed.likely * rating)


def answer(inputs: Inputs) -> Outcome:
    """Return litres an hour by the published chart, and for the hours asked.

    Raises
    ------
    Problem
        If the load cannot be read or is more than the rating.
    """
    rating = Watt(inputs["rating"])
    try:
        load = load_of(inputs.texts["load"], rating)
        burnt = fuel(rating, load)
    except Problem as problem:
        raise problem.at("load") from None
    hours = inputs.numbers.get("hours")
    each = burnt / (load / 1000) if load > 0 else None
    answers = {
        "fuel": Value(burnt, "L/h", "fuel"),
        "per_kwh": Value(each, "L/kWh", "fuel for each kWh"),
    }
    steps = [
        Step("load", f"{said(load)} W / {said(rating)} W", f"{said(load / rating * 100)} %"),
        Step("fuel", "by the chart at that share and rating", f"{said(burnt)} L/h", FUEL),
    ]
    found = f"{said(load)} W from {said(rating)} W burn about {said(burnt)} L/h."
    if hours is not None:
        answers["litres"] = Value(burnt * hours, "L", "fuel in all")
        steps.append(Step("in all", f"fuel × {said(hours)} h", f"{said(burnt * hours)} L"))
        found = f"{found} In {said(hours)} h that is {said(burnt * hours)} L."
    notes = []
    if not charted(rating, load):
        notes.append("Beyond the chart, which has 8 and 20 kW: its lines are carried on.")
    if not works_hard_enough(rating, load):
        notes.append(f"Under 30 %: {WORKS.words}.")
    return Outcome(answers, found, tuple(steps), None, tuple(notes))


GENERATOR_FUEL: Final = Sum(
    "generator-fuel",
    "What does a generator burn?",
    "Litres an hour of a diesel generator at a load, by a published chart.",
    (RATING, LOAD, HOURS),
    answer,
    CAUTION,
    exhaust=EXHAUST_CAUTION,
)
