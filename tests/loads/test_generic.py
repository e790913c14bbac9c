"""The typical loads: eighty rows, each readable as the plan would state it."""

import pytest

from engine.estimate import Estimate
from engine.loads.common import COMMON, FRIDGES
from engine.loads.generic import GENERIC, GENERIC_TABLE, Generic
from engine.plan.edit import with_row
from engine.plan.read import plan_of


def test_there_are_eighty():
    assert len(GENERIC) == 80
    assert set(GENERIC_TABLE.rows) == set(GENERIC)
    assert "typical" in str(GENERIC_TABLE.source)


@pytest.mark.parametrize("one", GENERIC.values(), ids=lambda one: one.name)
def test_a_generic_load_reads_in_a_plan_as_default(one):
    document, _ = with_row({"format": 1}, "loads", one.as_row())
    plan = plan_of(document)
    assert plan.problems == ()
    load = plan.loads[0]
    assert load.watts is not None
    assert load.watts.likely == pytest.approx(one.watts.likely, rel=0.005)
    assert load.known_by == "default"
    assert load.essential == one.essential
    assert load.always_live == (one.hours[3] == 24 or (one.essential and one.hours[3] > 0))
    for stated, read in zip(one.hours, load.hours, strict=True):
        assert read is not None
        assert read.likely == pytest.approx(stated, rel=0.005)
        assert read.low <= stated <= read.high <= 24


def test_several_of_one_are_stated_together():
    """Six lamps of 3 W (1.5 to 6) take 18 W (9 to 36)."""
    row = GENERIC["LED cabin light (each)"].as_row("Cabin lights", 6)
    assert (row["name"], row["draw"]) == ("Cabin lights", "18 W (9 to 36)")


def test_a_surge_is_times_the_running_power():
    """100 W × 4 = 400 W."""
    hours = (1.0, 1.0, 0.0, 0.0)
    one = Generic("pump", Estimate(90.0, 100.0, 110.0), 1.0, hours, "any", 4.0, "dc")
    assert one.as_row()["surge"] == "400 W"


def test_every_common_load_stands_for_a_generic_one():
    assert len(COMMON) == 24
    assert all(one.generic in GENERIC for one in COMMON)
    assert set(FRIDGES) <= {one.words for one in COMMON}


def test_what_keeps_boat_and_crew_alive_is_essential_in_the_first_questions():
    """COLREG rules 23 and 30 want the lights; the rest is common practice."""
    kept = {one.words for one in COMMON if GENERIC[one.generic].as_row()["essential"] == "yes"}
    assert kept == {
        "Anchor light, LED", "Sailing light, LED", "VHF radio", "Bilge pump, automatic",
        "Gas and CO alarm",
    }  # fmt: skip
    live = {one.words for one in COMMON if GENERIC[one.generic].as_row()["always_live"] == "yes"}
    assert live == {"Bilge pump, automatic", "Gas and CO alarm"}
