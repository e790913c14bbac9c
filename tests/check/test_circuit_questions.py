"""Each question asked of a circuit's protection, build and readings, one at a time.

10 AWG with 105 °C insulation carries 60 A (33 CFR 183.425, table 5); the rule's drop is 10.75 ×
A × loop in ft / 10 380 cmil.
"""

import pytest

from engine.check.circuits import answers_of
from engine.check.readings import ohms_said
from engine.finding import Severity, Verdict, Who
from engine.plan.read import plan_of

WHOLE = {"id": "D01", "run": "3 m", "current": "20 A", "size": "10 AWG", "protection": "30 A",
         "allowed": "other"}  # fmt: skip
BANK = {"chemistry": "flooded", "capacity": "200 Ah", "cranking": "800 A"}


def answer(*others, bank=None, boat=None, **fields):
    circuit = {key: one for key, one in {**WHOLE, **fields}.items() if one is not None}
    document = {"format": 1, "boat": {"tape": "0 m", **(boat or {})},
                "circuits": [circuit, *others]}  # fmt: skip
    if bank:
        document["bank"] = bank
    plan = plan_of(document)
    assert plan.problems == ()
    return answers_of(plan)[0]


def part(rule, *others, **fields):
    found = [one for one in answer(*others, **fields).parts if one.rule.name == rule]
    assert len(found) == 1
    return found[0]


def rules(*others, **fields):
    return {one.rule.name for one in answer(*others, **fields).parts}


def test_no_protection_at_all():
    found = part("protection fitted", series="none", protection=None)
    assert (found.verdict, found.severity, found.who) == (
        Verdict.STOP, Severity.STOP_NOW, Who.TWO,
    )  # fmt: skip
    assert "25 to 60 A" in found.mend
    assert answer(series="none", protection=None).missing == ()


BUS = {"id": "D02", "run": "1 m", "current": "40 A", "size": "6 AWG", "protection": "60 A",
       "feeds": "bus"}  # fmt: skip


def test_a_feeder_s_protection_may_be_enough():
    found = part("protection protects", BUS, series="none", protection=None, fed_from="D02")
    assert found.verdict == Verdict.FINE
    assert "60 A of D02" in found.words


def test_a_feeder_s_protection_may_be_too_large():
    larger = {**BUS, "protection": "80 A"}
    found = part("protection fitted", larger, series="none", protection=None, fed_from="D02")
    assert found.verdict == Verdict.STOP
    assert "80 A of D02 is more than the 60 A it carries" in found.words


def test_the_starter_needs_none_but_its_heat_counts():
    fields = {"feeds": "starter", "series": "none", "protection": None, "current": "200 A"}
    assert part("cranking motor", **fields).verdict == Verdict.FINE
    assert part("heat", **fields).verdict == Verdict.STOP


@pytest.mark.parametrize(
    ("rating", "series", "feeds", "rule", "verdict"),
    [
        ("60 A", "plate", "loads", "protection protects", Verdict.FINE),
        ("70 A", "", "loads", "protection protects", Verdict.STOP),
        ("20 A", "", "loads", "protection holds", Verdict.SHOULD),
    ],
)
def test_a_rating(rating, series, feeds, rule, verdict):
    found = part(rule, protection=rating, series=series, feeds=feeds)
    assert found.verdict == verdict


@pytest.mark.parametrize(
    ("feeds", "rule", "verdict"),
    [("loads", "next standard size", Verdict.SHOULD), ("bus", "protection protects", Verdict.STOP)],
)
def test_the_next_standard_size_is_for_branches(feeds, rule, verdict):
    """In an engine space 51 A; the next plate rating is 60 A, within 150 % (46 CFR 183.380(d))."""
    fields = {"protection": "60 A", "series": "plate", "engine_space": "yes", "feeds": feeds}
    found = part(rule, {**BUS, "protection": "90 A"}, **fields, fed_from="D02")
    assert found.verdict == verdict


def test_what_the_label_asks_for():
    assert "label" not in rules(label_most="30 A")
    found = part("label", label_most="25 A")
    assert (found.verdict, found.severity) == (Verdict.STOP, Severity.BEFORE_LEAVING)


