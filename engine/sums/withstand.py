"""Does a conductor bear a short circuit?"""

from __future__ import annotations

from typing import Final

from engine.conductors.sizes import read_size
from engine.conductors.withstand import ADIABATIC, BOAT_CABLE, WITHSTANDS, energy, heat, k_of, limit
from engine.field import Field
from engine.finding import Step, meets
from engine.problem import Problem
from engine.sums.inputs import SIZE_FIELD
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import CURRENT, TEMPERATURE, Amp, Celsius, Kind, said

SHORT_TIME: Final = Kind("time", "second", "s", "0.1 s")

FAULT_CURRENT: Final = Field(
    "current", "Fault current", CURRENT, "Into a dead short.", above=True, least=0.0,
    most=1000000.0,
)  # fmt: skip
OPENS: Final = Field(
    "time", "Time until it opens", SHORT_TIME, "At that current, by the protection's papers.",
    above=True, least=0.0, most=3600.0,
)  # fmt: skip
INITIAL: Final = Field(
    "initial", "Copper before the fault", TEMPERATURE, "As hot as the insulation's class allows.",
    f"{said(BOAT_CABLE[0])} degC", -60.0, 400.0,
)  # fmt: skip
FINAL: Final = Field(
    "final", "Most the insulation bears", TEMPERATURE, "For seconds: PVC 160 °C, XLPE 250 °C.",
    f"{said(BOAT_CABLE[1])} degC", -60.0, 400.0,
)  # fmt: skip
TOO_LONG: Final = (
    "Over 5 s the copper loses heat, and the conductor bears more than this limit says; judge it "
    "by what it carries."
)


def _holds(*, holds: bool, brief: bool) -> str | None:
    """Return yes or no; None beyond the time in which heat cannot leave."""
    if holds:
        return "yes"
    return "no" if brief else None


def answer(inputs: Inputs) -> Outcome:
    """Return the heat of the fault and the heat the conductor bears.

    Raises
    ------
    Problem
        If the size cannot be read, or the temperatures are out of order.
    """
    try:
        size = read_size(inputs.texts["size"], "awg")
    except Problem as problem:
        raise problem.at("size") from None
    ends = Celsius(inputs["initial"]), Celsius(inputs["final"])
    seconds = inputs["time"]
    made, bears = energy(Amp(inputs["current"]), seconds), limit(size, *ends)
    holds = meets(made, bears)
    brief = meets(seconds, ADIABATIC)
    steps = (
        Step("heat of the fault", f"current² × {said(seconds)} s", heat(made)),
        Step("k of copper", f"226 √ln((234.5 + {said(ends[1])}) / (234.5 + {said(ends[0])}))",
             said(k_of(*ends), 4), WITHSTANDS.source),
        Step("the conductor bears", f"(k × {said(size.area)} mm²)²", heat(bears)),
    )  # fmt: skip
    word = "bears" if holds else "does not bear"
    found = f"{size} {word} it: {heat(made)}, of {heat(bears)} at most."
    if not holds and not brief:
        found = f"Cannot say: {heat(made)} in so long a time, of {heat(bears)} at once."
    return Outcome(
        {
            "energy": Value(made, "A²s", "heat of the fault"),
            "limit": Value(bears, "A²s", "the conductor bears"),
            "holds": Value(_holds(holds=holds, brief=brief), "", "the conductor bears it"),
        },
        found,
        steps,
        WITHSTANDS.name,
        () if brief else (TOO_LONG,),
    )


WITHSTAND: Final = Sum(
    "withstand",
    "Does a conductor bear a short circuit?",
    "Heat of a fault until the protection opens, against what the insulation bears.",
    (FAULT_CURRENT, OPENS, SIZE_FIELD, INITIAL, FINAL),
    answer,
)
