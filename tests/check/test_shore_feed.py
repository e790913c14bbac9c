"""The main, the run to it, and what is asked before the service is chosen.

Carrying capacity by 33 CFR 183.425, table 5 with notes 1 and 2: 10 AWG carries 40 A at 60 °C and
60 A at 105 °C, by 0.6 for four conductors, 0.5 for seven and 0.4 for 25; 12 AWG 25 and 45 A.
"""

from copy import deepcopy

import pytest

from engine.check.shore import shore_asked
from engine.check.shore_gravest import gravest
from engine.check.shore_load import load_answer
from engine.finding import Verdict, Who
from engine.plan.document import shaped
from engine.plan.edit import with_value
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of


def planned(**texts):
    document = deepcopy(made_up_document())
    for path, text in texts.items():
        document = with_value(document, path.replace("__", "."), text)
    return plan_of(document)


def asked(plan, name):
    return next(one for one in shore_asked(plan) if one.name == name)


def boat(shore, *circuits):
    return plan_of(shaped({"format": 1, "shore": shore, "ac": list(circuits)}))


@pytest.mark.parametrize(
    ("texts", "verdict", "told"),
    [
        ({}, Verdict.FINE, "30 A protects 10 AWG, which carries 36 A here"),
        ({"ac__A01__bundle": "7"}, Verdict.FINE, "which carries 30 A here"),
        ({"ac__A01__bundle": "25"}, Verdict.STOP, "30 A is more than the 24 A"),
        ({"ac__A01__insulation": "", "ac__A01__bundle": ""}, Verdict.NOT_KNOWN,
         "10 AWG carries 24 A here"),
        ({"shore__feed_size": "12 AWG", "ac__A01__bundle": "7"}, Verdict.STOP, "22.5 A"),
        ({"shore__feed_size": "16 AWG"}, Verdict.STOP, "16 AWG carries here"),
        ({"ac__A01__size": "16 AWG"}, Verdict.STOP, "16 AWG carries here"),
        ({"shore__feed_size": "", "ac__A01__size": ""}, Verdict.NOT_KNOWN, "enter its conductor"),
    ],
)  # fmt: skip
def test_the_run_to_the_main_is_held_against_its_rating(texts, verdict, told):
    plan = planned(**texts)
    found = asked(plan, "cord and feed")
    assert found.verdict == verdict
    assert any(told in part.words for part in found.parts)
    assert gravest(plan).unplug == (verdict == Verdict.STOP)


def test_a_main_without_a_rating_takes_the_inlet_circuits():
    plan = planned(shore__main_rating="", shore__main_poles="")
    assert asked(plan, "main breaker").verdict == Verdict.FINE
    assert "30 A of two poles" in asked(plan, "main breaker").parts[0].words
    small = planned(shore__main_rating="", ac__A01__breaker="20 A")
    answer = load_answer(small.shore, small.shore.planned)
    assert answer is not None
    assert answer.worst.rating == pytest.approx(20)


@pytest.mark.parametrize(
    ("texts", "verdict", "told"),
    [
        ({"ac__A01__breaker": "50 A"}, Verdict.STOP, "30 A and 50 A"),
        ({"ac__A01__breaker": "20 A"}, Verdict.SHOULD, "30 A and 20 A"),
        ({"ac__A01__poles": "1"}, Verdict.STOP, "2 and 1 poles"),
    ],
)
def test_a_main_entered_twice_is_a_finding(texts, verdict, told):
    plan = planned(**texts)
    found = asked(plan, "main breaker")
    assert found.verdict == verdict
    (twice,) = [one for one in found.findings if "entered twice" in one.words]
    assert told in twice.words
    assert "A01" in twice.words
    assert twice.who == Who.OWNER


def test_before_the_service_is_chosen_no_rule_is_taken_for_granted():
    row = {"id": "A01", "breaker": "20 A", "size": "8 AWG", "place": "galley", "outlets": "1",
           "outlet_rating": "15 A", "ground_fault": "30 mA", "insulation": "105 degC",
           "bundle": "2"}  # fmt: skip
    found = asked(boat({"leakage": "yes", "leakage_trip": "30 mA"}, row), "A01")
    assert found.verdict == Verdict.NOT_KNOWN
    assert sum("choose the shore service first" in part.words for part in found.parts) == 2
    assert asked(boat({"service": "30 A 120 V"}, row), "A01").verdict == Verdict.STOP


@pytest.mark.parametrize(
    ("time", "verdict"),
    [("100 ms", Verdict.FINE), ("300 ms", Verdict.SHOULD), ("310 ms", Verdict.STOP)],
)
def test_the_time_of_the_main_at_230_volts(time, verdict):
    texts = {"leakage": "yes", "leakage_trip": "30 mA", "leakage_time": time}
    plan = boat({"service": "16 A 230 V", **texts})
    assert asked(plan, "leakage protection").verdict == verdict
