"""The sums of protection, by hand: window, fault, withstand and a stalled motor.

10 AWG carries 60 A at 105 °C, 51 A in an engine space (33 CFR 183.425, table 5 and note 1).
"""

import pytest

from engine.sums import SUMS
from engine.sums.sum import answered

WINDOW = {"current": "16 A", "size": "10 AWG"}
FAULT = {"volts": "12 V", "bank_resistance": "3 mohm", "run": "1 m", "size": "50 mm2"}
HEAT = {"current": "3000 A", "time": "0.1 s", "size": "10 mm2"}
PUMP = {"stall_current": "14 A", "run": "10 m", "size": "16 AWG", "rating": "7.5 A"}


def asked(name, given, **more):
    stated = {**given, **more}
    return answered(SUMS[name], {key: one for key, one in stated.items() if one is not None})


def values(name, given, **more):
    found = asked(name, given, **more)
    assert found["problems"] == []
    return {key: one["value"] for key, one in found["answers"].items()}


def test_a_window_from_a_size():
    """16 / 0.8 = 20 A to 60 A; law 90 A; in an engine space 51 A."""
    found = values("protection", WINDOW)
    assert found == {
        "least": 20.0, "most": 60.0, "rating": 20.0, "next_size_allowed": "no", "cfr_limit": 90.0,
    }  # fmt: skip
    assert values("protection", WINDOW, engine_space="yes")["most"] == 51.0
    assert values("protection", WINDOW, continuous="no")["least"] == 16.0


def test_a_window_from_what_the_conductor_carries():
    found = values("protection", WINDOW, size=None, carries="24 A")
    assert (found["least"], found["most"], found["cfr_limit"]) == (20.0, 24.0, 36.0)
    both = values("protection", WINDOW, carries="24 A")
    assert (both["most"], both["cfr_limit"]) == (24.0, 90.0)


def test_from_50_v_the_law_is_no_looser():
    assert values("protection", WINDOW, volts="120 V", series="class T")["cfr_limit"] == 60.0


def test_the_next_standard_size_where_the_window_holds_none():
    """16 / 0.8 = 20, carries 19: the next of a blade above 19 is 20, within 28.5 A."""
    given = {"current": "16 A", "carries": "19 A"}
    found = asked("protection", given)
    assert found["answers"]["rating"]["value"] == "none"
    assert found["answers"]["next_size_allowed"]["value"] == "yes"
    assert found["governing"] == "next standard size"
    assert values("protection", given, current="30 A")["next_size_allowed"] == "no"


def test_no_rating_of_a_kind_within():
    """A window of 4 to 35 A, and a terminal-mount starts at 30; of 4 to 25 none fits."""
    given = {"current": "3.2 A", "carries": "25 A", "series": "terminal-mount"}
    found = values("protection", given)
    assert (found["rating"], found["next_size_allowed"]) == ("none", "yes")
    assert values("protection", given, carries="35 A")["rating"] == 30.0
    assert values("protection", given, carries="15 A")["next_size_allowed"] == "no"


def test_a_blade_on_48_v_is_cautioned():
    found = asked("protection", WINDOW, volts="48 V")
    assert any("58.4 V" in note for note in found["cautions"])
    assert asked("protection", WINDOW)["cautions"] == []
    assert asked("protection", WINDOW, volts="48 V", series="class T")["cautions"] == []


@pytest.mark.parametrize(
    ("more", "where"),
    [
        ({"size": None}, "size"),
        ({"size": "many"}, "size"),
        ({"size": "0.75 mm2"}, "size"),
        ({"carries": "0 A"}, "carries"),
        ({"carries": "3 V"}, "carries"),
        ({"series": "string"}, "series"),
        ({"insulation": "77 degC"}, "insulation"),
        ({"continuous": "maybe"}, "continuous"),
    ],
)
def test_what_a_window_cannot_do_without(more, where):
    found = asked("protection", WINDOW, **more)
    assert found["answers"] == {}
    assert [row["where"] for row in found["problems"]] == [where]


def test_a_kind_is_chosen_in_any_letters():
    assert values("protection", WINDOW, series="class t") == values(
        "protection", WINDOW, series="class T"
    )


