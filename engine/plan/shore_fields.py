"""Every field of the alternating-current side: shore power, its circuits, and licensed results."""

from __future__ import annotations

from typing import Final

from engine.field import CHOICE, SIZE, TEXT, YES_NO, Field, by_name
from engine.shore.isolation import Isolation
from engine.shore.leakage_asks import WET_PLACES
from engine.shore.services import SERVICES
from engine.units import CURRENT, LENGTH, NUMBER, POWER, TEMPERATURE, Kind

LEAK: Final = Kind("leakage current", "milliampere", "mA", "30 mA")
TRIP: Final = Kind("trip time", "millisecond", "ms", "100 ms")

KNOWN_SERVICES: Final = tuple((name, name) for name in SERVICES)
YES_OR_NO: Final = (("yes", "yes"), ("no", "no"))

FEEDING: Final = (
    ("apart", "a cord each"),
    ("splitter", "one cord and a splitter"),
    ("selector", "a selector: one inlet at a time"),
)
"""How two inlets are fed."""
TRANSFERS: Final = (
    ("none", "none"),
    ("switch", "a selector switch"),
    ("relay", "a relay, or the inverter-charger's own"),
)
BONDS: Final = (
    ("absent", "there is none aboard"),
    ("own", "at it, only while it is the source"),
    ("always", "at it, for good"),
    ("never", "nowhere"),
)
"""Where a source on board joins neutral and safety ground."""
WAVES: Final = (("pure", "pure sine"), ("modified", "modified"))
DRY: Final = "dry"
PLACES: Final = ((DRY, "a dry place"), *((place, f"the {place}") for place in WET_PLACES))
SUPPLIES: Final = (
    ("main", "the main"),
    ("inverter", "the inverter; on shore power it passes through"),
    ("inlet", "the inlet: it is the main itself"),
)
RESULTS: Final = (("pass", "pass"), ("fail", "fail"), ("open", "open"))


DRAWN: Final = "From drawings or the licensed person; open nothing."
"""Where an owner finds what stands behind a cover."""


def _asked(name: str, label: str, help_: str = "") -> Field:
    return Field(name, label, CHOICE, help_, choices=YES_OR_NO)


def _marked(name: str, label: str, help_: str, most: float = 200.0) -> Field:
    return Field(name, label, CURRENT, help_, above=True, least=0.0, most=most)


SHORE: Final = by_name(
    Field("service", "Shore service", CHOICE, "What the inlet is made for.",
          choices=KNOWN_SERVICES),
    Field("dock", "What the dock offers", CHOICE,
          "Where it is not the same as the inlet, and always with a splitter.",
          choices=KNOWN_SERVICES),
    Field("inlets", "Inlets", CHOICE, default="1", choices=(("1", "one"), ("2", "two"))),
    Field("feeding", "Two inlets are fed by", CHOICE, choices=FEEDING),
    Field("one_phase", "Both legs come from one phase", YES_NO),
    Field("cord_length", "Shore cord", LENGTH, "Its whole length, dock to inlet.", above=True,
          least=0.0, most=200.0, usual=(1.0, 60.0)),
    Field("cord_size", "Conductor of the cord", SIZE, "Printed on the cord: 10 AWG or 2.5 mm2."),
    Field("feed_length", "From inlet to main breaker", LENGTH,
          f"Along the conductor, not through the air. {DRAWN}", least=0.0, most=60.0),
    Field("feed_size", "Conductor, inlet to main", SIZE, f"Such as 10 AWG or 4 mm2. {DRAWN}"),
    Field("feed_guarded", "That run is sheathed, or guarded by another breaker", YES_NO),
    _marked("main_rating", "Main breaker", "What it is marked."),
    Field("main_poles", "Poles of the main breaker", CHOICE,
          choices=(("1", "one"), ("2", "two"), ("3", "three"), ("4", "four"))),
    _marked("main_interrupting", "Main interrupts", f"Such as 5000 A. {DRAWN}", 300000.0),
    _marked("branch_interrupting", "Branches interrupt", f"The least of them. {DRAWN}", 300000.0),
    _asked("leakage", "Leakage protection at the main", "The breaker with a test button."),
    Field("leakage_trip", "It opens at", LEAK, "Such as 30 mA.", least=1.0, most=1000),
    Field("leakage_time", "It opens within", TRIP, "Such as 100 ms.", above=True, least=0.0,
          most=10000),
    Field("transfer", "Change between sources", CHOICE, choices=TRANSFERS),
    _asked("transfer_interlock", "Two sources can never feed at one time"),
    _asked("transfer_breaks", "It breaks before it makes"),
    _asked("transfer_neutral", "It switches the neutral too"),
    _asked("polarity", "Polarity indicator", "A light or buzzer that shows crossed wires."),
    Field("isolation", "Galvanic isolation", CHOICE, "The safety ground itself is never cut.",
          choices=tuple((str(one), str(one)) for one in Isolation)),
    _marked("isolator_rating", "Isolator", "What it is marked."),
    _asked("isolator_closes", "It fails closed", "Its papers say fail-safe."),
    _asked("isolator_watched", "A monitor tells its state"),
    Field("transformer_rating", "Transformer", POWER, "VA on its plate, such as 3600.", above=True,
          least=0.0, most=50000.0),
    Field("transformer_distance", "From inlet to transformer", LENGTH, "Along the conductor.",
          least=0.0, most=60.0),
    _marked("limit", "Input current limit", "As set in the inverter-charger.", 100.0),
    Field("charger_circuit", "Circuit of the inverter-charger's input", TEXT, "Such as A02."),
    Field("panel_bond", "Neutral joined to safety ground at the AC panel", CHOICE,
          "Only as a licensed person told you.", choices=YES_OR_NO),
    Field("inverter_bond", "The inverter joins neutral and ground", CHOICE,
          "As its papers or a licensed person say.", choices=BONDS),
    Field("generator_bond", "The generator joins neutral and ground", CHOICE,
          "As its papers or a licensed person say.", choices=BONDS),
    Field("wave", "The inverter's wave", CHOICE, choices=WAVES),
    Field("air", "Warmest air at the inverter", TEMPERATURE, "", "", -20.0, 90.0),
    Field("generator_rating", "AC generator", POWER, "Continuous, on its plate.", above=True,
          least=0.0, most=50000.0),
    Field("abroad", "Service abroad, to compare", CHOICE, choices=KNOWN_SERVICES),
    Field("note", "Note", TEXT),
)  # fmt: skip
"""Shore power from dock to main, its protections, and the sources beside it."""

