"""Every table has a source with a place, and a second opinion: order, and bounds of the trade.

A digit typed wrong should fail here or in ``tests/published``. A new table must say below how it
is checked.
"""

import importlib
import pkgutil
from itertools import pairwise
from math import inf

import pytest

import engine
from engine.conductors.sizes import area_of_awg
from engine.conductors.tables import CARRYING, INSULATIONS
from engine.protection.tables import BANDS
from engine.table import ALL, Table

for module in pkgutil.walk_packages(engine.__path__, "engine."):
    if not module.name.endswith("__main__"):
        importlib.import_module(module.name)

RISES = {
    "Least copper of SAE conductors",
    "Allowable amperage of conductors at 30 °C",
    "Factor for conductors in engine spaces",
    "Capacity of a lithium iron phosphate cell at a temperature",
    "Volts at rest of a flooded 12 V battery, full at 1.265",
    "Volts of four lithium iron phosphate cells, discharged in 20 hours",
    "Losses of an inverter, per unit of its rating",
    "Least interrupting rating, 12 and 24 V DC",
    "Least interrupting rating, 32 V DC",
    "Strands of the most flexible boat conductors",
    "Pull a crimped terminal must hold for one minute",
    "Most charging current of a cold lithium bank, for each ampere-hour",
    "Fuel of a diesel generator of 20 kW",
    "Fuel of a diesel generator of 8 kW",
}
FALLS = {
    "Direct-current resistance of stranded coated copper at 75 °C",
    "Largest resistance of flexible metal-coated copper conductors at 20 °C",
    "Factor for current-carrying conductors run together",
    "Larger cell needed for the cold, lead-acid",
    "Cycles of a lead-acid bank until 80 % of its capacity is left",
    "Cycles of a lithium iron phosphate cell until 80 % of its capacity is left",
    "Largest resistance of flexible plain copper conductors at 20 °C",
    "What an inverter gives in warm air, over its rating",
}
EACH_ROW_RISES = {
    "Peukert's exponent of a bank rated at 20 hours": (1.0, 1.5),
    "Internal resistance of a 12 V block of 100 Ah, half charged, at 25 °C": (1.0, 10.0),
    "Surge of an appliance over its running watts": (1.0, 12.0),
    "Volts a 12 V bank is charged to at 25 °C": (13.8, 14.8),
    "Volts a full 12 V bank is kept at, 25 °C": (13.2, 13.8),
    "Volts a 12 V bank is equalised at, 25 °C": (15.0, 16.0),
    "What a bank weighs for the energy on its label": (6.0, 35.0),
    "Size of a mains charger for each ampere-hour of the bank": (0.1, 0.5),
    "Fuel of a boat's engine that charges": (0.4, 1.5),
    "Locked-rotor code letters of motors": (0.0, 22.4),
    "Least interrupting rating of breakers on alternating current": (3000, 5000),
    "Least interrupting rating of breakers on a large service": (3000, 5000),
    "Idle draw of an inverter switched on, over its rating": (0.005, 0.02),
    "Draw of an inverter in search mode": (1.0, 4.0),
    "Typical figures of an isolation transformer": (6.0, 60.0),
    "Galvanic volts an isolator blocks": (1.2, 1.4),
    "Sun left to a panel after rig and motion": (0.5, 1.0),
}
WITHIN = {
    "Most a very slow discharge gives, over the 20-hour capacity": (1.0, 1.2),
    "Share of the capacity planned to be used": (0.3, 0.9),
    "How the internal resistance grows": (1.0, 2.0),
    "Coldest cell that may be charged": (-20.0, 0.0),
    "Volts under load at which a 12 V bank is taken as empty": (10.5, 12.5),
    "Nominal volts of a block that serves a 12 V system": (12.0, 12.8),
    "Volts at rest above those of a flooded battery, at every charge": (0.0, 0.2),
    "Rate at which the two wells of a bank level out": (0.2, 1.0),
    "Share of a bank that lies in the well at hand": (0.2, 0.9),
    "Change of the charging volts with the cells' temperature": (-5.0, 0.0),
    "Cycles to half depth that a bank aboard may give": (500.0, 10000.0),
    "Most charging current a bank should see, for each ampere-hour": (0.15, 1.0),
    "Rate at which a bank's acceptance falls as it fills": (0.4, 10.0),
    "Ampere-hours given back over those put in, from half full to full": (0.8, 1.0),
    "Fuel of an AC diesel generator": (0.05, 0.3),
    "How the current of an appliance follows the volts": (-1.0, 1.0),
    "Sun of a day over that of a clear one": (0.1, 1.0),
}
ELSEWHERE = {
    "Generic loads": "tests/loads",
    "Factor k of copper conductors in a short circuit": "tests/published",
    "Colours of direct-current power conductors": "tests/conductors",
    "Colours of engine and accessory conductors": "tests/conductors",
    "Colours of direct-current conductors, international": "tests/conductors",
    "Stud a terminal must fit, by the protection it is bolted to": "tests/protection",
    "Interrupting rating of a protection at its marked volts": "tests/protection",
    "Thinnest conductor of a shore cord": "tests/shore",
    "Day of the month whose sun outside the air is the month's mean": "tests/published/test_sun.py",
    "Sea areas and a point in each": "tests/solar/test_place.py",
    "How a mounted panel warms": "tests/published/test_panel.py",
    "Losses of a system of panels": "tests/published/test_panel.py",
    "Losses of panels aboard, shade apart": "tests/published/test_panel.py",
}
EACH_CELL_WITHIN = {"Linke's turbidity over the sea, mean of all longitudes": (1.9, 4.3)}
RATINGS = "Standard ratings, "
OPENING = "Opening times, "
TABLES = {table.title: table for table in ALL}


