"""The made-up boat as found: every fault printed in her survey is found from her data.

*Wherrilow*'s plan, section 7: the as-found conductors with their drops, and 18 survey findings.
Section 8 and the fault of a permanent join are the licensed person's. Every figure is invented.
"""

from itertools import pairwise

import pytest

from engine.check.circuits import answers_of
from engine.check.findings import findings_of
from engine.finding import Severity, Verdict, Who
from engine.plan.edit import with_value
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.plan.read import plan_of

PLAN = plan_of(made_up_document(AS_FOUND))

DROPS = [
    ("D01", 1.9), ("D02", 2.4), ("D03", 16.1), ("D04", 2.6), ("D05", 7.7), ("D06", 1.3),
    ("D07", 2.2), ("D08", 3.8), ("D09", 1.9), ("D10", 4.1), ("D11", 2.3), ("D12", 1.7),
    ("D13", 0.5), ("D14", 7.7), ("D16", 14.3), ("D17", 6.5), ("D18", 10.0), ("D19", 0.7),
    ("D20", 0.7), ("D21", 2.1), ("D22", 2.2),
]  # fmt: skip

SURVEY = [
    ("F01", "looks.stack", "stud", Severity.BEFORE_LEAVING),
    ("F02", "circuits.D02", "protection fitted", Severity.STOP_NOW),
    ("F03", "circuits.D20", "protection fitted", Severity.STOP_NOW),
    ("F04", "circuits.D11", "label", Severity.BEFORE_LEAVING),
    ("F05", "circuits.D03", "drop", Severity.SHOULD),
    ("F06", "circuits.D05", "joints", Severity.SHOULD),
    ("F07", "looks.standing", "always live", Severity.SHOULD),
    ("F08", "looks.selector", "looks", Severity.BEFORE_LEAVING),
    ("F09", "looks.inlet", "looks", Severity.STOP_NOW),
    ("F10", "looks.leakage", "looks", Severity.BEFORE_LEAVING),
    ("F11", "looks.polarity", "looks", Severity.BEFORE_LEAVING),
    ("F12", "looks.bond", "one bond", Severity.STOP_NOW),
    ("F13", "looks.isolator", "looks", Severity.SHOULD),
    ("F14", "looks.lead", "looks", Severity.STOP_NOW),
    ("F15", "looks.backbone", "looks", Severity.SHOULD),
    ("F16", "circuits.D06", "joints", Severity.SHOULD),
    ("F17", "looks.unlabelled", "looks", Severity.BEFORE_LEAVING),
    ("F18", "looks.posts", "looks", Severity.BEFORE_LEAVING),
]
LICENSED = {"F09", "F10", "F11", "F12", "F13", "F14"}

MENDED = {
    "boat.revision": "planned",
    **{f"looks.{name}": "no" for name in ("inlet", "live", "selector", "unlabelled", "backbone",
                                          "lead", "bond")},
    **{f"looks.{name}": "yes" for name in ("fuse", "posts", "vent", "leakage", "polarity",
                                           "isolator")},
    "looks.stack": "2", "looks.standing": "0.1 A",
    "circuits.D01.joints": "0.4 mohm", "circuits.D01.size": "2/0 AWG",
    "circuits.D01.protection": "250 A", "circuits.D01.series": "class T",
    "circuits.D02.series": "class T", "circuits.D02.protection": "177.5 A",
    "circuits.D02.to_protection": "10 cm",
    "circuits.D03.size": "1/0 AWG", "circuits.D03.read_drop": "0.52 V",
    "circuits.D05.size": "10 AWG", "circuits.D05.read_drop": "0.25 V",
    "circuits.D06.read_drop": "0.16 V",
    "circuits.D11.protection": "7.5 A", "circuits.D11.series": "magnetic breaker",
    "circuits.D14.size": "8 AWG", "circuits.D16.size": "10 AWG", "circuits.D18.size": "12 AWG",
    "circuits.D20.series": "class T", "circuits.D20.protection": "15 A",
    "circuits.D20.to_protection": "5 cm",
    "start.joined": "converter", "sources.S01.limit": "22 A",
    "bank.most_charge": "",
    "shore.leakage": "yes", "shore.isolation": "galvanic isolator", "shore.inverter_bond": "own",
}  # fmt: skip


def test_she_is_whole_and_flagged():
    assert PLAN.made_up
    assert PLAN.problems == ()
    assert PLAN.boat.revision == "as found"


@pytest.mark.parametrize(("ident", "percent"), DROPS)
def test_a_circuit_drops_what_is_printed(ident, percent):
    answer = next(one for one in answers_of(PLAN) if one.circuit.ident == ident)
    assert answer.wire is not None
    assert answer.wire.share.likely * 100 == pytest.approx(percent, abs=0.0500001 + 0.03)


@pytest.mark.parametrize(("fault", "where", "rule", "severity"), SURVEY)
def test_a_fault_of_the_survey_is_found(fault, where, rule, severity):
    found = [one for one in findings_of(PLAN) if (one.where, one.rule.name) == (where, rule)]
    assert len(found) == 1
    assert found[0].severity == severity
    assert found[0].words
    assert found[0].mend
    assert (found[0].who == Who.LICENSED) == (fault in LICENSED)


def test_the_figures_of_the_survey_stand_in_its_words():
    words = {(one.where, one.rule.name): one.words for one in findings_of(PLAN)}
    assert "16.1 %" in words["circuits.D03", "drop"]
    assert "1.46 V read" in words["circuits.D05", "joints"]
    assert "20 A where its label asks for 7.5 A" in words["circuits.D11", "label"]
    assert "0.38 A read" in words["looks.standing", "always live"]
    assert "7 ring terminals" in words["looks.stack", "stud"]


def test_the_switch_that_leaves_both_banks_joined_is_found_beside_the_survey():
    """Her selector switch stays on “both”: invented, as the rest of her start bank."""
    (found,) = [one for one in findings_of(PLAN) if one.where.startswith(("start", "bank."))]
    assert (found.where, found.rule.name, found.severity) == (
        "start.joined", "parted", Severity.BEFORE_LEAVING,
    )  # fmt: skip
    assert "the engine does not start" in found.words


def test_the_usb_outlets_are_on_the_line():
    answer = next(one for one in answers_of(PLAN) if one.circuit.ident == "D18")
    assert answer.verdict == Verdict.CANNOT_SAY


def test_mended_one_by_one_nothing_is_left_but_the_pilot():
    document = made_up_document(AS_FOUND)
    counts = [len(findings_of(plan_of(document)))]
    for path, text in MENDED.items():
        document = with_value(document, path, text)
        counts.append(len(findings_of(plan_of(document))))
    assert all(after <= before + 1 for before, after in pairwise(counts))
    left = findings_of(plan_of(document))
    assert [(one.where, one.verdict) for one in left] == [("circuits.D14", Verdict.CANNOT_SAY)]
