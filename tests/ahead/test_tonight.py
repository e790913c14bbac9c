"""What buys a day, by hand on a plan small enough for it."""

import pytest

from engine.ahead.evening import FIELDS, Evening, evening_of, plain_hour
from engine.ahead.left_off import without
from engine.ahead.tonight import AHEAD, FAR, tonight
from engine.ahead.until_reserve import inputs_from
from engine.plan.edit import with_row, with_value
from engine.plan.made_up import made_up_document
from engine.problem import Problem
from engine.units import CLOCK, Share, clock
from engine.units import read as read_as
from tests.ahead.plans import ahead, median, read, small

BOAT = read(made_up_document())
ENGINE = {"kind": "alternator", "read": "54 A"}


def evening(charge=0.5, hour=19.0, sky="dull"):
    return Evening(Share(charge), hour, sky)


def driven(document):
    return with_row(document, "sources", ENGINE)[0]


def tell(plan, condition, now):
    return tonight(plan, condition, now)


@pytest.mark.parametrize("hour", [0.0, 5.5, 19.0, 23.75])
def test_the_reserve_comes_after_what_is_left_over_what_is_drawn(hour):
    """By hand: (0.5 − 0.2) × 240 Ah at a steady draw, whatever the hour."""
    found = tell(read(small()), "anchor", evening(hour=hour))
    assert found.reserve_in == pytest.approx(72 / (median(small()) / 24), rel=1e-9)
    assert found.engine is None


def test_the_engine_gives_back_a_days_use():
    """By hand: kept × (I − L) t + L t = 24 L, for an engine of I and a draw of L."""
    document = driven(small())
    plan = read(document)
    draw = median(document) / 24
    kept = ahead(plan).setup.house.intake.efficiency
    found = tell(plan, "anchor", evening())
    exact = 24 * draw / (kept * (54 - draw) + draw)
    assert exact <= found.engine <= exact + 5 / 60 + 0.25 * draw / 54
    assert found.engine_from == 0


def test_a_load_left_off_by_hand():
    """By hand: 72 Ah at 6 A last 12 h; without the 2 A at 4 A they last 18 h."""
    document, ident = with_row(
        small(), "loads", {"name": "Fan", "draw": "2 A", "hours_anchor": "24 h"}
    )
    found = tell(read(document), "anchor", evening())
    scale = median(document) / 24 / 6
    alone = median(small()) / 24 / 4
    fan = next(one for one in found.singles if one.ident == ident)
    assert fan.hours == pytest.approx(18 / alone - 12 / scale, rel=1e-9)
    assert not fan.a_day


def test_few_together_buy_what_none_buys_alone():
    """By hand: 168 Ah at 8 A last 21 h, at 4 A 42 h, at 2 A 84 h."""
    loads = [
        {"id": f"L0{n}", "name": f"Fan {n}", "draw": "2 A", "hours_anchor": "24 h"}
        for n in range(1, 5)
    ]
    found = tell(read(small(loads=loads)), "anchor", evening(0.9))
    assert not any(one.a_day for one in found.singles)
    assert [one.name for one in found.together] == ["Fan 1", "Fan 2", "Fan 3"]


def test_at_or_below_the_reserve_only_the_engine_helps():
    found = tell(read(driven(small())), "anchor", evening(0.15))
    assert found.reserve_in == 0
    assert (found.singles, found.together) == ((), ())
    above = tell(read(driven(small())), "anchor", evening(0.2001))
    assert found.engine > above.engine


def test_a_full_bank_runs_its_engine_when_it_is_needed():
    found = tell(BOAT, "anchor", evening(1.0, 0.0))
    assert found.engine is not None
    assert found.engine_from == pytest.approx(found.reserve_in)


def test_the_engine_waits_for_the_quiet_hours_to_end():
    quiet = {"quiet_from": "18", "quiet_to": "8"}
    plan = read({**driven(small()), "policy": quiet})
    assert tell(plan, "anchor", evening(0.9)).engine_from == pytest.approx(13)
    never = read({**driven(small()), "policy": {"never": "yes"}})
    assert tell(never, "anchor", evening()).engine is None


def test_the_end_of_what_is_looked_at_is_no_success():
    """By hand: 189.6 Ah at 1.04 A last 7.6 days, past 8 with a day more; the engine gives 25 Ah."""
    loads = [
        {"id": "L01", "name": "Lamp", "draw": "0.52 A", "hours_anchor": "24 h"},
        {"id": "L02", "name": "Fan", "draw": "0.26 A", "hours_anchor": "24 h"},
        {"id": "L03", "name": "Clock", "draw": "0.26 A", "hours_anchor": "24 h"},
    ]
    document = {**driven(small(loads=loads)), "policy": {"least_run": "0 h"}}
    plan = read(document)
    draw = median(document) / 24
    share = 0.2 + 7.6 * 24 * draw / 240
    found = tell(plan, "anchor", evening(share))
    assert AHEAD - 1 < found.reserve_in / 24 < AHEAD
    kept = ahead(plan).setup.house.intake.efficiency
    exact = 24 * draw / (kept * (54 - draw) + draw)
    assert found.engine == pytest.approx(exact, abs=5 / 60 + 0.25 * draw / 54)
    by_name = {one.name: one.hours for one in found.singles}
    assert by_name["Lamp"] == pytest.approx(found.reserve_in, rel=0.02)
    assert by_name["Fan"] == pytest.approx(found.reserve_in / 3, rel=0.02)
    assert not any(one.beyond for one in found.singles)