def columns(table: Table[object, object]) -> list[tuple[float, ...]]:
    """Return the cells of a table column by column."""
    rows = [cell if isinstance(cell, tuple) else (cell,) for cell in table.rows.values()]
    return list(zip(*rows, strict=True))


@pytest.mark.parametrize("title", TABLES)
def test_a_table_says_where_it_comes_from_and_how_it_is_checked(title):
    table = TABLES[title]
    assert table.source.document
    assert table.source.edition
    assert table.source.place
    assert table.key
    assert table.value
    assert table.rows
    checked = (
        RISES | FALLS | set(EACH_ROW_RISES) | set(EACH_CELL_WITHIN) | set(WITHIN) | set(ELSEWHERE)
    )
    assert title in checked or title.startswith((RATINGS, OPENING))


def test_no_title_is_used_twice():
    assert len(TABLES) == len(ALL)


@pytest.mark.parametrize("title", sorted(RISES))
def test_a_table_that_rises(title):
    for column in columns(TABLES[title]):
        assert all(one <= other for one, other in pairwise(column))


@pytest.mark.parametrize("title", sorted(FALLS))
def test_a_table_that_falls(title):
    for column in columns(TABLES[title]):
        assert all(one > other for one, other in pairwise(column))


@pytest.mark.parametrize("title", sorted(EACH_ROW_RISES))
def test_each_row_runs_low_to_high_within_the_trade(title):
    least, most = EACH_ROW_RISES[title]
    for row in TABLES[title].rows.values():
        assert isinstance(row, tuple)
        assert list(row) == sorted(row)
        assert least <= row[0]
        assert row[-1] <= most


@pytest.mark.parametrize("title", sorted(EACH_CELL_WITHIN))
def test_each_cell_lies_within_the_trade(title):
    least, most = EACH_CELL_WITHIN[title]
    for row in TABLES[title].rows.values():
        assert isinstance(row, tuple)
        assert least <= min(row) <= max(row) <= most
        assert all(0.75 < other / one < 1.3 for one, other in pairwise((*row, row[0])))


@pytest.mark.parametrize("title", sorted(WITHIN))
def test_single_figures_lie_within_the_trade(title):
    least, most = WITHIN[title]
    for cell in TABLES[title].rows.values():
        assert isinstance(cell, float)
        assert least <= cell <= most


@pytest.mark.parametrize("title", [title for title in TABLES if title.startswith(RATINGS)])
def test_ratings_rise_in_steps_of_a_tenth_to_three_times(title):
    (ratings,) = TABLES[title].rows.values()
    assert isinstance(ratings, tuple)
    assert all(1.05 < other / one <= 3.01 for one, other in pairwise(ratings))


@pytest.mark.parametrize("series", BANDS)
def test_opening_times_never_grow_with_the_current(series):
    assert BANDS[series].title == f"{OPENING}{series}"
    rows = BANDS[series].rows
    assert list(rows) == sorted(rows)
    least = [one for one, _ in rows.values()]
    most = [inf if one is None else one for _, one in rows.values()]
    assert least == sorted(least, reverse=True)
    assert most == sorted(most, reverse=True)
    assert all(one < other for one, other in zip(least, most, strict=True))


@pytest.mark.parametrize("insulation", INSULATIONS)
def test_amperes_grow_with_copper_as_heat_does(insulation):
    """Heat made is I²/S, lost about as the skin: I grows as S to 0.55 to 0.9 over the table."""
    column = INSULATIONS.index(insulation)
    thin, thick = (CARRYING[gauge][column] for gauge in ("14", "4/0"))
    copper = area_of_awg("4/0") / area_of_awg("14")
    assert copper**0.55 < thick / thin < copper**0.9


def test_a_hotter_insulation_never_carries_less():
    for row in CARRYING.rows.values():
        assert list(row) == sorted(row)
