"""What does the inverter itself take?"""

from __future__ import annotations

from typing import Final

from engine.field import TEXT, Field
from engine.finding import Step
from engine.inverter.efficiency import CURVE, Curve, dc_watts, efficiency
from engine.plan.read_load import is_power
from engine.problem import Problem, quoted
from engine.shore.earthing import CAUTION
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import FRACTION, NUMBER, POWER, Watt, read, said

RATING: Final = Field(
    "rating", "Rating", POWER, "Continuous power on the nameplate.", above=True, least=0.0,
    most=100000.0, like="2000 W",
)  # fmt: skip
FIXED: Final = Field(
    "fixed", "Idle loss", NUMBER, "Per unit of rating: 0.010 typical.", "0.010", 0.0, 1.0
)
LINEAR: Final = Field(
    "linear", "Loss in proportion", NUMBER, "Per unit of rating: 0.04 typical.", "0.04", 0.0, 1.0
)
SQUARE: Final = Field(
    "square", "Loss by the square", NUMBER, "Per unit of rating: 0.06 typical.", "0.06", 0.0, 1.0
)
LOAD: Final = Field("load", "Load", TEXT, "In watts, or as a share of the rating: 500 W or 50 %.")
MOST_LOAD: Final = 3.0
"""Times the rating: no inverter gives more, even for a moment."""


def load_of(text: str, rating: float) -> Watt:
    """Return a load typed in watts or as a share of the rating.

    Parameters
    ----------
    text : str
        Such as ``500 W``, ``50 %`` or ``0.5``; a bare figure up to 3 is a share.
    rating : float
        Of the inverter. [W]

    Raises
    ------
    Problem
        If it cannot be read, or no inverter could give it.
    """
    if not text:
        raise Problem("load", "Load is not given.", "Enter 500 W or 50 %.")
    typed = read(text, POWER if is_power(text) else FRACTION)
    value = typed.likely
    if value is None:
        raise Problem("load", "Load is not known.", "Enter 500 W or 50 %.")
    if not is_power(text) and not (typed.bare and value > MOST_LOAD):
        value *= rating
    if not 0 <= value <= MOST_LOAD * rating:
        raise Problem(
            "load",
            f"{quoted(text)} is not a load for an inverter of {said(rating)} W.",
            f"Enter 0 to {said(MOST_LOAD * rating)} W.",
        )
    return Watt(value)


def answer(inputs: Inputs) -> Outcome:
    """Return the watts taken and the efficiency at a load.

    Raises
    ------
    Problem
        If the load cannot be read.
    """
    curve = Curve(Watt(inputs["rating"]), inputs["fixed"], inputs["linear"], inputs["square"])
    try:
        load = load_of(inputs.texts.get("load", ""), curve.rating)
    except Problem as problem:
        raise problem.at("load") from None
    taken, share = dc_watts(curve, load), efficiency(curve, load)
    steps = (
        Step("load per unit", f"{said(load)} W / rating", said(load / curve.rating)),
        Step("taken per unit", "p + fixed + linear × p + square × p²",
             said(taken / curve.rating, 5), CURVE),
        Step("efficiency", "load / taken", f"{said(share * 100)} %"),
    )  # fmt: skip
    found = f"{said(load)} W out takes {said(taken)} W from the bank: {said(share * 100)} %."
    return Outcome(
        {
            "dc_watts": Value(taken, "W", "taken from the bank"),
            "efficiency": Value(share, "share", "efficiency"),
        },
        found,
        steps,
    )


INVERTER_LOSS: Final = Sum(
    "inverter-loss",
    "What does the inverter itself take?",
    "Watts from the bank and efficiency at any load, idle included.",
    (RATING, LOAD, FIXED, LINEAR, SQUARE),
    answer,
    CAUTION,
)
