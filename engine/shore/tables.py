"""Printed and typical figures of alternating current aboard."""

from __future__ import annotations

from typing import Final

from engine.source import Source, common_practice
from engine.table import Table

RESISTANCE_PLAIN: Final = Table(
    title="Largest resistance of flexible plain copper conductors at 20 °C",
    key="nominal cross-section, mm²",
    value="Ω/km",
    source=Source("IEC 60228", "2004", "table 3, class 5, plain wires"),
    rows={
        "0.75": 26.0, "1": 19.5, "1.5": 13.3, "2.5": 7.98, "4": 4.95, "6": 3.30, "10": 1.91,
        "16": 1.21, "25": 0.780, "35": 0.554, "50": 0.386, "70": 0.272, "95": 0.206, "120": 0.161,
    },
)  # fmt: skip

LEAST_CORD: Final = Table(
    title="Thinnest conductor of a shore cord",
    key="service, A",
    value="size",
    source=Source(
        "ABYC and NEC 400, IEC cords",
        "as commonly stocked",
        "30 A as reprinted; the rest remembered",
        typical=True,
    ),
    rows={
        16: "2.5 mm2", 30: "10 AWG", 32: "6 mm2", 50: "6 AWG", 63: "16 mm2", 100: "2 AWG",
    },
)  # fmt: skip

INTERRUPTS: Final = Table(
    title="Least interrupting rating of breakers on alternating current",
    key="service",
    value="branch and main, A",
    source=Source("ABYC E-11", "as reprinted", "table V.B"),
    rows={
        "120 V, 30 A": (3000, 3000),
        "120 V, 50 A": (3000, 3000),
        "125/250 V, 50 A": (3000, 5000),
    },
)

INTERRUPTS_LARGE: Final = Table(
    title="Least interrupting rating of breakers on a large service",
    key="service",
    value="branch and main, A",
    source=Source("ABYC E-11", "as remembered", "table V.B, 100 A rows", typical=True),
    rows={"125/250 V, 100 A": (3000, 5000)},
)

VOLTS_EXPONENT: Final = Table(
    title="How the current of an appliance follows the volts",
    key="class of appliance",
    value="exponent of the volts over the rated volts",
    source=Source(
        "Ohm's law and constant power",
        "own derivation",
        "motor and transformer by habit of the trade",
        typical=True,
    ),
    rows={
        "resistive": 1.0,
        "transformer": 0.0,
        "motor": -1.0,
        "electronic": -1.0,
        "constant power": -1.0,
    },
)

CODE_LETTERS: Final = Table(
    title="Locked-rotor code letters of motors",
    key="code letter",
    value="least and most kVA per horsepower",
    source=Source(
        "NFPA 70 (NEC)",
        "as reprinted",
        "table 430.7(B); rows B to F and N to V remembered",
        typical=True,
    ),
    rows={
        "A": (0.0, 3.14), "B": (3.15, 3.54), "C": (3.55, 3.99), "D": (4.0, 4.49),
        "E": (4.5, 4.99), "F": (5.0, 5.59), "G": (5.6, 6.29), "H": (6.3, 7.09),
        "J": (7.1, 7.99), "K": (8.0, 8.99), "L": (9.0, 9.99), "M": (10.0, 11.19),
        "N": (11.2, 12.49), "P": (12.5, 13.99), "R": (14.0, 15.99), "S": (16.0, 17.99),
        "T": (18.0, 19.99), "U": (20.0, 22.39), "V": (22.4,),
    },
)  # fmt: skip

FUEL_20_KW: Final = Table(
    title="Fuel of a diesel generator of 20 kW",
    key="share of its rating",
    value="L/h",
    source=Source("diesel generator fuel chart", "public", "20 kW row"),
    rows={0.25: 2.3, 0.50: 3.4, 0.75: 4.9, 1.0: 6.1},
)

FUEL_8_KW: Final = Table(
    title="Fuel of a diesel generator of 8 kW",
    key="share of its rating",
    value="L/h",
    source=Source("diesel generator fuel chart", "public", "8 kW row"),
    rows={0.50: 1.48, 0.75: 2.05, 1.0: 2.61},
)

INVERTER_DERATE: Final = Table(
    title="What an inverter gives in warm air, over its rating",
    key="air at its intake, °C",
    value="share",
    source=common_practice("rated at 25 °C, about four fifths at 40 °C"),
    rows={25.0: 1.0, 40.0: 0.8, 60.0: 0.5},
)

IDLE_SHARE: Final = Table(
    title="Idle draw of an inverter switched on, over its rating",
    key="case",
    value="low, likely, high",
    source=Source("inverter makers' sheets", "common range", "no load", typical=True),
    rows={"on": (0.005, 0.010, 0.020)},
)

SEARCH_WATTS: Final = Table(
    title="Draw of an inverter in search mode",
    key="case",
    value="low, likely, high, W",
    source=Source("inverter makers' sheets", "common range", "search mode", typical=True),
    rows={"search": (1.0, 2.0, 4.0)},
)

ISOLATION_TRANSFORMER: Final = Table(
    title="Typical figures of an isolation transformer",
    key="what",
    value="low and high",
    source=Source("handbook range", "no document", "toroidal and plain cores", typical=True),
    rows={
        "no-load loss, W": (20.0, 60.0),
        "inrush, times its rated current": (8.0, 12.0),
        "weight, kg per kVA": (6.0, 12.0),
    },
)

ISOLATOR_BLOCKS: Final = Table(
    title="Galvanic volts an isolator blocks",
    key="case",
    value="low and high, V",
    source=Source("marine troubleshooting handbook", "2007", "p. 116, two diodes in series"),
    rows={"two diodes in series": (1.2, 1.4)},
)
