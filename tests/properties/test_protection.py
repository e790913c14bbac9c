"""What must always hold of protection: faults, ratings, opening times and placement."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.conductors.mechanics import nearest
from engine.conductors.sizes import STOCKED
from engine.conductors.withstand import k_of, limit
from engine.estimate import Estimate
from engine.finding import Verdict, meets
from engine.protection.clearing import band, let_through, withstands
from engine.protection.fault import cold_cable, fault_current, strings
from engine.protection.interrupting import asked, enough, published_minimum
from engine.protection.kinds import interrupts
from engine.protection.motor import judge_stall, stalled_current
from engine.protection.placement import placed
from engine.protection.series import SERIES, ratings_of
from engine.protection.tables import BANDS
from engine.protection.window import NEXT_SIZE, Window, judge, next_size, next_size_allowed
from engine.units import Amp, Celsius, Metre, Ohm, Volt

sizes = st.sampled_from([size for row in STOCKED.values() for size in row])
runs = st.floats(0.0, 40.0).map(Metre)
ohms = st.floats(1e-5, 0.5).map(Ohm)
amperes = st.floats(0.5, 20000.0).map(Amp)
volts = st.sampled_from([12.0, 24.0, 36.0, 48.0]).map(Volt)
times = st.floats(0.1, 100.0)
series = st.sampled_from(sorted(SERIES))
banded = st.sampled_from(sorted(BANDS))
maybe = st.none() | amperes
GRAVITY = (Verdict.FINE, Verdict.CANNOT_SAY, Verdict.SHOULD, Verdict.STOP)


@given(volts, ohms, sizes, runs, runs)
def test_a_longer_run_never_raises_the_fault(source, bank, size, one, other):
    near, far = (
        fault_current(source, bank, cold_cable(run, size), Ohm(0.0)) for run in sorted((one, other))
    )
    assert far <= near


@given(sizes, runs, st.floats(-40.0, 200.0), st.floats(-40.0, 200.0))
def test_colder_copper_never_lowers_the_fault(size, run, one, other):
    cold, warm = (cold_cable(run, size, Celsius(at)) for at in sorted((one, other)))
    assert cold <= warm


@given(ohms, st.integers(1, 8), st.integers(1, 8))
def test_as_many_abreast_as_in_series_resist_as_one(each, series_count, parallel):
    assert strings(strings(each, series_count, 1), 1, series_count) == pytest.approx(each, rel=1e-9)
    assert strings(each, series_count, parallel + 1) < strings(each, series_count, parallel)


@given(maybe, amperes, amperes)
def test_a_higher_fault_never_asks_for_a_lower_rating(minimum, one, other):
    low, high = (asked(Amp(fault), minimum) for fault in sorted((one, other)))
    assert low is not None
    assert high is not None
    assert low.least <= high.least


@given(amperes, maybe, amperes, amperes)
def test_a_higher_interrupting_rating_is_never_judged_worse(fault, minimum, one, other):
    low, high = (enough(Amp(rating), fault, minimum).verdict for rating in sorted((one, other)))
    assert GRAVITY.index(high) <= GRAVITY.index(low)


@given(st.floats(0, 2200), st.floats(0, 2200), st.booleans(), st.sampled_from([12.0, 24.0, 32.0]))
def test_more_cranking_amperes_never_ask_for_less(one, other, main, nominal):
    low, high = (
        published_minimum(Volt(nominal), Amp(cranking), main=main)
        for cranking in sorted((one, other))
    )
    assert low is not None
    assert high is not None
    assert low <= high


@given(series, st.floats(1.0, 150.0), st.floats(1.0, 150.0))
def test_more_volts_never_interrupt_more(kind, one, other):
    low, high = (interrupts(kind, Volt(at)) or 0.0 for at in sorted((one, other)))
    assert high <= low


@given(banded, times, times)
def test_more_current_never_opens_later(kind, one, other):
    slow, fast = (band(kind, at) for at in sorted((one, other)))
    assert slow is not None
    assert fast is not None
    assert fast[0] <= slow[0]
    late = [float("inf") if end is None else end for end in (slow[1], fast[1])]
    assert late[1] <= late[0]
    assert fast[0] <= late[1]


@given(banded, amperes, amperes, amperes)
def test_the_bound_of_let_through_never_rises_with_the_fault(kind, rating, one, other):
    low, high = (let_through(kind, rating, Amp(fault)) for fault in sorted((one, other)))
    if low is not None:
        assert high is not None
        assert high <= low


@given(banded, amperes, amperes)
def test_the_bound_covers_the_soonest_opening(kind, rating, fault):
    """Current squared times the least time is less than any upper bound."""
    through, opens = let_through(kind, rating, fault), band(kind, fault / rating)
    assert opens is not None
    if through is not None and fault / rating <= max(BANDS[kind].rows):
        assert meets(fault**2 * opens[0], through) or opens[0] == 0


@given(sizes, sizes, st.floats(0.1, 1e9))
def test_more_copper_never_bears_less(one, other, through):
    thin, thick = sorted((one, other), key=lambda size: size.area)
    assert limit(thin) <= limit(thick)
    if withstands(limit(thin), through).verdict is Verdict.FINE:
        assert withstands(limit(thick), through).verdict is Verdict.FINE


@given(st.floats(-40, 150), st.floats(-40, 150), st.floats(160, 300))
def test_a_hotter_start_bears_less(one, other, final):
    cool, warm = (k_of(Celsius(at), Celsius(final)) for at in sorted((one, other)))
    assert warm <= cool


@given(series, amperes, st.booleans())
def test_the_next_size_is_the_only_one_above(kind, carries, main):
    above = next_size(carries, kind)
    allowed = [r for r in ratings_of(kind) if next_size_allowed(Amp(r), carries, kind, main=main)]
    if above is None or main:
        assert allowed == []
        return
    assert allowed == [above]
    assert carries < above <= 1.5 * carries * (1 + 1e-9)
    assert not [rating for rating in ratings_of(kind) if carries <= rating < above]


@given(series, amperes, amperes, st.booleans())
def test_the_next_size_softens_only_a_stop(kind, least, most, main):
    for rating in ratings_of(kind):
        strict = judge(Amp(rating), Window(least, most))
        loose = judge(Amp(rating), Window(least, most), series=kind, main=main)
        if loose != strict:
            assert (strict.verdict, loose.verdict) == (Verdict.STOP, Verdict.SHOULD)
            assert loose.rule is NEXT_SIZE
            assert not main


@given(amperes, sizes, runs, runs, amperes)
def test_a_longer_run_never_opens_a_stalled_motor_s_fuse_sooner(stall, size, one, other, rating):
    near, far = (
        stalled_current(Volt(12.0), stall, cold_cable(run, size), Ohm(0.0))
        for run in sorted((one, other))
    )
    assert far <= near <= stall * (1 + 1e-9)
    near_verdict, far_verdict = (judge_stall(current, rating).verdict for current in (near, far))
    assert GRAVITY.index(near_verdict) <= GRAVITY.index(far_verdict)


@given(st.lists(st.floats(0.0, 3.0), min_size=3, max_size=3), st.booleans(), st.booleans())
def test_a_sheath_never_brings_the_limit_nearer(ends, at_battery, sheathed):
    distance = Estimate(*sorted(ends))
    bare = placed(distance, sheathed=False, at_battery=at_battery).verdict
    covered = placed(distance, sheathed=True, at_battery=at_battery).verdict
    assert GRAVITY.index(covered) <= GRAVITY.index(bare)
    certain = placed(Estimate.exact(distance.likely), sheathed=sheathed, at_battery=at_battery)
    assert certain.verdict is not Verdict.CANNOT_SAY


@given(sizes)
def test_no_other_size_is_nearer(size):
    found = nearest(size)
    assert found.catalogue != size.catalogue
    apart = max(found.area / size.area, size.area / found.area)
    for other in STOCKED[found.catalogue]:
        assert apart <= max(other.area / size.area, size.area / other.area)
