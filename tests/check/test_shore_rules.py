"""Alternating current where a rule is easily passed over: results, shared outlets, what is unsaid.

Boats and figures are invented; the sums are shown. Limits: 30 mA and 100 ms at the main (ABYC
E-11, 11.11.1, as reprinted); carrying capacity by 33 CFR 183.425, table 5 with notes 1 and 2; 15 A
outlets behind 20 A by NEC 210.21(B) as remembered.
"""

from copy import deepcopy

import pytest

from engine.check.findings import findings_of
from engine.check.report import report_of
from engine.check.shore import shore_asked, shore_findings
from engine.check.shore_bonds import source_states
from engine.check.shore_dock import abroad_of, fixed_installation, no_load_words
from engine.check.shore_feed import feed_answer
from engine.check.shore_gravest import gravest
from engine.check.shore_load import load_answer
from engine.check.shore_records import found_on, found_with
from engine.finding import Severity, Verdict, Who
from engine.plan.document import shaped
from engine.plan.edit import with_value
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.plan.read import plan_of
from engine.plan.shore_fields import AC, SHORE
from engine.shore.earthing import Supply

SIGNED = {"person": "Yard electrician", "date": "2027-04-02"}
TRIP = "Leakage trip at the main, time and current"
JOIN = "Neutral to safety ground"


def planned(**texts):
    document = deepcopy(made_up_document())
    for path, text in texts.items():
        document = with_value(document, path.replace("__", "."), text)
    return plan_of(document)


def with_record(**record):
    document = deepcopy(made_up_document())
    document["records"] = [{"id": "R01", **record}]
    return plan_of(document)


def boat(shore, *circuits):
    return plan_of(shaped({"format": 1, "shore": shore, "ac": list(circuits)}))


def asked(plan, name):
    return next(one for one in shore_asked(plan) if one.name == name)


def load_of(plan):
    answer = load_answer(plan.shore, plan.shore.planned)
    assert answer is not None
    return answer


@pytest.mark.parametrize("person", ["", "Yard electrician"])
def test_a_fail_counts_whoever_wrote_it(person):
    plan = with_record(name=TRIP, result="fail", person=person)
    (one,) = shore_findings(plan)
    assert (one.verdict, one.severity, one.who) == (
        Verdict.STOP, Severity.STOP_NOW, Who.LICENSED,
    )  # fmt: skip
    assert (person or "nobody named") in one.words
    assert gravest(plan).unplug


@pytest.mark.parametrize("left_out", ["person", "date"])
def test_a_pass_without_name_or_date_does_not_count(left_out):
    plan = with_record(name=TRIP, found="24 mA, 38 ms", result="pass", **{**SIGNED, left_out: ""})
    assert asked(plan, "results").verdict == Verdict.NOT_KNOWN
    assert shore_findings(plan) == []


@pytest.mark.parametrize("result", ["open", ""])
def test_a_result_that_is_open_is_not_known(result):
    plan = with_record(name="Insulation", found="to be repeated", result=result, **SIGNED)
    (part,) = asked(plan, "results").parts
    assert asked(plan, "results").verdict == Verdict.NOT_KNOWN
    assert "to be repeated" in part.words


@pytest.mark.parametrize(
    ("found", "told"),
    [
        ("45 mA, 400 ms", ("45 mA is more than 30 mA", "400 ms is more than 100 ms")),
        ("24 mA, 0.4 s", ("400 ms is more than 100 ms",)),
        ("0.045 A in 38 ms", ("45 mA is more than 30 mA",)),
        ("opens at 45 milliamps behind 30 A", ("45 mA is more than 30 mA",)),
        ("no trip at 15 mA; trips 31 mA 20 ms", ("31 mA is more than 30 mA",)),
    ],
)
def test_figures_typed_in_a_pass_are_held_against_the_rule(found, told):
    plan = with_record(name=TRIP, found=found, result="pass", **SIGNED)
    (one,) = shore_findings(plan)
    assert one.verdict == Verdict.STOP
    assert all(text in one.words for text in told)
    assert one.words.count("more than") == len(told)
    assert gravest(plan).unplug


