"""Quick sums by their contract: answers with units, or problems with where, what and mend.

Figures are hand sums: the rule's drop is 10.75 × A × loop in ft / cmil (10 AWG has 10 383 cmil);
Peukert's time is H × (C / (I × H)) ^ exponent; an inverter takes p + fixed + linear p + square p².
"""

import json
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.field import CHOICE, SIZE, TEXT, YES_NO, Field
from engine.problem import Problem
from engine.sums import SUMS
from engine.sums.inverter_loss import load_of
from engine.sums.sum import Inputs, Outcome, Sum, Value, answered, inputs_of
from engine.units import FRACTION, NUMBER

NEEDED = {
    "conductor": {"volts": "12 V", "current": "20 A", "run": "10 ft"},
    "drop": {"volts": "12 V", "current": "20 A", "run": "10 ft", "size": "10 AWG"},
    "carrying": {"size": "10 AWG"},
    "runtime": {"watts": "1000 W", "capacity": "400 Ah", "exponent": "1.2"},
    "discharge": {"current": "20 A", "capacity": "200 Ah", "exponent": "1.2"},
    "inverter-loss": {"rating": "1000 W", "load": "500 W"},
    "protection": {"current": "16 A", "size": "10 AWG"},
    "fault": {"volts": "12 V", "bank_resistance": "3 mohm", "run": "1 m", "size": "2/0 AWG"},
    "withstand": {"current": "3 kA", "time": "0.1 s", "size": "6 AWG"},
    "locked-rotor": {"volts": "12 V", "stall_current": "14 A", "run": "10 m", "size": "16 AWG",
                     "rating": "7.5 A"},
    "feeder": {"ladder": "panel, 4 AWG, 3.1 m; fridge, 10 AWG, 5.6 m, 4.6 A"},
    "share": {"resistance": "3 mohm"},
    "bank": {"daily": "51.4 Ah", "days": "6", "depth": "80 %", "daily_depth": "20 %",
             "end_of_life": "80 %", "margin": "1.1", "largest_current": "6.1 A"},
    "days-alone": {"daily": "132.4 Ah", "capacity": "280 Ah", "usable": "80 %"},
    "charge-time": {"capacity": "400 Ah", "from": "50 %", "to": "80 %", "source": "80 A",
                    "limit": "0.25 /h", "taper": "0.6 /h"},
    "two-well": {"rate": "0.677 /h", "share": "0.4751", "full": "108.16 Ah",
                 "available": "24.981 Ah", "bound": "27.599 Ah", "current": "3 A", "step": "1 h"},
    "sun-day": {"latitude": "43"},
    "wind-day": {"mean_speed": "5 m/s", "area": "1.04 m2", "power_coefficient": "0.30"},
    "sag": {"power": "2000 W", "open_volts": "12.4 V", "resistance": "6 mohm"},
    "shore-load": {"service": "30 A", "loads": "kettle 1000 W, charger 680 W"},
    "cord": {"current": "30 A", "length": "50 ft", "size": "10 AWG"},
    "motor-start": {"horsepower": "0.5", "code": "L"},
    "generator-fuel": {"rating": "20 kW", "load": "10 kW"},
}  # fmt: skip
KEYS = {
    "conductor": {"size", "size_for_drop", "size_for_heat", "circular_mils", "drop", "share",
                  "carries"},
    "drop": {"drop", "share", "volts_at_load", "rule_drop"},
    "carrying": {"carries"},
    "runtime": {"dc_current", "time", "lossless_time"},
    "discharge": {"time", "delivered"},
    "inverter-loss": {"dc_watts", "efficiency"},
    "protection": {"least", "most", "rating", "next_size_allowed", "cfr_limit"},
    "fault": {"current", "minimum_interrupting"},
    "withstand": {"energy", "limit", "holds"},
    "locked-rotor": {"current", "ratio", "verdict", "worst_ratio"},
    "feeder": {"worst", "worst_volts", "drop", "share", "current", "heat", "volts_bank",
               "volts_panel", "volts_fridge"},
    "share": {"most_share", "least_share", "most_current", "least_current", "uneven"},
    "bank": {"unadjusted", "by_depth", "by_daily_depth", "by_age", "capacity", "hour_rate"},
    "days-alone": {"days"},
    "charge-time": {"time"},
    "two-well": {"available", "bound", "most_current"},
    "sun-day": {"irradiation", "tilted", "panel", "extraterrestrial"},
    "wind-day": {"mean_power", "charge"},
    "sag": {"current", "volts", "collapse_power"},
    "shore-load": {"current", "share_of_service", "verdict"},
    "cord": {"drop", "share"},
    "motor-start": {"kva", "current"},
    "generator-fuel": {"fuel"},
}  # fmt: skip
DEFAULTS = {
    "conductor": {"allowed": "3 %", "catalogue": "sae", "insulation": "105 degC",
                  "engine_space": "no", "bundle": "1", "ambient": "30 degC"},
    "drop": {"temperature": "20 degC", "catalogue": "awg"},
    "carrying": {"insulation": "105 degC", "engine_space": "no", "bundle": "1",
                 "ambient": "30 degC"},
    "runtime": {"rated_hours": "20 h", "usable": "100 %"},
    "discharge": {"rated_hours": "20", "usable": "100 %"},
    "inverter-loss": {},
    "protection": {"continuous": "yes", "series": "blade", "volts": "12 V",
                   "insulation": "105 degC", "engine_space": "no", "bundle": "1",
                   "ambient": "30 degC"},
    "fault": {"temperature": "20 degC", "joints": "0 ohm", "main": "yes"},
    "withstand": {"initial": "105 degC", "final": "160 degC"},
    "locked-rotor": {"volts": "12 V", "contacts": "0 ohm"},
    "feeder": {"volts": "12.8 V", "bank_resistance": "0 ohm", "temperature": "20 degC"},
    "share": {"batteries": "2", "link": "0.5 mohm", "current": "100 A", "take_off": "one-end"},
    "bank": {"temperature_factor": "1"},
    "days-alone": {"health": "100 %", "income": "0 Ah"},
    "charge-time": {"efficiency": "1"},
    "two-well": {},
    "sun-day": {"longitude": "0", "month": "july", "tilt": "0", "azimuth": "180", "sky": "clear",
                "watts": "100 W", "constant": "1361 W/m2"},
    "wind-day": {"rated": "400 W", "cut_in": "3 m/s", "furl": "18 m/s", "cut_out": "25 m/s",
                 "height": "10 m", "shelter": "100 %", "volts": "12.5 V"},
    "sag": {},
    "shore-load": {"volts": "120 V"},
    "cord": {"volts": "120 V", "temperature": "75 degC"},
    "motor-start": {"volts": "120 V", "phases": "1"},
    "generator-fuel": {},
}  # fmt: skip


