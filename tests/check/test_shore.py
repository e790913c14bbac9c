"""The AC side of the made-up boat as printed, and each question on boats that break its rule.

*Wherrilow*'s plan, section 8: five circuits of 2 870 W behind a 30 A inlet, her overload pair, and
her variant abroad. Every figure is invented; the sums are shown where none is printed.
"""

from copy import deepcopy

import pytest

from engine.check.findings import findings_of
from engine.check.report import report_of
from engine.check.shore import shore_asked, shore_findings
from engine.check.shore_bonds import source_states
from engine.check.shore_dock import abroad_of
from engine.check.shore_feed import crossings, feed_answer, lopsided
from engine.check.shore_inverter import generator_answer, inverter_ac
from engine.check.shore_isolation import isolation_answer
from engine.check.shore_load import left_off, load_answer
from engine.finding import Severity, Verdict, Who
from engine.plan.document import shaped
from engine.plan.edit import with_value
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.problem import Problem
from engine.units import Amp

PLAN = plan_of(made_up_document())
SHORE = PLAN.shore

WATTS = {"A02": (680, 5.7), "A03": (1000, 8.3), "A04": (440, 3.7), "A05": (750, 6.3),
         "A06": (1050, 8.8)}  # fmt: skip


def changed(**texts):
    """Return the made-up boat with fields changed; ``ac_A03_size`` stands for ``ac.A03.size``."""
    document = deepcopy(made_up_document())
    for path, text in texts.items():
        part, _, rest = path.partition("_")
        dotted = f"{part}.{rest.replace('_', '.', 1)}" if part == "ac" else f"{part}.{rest}"
        document = with_value(document, dotted, text)
    return plan_of(document)


def boat(shore, *circuits):
    return plan_of(shaped({"format": 1, "shore": shore, "ac": list(circuits)}))


def found(plan, name):
    return next(one for one in shore_asked(plan) if one.name == name)


@pytest.mark.parametrize("ident", WATTS)
def test_a_circuit_as_printed(ident):
    circuit = next(one for one in SHORE.circuits if one.ident == ident)
    watts, amps = WATTS[ident]
    assert sum(one.appliance.watts for one in circuit.items) == watts
    assert circuit.breaker == pytest.approx(15)
    assert watts / 120 == pytest.approx(amps, abs=0.0500001)


def test_together_as_printed():
    answer = load_answer(SHORE, SHORE.planned)
    assert answer is not None
    assert answer.watts == pytest.approx(2870)
    assert answer.worst.now.current == pytest.approx(23.9, abs=0.05)
    assert round(answer.worst.now.share * 100) == 80
    assert answer.worst.now.verdict == Verdict.FINE
    assert answer.sentence == (
        "Shore power carries the charger, kettle, dehumidifier, laptop, tool charger and heater "
        "together (80 % of 30 A); add the microwave and it trips, late or not at all at 109 %: "
        "plug and cord heat first."
    )


def test_with_the_microwave_as_printed():
    every = frozenset(one.ident for one in SHORE.items)
    answer = load_answer(SHORE, every)
    assert answer is not None
    assert answer.worst.now.current == pytest.approx(32.7, abs=0.05)
    assert answer.worst.now.verdict == Verdict.STOP
    assert answer.apart == (("microwave", "kettle"),)
    assert "kettle" in left_off(SHORE, every)
    assert left_off(SHORE, SHORE.planned) == ()


def test_at_a_weak_dock():
    """Kettle and heater by 0.9, the rest by 1 / 0.9: 14.583 × 0.9 + 9.333 / 0.9 = 23.50 A."""
    answer = load_answer(SHORE, SHORE.planned)
    assert answer is not None
    assert answer.weak_volts == pytest.approx(108)
    assert answer.worst.weak.current == pytest.approx(23.50, abs=0.005)
    assert answer.falls == ("kettle", "heater")
    assert "charger" in answer.rises


def test_four_appliances_and_what_the_inverter_charger_feeds_may_not_be_used_abroad():
    stopped = {one.appliance.name for one, answer in abroad_of(SHORE)
               if answer.verdict == Verdict.STOP and answer.own}  # fmt: skip
    assert stopped == {"kettle", "heater", "dehumidifier", "microwave"}
    charger = next(answer for one, answer in abroad_of(SHORE) if one.appliance.name == "charger")
    assert charger.verdict == Verdict.STOP
    assert not charger.own
    assert "passes shore power on to A06" in charger.words
    laptop = next(answer for one, answer in abroad_of(SHORE) if one.appliance.name == "laptop")
    assert laptop.verdict == Verdict.NOT_KNOWN
    assert not abroad_of(changed(shore_abroad="").shore)