@pytest.mark.parametrize(
    ("name", "found", "tail"),
    [
        (TRIP, "24 mA, 38 ms", "38 ms."),
        (TRIP, "30 mA, 100 ms", "100 ms."),
        (TRIP, "no trip at 15 mA, 24 mA, 38 ms at 150 mA", "150 mA."),
        (TRIP, "within its figures", "not compared."),
        (TRIP, "24 mA", "time not compared."),
        (TRIP, "24 mA, 1,200 ms", "time not compared."),
        ("Insulation", "5 Mohm", "Mohm."),
        ("Insulation", "dry", "insulation and “dry” not compared."),
        ("Torque of the terminals", "no fault", "not compared."),
        (JOIN, "as it should be", "not compared."),
        (JOIN, "open on shore, joined while inverting", "inverting."),
        (JOIN, "", "not compared."),
        ("Leakage trip of the galley outlets", "5 mA, 20 ms", "20 ms."),
    ],
)
def test_a_signed_pass_within_its_limits(name, found, tail):
    plan = with_record(name=name, found=found, result="pass", **SIGNED)
    (part,) = asked(plan, "results").parts
    open_still = "not compared" in tail
    assert asked(plan, "results").verdict == (Verdict.NOT_KNOWN if open_still else Verdict.FINE)
    assert part.words.endswith(tail)
    assert ("not compared" in part.words) == ("not compared" in tail)


def test_figures_tell_what_the_name_does_not():
    plan = with_record(name="Main", found="45 mA, 38 ms", result="pass", **SIGNED)
    assert "45 mA is more than 30 mA" in shore_findings(plan)[0].words


def test_an_outlet_is_held_against_the_rule_for_outlets():
    texts = {"name": "Leakage trip of the galley outlets", "found": "20 mA", "result": "pass"}
    plan = with_record(**texts, **SIGNED)
    assert "20 mA is more than 6 mA" in shore_findings(plan)[0].words
    document = deepcopy(made_up_document())
    document["records"] = [{"id": "R01", **texts, **SIGNED}]
    document["shore"]["service"] = "16 A 230 V"
    assert asked(plan_of(document), "results").verdict == Verdict.FINE


@pytest.mark.parametrize(
    ("name", "found"),
    [
        (JOIN, "joined on shore, joined while inverting"),
        (JOIN, "not open on shore"),
        (f"{JOIN} on shore power", "bonded"),
        ("Bonds", "neutral and ground connected with the cord in"),
    ],
)
@pytest.mark.parametrize("result", ["pass", "open"])
def test_a_join_on_shore_speaks_against_a_pass(name, found, result):
    plan = with_record(name=name, found=found, result=result, **SIGNED)
    (one,) = shore_findings(plan)
    assert (one.verdict, one.severity) == (Verdict.STOP, Severity.STOP_NOW)
    assert "joined aboard on shore power" in one.words


def test_what_was_found_source_by_source():
    shore = plan_of(made_up_document()).shore
    found = {str(one.state.supply): one.found for one in source_states(shore)}
    assert found == {
        "shore": "open on shore (R03, pass)",
        "inverter": "joined while inverting (R03, pass)",
    }
    assert found_with(shore, Supply.GENERATOR) == ""
    assert found_on(shore, "leakage protection") == "24 mA, 38 ms (R02, pass)"
    assert "R01" in found_on(shore, "polarity")
    unsigned = with_record(name=JOIN, found="open on shore", result="pass").shore
    assert found_with(unsigned, Supply.SHORE) == "open on shore (R01, pass, not signed)"


TWO = ({"id": "A01", "appliances": "kettle 1200 W", "leg": "1"},
       {"id": "A02", "appliances": "oven 2724 W", "leg": "2"})  # fmt: skip
"""10 A and 22.7 A of 120 V: 33 and 76 % of 30 A, 109 % together."""


def behind(**texts):
    return boat({"service": "30 A 120 V", "inlets": "2", **texts}, *TWO)


def test_one_outlet_behind_a_splitter_carries_both_inlets():
    answer = load_of(behind(feeding="splitter", dock="30 A 120 V"))
    assert answer.worst.name == "one dock outlet"
    assert answer.worst.now.current == pytest.approx(32.7)
    assert answer.worst.now.verdict == Verdict.STOP
    assert answer.load_words == "Load alone: over 30 A"


def test_a_dock_of_two_legs_gives_each_inlet_its_own():
    answer = load_of(behind(feeding="splitter", dock="50 A 125/250 V"))
    assert [side.name for side in answer.sides] == ["inlet 1", "inlet 2"]
    assert answer.worst.now.verdict == Verdict.FINE
    assert load_of(behind(dock="50 A 125/250 V")).worst.now.verdict == Verdict.FINE
    assert load_of(behind(feeding="apart")).worst.now.verdict == Verdict.FINE