@pytest.mark.parametrize(
    ("fields", "rule", "verdict"),
    [
        ({"to_protection": "7 in", "fed_from": "D02"}, "placement", Verdict.FINE),
        ({"to_protection": "8 in", "fed_from": "D02"}, "placement", Verdict.STOP),
        ({"to_protection": "6-8 in", "fed_from": "D02"}, "placement", Verdict.CANNOT_SAY),
        ({"to_protection": "40 in", "fed_from": "D02", "sheathed": "yes"}, "placement, sheathed",
         Verdict.FINE),
        ({"to_protection": "72 in"}, "placement at the battery", Verdict.FINE),
        ({"to_protection": "2 m"}, "placement at the battery", Verdict.STOP),
    ],
)  # fmt: skip
def test_where_a_protection_stands(fields, rule, verdict):
    """33 CFR 183.455(b): 7 in, 40 in sheathed; 72 in for a battery's output conductor."""
    found = part(rule, {**BUS, "protection": "80 A"}, **fields)
    assert found.verdict == verdict
    assert found.weighs


def test_a_feeder_s_protection_guards_the_length_before_its_own():
    found = part("placement", BUS, to_protection="2 m", fed_from="D02")
    assert found.verdict == Verdict.FINE
    assert "60 A of D02" in found.words


def test_what_stands_beyond_the_run_is_asked_again():
    assert part("placement", to_protection="5 m").verdict == Verdict.NOT_KNOWN


def test_where_it_stands_may_not_be_known():
    found = part("placement")
    assert (found.verdict, found.weighs) == (Verdict.NOT_KNOWN, False)
    assert answer().verdict == Verdict.FINE


@pytest.mark.parametrize(
    ("fields", "verdict", "weighs"),
    [
        ({}, Verdict.NOT_KNOWN, True),
        ({"far_end": "yes"}, Verdict.FINE, True),
        ({"far_end": "no"}, Verdict.STOP, True),
        ({"self_limiting": "yes"}, Verdict.FINE, True),
        ({"self_limiting": "yes", "current": "70 A"}, Verdict.STOP, True),
    ],
)
def test_power_from_both_ends(fields, verdict, weighs):
    found = part("two sources", feeds="source", **fields)
    assert (found.verdict, found.weighs) == (verdict, weighs)


def test_a_fault_by_hand():
    """Full flooded 12 V: 12.7 V at rest; 200 Ah have 3 mΩ, at 20 °C a little more.

    About 4.1 kA at the post, more than a blade's 1000 A and less than a plate fuse's 6000 A.
    """
    small = part("interrupting rating", bank=BANK, series="blade", to_protection="0 m")
    assert (small.verdict, small.weighs) == (Verdict.STOP, True)
    assert "interrupts 1000 A" in small.words
    large = part("interrupting rating", bank=BANK, series="plate", to_protection="0 m")
    assert large.verdict == Verdict.FINE
    stated = part("interrupting rating", bank=BANK, series="blade", interrupting="10 kA")
    assert stated.verdict == Verdict.FINE


def test_the_published_minimum_where_it_asks_for_more():
    """Behind 10 m of 14 AWG little current is left; 800 CCA ask 3000 A of a main all the same."""
    far = {"id": "D02", "run": "10 m", "current": "5 A", "size": "14 AWG", "protection": "30 A",
           "feeds": "bus"}  # fmt: skip
    found = part("published minimum", far, bank=BANK, series="blade", fed_from="D02", feeds="bus")
    assert found.verdict == Verdict.SHOULD
    assert "3000 A" in found.words


def test_a_fuse_rated_32_v_on_48_v():
    fields = {"boat": {"volts": "48 V"}, "series": "blade"}
    found = part("volts rated", **fields)
    assert found.verdict == Verdict.STOP
    assert "58.4 V" in found.words
    assert "volts rated" not in rules(boat={"volts": "48 V"}, series="class T")


def test_what_the_conductor_bears():
    blade = part("withstand", bank=BANK, series="blade")
    assert blade.verdict == Verdict.FINE
    breaker = part("withstand", bank=BANK, series="magnetic breaker")
    assert (breaker.verdict, breaker.weighs) == (Verdict.CANNOT_SAY, False)
    assert " ms at " in breaker.words
    assert "withstand" not in rules(series="blade")


def test_an_unknown_type_is_an_open_question():
    found = part("interrupting rating", bank=BANK)
    assert (found.verdict, found.weighs) == (Verdict.NOT_KNOWN, False)


def test_a_stuck_motor():
    """At 105 °C 10 AWG has 4.642 Ω/km: 12 / (12 / 60 + 6 × 0.004642) = 52.7 A; over 30 A 1.76."""
    found = part("stalled motor", feeds="motor", stall="60 A")
    assert found.verdict == Verdict.SHOULD
    assert "52.7 A" in found.words
    assert part("stalled motor", feeds="motor", stall="90 A").verdict == Verdict.FINE
    stop = part("stalled motor", feeds="motor", stall="40 A")
    assert (stop.verdict, stop.severity) == (Verdict.STOP, Severity.BEFORE_LEAVING)
    assert not part("stalled motor", feeds="motor").weighs


