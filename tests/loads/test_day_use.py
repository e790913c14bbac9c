"""A day's use against hand sums: each figure is worked in the test that uses it."""

import pytest

from engine.estimate import Estimate
from engine.inverter.efficiency import Curve
from engine.loads.day_use import always_live, by_group, day_use, use_of
from engine.loads.load import Load, Supply
from engine.units import Volt, Watt

PLAIN = Supply(Volt(12.0))
INVERTED = Supply(Volt(12.0), Curve(Watt(1000.0), 0.01, 0.05, 0.0))
SURE = Estimate.exact


def hours(anchor, passage=None, dock=None, unattended=None):
    return (anchor, passage, dock, unattended)


FRIDGE = Load(
    "L01", "fridge", draw=Estimate(4.0, 5.0, 6.0), surge=12.0, hours=hours(SURE(24.0)),
    duty=Estimate(0.3, 0.4, 0.5), zone="galley", circuit="D05", essential=True,
)  # fmt: skip
LAMP = Load(
    "L02", "lamp", draw=SURE(0.5), hours=hours(Estimate(2.0, 4.0, 5.0)), window="night",
    zone="saloon", circuit="D08",
)  # fmt: skip
PUMP = Load(
    "L03", "pump", draw=SURE(6.0), surge=14.0, hours=hours(SURE(0.25)), window="day",
    zone="galley", circuit="D10",
)  # fmt: skip
BOAT = (FRIDGE, LAMP, PUMP)


def test_ends_go_with_ends():
    """4 × 24 × 0.3 = 28.8, 5 × 24 × 0.4 = 48, 6 × 24 × 0.5 = 72 Ah."""
    day = use_of(FRIDGE, "anchor", PLAIN)
    assert day is not None
    assert [day.low, day.likely, day.high] == pytest.approx([28.8, 48.0, 72.0])


def test_a_day_never_has_more_than_24_hours_nor_a_duty_above_1():
    """2 A × 24 h × 1 = 48 Ah, whatever the guesses reach for."""
    eager = Load(
        "L01", "eager", draw=SURE(2.0), hours=hours(Estimate(20.0, 24.0, 30.0)),
        duty=Estimate(0.9, 1.0, 1.4),
    )  # fmt: skip
    day = use_of(eager, "anchor", PLAIN)
    assert day is not None
    assert day.high == 48.0


def test_what_is_never_on_costs_nothing_even_where_its_draw_is_not_known():
    assert use_of(Load("L01", "mystery", hours=hours(SURE(0.0))), "anchor", PLAIN) == SURE(
        0.0, "unknown"
    )
    assert use_of(Load("L01", "mystery", hours=hours(SURE(1.0))), "anchor", PLAIN) is None
    assert use_of(Load("L01", "lamp", draw=SURE(1.0)), "anchor", PLAIN) is None


def test_the_sum_of_a_day():
    """Likely 48 + 0.5 × 4 + 6 × 0.25 = 51.5; low 28.8 + 1 + 1.5; high 72 + 2.5 + 1.5 Ah.

    At night half of the fridge and all of the lamp: 24 + 2 = 26 Ah. Essential: the fridge.
    """
    answer = day_use(BOAT, "anchor", PLAIN)
    total = answer.total
    assert [total.low, total.likely, total.high] == pytest.approx([31.3, 51.5, 76.0])
    assert answer.night == pytest.approx(26.0)
    assert answer.essential == pytest.approx(48.0)
    assert answer.missing == ()
    assert [use.load.ident for use in answer.largest] == ["L01", "L02", "L03"]


def test_the_peak_is_the_greater_of_day_and_night_with_one_start():
    """By day 5 + 6 = 11 A and the pump's start adds 14 − 6 = 8; by night 5.5 A and 12 − 5 = 7."""
    peak = day_use(BOAT, "anchor", PLAIN).peak
    assert (peak.window, peak.running, peak.with_surge) == ("day", 11.0, 19.0)
    assert peak.starter == "pump"


def test_a_day_of_nothing():
    answer = day_use((), "anchor", PLAIN)
    assert answer.total == SURE(0.0)
    assert answer.largest == ()
    assert (answer.band.p10, answer.band.p90, answer.peak.running) == (0.0, 0.0, 0.0)


def test_an_ac_load_with_the_idle_inverter():
    """0.1 h of 1000 W: (1000 + 10 + 50) / 12 × 0.1 = 8.833 Ah; 3 h idle at 10 W: 2.5 Ah."""
    oven = Load("L01", "oven", supply="inverter", watts=SURE(1000.0), hours=hours(SURE(0.1)))
    idle = Load("L02", "idle", supply="idle", watts=SURE(10.0), hours=hours(SURE(3.0)))
    answer = day_use((oven, idle), "anchor", INVERTED)
    assert [use.day.likely for use in answer.uses] == pytest.approx([106 / 12, 2.5])


def test_what_is_missing_is_named():
    oven = Load("L01", "oven", supply="inverter", watts=SURE(1000.0), hours=hours(SURE(0.1)))
    lamp = Load("L02", "lamp", draw=SURE(1.0))
    mystery = Load("L03", "mystery", hours=hours(SURE(1.0)))
    answer = day_use((oven, lamp, mystery, PUMP), "anchor", PLAIN)
    found = {one.load.ident: one.what for one in answer.missing}
    assert found == {
        "L01": "the inverter it runs through",
        "L02": "hours at anchor",
        "L03": "its draw",
    }
    assert answer.total.likely == pytest.approx(1.5)


def test_only_the_five_largest():
    lamps = tuple(
        Load(f"L0{n}", f"lamp {n}", draw=SURE(float(n)), hours=hours(SURE(1.0))) for n in range(7)
    )
    answer = day_use(lamps, "anchor", PLAIN)
    assert [use.load.ident for use in answer.largest] == ["L06", "L05", "L04", "L03", "L02"]


def test_always_live_counts_what_stays_on_all_day_with_nobody_aboard():
    """0.02 + 0.1 × 0.5 = 0.07 A; 1.68 Ah a day, 11.76 Ah a week."""
    night_and_day = hours(None, None, None, SURE(24.0))
    alarm = Load("L01", "alarm", draw=SURE(0.02), hours=night_and_day, always_live=True)
    sniffer = Load(
        "L02", "sniffer", draw=SURE(0.1), duty=SURE(0.5), hours=night_and_day, always_live=True
    )
    bilge = Load(
        "L03", "bilge", draw=SURE(4.0), hours=hours(None, None, None, SURE(0.1)), always_live=True
    )
    unknown = Load("L04", "unknown", hours=night_and_day, always_live=True)
    switched = Load("L05", "switched", draw=SURE(9.0), hours=night_and_day)
    found = always_live((alarm, sniffer, bilge, unknown, switched), PLAIN)
    assert [load.ident for load in found.standing] == ["L01", "L02"]
    assert [load.ident for load in found.now_and_then] == ["L03", "L04"]
    assert [found.current, found.day, found.week] == pytest.approx([0.07, 1.68, 11.76])


def test_sums_by_zone_and_by_circuit():
    """Galley 48 + 1.5 = 49.5, saloon 2 Ah."""
    answer = day_use(BOAT, "anchor", PLAIN)
    zones = by_group(answer, "zone")
    assert list(zones) == ["galley", "saloon"]
    assert list(zones.values()) == pytest.approx([49.5, 2.0])
    assert list(by_group(answer, "circuit")) == ["D05", "D08", "D10"]
