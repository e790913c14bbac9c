"""What must always hold of two wells, bank sizing and charging."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.batteries.ageing import cycle_life
from engine.batteries.bursts import Period, factor_by_exponent, section_capacity
from engine.batteries.charging_volts import STAGES, charging_volts
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.sizing import Need, worksheet
from engine.batteries.two_well import State, Wells, most_charge, most_discharge, state_at, step
from engine.charging.acceptance import acceptance, charge_for, time_to_charge
from engine.charging.alternator import Alternator, output
from engine.charging.intake import Intake, intake_of
from engine.charging.mains import Charger, ac_current
from engine.charging.mains import output as charger_output
from engine.charging.wind import Turbine, mean_power
from engine.finding import meets
from engine.units import (
    Amp,
    AmpHour,
    Celsius,
    Hour,
    MetrePerSecond,
    PerHour,
    Share,
    SquareMetre,
    Volt,
    Watt,
)

chemistries = st.sampled_from(sorted(CHEMISTRIES)).map(CHEMISTRIES.__getitem__)
shares = st.integers(0, 1000).map(lambda thousandths: Share(thousandths / 1000))
capacities = st.floats(20.0, 1000.0).map(AmpHour)
amperes = st.floats(0.5, 500.0).map(Amp)
hours = st.floats(0.01, 40.0).map(Hour)
wells = st.builds(
    Wells,
    st.floats(0.05, 1.5).map(PerHour),
    st.floats(0.2, 0.9).map(Share),
    capacities,
)
intakes = st.builds(
    Intake,
    capacities,
    st.floats(0.05, 1.0).map(PerHour),
    st.floats(0.2, 20.0).map(PerHour),
    st.floats(0.5, 1.0).map(Share),
)


def filled(two: Wells, at_hand: Share, bound: Share) -> State:
    return State(AmpHour(two.most_available * at_hand), AmpHour(two.most_bound * bound))


@given(wells, shares, shares, st.floats(-2000.0, 2000.0).map(Amp), hours)
def test_two_wells_stay_within_none_and_full_and_lose_nothing(two, at_hand, bound, asked, time):
    start = filled(two, at_hand, bound)
    after, flowed = step(two, start, asked, time)
    assert 0 <= after.available <= two.most_available
    assert 0 <= after.bound <= two.most_bound
    assert after.total == pytest.approx(start.total - flowed * time, abs=two.full * 1e-9)
    assert abs(flowed) <= abs(asked) or asked == 0.0


@given(wells, shares, shares, st.floats(-1.0, 1.0), hours)
def test_two_halves_of_a_step_are_the_step(two, at_hand, bound, part, time):
    start = filled(two, at_hand, bound)
    most = most_discharge(two, start, time) if part > 0 else -most_charge(two, start, time)
    current, half = Amp(part * most), Hour(time / 2)
    whole, flowed = step(two, start, current, time)
    middle, _ = step(two, start, current, half)
    end, _ = step(two, middle, current, half)
    assert flowed == pytest.approx(current, rel=1e-9)
    assert end.available == pytest.approx(whole.available, abs=two.full * 1e-9)
    assert end.bound == pytest.approx(whole.bound, abs=two.full * 1e-9)


@given(wells, shares, shares, amperes, amperes, hours)
def test_more_current_never_leaves_more(two, at_hand, bound, one, other, time):  # noqa: PLR0913, PLR0917
    start = filled(two, at_hand, bound)
    less, more = (step(two, start, at, time)[0] for at in sorted((one, other)))
    assert meets(more.total, less.total + two.full * 1e-12)
    assert meets(more.available, less.available + two.full * 1e-12)


@given(wells, shares, hours, hours)
def test_a_current_that_lasts_longer_is_never_larger(two, charge, one, other):
    state = state_at(two, charge)
    short, long = sorted((one, other))
    assert meets(most_discharge(two, state, long), most_discharge(two, state, short))


@given(wells, st.floats(0.0, 1.0), hours)
def test_discharge_then_charge_closes(two, part, time):
    """What was taken from half full and put back is at rest where it began."""
    start = state_at(two, Share(0.5))
    current = Amp(0.5 * part * min(most_discharge(two, start, time), two.full / 2 / time))
    taken, _ = step(two, start, current, time)
    put, flowed = step(two, taken, Amp(-current), time)
    assert flowed == -current
    rested, _ = step(two, put, Amp(0.0), Hour(60 / two.rate))
    assert rested.available == pytest.approx(start.available, rel=1e-9)
    assert rested.bound == pytest.approx(start.bound, rel=1e-9)


needs = st.builds(
    Need,
    st.floats(1.0, 500.0).map(AmpHour),
    st.floats(0.5, 14.0),
    st.floats(0.1, 1.0).map(Share),
    st.floats(0.05, 1.0).map(Share),
    st.floats(0.5, 1.0).map(Share),
    amperes,
    st.floats(1.0, 1.6),
    st.floats(1.0, 1.5),
)


@given(needs, st.floats(1.0, 3.0))
def test_a_larger_need_never_has_a_smaller_bank(need, factor):
    at_first = worksheet(need)
    more = worksheet(replace(need, daily=AmpHour(need.daily * factor)))
    longer = worksheet(replace(need, days=need.days * factor))
    assert more.capacity == pytest.approx(at_first.capacity * factor)
    assert meets(at_first.capacity, longer.capacity)
    assert at_first.hour_rate * need.largest_current == pytest.approx(at_first.capacity)


@given(needs)
def test_a_bank_keeps_every_promise_of_its_worksheet(need):
    old = worksheet(need).capacity / need.temperature_factor / need.margin
    assert meets(need.daily * need.days, old * need.depth)
    assert meets(need.daily, old * need.daily_depth)
    assert meets(need.daily * need.days, old * need.end_of_life)


periods = st.lists(
    st.builds(Period, st.floats(0.0, 300.0).map(Amp), st.floats(0.01, 5.0).map(Hour)),
    min_size=1, max_size=5,
).map(tuple)  # fmt: skip


@given(periods, st.floats(1.0, 1.4))
def test_a_bank_without_rate_effect_needs_what_is_taken_and_any_other_no_less(spells, exponent):
    taken = sum(one.current * one.time for one in spells)
    plain = section_capacity(spells, lambda time: time)
    assert plain == pytest.approx(taken, rel=1e-9, abs=1e-9)
    lasting = sum(one.time for one in spells)
    steep = section_capacity(
        (Period(spells[0].current, Hour(min(lasting, 20.0))),),
        lambda time: factor_by_exponent(time, Hour(20.0), exponent),
    )
    assert meets(spells[0].current * min(lasting, 20.0), steep + 1e-9)


@given(chemistries, st.floats(0.01, 1.0), st.floats(0.01, 1.0))
def test_deeper_cycles_are_never_more(chemistry, one, other):
    shallow, deep = sorted((one, other))
    found = [cycle_life(chemistry, Share(depth)) for depth in (deep, shallow)]
    assert meets(found[0], found[1])


@given(chemistries, st.sampled_from(sorted(STAGES)), st.floats(-10.0, 45.0), st.floats(-10.0, 45.0))
def test_a_warmer_bank_is_never_charged_to_more_volts(chemistry, stage, one, other):
    cold, warm = (
        charging_volts(chemistry, stage, Volt(24.0), Celsius(at)) for at in sorted((one, other))
    )
    assert (cold is None) == (warm is None)
    if cold is not None and warm is not None:
        assert meets(warm.likely, cold.likely)
        assert cold.low <= cold.likely <= cold.high


@given(intakes, shares, amperes, amperes)
def test_a_bank_takes_no_more_than_source_limit_and_taper(intake, charge, one, other):
    less, more = (acceptance(intake, charge, at) for at in sorted((one, other)))
    assert 0 <= less <= more <= intake.limit * intake.capacity
    assert less <= min(one, other)
    assert meets(more, intake.taper * intake.capacity * (1 - charge))


@given(intakes, shares, amperes, hours, st.floats(0.0, 1.0))
def test_a_charge_in_two_steps_is_the_charge_in_one(intake, start, source, time, part):
    whole = charge_for(intake, start, source, time)
    first = charge_for(intake, start, source, Hour(time * part))
    second = charge_for(intake, first.charge, source, Hour(time * (1 - part)))
    assert second.charge == pytest.approx(whole.charge, abs=1e-9)
    assert first.taken + second.taken == pytest.approx(whole.taken, abs=intake.capacity * 1e-9)


@given(intakes, shares, amperes, hours)
def test_what_a_source_had_is_taken_or_curtailed(intake, start, source, time):
    found = charge_for(intake, start, source, time)
    assert found.taken + found.curtailed == pytest.approx(source * time, rel=1e-9)
    kept = found.taken * intake.efficiency
    assert (found.charge - start) * intake.capacity == pytest.approx(kept, abs=1e-9 * kept + 1e-9)
    assert start <= found.charge <= 1
    assert meets(found.taken, acceptance(intake, start, source) * time)


@given(intakes, shares, shares, amperes, amperes)
def test_a_larger_source_is_never_slower(intake, one, other, less, more):
    start, end = sorted((one, other))
    if end in {start, 1}:
        return
    slow, fast = (time_to_charge(intake, start, end, source) for source in sorted((less, more)))
    assert slow is not None
    assert fast is not None
    assert meets(fast, slow)
    assert charge_for(intake, start, max(less, more), fast).charge == pytest.approx(end, rel=1e-9)


@given(capacities, st.floats(-20.0, 30.0), st.floats(-20.0, 30.0))
def test_a_colder_lithium_bank_never_takes_more(capacity, one, other):
    cold, warm = (
        intake_of(CHEMISTRIES["lithium"], capacity, Celsius(at)).limit
        for at in sorted((one, other))
    )
    assert cold <= warm
    assert (cold == 0.0) == (min(one, other) < 0)


@given(amperes, st.floats(1.0, 3.0), st.floats(0.0, 5000.0), st.floats(0.0, 5000.0), amperes)
def test_an_alternator_never_gives_less_at_speed_nor_more_than_its_limit(
    marked, ratio, one, other, limit
):
    fitted = Alternator(marked, ratio, limit=limit)
    slow, fast = (output(fitted, at).current for at in sorted((one, other)))
    assert meets(slow, fast)
    assert meets(fast, min(limit, 0.75 * marked))


@given(amperes, amperes)
def test_a_charger_never_asks_the_inlet_for_more_than_it_has(marked, inlet):
    charger, volts, mains = Charger(marked), Volt(14.4), Volt(120.0)
    given_out, lines = charger_output(charger, volts, mains, inlet)
    assert meets(ac_current(charger, given_out, volts, mains), inlet)
    assert bool(lines) == (given_out < marked)


@given(st.floats(0.1, 5.0), st.floats(0.1, 5.0), st.floats(0.5, 15.0), st.floats(50.0, 2000.0))
def test_a_larger_turbine_never_gives_less_and_none_more_than_its_rating(one, other, wind, rated):
    small, large = (
        mean_power(Turbine(SquareMetre(area), rated=Watt(rated)), MetrePerSecond(wind))
        for area in sorted((one, other))
    )
    assert small >= 0
    assert meets(small, large)
    assert large < rated
