"""How long does a bank give a current?"""

from __future__ import annotations

from typing import Final

from engine.batteries.peukert import PEUKERT, discharge_time
from engine.finding import Step
from engine.sums.inputs import CAPACITY, CURRENT_FIELD, EXPONENT, RATED_HOURS, USABLE
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import Amp, AmpHour, Hour, said

SLOW: Final = (
    "Slower than the rated hours the law promises more than a bank holds: count no more than "
    "a fifth over the label."
)


def answer(inputs: Inputs) -> Outcome:
    """Return the time and the charge delivered, by Peukert in its rated-hour form."""
    capacity, hours = AmpHour(inputs["capacity"]), Hour(inputs["rated_hours"])
    current, share = Amp(inputs["current"]), inputs["usable"]
    time = Hour(share * discharge_time(capacity, hours, current, inputs["exponent"]))
    given = time * current
    steps = (
        Step("rated current", "capacity / rated hours", f"{said(capacity / hours)} A"),
        Step("time", "usable × H × (C / (I × H)) ^ exponent", f"{said(time)} h", PEUKERT),
        Step("delivered", "time × current", f"{said(given)} Ah"),
        Step("without the rate effect", "usable × capacity / current",
             f"{said(share * capacity / current)} h"),
    )  # fmt: skip
    found = f"{said(time)} h at {said(current)} A, which delivers {said(given)} Ah."
    notes = (SLOW,) if current * hours < capacity and inputs["exponent"] > 1 else ()
    return Outcome(
        {"time": Value(time, "h", "time"), "delivered": Value(given, "Ah", "delivered")},
        found,
        steps,
        None,
        notes,
    )


DISCHARGE: Final = Sum(
    "discharge",
    "How long does a bank give a current?",
    "A faster discharge gives less: Peukert's law in its rated-hour form.",
    (CURRENT_FIELD, CAPACITY, EXPONENT, USABLE, RATED_HOURS),
    answer,
)