def test_the_least_size():
    assert part("least size", size="18 AWG", current="2 A").verdict == Verdict.SHOULD
    sheath = part("least size", size="18 AWG", current="2 A", in_sheath="yes")
    assert sheath.verdict == Verdict.FINE


def test_insulation_in_the_engine_space():
    found = part("insulation in an engine space", insulation="60 degC", engine_space="yes")
    assert found.verdict == Verdict.SHOULD
    assert "insulation in an engine space" not in rules(insulation="60 degC")


def test_conductors_side_by_side():
    """Two of 1/0 carry twice 285 A × 0.6 for four together, and lose half of one's drop."""
    thin = part("parallel conductors", parallel="2")
    assert thin.verdict == Verdict.SHOULD
    pair = {"size": "1/0 AWG", "current": "250 A", "protection": "320 A"}
    one, two = answer(**pair), answer(**pair, parallel="2")
    assert one.wire is not None
    assert two.wire is not None
    assert two.wire.carries == pytest.approx(342.0)
    assert two.wire.drop == pytest.approx(one.wire.drop / 2)
    assert part("parallel conductors", **pair, parallel="2").verdict == Verdict.FINE


@pytest.mark.parametrize(
    ("read", "agrees", "within"),
    [
        ("0.41 V", Verdict.FINE, Verdict.FINE),
        ("0.9 V", Verdict.SHOULD, Verdict.FINE),
        ("1.2 V", Verdict.SHOULD, Verdict.CANNOT_SAY),
        ("1.4 V", Verdict.SHOULD, Verdict.SHOULD),
        ("0.1 V", Verdict.SHOULD, Verdict.FINE),
    ],
)
def test_a_drop_read_by_meter(read, agrees, within):
    """6 m of 10 AWG at 20 A lose about 0.42 V warm; 10 % of 12 V is 1.2 V; meter ± 0.05 V."""
    assert part("joints", read_drop=read).verdict == agrees
    assert part("drop as read", read_drop=read).verdict == within


def test_a_reading_too_low_is_a_note():
    assert part("joints", read_drop="0.1 V").severity == Severity.NOTE


def test_a_reading_need_not_fail_twice():
    fields = {"allowed": "critical", "run": "6 m", "read_drop": "1.4 V"}
    assert "drop as read" not in rules(**fields)


def test_known_joints_are_part_of_the_sums():
    """20 A through 10 mΩ lose 0.2 V, and the load sees it."""
    without, with_joints = answer(), answer(joints="10 mohm")
    assert without.wire is not None
    assert with_joints.wire is not None
    assert with_joints.wire.physical == pytest.approx(without.wire.physical + 0.2)
    assert with_joints.wire.drop == without.wire.drop
    assert any(step.what == "joints and contacts" for step in with_joints.working)


def test_how_a_resistance_is_said():
    assert ohms_said(0.9994) == "1000 mΩ"


def test_panels_before_their_controller_are_not_on_the_bank():
    found = answer(bank=BANK, volts="21 V", series="blade")
    names = {one.rule.name for one in found.parts}
    assert "interrupting rating" not in names
    assert "withstand" not in names


def test_a_marked_interrupting_rating_does_not_lift_the_volts():
    fields = {"boat": {"volts": "48 V"}, "series": "blade", "interrupting": "5000 A"}
    assert part("volts rated", **fields).verdict == Verdict.STOP


def test_a_larger_bank_never_asks_for_less():
    """ABYC E-11: 5000 A up to 2200 CCA; beyond, what its maker states, never less."""
    far = {"id": "D02", "run": "6 m", "current": "5 A", "size": "10 AWG", "protection": "50 A",
           "feeds": "bus"}  # fmt: skip
    fields = {"series": "blade", "fed_from": "D02", "feeds": "bus"}
    for bank in ({"capacity": "400 Ah", "cranking": "2000 A"},
                 {"capacity": "600 Ah", "cranking": "3000 A"}):  # fmt: skip
        found = part("published minimum", far, bank={**BANK, **bank}, **fields)
        assert found.verdict == Verdict.SHOULD


