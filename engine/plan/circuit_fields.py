"""Every field of a circuit, and of the legs a run may be built from."""

from __future__ import annotations

from typing import Final

from engine.conductors.colours import FUNCTIONS
from engine.conductors.drop import CLASSES
from engine.estimate import KNOWN_BY
from engine.field import CHOICE, SIZE, TEXT, YES_NO, Field, by_name
from engine.plan.parts import NONE_FITTED
from engine.protection.series import SERIES
from engine.units import (
    CURRENT,
    FRACTION,
    LENGTH,
    NUMBER,
    RESISTANCE,
    TEMPERATURE,
    VOLTS,
)

KNOWN: Final = tuple(KNOWN_BY.items())

FEEDS: Final = (
    ("loads", "loads"),
    ("motor", "a motor"),
    ("bus", "a bus or panel"),
    ("inverter", "the inverter"),
    ("source", "a charging source: power comes from its end too"),
    ("bank", "another bank: power comes from its end too"),
    ("starter", "the engine's starter"),
)
"""What is at a circuit's far end."""

CIRCUIT: Final = by_name(
    Field("name", "Circuit", TEXT),
    Field(
        "run",
        "Run, one way",
        LENGTH,
        "From the source of power to the load, as the conductor goes. There and back is reckoned "
        "from it. Empty: added up from its legs.",
        above=True,
        least=0.0,
        most=100.0,
        usual=(0.1, 40.0),
    ),
    Field("run_by", "Run known by", CHOICE, choices=KNOWN),
    Field("legs", "Legs it follows", TEXT, "Such as Z01 Z02; used where no run is entered."),
    Field(
        "bends", "Allowance for bends", FRACTION, "Added to the sum of its legs.", "10 %", 0.0, 1.0
    ),
    Field(
        "current",
        "Design current",
        CURRENT,
        "The most that runs at one time on this circuit.",
        above=True,
        least=0.0,
        most=1000.0,
        usual=(0.0, 400.0),
    ),
    Field("current_by", "Current known by", CHOICE, choices=KNOWN),
    Field("size", "Conductor", SIZE, "With its catalogue: 10 AWG, 10 SAE or 6 mm2."),
    Field(
        "parallel", "Conductors side by side each way", NUMBER,
        "Two equal cables instead of one thick one: 2.", "1", 1.0, 6.0,
    ),
    Field("allowed", "Drop class", CHOICE, default="critical", choices=CLASSES),
    Field("fed_from", "Fed from", TEXT, "The circuit that feeds it, such as D04. Empty: the bank."),
    Field("feeds", "It feeds", CHOICE, default="loads", choices=FEEDS),
    Field(
        "joints", "Joints and contacts", RESISTANCE,
        "Switch, fuse, lugs and joints of the whole loop, such as 1 mohm. Empty: none counted.",
        "", 0.0, 0.25,
    ),
    Field(
        "insulation",
        "Insulation",
        TEMPERATURE,
        "Printed on the jacket; most boat cable is 105 °C.",
        "105 degC",
        60.0,
        200.0,
    ),
    Field("engine_space", "Part of it in the engine space", YES_NO),
    Field("in_sheath", "Inside a sheath with other conductors", YES_NO),
    Field(
        "bundle", "Conductors run together", NUMBER,
        "Current-carrying conductors in the same bundle, this pair included.", "2", 1.0, 200.0,
    ),
    Field("ambient", "Air around it", TEMPERATURE, "", "30 degC", -20.0, 90.0),
    Field("function", "What it does", CHOICE, "For the colour of its positive.",
          choices=tuple((name, name) for name in FUNCTIONS)),
    Field(
        "protection", "Protection rating", CURRENT, "What the fuse or breaker is marked.",
        above=True, least=0.0, most=1000.0,
    ),
    Field("protection_kind", "Protection", TEXT, "In your words: fuse or breaker, and its type."),
    Field(
        "series", "Protection type", CHOICE, "By it go volts and interrupting rating.",
        choices=(
            (NONE_FITTED, "none fitted"), *((name, name) for name in SERIES),
        ),
    ),
    Field(
        "interrupting", "Interrupting rating", CURRENT,
        "Marked on it, such as 5000 A. Empty: typical for its type.", "", 0.0, 300000.0,
    ),
    Field(
        "to_protection", "From the source of power to it", LENGTH,
        "Along the conductor; 0 where it sits on the post or bus.", "", 0.0, 30.0,
    ),
    Field("sheathed", "Sheathed or enclosed all that way", YES_NO),
    Field(
        "abreast", "Equal protections side by side", NUMBER,
        "Two panels with a fuse each: 2.", "1", 1.0, 12.0,
    ),
    Field("far_end", "Protection at its far end too", CHOICE, "Where power comes from both ends.",
          choices=(("yes", "yes"), ("no", "no"))),
    Field("self_limiting", "The source at its far end limits its own current", YES_NO),
    Field(
        "label_most", "Most its gear's label asks for", CURRENT,
        "Many pumps and radios name the fuse they want.", "", 0.0, 1000.0,
    ),
    Field(
        "stall", "Current with the motor stuck", CURRENT,
        "Locked-rotor current, from the maker's paper.", "", 0.0, 5000.0,
    ),
    Field(
        "read_drop", "Drop read with it running", VOLTS,
        "Volts lost from source to load and back, by meter.", "", 0.0, 60.0,
    ),
    Field("volts", "Its own volts", VOLTS, "Only where not the system's, such as panels.", "",
          1.0, 120.0),
    Field("continuous", "Runs for three hours or more", YES_NO, default="yes"),
    Field("note", "Note", TEXT),
)  # fmt: skip

LEG: Final = by_name(
    Field("name", "From and to", TEXT, "Such as panel to galley."),
    Field(
        "length", "Length", LENGTH, "One way, along the conductor's path.", above=True, least=0.0,
        most=100.0,
    ),
    Field("length_by", "Known by", CHOICE, choices=KNOWN),
    Field("note", "Note", TEXT),
)  # fmt: skip
"""One stretch between two zones; circuits that pass the same way share it."""
