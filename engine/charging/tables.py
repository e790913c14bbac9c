"""Typical figures of the charging trade. A key is a chemistry unless it says else."""

from __future__ import annotations

from typing import Final

from engine.batteries.tables import AGM, FLOODED, GEL, LITHIUM
from engine.source import Source, common_practice
from engine.table import Table

MOST_CHARGE: Final = Table(
    title="Most charging current a bank should see, for each ampere-hour",
    key="chemistry",
    value="1/h",
    source=Source("handbook range", "no document", "near the middle of each", typical=True),
    rows={FLOODED: 0.25, AGM: 0.4, GEL: 0.3, LITHIUM: 0.5},
)

TAPER: Final = Table(
    title="Rate at which a bank's acceptance falls as it fills",
    key="chemistry",
    value="1/h",
    source=Source("Mas' law", "handbook fit", "current in proportion to the lack", typical=True),
    rows={FLOODED: 0.6, AGM: 1.0, GEL: 0.7, LITHIUM: 10.0},
)

COULOMBIC: Final = Table(
    title="Ampere-hours given back over those put in, from half full to full",
    key="chemistry",
    value="share",
    source=Source("handbook range", "no document", "more below 80 %, less above", typical=True),
    rows={FLOODED: 0.88, AGM: 0.93, GEL: 0.92, LITHIUM: 0.99},
)

COLD_CHARGE: Final = Table(
    title="Most charging current of a cold lithium bank, for each ampere-hour",
    key="cells below, °C",
    value="1/h",
    source=Source("cell makers' sheets", "handbook range", "lithium plates", typical=True),
    rows={5.0: 0.1, 10.0: 0.2},
)

CHARGER_SHARE: Final = Table(
    title="Size of a mains charger for each ampere-hour of the bank",
    key="chemistry",
    value="low, likely, high, 1/h",
    source=common_practice("more wherever the bank takes more"),
    rows={
        FLOODED: (0.10, 0.175, 0.25),
        AGM: (0.20, 0.30, 0.40),
        GEL: (0.20, 0.25, 0.33),
        LITHIUM: (0.20, 0.35, 0.50),
    },
)

ENGINE_FUEL: Final = Table(
    title="Fuel of a boat's engine that charges",
    key="part",
    value="low, likely, high, L/h idling and L for each kWh made",
    source=Source("handbook range", "no document", "diesel at part load", typical=True),
    rows={"idling": (0.5, 1.0, 1.5), "each kWh": (0.4, 0.6, 0.8)},
)

GENERATOR_FUEL: Final = Table(
    title="Fuel of an AC diesel generator",
    key="part",
    value="L/h for each kW of rating, and for each kW of load",
    source=Source("Skarstein and Uhlen", "1989", "0.08415 and 0.246", typical=True),
    rows={"rating": 0.08415, "load": 0.246},
)
