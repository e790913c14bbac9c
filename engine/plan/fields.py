"""Every field of the plan, declared once: name, label, unit, limits and help."""

from __future__ import annotations

from typing import Final

from engine.conductors.sizes import CATALOGUES
from engine.field import CHOICE, SIZE, TEXT, YES_NO, Field, by_name
from engine.loads.load import BEHAVIOURS, CONDITIONS, SUPPLIES, WINDOWS
from engine.plan.circuit_fields import CIRCUIT, KNOWN, LEG
from engine.plan.look_fields import LOOKS
from engine.plan.shore_fields import AC, RECORD, SHORE
from engine.plan.source_fields import POLICY, SOURCE
from engine.plan.start_fields import BANK_MORE, CHEMISTRY, START
from engine.plan.variant_fields import VARIANT
from engine.units import (
    CHARGE,
    CURRENT,
    FRACTION,
    LATITUDE,
    LENGTH,
    LONGITUDE,
    NUMBER,
    POWER,
    RESISTANCE,
    TEMPERATURE,
    TIME,
    VOLTS,
)

MONTHS: Final = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip

DAYTIME: Final = {"kind": TIME, "least": 0.0, "most": 24.0}


BOAT: Final = by_name(
    Field("name", "Boat's name", TEXT),
    Field("volts", "System volts", VOLTS, "Nominal: 12, 24 or 48.", "12 V", 6.0, 60.0),
    Field(
        "use",
        "How you live aboard",
        CHOICE,
        choices=(
            ("weekends", "weekends and holidays"),
            ("coast", "weeks at anchor along a coast"),
            ("offshore", "offshore, months away"),
        ),
    ),
    Field("people", "People aboard", NUMBER, least=1, most=40, usual=(1, 8)),
    Field("month", "Month to plan for", CHOICE, choices=tuple((m.lower(), m) for m in MONTHS)),
    Field("latitude", "Latitude", LATITUDE, "Such as 43 N; a rough figure will do.", "", -90.0,
          90.0),
    Field("longitude", "Longitude", LONGITUDE,
          "Such as 5 W. Empty: the mean over the sea at that latitude.", "", -180.0, 180.0),
    Field("place", "Where", TEXT),
    Field("revision", "Revision", TEXT, "Such as as found, planned, as built."),
    Field(
        "tape",
        "Tape accuracy",
        LENGTH,
        "How far a run measured behind joinery may be off, either way.",
        "0.3 m",
        0.0,
        5.0,
    ),
    Field(
        "meter", "Meter accuracy", VOLTS,
        "How far a reading of the meter may be off, either way.", "0.05 V", 0.0, 2.0,
    ),
    Field(
        "catalogue", "Conductor sizes", CHOICE, default="sae", choices=CATALOGUES,
        help="The catalogue new sizes are offered from. What you typed stays in its own.",
    ),
    Field("note", "Notes", TEXT),
)  # fmt: skip

LOAD: Final = by_name(
    Field("name", "Load", TEXT),
    Field("zone", "Zone", TEXT, "Where it is, such as galley."),
    Field("circuit", "Circuit", TEXT, "The DC circuit that feeds it, such as D05."),
    Field("supply", "Fed by", CHOICE, default="dc", choices=SUPPLIES),
    Field(
        "draw",
        "Draw",
        CURRENT,
        "Running current in A, or power in W, with its range if you know one: 4.6 A (4.3 to 5). "
        "AC loads: W at the plug, or A read on the DC side.",
        least=0.0,
        most=2000.0,
        usual=(0.0, 400.0),
    ),
    Field("draw_by", "Known by", CHOICE, choices=KNOWN),
    Field(
        "behaves", "As the volts fall", CHOICE,
        "Empty: a draw in A stays, a draw in W keeps its power.", choices=BEHAVIOURS,
    ),
    Field("marked", "As marked", TEXT, "What the nameplate says."),
    Field("surge", "Surge", CURRENT, "Greatest current or power while starting.", "", 0.0, 5000.0),
    *(
        Field(
            f"hours_{name}", f"Hours {spoken}", help="Hours in 24 that it is switched on.",
            **DAYTIME,  # type: ignore[arg-type]
        )
        for name, spoken in CONDITIONS.items()
    ),
    Field(
        "duty",
        "Duty",
        FRACTION,
        "Share of those hours it really runs. A fridge humming 10 hours in 24 has 0.42.",
        "1",
        0.0,
        1.0,
    ),
    Field("window", "When", CHOICE, default="any", choices=WINDOWS),
    Field("essential", "Essential", YES_NO, "Stays on when power is short."),
    Field("always_live", "Always live", YES_NO, "No switch stops it."),
    Field("note", "Note", TEXT),
)  # fmt: skip

