"""How many volts does a shore cord lose?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.conductors.drop import DROP as DROP_RULE
from engine.conductors.drop import K, rule_drop
from engine.conductors.sizes import METRIC, read_size
from engine.field import SIZE, Field
from engine.finding import Step, meets
from engine.problem import Problem
from engine.shore.cord import (
    ALLOWED,
    FEED_DROP,
    Cord,
    cord_drop,
    cord_resistance,
    source_of_cord,
    thick_enough,
)
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from engine.sums.inputs import CURRENT_FIELD
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import AREA, LENGTH, TEMPERATURE, VOLTS, Amp, Celsius, Metre, said

if TYPE_CHECKING:
    from engine.conductors.sizes import Size

SHORE_VOLTS: Final = Field(
    "volts", "Nominal volts", VOLTS, "Live conductor to neutral: 120 or 230.", "120 V", 90.0, 264.0
)
LENGTH_FIELD: Final = Field(
    "length", "Length of the cord, one way", LENGTH, "There and back is reckoned from it.",
    above=True, least=0.0, most=1000.0,
)  # fmt: skip
SIZE_FIELD: Final = Field(
    "size", "Conductor", SIZE, "10 AWG or 6 mm2; or leave it and enter square millimetres.",
    needed=False,
)  # fmt: skip
MM2: Final = Field(
    "mm2", "Conductor in mm²", AREA, "As printed on the cord, if no size is given above.",
    above=True, least=0.0, most=120.0, needed=False,
)  # fmt: skip
COPPER: Final = Field(
    "temperature", "Copper's temperature", TEMPERATURE,
    "75 °C is a cord at full load in the sun; 20 °C a cold one.", "75 degC", -60.0, 250.0,
)  # fmt: skip


def size_of(inputs: Inputs) -> Size:
    """Return the cord's size from one of its two inputs.

    Raises
    ------
    Problem
        If neither or both are given, or it is no trade size.
    """
    text, area = inputs.texts.get("size", ""), inputs.numbers.get("mm2")
    if bool(text) == (area is not None):
        raise Problem(
            "size",
            f"{'Both' if text else 'Neither'} of size and mm2 {'are' if text else 'is'} given.",
            "Enter one of them: a size such as 10 AWG, or 2.5 mm2.",
        )
    try:
        return read_size(text, "awg") if area is None else read_size(f"{area:g}", METRIC)
    except Problem as problem:
        raise problem.at("size" if area is None else "mm2") from None


def answer(inputs: Inputs) -> Outcome:
    """Return the drop of a cord with its copper warm, and the compliance rule's beside it.

    Raises
    ------
    Problem
        If there is no size.
    """
    size = size_of(inputs)
    volts, current, run = inputs["volts"], Amp(inputs["current"]), Metre(inputs["length"])
    cord = Cord(run, size, Celsius(inputs["temperature"]))
    lost, by_rule = cord_drop(current, cord), rule_drop(current, run, size)
    ohms = cord_resistance(size, cord.temperature)
    share = lost / volts
    answers = {
        "drop": Value(lost, "V", "drop"),
        "share": Value(share, "share", "share of the volts"),
        "rule_drop": Value(by_rule, "V", "drop, by the compliance rule"),
    }
    copper = "plain" if size.catalogue == METRIC else "tinned"
    steps = (
        Step("there and back", "length × 2", f"{said(2 * run)} m, {said(2 * run / 0.3048)} ft"),
        Step("resistance", f"{size}, stranded, {copper}, at {said(cord.temperature)} °C",
             f"{said(ohms)} Ω/km", source_of_cord(size)),
        Step("drop", "there and back × resistance × current", f"{said(lost)} V"),
        Step("drop by the rule",
             f"{K} × current × loop in ft / {said(size.circular_mils, 5)} cmil",
             f"{said(by_rule)} V", DROP_RULE.source),
    )  # fmt: skip
    found = (
        f"{said(run)} m of {size} lose {said(lost)} V of {said(volts)} V at {said(current)} A: "
        f"{said(share * 100)} %."
    )
    notes = []
    if lost >= volts:
        notes.append("This cord cannot pass that current: all the volts are lost.")
    elif not meets(share, ALLOWED):
        notes.append(f"That is more than 5 %: {FEED_DROP.words}.")
    if thick_enough(size, current) is False:
        notes.append(f"{size} is thinner than a cord for a service of {said(current)} A.")
    return Outcome(answers, found, steps, None, tuple(notes))


CORD: Final = Sum(
    "cord",
    "How many volts does a shore cord lose?",
    "Out by the live conductor and back by the neutral, with the copper warm.",
    (SHORE_VOLTS, CURRENT_FIELD, LENGTH_FIELD, SIZE_FIELD, MM2, COPPER),
    answer,
    CAUTION,
    SWIM_CAUTION,
)
