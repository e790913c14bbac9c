"""Every field of what charges the bank, and of when the engine may run for it."""

from __future__ import annotations

from typing import Final

from engine.field import CHOICE, TEXT, YES_NO, Field, by_name
from engine.units import (
    ANGLE,
    CLOCK,
    CURRENT,
    FRACTION,
    FUEL,
    LENGTH,
    NUMBER,
    POWER,
    SPEED,
    TIME,
    VOLTS,
)

KINDS: Final = (
    ("solar", "solar panels"),
    ("alternator", "engine alternator"),
    ("shore", "shore charger"),
    ("wind", "wind turbine"),
    ("water", "towed generator"),
    ("generator", "AC generator"),
)
CONTROLLERS: Final = (
    ("tracking", "one that tracks the best point (MPPT)"),
    ("plain", "a plain one (PWM)"),
)
SHADES: Final = tuple(
    (name, name)
    for name in (
        "arch clear of the boom", "bimini under boom or backstay", "deck among the rigging",
    )
)  # fmt: skip
MOUNTINGS: Final = tuple(
    (name, name) for name in ("open rack", "close to a roof", "bonded to the deck")
)

SOURCE: Final = by_name(
    Field("kind", "Source", CHOICE, choices=KINDS),
    Field("marked", "As marked", TEXT, "Such as 100 W or 60 A; counts where no figure is given."),
    Field("counted", "Counts in this plan", YES_NO, "Off: kept for a comparison only.", "yes"),
    Field("watts", "Watts", POWER, "All together: 2 x 210 W will do.", above=True, least=0.0,
          most=100000.0, usual=(10.0, 20000.0)),
    Field("current", "Amperes", CURRENT, "As marked.", above=True, least=0.0, most=1000.0),
    Field("controller", "Controller", CHOICE, default="tracking", choices=CONTROLLERS),
    Field("panels", "Panels", NUMBER, "How many in all.", "1", 1.0, 60.0),
    Field("strings", "Strings side by side", NUMBER, "Panels in one string stand in series.",
          "1", 1.0, 60.0),
    Field("panel_volts", "Volts of one panel", VOLTS, "At its best point, as labelled.", "18 V",
          5.0, 120.0),
    Field("tilt", "Tilt", ANGLE, "From level. A boat that swings counts as level.", "0 deg", 0.0,
          90.0),
    Field("facing", "It faces", ANGLE, "Clockwise from true north; counts where it is tilted.",
          "180 deg", 0.0, 360.0),
    Field("shade", "Where the panels lie", CHOICE, default="bimini under boom or backstay",
          choices=SHADES),
    Field("mount", "Mounted", CHOICE, default="open rack", choices=MOUNTINGS),
    Field("dirt", "Lost to dirt and salt", FRACTION, "", "3 %", 0.0, 0.6),
    Field("overall", "Whole of the rating, if measured", FRACTION,
          "A day's Ah × nominal volts, over watts × hours of full sun; in place of every loss.",
          "", 0.05, 1.0),
    Field("ratio", "Pulley ratio", NUMBER, "Turns of the alternator for one of the engine.", "2.2",
          0.5, 6.0),
    Field("speed", "Engine speed while charging", NUMBER, "Revolutions a minute.", "1500", 0.0,
          6000.0),
    Field("hot", "Left when hot", FRACTION, "Of what is marked, after half an hour.", "75 %", 0.2,
          1.0),
    Field("limit", "Set limit", CURRENT, "By its regulator or a setting.", "", 0.0, 1000.0),
    Field("read", "Read hot", CURRENT, "By the meter, at that speed; counts before any reckoning.",
          "", 0.0, 1000.0),
    Field("fuel", "Fuel while charging", FUEL, "Empty: typical for the power it gives.", "",
          0.0, 50.0),
    Field("diameter", "Rotor, across", LENGTH, "", "", 0.05, 5.0),
    Field("coefficient", "Power coefficient", FRACTION, "Up to its terminals.", "25 %", 0.02, 0.59),
    Field("height", "Hub above the water", LENGTH, "", "4 m", 0.5, 30.0),
    Field("shelter", "Wind left by the shelter", FRACTION, "An anchorage has 50 to 70 %.", "60 %",
          0.05, 1.0),
    Field("wind_speed", "Mean wind, open water", SPEED, "Empty: by place and month.", "", 0.0,
          30.0),
    Field("boat_speed", "Boat's speed", SPEED, "Through the water, under way.", "5 kn", 0.0, 15.0),
    Field("hours", "Hours a day", TIME, "Plugged in, or towing.", "24 h", 0.0, 24.0),
    Field("note", "Note", TEXT),
)  # fmt: skip

SHARE: Final = {"kind": FRACTION, "least": 0.0, "most": 1.0}

POLICY: Final = by_name(
    Field("source", "Charged by", TEXT, "The source that is started when the bank is low: S01."),
    Field("engine_on_at", "Engine on at", help="Empty: at the reserve line.", **SHARE),  # type: ignore[arg-type]
    Field("engine_off_at", "Engine off at", help="Empty: 40 % higher, lead at 85 % at most.",
          **SHARE),  # type: ignore[arg-type]
    Field("least_run", "Least run", TIME, "Once started.", "30 min", 0.0, 12.0),
    Field("quiet_from", "Quiet from", CLOCK, "Such as 21:00; equal times mean no quiet.", "00:00"),
    Field("quiet_to", "Quiet to", CLOCK, "", "00:00"),
    Field("never", "The engine never runs only to charge", YES_NO),
)  # fmt: skip
