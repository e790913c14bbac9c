"""The start bank and more of the house bank, read: each problem with its path."""

import pytest

from engine.plan.read import plan_of


def bank(volts="12 V", **fields):
    found = plan_of({"format": 1, "boat": {"volts": volts},
                     "bank": {"chemistry": "flooded", **fields}})  # fmt: skip
    assert found.bank is not None
    return found.bank, [problem.where for problem in found.problems]


def start(**fields):
    found = plan_of({"format": 1, "start": fields})
    return found.start, [problem.where for problem in found.problems]


def test_a_start_bank_with_all_it_may_state():
    found, problems = start(
        joined="relay", parts="yes", converter="30 A", chemistry="agm", capacity="75 Ah"
    )
    assert problems == []
    assert (found.joined, found.parts, found.converter) == ("relay", True, 30.0)
    assert (found.chemistry, found.capacity, found.stated) == ("agm", 75.0, True)


def test_a_start_bank_of_which_nothing_is_known():
    found, problems = start()
    assert (found.joined, found.parts, found.capacity, found.stated) == ("", None, None, False)
    assert problems == []


@pytest.mark.parametrize(("name", "text"), [("capacity", "0 Ah"), ("converter", "3 kg")])
def test_what_no_start_bank_has(name, text):
    assert start(**{name: text})[1] == [f"start.{name}"]


@pytest.mark.parametrize(
    ("volts", "battery", "series"),
    [("12 V", "6 V", 2), ("12 V", "12.8 V", 1), ("24 V", "12 V", 2), ("48 V", "3.2 V", 15),
     ("12 V", "2 V", 6), ("24 V", "25.6 V", 1), ("12 V", "", 1)],
)  # fmt: skip
def test_batteries_in_series_add_up_to_the_system_s_volts(volts, battery, series):
    found, problems = bank(volts, battery_volts=battery)
    assert (found.more.series, problems) == (series, [])


@pytest.mark.parametrize("battery", ["8 V", "24 V", "48 V"])
def test_batteries_that_do_not_add_up_are_named_with_a_mend(battery):
    plan = plan_of({"format": 1, "bank": {"chemistry": "agm", "battery_volts": battery}})
    (problem,) = plan.problems
    assert problem.where == "bank.battery_volts"
    assert battery in str(problem)
    assert problem.mend


def test_a_bank_of_nothing_is_refused_and_not_taken_for_zero():
    found, problems = bank(capacity="0 Ah")
    assert (found.capacity, problems) == (None, ["bank.capacity"])


def test_what_a_bank_is_sized_for_unless_stated():
    wanted = bank()[0].wanted
    assert (wanted.days, wanted.daily_depth, wanted.end_of_life, wanted.margin) == (
        2.0, None, 0.8, 1.1,
    )  # fmt: skip


def test_limits_from_a_label():
    more = bank(most_charge="22 A", most_discharge="200 A", mass="128 lb", cycles="600",
                alike="no", cold_stop="yes")[0].more  # fmt: skip
    assert (more.most_charge, more.most_discharge, more.cycles) == (22.0, 200.0, 600.0)
    assert (more.alike, more.cold_stop) == (False, True)
    assert more.mass == pytest.approx(58.06, abs=0.01)
