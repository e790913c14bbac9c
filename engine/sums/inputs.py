"""Inputs that several quick sums share, declared once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.conductors.carrying import Surroundings
from engine.conductors.sizes import CATALOGUES
from engine.field import CHOICE, SIZE, YES_NO, Field
from engine.units import (
    CHARGE,
    CURRENT,
    FRACTION,
    LENGTH,
    NUMBER,
    TEMPERATURE,
    TIME,
    VOLTS,
    Celsius,
)

if TYPE_CHECKING:
    from engine.sums.sum import Inputs

VOLTS_FIELD: Final = Field(
    "volts", "System volts", VOLTS, "Nominal: 12, 24 or 48, not the charging volts.", "12 V",
    above=True, least=0.0, most=1000.0,
)  # fmt: skip
CURRENT_FIELD: Final = Field(
    "current", "Current", CURRENT, "The most that runs at one time.", above=True, least=0.0,
    most=5000.0,
)  # fmt: skip
RUN: Final = Field(
    "run", "Run, one way", LENGTH, "As the conductor goes; there and back is reckoned from it.",
    above=True, least=0.0, most=1000.0,
)  # fmt: skip
SIZE_FIELD: Final = Field("size", "Conductor", SIZE, "With its catalogue: 10 AWG, 10 SAE or 6 mm2.")
INSULATION: Final = Field(
    "insulation", "Insulation", TEMPERATURE, "Printed on the jacket; most boat cable is 105 °C.",
    "105 degC", 60.0, 200.0,
)  # fmt: skip
ENGINE: Final = Field("engine_space", "Part of it in the engine space", YES_NO, default="no")
BUNDLE: Final = Field(
    "bundle", "Conductors run together", NUMBER,
    "Current-carrying conductors in the same bundle, this pair included; up to 2 need no factor.",
    "1", 1.0, 500.0,
)  # fmt: skip
AMBIENT: Final = Field("ambient", "Air around it", TEMPERATURE, "", "30 degC", -40.0, 150.0)
CAPACITY: Final = Field(
    "capacity", "Bank's capacity", CHARGE, "As labelled: 2 x 110 Ah will do.", above=True,
    least=0.0, most=100000.0,
)  # fmt: skip
DAILY: Final = Field(
    "daily",
    "A day's use",
    CHARGE,
    "All loads of one day together.",
    "",
    0.01,
    100000.0,
    like="80 Ah",
)
RATED_HOURS: Final = Field(
    "rated_hours", "Rated hours", TIME, "The discharge time the label was stated for.", "20 h",
    0.1, 200.0,
)  # fmt: skip
EXPONENT: Final = Field(
    "exponent", "Peukert's exponent", NUMBER,
    "Typical: flooded 1.25, AGM 1.12, gel 1.18, lithium iron phosphate 1.03.", "",
    1.0, 2.0, like="1.12",
)  # fmt: skip
USABLE: Final = Field(
    "usable", "Usable share", FRACTION, "Half for lead-acid is common practice; lithium 80 %.",
    "100 %", 0.0, 1.0, above=True,
)  # fmt: skip


def catalogue(default: str) -> Field:
    """Return the choice of catalogue with a sum's own default."""
    return Field(
        "catalogue",
        "Catalogue of sizes",
        CHOICE,
        "A value typed in one never turns into another.",
        default,
        choices=CATALOGUES,
    )


def surroundings_of(inputs: Inputs) -> Surroundings:
    """Return where the conductor lives.

    Raises
    ------
    Problem
        If no table gives that insulation.
    """
    return Surroundings(
        round(inputs["insulation"]),
        inputs.flags["engine_space"],
        int(inputs["bundle"]),
        Celsius(inputs["ambient"]),
    )
