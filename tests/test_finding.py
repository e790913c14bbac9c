"""Rules, demands and findings."""

from engine.finding import (
    Demand,
    Finding,
    Rule,
    Severity,
    Step,
    Verdict,
    Who,
    governing,
    meets,
)
from engine.source import Source, common_practice

SOURCE = Source("33 CFR", "in force", "183.425, table 5")
DROP = Rule("drop", "the loop loses little", SOURCE)
HEAT = Rule("heat", "the conductor stays cool", SOURCE)


def test_meets_forgives_the_last_bits_only():
    assert meets(0.1 + 0.2, 0.3)
    assert meets(-1.0, -1.0)
    assert meets(3.0 * (1 + 1e-10), 3.0)
    assert not meets(3.0 * (1 + 1e-8), 3.0)
    assert not meets(-1.0, -1.1)
    assert not meets(float("nan"), 1.0)


def test_the_greatest_demand_governs_and_the_first_of_equals():
    drop, heat = Demand(DROP, 4.0, "by drop"), Demand(HEAT, 0.75, "by heat")
    assert governing((heat, drop)) is drop
    assert governing((drop, Demand(HEAT, 4.0, "equal"))) is drop


def test_a_step_says_its_source_where_it_has_one():
    assert str(Step("a", "b × c", "6 m")) == "a: b × c = 6 m"
    assert str(Step("a", "b", "6 A", SOURCE)) == "a: b = 6 A [33 CFR, in force, 183.425, table 5]"


def test_a_finding_is_for_the_owner_unless_it_says_else():
    found = Finding("circuits.D05", Verdict.SHOULD, Severity.NOTE, "words", "mend", DROP)
    assert (found.who, found.working) == (Who.OWNER, ())
    assert str(found.verdict) == "should"


def test_a_source_prints_what_it_has():
    assert str(Source("Ohm's law", "", "direct current")) == "Ohm's law, direct current"
    assert str(common_practice("halves")).endswith("halves (typical)")
