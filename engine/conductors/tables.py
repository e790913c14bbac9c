"""Printed tables of the wire trade."""

from __future__ import annotations

from typing import Final

from engine.source import Source, common_practice
from engine.table import Table

GAUGES: Final = ("18", "16", "14", "12", "10", "8", "6", "4", "2", "1", "1/0", "2/0", "3/0", "4/0")
"""Gauges the boat trade stocks, thin to thick. 3 AWG is tabled but not stocked."""

ALL_GAUGES: Final = (*GAUGES[:8], "3", *GAUGES[8:])

INSULATIONS: Final = (60, 75, 80, 90, 105, 125, 200)
"""Temperature classes of insulation in the carrying table, °C."""

SAE_CIRCULAR_MILS: Final = Table(
    title="Least copper of SAE conductors",
    key="SAE size",
    value="circular mils",
    source=Source("SAE J1127 and J1128", "as reprinted in cable catalogues", "conductor area"),
    rows={
        "18": 1537, "16": 2336, "14": 3702, "12": 5833, "10": 9343, "8": 14810, "6": 24538,
        "4": 37360, "2": 62450, "1": 77790, "1/0": 98980, "2/0": 125100, "3/0": 158600,
        "4/0": 205500,
    },
)  # fmt: skip

RESISTANCE_STRANDED_75: Final = Table(
    title="Direct-current resistance of stranded coated copper at 75 °C",
    key="AWG",
    value="Ω/kft",
    source=Source("NFPA 70 (NEC)", "reprinted", "chapter 9, table 8, coated"),
    rows={
        "18": 8.45, "16": 5.29, "14": 3.26, "12": 2.05, "10": 1.29, "8": 0.809, "6": 0.510,
        "4": 0.321, "3": 0.254, "2": 0.201, "1": 0.160, "1/0": 0.127, "2/0": 0.101,
        "3/0": 0.0797, "4/0": 0.0626,
    },
)  # fmt: skip

RESISTANCE_CLASS_5: Final = Table(
    title="Largest resistance of flexible metal-coated copper conductors at 20 °C",
    key="nominal cross-section, mm²",
    value="Ω/km",
    source=Source("IEC 60228", "2004", "table 3, class 5, metal-coated wires"),
    rows={
        "0.75": 26.7, "1": 20.0, "1.5": 13.7, "2.5": 8.21, "4": 5.09, "6": 3.39, "10": 1.95,
        "16": 1.24, "25": 0.795, "35": 0.565, "50": 0.393, "70": 0.277, "95": 0.210, "120": 0.164,
    },
)  # fmt: skip

CARRYING: Final = Table(
    title="Allowable amperage of conductors at 30 °C",
    key="AWG",
    value="A for insulation of 60, 75, 80, 90, 105, 125 and 200 °C",
    source=Source("33 CFR", "in force", "183.425, table 5"),
    rows={
        "18": (10, 10, 15, 20, 20, 25, 25),
        "16": (15, 15, 20, 25, 25, 30, 35),
        "14": (20, 20, 25, 30, 35, 40, 45),
        "12": (25, 25, 35, 40, 45, 50, 55),
        "10": (40, 40, 50, 55, 60, 70, 70),
        "8": (55, 65, 70, 70, 80, 90, 100),
        "6": (80, 95, 100, 100, 120, 125, 135),
        "4": (105, 125, 130, 135, 160, 170, 180),
        "3": (120, 145, 150, 155, 180, 195, 210),
        "2": (140, 170, 175, 180, 210, 225, 240),
        "1": (165, 195, 210, 210, 245, 265, 280),
        "1/0": (195, 230, 245, 245, 285, 305, 325),
        "2/0": (225, 265, 285, 285, 330, 355, 370),
        "3/0": (260, 310, 330, 330, 385, 410, 430),
        "4/0": (300, 360, 385, 385, 445, 475, 510),
    },
)

ENGINE_SPACE: Final = Table(
    title="Factor for conductors in engine spaces",
    key="insulation, °C",
    value="factor",
    source=Source("33 CFR", "in force", "183.425, table 5, note 1"),
    rows={60: 0.58, 75: 0.75, 80: 0.78, 90: 0.82, 105: 0.85, 125: 0.89, 200: 1.00},
)

BUNDLE: Final = Table(
    title="Factor for current-carrying conductors run together",
    key="fewest conductors in the class",
    value="factor",
    source=Source("33 CFR", "in force", "183.425, table 5, note 2 (good practice below 50 V)"),
    rows={1: 1.0, 3: 0.7, 4: 0.6, 7: 0.5, 25: 0.4},
)