def asked(name, **more):
    given = {**NEEDED[name], **more}
    return answered(SUMS[name], {key: one for key, one in given.items() if one is not None})


def value(name, key, **more):
    found = asked(name, **more)
    assert found["problems"] == []
    return found["answers"][key]["value"]


def problems(name, **more):
    found = asked(name, **more)
    assert found["answers"] == {}
    assert found["governing"] is None
    assert found["working"] == []
    assert all(row["what"] and row["mend"] for row in found["problems"])
    return [row["where"] for row in found["problems"]]


def test_every_sum_is_tried_here():
    assert set(SUMS) == set(NEEDED)
    assert all(SUMS[name].name == name for name in SUMS)


@pytest.mark.parametrize("name", SUMS)
def test_the_contract_of_an_answer(name):
    found = asked(name)
    assert set(found) == {"sum", "answers", "governing", "problems", "working", "cautions"}
    assert found["sum"] == name
    assert set(found["answers"]) >= KEYS[name]
    for one in found["answers"].values():
        assert set(one) == {"value", "unit"}
    assert found["problems"] == []
    assert all(isinstance(line, str) for line in found["working"] + found["cautions"])
    assert found["working"]
    assert json.loads(json.dumps(found, allow_nan=False)) == found


@pytest.mark.parametrize("name", SUMS)
def test_defaults_are_what_the_contract_says(name):
    assert asked(name) == asked(name, **DEFAULTS[name])


