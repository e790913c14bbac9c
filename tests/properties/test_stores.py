"""What must always hold of batteries, inverter and protection."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.peukert import clamped_delivered, discharge_time
from engine.batteries.temperature import capacity_factor
from engine.batteries.voltage import open_circuit, resistance
from engine.finding import Verdict, meets
from engine.inverter.efficiency import PRESETS, best_load, dc_watts, efficiency, preset
from engine.inverter.runtime import Job, Store, run
from engine.inverter.sag import collapse_power, operating_point
from engine.protection.series import SERIES, ratings_of, smallest_in
from engine.protection.window import Window, judge, window
from engine.units import Amp, AmpHour, Celsius, Hour, Ohm, Share, Volt, Watt

chemistries = st.sampled_from(sorted(CHEMISTRIES)).map(CHEMISTRIES.__getitem__)
capacities = st.floats(50.0, 1000.0).map(AmpHour)
currents = st.floats(0.1, 500.0).map(Amp)
exponents = st.floats(1.0, 1.4)
temperatures = st.floats(-25.0, 50.0).map(Celsius)
charges = st.integers(0, 1000).map(lambda thousandths: Share(thousandths / 1000))
volts = st.sampled_from([12.0, 24.0, 48.0]).map(Volt)
kinds = st.sampled_from(sorted(PRESETS.rows))
watts = st.floats(1.0, 3000.0).map(Watt)
ohms = st.floats(0.0, 0.02).map(Ohm)


@given(capacities, currents, currents, exponents)
def test_discharge_time_falls_with_current(capacity, one, other, exponent):
    slow, fast = min(one, other), max(one, other)
    times = [discharge_time(capacity, Hour(20.0), at, exponent) for at in (slow, fast)]
    assert times[0] >= times[1]


@given(capacities, currents, exponents, st.floats(0.1, 10.0))
def test_a_bank_twice_the_size_at_twice_the_current_lasts_as_long(
    capacity, current, exponent, factor
):
    one = discharge_time(capacity, Hour(20.0), current, exponent)
    other = discharge_time(AmpHour(capacity * factor), Hour(20.0), Amp(current * factor), exponent)
    assert one == pytest.approx(other, rel=1e-9)


@given(chemistries, temperatures, temperatures)
def test_a_colder_bank_never_gives_more(chemistry, one, other):
    cold, warm = sorted((one, other))
    factors = [capacity_factor(chemistry, at) for at in (cold, warm)]
    assert 0 <= factors[0] <= factors[1] <= 1


@given(chemistries, charges, charges, volts)
def test_volts_at_rest_never_rise_as_the_charge_falls(chemistry, one, other, nominal):
    low, high = sorted((one, other))
    found = [open_circuit(chemistry, at, nominal) for at in (low, high)]
    assert found == sorted(found)


@given(chemistries, capacities, charges, charges, temperatures, temperatures)
def test_resistance_never_falls_with_charge_or_warmth_lost(  # noqa: PLR0913, PLR0917
    chemistry, capacity, one, other, cool, warm
):
    def ohms_at(charge: Share, celsius: Celsius) -> Ohm:
        return resistance(chemistry, capacity, Volt(12.0), charge, celsius)

    assert ohms_at(min(one, other), min(cool, warm)) >= ohms_at(max(one, other), max(cool, warm))


@given(kinds, watts, watts)
def test_more_watts_out_take_more_in_and_some_are_always_lost(kind, one, other):
    curve = preset(kind, Watt(3000.0))
    taken = [dc_watts(curve, at) for at in sorted((one, other))]
    assert taken == sorted(taken)
    assert all(efficiency(curve, at) < 1 for at in (one, other))
    assert efficiency(curve, one) <= efficiency(curve, best_load(curve)) * (1 + 1e-12)


@given(st.floats(8.0, 60.0).map(Volt), ohms, watts)
def test_an_operating_point_keeps_both_laws(open_volts, loop, power):
    point = operating_point(open_volts, loop, power)
    if point is None:
        assert power > collapse_power(open_volts, loop)
        return
    assert point.volts * point.current == pytest.approx(power, rel=1e-9)
    assert point.volts == pytest.approx(open_volts - loop * point.current, rel=1e-9)
    assert point.volts >= open_volts / 2 * (1 - 1e-9)


@st.composite
def stores(draw):
    chemistry = draw(chemistries)
    capacity, nominal = draw(capacities), draw(volts)
    return Store(
        capacity=capacity,
        rated_hours=Hour(20.0),
        exponent=chemistry.exponent.likely,
        low_rate_gain=chemistry.low_rate_gain,
        nominal_volts=nominal,
        open_volts=lambda charge: open_circuit(chemistry, charge, nominal),
        resistance=lambda charge: resistance(chemistry, capacity, nominal, charge),
        temperature_factor=capacity_factor(chemistry, draw(temperatures)),
    )


jobs = st.builds(
    lambda power, start, reserve, feeder, cut: Job(
        power, Share(max(start, reserve)), Share(min(start, reserve)), feeder, cut
    ),
    watts,
    charges,
    charges,
    ohms,
    st.floats(0.0, 12.0).map(Volt),
)


@given(stores(), kinds, jobs, watts)
def test_a_run_is_never_longer_with_more_watts(store, kind, job, other):
    curve = preset(kind, Watt(3000.0))
    less, more = sorted((job.watts, other))
    times = [run(store, curve, replace(job, watts=at)).time for at in (less, more)]
    assert meets(times[1], times[0])


@given(stores(), kinds, jobs, ohms)
def test_a_longer_cable_never_lengthens_a_run(store, kind, job, other):
    curve = preset(kind, Watt(3000.0))
    thick, thin = sorted((job.feeder, other))
    times = [run(store, curve, replace(job, feeder=at)).time for at in (thick, thin)]
    assert meets(times[1], times[0])


@given(stores(), kinds, jobs)
def test_a_run_that_went_as_planned_used_the_charge_and_gave_the_amp_hours(store, kind, job):
    found = run(store, preset(kind, Watt(3000.0)), job)
    share = job.from_charge - job.reserve
    assert 0 <= found.amp_hours <= share * store.capacity * store.low_rate_gain * (1 + 1e-9)
    if found.tripped_at is None:
        assert found.last is not None
        assert meets(job.cut_off, found.last.volts)
        assert bool(found.time) == bool(share * store.temperature_factor)
    else:
        assert job.reserve <= found.tripped_at <= job.from_charge
    if found.first is not None and found.last is not None and found.time:
        least, most = found.first.current, found.last.current
        assert least * (1 - 1e-9) <= found.amp_hours / found.time <= most * (1 + 1e-9)


@given(capacities, currents, chemistries)
def test_the_inverter_room_rates_a_bank_as_the_battery_room_does(capacity, current, chemistry):
    exponent, gain = chemistry.exponent.likely, chemistry.low_rate_gain
    store = Store(
        capacity,
        Hour(20.0),
        exponent,
        gain,
        Volt(12.0),
        lambda _: Volt(12.0),
        lambda _: Ohm(0.0),
    )
    expected = clamped_delivered(capacity, Hour(20.0), current, exponent, gain)
    assert store.delivers(current) == pytest.approx(expected, rel=1e-9)


@given(currents, currents, st.sampled_from(sorted(SERIES)), st.booleans())
def test_the_smallest_rating_lies_in_its_window_and_none_below_does(
    current, most, series, continuous
):
    open_to = window(current, most, continuous=continuous)
    found = smallest_in(open_to, series)
    inside = [r for r in ratings_of(series) if judge(Amp(r), open_to).verdict is Verdict.FINE]
    assert found == (min(inside) if inside else None)


@given(currents, currents, currents, st.integers(1, 4))
def test_an_empty_window_fits_no_rating(rating, least, most, parallel):
    open_to = Window(Amp(max(least, most * parallel * 1.001)), most)
    assert open_to.empty
    assert judge(rating, open_to, parallel).verdict is not Verdict.FINE
