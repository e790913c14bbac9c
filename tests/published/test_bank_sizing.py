"""Bank sizing against the worked examples of a university lecture (ESE 471, section 6) on IEEE 1013
and IEEE 485, and life and mass against the tables they are read from.
"""

import pytest

from engine.batteries.ageing import cycle_life, lifetime_charge, mass
from engine.batteries.bursts import (
    Period,
    corrected_capacity,
    factor_by_exponent,
    factor_of_rate,
    section_capacity,
    working_of_bursts,
)
from engine.batteries.charging_volts import charging_volts
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.sizing import Need, days_alone, worksheet
from engine.units import Amp, AmpHour, Celsius, Hour, Share, Volt

FREEZER = Need(
    AmpHour(18 + 30 + 1 + 2.4), 6, Share(0.8), Share(0.2), Share(0.8), Amp(6.1), 1.0, 1.1
)


def test_the_refrigerator_of_the_lecture():
    """Slides 38 to 47: 51.4 Ah a day, 6 days: 308, 386, 257, 386, 386, 424 Ah, and 70 h."""
    sheet = worksheet(FREEZER)
    found = [sheet.unadjusted, *(one.least for one in sheet.demands), sheet.governing.least]
    assert found == pytest.approx([308, 386, 257, 386, 386], abs=0.6)
    assert sheet.capacity == pytest.approx(424, abs=0.5)
    assert sheet.hour_rate == pytest.approx(70, abs=0.5)


def test_every_line_of_the_worksheet_is_shown_in_its_order():
    shown = [(one.what, one.value) for one in worksheet(FREEZER).working]
    assert shown == [
        ("unadjusted", "308.4 Ah"),
        ("by depth", "385.5 Ah"),
        ("by daily depth", "257 Ah"),
        ("by age", "385.5 Ah"),
        ("greatest demand", "385.5 Ah"),
        ("for temperature", "385.5 Ah"),
        ("capacity", "424 Ah"),
        ("hour rate", "69.5 h"),
    ]


def test_depth_and_age_are_never_multiplied():
    """Slides 13 and 14: 100 Ah over 0.8 is 125 Ah for age, over 0.6 is 167 Ah for depth."""
    need = Need(AmpHour(100.0), 1, Share(0.6), Share(1.0), Share(0.8), Amp(10.0), 1.0, 1.0)
    sheet = worksheet(need)
    assert [round(one.least) for one in sheet.demands] == [167, 100, 125]
    assert sheet.capacity == pytest.approx(100 / 0.6)


@pytest.mark.parametrize(("current", "factor"), [(58, 1.79), (133, 0.782), (37, 2.81)])
def test_discharge_factors_of_a_printed_cell(current, factor):
    """Slides 29 and 30: 104 Ah at 8 h carries 133 A for 15 min, 58 A for 1 h, 37 A for 2 h."""
    assert factor_of_rate(AmpHour(104.0), Amp(current)) == pytest.approx(factor, abs=0.005)


