"""Findings about charging: each fires on the boat that has it, and on no other.

Limits from the tables of charging: flooded lead 0.25 A and lithium 0.5 A for each ampere-hour; a
tenth of the bank's ampere-hours for a charger is common practice; lead is absorbed at 14.4 V.
"""

import pytest

from engine.check.charging import FILLING, charging_findings
from engine.check.findings import findings_of
from engine.finding import Severity, Verdict, Who
from engine.plan.edit import with_row, with_value
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.plan.read import plan_of
from engine.solar.panel import CHARGING


def boat(*sources, **values):
    """Return a bare boat with some sources."""
    document = {"format": 1, "boat": {"volts": "12 V"}}
    for row in sources:
        document, _ = with_row(document, "sources", row)
    for path, text in values.items():
        document = with_value(document, path.replace("__", "."), text)
    return plan_of(document)


NEW = {"bank__capacity": "200 Ah", "bank__age": "new", "bank__temperature": "25 degC"}
LEAD = {"bank__chemistry": "flooded", **NEW}
LITHIUM = {"bank__chemistry": "lithium", **NEW}


def rules(plan):
    return [one.rule.name for one in charging_findings(plan)]


@pytest.mark.parametrize("document", [made_up_document(), {"format": 1}])
def test_a_boat_whose_sources_fit_has_none(document):
    assert charging_findings(plan_of(document)) == []


def test_the_planned_boat_keeps_its_one_finding():
    found = findings_of(plan_of(made_up_document()))
    assert [one.where for one in found if one.severity != Severity.NOTE] == ["circuits.D14"]


@pytest.mark.parametrize(
    ("amperes", "rule"),
    [("51 A", ["charge limit"]), ("50 A", []), ("20 A", []), ("19 A", ["charger's size"])],
)
def test_a_charger_fits_the_bank(amperes, rule):
    """200 Ah of flooded lead: 50 A at most, 20 A at least."""
    assert rules(boat({"kind": "shore", "current": amperes}, **LEAD)) == rule
    assert rules(boat({"kind": "shore", "current": amperes})) == []
    off = {"kind": "shore", "current": amperes, "counted": "no"}
    assert rules(boat(off, **LEAD)) == []


def test_a_tested_bank_is_as_large_as_it_was_tested():
    plan = boat({"kind": "shore", "current": "40 A"}, **LEAD, bank__health="60 %")
    assert rules(plan) == ["charge limit"]
    assert "should see 30 A, for its 120 Ah" in charging_findings(plan)[0].words


@pytest.mark.parametrize("known", [{"limit": "50 A"}, {"read": "47 A"}])
def test_an_alternator_feeds_lithium_held_to_something(known):
    free = {"kind": "alternator", "current": "90 A"}
    (found,) = charging_findings(boat(free, **LITHIUM))
    assert found.rule.name == "alternator's limit"
    assert (found.severity, found.where) == (Severity.BEFORE_LEAVING, "sources.S01")
    assert rules(boat({**free, **known}, **LITHIUM)) == []
    assert rules(boat(free, **{**LEAD, "bank__capacity": "400 Ah"})) == []


@pytest.mark.parametrize(
    ("volts", "panels", "strings", "verdict"),
    [
        ("14 V", "1", "1", Verdict.STOP),
        ("18 V", "1", "1", None),
        ("21 V", "2", "2", None),
        ("24 V", "1", "1", Verdict.SHOULD),
        ("18 V", "2", "1", Verdict.SHOULD),
        ("7 V", "2", "1", Verdict.STOP),
    ],
)
def test_panels_fit_a_plain_controller(volts, panels, strings, verdict):
    row = {"kind": "solar", "watts": "100 W", "controller": "plain", "panel_volts": volts,
           "panels": panels, "strings": strings}  # fmt: skip
    found = charging_findings(boat(row, **LEAD))
    assert [(one.rule.name, one.verdict) for one in found] == (
        [("string's volts", verdict)] if verdict else []
    )
    assert rules(boat({**row, "controller": "tracking"}, **LEAD)) == []
    assert rules(boat(row)) == []


