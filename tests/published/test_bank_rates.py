"""Capacity at a rate, against published capacities of one battery at several.

NREL System Advisor Model, test battery of its lead-acid model: 100, 93.2 and 58.12 Ah at 20, 10 and
1 h. One exponent does not fit all of it: 1.22 from 1 to 20 h, 1.11 from 10 to 20 h.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.batteries.peukert import capacity_at_hours, discharge_time
from engine.units import Amp, AmpHour, Hour


@pytest.mark.parametrize(("hours", "exponent", "printed"), [(1, 1.22, 58.12), (10, 1.11, 93.2)])
def test_capacity_at_the_hours_of_a_printed_battery(hours, exponent, printed):
    found = capacity_at_hours(AmpHour(100.0), Hour(20.0), Hour(hours), exponent, 1.2)
    assert found == pytest.approx(printed, abs=0.25)


@given(st.floats(0.1, 20.0), st.floats(1.0, 1.6))
def test_at_the_current_found_it_lasts_just_so_long(hours, exponent):
    given_ = capacity_at_hours(AmpHour(100.0), Hour(20.0), Hour(hours), exponent, 1.3)
    lasts = discharge_time(AmpHour(100.0), Hour(20.0), Amp(given_ / hours), exponent)
    assert lasts == pytest.approx(hours)


def test_never_more_than_the_clamp():
    found = capacity_at_hours(AmpHour(100.0), Hour(20.0), Hour(500.0), 1.25, 1.185)
    assert found == pytest.approx(118.5)
