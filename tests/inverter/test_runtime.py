"""Runtime through an inverter: where it ends and why, by hand sums."""

from dataclasses import replace

import pytest

from engine.inverter.efficiency import Curve, ac_watts_of, best_load, dc_watts, efficiency, preset
from engine.inverter.runtime import Job, Store, lossless_time, run
from engine.inverter.sag import CUT_OFF_SHARE, collapse_power, operating_point
from engine.inverter.surge import SURGE, carries_surge, surge_of
from engine.problem import Problem
from engine.units import Amp, AmpHour, Hour, Ohm, Share, Volt, Watt

LOSSLESS = Curve(Watt(2000.0), 0.0, 0.0, 0.0)
STORE = Store(
    capacity=AmpHour(200.0),
    rated_hours=Hour(20.0),
    exponent=1.0,
    low_rate_gain=1.1,
    nominal_volts=Volt(12.0),
    open_volts=lambda charge: Volt(11.0 + 2.0 * charge),
    resistance=lambda _: Ohm(0.0),
)
JOB = Job(Watt(600.0), Share(1.0), Share(0.5), Ohm(0.0), Volt(0.0))


def test_a_run_down_to_the_reserve():
    """100 Ah between 13 V and 12 V: the mean of volts is 12.5, so 100 × 12.5 / 600 = 2.083 h."""
    found = run(STORE, LOSSLESS, JOB)
    assert found.time == pytest.approx(100 * 12.5 / 600)
    assert found.amp_hours == pytest.approx(100.0)
    assert (found.tripped_at, found.no_point) == (None, False)
    assert found.first is not None
    assert found.last is not None
    assert (found.first.volts, found.last.volts) == pytest.approx((13.0, 12.0))
    assert found.lossless_time == pytest.approx(100 * 12 / 600)


def test_a_trip_is_placed_where_the_volts_meet_the_cut_off():
    """11 + 2 s = 12.5 V at 75 % charge: a quarter of 200 Ah at 12.75 V on average."""
    found = run(STORE, LOSSLESS, replace(JOB, cut_off=Volt(12.5)))
    assert found.tripped_at == pytest.approx(0.75, abs=1e-7)
    assert not found.no_point
    assert found.time == pytest.approx(50 * 12.75 / 600)
    assert found.last is not None
    assert found.last.volts == pytest.approx(12.5)


def test_volts_met_exactly_do_not_trip():
    assert run(STORE, LOSSLESS, replace(JOB, cut_off=Volt(12.0))).tripped_at is None


def test_a_bank_that_sags_until_there_is_no_point():
    """600 W behind 0.06 Ω collapse at √(4 × 0.06 × 600) = 12 V at rest, 50 % charge."""
    thin = replace(JOB, feeder=Ohm(0.06), reserve=Share(0.2))
    found = run(STORE, LOSSLESS, thin)
    assert found.tripped_at == pytest.approx(0.5, abs=1e-6)
    assert found.no_point
    assert found.last is not None
    assert found.last.volts == pytest.approx(6.0, abs=0.01)


def test_no_point_from_the_start():
    found = run(STORE, LOSSLESS, replace(JOB, feeder=Ohm(0.1)))
    assert found.first is None
    assert found.last is None
    assert not found.time
    assert not found.amp_hours
    assert found.no_point
    assert found.tripped_at == 1.0
    assert "no point" in [step.value for step in found.working]


def test_below_the_cut_off_from_the_start():
    found = run(STORE, LOSSLESS, replace(JOB, cut_off=Volt(13.1)))
    assert not found.time
    assert (found.tripped_at, found.no_point) == (1.0, False)
    assert found.first is not None


@pytest.mark.parametrize("start", [0.5, 0.3])
def test_a_bank_at_or_below_its_reserve_gives_nothing(start):
    found = run(STORE, LOSSLESS, replace(JOB, from_charge=Share(start)))
    assert not found.time
    assert not found.lossless_time
    assert found.tripped_at is None


