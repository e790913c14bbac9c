"""One circuit at a time: what governs, what straddles, and what is missing.

The drop is the rule's: 10.75 Ω·cmil/ft × A × loop in ft / cmil. 10 AWG has 10 380 cmil and carries
60 A at 30 °C with 105 °C insulation (33 CFR 183.425, table 5).
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.check.circuits import circuit_answer
from engine.check.path import whole_plan
from engine.check.wire import percent
from engine.finding import Verdict
from engine.plan.read import plan_of


def answered(catalogue="awg", boat=None, **fields):
    document = {"format": 1, "boat": boat or {"tape": "0 m"}, "circuits": [{"id": "D01", **fields}]}
    plan = plan_of(document)
    assert plan.problems == ()
    return circuit_answer(plan.circuits[0], catalogue, whole_plan(plan)["D01"])


WHOLE = {"run": "10 ft", "current": "20 A", "size": "10 AWG", "protection": "25 A",
         "continuous": "no"}  # fmt: skip


def test_a_circuit_within_every_limit():
    """10.75 × 20 × 20 / 10 380 = 0.414 V, 3.45 % of 12 V: within 10 %, not within 3 %."""
    answer = answered(**WHOLE, allowed="other")
    assert answer.wire is not None
    assert answer.wire.drop == pytest.approx(0.414, abs=0.0005)
    assert answer.wire.share.likely == pytest.approx(0.0345, abs=0.00005)
    assert answer.wire.carries == 60.0
    assert answer.wire.at_load == pytest.approx(12 - answer.wire.physical)
    assert [part.verdict for part in answer.weighing] == [Verdict.FINE] * 4
    assert answer.verdict == Verdict.FINE
    assert answer.missing == ()
    assert answer.governing == "drop"
    assert {step.what for step in answer.working} >= {"loop", "drop by the rule"}


def test_a_drop_beyond_its_class():
    answer = answered(**WHOLE)
    assert (answer.verdict, answer.governing) == (Verdict.SHOULD, "drop")
    assert answer.parts[0].mend


@pytest.mark.parametrize(
    ("fields", "verdict"),
    [
        ({"run": "8-9 ft"}, Verdict.CANNOT_SAY),
        ({"current": "15-20 A"}, Verdict.CANNOT_SAY),
        ({"run": "8 ft"}, Verdict.FINE),
        ({"run": "9 ft"}, Verdict.SHOULD),
    ],
)
def test_a_drop_that_may_lie_either_way(fields, verdict):
    """3 % of 12 V at 20 A in 10 AWG is reached at 10 380 × 0.36 / (10.75 × 40) = 8.69 ft."""
    answer = answered(**{**WHOLE, **fields})
    assert answer.parts[0].verdict == verdict


def test_the_tape_alone_may_straddle():
    assert answered(**{**WHOLE, "run": "8.5 ft"}).parts[0].verdict == Verdict.FINE
    with_tape = answered(boat={"tape": "0.3 m"}, **{**WHOLE, "run": "8.5 ft"})
    assert with_tape.parts[0].verdict == Verdict.CANNOT_SAY
    assert "0.3 m" in with_tape.parts[0].words


@pytest.mark.parametrize(
    ("current", "verdict"),
    [("60 A", Verdict.FINE), ("50-70 A", Verdict.CANNOT_SAY), ("61 A", Verdict.STOP)],
)
def test_heat(current, verdict):
    answer = answered(**{**WHOLE, "run": "1 ft", "current": current, "allowed": "other"})
    assert answer.parts[1].verdict == verdict
    assert answer.verdict == Verdict.STOP or verdict != Verdict.STOP


def test_no_conductor_is_thick_enough():
    far = answered(**{**WHOLE, "run": "90 m", "current": "900 A"})
    assert far.choice is not None
    assert (far.choice.size, far.choice.for_drop) == (None, None)
    assert [part.verdict for part in far.parts[:2]] == [Verdict.SHOULD, Verdict.STOP]
    assert all("No single conductor" in part.mend for part in far.parts[:2])


@pytest.mark.parametrize(
    ("rating", "abreast", "verdict"),
    [
        ("25 A", "1", Verdict.FINE),
        ("30 A", "2", Verdict.FINE),
        ("50 A", "2", Verdict.STOP),
        ("200 A", "1", Verdict.STOP),
    ],
)
def test_protection_and_several_side_by_side(rating, abreast, verdict):
    """20 A asked, 60 A carried; two of 50 A side by side let 100 A through."""
    answer = answered(**{**WHOLE, "allowed": "other", "protection": rating, "abreast": abreast})
    assert answer.parts[2].verdict == verdict


def test_a_circuit_of_which_nothing_is_known():
    answer = answered()
    assert answer.verdict == Verdict.NOT_KNOWN
    assert answer.missing == ("the run", "the design current", "the conductor", "the protection")
    assert (answer.wire, answer.choice, answer.parts, answer.governing) == (None, None, (), "")


def test_without_a_conductor_one_is_offered_from_the_catalogue():
    for catalogue, size in (("awg", "8 AWG"), ("sae", "8 SAE"), ("metric", "10 mm2")):
        answer = answered(catalogue, run="10 ft", current="20 A")
        assert answer.wire is None
        assert answer.choice is not None
        assert str(answer.choice.size) == size
        assert answer.verdict == Verdict.NOT_KNOWN


def test_without_protection_it_is_not_known():
    answer = answered(run="10 ft", current="20 A", size="4 AWG")
    assert answer.missing == ("the protection",)
    assert answer.verdict == Verdict.NOT_KNOWN
    assert answer.wire is not None


def test_a_metric_size_thinner_than_the_table_has_no_capacity():
    answer = answered(run="10 ft", current="1 A", size="0.75 mm2", protection="2 A")
    assert answer.wire is None
    assert answer.verdict == Verdict.SHOULD  # too thin on its own
    assert "what 0.75 mm2 carries" in answer.missing[0]


def test_percent():
    assert (percent(0.0304, 3), percent(0.03)) == ("3.04 %", "3 %")


metres = st.integers(1, 400).map(lambda n: n / 10)
amperes = st.integers(1, 300).map(lambda n: n / 2)


@given(metres, metres, amperes)
def test_a_longer_run_is_never_judged_kinder(one, other, current):
    shorter, longer = (
        answered(**{**WHOLE, "run": f"{run} m", "current": f"{current} A"})
        for run in sorted((one, other))
    )
    rank = [Verdict.FINE, Verdict.CANNOT_SAY, Verdict.SHOULD]
    assert rank.index(shorter.parts[0].verdict) <= rank.index(longer.parts[0].verdict)
    assert shorter.wire.drop <= longer.wire.drop


@given(metres, amperes, st.integers(0, 20).map(lambda n: n / 10))
def test_a_better_tape_never_doubts_more(run, current, tape):
    fields = {**WHOLE, "run": f"{run + 2} m", "current": f"{current} A"}
    exact = answered(boat={"tape": "0 m"}, **fields).parts[0].verdict
    loose = answered(boat={"tape": f"{tape} m"}, **fields).parts[0].verdict
    assert exact != Verdict.CANNOT_SAY
    assert loose in {exact, Verdict.CANNOT_SAY}