@pytest.mark.parametrize("texts", [{"feeding": "splitter"}, {}, {"dock": "30 A 120 V"}])
def test_two_inlets_fed_nobody_knows_how(texts):
    plan = behind(**texts)
    answer = load_of(plan)
    assert answer.worst.now.verdict == Verdict.NOT_KNOWN
    assert answer.load_words == "Load alone: not known"
    assert asked(plan, "simultaneous load").verdict == Verdict.NOT_KNOWN
    assert "what the dock offers" in answer.sentence


def test_an_inlet_of_two_legs_on_a_dock_of_one():
    """10 A and 22.7 A on an adaptor: one outlet of 30 A and one neutral carry 32.7 A."""
    plan = boat({"service": "50 A 125/250 V", "dock": "30 A 120 V"}, *TWO)
    answer = load_of(plan)
    assert (answer.worst.name, answer.worst.now.verdict) == ("one dock outlet", Verdict.STOP)
    assert answer.neutral == pytest.approx(32.7)


def test_one_inlet_too_full_alone_is_stop_whatever_the_dock():
    rows = (TWO[0], {"id": "A02", "appliances": "oven 4800 W", "leg": "2"})
    plan = boat({"service": "30 A 120 V", "inlets": "2", "feeding": "splitter"}, *rows)
    assert load_of(plan).worst.name == "inlet 2"
    assert load_of(plan).worst.now.verdict == Verdict.STOP


@pytest.mark.parametrize(
    ("texts", "verdict", "told"),
    [
        # 12 AWG: 25 A at 60 °C, 45 A at 105 °C; by 0.6 for four, 0.58 in the engine space
        ({"breaker": "15 A"}, Verdict.FINE, "15 A here with insulation of 60 °C and 4 conductors "
         "together, both assumed"),
        ({"breaker": "20 A"}, Verdict.NOT_KNOWN, "Enter its insulation and how many"),
        ({"breaker": "20 A", "insulation": "105 degC"}, Verdict.FINE,
         "27 A here with insulation of 105 °C and 4 conductors together (assumed)"),
        ({"breaker": "25 A", "insulation": "105 degC", "bundle": "7"}, Verdict.STOP, "22.5 A"),
        ({"breaker": "50 A"}, Verdict.STOP, "45 A"),
        ({"breaker": "15 A", "engine_space": "yes"}, Verdict.NOT_KNOWN, "8.7 A"),
    ],
)  # fmt: skip
def test_what_a_jacketed_bundled_conductor_carries(texts, verdict, told):
    row = {"id": "A01", "name": "Heater", "size": "12 AWG", "appliances": "heater 1000 W"}
    plan = boat({"service": "30 A 120 V"}, {**row, **texts})
    assert asked(plan, "A01").verdict == verdict
    assert any(told in part.words for part in asked(plan, "A01").parts)


@pytest.mark.parametrize(
    ("service", "texts", "verdict"),
    [
        ("30 A 120 V", {"breaker": "20 A", "outlets": "1", "outlet_rating": "15 A"}, Verdict.STOP),
        ("30 A 120 V", {"breaker": "20 A", "outlets": "4", "outlet_rating": "15 A"}, Verdict.FINE),
        ("30 A 120 V", {"breaker": "20 A", "outlet_rating": "15 A"}, Verdict.NOT_KNOWN),
        ("30 A 120 V", {"breaker": "20 A"}, Verdict.NOT_KNOWN),
        ("30 A 120 V", {"breaker": "20 A", "outlets": "0"}, Verdict.FINE),
        ("30 A 120 V", {"breaker": "30 A", "outlets": "4", "outlet_rating": "15 A"}, Verdict.STOP),
        ("30 A 120 V", {"breaker": "15 A", "outlets": "1"}, Verdict.FINE),
        ("16 A 230 V", {"breaker": "16 A", "outlets": "3", "outlet_rating": "10 A"},
         Verdict.SHOULD),
        ("16 A 230 V", {"breaker": "16 A", "outlets": "3", "outlet_rating": "13 A"},
         Verdict.NOT_KNOWN),
        ("", {"breaker": "20 A", "outlets": "1", "outlet_rating": "15 A"}, Verdict.NOT_KNOWN),
        ("", {"breaker": "15 A", "outlets": "1", "outlet_rating": "15 A"}, Verdict.NOT_KNOWN),
        ("16 A 230 V", {"breaker": "16 A", "outlets": "3", "outlet_rating": "16 A"}, Verdict.FINE),
    ],
)  # fmt: skip
def test_a_breaker_against_the_outlets_it_feeds(service, texts, verdict):
    row = {"id": "A01", "size": "8 AWG", "place": "dry", "insulation": "105 degC", "bundle": "2"}
    plan = boat({"service": service}, {**row, **texts})
    assert asked(plan, "A01").verdict == verdict


