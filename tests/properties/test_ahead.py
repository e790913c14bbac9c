"""What must always hold of the days ahead of a plan, whatever it states."""

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from engine.ahead.by_clock import lacking
from engine.ahead.runs import ahead_of, engine_runs, first_chance, three_skies
from engine.ahead.setup import outlook_of
from engine.ahead.told import answer
from engine.finding import meets
from engine.plan.edit import with_value
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.simulate.run import run
from engine.solar.dates import MONTHS

few = settings(max_examples=25, phases=(Phase.generate,))
"""Each example runs whole days."""
CHEMISTRIES = ("flooded", "agm", "gel", "lithium")
whole = st.integers
WORDS = {
    "bank.chemistry": st.sampled_from(CHEMISTRIES),
    "bank.capacity": whole(80, 2000).map("{} Ah".format),
    "bank.charge": whole(0, 100).map("{} %".format),
    "bank.health": whole(30, 110).map("{} %".format),
    "loads.L11.draw": whole(1, 12).map("{} A".format),
    "loads.L37.hours_anchor": whole(0, 8).map("{} h".format),
    "sources.S02.watts": whole(20, 900).map("{} W".format),
    "sources.S04.counted": st.sampled_from(("yes", "no")),
    "sources.S01.limit": whole(5, 90).map("{} A".format),
    "boat.latitude": whole(-65, 65).map("{} deg".format),
    "boat.month": st.sampled_from([one.lower() for one in MONTHS]),
    "policy.engine_on_at": whole(10, 50).map("{} %".format),
    "policy.engine_off_at": whole(60, 95).map("{} %".format),
    "policy.quiet_from": whole(18, 23).map("{} h".format),
    "policy.quiet_to": whole(5, 9).map("{} h".format),
    "policy.never": st.sampled_from(("yes", "")),
}
documents = st.fixed_dictionaries(WORDS)
roomy = st.fixed_dictionaries(
    WORDS
    | {
        "bank.capacity": whole(500, 3000).map("{} Ah".format),
        "bank.charge": whole(60, 100).map("{} %".format),
        "bank.health": whole(70, 110).map("{} %".format),
        "loads.L11.draw": whole(1, 4).map("{} A".format),
        "loads.L37.hours_anchor": whole(0, 2).map("{} h".format),
    }
)
"""Plans that seldom run short."""


def sure(found):
    """Return what must be there."""
    assert found is not None
    return found


def plan_with(values, **more):
    """Return the made-up boat with other words in some fields."""
    document = made_up_document()
    for path, words in (values | more).items():
        document = with_value(document, path, words)
    return plan_of(document)


def alone(values, days=5):
    """Return some part-cloud days without an engine: the lowest charge, and what was unmet (Ah)."""
    plan = plan_with(values, **{"policy.never": "yes", "bank.chemistry": "lithium"})
    outlook = sure(outlook_of(plan, "anchor", days))
    found = run(outlook.setup, outlook.under("part"))
    return found.lowest, found.charge.unmet


@few
@given(documents)
def test_every_ledger_of_a_plan_closes(values):
    plan = plan_with(values)
    assert not lacking(plan, "anchor")
    for series in three_skies(plan, "anchor", 5).values():
        for ledger in (series.charge, series.energy, *(day.charge for day in series.days)):
            flowed = ledger.start + ledger.sources + ledger.engine + ledger.served
            assert abs(ledger.residual) <= 1e-9 * max(flowed + ledger.end, 1.0)
            assert min(ledger.unmet, ledger.curtailed, ledger.lost, ledger.engine) >= 0
        assert all(series.drove)
        if plan.policy.never:
            assert not series.engine_hours


@few
@given(roomy, st.integers(1, 400))
def test_more_panel_never_lowers_the_least_charge(values, more):
    """Unless loads were dropped: who drops them later goes lower first."""
    watts = int(values["sources.S02.watts"].split()[0])
    other = values | {"sources.S02.watts": f"{watts + more} W"}
    (before, unmet), (after, _) = alone(values), alone(other)
    assert unmet > 0 or meets(before, after + 1e-9)


@few
@given(roomy, st.integers(1, 4))
def test_more_load_never_raises_the_least_charge(values, more):
    """Unless loads are dropped: that comes sooner then, and spares the bank."""
    amperes = int(values["loads.L11.draw"].split()[0])
    other = values | {"loads.L11.draw": f"{amperes + more} A"}
    (before, _), (after, unmet) = alone(values), alone(other)
    assert unmet > 0 or meets(after, before + 1e-9)


@few
@given(documents)
def test_a_chance_never_falls_with_the_days_and_is_always_told(values):
    plan = plan_with(values)
    chance = sure(first_chance(plan, "anchor"))
    assert list(chance.needed) == sorted(chance.needed)
    assert all(0 <= one <= chance.runs for one in chance.needed)
    told = answer(chance, engine=engine_runs(sure(ahead_of(plan, "anchor"))))
    assert all(one.endswith(".") for one in told)
    assert chance == first_chance(plan_with(dict(values)), "anchor")


@pytest.mark.parametrize("latitude", [-90, -89.9, 89.9, 90])
@pytest.mark.parametrize("month", ["june", "december"])
def test_at_the_poles_there_are_days_too(latitude, month):
    plan = plan_with({"boat.latitude": f"{latitude} deg", "boat.month": month})
    assert three_skies(plan, "anchor", 3)["clear"].charge.served > 0
