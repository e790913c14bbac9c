"""Entries that cannot be, and days laid into hours."""

from dataclasses import replace

import pytest

from engine.problem import Problem
from engine.simulate.days import Days
from engine.simulate.policy import Engine, Policy
from engine.simulate.use import Daylight, Use, intervals, profile, spilt
from engine.units import Amp, Hour, Share
from tests.simulate.banks import lithium, steady

SUMMER = Daylight(Hour(5.125), Hour(20.125))


@pytest.mark.parametrize(
    ("changes", "where"),
    [
        ({"capacity": 0.0}, "capacity"),
        ({"volts": float("nan")}, "volts"),
        ({"start": 1.1}, "start"),
        ({"reserve": -0.1}, "reserve"),
        ({"reconnect": 0.1}, "reconnect"),
        ({"largest": 0.0}, "largest"),
    ],
)
def test_a_bank_that_cannot_be_is_a_problem(changes, where):
    with pytest.raises(Problem) as caught:
        replace(lithium(), **changes)
    assert caught.value.where == where
    assert caught.value.mend


@pytest.mark.parametrize(
    ("entries", "where"),
    [
        ({"engine_on_at": 0.7, "engine_off_at": 0.3}, "engine_on_at"),
        ({"engine_off_at": 1.0}, "engine_off_at"),
        ({"quiet_from": 24.0}, "quiet_from"),
        ({"quiet_from": 8.0, "quiet_to": 7.0, "least_run": 2.0}, "least_run"),
        ({"least_run": -1.0}, "least_run"),
    ],
)
def test_a_policy_that_cannot_be_kept_is_a_problem(entries, where):
    with pytest.raises(Problem) as caught:
        Policy(**entries)
    assert caught.value.where == where


@pytest.mark.parametrize("entries", [{"current": 0.0}, {"current": 50.0, "fuel": -1.0}])
def test_an_engine_that_brings_nothing_is_a_problem(entries):
    with pytest.raises(Problem):
        Engine(**entries)


@pytest.mark.parametrize(
    "entries",
    [{"current": -1.0}, {"hours": 25.0}, {"duty": 1.5}, {"window": "noon"}],
)
def test_a_use_that_cannot_be_is_a_problem(entries):
    with pytest.raises(Problem):
        Use(**{"name": "lamp", "current": 1.0, "hours": 2.0, **entries})


def test_days_of_unlike_or_broken_length_are_a_problem():
    for entries in (
        {"loads": ()},
        {"loads": (1.0,) * 95},
        {"loads": (1.0,) * 96, "sun": (1.0,) * 95},
        {"loads": (1.0,) * 96, "sun": (-1.0,) * 96},
        {"loads": (float("nan"),) * 96},
        {"loads": (1.0,) * 96, "essential": (2.0,) * 96},
        {"loads": (1.0,) * 96, "step": 0.0},
        {"loads": (1.0,) * 96, "step": 0.7},
    ):
        with pytest.raises(Problem):
            Days(**entries)
    with pytest.raises(Problem):
        Daylight(Hour(20.0), Hour(5.0))
    assert intervals(Hour(0.25)) == 96
    assert steady(2.0, sun=1.0, wind=2.0).free == [3.0] * 96


def test_hours_lie_in_the_true_night_and_day_and_sum_to_the_product():
    lamp = Use("lamp", Amp(0.5), Hour(6.0), window="night")
    fan = Use("fan", Amp(2.0), Hour(3.0), Share(0.5), "day")
    fridge = Use("fridge", Amp(4.6), Hour(24.0), Share(0.4))
    day = profile((lamp, fan, fridge), SUMMER)
    assert sum(day) * 0.25 == pytest.approx(0.5 * 6 + 2 * 3 * 0.5 + 4.6 * 24 * 0.4, rel=1e-12)
    assert day[0] == pytest.approx(1.84 + 3.0 / 9)
    assert day[48] == pytest.approx(1.84 + 3.0 / 15)
    # sunrise at 5.125 h halves the step from 5 to 5.25
    assert day[20] == pytest.approx(1.84 + (3.0 / 9 + 3.0 / 15) / 2)


def test_hours_longer_than_their_window_spill_over_and_it_is_said():
    light = Use("Anchor light", Amp(1.0), Hour(12.0), window="night")
    day = profile((light,), SUMMER)
    assert sum(day) * 0.25 == pytest.approx(12.0, rel=1e-12)
    assert day[0] == pytest.approx(1.0)
    assert day[48] == pytest.approx(3.0 / 15)
    assert spilt((light,), SUMMER) == (
        "Anchor light runs 12 h, but the night lasts 9 h: 3 h lie by day.",
    )


@pytest.mark.parametrize(("rise", "set_"), [(12.0, 12.0), (0.0, 24.0)])
def test_polar_night_and_no_night_keep_every_hour(rise, set_):
    uses = (
        Use("lamp", Amp(1.0), Hour(5.0), window="night"),
        Use("fan", Amp(1.0), Hour(5.0), window="day"),
    )
    day = profile(uses, Daylight(Hour(rise), Hour(set_)))
    assert sum(day) * 0.25 == pytest.approx(10.0, rel=1e-12)
    assert len(spilt(uses, Daylight(Hour(rise), Hour(set_)))) == 1


def test_a_policy_says_itself():
    words = Policy(quiet_from=Hour(21.0), quiet_to=Hour(7.0)).words
    assert words == (
        "The engine starts at 30 %, stops at 70 %, runs at least 0.5 h, and is still for 10 h "
        "from 21 h."
    )