def test_a_fault():
    """2 m / 58 / 50 mm² = 0.690 mΩ; 12 / 3.690 mΩ = 3252 A; of 700 cranking A a main asks 3000."""
    found = values("fault", FAULT)
    assert found["current"] == pytest.approx(12 / (0.003 + 2 / 58 / 50))
    assert found["minimum_interrupting"] == found["current"]
    assert values("fault", FAULT, cca="1200 A")["minimum_interrupting"] == 5000
    assert (
        values("fault", FAULT, cca="1200 A", main="no")["minimum_interrupting"] == found["current"]
    )
    assert values("fault", FAULT, joints="9 mohm")["minimum_interrupting"] == 1500
    assert asked("fault", FAULT, cca="1200 A")["governing"] == "published minimum"


def test_a_fault_says_what_the_tables_do_not():
    assert any("smallest bank" in note for note in asked("fault", FAULT)["cautions"])
    assert any("2200" in note for note in asked("fault", FAULT, cca="2500 A")["cautions"])
    assert any("32 V" in note for note in asked("fault", FAULT, volts="51.2 V")["cautions"])
    assert asked("fault", FAULT, cca="900 A")["cautions"] == []


@pytest.mark.parametrize(
    ("more", "where"),
    [
        ({"bank_resistance": "-1 mohm"}, "bank_resistance"),
        ({"size": "many"}, "size"),
        ({"cca": "-5 A"}, "cca"),
        ({"joints": "3 V"}, "joints"),
        ({"run": "0 m"}, "run"),
    ],
)
def test_a_fault_that_cannot_be_read(more, where):
    assert [row["where"] for row in asked("fault", FAULT, **more)["problems"]] == [where]


def test_a_conductor_that_bears_it():
    """3000² × 0.1 = 900 000 A²s; 10 mm² bears 767 000 from 105 °C, (115 × 10)² from 70 °C."""
    found = values("withstand", HEAT)
    assert found["energy"] == pytest.approx(900_000)
    assert found["limit"] == pytest.approx(767_000, rel=0.001)
    assert found["holds"] == "no"
    cooler = values("withstand", HEAT, initial="70 degC")
    assert cooler["limit"] == pytest.approx(1_322_500, rel=0.001)
    assert cooler["holds"] == "yes"


def test_times_are_seconds():
    assert values("withstand", HEAT, time="0.1") == values("withstand", HEAT)
    assert values("withstand", HEAT, time="100 ms") == values("withstand", HEAT)
    assert asked("withstand", HEAT)["cautions"] == []
    assert asked("withstand", HEAT, time="5 s")["cautions"] == []
    assert asked("withstand", HEAT, time="6 s")["cautions"]


def test_temperatures_out_of_order():
    assert [row["where"] for row in asked("withstand", HEAT, final="90 degC")["problems"]] == [
        "final"
    ]


@pytest.mark.parametrize(
    ("run", "size", "current", "verdict"),
    [
        ("5 m", "14 AWG", 12.77, "should"),
        ("10 m", "16 AWG", 10.71, "should"),
        ("20 m", "18 AWG", 7.08, "stop"),
    ],
)
def test_a_stalled_pump(run, size, current, verdict):
    found = values("locked-rotor", PUMP, run=run, size=size)
    assert found["current"] == pytest.approx(current, abs=0.02)
    assert found["ratio"] == pytest.approx(current / 7.5, abs=0.005)
    assert found["verdict"] == verdict
    assert found["worst_ratio"] < found["ratio"]


def test_a_stalled_pump_with_a_hot_conductor():
    """NEC table 8, coated: 5.29 Ω/kft at 75 °C, × 1.0969 at 105; 20 m make 0.381 Ω: 9.69 A."""
    found = asked("locked-rotor", PUMP)
    assert found["answers"]["worst_ratio"]["value"] == pytest.approx(9.69 / 7.5, abs=0.002)
    assert any("never open" in note for note in found["cautions"])
    short = asked("locked-rotor", PUMP, run="1 m", rating="5 A")
    assert short["answers"]["verdict"]["value"] == "within limit"
    assert short["cautions"] == []
