"""Fields of the start bank, how it joins the house bank, and more of the house bank."""

from __future__ import annotations

from typing import Final

from engine.field import CHOICE, TEXT, Field, by_name
from engine.plan.shore_fields import YES_OR_NO
from engine.units import CHARGE, CURRENT, DAYS, FRACTION, NUMBER, VOLTS, Kind

WEIGHT: Final = Kind("weight", "kilogram", "kg", "58 kg or 128 lb")

CHEMISTRY: Final = Field(
    "chemistry", "Chemistry", CHOICE,
    choices=(
        ("flooded", "flooded lead-acid"),
        ("agm", "AGM lead-acid"),
        ("gel", "gel lead-acid"),
        ("lithium", "lithium iron phosphate"),
    ),
)  # fmt: skip
APART: Final = "apart"
SELECTOR: Final = "selector"
RELAY: Final = "relay"
CONVERTER: Final = "converter"
ALWAYS: Final = "always"
JOINED: Final = (
    (CONVERTER, "by a DC-DC charger"),
    (RELAY, "by a charging relay"),
    (SELECTOR, "by a selector switch (1, 2, both)"),
    (APART, "not at all: each has a charging source of its own"),
    (ALWAYS, "for good: nothing parts them"),
)
"""How the start bank is joined to the house bank for charging."""
DAILY_HELP: Final = "20 % lets a lead-acid bank live long."

BANK_MORE: Final = by_name(
    Field("battery_volts", "Volts of one battery", VOLTS,
          "On its label, such as 6 V or 12.8 V. Empty: the system's.", "", 1.0, 60.0),
    Field("alike", "Its batteries are all alike", CHOICE, "Chemistry, make, size and age.",
          choices=YES_OR_NO),
    Field("cold_stop", "A sensor stops charging when the bank is cold", CHOICE,
          choices=YES_OR_NO),
    Field("most_charge", "Most charge current", CURRENT,
          "From its label. Empty: typical for the chemistry.", "", 0.0, 5000.0, above=True),
    Field("most_discharge", "Largest discharge it allows", CURRENT,
          "From its label, or what its protection opens at.", "", 0.0, 20000.0, above=True),
    Field("mass", "Mass", WEIGHT, "The whole bank. Empty: typical for the chemistry.", "",
          0.0, 20000.0, above=True),
    Field("cycles", "Cycles it gives", NUMBER,
          "From its papers, to the reserve line. Empty: typical for the chemistry.", "",
          1.0, 100000.0),
    Field("days_wanted", "Days without charging", DAYS,
          "1.5 to 3 at anchor where an engine can help; 5 and more on sun alone.", "2 days",
          0.04, 365.0),
    Field("daily_depth", "Deepest in a day", FRACTION,
          f"{DAILY_HELP} Empty: as deep as the spell.", "", 0.02, 1.0),
    Field("end_of_life", "Left of the capacity when old", FRACTION, "80 % is usual.", "80 %",
          0.3, 1.0),
    Field("margin", "Margin", NUMBER, "For what is not yet known: 1.10 to 1.25.", "1.1", 1.0, 3.0),
)  # fmt: skip
"""More of the house bank: its batteries, its limits, and what it is sized for."""

START: Final = by_name(
    Field("joined", "Joined to the house bank for charging", CHOICE, choices=JOINED),
    Field("parts", "They part when charging ends", CHOICE,
          "A relay by itself; a selector switch by hand, every time.", choices=YES_OR_NO),
    Field("converter", "DC-DC charger", CURRENT, "What it is marked, such as 30 A.", "", 0.0,
          500.0, above=True),
    CHEMISTRY,
    Field("capacity", "Capacity", CHARGE, "As labelled, such as 75 Ah.", "", 0.0, 2000.0,
          above=True),
    Field("note", "Note", TEXT),
)  # fmt: skip
"""The bank that starts the engine."""
