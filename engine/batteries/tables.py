"""Printed and typical figures of the battery trade. A key is a chemistry unless it says else."""

from __future__ import annotations

from typing import Final

from engine.source import Source, common_practice
from engine.table import Table

FLOODED: Final = "flooded"
AGM: Final = "agm"
GEL: Final = "gel"
LITHIUM: Final = "lithium"

EXPONENT: Final = Table(
    title="Peukert's exponent of a bank rated at 20 hours",
    key="chemistry",
    value="low, likely, high",
    source=Source("makers' discharge tables", "handbook range", "20 h base", typical=True),
    rows={
        FLOODED: (1.15, 1.25, 1.40),
        AGM: (1.05, 1.12, 1.20),
        GEL: (1.10, 1.18, 1.25),
        LITHIUM: (1.01, 1.03, 1.06),
    },
)

LOW_RATE_GAIN: Final = Table(
    title="Most a very slow discharge gives, over the 20-hour capacity",
    key="chemistry",
    value="factor",
    source=Source(
        "Manwell and McGowan, two-well model",
        "Solar Energy 50 (1993) 399",
        "both wells, fitted to the likely exponent at 1, 10 and 20 h",
        typical=True,
    ),
    rows={FLOODED: 1.185, AGM: 1.09, GEL: 1.13, LITHIUM: 1.023},
)

USABLE: Final = Table(
    title="Share of the capacity planned to be used",
    key="chemistry",
    value="share",
    source=common_practice("half of a lead bank, four fifths of a lithium bank"),
    rows={FLOODED: 0.5, AGM: 0.5, GEL: 0.5, LITHIUM: 0.8},
)

RESISTANCE_100_AH: Final = Table(
    title="Internal resistance of a 12 V block of 100 Ah, half charged, at 25 °C",
    key="chemistry",
    value="low, likely, high, mΩ",
    source=Source(
        "handbook range", "no document", "lithium with its protection board", typical=True
    ),
    rows={
        FLOODED: (4.0, 6.0, 8.0),
        AGM: (3.0, 4.0, 5.0),
        GEL: (5.0, 6.0, 8.0),
        LITHIUM: (2.0, 3.0, 5.0),
    },
)

RESISTANCE_GROWS: Final = Table(
    title="How the internal resistance grows",
    key="case",
    value="factor",
    source=Source(
        "handbook range", "no document", "cold: the middle of 1.5 to 2 at 0 °C", typical=True
    ),
    rows={"lead at 20 % charge": 1.5, "at 0 °C": 1.75},
)

COLDEST_CHARGE: Final = Table(
    title="Coldest cell that may be charged",
    key="chemistry",
    value="°C",
    source=Source("cell makers' sheets", "handbook range", "lithium plates below", typical=True),
    rows={FLOODED: -20.0, AGM: -20.0, GEL: -20.0, LITHIUM: 0.0},
)

CUT_OFF: Final = Table(
    title="Volts under load at which a 12 V bank is taken as empty",
    key="chemistry",
    value="V",
    source=Source("handbook range", "10.5 to 12.0 V", "low-voltage disconnect", typical=True),
    rows={FLOODED: 11.5, AGM: 11.5, GEL: 11.6, LITHIUM: 12.0},
)

BLOCK_VOLTS: Final = Table(
    title="Nominal volts of a block that serves a 12 V system",
    key="chemistry",
    value="V",
    source=Source("cell chemistry", "nominal", "6 cells of 2.0 V, 4 cells of 3.2 V", typical=True),
    rows={FLOODED: 12.0, AGM: 12.0, GEL: 12.0, LITHIUM: 12.8},
)

SIZE_MULTIPLIER: Final = Table(
    title="Larger cell needed for the cold, lead-acid",
    key="electrolyte, °C",
    value="multiplier of the cell size",
    source=Source("IEEE 485", "as reprinted in lecture notes", "table 1"),
    rows={4.4: 1.30, 10.0: 1.19, 15.6: 1.11, 21.1: 1.04, 25.0: 1.00},
)

LITHIUM_CAPACITY: Final = Table(
    title="Capacity of a lithium iron phosphate cell at a temperature",
    key="cell, °C",
    value="% of nominal",
    source=Source("NREL System Advisor Model", "PySAM 7.1", "default table, LFP graphite"),
    rows={
        -20.0: 72.333, -10.0: 81.8, 0.0: 88.8, 10.0: 93.0, 23.0: 96.667, 45.0: 101.0, 60.0: 101.0,
    },
)  # fmt: skip

RESTING_FLOODED: Final = Table(
    title="Volts at rest of a flooded 12 V battery, full at 1.265",
    key="charge",
    value="V at 27 °C (80 °F)",
    source=Source("BCI", "as reprinted", "open-circuit volts and specific gravity"),
    rows={0.0: 11.89, 0.25: 12.06, 0.5: 12.24, 0.75: 12.45, 1.0: 12.65},
)

RESTING_ABOVE: Final = Table(
    title="Volts at rest above those of a flooded battery, at every charge",
    key="chemistry",
    value="V",
    source=Source(
        "handbook range", "no document", "middle of 0.15 to 0.20 and 0.10 to 0.20", typical=True
    ),
    rows={FLOODED: 0.0, AGM: 0.175, GEL: 0.15},
)

RESTING_LITHIUM: Final = Table(
    title="Volts of four lithium iron phosphate cells, discharged in 20 hours",
    key="charge",
    value="V at 25 °C",
    source=Source("PyBaMM 26.10", "Prada 2013 parameters", "single-particle model, C/20"),
    rows={
        0.0: 8.0, 0.02: 9.795, 0.05: 11.102, 0.1: 11.881, 0.15: 12.399, 0.2: 12.649, 0.3: 12.801,
        0.4: 12.989, 0.5: 13.047, 0.6: 13.059, 0.7: 13.077, 0.8: 13.218, 0.9: 13.238, 0.95: 13.247,
        0.99: 13.726, 1.0: 14.378,
    },
)  # fmt: skip