@pytest.mark.parametrize(
    ("name", "key"),
    [(name, key) for name, given in NEEDED.items() for key in given if key != "volts"],
)
def test_a_missing_input_is_named(name, key):
    assert problems(name, **{key: None}) == [key]
    assert problems(name, **{key: "  "}) == [key]
    assert problems(name, **{key: "?"}) == [key]


@pytest.mark.parametrize("name", SUMS)
def test_an_input_that_is_none_is_named(name):
    assert problems(name, lenght="4 m", wheels="4") == ["lenght", "wheels"]


@pytest.mark.parametrize(
    ("name", "key", "text"),
    [
        ("conductor", "run", "3 kg"),
        ("conductor", "run", "0"),
        ("conductor", "run", "-4 m"),
        ("conductor", "run", "4 km"),
        ("conductor", "run", "four"),
        ("conductor", "run", "1,250"),
        ("conductor", "run", "nan"),
        ("conductor", "run", "1e309"),
        ("conductor", "run", "9" * 100),
        ("conductor", "current", "0 A"),
        ("conductor", "current", "12 V"),
        ("conductor", "volts", "0"),
        ("conductor", "allowed", "80 %"),
        ("conductor", "allowed", "0"),
        ("conductor", "catalogue", "brass"),
        ("conductor", "engine_space", "maybe"),
        ("conductor", "bundle", "0"),
        ("conductor", "insulation", "77 degC"),
        ("conductor", "ambient", "30 A"),
        ("drop", "size", "many"),
        ("drop", "size", "11 SAE"),
        ("drop", "temperature", "3 V"),
        ("carrying", "size", "0.75 mm2"),
        ("carrying", "size", "many"),
        ("carrying", "insulation", "77 degC"),
        ("runtime", "efficiency", "0 %"),
        ("runtime", "efficiency", "140 %"),
        ("runtime", "exponent", "0.8"),
        ("discharge", "usable", "-5 %"),
        ("discharge", "rated_hours", "0"),
        ("inverter-loss", "load", "x"),
        ("inverter-loss", "load", "-5 W"),
        ("inverter-loss", "load", "4000 W"),
        ("inverter-loss", "load", "400 %"),
        ("inverter-loss", "fixed", "2"),
        ("inverter-loss", "rating", "0 W"),
        ("feeder", "ladder", "fridge, 10 AWG, four m, 4.6 A"),
        ("feeder", "ladder", "fridge from panel, 10 AWG, 4 m, 4.6 A"),
        ("feeder", "ladder", "fridge from fridge, 10 AWG, 4 m, 4.6 A"),
        ("feeder", "volts", "0 V"),
        ("feeder", "bank_resistance", "-1 mohm"),
        ("feeder", "temperature", "3 V"),
        ("share", "batteries", "1"),
        ("share", "batteries", "2.5"),
        ("share", "batteries", "25"),
        ("share", "resistance", "0 ohm"),
        ("share", "link", "-1 mohm"),
        ("share", "current", "0 A"),
        ("share", "take_off", "middle"),
        ("bank", "daily", "0 Ah"),
        ("bank", "depth", "1.2"),
        ("bank", "margin", "10 %"),
        ("bank", "temperature_factor", "0.84"),
        ("bank", "largest_current", "-3 A"),
        ("bank", "days", "6 A"),
        ("days-alone", "capacity", "0 Ah"),
        ("days-alone", "usable", "0"),
        ("days-alone", "daily", "-5 Ah"),
        ("charge-time", "capacity", "0 Ah"),
        ("charge-time", "to", "50 %"),
        ("charge-time", "to", "40 %"),
        ("charge-time", "to", "100 %"),
        ("charge-time", "source", "0 A"),
        ("charge-time", "source", "-20 A"),
        ("charge-time", "limit", "0 /h"),
        ("charge-time", "limit", "40 A"),
        ("charge-time", "taper", "-1"),
        ("charge-time", "efficiency", "1.4"),
        ("charge-time", "efficiency", "140 %"),
        ("two-well", "available", "60 Ah"),
        ("two-well", "bound", "70 Ah"),
        ("two-well", "bound", "-1 Ah"),
        ("two-well", "share", "1"),
        ("two-well", "full", "0 Ah"),
        ("two-well", "rate", "0"),
        ("two-well", "step", "0 h"),
        ("wind-day", "mean_speed", "-3 m/s"),
        ("wind-day", "mean_speed", "5 W"),
        ("wind-day", "area", "0 m2"),
        ("wind-day", "area", "1.04 mm2"),
        ("wind-day", "power_coefficient", "70 %"),
        ("wind-day", "furl", "2 m/s"),
        ("wind-day", "height", "0 m"),
    ],
)
def test_what_cannot_be_read_says_where(name, key, text):
    assert problems(name, **{key: text}) == [key]


