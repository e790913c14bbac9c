"""A likely day by the hour: it sums to the day's median, and to what the panels bring."""

import pytest

from engine.ahead.balance import balance_of
from engine.ahead.day_hours import DayHours, day_hours
from engine.plan.edit import with_value
from engine.plan.made_up import made_up_document
from tests.ahead.plans import median, read, small

BOAT = made_up_document()


def at_anchor(document) -> DayHours:
    found = day_hours(read(document), "anchor")
    assert found
    return found


def test_the_hours_sum_to_the_day():
    found, balance = at_anchor(BOAT), balance_of(read(BOAT), "anchor")
    assert sum(found.use) == pytest.approx(balance.used, rel=1e-9)
    assert sum(found.sun) == pytest.approx(balance.sun()[1], rel=1e-9)
    assert found.use[12] > found.use[3]
    dark = [
        one for hour, one in enumerate(found.sun) if not found.sunrise - 1 < hour < found.sunset
    ]
    assert dark
    assert not any(dark)


def test_a_steady_load_is_the_same_in_each_hour():
    found = at_anchor(small())
    assert found.use == pytest.approx([median(small()) / 24] * 24)
    assert not any(found.sun)


def test_no_place_or_nothing_that_flows_is_no_day():
    assert day_hours(read(with_value(small(), "boat.month", "")), "anchor") is None
    assert day_hours(read(small(loads=[])), "anchor") is None
    polar = with_value(with_value(BOAT, "boat.latitude", "80 N"), "boat.month", "december")
    assert not any(at_anchor(polar).sun)
