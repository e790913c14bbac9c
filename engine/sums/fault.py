"""What must a protection be able to interrupt?"""

from __future__ import annotations

from typing import Final

from engine.conductors.resistance import IACS
from engine.conductors.sizes import read_size
from engine.field import YES_NO, Field
from engine.finding import Step
from engine.problem import Problem
from engine.protection.fault import FAULT as OHM
from engine.protection.fault import cold_cable, fault_current
from engine.protection.interrupting import MINIMUM, asked, is_large, published_minimum
from engine.sums.inputs import RUN, SIZE_FIELD
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import (
    CURRENT,
    RESISTANCE,
    TEMPERATURE,
    VOLTS,
    Amp,
    Celsius,
    Metre,
    Ohm,
    Volt,
    said,
)

REST_VOLTS: Final = Field(
    "volts", "Volts at rest", VOLTS, "Of the full bank: about 12.8 V, lithium 13.4 V.",
    above=True, least=0.0, most=1000.0,
)  # fmt: skip
BANK: Final = Field(
    "bank_resistance", "Bank's resistance", RESISTANCE,
    "On its papers, or its volts over its short-circuit current.", least=0.0, most=10.0,
)  # fmt: skip
COPPER: Final = Field(
    "temperature", "Copper's temperature", TEMPERATURE, "Cold: then most current flows.",
    "20 degC", -60.0, 250.0,
)  # fmt: skip
JOINTS: Final = Field(
    "joints", "Joints and switches", RESISTANCE, "Of all on the way, together.", "0 ohm", 0.0, 10.0
)
CRANKING: Final = Field(
    "cca", "Cold-cranking amperes", CURRENT, "Of all batteries together, if known.", least=0.0,
    most=100000.0, needed=False,
)  # fmt: skip
MAIN: Final = Field("main", "It is the main", YES_NO, default="yes")

NO_TABLE: Final = (
    "No published minimum is known here: above 2200 cold-cranking amperes ask the battery's "
    "maker, above 32 V only the computed current stands."
)
LEAST_ROW: Final = (
    "The published minimum is that of the smallest bank, since no cold-cranking amperes are given. "
    "For lithium only the computed current counts."
)


def answer(inputs: Inputs) -> Outcome:
    """Return the fault current and the least interrupting rating.

    Raises
    ------
    Problem
        If the size cannot be read, or nothing resists.
    """
    try:
        size = read_size(inputs.texts["size"], "awg")
    except Problem as problem:
        raise problem.at("size") from None
    volts = Volt(inputs["volts"])
    cable = cold_cable(Metre(inputs["run"]), size, Celsius(inputs["temperature"]))
    current = fault_current(volts, Ohm(inputs["bank_resistance"]), cable, Ohm(inputs["joints"]))
    stated = inputs.numbers.get("cca")
    cranking = None if stated is None else Amp(stated)
    minimum = published_minimum(volts, cranking, main=inputs.flags["main"])
    governs = asked(current, minimum)
    assert governs is not None  # noqa: S101 - the computed current is known
    steps = (
        Step("cable, there and back", f"{size}, plain copper at {said(inputs['temperature'])} °C",
             f"{said(cable * 1000)} mΩ", IACS),
        Step("fault current", "volts / (bank + cable + joints)", f"{said(current, 4)} A", OHM),
        Step("published minimum", "main" if inputs.flags["main"] else "branch",
             "none" if minimum is None else f"{said(minimum, 4)} A", MINIMUM.source),
    )  # fmt: skip
    found = (
        f"A dead short draws {said(current, 4)} A. The protection must interrupt at least "
        f"{said(governs.least, 4)} A: {governs.words} governs."
    )
    large = is_large(cranking, None)
    notes = [NO_TABLE] if minimum is None or large else [LEAST_ROW] if cranking is None else []
    return Outcome(
        {
            "current": Value(current, "A", "fault current"),
            "minimum_interrupting": Value(governs.least, "A", "interrupting rating, at least"),
        },
        found,
        steps,
        governs.rule.name,
        tuple(notes),
    )


FAULT: Final = Sum(
    "fault",
    "What must a protection interrupt?",
    "Short-circuit current through the cable, and the published minimum beside it.",
    (REST_VOLTS, BANK, RUN, SIZE_FIELD, CRANKING, MAIN, JOINTS, COPPER),
    answer,
)