ADIABATIC_K: Final = Table(
    title="Factor k of copper conductors in a short circuit",
    key="insulation",
    value="initial °C, final °C, k in A·√s/mm²",
    source=Source("BS 7671", "as reprinted", "table 43.1"),
    rows={
        "PVC 70 °C, to 300 mm²": (70.0, 160.0, 115.0),
        "PVC 70 °C, over 300 mm²": (70.0, 140.0, 103.0),
        "PVC 90 °C, to 300 mm²": (90.0, 160.0, 100.0),
        "PVC 90 °C, over 300 mm²": (90.0, 140.0, 86.0),
        "rubber 60 °C": (60.0, 200.0, 141.0),
        "XLPE or EPR 90 °C": (90.0, 250.0, 143.0),
    },
)

Colours = tuple[str, ...]

COLOURS_POWER: Final[Table[str, Colours]] = Table(
    title="Colours of direct-current power conductors",
    key="function",
    value="colours, any of them",
    source=Source("ABYC E-11", "as reprinted", "table XIV"),
    rows={
        "bonding": ("green", "green with yellow stripe"),
        "DC negative": ("black", "yellow", "black with yellow stripe"),
        "DC positive": ("red",),
    },
)

COLOURS_CIRCUITS: Final[Table[str, Colours]] = Table(
    title="Colours of engine and accessory conductors",
    key="function",
    value="colours, any of them",
    source=Source("ABYC E-11", "as reprinted", "table XV"),
    rows={
        "starting circuit": ("yellow with red stripe",),
        "bilge blower": ("brown with yellow stripe", "yellow"),
        "navigation lights": ("dark grey",),
        "tachometer": ("dark grey",),
        "generator armature": ("brown",),
        "alternator charge light": ("brown",),
        "pumps": ("brown",),
        "accessory feed": ("orange",),
        "common feed": ("orange",),
        "ignition": ("purple",),
        "instrument feed": ("purple",),
        "cabin and instrument lights": ("dark blue",),
        "oil pressure": ("light blue",),
        "water temperature": ("tan",),
        "fuel gauge": ("pink",),
        "tilt down, trim in": ("green with stripe, not yellow",),
        "tilt up, trim out": ("blue with stripe",),
        "main power feed": ("red",),
    },
)

COLOURS_ISO: Final[Table[str, Colours]] = Table(
    title="Colours of direct-current conductors, international",
    key="function",
    value="colours, any of them",
    source=Source("ISO 10133 and ISO 13297", "as commonly read", "conductor colours", typical=True),
    rows={
        "DC positive": ("red", "black with red mark at ends", "brown with red mark at ends"),
        "DC negative": ("black", "yellow"),
        "bonding": ("green", "green with yellow stripe"),
    },
)

STRANDS: Final = Table(
    title="Strands of the most flexible boat conductors",
    key="AWG",
    value="least number of strands",
    source=Source("ABYC E-11", "as commonly quoted", "type 3 stranding", typical=True),
    rows={
        "16": 26, "14": 41, "12": 65, "10": 105, "8": 168, "6": 266, "4": 420, "2": 665,
        "1": 836, "1/0": 1064, "2/0": 1323, "3/0": 1666, "4/0": 2107,
    },
)  # fmt: skip

PULL: Final = Table(
    title="Pull a crimped terminal must hold for one minute",
    key="AWG",
    value="lbf",
    source=Source("ABYC E-11", "as commonly quoted", "tensile test values", typical=True),
    rows={
        "18": 10.0, "16": 15.0, "14": 30.0, "12": 35.0, "10": 40.0, "8": 45.0, "6": 50.0,
        "5": 60.0, "4": 70.0, "3": 80.0, "2": 90.0, "1": 100.0, "1/0": 125.0, "2/0": 150.0,
        "3/0": 175.0, "4/0": 225.0,
    },
)  # fmt: skip

STUDS: Final = Table(
    title="Stud a terminal must fit, by the protection it is bolted to",
    key="protection",
    value="stud",
    source=common_practice("studs of protections; measure before buying terminals"),
    rows={
        "bolt-down small": "M5",
        "bolt-down large": "M8",
        "terminal-mount": "M8",
        "plate": "M8",
        "class T": "M8, above 200 A M10",
    },
)