def test_every_question_is_met_on_the_planned_boat():
    assert {one.verdict for one in shore_asked(PLAN)} == {Verdict.FINE}
    assert shore_findings(PLAN) == []
    assert [one.where for one in findings_of(PLAN)] == ["circuits.D14"]


def test_the_way_in():
    """2 × 17.2 m of 10 AWG at 75 °C, 4.226 mΩ/m in NEC table 8 coated: 30 A lose about 4.4 V."""
    answer = feed_answer(SHORE)
    assert answer is not None
    assert answer.lost == pytest.approx(2 * 17.2 * 0.00423 * 30, rel=0.01)
    assert answer.missing == ()


BROKEN = [
    ("cord and feed", {"shore_cord_length": "40 m"}, Verdict.SHOULD, "5 % is the most", Who.OWNER),
    ("cord and feed", {"shore_cord_size": "12 AWG"}, Verdict.STOP, "too thin", Who.OWNER),
    ("main breaker", {"shore_main_rating": "50 A"}, Verdict.STOP, "larger than the inlet",
     Who.LICENSED),
    ("main breaker", {"shore_main_poles": "1"}, Verdict.STOP, "one conductor only", Who.LICENSED),
    ("main breaker", {"shore_feed_guarded": "no", "shore_feed_length": "4 m"}, Verdict.STOP,
     "3 m (10 ft) is the most", Who.LICENSED),
    ("main breaker", {"shore_feed_guarded": "no"}, Verdict.SHOULD, "0.5 m", Who.LICENSED),
    ("interrupting rating", {"shore_main_interrupting": "1500 A"}, Verdict.STOP,
     "3000 A is the least", Who.LICENSED),
    ("interrupting rating", {"shore_branch_interrupting": "1000 A"}, Verdict.STOP,
     "3000 A is the least", Who.LICENSED),
    ("leakage protection", {"shore_leakage": "no"}, Verdict.STOP, "No leakage protection",
     Who.LICENSED),
    ("leakage protection", {"shore_leakage_trip": "300 mA"}, Verdict.STOP, "300 mA", Who.LICENSED),
    ("leakage protection", {"shore_leakage_time": "300 ms"}, Verdict.STOP, "300 ms", Who.LICENSED),
    ("polarity indicator", {"shore_polarity": "no"}, Verdict.SHOULD, "nothing shows", Who.LICENSED),
    ("galvanic isolation", {"shore_isolation": "none"}, Verdict.SHOULD, "zinc", Who.LICENSED),
    ("galvanic isolation", {"shore_isolator_rating": "16 A"}, Verdict.STOP, "16 A", Who.LICENSED),
    ("galvanic isolation", {"shore_isolator_closes": "no"}, Verdict.STOP, "fail open",
     Who.LICENSED),
    ("change between sources", {"shore_transfer_interlock": "no"}, Verdict.STOP, "at one time",
     Who.LICENSED),
    ("change between sources", {"shore_transfer_breaks": "no"}, Verdict.STOP, "makes before",
     Who.LICENSED),
    ("change between sources", {"shore_transfer_neutral": "no"}, Verdict.STOP, "neutrals",
     Who.LICENSED),
    ("change between sources", {"shore_transfer": "none"}, Verdict.STOP, "at one time",
     Who.LICENSED),
    ("neutral and safety ground", {"shore_panel_bond": "yes"}, Verdict.STOP, "for good",
     Who.LICENSED),
    ("neutral and safety ground", {"shore_inverter_bond": "always"}, Verdict.STOP,
     "shore power in use", Who.LICENSED),
    ("neutral and safety ground", {"shore_inverter_bond": "never"}, Verdict.STOP, "joined nowhere",
     Who.LICENSED),
    ("A03", {"ac_A03_breaker": "60 A"}, Verdict.STOP, "carries here", Who.LICENSED),
    ("A03", {"ac_A03_ground_fault": "0"}, Verdict.STOP, "galley", Who.LICENSED),
    ("A03", {"ac_A03_appliances": "kettle 2000 W"}, Verdict.STOP, "16.7 A of 15 A", Who.OWNER),
    ("A05", {"ac_A05_size": "0.75 mm2"}, Verdict.STOP, "thinner", Who.LICENSED),
    ("wave", {"shore_wave": "modified"}, Verdict.SHOULD, "microwave", Who.OWNER),
    ("warm air", {"shore_air": "55 degC"}, Verdict.SHOULD, "not the microwave", Who.OWNER),
    ("starting", {"inverter_surge": "2000 W"}, Verdict.SHOULD, "2100 W of 2000 W", Who.OWNER),
    ("plugs", {"shore_dock": "16 A 230 V"}, Verdict.STOP, "no plug crosses", Who.LICENSED),
]  # fmt: skip