def charger_abroad(**texts):
    found = abroad_of(planned(**texts).shore)
    return next(answer for one, answer in found if one.appliance.name == "charger")


def test_an_inverter_charger_passes_foreign_volts_on():
    assert charger_abroad().verdict == Verdict.STOP
    nothing_behind = charger_abroad(ac__A06__supply="main")
    assert nothing_behind.verdict == Verdict.NOT_KNOWN
    assert charger_abroad(shore__charger_circuit="").verdict == Verdict.NOT_KNOWN
    alone = charger_abroad(
        shore__charger_circuit="", shore__transfer="switch", ac__A06__supply="main"
    )
    assert alone.verdict == Verdict.FINE
    assert charger_abroad(shore__charger_circuit="A03").verdict == Verdict.NOT_KNOWN
    same = abroad_of(planned(shore__abroad="50 A 120 V").shore)
    assert {one.verdict for _, one in same} <= {Verdict.FINE, Verdict.NOT_KNOWN}


@pytest.mark.parametrize(
    ("name", "verdict"),
    [
        ("power unit", Verdict.NOT_KNOWN),
        ("lamp inverter", Verdict.NOT_KNOWN),
        ("battery charger", Verdict.NOT_KNOWN),
        ("laptop", Verdict.FINE),
    ],
)
@pytest.mark.parametrize("circuit", ["", "A03", "A99"])
def test_a_wide_plate_that_may_pass_power_on_is_at_best_not_known(name, verdict, circuit):
    shore = planned(
        shore__charger_circuit=circuit,
        ac__A02__appliances=f"{name} 680 W",
        ac__A02__plates=f"{name} 90 to 265 V 47 to 63 Hz",
    ).shore
    found = next(answer for one, answer in abroad_of(shore) if one.circuit == "A02")
    assert found.verdict == verdict


def test_the_fixed_installation_is_named_abroad():
    fixed = fixed_installation(planned().shore)
    assert fixed is not None
    assert fixed.verdict == Verdict.STOP
    assert "fixed 120 V 60 Hz installation" in fixed.words
    assert fixed_installation(planned(shore__abroad="50 A 120 V").shore) is None
    assert fixed_installation(planned(shore__abroad="").shore) is None


def test_partly_unknown_is_not_within_limit():
    plan = plan_of(made_up_document(AS_FOUND))
    for name in ("A03", "main breaker", "cord and feed"):
        assert asked(plan, name).verdict == Verdict.NOT_KNOWN
    unknown = {"shore__main_poles": "", "ac__A01__poles": ""}
    assert asked(planned(**unknown), "main breaker").verdict == Verdict.NOT_KNOWN
    worse = planned(**unknown, shore__main_rating="50 A")
    assert asked(worse, "main breaker").verdict == Verdict.STOP
    assert "in the cord" in asked(plan, "cord and feed").parts[0].words


@pytest.mark.parametrize(
    "texts", [{"shore__transfer": "none"}, {"shore__transfer": ""}, {"shore__transfer_neutral": ""}]
)
def test_no_source_is_fine_where_nothing_is_known_to_change_over(texts):
    states = source_states(planned(**texts).shore)
    assert {one.part.verdict for one in states} == {Verdict.NOT_KNOWN}


@pytest.mark.parametrize(
    ("shore", "verdict"),
    [
        ({"leakage": "yes", "leakage_trip": "30 mA"}, Verdict.FINE),
        ({"leakage": "yes", "leakage_trip": "100 mA"}, Verdict.STOP),
        ({"leakage": "no"}, Verdict.STOP),
    ],
)
def test_outlets_at_230_volts_stand_behind_30_milliamperes(shore, verdict):
    row = {"id": "A01", "breaker": "10 A", "size": "2.5 mm2", "place": "galley",
           "ground_fault": "0", "insulation": "105 degC", "bundle": "2"}  # fmt: skip
    plan = boat({"service": "16 A 230 V", **shore}, row)
    assert asked(plan, "A01").verdict == verdict
    rules = {part.rule for one in shore_asked(plan) for part in one.parts}
    assert not any("ABYC" in str(rule.source) and "mA" in rule.words for rule in rules)
    own = boat({"service": "16 A 230 V"}, {**row, "ground_fault": "30 mA"})
    assert asked(own, "A01").verdict == Verdict.FINE


