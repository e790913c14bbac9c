"""Colours by function, typed a second time from the reprints of ABYC E-11, tables XIV and XV."""

import pytest

from engine.conductors.colours import (
    FUNCTIONS,
    YELLOW_CLASH,
    colours,
    international_colours,
    table_of,
)
from engine.conductors.tables import COLOURS_CIRCUITS, COLOURS_ISO, COLOURS_POWER
from engine.problem import Problem

PRINTED = {
    "green": ["bonding"],
    "green with yellow stripe": ["bonding"],
    "black": ["DC negative"],
    "black with yellow stripe": ["DC negative"],
    "yellow": ["DC negative", "bilge blower"],
    "red": ["DC positive", "main power feed"],
    "yellow with red stripe": ["starting circuit"],
    "brown with yellow stripe": ["bilge blower"],
    "dark grey": ["navigation lights", "tachometer"],
    "brown": ["generator armature", "alternator charge light", "pumps"],
    "orange": ["accessory feed", "common feed"],
    "purple": ["ignition", "instrument feed"],
    "dark blue": ["cabin and instrument lights"],
    "light blue": ["oil pressure"],
    "tan": ["water temperature"],
    "pink": ["fuel gauge"],
    "green with stripe, not yellow": ["tilt down, trim in"],
    "blue with stripe": ["tilt up, trim out"],
}
"""Colour and the functions printed beside it."""


@pytest.mark.parametrize("colour", PRINTED)
def test_a_colour_as_printed(colour):
    assert [one for one in FUNCTIONS if colour in colours(one)] == PRINTED[colour]


def test_no_other_colour_is_in_the_tables():
    assert {colour for one in FUNCTIONS for colour in colours(one)} == set(PRINTED)


def test_tables_and_their_sources():
    assert table_of("DC negative") is COLOURS_POWER
    assert table_of("pumps") is COLOURS_CIRCUITS
    assert not COLOURS_POWER.source.typical
    assert COLOURS_ISO.source.typical


def test_international_colours():
    """ISO 10133 and 13297 as commonly read."""
    assert international_colours("DC positive")[0] == "red"
    assert international_colours("DC negative") == ("black", "yellow")
    assert international_colours("fuel gauge") == ()
    assert set(COLOURS_ISO.rows) == set(COLOURS_POWER.rows)


def test_yellow_is_told_apart():
    assert {"DC negative", "bilge blower"} == {one for one in FUNCTIONS if "yellow" in colours(one)}
    assert "meter" in YELLOW_CLASH


def test_a_function_without_a_colour():
    with pytest.raises(Problem, match="“anchor light of brass”"):
        colours("anchor light of brass")