def test_strings_have_as_many_panels_and_volts_an_owner_may_touch():
    row = {"kind": "solar", "watts": "1 kW", "panels": "5", "strings": "2", "panel_volts": "31 V"}
    found = charging_findings(boat(row, **LEAD))
    names = [one.rule.name for one in found]
    assert names == ["strings alike", "string above 60 V", "charge limit, together"]
    assert found[1].who == Who.LICENSED
    small = {**row, "watts": "600 W", "panels": "4", "panel_volts": "30 V"}
    assert rules(boat(small, **LEAD)) == []


def limits(*sources, **values):
    found = charging_findings(boat(*sources, **values))
    return [(one.where, one.severity) for one in found if "charge limit" in one.rule.name]


def test_the_label_of_the_bank_holds_for_every_source():
    """A label of 22 A: a charger of 40 A and an alternator that reads 50 A are over it."""
    label = {**LITHIUM, "bank__most_charge": "22 A"}
    assert limits({"kind": "shore", "current": "40 A"}, **label) == [
        ("sources.S01", Severity.SHOULD)
    ]
    assert limits({"kind": "alternator", "read": "50 A"}, **label) == [
        ("sources.S01", Severity.SHOULD)
    ]
    assert limits({"kind": "alternator", "read": "22 A"}, **label) == []
    found = charging_findings(plan_of(made_up_document(AS_FOUND)))
    assert [one.where for one in found] == ["sources.S01"]
    assert "22 A, by its label" in found[0].words


def test_what_charges_at_once_is_held_to_the_limit_together():
    """15 A of alternator and 13.2 V × 15 A = 198 W of sun are 30 A; a charger stays ashore."""
    label = {**LITHIUM, "bank__most_charge": "22 A"}
    engine, sun = {"kind": "alternator", "read": "15 A"}, {"kind": "solar", "watts": "198 W"}
    together = charging_findings(boat(engine, sun, **label))
    assert [one.where for one in together] == ["bank.most_charge"]
    assert "up to 30 A" in together[0].words
    assert pytest.approx(CHARGING) == FILLING * 12
    ashore = {"kind": "shore", "current": "20 A"}
    assert limits(engine, ashore, **label) == []
    diesel = {"kind": "generator", "watts": "3 kW"}
    assert limits(engine, ashore, diesel, **label) == [("bank.most_charge", Severity.NOTE)]


def test_cold_lithium_should_see_less():
    """200 Ah at 5 degC hold 0.93 of it and take 0.2 A for each: a charger of 60 A is too much."""
    charger = {"kind": "shore", "current": "60 A"}
    assert limits(charger, **LITHIUM) == []
    cold = charging_findings(boat(charger, **{**LITHIUM, "bank__temperature": "5 degC"}))
    assert "in the cold: cells at 5 °C take at most 0.2 A" in cold[0].words
    none = {**LITHIUM, "bank__temperature": "-2 degC"}
    assert limits(charger, **none) == []


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ({}, "the kind of source"),
        ({"kind": "solar"}, "its watts"),
        ({"kind": "alternator"}, "its amperes"),
        ({"kind": "shore"}, "its amperes"),
        ({"kind": "wind", "watts": "400 W"}, "how far its rotor is across"),
        ({"kind": "water"}, "how far its rotor is across"),
        ({"kind": "generator", "current": "40 A"}, "its watts"),
    ],
)
def test_a_source_without_its_figure_is_not_known(row, words):
    (found,) = charging_findings(boat(row))
    assert found.verdict == Verdict.NOT_KNOWN
    assert words in found.words
    assert rules(boat({**row, "counted": "no"})) == []


def test_what_is_read_or_cannot_be_read_is_no_unknown():
    assert rules(boat({"kind": "alternator", "read": "40 A"})) == []
    assert rules(boat({"kind": "solar", "watts": "three"})) == []


def test_an_engine_that_never_charges_leaves_something_else_to():
    engine = {"kind": "alternator", "current": "60 A"}
    (found,) = charging_findings(boat(engine, policy__never="yes"))
    assert (found.where, found.verdict) == ("policy.never", Verdict.STOP)
    assert rules(boat(engine)) == []
    sun = {"kind": "solar", "watts": "100 W"}
    assert rules(boat(engine, sun, policy__never="yes")) == []
    assert "charging" in rules(boat(engine, {**sun, "counted": "no"}, policy__never="yes"))
