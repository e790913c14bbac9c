"""What runs together on the inverter, and what keeps it from an answer."""

import pytest

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.voltage import resistance as bank_resistance
from engine.check.bank_now import capacity_now
from engine.check.inverter import (
    feeder_of,
    inverter_answer,
    store_of,
)
from engine.finding import Verdict
from engine.plan.read import plan_of
from engine.units import AmpHour, Celsius, Share, Volt

KETTLE = {"id": "L01", "name": "Kettle", "supply": "inverter", "draw": "800 W",
          "hours_anchor": "0.1 h"}  # fmt: skip
DRILL = {"id": "L02", "name": "Drill", "supply": "inverter", "draw": "400 W", "surge": "1500 W"}
LAMP = {"id": "L03", "name": "Lamp", "draw": "1 A", "hours_anchor": "4 h"}
BANK = {"chemistry": "lithium", "capacity": "200 Ah", "reserve": "20 %", "age": "new"}
FEED = {"id": "D01", "run": "1.5 m", "current": "100 A", "size": "1/0 AWG"}
INVERTER = {"rating": "1000 W", "surge": "2000 W", "circuit": "D01"}


def boat(**parts):
    whole = {"format": 1, "loads": [KETTLE, DRILL, LAMP], "bank": BANK, "circuits": [FEED],
             "inverter": INVERTER}  # fmt: skip
    return plan_of({key: one for key, one in {**whole, **parts}.items() if one is not None})


def answer(chosen=(), **parts):
    found = inverter_answer(boat(**parts), frozenset(chosen))
    assert found is not None
    return found


def test_no_inverter_no_answer():
    assert inverter_answer(boat(inverter=None), frozenset()) is None


def test_the_largest_alone_where_none_is_chosen():
    """800 + 10 + 0.04 × 800 + 0.06 × 0.8² × 1000 = 880.4 W from the bank."""
    found = answer()
    assert [one.load.ident for one in found.appliances] == ["L01", "L02"]
    assert [one.load.ident for one in found.together] == ["L01"]
    assert found.watts == 800.0
    assert found.dc == pytest.approx(880.4)
    assert found.efficiency == pytest.approx(800 / 880.4)
    assert found.missing == ()
    assert found.trips == Verdict.FINE
    assert found.result is not None
    assert found.result.time < found.result.lossless_time


def test_several_together():
    found = answer({"L01", "L02", "L03", "L99"})
    assert found.watts == 1200.0
    assert found.charge_after is None


def test_minutes_and_what_a_day_leaves():
    """0.1 h × 880.4 W / 12 V = 7.337 Ah, 3.67 % of 200 Ah at Peukert's 1.03 a little more."""
    kettle = answer().appliances[0]
    assert kettle.minutes == pytest.approx(6.0)
    assert kettle.day == pytest.approx(7.337, abs=0.001)
    after = answer().charge_after
    assert after is not None
    assert 0.955 < after < 0.9633
    drill = answer().appliances[1]
    assert (drill.minutes, drill.day) == (None, None)


def test_a_load_of_no_hours_leaves_the_charge():
    idle = {**KETTLE, "hours_anchor": "0 h"}
    assert answer(loads=[idle]).charge_after == 1.0


def test_rating_and_starting():
    kettle, drill = answer().appliances
    assert (kettle.fits, drill.fits) == (Verdict.FINE, Verdict.FINE)
    assert (kettle.starts, drill.starts) == (Verdict.FINE, Verdict.FINE)
    assert drill.surge == 1500.0
    weak = answer(inverter={"rating": "600 W", "surge": "700 W"}).appliances
    assert [one.fits for one in weak] == [Verdict.STOP, Verdict.FINE]
    assert weak[1].starts == Verdict.SHOULD
    unknown = answer(inverter={"rating": "1000 W"}).appliances
    assert {one.starts for one in unknown} == {Verdict.NOT_KNOWN}


def test_a_surge_read_on_the_dc_side():
    """130 A × 12 V = 1560 W."""
    oven = {"id": "L01", "name": "Oven", "supply": "inverter", "draw": "96 A", "surge": "130 A"}
    assert answer(loads=[oven]).appliances[0].surge == pytest.approx(1560.0)


def test_what_is_missing_is_said():
    found = answer(bank=None)
    assert (found.result, found.trips, found.charge_after) == (None, Verdict.NOT_KNOWN, None)
    assert found.missing == ("the bank's chemistry and capacity",)
    empty = answer(bank={"chemistry": "agm"})
    assert empty.missing == ("the bank's chemistry and capacity",)
    loose = answer(circuits=[])
    assert len(loose.missing) == 1
    assert loose.trips == Verdict.NOT_KNOWN
    assert loose.result is not None


def test_no_ac_load():
    found = answer(loads=[LAMP])
    assert (found.appliances, found.together, found.watts, found.result) == ((), (), 0, None)


def test_a_tired_bank_behind_a_thin_cable_trips():
    tired = {"chemistry": "flooded", "capacity": "100 Ah", "health": "60 %", "reserve": "10 %"}
    thin = {**FEED, "run": "5 m", "size": "6 AWG"}
    found = answer(bank=tired, circuits=[thin])
    assert found.trips == Verdict.STOP
    assert found.result is not None
    assert found.result.tripped_at is not None


@pytest.mark.parametrize("gone", ["run", "size"])
def test_a_feed_of_which_too_little_is_known(gone):
    fields = {key: one for key, one in FEED.items() if key != gone}
    assert feeder_of(boat(circuits=[fields])) is None
    assert feeder_of(boat(circuits=[])) is None


def test_a_feed_without_a_table_row_or_a_current():
    thin = {**FEED, "size": "0.75 mm2"}
    idle = {key: one for key, one in FEED.items() if key != "current"}
    assert feeder_of(boat(circuits=[thin])) is None
    warm, cold = feeder_of(boat()), feeder_of(boat(circuits=[idle]))
    assert warm is not None
    assert cold is not None
    assert cold < warm


def test_a_feed_through_a_bus_counts_the_whole_way_and_its_joints():
    bus = {**FEED, "id": "D02", "feeds": "bus", "joints": "1 mohm"}
    shared = boat(circuits=[bus, {**FEED, "fed_from": "D02"}])
    alone = feeder_of(boat())
    assert alone is not None
    assert feeder_of(shared) == pytest.approx(2 * alone + 0.001)
    unknown = boat(circuits=[{"id": "D02"}, {**FEED, "fed_from": "D02"}])
    assert feeder_of(unknown) is None


def test_health_shrinks_the_bank_and_a_stated_resistance_scales_it():
    plan = boat(bank={**BANK, "health": "80 %", "resistance": "10 mohm"})
    assert plan.bank is not None
    assert capacity_now(plan.bank) == pytest.approx(160.0)
    store = store_of(plan.bank)
    assert store is not None
    kind = CHEMISTRIES["lithium"]
    typical = bank_resistance(kind, AmpHour(160.0), Volt(12.0))
    full = bank_resistance(kind, AmpHour(160.0), Volt(12.0), Share(1.0), Celsius(20.0))
    assert store.resistance(Share(1.0)) == pytest.approx(full * 0.010 / typical)
    unknown = boat(bank={"chemistry": "agm"}).bank
    assert unknown is not None
    assert (capacity_now(unknown), store_of(unknown)) == (None, None)