def test_every_problem_at_once():
    assert problems("conductor", run="x", current="y", wheels="4") == ["wheels", "current", "run"]


def test_sizes_in_their_catalogue():
    """20 A × 20 ft × 10.75 / 0.36 V = 11 944 cmil; 8 AWG has 16 510, 8 SAE 14 810 of them."""
    assert value("conductor", "circular_mils") == pytest.approx(11_944, abs=1)
    found = [value("conductor", "size", catalogue=one) for one in ("awg", "sae", "metric")]
    assert found == ["8 AWG", "8 SAE", "10 mm2"]
    assert value("conductor", "size_for_heat", catalogue="awg") == "18 AWG"
    assert asked("conductor")["governing"] == "drop"
    assert asked("conductor", allowed="10 %", run="1 ft", current="100 A")["governing"] == "heat"


@pytest.mark.parametrize(
    ("size", "more", "word"),
    [
        ("8 AWG", {}, "enough"),
        ("10 AWG", {}, "not enough, by drop"),
        ("18 AWG", {"current": "30 A"}, "not enough, by drop and heat"),
        ("18 AWG", {"current": "30 A", "run": "1 ft", "allowed": "10 %"}, "not enough, by heat"),
    ],
)
def test_a_conductor_in_hand(size, more, word):
    """20 A over 10 ft and back lose 3.45 % in 10 AWG and 2.17 % in 8; 18 AWG carries 20 A."""
    assert value("conductor", "in_hand", in_hand=size, **more) == word


@pytest.mark.parametrize("size", ["many", "0.75 mm2", "11 AWG"])
def test_a_conductor_in_hand_that_cannot_be_read(size):
    assert problems("conductor", in_hand=size) == ["in_hand"]


def test_the_drop_of_a_size():
    """10.75 × 20 × 20 / 10 383 = 0.4141 V."""
    assert value("drop", "rule_drop") == pytest.approx(0.4141, abs=0.0001)
    found = asked("drop")["answers"]
    assert found["share"]["value"] == pytest.approx(found["drop"]["value"] / 12)
    assert found["volts_at_load"]["value"] == pytest.approx(12 - found["drop"]["value"])
    assert [found[key]["unit"] for key in ("drop", "share", "volts_at_load")] == ["V", "", "V"]


def test_a_size_stays_in_the_catalogue_it_was_typed_in():
    assert asked("drop", catalogue="sae") == asked("drop")
    bare = {one: value("drop", "rule_drop", size="10", catalogue=one) for one in ("awg", "sae")}
    assert bare["sae"] > bare["awg"]


def test_a_drop_of_all_the_volts_is_said():
    found = asked("drop", run="900 m", size="18 AWG")
    assert found["answers"]["volts_at_load"]["value"] == 0.0
    assert found["cautions"]


def test_no_size_is_thick_enough():
    found = asked("conductor", run="1000 m", current="500 A")
    assert found["problems"] == []
    assert found["answers"]["size"]["value"] is None
    assert {found["answers"][key]["value"] for key in ("drop", "share", "carries")} == {None}
    assert found["cautions"]


