"""How long does charging take?"""

from __future__ import annotations

from typing import Final

from engine.charging.acceptance import ACCEPTANCE, time_to_charge
from engine.charging.intake import Intake
from engine.field import Field
from engine.finding import Step
from engine.sums.inputs import CAPACITY
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.sums.titles import LATE_TITLES
from engine.units import CURRENT, FRACTION, RATE, Amp, AmpHour, PerHour, Share, said

FROM: Final = Field("from", "From a charge of", FRACTION, "", "", 0.0, 1.0, like="50 %")
TO: Final = Field(
    "to", "To a charge of", FRACTION, "98 % is what most call full.", "", 0.0, 1.0, like="90 %"
)
SOURCE: Final = Field(
    "source", "What the source has over", CURRENT, "After the loads that run meanwhile.", "",
    0.01, 5000.0, like="30 A",
)  # fmt: skip
LIMIT: Final = Field(
    "limit", "Most current for each ampere-hour", RATE,
    "Typical: flooded 0.25, AGM 0.4, gel 0.3, lithium iron phosphate 0.5 an hour.", "",
    0.001, 10.0,
)  # fmt: skip
TAPER: Final = Field(
    "taper", "Current for each ampere-hour still lacking", RATE,
    "Typical: flooded 0.6, AGM 1.0, gel 0.7, lithium iron phosphate 10 an hour.", "",
    0.001, 1000.0, like="0.6 /h",
)  # fmt: skip
EFFICIENCY: Final = Field(
    "efficiency", "Ampere-hours kept of those put in", FRACTION,
    "Typical from half full: flooded 88 %, AGM 93 %, gel 92 %, lithium iron phosphate 99 %.",
    "100 %", 0.3, 1.0,
)  # fmt: skip
COLD: Final = "A lithium bank below 0 °C must not be charged at all, and below 10 °C only slowly."
LAST: Final = "Near full the current tapers: the last part costs the most hours."


def answer(inputs: Inputs) -> Outcome:
    """Return the time, steady to the taper line and exponential from there.

    Raises
    ------
    Problem
        If the end is not above the start, or is 100 %.
    """
    start, end, source = Share(inputs["from"]), Share(inputs["to"]), Amp(inputs["source"])
    bank = Intake(
        AmpHour(inputs["capacity"]),
        PerHour(inputs["limit"]),
        PerHour(inputs["taper"]),
        Share(inputs["efficiency"]),
    )
    time = Value(time_to_charge(bank, start, end, source), "h", "time")
    bulk, line = bank.bulk(source), bank.taper_line(source)
    holds = "source" if bulk == source else "limit"
    steps = (
        Step("steady current", "the lesser of source and limit × capacity",
             f"{said(bulk)} A, by the {holds}"),
        Step("taper begins", "1 − current / (taper × capacity)", f"{said(line * 100)} %"),
        Step("time", "steady up to there, then ln(lack before / lack after) / "
             "(taper × efficiency)", str(time), ACCEPTANCE),
    )  # fmt: skip
    found = f"{time} from {said(start * 100)} to {said(end * 100)} %: {said(bulk)} A " + (
        f"until {said(line * 100)} %, then less and less." if end > line else "all the way."
    )
    notes = (LAST, COLD) if end > line else (COLD,)
    return Outcome({"time": time}, found, steps, holds, notes)


CHARGE_TIME: Final = Sum(
    "charge-time",
    LATE_TITLES["charge-time"],
    "A steady source, the most the bank should see, and the taper near full.",
    (CAPACITY, FROM, TO, SOURCE, LIMIT, TAPER, EFFICIENCY),
    answer,
)