def test_nothing_that_draws_is_a_problem():
    with pytest.raises(Problem, match="Nothing draws from the bank"):
        run(STORE, LOSSLESS, replace(JOB, watts=Watt(0.0)))


def test_idling_alone_empties_a_bank():
    """2000 W × 0.01 = 20 W: 100 Ah × 12.5 V / 20 W = 62.5 h; the rate would be clamped at 1.1."""
    idle = replace(JOB, watts=Watt(0.0))
    found = run(STORE, Curve(Watt(2000.0), 0.01, 0.0, 0.0), idle)
    assert found.time == pytest.approx(62.5)
    assert found.lossless_time == float("inf")
    slow = replace(STORE, exponent=1.4)
    assert slow.delivers(Amp(0.1)) == pytest.approx(220.0)
    cold = replace(slow, temperature_factor=0.8)
    assert cold.delivers(Amp(0.1)) == pytest.approx(176.0)


def test_the_working_names_every_figure():
    found = run(STORE, preset("typical", Watt(2000.0)), replace(JOB, watts=Watt(1000.0)))
    steps = {step.what: step.value for step in found.working}
    assert list(steps) == [
        "watts from the bank", "at the start", "at the end", "the full bank would give", "time",
        "ignoring losses",
    ]  # fmt: skip
    assert steps["watts from the bank"] == "1090 W"
    assert steps["at the start"] == "83.8 A at 13 V"
    assert steps["the full bank would give"] == "200 Ah"
    assert steps["ignoring losses"] == "1.2 h"


def test_lossless_time_alone():
    assert lossless_time(STORE, JOB) == pytest.approx(2.0)


def test_efficiency_at_the_ends():
    curve = preset("typical", Watt(2000.0))
    assert dc_watts(curve, Watt(0.0)) == pytest.approx(20.0)
    assert efficiency(curve, Watt(0.0)) == 0.0
    assert best_load(curve) == pytest.approx(2000 * (0.01 / 0.06) ** 0.5)
    assert best_load(LOSSLESS) == 2000.0
    with pytest.raises(Problem, match="“splendid” is not in the table"):
        preset("splendid", Watt(2000.0))


def test_the_other_way_through_the_curve():
    """1090 W give 1000 W; 20 W are idle; without a square loss 1060 W: 1000 × 1.04 + 20."""
    curve = preset("typical", Watt(2000.0))
    assert ac_watts_of(curve, Watt(1090.0)) == pytest.approx(1000.0)
    assert not ac_watts_of(curve, Watt(20.0))
    straight = Curve(Watt(2000.0), 0.01, 0.04, 0.0)
    assert ac_watts_of(straight, Watt(1060.0)) == pytest.approx(1000.0)


def test_a_stiff_supply_never_collapses():
    assert collapse_power(Volt(12.0), Ohm(0.0)) == float("inf")
    point = operating_point(Volt(12.0), Ohm(0.0), Watt(600.0))
    assert point is not None
    assert (point.current, point.volts) == (50.0, 12.0)


def test_at_the_edge_half_the_volts_are_left():
    """12 V behind 10 mΩ: 3600 W at 6 V and 600 A; a watt more is no point."""
    point = operating_point(Volt(12.0), Ohm(0.01), Watt(3600.0))
    assert point is not None
    assert (point.current, point.volts) == pytest.approx((600.0, 6.0), rel=1e-4)
    assert operating_point(Volt(12.0), Ohm(0.01), Watt(3601.0)) is None
    assert pytest.approx(10.5) == CUT_OFF_SHARE * 12


def test_surge_by_class():
    assert surge_of("microwave", Watt(1050.0)) == 2100.0
    assert all(1 <= low <= high for low, high in SURGE.rows.values())
    assert carries_surge(Watt(4000.0), Watt(4000.0))
    assert not carries_surge(Watt(4001.0), Watt(4000.0))
    with pytest.raises(Problem, match="“toaster” is not in the table"):
        surge_of("toaster", Watt(800.0))
