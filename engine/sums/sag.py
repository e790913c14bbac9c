"""Where does a constant-power load settle on a supply that sags?"""

from __future__ import annotations

from typing import Final

from engine.field import Field
from engine.finding import Step
from engine.inverter.sag import OPERATES, SAG, collapse_power, operating_point
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import POWER, RESISTANCE, VOLTS, Ohm, Volt, Watt, said

POWER_FIELD: Final = Field(
    "power", "Power", POWER, "Taken whatever the volts: an inverter, a charger.", above=True,
    least=0.0, most=100000.0,
)  # fmt: skip
OPEN_VOLTS: Final = Field(
    "open_volts", "Volts at rest", VOLTS, "Of bank or dock with nothing on.", above=True,
    least=0.0, most=1000.0,
)  # fmt: skip
LOOP: Final = Field(
    "resistance", "Resistance, there and back", RESISTANCE, "Of source and conductors: 6 mohm.",
    above=True, least=0.0, most=1000.0,
)  # fmt: skip


def answer(inputs: Inputs) -> Outcome:
    """Return current and volts where the load settles, or that it never does."""
    power, volts = Watt(inputs["power"]), Volt(inputs["open_volts"])
    ohms = Ohm(inputs["resistance"])
    most, point = collapse_power(volts, ohms), operating_point(volts, ohms, power)
    answers = {
        "current": Value(point.current if point else None, "A", "current"),
        "volts": Value(point.volts if point else None, "V", "volts at the load"),
        "collapse_power": Value(most, "W", "most power it can give"),
    }
    top = Step("most power", "volts² / (4 × resistance)", f"{said(most)} W", SAG)
    if point is None:
        found = f"{said(power)} W never settle: this supply gives {said(most)} W at most."
        note = "Less power, or less resistance: thicker and shorter conductors, a larger source."
        return Outcome(answers, found, (top,), OPERATES.name, (note,))
    steps = (
        Step("current", "2 P / (E + √(E² − 4 R P))", f"{said(point.current)} A", SAG),
        Step("volts at the load", "E − R × current", f"{said(point.volts, 4)} V"),
        top,
    )
    found = (
        f"{said(power)} W settle at {said(point.current)} A and {said(point.volts, 4)} V; "
        f"at a steady {said(volts)} V they would be {said(power / volts)} A."
    )
    return Outcome(answers, found, steps)


SAG_SUM: Final = Sum(
    "sag",
    "Where does a constant-power load settle?",
    "The less volts it has, the more current it takes; beyond half the volts it never settles.",
    (POWER_FIELD, OPEN_VOLTS, LOOP),
    answer,
    CAUTION,
    SWIM_CAUTION,
)
