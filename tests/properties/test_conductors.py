"""What must always hold of conductors: monotonic, minimal, and the same in every unit."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.conductors.carrying import Surroundings, carries, working_temperature
from engine.conductors.drop import (
    Task,
    circular_mils_needed,
    longest_run,
    loop_drop,
    rule_drop,
)
from engine.conductors.resistance import resistance
from engine.conductors.sizes import KNOWN, STOCKED, Size
from engine.conductors.sizing import least_size
from engine.conductors.tables import INSULATIONS
from engine.finding import meets
from engine.units import Amp, Celsius, Metre, Share, Volt

catalogues = st.sampled_from(["awg", "sae", "metric"])
volts = st.sampled_from([12.0, 24.0, 48.0]).map(Volt)
currents = st.floats(0.1, 300.0).map(Amp)
runs = st.floats(0.1, 40.0).map(Metre)
shares = st.floats(0.01, 0.2).map(Share)
tasks = st.builds(Task, volts, currents, runs, shares)
surroundings = st.builds(
    Surroundings,
    st.sampled_from(INSULATIONS),
    st.booleans(),
    st.integers(1, 60),
    st.floats(-10.0, 55.0).map(Celsius),
)
sizes = st.sampled_from([size for row in STOCKED.values() for size in row])


def area(size: Size | None) -> float:
    """Copper of a size; none so thick counts as beyond every size."""
    return float("inf") if size is None else size.area


@given(catalogues, tasks, runs, surroundings)
def test_a_longer_run_is_never_thinner(catalogue, task, other, around):
    short = Task(task.volts, task.current, min(task.run, other), task.allowed)
    long = Task(task.volts, task.current, max(task.run, other), task.allowed)
    assert area(least_size(catalogue, short, around).size) <= area(
        least_size(catalogue, long, around).size
    )


@given(catalogues, tasks, currents, surroundings)
def test_more_current_is_never_thinner(catalogue, task, other, around):
    less = Task(task.volts, min(task.current, other), task.run, task.allowed)
    more = Task(task.volts, max(task.current, other), task.run, task.allowed)
    assert area(least_size(catalogue, less, around).size) <= area(
        least_size(catalogue, more, around).size
    )


@given(catalogues, tasks, surroundings)
def test_the_size_meets_both_rules_and_the_next_down_breaks_the_governing_one(
    catalogue, task, around
):
    found = least_size(catalogue, task, around)
    row = STOCKED[catalogue]

    def holds(rule: str, size: Size) -> bool:
        if rule == "drop":
            return meets(circular_mils_needed(task), size.circular_mils)
        return meets(task.current, carries(size, around))

    if found.size is None:
        assert not holds(found.governing.name, row[-1])
        return
    assert all(holds(rule, found.size) for rule in ("drop", "heat"))
    place = row.index(found.size)
    if place:
        assert not holds(found.governing.name, row[place - 1])


@given(sizes, surroundings, st.integers(1, 60), st.floats(-10.0, 55.0))
def test_carries_never_grows_with_bundle_or_ambient(size, around, bundle, ambient):
    crowded = Surroundings(
        around.insulation, around.engine_space, max(around.bundle, bundle), around.ambient
    )
    alone = Surroundings(
        around.insulation, around.engine_space, min(around.bundle, bundle), around.ambient
    )
    assert carries(size, crowded) <= carries(size, alone)
    warm, cool = max(around.ambient, ambient), min(around.ambient, ambient)
    hot = Surroundings(around.insulation, around.engine_space, around.bundle, Celsius(warm))
    cold = Surroundings(around.insulation, around.engine_space, around.bundle, Celsius(cool))
    assert carries(size, hot) <= carries(size, cold)


@given(sizes, surroundings)
def test_an_engine_space_never_adds(size, around):
    outside = Surroundings(around.insulation, False, around.bundle, around.ambient)  # noqa: FBT003
    inside = Surroundings(around.insulation, True, around.bundle, around.ambient)  # noqa: FBT003
    if around.ambient >= 30.0:
        assert carries(size, inside) <= carries(size, outside)


@given(st.sampled_from(INSULATIONS), sizes, st.integers(1, 60), st.floats(-10.0, 55.0))
def test_full_current_warms_the_copper_to_its_insulation_and_no_more(
    insulation, size, bundle, ambient
):
    around = Surroundings(insulation, bundle=bundle, ambient=Celsius(ambient))
    at_full = working_temperature(size, around, carries(size, around))
    assert at_full == pytest.approx(insulation, rel=1e-9)


@given(tasks, st.floats(0.1, 10.0))
def test_scaling_volts_and_current_together_changes_nothing(task, factor):
    scaled = Task(Volt(task.volts * factor), Amp(task.current * factor), task.run, task.allowed)
    assert circular_mils_needed(scaled) == pytest.approx(circular_mils_needed(task), rel=1e-9)


@given(tasks, sizes)
def test_the_longest_run_loses_exactly_what_is_allowed(task, size):
    run = longest_run(task, size)
    assert rule_drop(task.current, run, size) == pytest.approx(task.volts_allowed, rel=1e-9)
    exact = Task(task.volts, task.current, run, task.allowed)
    assert meets(circular_mils_needed(exact), size.circular_mils)


@given(sizes, st.floats(-20.0, 105.0), st.floats(-20.0, 105.0))
def test_warm_copper_resists_more_and_loses_more(size, one, other):
    cool, warm = Celsius(min(one, other)), Celsius(max(one, other))
    assert resistance(size, cool) <= resistance(size, warm)
    drops = [loop_drop(Amp(10.0), Metre(5.0), resistance(size, at)) for at in (cool, warm)]
    assert drops == sorted(drops)


@given(st.sampled_from(sorted(KNOWN["metric"])))
def test_a_metric_size_counts_as_a_gauge_with_no_more_copper(name):
    size = KNOWN["metric"][name]
    if size.counts_as:
        assert KNOWN["awg"][size.counts_as].area <= size.area
