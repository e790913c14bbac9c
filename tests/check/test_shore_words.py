"""What a licensed person writes down: adverse words stop, what cannot be compared is not known.

A 30 mA device does not open at 15 mA, opens within 300 ms at 30 mA (BS 7671, as reprinted) or 100
ms (ABYC E-11, as reprinted); insulation is at least 1 Mohm (BS 7671, table 61).
"""

from copy import deepcopy

import pytest

from engine.check.shore import shore_asked, shore_findings
from engine.check.shore_gravest import gravest
from engine.finding import Severity, Verdict
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of

SIGNED = {"person": "Yard electrician", "date": "2027-04-02"}
TRIP = "Leakage trip at the main, time and current"
JOIN = "Neutral to safety ground"
GROUND = "Safety-ground continuity"


def with_record(name, found, result="pass", service="30 A 120 V", **signed):
    document = deepcopy(made_up_document())
    record = {"id": "R01", "name": name, "found": found, "result": result}
    document["records"] = [{**record, **SIGNED, **signed}]
    document["shore"]["service"] = service
    return plan_of(document)


def result(plan):
    return next(one for one in shore_asked(plan) if one.name == "results")


@pytest.mark.parametrize(
    "found",
    [
        "did not trip at 30 mA", "does not open at 100 mA", "held at 60 mA", "never trips",
        "not within 30 mA", "test button does nothing", "no trip", "30 mA: no trip",
        "30 mA, no trip", "it won\u2019t trip", "fails to open at 30 mA", "> 30 mA", "> 300 ms",
        "stays in at 0.06 A", "no trip at 15 mA, no trip at 30 mA", "24 mA, 38 ms; button dead",
        "tester shows no reaction", "no-trip", "trips only above 60 mA", "not within 300 ms",
        "15 mA no trip, 30 mA no trip",
    ],
)  # fmt: skip
@pytest.mark.parametrize("state", ["pass", "open"])
def test_a_device_that_does_not_open_is_the_gravest_result(found, state):
    plan = with_record(TRIP, found, state)
    (one,) = shore_findings(plan)
    assert (one.verdict, one.severity) == (Verdict.STOP, Severity.STOP_NOW)
    assert "it did not open" in one.words
    assert gravest(plan).unplug


@pytest.mark.parametrize(
    "found",
    [
        "no trip at 15 mA, 24 mA, 38 ms", "15 mA: no trip; 24 mA 38 ms",
        "half: no trip, 24 mA, 38 ms, 150 mA: 12 ms", "24 mA, 38 ms, button not stuck",
        "24 mA 38 ms, never opens at 15 mA for 2 s", "held at 10 mA, opens at 24 mA in 38 ms",
    ],
)  # fmt: skip
def test_half_the_limit_may_be_held(found):
    assert result(with_record(TRIP, found)).verdict == Verdict.FINE


def test_a_hold_between_half_and_the_limit_is_not_known():
    found = result(with_record(TRIP, "no trip at 20 mA, 24 mA, 38 ms"))
    assert found.verdict == Verdict.NOT_KNOWN
    assert "20 mA" in found.parts[0].words


@pytest.mark.parametrize(
    ("service", "found", "verdict"),
    [
        ("30 A 120 V", "22 mA, 180 ms", Verdict.STOP),
        ("16 A 230 V", "22 mA, 180 ms", Verdict.SHOULD),
        ("16 A 230 V", "22 mA, 90 ms", Verdict.FINE),
        ("16 A 230 V", "22 mA, 310 ms", Verdict.STOP),
        ("", "22 mA, 90 ms", Verdict.NOT_KNOWN),
        ("", "45 mA, 90 ms", Verdict.STOP),
    ],
)
def test_the_time_by_the_service(service, found, verdict):
    plan = with_record(TRIP, found, service=service)
    assert result(plan).verdict == verdict
    against = [one.rule.name for one in gravest(plan).because]
    assert any("leakage at the main" in one for one in against) == (verdict == Verdict.STOP)


@pytest.mark.parametrize(
    ("name", "found", "told"),
    [
        (JOIN, "bonded at the AC panel", "joined"),
        (JOIN, "joined", "joined"),
        (JOIN, "bond not removed", "joined"),
        (JOIN, "linked on shore", "joined"),
        (JOIN, "0.1 ohm on shore", "joined"),
        (JOIN, "open while inverting, bonded at the bus bar", "joined"),
        ("Polarity", "reversed", "crossed"),
        ("Polarity at the inlet", "live and neutral crossed", "crossed"),
        (GROUND, "open circuit", "not continuous"),
        (GROUND, "no continuity at the galley", "not continuous"),
        (GROUND, "3 kohm", "not continuous"),
        (GROUND, "no earth at outlet 3", "not continuous"),
        ("Panel", "hot joint, must be renewed", "must be renewed"),
        ("Polarity, safety-ground continuity, insulation", "no fault; earth open", "continuous"),
        ("Insulation", "0.2 Mohm", "0.2 Mohm is less than 1 Mohm"),
        ("Insulation to ground", "400 kohm", "less than 1 Mohm"),
        ("Main", "insulation 0.9 megohm", "less than 1 Mohm"),
        ("Panel", "dangerous, do not use", "dangerous and do not use"),
        ("Panel", "scorched at the main", "scorched"),
        ("Panel", "not in order", "not in order"),
    ],
)
@pytest.mark.parametrize("state", ["pass", "open", ""])
def test_plain_adverse_words_stop(name, found, told, state):
    plan = with_record(name, found, state)
    (one,) = shore_findings(plan)
    assert (one.verdict, one.severity) == (Verdict.STOP, Severity.STOP_NOW)
    assert told in one.words
    assert ("entered as pass" in one.words) == (state == "pass")


@pytest.mark.parametrize(
    ("name", "found"),
    [
        (JOIN, "shore lead connected, neutral and ground open"),
        (JOIN, "connected to the dock, open"),
        (JOIN, "above 5 Mohm on shore"),
        (JOIN, "link removed, open on shore"),
        ("Polarity", "no reversal"),
        ("Polarity", "correct, not reversed"),
        (GROUND, "0.3 ohm"),
        (GROUND, "continuous to every outlet"),
        ("Insulation", "above 5 Mohm"),
        ("Polarity, safety-ground continuity, insulation", "no fault; insulation above 5 Mohm"),
    ],
)
def test_words_that_bear_a_pass_out(name, found):
    plan = with_record(name, found)
    assert shore_findings(plan) == []
    assert result(plan).verdict == Verdict.FINE


@pytest.mark.parametrize(
    ("name", "found"),
    [
        (JOIN, "20 ohm on shore"),
        (JOIN, "joined while inverting"),
        (GROUND, "5 ohm"),
        (GROUND, "measured"),
        ("Polarity", "lamp shows reversed when crossed"),
        ("Polarity", ""),
        ("Insulation", "no fault"),
        ("Insulation", "2 mohm"),
    ],
)
def test_what_cannot_be_compared_is_not_known(name, found):
    plan = with_record(name, found)
    assert shore_findings(plan) == []
    assert result(plan).verdict == Verdict.NOT_KNOWN
    assert "not compared" in result(plan).parts[0].words


@pytest.mark.parametrize("signed", [{"person": "?"}, {"date": "?"}, {"person": "-"}])
def test_a_question_mark_is_no_signature(signed):
    plan = with_record(TRIP, "24 mA, 38 ms", **signed)
    assert result(plan).verdict == Verdict.NOT_KNOWN
    assert "does not count" in result(plan).parts[0].words
