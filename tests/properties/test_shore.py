"""What must always hold of shore power."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.conductors.sizes import STOCKED
from engine.finding import Verdict, meets
from engine.inverter.surge import SURGE
from engine.problem import Problem
from engine.shore.apart import mends, pairs_apart, relief
from engine.shore.appliances import Appliance, Nature, current_at, read_appliances
from engine.shore.cord import Cord, cord_drop, cord_resistance
from engine.shore.generator import fuel
from engine.shore.joins import joined_on_shore
from engine.shore.leakage import longest_trip
from engine.shore.legs import Legs, leg_drops
from engine.shore.pass_through import pass_through
from engine.shore.results import over, trip_of
from engine.shore.starting import Starter, locked_rotor, start_in_turn, start_together
from engine.shore.tables import CODE_LETTERS
from engine.shore.together import judged, total
from engine.shore.wave import warm_share
from engine.units import Amp, Celsius, Metre, OhmPerKm, Volt, Watt

watts = st.integers(1, 5000).map(lambda n: Watt(float(n)))
amps = st.floats(0.0, 100.0).map(Amp)
natures = st.sampled_from(list(Nature))
appliances = st.builds(Appliance, st.just("box"), watts, natures, st.booleans())
many = st.lists(appliances, min_size=1, max_size=8).map(tuple)
runs = st.floats(1.0, 60.0).map(Metre)
warm = st.floats(-10.0, 90.0).map(Celsius)
sizes = st.sampled_from([one for sizes in STOCKED.values() for one in sizes])
RATED = Volt(120.0)


@given(appliances, st.floats(90.0, 120.0), st.floats(90.0, 120.0))
def test_weak_volts_starve_heaters_and_load_chargers(one, first, second):
    low, high = Volt(min(first, second)), Volt(max(first, second))
    weak, strong = current_at(one, low, RATED), current_at(one, high, RATED)
    if one.nature is Nature.RESISTIVE:
        assert meets(weak, strong)
        assert low * current_at(one, low, RATED) == pytest.approx(one.watts * (low / RATED) ** 2)
    elif one.nature is not Nature.TRANSFORMER:
        assert meets(strong, weak)
        assert low * current_at(one, low, RATED) == pytest.approx(one.watts)


@given(many, st.floats(5.0, 63.0))
def test_with_either_of_a_pair_off_the_rest_runs(loads, rating):
    pairs = pairs_apart(loads, Amp(rating), RATED, RATED)
    whole = total(loads, RATED, RATED)
    assert not (pairs and meets(whole, rating))
    for pair in pairs:
        for one in pair:
            assert meets(whole - current_at(one, RATED, RATED), rating)
    assert bool(mends(loads, Amp(rating), RATED, RATED)) >= bool(pairs)


@given(amps, amps, st.floats(5.0, 100.0).map(Amp))
def test_more_current_never_gets_a_milder_verdict(one, other, rating):
    order = [Verdict.FINE, Verdict.SHOULD, Verdict.STOP]
    found = [order.index(judged(at, rating).verdict) for at in sorted((one, other))]
    assert found == sorted(found)


@given(st.floats(1.0, 63.0).map(Amp), watts, watts)
def test_what_comes_in_goes_out_or_into_the_bank(limit, loads, charger):
    found = pass_through(limit, RATED, loads, charger)
    assert found.shore * RATED + found.from_bank == pytest.approx(loads + found.charging)
    assert meets(found.shore, limit)
    assert 0 <= found.charging <= charger
    assert min(found.from_bank, found.charging) == pytest.approx(0.0)


@given(amps, amps, runs)
def test_legs(one, two, run):
    opposed, same = Legs(one, two), Legs(one, two, one_phase=True)
    assert opposed.neutral <= max(one, two)
    assert same.neutral == one + two
    ohms = OhmPerKm(1.7)
    whole = run / 1000 * ohms
    assert sum(leg_drops(opposed, run, ohms)) == pytest.approx(whole * (one + two), abs=1e-9)
    assert sum(leg_drops(same, run, ohms)) == pytest.approx(3 * whole * (one + two), abs=1e-9)


@given(amps, runs, runs, sizes, warm, warm)
def test_a_longer_or_warmer_cord_loses_no_less(amp, one, other, size, cool, hot):  # noqa: PLR0913, PLR0917
    short = Cord(min(one, other), size, min(cool, hot))
    long = Cord(max(one, other), size, max(cool, hot))
    assert meets(cord_drop(amp, short), cord_drop(amp, long))


@given(st.sampled_from(list(STOCKED)), warm)
def test_a_thicker_cord_resists_less(catalogue, at):
    found = [cord_resistance(one, at) for one in STOCKED[catalogue]]
    assert found == sorted(found, reverse=True)


@given(st.floats(0.006, 1.0), st.floats(0.006, 1.0))
def test_more_leakage_never_trips_later(one, other):
    less, more = sorted((one, other))
    slow, fast = longest_trip(Amp(less)), longest_trip(Amp(more))
    assert slow is not None
    assert fast is not None
    assert fast <= slow


@given(st.floats(1000.0, 60000.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_more_load_burns_more_and_idling_burns_some(rating, one, other):
    light, heavy = sorted((one, other))
    burnt = [fuel(Watt(rating), Watt(rating * share)) for share in (light, heavy)]
    assert burnt[0] > 0
    assert meets(burnt[0], burnt[1])


@given(st.floats(0.0, 1.0), st.floats(8000.0, 20000.0))
def test_between_the_charted_sizes_fuel_for_the_rating_lies_between_theirs(share, rating):
    each = [fuel(Watt(r), Watt(r * share)) / r for r in (8000.0, 20000.0)]
    mine = fuel(Watt(rating), Watt(rating * share)) / rating
    assert min(each) * (1 - 1e-9) <= mine <= max(each) * (1 + 1e-9)


starters = st.builds(Starter, st.just("box"), watts, st.sampled_from(sorted(SURGE.rows)))


@given(st.lists(starters, max_size=5).map(tuple), watts)
def test_in_turn_never_asks_more_than_at_once(several, running):
    in_turn = start_in_turn(several, running)
    assert meets(in_turn, start_together(several, running))
    assert meets(running + sum(one.running for one in several), in_turn)


@given(st.floats(0.1, 20.0), st.sampled_from(list(CODE_LETTERS.rows)))
def test_kva_goes_with_horsepower(horsepower, letter):
    one, two = locked_rotor(horsepower, letter), locked_rotor(2 * horsepower, letter)
    assert two.least == pytest.approx(2 * one.least)
    assert one.most is None or one.most > one.least


@given(warm, warm)
def test_warmer_air_never_leaves_more(one, other):
    cool, hot = (warm_share(Celsius(at)) or 0.0 for at in sorted((one, other)))
    assert hot <= cool


@given(st.integers(1, 900), st.integers(1, 2000))
def test_a_trip_passes_only_within_both_limits(milliamperes, milliseconds):
    trip = trip_of(f"{milliamperes} mA, {milliseconds} ms")
    passed = not over(trip, Amp(0.030), 0.100)
    assert passed == (milliamperes <= 30 and milliseconds <= 100)


@given(many, st.floats(5.0, 63.0))
def test_what_is_said_to_leave_off_is_enough(loads, rating):
    said, whole = relief(loads, Amp(rating), RATED, RATED), total(loads, RATED, RATED)
    assert bool(said) == (not meets(whole, 0.8 * rating))
    if "leave off the" in said.lower():
        least = min(whole - current_at(one, RATED, RATED) for one in loads)
        assert meets(least, rating)


@given(st.text(max_size=80) | st.text("0123456789mAs ,.;noten", max_size=60))
def test_what_a_person_found_is_read_or_let_be(text):
    trip = trip_of(text)
    assert all(one >= 0 for one in (*trip.currents, *trip.times))
    assert joined_on_shore(text, text) in {True, False, None}


@given(st.text(max_size=120) | st.text("kW1,. ;:=", max_size=60))
def test_a_list_of_loads_is_read_or_refused(text):
    try:
        found = read_appliances(text)
    except Problem:
        return
    assert all(one.watts > 0 for one in found)


@given(st.lists(st.tuples(st.sampled_from(["kettle", "lamp B"]), watts), min_size=1, max_size=5))
def test_a_list_as_written_is_read_back(listed):
    text = ", ".join(f"{name} {one:g} W" for name, one in listed)
    assert [(one.name, one.watts) for one in read_appliances(text)] == listed
