"""What must always hold of a run of days: the ledger, the order of more and less, and the clock."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.two_well import Wells
from engine.charging.intake import Intake
from engine.finding import meets
from engine.simulate.days import Days
from engine.simulate.house import House
from engine.simulate.march import march_of
from engine.simulate.policy import NEVER, Engine, Policy, Setup
from engine.simulate.run import run
from engine.units import Amp, AmpHour, Hour, PerHour, Share, Volt

few = settings(max_examples=60)
"""Each example runs whole days."""
HOURLY = Hour(1.0)
shares = st.integers(0, 100).map(lambda hundredths: Share(hundredths / 100))
capacities = st.floats(30.0, 600.0).map(AmpHour)
wells = st.builds(
    Wells, st.floats(0.1, 1.0).map(PerHour), st.floats(0.2, 0.9).map(Share), capacities
)
intakes = st.builds(
    Intake,
    capacities,
    st.floats(0.0, 1.0).map(PerHour),
    st.floats(0.2, 12.0).map(PerHour),
    st.floats(0.6, 1.0).map(Share),
)


def house(name, capacity, start, intake, two, largest):  # noqa: PLR0913, PLR0917
    return House(
        CHEMISTRIES[name], Volt(12.0), capacity, start, Share(0.5), Share(0.2), Share(0.3),
        replace(intake, capacity=capacity), replace(two, full=capacity) if two else None, largest,
    )  # fmt: skip


lithium = st.builds(
    house, st.just("lithium"), capacities, shares, intakes, st.none(), st.just(Amp(1e6))
)
lead = st.builds(house, st.just("agm"), capacities, shares, intakes, wells, st.just(Amp(1e6)))
bounded = st.builds(
    house, st.just("gel"), capacities, shares, intakes, st.none() | wells,
    st.floats(1.0, 60.0).map(Amp),
)  # fmt: skip
houses = lithium | lead | bounded
hourly = st.lists(st.floats(0.0, 80.0).map(Amp), min_size=24, max_size=24).map(tuple)
days = st.builds(Days, hourly, sun=hourly | st.just(()), wind=hourly, step=st.just(HOURLY))
policies = st.builds(
    lambda on, off, least, start, length: Policy(
        on, off, least, start, Hour((start + length) % 24)
    ),
    st.floats(0.0, 0.5).map(Share),
    st.floats(0.51, 0.98).map(Share),
    st.floats(0.0, 3.0).map(Hour),
    st.floats(0.0, 23.9).map(Hour),
    st.floats(0.1, 20.0).map(Hour),
)
setups = st.builds(
    Setup, houses, policies | st.just(NEVER), st.none() | st.just(Engine(Amp(60.0), 1.0))
)


def lengthened(inputs: Days, times: int) -> Days:
    """Return the same days, and again."""
    return Days(inputs.loads * times, (), inputs.sun * times, inputs.wind * times, step=inputs.step)


def halved(inputs: Days) -> Days:
    """Return the same days in steps of half the length."""
    rows = ([one for one in part for _ in (1, 2)] for part in (inputs.loads, inputs.sun))
    loads, sun = map(tuple, rows)
    wind = tuple(one for one in inputs.wind for _ in (1, 2))
    return Days(loads, (), sun, wind, step=Hour(inputs.step / 2))


@few
@given(setups, days)
def test_every_ledger_closes_and_every_charge_is_a_charge(setup, inputs):
    found = run(setup, lengthened(inputs, 2))
    for ledger in (found.charge, found.energy, *(day.energy for day in found.days)):
        assert abs(ledger.residual) <= 1e-9 * max(ledger.start + ledger.served, 1.0) * 10
        assert min(ledger.unmet, ledger.curtailed, ledger.lost, ledger.engine) >= 0
    assert all(-1e-12 <= one <= 1 + 1e-12 for one in found.charges)
    asked = sum(day.asked for day in found.days)
    assert found.charge.served + found.charge.unmet == pytest.approx(asked, rel=1e-9, abs=1e-9)
    offered = sum(day.sun + day.wind for day in found.days)
    assert found.charge.sources + found.charge.curtailed == pytest.approx(offered, abs=1e-6)
    assert found.charge.unmet <= asked * (1 + 1e-9)


@few
@given(setups, days)
def test_the_recorded_run_is_the_run_of_a_chance(setup, inputs):
    found, march = run(setup, inputs), march_of(setup)
    march.go(inputs.loads, inputs.kept_on, inputs.free, inputs.step)
    assert march.total / march.bank.full == found.charges[-1]
    for one, other in (
        (march.curtailed, found.charge.curtailed),
        (march.unmet, found.charge.unmet),
        (march.engine, found.charge.engine),
        (march.put * (1 - march.bank.efficiency), found.charge.lost),
        (march.engine_hours, found.engine_hours),
    ):
        assert one == pytest.approx(other, rel=1e-9, abs=1e-9)


@few
@given(setups, days)
def test_shorter_steps_change_nothing(setup, inputs):
    """The course between two moments is exact, so only the moments count, not the steps."""
    coarse, fine = run(setup, inputs), run(setup, halved(inputs))
    assert fine.charges[::2] == pytest.approx(coarse.charges, abs=1e-6)
    assert fine.lowest == pytest.approx(coarse.lowest, abs=1e-6)
    assert fine.engine_hours == pytest.approx(coarse.engine_hours, abs=1e-5)


@few
@given(lithium, days, st.floats(1.0, 3.0))
def test_more_panel_never_lowers_the_least_charge(bank, inputs, factor):
    setup = Setup(bank, NEVER)
    more = replace(inputs, sun=tuple(Amp(one * factor) for one in inputs.sun))
    assert meets(run(setup, inputs).lowest, run(setup, more).lowest + 1e-9)


@few
@given(lead, days, st.floats(1.0, 3.0))
def test_more_panel_never_lowers_a_lead_bank_that_never_ran_short(bank, inputs, factor):
    setup = Setup(bank, NEVER)
    found = run(setup, inputs)
    more = replace(inputs, sun=tuple(Amp(one * factor) for one in inputs.sun))
    if found.charge.unmet == 0:
        assert meets(found.lowest, run(setup, more).lowest + 1e-9)


@few
@given(lithium, days, st.floats(1.0, 3.0))
def test_more_load_never_raises_the_least_charge(bank, inputs, factor):
    setup = Setup(bank, NEVER)
    more = replace(inputs, loads=tuple(Amp(one * factor) for one in inputs.loads))
    assert meets(run(setup, more).lowest, run(setup, inputs).lowest + 1e-9)


@few
@given(houses, policies, days)
def test_the_engine_keeps_quiet_hours_and_its_least_run(bank, policy, inputs):
    found = run(Setup(bank, policy, Engine(Amp(60.0))), lengthened(inputs, 2))
    engine = [event for event in found.events if event.kind.startswith("engine")]
    for start, stop in zip(engine[::2], engine[1::2], strict=False):
        assert (start.kind, stop.kind) == ("engine start", "engine stop")
        lasted = stop.time - start.time
        assert lasted >= policy.least_run - 1e-6
        since = (start.time + 1e-6 - policy.quiet_from) % 24
        assert since >= policy.quiet - 1e-5
        assert since + lasted <= 24 + 1e-5
    assert all(one.time <= other.time + 1e-9 for one, other in pairwise(found.events))


@few
@given(houses, days)
def test_no_engine_means_no_engine_hours(bank, inputs):
    found = run(Setup(bank, NEVER, Engine(Amp(60.0))), inputs)
    assert found.engine_hours == found.charge.engine == 0.0