AC: Final = by_name(
    Field("name", "AC circuit", TEXT),
    Field("supply", "Fed by", CHOICE, default="main", choices=SUPPLIES),
    _marked("breaker", "Breaker", "What it is marked."),
    Field("poles", "Poles", CHOICE, choices=(("1", "one"), ("2", "two"))),
    Field("appliances", "Appliances", TEXT, "With watts: kettle 1000 W, charger 680 W."),
    Field("plates", "Volts and hertz on their plates", TEXT,
          "Such as charger 90 to 265 V 47 to 63 Hz. Empty: what heats or has a motor counts as "
          "made for this service only, the rest as not known."),
    Field("together", "Planned to run with the rest", YES_NO, default="yes"),
    Field("size", "Conductor", SIZE, f"With its catalogue: 12 AWG or 2.5 mm2. {DRAWN}"),
    Field("insulation", "Insulation", TEMPERATURE,
          f"Empty: reckoned as the least, 60 °C. {DRAWN}", "", 60.0, 200.0),
    Field("bundle", "Conductors that carry, run together", NUMBER,
          "Live conductors and neutrals of every cable it runs beside; a cable alone has 2. Empty: "
          f"reckoned as 4, two cables. {DRAWN}", "", 2.0, 100.0),
    Field("engine_space", "Part of it in the engine space", YES_NO),
    Field("outlets", "Number of outlets", NUMBER,
          "A double one counts as two; 0 where it feeds a fixed appliance.", "", 0.0, 50.0),
    Field("outlet_rating", "Its outlets are marked", CURRENT, "Such as 15 A.", above=True,
          least=0.0, most=100.0),
    Field("place", "Its outlets are in", CHOICE, choices=PLACES),
    Field("ground_fault", "Its outlets open at a leakage of", LEAK,
          "Such as 5 mA; 0 where they have no leakage protection.", "", 0.0, 1000.0),
    Field("leg", "Leg", CHOICE, "Of a service with two.", "1",
          choices=(("1", "leg 1"), ("2", "leg 2"), ("both", "both, 240 V"))),
    Field("note", "Note", TEXT),
)  # fmt: skip
"""One circuit on alternating current."""

RECORD: Final = by_name(
    Field("name", "What was tested", TEXT, "Such as leakage trip at the main."),
    Field("found", "What they found", TEXT, "Their figure and unit."),
    Field("result", "Result", CHOICE, choices=RESULTS),
    Field("person", "Licensed person", TEXT, "Name, and licence if they give it."),
    Field("date", "Date", TEXT, "Such as 2027-03-20."),
    Field("note", "Note", TEXT),
)
"""One result that a licensed person measured and signs for."""