@pytest.mark.parametrize(("question", "texts", "verdict", "words", "who"), BROKEN)
def test_a_broken_rule_is_found(question, texts, verdict, words, who):
    plan = changed(**texts)
    assert plan.problems == ()
    answer = found(plan, question)
    assert answer.verdict == verdict
    wrong = [one for one in shore_findings(plan) if words in one.words]
    assert len(wrong) == 1
    assert wrong[0].verdict == verdict
    assert wrong[0].who == who
    assert wrong[0].mend


UNKNOWN = [
    ("cord and feed", {"shore_cord_size": "?", "shore_feed_length": "?"}),
    ("main breaker", {"shore_main_rating": "", "ac_A01_breaker": ""}),
    ("leakage protection", {"shore_leakage": "", "shore_leakage_trip": ""}),
    ("leakage protection", {"shore_leakage_trip": "?"}),
    ("leakage protection", {"shore_leakage_time": "?"}),
    ("polarity indicator", {"shore_polarity": ""}),
    ("galvanic isolation", {"shore_isolation": ""}),
    ("galvanic isolation", {"shore_isolator_rating": ""}),
    ("change between sources", {"shore_transfer": ""}),
    ("simultaneous load", {"shore_service": ""}),
    ("input current limit", {"shore_limit": ""}),
    ("wave", {"shore_wave": ""}),
    ("starting", {"inverter_surge": ""}),
    ("warm air", {"shore_air": ""}),
    ("neutral and safety ground", {"shore_inverter_bond": "", "shore_panel_bond": ""}),
]


@pytest.mark.parametrize(("question", "texts"), UNKNOWN)
def test_what_is_not_known_is_asked_and_not_found(question, texts):
    plan = changed(**texts)
    answer = found(plan, question)
    assert answer.verdict == Verdict.NOT_KNOWN
    assert any(not part.weighs and part.words for part in answer.parts)
    assert shore_findings(plan) == []


def test_a_permanent_join_is_stop_now_and_said_once():
    plan = changed(shore_inverter_bond="always")
    (one,) = [one for one in findings_of(plan) if one.severity == Severity.STOP_NOW]
    assert one.who == Who.LICENSED
    seen = changed(shore_inverter_bond="always", looks_bond="yes")
    grave = [one for one in findings_of(seen) if one.severity == Severity.STOP_NOW]
    assert [one.where for one in grave] == ["looks.bond"]


def test_what_a_look_found_hides_nothing_else():
    plan = changed(shore_inverter_bond="never", looks_bond="yes")
    assert {one.where for one in findings_of(plan)} >= {"looks.bond", "shore.panel_bond"}


def test_the_states_of_each_source():
    states = {str(one.state.supply): one.part.verdict for one in source_states(SHORE)}
    assert states == {"shore": Verdict.FINE, "inverter": Verdict.FINE}
    plan = changed(shore_isolation="isolation transformer", shore_generator_bond="own")
    names = [str(one.state.supply) for one in source_states(plan.shore)]
    assert names == ["isolation transformer", "inverter", "generator"]


def test_an_isolation_transformer_near_the_inlet_stands_in_for_leakage_protection():
    near = {"shore_isolation": "isolation transformer", "shore_transformer_rating": "3600 VA",
            "shore_leakage": "no", "shore_leakage_trip": "", "shore_polarity": "no"}  # fmt: skip
    plan = changed(**near, shore_transformer_distance="2 m")
    assert found(plan, "leakage protection").verdict == Verdict.FINE
    assert found(plan, "polarity indicator").verdict == Verdict.FINE
    brings = isolation_answer(plan.shore).transformer
    assert brings is not None
    assert brings.exempts
    far = changed(**near, shore_transformer_distance="5 m")
    assert found(far, "leakage protection").verdict == Verdict.STOP


def test_two_legs_and_their_neutral():
    """Leg 1: 3600 W / 120 V = 30 A; leg 2: 1200 W = 10 A. Opposed 20 A, one phase 40 A."""
    rows = ({"id": "A01", "appliances": "kettle 3600 W", "leg": "1"},
            {"id": "A02", "appliances": "heater 1200 W", "leg": "2"})  # fmt: skip
    shore = {"service": "50 A 125/250 V", "cord_length": "15 m", "cord_size": "6 AWG"}
    plan = boat(shore, *rows).shore
    answer = load_answer(plan, plan.planned)
    assert answer is not None
    assert [side.now.current for side in answer.sides] == pytest.approx([30, 10, 20])
    assert answer.neutral == pytest.approx(20)
    assert "leg 1" in answer.sentence
    lost = lopsided(plan, Amp(30.0), Amp(10.0))
    assert lost is not None
    assert lost[0] > 0 > lost[1]
    same = boat({**shore, "one_phase": "yes"}, *rows).shore
    summed = load_answer(same, same.planned)
    assert summed is not None
    assert summed.neutral == pytest.approx(40)


