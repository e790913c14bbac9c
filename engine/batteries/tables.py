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

WELL_RATE: Final = Table(
    title="Rate at which the two wells of a bank level out",
    key="chemistry",
    value="1/h",
    source=Source(
        "Manwell and McGowan, two-well model",
        "Solar Energy 50 (1993) 399",
        "fitted to the likely exponent at 1, 10 and 20 h",
        typical=True,
    ),
    rows={FLOODED: 0.376, AGM: 0.325, GEL: 0.345, LITHIUM: 0.286},
)

WELL_SHARE: Final = Table(
    title="Share of a bank that lies in the well at hand",
    key="chemistry",
    value="share",
    source=Source(
        "Manwell and McGowan, two-well model",
        "Solar Energy 50 (1993) 399",
        "fitted to the likely exponent at 1, 10 and 20 h",
        typical=True,
    ),
    rows={FLOODED: 0.42, AGM: 0.62, GEL: 0.52, LITHIUM: 0.88},
)

ABSORB: Final = Table(
    title="Volts a 12 V bank is charged to at 25 °C",
    key="chemistry",
    value="low, likely, high, V",
    source=Source("handbook range", "no document", "absorption", typical=True),
    rows={
        FLOODED: (14.4, 14.6, 14.8),
        AGM: (14.2, 14.5, 14.7),
        GEL: (14.0, 14.2, 14.3),
        LITHIUM: (13.8, 14.2, 14.6),
    },
)

FLOAT: Final = Table(
    title="Volts a full 12 V bank is kept at, 25 °C",
    key="chemistry",
    value="low, likely, high, V",
    source=Source("handbook range", "no document", "float; lithium may have none", typical=True),
    rows={
        FLOODED: (13.2, 13.4, 13.5),
        AGM: (13.4, 13.5, 13.8),
        GEL: (13.5, 13.6, 13.8),
        LITHIUM: (13.3, 13.5, 13.6),
    },
)

EQUALISE: Final = Table(
    title="Volts a 12 V bank is equalised at, 25 °C",
    key="chemistry",
    value="low, likely, high, V",
    source=Source(
        "handbook range", "no document", "flooded only, 1 to 4 h at most a twentieth of the "
        "capacity per hour", typical=True,
    ),
    rows={FLOODED: (15.0, 15.5, 16.0)},
)  # fmt: skip

COMPENSATION: Final = Table(
    title="Change of the charging volts with the cells' temperature",
    key="chemistry",
    value="mV per cell and °C",
    source=Source("handbook range", "−3 to −5", "from 25 °C; lithium has none", typical=True),
    rows={FLOODED: -5.0, AGM: -4.0, GEL: -4.0, LITHIUM: 0.0},
)

CYCLES_LEAD: Final = Table(
    title="Cycles of a lead-acid bank until 80 % of its capacity is left",
    key="depth",
    value="cycles",
    source=Source(
        "NREL System Advisor Model", "PySAM 7.1", "default lead-acid cycling, read at 80 %"
    ),
    rows={0.3: 1353.0, 0.5: 854.0, 0.6: 713.0, 1.0: 268.0},
)

CYCLES_LITHIUM: Final = Table(
    title="Cycles of a lithium iron phosphate cell until 80 % of its capacity is left",
    key="depth",
    value="cycles",
    source=Source(
        "NREL System Advisor Model", "PySAM 7.1", "default LFP graphite cycling, read at 80 %"
    ),
    rows={0.4: 14730.0, 0.8: 9640.0, 1.0: 7290.0},
)

CYCLES_AT_HALF: Final = Table(
    title="Cycles to half depth that a bank aboard may give",
    key="chemistry",
    value="cycles",
    source=Source("makers' sheets", "handbook range", "to 80 % of the capacity", typical=True),
    rows={FLOODED: 800.0, AGM: 700.0, GEL: 900.0, LITHIUM: 6000.0},
)

MASS: Final = Table(
    title="What a bank weighs for the energy on its label",
    key="chemistry",
    value="low, likely, high, kg/kWh",
    source=Source("handbook range", "no document", "whole batteries with their case", typical=True),
    rows={
        FLOODED: (20.0, 24.0, 28.0),
        AGM: (22.0, 25.0, 29.0),
        GEL: (23.0, 27.0, 31.0),
        LITHIUM: (7.0, 9.5, 12.0),
    },
)
