"""Single changes: only those that apply, and ranked by what they gain."""

from dataclasses import dataclass

from engine.ahead.changes import changed
from engine.ahead.rank import FIT, LEAVE, Single, ranking, singles_of
from engine.plan.edit import with_row, with_value
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.units import Hour
from tests.ahead.plans import read, small

BOAT = made_up_document()


def offered(document):
    return {one.name: one.changes for one in singles_of(read(document), "anchor")}


def test_the_made_up_boat_is_offered_what_applies_to_her():
    found = offered(BOAT)
    assert found["100 W more panel"] == (("sources.S02.watts", "520 W"),)
    assert found["100 Ah more bank"] == (("bank.capacity", "380 Ah"),)
    assert found["S04 wind turbine counted"] == (("sources.S04.counted", "yes"),)
    assert found["engine limit up by 10 A"] == (("sources.S01.limit", "60 A"),)
    assert found["one degree of latitude nearer the equator"] == (("boat.latitude", "42 N"),)
    assert found["Watermaker, 30 L/h off"] == (("loads.L37.hours_anchor", "0 h"),)
    assert "a 400 W wind turbine" not in found
    assert not any("LED" in name for name in found)
    assert "panels clear of the boom's shade" not in found


def test_a_boat_without_sources_is_offered_some():
    found = offered(small())
    assert found["a 100 W panel"][0] == ("sources.new.kind", "solar")
    assert dict(found["a 400 W wind turbine"])["sources.new.watts"] == "400 W"
    assert "engine limit up by 10 A" not in found


def test_a_measured_alternator_gains_nothing_by_its_limit():
    assert "engine limit up by 10 A" not in offered(with_value(BOAT, "sources.S01.read", "48 A"))


def test_shaded_panels_may_be_moved():
    assert "panels clear of the boom's shade" in offered(made_up_document(AS_FOUND))


def test_a_hungry_masthead_light_is_offered_as_led():
    lamp = {"name": "Anchor light", "zone": "masthead", "window": "night", "draw": "25 W",
            "hours_anchor": "10 h"}  # fmt: skip
    document, ident = with_row(small(), "loads", lamp)
    name = "Anchor light as LED, 2 W"
    assert offered(document)[name] == ((f"loads.{ident}.draw", "2 W"),)
    assert name not in offered(with_value(document, f"loads.{ident}.zone", "cockpit"))
    assert name not in offered(with_value(document, f"loads.{ident}.draw", "3 W"))


def test_an_essential_load_is_never_offered_to_be_left_off():
    assert "Lamp off" in offered(small())
    assert "Lamp off" not in offered(with_value(small(), "loads.L01.essential", "yes"))


def test_what_guards_boat_and_crew_is_never_offered_to_be_left_off():
    assert "Solar controller at night off" not in offered(BOAT)
    for name in ("Gas detector", "Bilge pump, automatic", "Smoke alarm", "Battery monitor"):
        assert f"{name} off" not in offered(with_value(small(), "loads.L01.name", name))
    assert "Lamp off" not in offered(with_value(small(), "loads.L01.always_live", "yes"))


def test_a_worn_bank_is_replaced_and_not_added_to():
    worn = offered(with_value(small(), "bank.health", "61 %"))
    assert worn["a new bank of 240 Ah"] == (("bank.health", "100 %"),)
    assert "100 Ah more bank" not in worn
    assert "100 Ah more bank" in offered(with_value(small(), "bank.health", "85 %"))


def test_an_engine_that_never_charges_gains_nothing_by_its_limit():
    assert "engine limit up by 10 A" not in offered(with_value(BOAT, "policy.never", "yes"))
    alone = singles_of(read(BOAT), "unattended")
    assert not any(one.name.startswith("engine limit") for one in alone)


def test_every_change_offered_can_be_made():
    for document in (BOAT, made_up_document(AS_FOUND), small()):
        for changes in offered(document).values():
            assert not read(changed(document, changes)).problems


def test_south_goes_north_and_the_equator_stays():
    south = offered(with_value(small(), "boat.latitude", "20.5 S"))
    assert south["one degree of latitude nearer the equator"] == (("boat.latitude", "19.5 S"),)
    assert not any("degree" in name for name in offered(with_value(small(), "boat.latitude", "0")))


@dataclass
class Run:
    days_until_needed: float
    engine_hours_a_week: Hour


def test_the_change_that_gains_most_days_stands_first_even_under_one_name():
    singles = (Single("lamp", (), LEAVE), Single("lamp", (), FIT), Single("far", ()))
    found = ranking(singles, Run(4.0, Hour(3.0)), {0: Run(5.0, Hour(2.0)), 1: Run(7.0, Hour(2.5))})
    assert [(one.kind, gained.days, gained.hours_saved) for one, gained in found] == [
        (FIT, 3.0, 0.5), (LEAVE, 1.0, 1.0),
    ]  # fmt: skip
