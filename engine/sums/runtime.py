"""How long will the inverter carry it?"""

from __future__ import annotations

from typing import Final

from engine.batteries.peukert import PEUKERT, discharge_time
from engine.field import Field
from engine.finding import Step
from engine.shore.earthing import CAUTION
from engine.sums.inputs import CAPACITY, EXPONENT, RATED_HOURS, USABLE, VOLTS_FIELD
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import FRACTION, POWER, Amp, AmpHour, Hour, said

WATTS: Final = Field(
    "watts", "AC power", POWER, "All that runs at one time.", above=True, least=0.0, most=100000.0
)
EFFICIENCY: Final = Field(
    "efficiency", "Inverter's efficiency", FRACTION, "At this load; 85 to 92 % is usual.", "88 %",
    0.0, 1.0, above=True,
)  # fmt: skip


def answer(inputs: Inputs) -> Outcome:
    """Return the current, the time, and what it would have been without any loss."""
    volts, watts = inputs["volts"], inputs["watts"]
    capacity, hours, share = AmpHour(inputs["capacity"]), inputs["rated_hours"], inputs["usable"]
    current = Amp(watts / (inputs["efficiency"] * volts))
    time = share * discharge_time(capacity, Hour(hours), current, inputs["exponent"])
    lossless = share * capacity * volts / watts
    steps = (
        Step("current from the bank", "AC power / (efficiency × volts)", f"{said(current)} A"),
        Step("time", "usable × H × (C / (I × H)) ^ exponent", f"{said(time)} h", PEUKERT),
        Step("without the rate effect", "usable × capacity / current",
             f"{said(share * capacity / current)} h"),
        Step("ignoring all losses", "usable × capacity × volts / AC power", f"{said(lossless)} h"),
    )  # fmt: skip
    found = (
        f"About {said(time)} h at {said(current)} A from the bank. "
        f"Ignoring losses it would have been {said(lossless)} h."
    )
    answers = {
        "dc_current": Value(current, "A", "current from the bank"),
        "time": Value(time, "h", "time"),
        "lossless_time": Value(lossless, "h", "ignoring losses"),
    }
    return Outcome(answers, found, steps)


RUNTIME: Final = Sum(
    "runtime",
    "How long will the inverter carry it?",
    "Current from the bank and the time it lasts. The plan's Inverter page adds sagging volts "
    "and the cut-off.",
    (WATTS, CAPACITY, EXPONENT, USABLE, EFFICIENCY, VOLTS_FIELD, RATED_HOURS),
    answer,
    CAUTION,
)
