"""Words nobody foresaw are never a pass, and what can be read two ways is never counted once.

All of it is invented; what must hold is that a doubtful entry is not within limit.
"""

import pytest

from engine.ahead.left_off import may_be_left
from engine.check.findings import findings_of
from engine.check.shore_load import load_answer
from engine.finding import Verdict
from engine.loads.load import Load
from engine.plan.edit import with_value
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.shore.appliances import listed
from tests.check.test_shore_words import GROUND, JOIN, TRIP, result, with_record


@pytest.mark.parametrize(
    ("name", "found"),
    [
        *((TRIP, text) for text in (
            "remains closed at 30 mA, 40 ms", "remained on at 30 mA for 90 ms",
            "wont trip at 30 mA 100 ms", "didnt trip at 30 mA in 100 ms", "hangs at 30 mA, 40 ms",
            "unresponsive at 30 mA, 40 ms", "button pressed: nothing; 30 mA 90 ms",
            "ELCI bypassed, 30 mA 100 ms", "no ELCI fitted; rated 30 mA 100 ms",
            "rated 30 mA, 100 ms", "label says 30 mA, 100 ms", "not tested 30 mA 100 ms",
            "0 mA, 0 ms",
        )),
        *(("Polarity", text) for text in (
            "not correct", "not right", "correct? no", "no good", "L-N exchanged, ok otherwise",
            "hot on neutral pin, rest ok", "right way at dock, other way aboard",
        )),
        *((GROUND, text) for text in (
            "ok, absent at outlet 3", "good at dock, cut aboard", "0.5 ohm dock, none at outlet",
        )),
        *(("Insulation", text) for text in (
            "5 Mohm dry, 300k wet", "5 Mohm, 0.3 M wet", "5 Mohm, 300 kilohm",
        )),
        (JOIN, "OL then 0.2 ohm"),
    ],
)  # fmt: skip
def test_unusual_words_are_never_within_limit(name, found):
    assert result(with_record(name, found)).verdict is not Verdict.FINE


@pytest.mark.parametrize("person", ["unknown", "n/a", "None", "nobody"])
def test_nobody_signs_nothing(person):
    assert result(with_record(TRIP, "24 mA, 38 ms", person=person)).verdict is not Verdict.FINE


@pytest.mark.parametrize(
    "text",
    [
        "heater 1500 W x 2",
        "heater 1.500 W",
        "2 x heater 1500 W",
        "heater 2 x 1500 W",
        "3 heaters 1500 W",
        "kettle 1000 W toaster 900 W",
        "kettle 1000 W + toaster 900 W",
        "kettle 1000 W & toaster 900 W",
    ],
)
def test_what_can_be_read_two_ways_is_not_read(text):
    assert [one.appliance for one in listed(text)] == [None]


@pytest.mark.parametrize("text", ["heater 2 1500 W", "12 V charger 680 W", "kettle 1,5 kW"])
def test_what_reads_one_way_is_read(text):
    assert all(one.appliance for one in listed(text))


@pytest.mark.parametrize(
    "name",
    [
        "Nav lights", "Running lights", "Masthead light", "Stern light", "Tricolor", "Anchor lamp",
        "AIS", "BMS", "Gas solenoid", "High-water sensor", "EPIRB", "Autopilot drive",
        "Compass light",
    ],
)  # fmt: skip
def test_what_guards_boat_and_crew_is_never_left_off(name):
    assert not may_be_left(Load("L01", name))
    assert may_be_left(Load("L02", "Stereo"))


@pytest.mark.parametrize("path", ["bank.temperature", "bank.most_charge", "sources.S02.watts"])
def test_an_entry_nobody_can_read_is_a_finding(path):
    document = with_value(made_up_document(), path, "rubbish")
    found = [one for one in findings_of(plan_of(document)) if one.where == path]
    assert [one.verdict for one in found] == [Verdict.NOT_KNOWN]


def test_two_legs_of_one_phase_give_no_volts_between_them():
    document = made_up_document()
    for path, text in {
        "shore.service": "50 A 125/250 V", "shore.one_phase": "yes",
        "ac.A03.appliances": "oven 4800 W", "ac.A03.leg": "both",
    }.items():  # fmt: skip
        document = with_value(document, path, text)
    shore = plan_of(document).shore
    answer = load_answer(shore, frozenset(one.ident for one in shore.items))
    assert answer
    assert "asks for two legs" in answer.sentence
    assert answer.worst.now.verdict in {Verdict.NOT_KNOWN, Verdict.STOP}
