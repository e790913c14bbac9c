"""What runs together where an entry is not known, where two legs share a neutral, and by name.

Kirchhoff's current law: two legs of one phase add in the neutral, two opposed ones leave their
difference; 240 V across both leave nothing in it. Boats are invented, sums shown.
"""

import pytest

from engine.check.shore import shore_asked, shore_findings
from engine.check.shore_load import load_answer
from engine.finding import Severity, Verdict
from engine.plan.document import shaped
from engine.plan.read import plan_of


def boat(shore, *circuits):
    return plan_of(shaped({"format": 1, "shore": shore, "ac": list(circuits)}))


def asked(plan, name):
    return next(one for one in shore_asked(plan) if one.name == name)


def load_of(plan, running=None):
    answer = load_answer(plan.shore, plan.shore.planned if running is None else running)
    assert answer is not None
    return answer


DOCK = {"service": "30 A 120 V"}
ROW = {"id": "A03", "breaker": "15 A", "size": "12 AWG", "insulation": "105 degC", "bundle": "2"}


@pytest.mark.parametrize(
    ("text", "entry", "problem"),
    [
        ("kettle 1000 W, toaster", "toaster", True),
        ("kettle 1000 W, toaster ?", "toaster ?", False),
        ("kettle 1000 W, ?", "?", False),
        ("kettle 1000 W, iron -900 W", "iron -900 W", True),
        ("kettle 1000 W, iron 5 A", "iron 5 A", True),
    ],
)
def test_an_entry_that_cannot_be_read_stays_and_leaves_the_load_not_known(text, entry, problem):
    plan = boat(DOCK, {**ROW, "appliances": text})
    answer = load_of(plan)
    assert answer.watts == pytest.approx(1000)
    assert answer.load_words == "Load alone: not known"
    assert f"the watts of “{entry}” of A03 are not known" in answer.sentence
    assert "28 % of 30 A" in answer.sentence
    for name in ("simultaneous load", "A03"):
        assert asked(plan, name).verdict == Verdict.NOT_KNOWN
        assert any(entry in part.words for part in asked(plan, name).parts)
    assert any(one.where == "ac.A03.appliances" for one in plan.problems) == problem


@pytest.mark.parametrize("text", ["?", "kettle ?", "kettle -1000 W", "toaster"])
def test_nothing_known_of_a_circuit_is_not_nothing(text):
    plan = boat(DOCK, {**ROW, "appliances": text})
    assert load_of(plan).load_words == "Load alone: not known"
    assert f"“{text}” of A03" in load_of(plan).sentence
    assert asked(plan, "A03").verdict == Verdict.NOT_KNOWN
    assert any(text in part.words for part in asked(plan, "simultaneous load").parts)


def test_an_overload_is_stop_whatever_else_is_not_known():
    plan = boat(DOCK, {**ROW, "appliances": "oven 4000 W, toaster"})
    assert load_of(plan).worst.now.verdict == Verdict.STOP
    assert asked(plan, "A03").verdict == Verdict.STOP


def test_what_is_not_planned_leaves_the_planned_load_known():
    rows = ({**ROW, "appliances": "kettle 1000 W"},
            {"id": "A04", "appliances": "toaster", "together": "no"})  # fmt: skip
    assert load_of(boat(DOCK, *rows)).worst.now.verdict == Verdict.FINE


def test_what_passes_through_the_inverters_input_is_not_known_either():
    rows = ({**ROW, "appliances": "charger 680 W"},
            {"id": "A06", "appliances": "toaster", "supply": "inverter"})  # fmt: skip
    plan = boat({**DOCK, "charger_circuit": "A03"}, *rows)
    assert any("“toaster” of A06" in part.words for part in asked(plan, "A03").parts)


@pytest.mark.parametrize("text", ["microwave 800 W, toaster", "toaster"])
def test_an_unknown_entry_behind_the_inverter_is_said(text):
    plan = boat(DOCK, {"id": "A06", "appliances": text, "supply": "inverter"})
    assert asked(plan, "starting").verdict == Verdict.NOT_KNOWN
    assert any("“toaster” of A06" in part.words for part in asked(plan, "starting").parts)


def test_what_is_left_for_the_charger_is_not_known_beside_an_unknown_entry():
    rows = ({**ROW, "appliances": "charger 680 W"}, {"id": "A04", "appliances": "toaster ?"})
    shore = {**DOCK, "charger_circuit": "A03", "limit": "10 A"}
    assert asked(boat(shore, rows[0]), "input current limit").verdict == Verdict.FINE
    assert asked(boat(shore, *rows), "input current limit").verdict == Verdict.NOT_KNOWN


def test_nothing_running_is_not_within_limit():
    plan = boat(DOCK, {**ROW, "appliances": "kettle 1000 W"})
    for answer in (load_of(plan, frozenset()), load_of(boat(DOCK))):
        assert answer.load_words == "Load alone: not known"
    assert asked(boat(DOCK), "simultaneous load").verdict == Verdict.NOT_KNOWN


TWO = ({"id": "A01", "appliances": "oven 3960 W", "leg": "1"},
       {"id": "A02", "appliances": "hob 3540 W", "leg": "2"})  # fmt: skip