def test_a_bank_not_known_is_no_small_bank():
    found = part("interrupting rating", BUS, series="blade", fed_from="D02")
    assert (found.verdict, found.weighs) == (Verdict.NOT_KNOWN, False)


def test_protections_abreast_feed_what_hangs_on_them():
    pair = {**BUS, "abreast": "2", "size": "1/0 AWG"}
    found = part("protection fitted", pair, series="none", protection=None, fed_from="D02")
    assert "120 A of D02" in found.words


def test_protections_abreast_are_judged_together():
    """2 × 35 A for 59 A on a conductor of 60 A."""
    found = part("protection protects", current="59 A", protection="35 A", abreast="2")
    assert found.verdict == Verdict.STOP


def test_another_bank_adds_to_the_fault():
    other = {"id": "D03", "run": "1 m", "current": "30 A", "size": "2 AWG", "feeds": "bank"}
    fields = {"bank": BANK, "series": "plate", "to_protection": "0 m"}
    assert part("interrupting rating", other, **fields).verdict == Verdict.NOT_KNOWN
    limited = {**other, "self_limiting": "yes"}
    assert part("interrupting rating", limited, **fields).verdict == Verdict.FINE


def test_a_current_not_sure_may_ask_for_more():
    found = part("protection holds", current="20 A (12 to 28 A)", protection="25 A")
    assert found.verdict == Verdict.CANNOT_SAY
    assert "35 A" in found.words


def test_a_sick_joint_does_not_shrink_the_fault():
    sick = {**BUS, "joints": "17 mohm"}
    sound = {**BUS, "joints": "1 mohm"}
    words = [
        part("interrupting rating", one, bank=BANK, series="plate", fed_from="D02").words
        for one in (sick, sound)
    ]
    assert words[0] == words[1]


def test_joints_that_lose_too_much():
    """20 A × 4 mΩ = 0.08 V; × 12 mΩ = 0.24 V, 2 %; × 20 mΩ = 0.4 V, 3.3 % and 8 W."""
    assert "sound joints" not in rules(joints="4 mohm")
    assert part("sound joints", joints="12 mohm").verdict == Verdict.SHOULD
    found = part("sound joints", joints="20 mohm")
    assert (found.verdict, found.severity) == (Verdict.STOP, Severity.BEFORE_LEAVING)
    assert "8 W" in found.words


def test_fed_from_nothing():
    plan = plan_of(
        {"format": 1, "circuits": [{**WHOLE, "fed_from": "D99", "to_protection": "1 m"}]}
    )
    (found,) = answers_of(plan)
    by_rule = {one.rule.name: one for one in found.parts}
    assert by_rule["fed"].verdict == Verdict.STOP
    assert by_rule["placement"].verdict == Verdict.NOT_KNOWN
    assert "D99" in by_rule["fed"].words


def test_a_panel_s_lead_that_its_source_protects():
    """Panels of 6 A limit themselves; 10 AWG carries 60 A."""
    fields = {"series": "none", "protection": None, "volts": "21 V", "current": "6 A"}
    assert part("protection protects", **fields, self_limiting="yes").verdict == Verdict.FINE
    assert part("protection fitted", **fields).verdict == Verdict.STOP


def test_a_motor_s_protection():
    """46 CFR 169.673(g): 125 % of 4 A is 5 A; the label goes before."""
    found = part("motor protection", feeds="motor", current="4 A", protection="15 A")
    assert found.verdict == Verdict.SHOULD
    assert "motor protection" not in rules(feeds="motor", current="4 A", label_most="15 A")
    assert "motor protection" not in rules(feeds="motor", current="4 A", protection="5 A")


def test_copper_is_not_taken_as_hotter_than_its_insulation():
    found = answer(current="300 A")
    assert found.wire is not None
    assert found.wire.temperature == 105
    assert found.verdict == Verdict.STOP


def test_a_starter_s_fuse_is_asked_like_any_other():
    assert part("volts rated", feeds="starter", boat={"volts": "48 V"}, series="blade")


def test_far_away_the_fault_may_be_the_worse():
    """18 AWG over 6 m and a blade of 20 A: (3.5 × 20)² × … is not reached at the far end."""
    near = part("withstand", bank=BANK, size="18 AWG", current="5 A", in_sheath="yes",
                protection="20 A", series="blade", run="50 cm")  # fmt: skip
    assert near.verdict == Verdict.FINE
    far = part("withstand", bank=BANK, size="18 AWG", current="5 A", in_sheath="yes",
               protection="20 A", series="blade", run="6 m")  # fmt: skip
    assert far.verdict == Verdict.SHOULD