def test_what_puts_the_reserve_off_for_good_is_the_least_of_it():
    document, _ = with_row(small(), "loads", {
        "name": "Fan", "draw": "0.04 A", "hours_anchor": "24 h"})  # fmt: skip
    lamp = tell(read(document), "anchor", evening()).singles[0]
    assert (lamp.name, lamp.beyond) == ("Lamp", True)
    assert lamp.hours > (FAR - 1) * 24


def test_the_engine_is_never_offered_into_the_quiet_hours():
    """At 20:00 an hour is left before they begin, and a day's use asks for about two."""
    quiet = {"quiet_from": "21", "quiet_to": "8"}
    document = {**driven(small()), "policy": quiet}
    found = tell(read(document), "anchor", evening(0.5, 20.0))
    assert found.engine > 1
    start = (20.0 + found.engine_from) % 24
    assert start >= 8
    assert start + found.engine <= 21


def test_the_engine_comes_the_morning_before_the_reserve_and_not_the_one_after():
    """By hand: 0.2 × 240 Ah + 24 Ah at 4 A last 18 h and more from 20:00, past 08:00."""
    document = {**driven(small()), "policy": {"quiet_from": "21", "quiet_to": "8"}}
    found = tell(read(document), "anchor", evening(0.5, 20.0))
    assert found.reserve_in > 12
    assert found.engine_from == pytest.approx(12)


def test_what_guards_boat_and_crew_is_not_left_off():
    names = ("Gas detector", "Solar controller at night", "Bilge pump", "Battery monitor")
    document = small()
    for name in names:
        document, _ = with_row(document, "loads", {
            "name": name, "draw": "0.2 A", "hours_anchor": "24 h"})  # fmt: skip
    document, _ = with_row(document, "loads", {
        "name": "Stereo", "draw": "0.2 A", "hours_anchor": "24 h",
        "always_live": "yes"})  # fmt: skip
    assert [one.name for one in tell(read(document), "anchor", evening()).singles] == ["Lamp"]


def test_enough_sun_has_no_end():
    found = tell(BOAT, "anchor", evening(0.9, 12.0, "clear"))
    assert found.reserve_in is None
    assert found.singles == ()
    assert tell(read({"format": 1, "boat": {}}), "anchor", evening()) is None


def test_the_days_begin_now():
    """The hour from 12:00 on stands first, and whole days follow."""
    outlook = ahead(BOAT)
    whole = outlook.under("dull")
    found = inputs_from(outlook, evening(hour=12.0))
    assert found.sun[0] == whole.sun[48]
    assert found.loads == (*whole.loads[48:96], *whole.loads[:48])
    assert len(found.loads) == 96


def test_more_charge_never_comes_to_the_reserve_sooner():
    times = [tell(BOAT, "anchor", evening(share)).reserve_in for share in (0.3, 0.4, 0.5, 0.6)]
    assert times == sorted(times)


def test_left_off_is_left_off_in_this_way_of_living_alone():
    plan = without(BOAT, "anchor", frozenset({"L37"}))
    load = next(one for one in plan.loads if one.ident == "L37")
    stated = [load.hours_in(one) for one in ("anchor", "passage")]
    assert [one.likely for one in stated if one] == [0, 1]


@pytest.mark.parametrize(
    ("text", "hour"),
    [("19:30", 19.5), ("7 pm", 19.0), ("12 am", 0.0), ("12 pm", 12.0), ("0730", 7.5), ("7", 7.0),
     ("7.15", 7.25), ("23h45", 23.75)],
)  # fmt: skip
def test_a_time_is_read_as_people_write_it(text, hour):
    assert clock(text) == hour
    assert read_as(text, CLOCK).likely == hour


@pytest.mark.parametrize(("text", "hour"), [("7 pm", 19), ("19:00", 19), ("21", 21), ("21 h", 21)])
def test_quiet_hours_are_read_as_the_evening_is(text, hour):
    policy = read({**small(), "policy": {"quiet_from": text, "quiet_to": "8 am"}}).policy
    assert (policy.quiet_from, policy.quiet_to) == (hour, 8)


@pytest.mark.parametrize("text", ["", "24:00", "7:75", "noon", "-3", "1e3", "123456"])
def test_what_is_no_time_says_so(text):
    with pytest.raises(Problem):
        clock(text)


def test_an_evening_keeps_what_could_be_read():
    now, wrong = evening_of({"charge": "34", "time": "25:00", "sky": "rain"}, Share(0.9))
    assert now.charge == pytest.approx(0.34)
    assert now.sky == "part"
    assert set(wrong) == {"time"}
    now, wrong = evening_of({"charge": "140 %"}, Share(0.9))
    assert set(wrong) == {"charge"}
    assert evening_of({}, Share(0.9)) == (
        Evening(Share(0.9), clock(FIELDS["time"].default), "part"),
        {},
    )


def test_hours_are_said_by_day_and_clock():
    assert plain_hour(29.66) == (1, "05:40")
    assert plain_hour(23.99) == (1, "00:00")


def test_the_month_without_a_sun_and_a_capacity_of_none_are_no_crash():
    dark = with_value(with_value(small(), "boat.latitude", "80 N"), "boat.month", "december")
    assert tell(read(dark), "anchor", evening()).reserve_in is not None
    none = with_value(small(), "bank.capacity", "")
    assert tell(read(none), "anchor", evening()) is None
