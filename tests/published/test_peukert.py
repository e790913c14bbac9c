"""Peukert's law in its rated-hour form, against rows computed elsewhere from the formula.

Columns: capacity (Ah), rated hours, exponent, current (A), time (h), delivered (Ah); printed to
five places. The lithium range is asked against the rate capacities of a PyBaMM model (Prada 2013,
single particle, C/20 to 1C), which no exponent was fitted to here.
"""

import pytest

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.peukert import clamped_delivered, delivered, discharge_time
from engine.units import Amp, AmpHour, Hour

ROWS = [
    (100, 20, 1.0, 2, 50.0, 100.0),
    (100, 20, 1.0, 5, 20.0, 100.0),
    (100, 20, 1.0, 50, 2.0, 100.0),
    (100, 20, 1.0, 100, 1.0, 100.0),
    (100, 20, 1.05, 20, 4.66516, 93.3033),
    (100, 20, 1.05, 50, 1.7825, 89.1251),
    (100, 20, 1.2, 2, 60.05622, 120.1124),
    (100, 20, 1.2, 5, 20.0, 100.0),
    (100, 20, 1.2, 10, 8.70551, 87.0551),
    (100, 20, 1.2, 20, 3.78929, 75.7858),
    (100, 20, 1.2, 100, 0.54928, 54.928),
    (100, 20, 1.3, 2, 65.81911, 131.6382),
    (100, 20, 1.3, 5, 20.0, 100.0),
    (100, 20, 1.3, 10, 8.12252, 81.2252),
    (100, 20, 1.3, 100, 0.40709, 40.7091),
    (400, 20, 1.2, 2, 316.97864, 633.9573),
    (400, 20, 1.2, 10, 45.94793, 459.4793),
    (400, 20, 1.2, 20, 20.0, 400.0),
    (400, 20, 1.2, 50, 6.66043, 333.0213),
    (225, 20, 1.25, 2, 173.25395, 346.5079),
    (225, 20, 1.25, 5, 55.11352, 275.5676),
    (225, 20, 1.25, 50, 3.09926, 154.963),
]
PYBAMM_LITHIUM = {20: 2.2846, 10: 2.2659, 5: 2.2287, 2: 2.1193, 1: 1.9396}
"""Ah of a cell, by nominal hours of discharge."""
LEAD_1_HOUR, LEAD_10_HOURS = 58.12, 93.2
"""Ah of an AGM battery of 100 Ah at 20 h (NREL SSC test data)."""


@pytest.mark.parametrize("row", ROWS)
def test_time_and_charge_as_printed(row):
    capacity, hours, exponent, current, time, charge = row
    given = AmpHour(capacity), Hour(hours), Amp(current), exponent
    assert discharge_time(*given) == pytest.approx(time, abs=0.000006)
    assert delivered(*given) == pytest.approx(charge, abs=0.00006)


def test_the_form_without_rated_hours_is_wrong():
    """A page prints 14.5 h for 100 Ah at 5 A with 1.2, by C / I^k; 20.0 h is right (W17)."""
    assert pytest.approx(14.5, abs=0.05) == 100 / 5**1.2
    assert discharge_time(AmpHour(100.0), Hour(20.0), Amp(5.0), 1.2) == pytest.approx(20.0)
    assert discharge_time(AmpHour(100.0), Hour(20.0), Amp(10.0), 1.2) == pytest.approx(
        8.71, abs=0.005
    )


@pytest.mark.parametrize(
    ("hours", "charge"), [(h, q) for h, q in PYBAMM_LITHIUM.items() if h != 20]
)
def test_the_lithium_range_bounds_a_cell_model(hours, charge):
    """Within the range of exponents, and within 9 % of the likely one even at one hour."""
    rated = AmpHour(PYBAMM_LITHIUM[20])
    current = Amp(charge / hours)
    exponent = CHEMISTRIES["lithium"].exponent
    most = delivered(rated, Hour(20.0), current, exponent.low)
    least = delivered(rated, Hour(20.0), current, exponent.high)
    assert least < charge < most
    assert delivered(rated, Hour(20.0), current, exponent.likely) == pytest.approx(charge, rel=0.09)


def test_one_exponent_cannot_fit_every_rate_of_lead():
    """1.11 fits 10 to 20 h and lies in the AGM range; 1.22 fits 1 to 20 h and lies above it."""
    exponent = CHEMISTRIES["agm"].exponent
    rated = AmpHour(100.0), Hour(20.0)
    at_10_hours, at_1_hour = Amp(LEAD_10_HOURS / 10), Amp(LEAD_1_HOUR)
    least = delivered(*rated, at_10_hours, exponent.high)
    assert least < LEAD_10_HOURS < delivered(*rated, at_10_hours, exponent.low)
    assert delivered(*rated, at_10_hours, 1.11) == pytest.approx(LEAD_10_HOURS, rel=0.005)
    assert delivered(*rated, at_1_hour, exponent.high) > LEAD_1_HOUR
    assert delivered(*rated, at_1_hour, 1.22) == pytest.approx(LEAD_1_HOUR, rel=0.02)


def test_a_slow_discharge_is_clamped():
    """400 Ah, 2 A, 1.2: the law gives 634 Ah; the bank holds 1.15 × 400."""
    given = AmpHour(400.0), Hour(20.0), Amp(2.0), 1.2
    assert clamped_delivered(*given, 1.15) == pytest.approx(460.0)
    assert clamped_delivered(*given, 2.0) == delivered(*given)