def test_leaving_off_says_for_how_long():
    shore = planned().shore
    every = load_answer(shore, frozenset(one.ident for one in shore.items))
    assert every is not None
    assert (
        every.leave_off
        == every.with_all
        == ("Leave off the microwave; or, for minutes only, the kettle, heater or charger.")
    )
    assert "it trips, late or not at all at 109 %: plug and cord heat first" in every.sentence
    assert load_of(planned()).leave_off == ""


def test_a_dock_of_other_volts_stops_first_and_no_load_is_reckoned():
    plan = planned(shore__dock="16 A 230 V")
    first = shore_asked(plan)[0]
    assert (first.name, first.verdict) == ("plugs", Verdict.STOP)
    assert "fixed 120 V" in first.parts[0].words
    assert load_answer(plan.shore, plan.shore.planned) is None
    assert feed_answer(plan.shore) is None
    names = {one.name for one in shore_asked(plan)}
    assert names.isdisjoint({"simultaneous load", "input current limit", "cord and feed"})
    assert not any("planned" in part.words for one in shore_asked(plan) for part in one.parts)
    assert "volts or hertz" in no_load_words(plan.shore)
    assert report_of(plan)["shore"]["questions"]["plugs"] == "stop"
    assert abroad_of(planned(shore__dock="16 A 230 V", shore__abroad="").shore)
    assert no_load_words(planned().shore) == ""


def test_no_two_fields_of_one_form_read_alike():
    for fields in (SHORE, AC):
        labels = [one.label for one in fields.values()]
        assert len(labels) == len(set(labels))
    assert not any(name.endswith("_by") for name in AC)


def test_what_no_table_gives_is_said_plainly():
    plan = boat({"service": "16 A 230 V", "main_interrupting": "6000 A"})
    found = asked(plan, "interrupting rating")
    assert found.verdict == Verdict.CANNOT_SAY
    assert "16 A 230 V is not in this program's tables" in found.parts[0].words


@pytest.mark.parametrize(
    "texts",
    [
        {"looks__inlet": "yes"},
        {"looks__lead": "yes"},
        {"looks__leakage": "no"},
        {"looks__bond": "yes"},
        {"shore__panel_bond": "yes"},
        {"shore__inverter_bond": "always"},
        {"shore__leakage": "no"},
        {"shore__leakage_trip": "300 mA"},
        {"shore__dock": "16 A 230 V"},
        {"shore__main_rating": "50 A"},
        {"shore__cord_size": "12 AWG"},
        {"shore__transfer_interlock": "no"},
    ],
)
def test_what_forbids_plugging_in(texts):
    found = gravest(planned(**texts))
    assert found.unplug
    assert found.headline == "Do not plug in."
    assert found.findings[0].verdict == Verdict.STOP


@pytest.mark.parametrize(
    ("texts", "gravest_is"),
    [
        ({}, None),
        ({"ac__A06__together": "yes"}, Severity.BEFORE_LEAVING),
        ({"ac__A03__ground_fault": "0"}, Severity.BEFORE_LEAVING),
        ({"shore__isolation": "none"}, Severity.SHOULD),
        ({"shore__wave": "modified"}, Severity.SHOULD),
        ({"looks__polarity": "no"}, Severity.BEFORE_LEAVING),
    ],
)
def test_what_does_not_forbid_plugging_in(texts, gravest_is):
    found = gravest(planned(**texts))
    assert not found.unplug
    assert found.headline == ""
    assert {one.severity for one in found.findings} == ({gravest_is} if gravest_is else set())


def test_the_gravest_of_the_boat_as_found():
    found = gravest(plan_of(made_up_document(AS_FOUND)))
    assert [one.where for one in found.findings] == ["looks.inlet", "looks.lead", "looks.bond"]
    assert found.because[: len(found.findings)] == found.findings


def test_a_transformer_near_the_inlet_answers_the_look_for_a_leakage_trip():
    texts = {"shore__isolation": "isolation transformer", "shore__transformer_distance": "2 m",
             "shore__leakage": "no", "shore__leakage_trip": "", "looks__leakage": "no"}  # fmt: skip
    assert not any(one.where == "looks.leakage" for one in findings_of(planned(**texts)))
    assert not gravest(planned(**texts)).unplug
    far = planned(**{**texts, "shore__transformer_distance": "5 m"})
    assert gravest(far).unplug