def test_what_a_conductor_carries():
    """Printed 60 A; × 0.7 for three together; nothing where the air is as warm as the jacket."""
    assert value("carrying", "carries") == 60.0
    assert value("carrying", "carries", bundle="3") == pytest.approx(42.0)
    assert value("carrying", "carries", ambient="105 degC") == 0.0
    assert asked("carrying", insulation="60 degC", engine_space="yes")["cautions"]


def test_a_discharge():
    """20 A of 200 Ah at 20 h: 20 × (200 / 400) ^ 1.2 = 8.706 h, 174.1 Ah; half of it half."""
    assert value("discharge", "time") == pytest.approx(8.7055, abs=0.0001)
    assert value("discharge", "delivered") == pytest.approx(174.11, abs=0.01)
    assert value("discharge", "time", usable="50 %") == pytest.approx(4.3528, abs=0.0001)
    assert asked("discharge")["cautions"] == []
    assert asked("discharge", current="5 A")["cautions"]
    assert asked("discharge", current="5 A", exponent="1")["cautions"] == []


def test_a_runtime():
    """1000 / (0.88 × 12) = 94.7 A; lossless 400 × 12 / 1000 = 4.8 h."""
    assert value("runtime", "dc_current") == pytest.approx(94.697, abs=0.001)
    assert value("runtime", "lossless_time") == pytest.approx(4.8)
    assert value("runtime", "time", exponent="1") == pytest.approx(400 / 94.697, abs=0.001)
    assert asked("runtime")["cautions"]


@pytest.mark.parametrize("load", ["500 W", "0.5 kW", "50 %", "0.5", "500"])
def test_an_inverter_s_loss_at_half_load(load):
    """0.5 + 0.01 + 0.04 × 0.5 + 0.06 × 0.25 = 0.545 of 1000 W."""
    assert value("inverter-loss", "dc_watts", load=load) == pytest.approx(545.0)
    assert value("inverter-loss", "efficiency", load=load) == pytest.approx(500 / 545)


def test_an_idle_inverter():
    assert value("inverter-loss", "dc_watts", load="0 W") == pytest.approx(10.0)
    assert value("inverter-loss", "efficiency", load="0 W") == 0.0


def test_a_load_not_given():
    with pytest.raises(Problem, match="not given"):
        load_of("", 1000.0)


def test_a_feeder_by_hand():
    """Class 5 at 20 °C: 0.795 Ω/km over 8 m and 3.39 over 10 m; 20 A lose 0.1272 V and 0.678 V."""
    text = "main, 25 mm2, 4 m; Nav desk, 6 mm2, 5 m, 20 A"
    found = asked("feeder", ladder=text, volts="12.5 V", bank_resistance="5 mohm")["answers"]
    assert found["worst"]["value"] == "Nav desk"
    assert found["drop"]["value"] == pytest.approx(0.1272 + 0.678)
    assert found["volts_bank"]["value"] == pytest.approx(12.4)
    assert found["volts_nav_desk"] == found["worst_volts"]
    assert found["worst_volts"]["value"] == pytest.approx(12.4 - 0.8052)
    assert found["share"]["value"] == pytest.approx(0.8052 / 12.5)
    assert found["current"]["value"] == pytest.approx(20.0)
    assert found["heat"]["value"] == pytest.approx(20 * 0.9052)


def test_a_feeder_with_no_operating_point_cannot_say():
    """10 m of 1 mm² are 0.4 Ω there and back; 12.8² / 1.6 = 102.4 W at most."""
    found = asked("feeder", ladder="pump, 1 mm2, 10 m, 103 W")
    assert found["problems"] == []
    assert {one["value"] for one in found["answers"].values()} == {None}
    inputs, _ = inputs_of(SUMS["feeder"], {"ladder": "pump, 1 mm2, 10 m, 103 W"})
    assert SUMS["feeder"].answer(inputs).words.startswith("No operating point: ")
    assert value("feeder", "worst_volts", ladder="pump, 1 mm2, 10 m, 102 W") > 6.4