"""33 A and 29.5 A of 120 V: 62.5 A in a neutral of one phase, 3.5 A in one of two."""
FIFTY = {"service": "50 A 125/250 V"}


def test_a_neutral_of_one_phase_governs():
    plan = boat({**FIFTY, "one_phase": "yes"}, *TWO)
    answer = load_of(plan)
    assert answer.worst.neutral
    assert (answer.worst.name, answer.worst.now.verdict) == ("the neutral", Verdict.STOP)
    assert answer.worst.now.current == answer.neutral == pytest.approx(62.5)
    assert answer.load_words == "Load alone: over 50 A"
    assert "125 % of 50 A on the neutral" in answer.sentence
    assert answer.sentence.endswith("the neutral carries too much, and no breaker watches it.")
    assert "trips" not in answer.sentence
    (one,) = [found for found in shore_findings(plan) if found.rule.name == "neutral"]
    assert (one.verdict, one.severity) == (Verdict.STOP, Severity.BEFORE_LEAVING)


def test_a_neutral_of_two_phases_carries_the_difference():
    answer = load_of(boat(FIFTY, *TWO))
    assert [side.name for side in answer.sides] == ["leg 1", "leg 2", "the neutral"]
    assert answer.sides[2].now.current == pytest.approx(3.5)
    assert answer.worst.name == "leg 1"


def test_one_more_that_only_the_neutral_minds_does_not_trip():
    plan = boat({**FIFTY, "one_phase": "yes"}, *TWO)
    answer = load_of(plan, frozenset({"A01.1"}))
    assert answer.tripping == ("hob",)
    assert answer.sentence.endswith(
        "add the hob and the neutral carries too much, and no breaker watches it."
    )


def test_a_splitter_on_two_legs_of_one_phase_sums_in_its_cord():
    """28.3 A and 27.5 A, each within its inlet's 30 A: 55.8 A in the cord's neutral of 50 A."""
    rows = ({"id": "A01", "appliances": "oven 3400 W", "leg": "1"},
            {"id": "A02", "appliances": "hob 3300 W", "leg": "2"})  # fmt: skip
    shore = {**DOCK, "inlets": "2", "feeding": "splitter", "dock": "50 A 125/250 V"}
    answer = load_of(boat({**shore, "one_phase": "yes"}, *rows))
    assert answer.worst.name == "the splitter cord's neutral"
    assert answer.worst.now.verdict == Verdict.STOP
    assert answer.neutral == pytest.approx(6700 / 120)
    apart = load_of(boat(shore, *rows))
    assert apart.worst.now.verdict == Verdict.SHOULD
    assert apart.neutral is None


def test_240_volts_across_both_legs_leave_the_neutral_alone():
    """4800 W at 240 V are 20 A on each leg; a kettle of 1200 W adds 10 A to leg 1."""
    rows = ({"id": "A01", "appliances": "water heater 4800 W", "leg": "both", "breaker": "25 A"},
            {"id": "A02", "appliances": "kettle 1200 W", "leg": "1"})  # fmt: skip
    plan = boat(FIFTY, *rows)
    answer = load_of(plan)
    assert [side.now.current for side in answer.sides] == pytest.approx([30, 20, 10])
    assert answer.watts == pytest.approx(6000)
    assert any("20 A of 25 A planned" in part.words for part in asked(plan, "A01").parts)
    plate = plan.shore.items[0].plate
    assert plate is not None
    assert plate.volts == pytest.approx((216, 264))
    alone = load_of(boat(DOCK, {**rows[0], "appliances": "heater 1200 W"}))
    assert alone.worst.now.current == pytest.approx(10)


@pytest.mark.parametrize(
    ("shore", "percent"), [(FIFTY, 112), ({**DOCK, "inlets": "2", "feeding": "apart"}, 187)]
)
def test_one_wording_of_a_trip_on_legs_and_inlets(shore, percent):
    """30 A and 26 A on one leg of 50 A are 112 %; of 30 A, 187 %, where a breaker does open."""
    rows = ({"id": "A01", "appliances": "oven 3600 W", "leg": "1"},
            {"id": "A02", "appliances": "hob 3120 W", "leg": "1", "together": "no"})  # fmt: skip
    text = load_of(boat(shore, *rows)).sentence
    late = (
        f", late or not at all at {percent} %: plug and cord heat first." if percent < 135 else "."
    )
    assert text.endswith(f"add the hob and it trips{late}")


def test_two_appliances_of_one_name_are_told_apart():
    rows = ({"id": "A01", "appliances": "heater 1500 W, heater 750 W, kettle 1000 W"},
            {"id": "A02", "appliances": "heater 1500 W, lamp 10 W"})  # fmt: skip
    plan = boat(DOCK, *rows)
    names = [one.appliance.name for one in plan.shore.items]
    assert names == ["heater (A01, 1500 W)", "heater (A01, 750 W)", "kettle", "heater (A02)",
                     "lamp"]  # fmt: skip
    text = load_of(plan).leave_off
    assert "heater (A01, 1500 W)" in text
    assert "heater (A02)" in text
    assert plan.shore.items[3].plate is not None
