"""The two dozen things most boats have, for the first questions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Common:
    """A tick in the first questions: its words, the generic load it stands for, and how many."""

    words: str
    generic: str
    count: int = 1


COMMON: Final = (
    Common("Fridge", "Fridge 80-130 L air-cooled"),
    Common("Freezer", "Freezer 60-100 L"),
    Common("Cabin lights, LED, 6", "LED cabin light (each)", 6),
    Common("Anchor light, LED", "Anchor light LED 2 nm"),
    Common("Sailing light, LED", "Masthead tricolour LED"),
    Common("Autopilot, below deck", "Autopilot linear below deck"),
    Common("Tiller pilot", "Autopilot tiller (small)"),
    Common("Chart display", "Chart display 7-9 in"),
    Common("Wind, depth and speed", "Instruments: depth/speed/wind set"),
    Common("VHF radio", "VHF receive/standby"),
    Common("AIS transponder", "AIS class B transponder (CS 2 W)"),
    Common("Radar", "Radar solid-state/broadband transmit"),
    Common("Fresh-water pump", "Freshwater pressure pump"),
    Common("Bilge pump, automatic", "Bilge pump automatic"),
    Common("Electric toilet", "Electric head (flush)"),
    Common("Watermaker", "Watermaker DC with energy recovery 25-35 L/h"),
    Common("Anchor windlass", "Windlass 700-1000 W"),
    Common("Phones, 2", "Phone charging", 2),
    Common("Laptop", "Laptop (charging/working)"),
    Common("Satellite broadband", "LEO broadband flat terminal (mini class)"),
    Common("Cabin fans, 2", "Cabin fan (each)", 2),
    Common("Diesel heater", "Diesel air heater run"),
    Common("Gas and CO alarm", "Gas/CO alarm"),
    Common("Microwave, on the inverter", "Microwave 700-800 W cooking (AC input)"),
)
"""What the first questions offer."""

FRIDGES: Final = ("Fridge", "Freezer")
"""Those whose duty the fourth question asks."""