TAKE_OFFS: Final = (
    ("one end", "both from the first battery"),
    ("diagonal", "positive from the first, negative from the last"),
    ("equal leads", "from common posts, by leads of equal length"),
)

BANK: Final = by_name(
    CHEMISTRY,
    Field("capacity", "Capacity", CHARGE, "As labelled, the whole bank: 2 x 110 Ah will do.",
          above=True, least=0.0, most=5000.0, usual=(20.0, 2000.0)),
    Field("rated_hours", "Rated hours", TIME, "The discharge time the label was stated for.",
          "20 h", 0.9, 120.0),
    Field("health", "Health", FRACTION,
          "Tested capacity over labelled. Unknown widens the answer.", "", 0.05, 1.2),
    Field("age", "Age", TEXT, "Such as 7 years; not known is an answer."),
    Field("charge", "Charge now", FRACTION, "State of charge to start from.", "100 %", 0.0, 1.0),
    Field("reserve", "Reserve line", FRACTION, "Charge below which the plan never goes.", "",
          0.0, 0.95),
    Field("temperature", "Bank's temperature", TEMPERATURE, "", "20 degC", -30.0, 60.0),
    Field("exponent", "Peukert's exponent", NUMBER, "Empty: typical for the chemistry.", "",
          1.0, 1.6),
    Field("resistance", "Inner resistance", RESISTANCE,
          "Such as 3 mohm. Empty: typical for the chemistry.", "", 0.00001, 0.25),
    Field("cranking", "Cold-cranking amperes", CURRENT,
          "Of the whole bank, where its label gives them.", "", 0.0, 20000.0),
    Field("strings", "Batteries side by side", NUMBER, "Strings in parallel; 1 for a single one.",
          "1", 1.0, 24.0),
    Field("take_off", "Main leads leave", CHOICE,
          "Where the boat's two main leads sit on the bank.", choices=TAKE_OFFS),
    Field("link_run", "Link between batteries", LENGTH, "One link, lug to lug.", "", 0.0, 5.0),
    Field("link_size", "Its conductor", SIZE, "Such as 2/0 AWG."),
    *BANK_MORE.values(),
)  # fmt: skip

INVERTER: Final = by_name(
    Field("rating", "Rating", POWER, "Continuous power on the nameplate.", above=True, least=0.0,
          most=20000.0),
    Field("surge", "Surge rating", POWER, "For a few seconds; empty: not known.", "", 0.0, 60000.0),
    Field(
        "curve",
        "Efficiency curve",
        CHOICE,
        default="typical",
        choices=(
            ("good", "good: 95 % at half load"),
            ("typical", "typical: 92 % at half load"),
            ("basic", "basic: 88 % at half load"),
        ),
    ),
    Field("idle", "Idle draw", POWER, "On with nothing running; empty: the curve's own.", "", 0.0,
          500.0),
    Field("cutoff", "Low-voltage cut-off", VOLTS, "The inverter stops below it.", "", 5.0, 60.0),
    Field("circuit", "Feed circuit", TEXT, "The DC circuit from the bank, such as D02."),
)  # fmt: skip

SINGLE: Final = {
    "boat": BOAT, "bank": BANK, "start": START, "inverter": INVERTER, "looks": LOOKS,
    "shore": SHORE, "policy": POLICY,
}  # fmt: skip
"""Parts of the plan that stand once."""
ROWS: Final = {
    "loads": LOAD, "circuits": CIRCUIT, "sources": SOURCE, "legs": LEG, "ac": AC,
    "records": RECORD, "variants": VARIANT,
}  # fmt: skip
"""Parts of the plan that are lists of rows, each with an id."""
LETTERS: Final = {
    "loads": "L", "circuits": "D", "sources": "S", "legs": "Z", "ac": "A", "records": "R",
    "variants": "V",
}  # fmt: skip
LONG: Final = {"note", "changes"}
"""Fields that hold more than a name."""
LONGEST_NOTE: Final = 2000
LONGEST_NAME: Final = 200
MOST_ROWS: Final = {
    "loads": 500, "circuits": 300, "sources": 50, "legs": 300, "ac": 60, "records": 200,
    "variants": 12,
}  # fmt: skip


def field_at(path: str) -> Field:
    """Return the declaration of a path such as ``loads.L11.draw`` or ``bank.capacity``.

    Parameters
    ----------
    path : str
        Of a field that exists.

    Examples
    --------
    >>> field_at("circuits.D05.run").label
    'Run, one way'
    """
    part, *row, name = path.split(".")
    if len(row) != (1 if part in ROWS else 0):
        raise KeyError(path)
    return (SINGLE.get(part) or ROWS[part])[name]