def test_a_neutral_of_one_phase_can_be_too_much():
    rows = ({"id": "A01", "appliances": "oven 4000 W", "leg": "1"},
            {"id": "A02", "appliances": "hob 4000 W", "leg": "2"})  # fmt: skip
    plan = boat({"service": "50 A 125/250 V", "one_phase": "yes"}, *rows)
    (one,) = [one for one in shore_findings(plan) if "no breaker watches it" in one.words]
    assert (one.verdict, one.rule.name) == (Verdict.STOP, "neutral")
    assert one.mend.startswith("Both legs are one phase")


def test_a_smaller_dock_or_main_governs():
    plan = changed(shore_dock="50 A 120 V", shore_main_rating="20 A")
    answer = load_answer(plan.shore, plan.shore.planned)
    assert answer is not None
    assert answer.service.rating == pytest.approx(20)
    assert answer.worst.now.verdict == Verdict.STOP


def test_the_input_limit_leaves_what_is_left():
    """80 % of 30 A less kettle, heater, dehumidifier, laptop and tool charger: 24 − 18.25 A."""
    answer = load_answer(SHORE, SHORE.planned)
    assert answer is not None
    assert answer.limit == pytest.approx(24 - 18.25)
    wide = changed(shore_limit="20 A")
    words = [part.words for part in found(wide, "input current limit").parts]
    assert any("main can open" in one for one in words)
    assert shore_findings(wide)[0].severity == Severity.NOTE
    assert found(changed(shore_limit="6 A"), "input current limit").verdict == Verdict.FINE


def test_what_starts_behind_the_inverter():
    """Two drills of 600 W start at three times that: 3600 W at once, 2400 W in turn."""
    plan = changed(ac_A06_appliances="drill 600 W, grinder 600 W")
    answer = inverter_ac(plan)
    assert "one after another, 2400 W" in answer.starting
    assert "3600 W" in answer.starting
    assert answer.gives == pytest.approx(1200)
    assert shore_findings(plan) == []


def test_a_generator_for_what_is_planned():
    """2 870 W / 0.8 = 3 588 W by running; starting 2 870 − 280 + 7 × 280 = 4 550 W governs."""
    answer = generator_answer(SHORE)
    assert answer is not None
    assert [one.least for one in answer.demands] == pytest.approx([3587.5, 4550])
    small, large = changed(shore_generator_rating="4 kW"), changed(shore_generator_rating="8 kW")
    assert found(small, "generator").verdict == Verdict.SHOULD
    assert found(large, "generator").verdict == Verdict.FINE


def test_plugs_that_cannot_be_crossed():
    verdicts = {name: one.verdict for name, one in crossings(SHORE)}
    assert "30 A 120 V" not in verdicts
    assert {name for name, one in verdicts.items() if one == Verdict.STOP} == {
        "16 A 230 V", "32 A 230 V", "63 A 230 V",
    }  # fmt: skip


def test_bad_input_is_named():
    plan = boat({"transfer": "switch"}, {"id": "A01", "breaker": "-15 A"},
                {"id": "A02", "appliances": "kettle", "plates": "charger"})  # fmt: skip
    told = {one.where: str(one) for one in plan.problems}
    assert set(told) == {"shore.transfer", "ac.A01.breaker", "ac.A02.appliances", "ac.A02.plates"}
    assert "no source" in told["shore.transfer"]
    assert "-15 A" in told["ac.A01.breaker"]
    with pytest.raises(Problem, match="600 V"):
        boat({"service": "600 V"})
    named = boat({"charger_circuit": "A77"})
    assert [one.where for one in named.problems] == ["shore.charger_circuit"]


def test_an_empty_plan_is_asked_nothing():
    plan = plan_of({"format": 1, "boat": {}})
    assert shore_asked(plan) == ()
    assert report_of(plan)["shore"] == {"problem": "The plan states no shore power."}


def test_the_report_says_the_same():
    told = report_of(PLAN)["shore"]
    assert told["watts"] == 2870
    assert told["apart"] == ["microwave and kettle"]
    assert told["not_abroad"] == ["kettle", "dehumidifier", "heater", "microwave"]
    assert told["passes_on_abroad"] == ["charger"]
    assert "fixed 120 V" in told["fixed_abroad"]
    assert set(told["questions"].values()) == {"within limit"}
