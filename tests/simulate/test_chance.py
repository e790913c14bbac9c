"""Skies, drawn weathers, and what many runs say."""

from dataclasses import replace
from math import sqrt

import pytest

from engine.generator import mixed, share_of, stepped
from engine.problem import Problem
from engine.simulate.chance import chances
from engine.simulate.gain import gain, ranked
from engine.simulate.policy import Engine, Policy, Setup
from engine.simulate.run import run
from engine.simulate.weather import SKIES, Outlook, Sun
from engine.units import Amp, Share
from tests.simulate.banks import lithium

NOON = tuple(Amp(20.0 if 32 <= n < 64 else 0.0) for n in range(96))
DIM = tuple(Amp(one / 4) for one in NOON)
SUN = Sun((Share(0.15), Share(0.6)), (DIM, NOON))
LOADS = (Amp(5.5),) * 96


def toss(days, seed):
    """Return days that are clear or dull, as a coin falls."""
    state, found = mixed(seed, "toss"), []
    for _ in range(days):
        state = stepped(state)
        found.append(0.6 if share_of(state) < 0.5 else 0.15)
    return found


SETUP = Setup(lithium(280.0, 0.95), Policy(), Engine(Amp(50.0), 1.2))
OUTLOOK = Outlook(SETUP, LOADS, SUN, toss)


def last(outlook, runs=60, seed=3, **changes):
    *_, found = chances(replace(outlook, **changes), runs, seed)
    return found


def test_the_same_seed_gives_the_same_figures_and_another_others():
    assert last(OUTLOOK) == last(OUTLOOK)
    assert last(OUTLOOK) != last(OUTLOOK, seed=4)


def test_slices_come_as_they_are_done():
    found = list(chances(OUTLOOK, 60, 3, every=25))
    assert [(one.runs, one.done) for one in found] == [(25, False), (50, False), (60, True)]
    alone = list(chances(OUTLOOK, 25, 3))[-1]
    assert replace(found[0], asked=25) == alone


def test_chances_grow_by_the_day_and_say_their_error():
    found = last(OUTLOOK)
    assert list(found.needed) == sorted(found.needed)
    assert found.needed_by(14) == 1.0
    assert 0 < found.needed_by(5) <= 1
    share = found.needed_by(4)
    assert found.error_by(4) == pytest.approx(sqrt(share * (1 - share) / 60))
    assert all(0 <= band.p10 <= band.median <= band.p90 <= 1 for band in found.charge)
    assert len(found.charge) == 14 * 8 + 1
    assert found.lowest.p90 <= 0.3 + 1e-9
    assert found.fuel_a_week == pytest.approx(found.engine_hours_a_week * 1.2)


def test_sure_weather_and_habits_near_one_are_the_sure_run():
    """With every day alike the drawn runs lie about the run under that sky."""
    sure = replace(OUTLOOK, spells=lambda days, _seed: [0.6] * days)
    found, clear = last(sure), run(SETUP, OUTLOOK.under("clear"))
    assert found.engine_hours.p10 <= clear.engine_hours_a_week <= found.engine_hours.p90
    assert found.days_until_needed == pytest.approx(clear.days_until_needed, rel=0.25)


def test_three_skies_bring_what_their_table_says():
    inputs = {sky: OUTLOOK.under(sky) for sky in SKIES.rows}
    assert sum(inputs["clear"].sun) == pytest.approx(14 * sum(NOON))
    assert sum(inputs["dull"].sun) == pytest.approx(14 * sum(DIM))
    lowest = [run(SETUP, days).days_until_needed for days in inputs.values()]
    assert lowest == sorted(lowest, reverse=True)


def test_the_sun_between_and_beyond_its_rows():
    assert SUN.at(0.6)[40] == 20.0
    assert SUN.at(0.375)[40] == pytest.approx(12.5)
    assert SUN.at(0.03)[40] == pytest.approx(1.0)
    assert SUN.at(0.75)[40] == pytest.approx(25.0)


def test_wind_and_shore_count_and_what_is_essential_stays():
    windier = last(OUTLOOK, wind=lambda factor: 2.0 * factor**3)
    docked = last(OUTLOOK, shore=(Amp(30.0),) * 96)
    assert windier.days_until_needed > last(OUTLOOK).days_until_needed
    assert docked.needed == (0,) * 14
    assert docked.curtailed > 0
    bare = replace(OUTLOOK, setup=replace(SETUP, policy=Policy(never=True), engine=None))
    assert last(bare).unmet > 0
    assert last(bare, essential=LOADS).lowest.p10 < last(bare).lowest.p10


def test_changes_are_ranked_by_days_gained_then_hours_saved():
    before = last(OUTLOOK)
    panel = Sun(SUN.clearness, tuple(tuple(Amp(1.5 * a) for a in one) for one in SUN.profiles))
    changes = {
        "none": before,
        "more panel": last(OUTLOOK, sun=panel),
        "less load": last(OUTLOOK, loads=(Amp(5.0),) * 96),
    }
    found = ranked(before, changes)
    assert [one.change for one in found] == ["more panel", "less load", "none"]
    assert found[0].days > found[1].days > found[2].days == 0.0
    assert found[0].hours_saved > 0
    one, other = (run(SETUP, OUTLOOK.under(sky)) for sky in ("dull", "clear"))
    assert gain("sky", one, other).days > 0


@pytest.mark.parametrize(
    "changes",
    [
        {"loads": ()},
        {"shore": (1.0,)},
        {"days": 0},
        {"sun": Sun((Share(0.5),), ((Amp(1.0),),))},
    ],
)
def test_an_outlook_that_cannot_be_is_a_problem(changes):
    with pytest.raises(Problem):
        replace(OUTLOOK, **changes)


@pytest.mark.parametrize(
    ("clearness", "profiles"),
    [((), ()), ((0.0,), ((1.0,),)), ((0.5, 0.4), ((1.0,), (1.0,))), ((0.5,), ((1.0,), (2.0,)))],
)
def test_a_sun_without_order_is_a_problem(clearness, profiles):
    with pytest.raises(Problem):
        Sun(clearness, profiles)


def test_no_runs_tell_no_chance():
    with pytest.raises(Problem):
        next(chances(OUTLOOK, 0))


def test_a_clear_day_may_be_less_than_the_clearest():
    """Straight between the rows: 0.6 brings 20 A at noon, 0.15 a quarter of it."""
    clear = replace(OUTLOOK, clear=Share(0.6 / 0.65))
    assert clear.under("part").sun == pytest.approx(OUTLOOK.under("clear").sun)
    assert max(OUTLOOK.under("clear").sun) == 20.0


def test_starts_are_those_of_the_runs():
    found = last(OUTLOOK, 1)
    drawn = run(SETUP, OUTLOOK.drawn_days(0, 3))
    assert found.starts == sum(one.kind == "engine start" for one in drawn.events)
    assert found.days == OUTLOOK.days