def test_a_hundred_amperes_for_two_hours():
    """Slide 30: 281 Ah, which is 3 of those batteries."""
    factor = factor_of_rate(AmpHour(104.0), Amp(37.0))
    found = section_capacity((Period(Amp(100.0), Hour(2.0)),), lambda _: factor)
    assert found == pytest.approx(281, abs=0.5)
    assert -(-found // 104) == 3


def test_corrections_of_the_section_method():
    """61.445 Ah × 1.19 × 1.15 / 0.8 = 105.11 Ah."""
    assert corrected_capacity(AmpHour(61.445), 1.19, 1.15, Share(0.8)) == pytest.approx(
        105.11, abs=0.01
    )
    shown = [one.value for one in working_of_bursts(AmpHour(61.445), 1.19, 1.15, Share(0.8))]
    assert shown == ["61.45 Ah", "73.12 Ah", "84.09 Ah", "105.1 Ah"]


def test_the_worst_section_governs():
    """100 A for 15 min, then 20 A for 1 h 45, with the printed cell.

    The first section asks for 100 × 0.782 = 78.2 Ah; both together for 100 × k(2 h) less
    80 × k(1 h 45). With k = 2.81 and 2.6 that is 73 Ah, so the first governs.
    """
    table = {0.25: 0.782, 1.75: 2.6, 2.0: 2.81}
    periods = (Period(Amp(100.0), Hour(0.25)), Period(Amp(20.0), Hour(1.75)))
    found = section_capacity(periods, lambda time: Hour(table[time]))
    assert found == pytest.approx(78.2)
    assert section_capacity((), lambda time: time) == 0.0


def test_the_factor_by_exponent_keeps_the_law():
    """A(t) = (C / H) (H / t)^(1/k): at 1.25 a 20-hour bank gives 54.93 % in an hour."""
    assert 1 / factor_by_exponent(Hour(1.0), Hour(20.0), 1.25) == pytest.approx(0.5493, abs=0.0001)


def test_charging_volts_hold_the_example_of_the_worksheet():
    """IEEE 1013, example: 2.45 V a cell when full, in a window of 10.5 to 15 V."""
    found = charging_volts(CHEMISTRIES["flooded"], "absorb", Volt(12.0))
    assert found is not None
    assert found.low <= 6 * 2.45 <= found.high < 15


def test_charging_volts_by_hand():
    """AGM, 24 V, 10 °C: 2 × (14.5 + 6 × 0.004 × 15) = 29.72 V; lithium has no compensation."""
    agm = charging_volts(CHEMISTRIES["agm"], "absorb", Volt(24.0), Celsius(10.0))
    assert agm is not None
    assert agm.likely == pytest.approx(29.72)
    cold, warm = (
        charging_volts(CHEMISTRIES["lithium"], "float", Volt(51.2), Celsius(c)) for c in (5, 35)
    )
    assert cold == warm


@pytest.mark.parametrize("name", ["agm", "gel", "lithium"])
def test_only_flooded_lead_is_equalised(name):
    assert charging_volts(CHEMISTRIES[name], "equalise", Volt(12.0)) is None
    assert charging_volts(CHEMISTRIES["flooded"], "equalise", Volt(12.0)) is not None


SAM_AT_80 = [
    ("flooded", 1.0, (225, 88.452), (283, 76.904)),
    ("flooded", 0.6, (682, 86.064), (744, 74.424)),
    ("flooded", 0.3, (1283, 84.926), (1360, 79.527)),
    ("lithium", 1.0, (6926, 80.746), (7300, 79.982)),
    ("lithium", 0.8, (9186, 80.492), (9690, 79.95)),
    ("lithium", 0.4, (14484, 80.078), (15468, 79.76)),
]
"""Depth, and the two rows (cycles, % left) of the cycling table around 80 %."""
SAM_LEAD_HALF = ((835, 82.546), (911, 72.119))


def crossing(above, below):
    """Return the cycles at 80 %, straight between two rows."""
    return above[0] + (above[1] - 80) / (above[1] - below[1]) * (below[0] - above[0])


@pytest.mark.parametrize("row", SAM_AT_80)
def test_cycles_fall_with_depth_as_the_cycling_table_has_them(row):
    """To half depth they are scaled: 854 to 800 for flooded, 13 458 to 6000 for lithium."""
    name, depth, above, below = row
    at_half = crossing(*SAM_LEAD_HALF)
    if name == "lithium":
        at_half = 0.75 * crossing(*SAM_AT_80[5][2:]) + 0.25 * crossing(*SAM_AT_80[4][2:])
    shape = crossing(above, below) / at_half
    found = cycle_life(CHEMISTRIES[name], Share(depth)) / cycle_life(CHEMISTRIES[name], Share(0.5))
    assert found == pytest.approx(shape, rel=0.005)


def test_shallow_cycles_share_one_throughput():
    flooded = CHEMISTRIES["flooded"]
    given = [lifetime_charge(flooded, AmpHour(220.0), Share(d)) for d in (0.05, 0.1, 0.3)]
    assert given == pytest.approx([given[0]] * 3)


def test_lithium_weighs_less_than_half_of_lead():
    lead, lithium = (
        mass(CHEMISTRIES[name], AmpHour(200.0), Volt(12.0)).likely for name in ("agm", "lithium")
    )
    assert lead == pytest.approx(25 * 2.4)
    assert lithium < lead / 2


@pytest.mark.parametrize(
    ("capacity", "usable", "health", "daily", "days"),
    [(220, 0.5, 134 / 220, 132.4, 0.5), (280, 0.8, 1.0, 132.4, 1.7), (440, 0.5, 1.0, 132.4, 1.7)],
)
def test_days_alone_of_the_made_up_boat(capacity, usable, health, daily, days):
    found = days_alone(AmpHour(capacity), Share(usable), Share(health), AmpHour(daily))
    assert found == pytest.approx(days, abs=0.05)