def test_a_feeder_that_only_charges_has_no_worst():
    """-20 A over 0.0339 Ω add 0.678 V at the far end and put nothing on a bank of 0 ohm."""
    text = "sun, 6 mm2, 5 m, -20 A"
    found = asked("feeder", ladder=text)["answers"]
    assert {found[key]["value"] for key in ("worst", "worst_volts", "drop", "share")} == {None}
    assert found["volts_sun"]["value"] == pytest.approx(12.8 + 0.678)
    inputs, _ = inputs_of(SUMS["feeder"], {"ladder": text})
    assert "20 A go into the bank" in SUMS["feeder"].answer(inputs).words


def test_every_problem_of_a_ladder_stands_in_its_one_field():
    found = asked("feeder", ladder="a, 10, 4 m; b, 10 AWG, 4 kg; c from d, 10 AWG, 4 m")
    (row,) = found["problems"]
    assert all(f"“{name}”" in row["what"] for name in "abcd")
    (row,) = asked("feeder", ladder="?;" * 9)["problems"]
    assert row["what"].startswith("Of 9 problems the first 5: ")


def test_batteries_side_by_side():
    """Two of 3 mΩ, links of 0.5 mΩ: (3 + 1) / (6 + 1) = 4/7 of 100 A; 8/7 of an even share."""
    assert value("share", "most_share") == pytest.approx(4 / 7)
    assert value("share", "least_current") == pytest.approx(300 / 7)
    assert value("share", "uneven") == pytest.approx(8 / 7)
    assert asked("share")["governing"] == "even share"
    for take_off in ("diagonal", "equal"):
        assert value("share", "most_current", take_off=take_off) == pytest.approx(50.0)
        assert asked("share", take_off=take_off)["governing"] is None


def test_how_a_value_is_said():
    values = ((None,), ("10 AWG",), (0.0304, "share"), (1.23456, "V"), (0.00312, "V"), (43.21, "A"))
    said = [str(Value(*one)) for one in values]
    assert said == ["cannot say", "10 AWG", "3.04 %", "1.23 V", "0.00312 V", "43.2 A"]


def test_every_kind_of_input_is_read():
    fields = (
        Field("kind", "Kind", CHOICE, default="a", choices=(("a", "A"), ("b", "B"))),
        Field("flag", "Flag", YES_NO),
        Field("words", "Words", TEXT),
        Field("size", "Size", SIZE),
    )
    one = Sum("any", "Any?", "", fields, lambda _: Outcome({}, "", ()))
    inputs, found = inputs_of(one, {"words": "x", "size": "10 AWG", "flag": "yes"})
    assert found == []
    assert inputs == Inputs({}, {"kind": "a", "words": "x", "size": "10 AWG"}, {"flag": True})


@pytest.mark.parametrize("name", sorted(SUMS))
def test_what_is_missing_names_an_example_that_fits_it(name):
    """An example is read by its own field, and a bare share or number is never the kind's."""
    lacking = [one for one in SUMS[name].fields if one.needed and not one.default]
    for declared in lacking:
        if declared.kind in {CHOICE, TEXT, SIZE, YES_NO}:
            continue
        found, problems = inputs_of(
            SUMS[name], {declared.name: re.split(", | or ", declared.example)[0]}
        )
        assert declared.name in found.numbers, (declared.name, problems)
        assert declared.like or declared.kind not in {FRACTION, NUMBER}, declared.name


runs = st.integers(1, 3000).map(lambda n: n / 10)
amperes = st.integers(1, 4000).map(lambda n: n / 10)
ENTRIES = st.text(max_size=20) | st.sampled_from(["10 A", "3 kg", "1e400", "nan", "-1", "0", "½ m"])


@given(runs, runs, amperes)
def test_a_longer_run_never_needs_less_copper(one, other, current):
    short, long = (
        value("conductor", "circular_mils", run=f"{run} m", current=f"{current} A")
        for run in sorted((one, other))
    )
    assert short <= long


@given(st.sampled_from(sorted(SUMS)), st.data())
def test_no_entry_crashes_a_sum(name, data):
    names = [declared.name for declared in SUMS[name].fields]
    given = data.draw(st.dictionaries(st.sampled_from(names), ENTRIES))
    found = asked(name, **given)
    json.dumps(found, allow_nan=False)
    assert bool(found["answers"]) != bool(found["problems"])
