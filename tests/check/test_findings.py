"""What needs doing: every finding with its way out, gravest first."""

import pytest

from engine.check.doubts import alone, doubts_of
from engine.check.findings import findings_of
from engine.check.looked import FOUND, looked
from engine.finding import Severity, Verdict, Who
from engine.plan.document import new_document
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of

KETTLE = {"id": "L01", "name": "Kettle", "supply": "inverter", "draw": "800 W"}


def found(chosen=(), **parts):
    return findings_of(plan_of({"format": 1, **parts}), frozenset(chosen))


def test_an_empty_plan_has_none():
    assert findings_of(plan_of(new_document())) == ()


@pytest.mark.parametrize(("look", "stated"), FOUND.items())
def test_a_look_that_turned_something_up(look, stated):
    question, said = look
    (one,) = found(looks={question: said})
    assert (one.severity, one.words, one.mend, one.who) == stated
    assert one.where == f"looks.{question}"


def test_a_look_that_found_nothing_or_was_not_taken():
    looks = {"fuse": "yes", "inlet": "no", "posts": "unknown", "stack": "4", "bond": "no"}
    assert looked(plan_of({"format": 1, "looks": looks})) == []
    assert found(looks={"inlet": "yes"})[0].who == Who.LICENSED


def test_a_circuit_with_an_unknown_part_is_not_a_finding_but_a_broken_rule_is():
    circuit = {"id": "D01", "name": "Pump", "run": "10 ft", "current": "20 A", "size": "10 AWG"}
    (drop,) = found(circuits=[circuit], boat={"tape": "0 m"})
    assert (drop.where, drop.verdict, drop.severity) == (
        "circuits.D01", Verdict.SHOULD, Severity.SHOULD,
    )  # fmt: skip
    assert "D01 Pump" in drop.words
    assert drop.mend


def test_more_than_the_inverter_s_rating():
    (one,) = found(loads=[KETTLE], inverter={"rating": "500 W", "surge": "2000 W"})
    assert (one.where, one.severity) == ("inverter", Severity.BEFORE_LEAVING)
    assert "800 W" in one.words


def test_more_in_starting_than_its_surge():
    (one,) = found(
        loads=[{**KETTLE, "surge": "3000 W"}], inverter={"rating": "1000 W", "surge": "2000 W"}
    )
    assert (one.where, one.verdict) == ("inverter", Verdict.SHOULD)


def test_no_operating_point():
    small = {"chemistry": "flooded", "capacity": "10 Ah", "resistance": "200 mohm"}
    (one,) = found(loads=[KETTLE], inverter={"rating": "1000 W"}, bank=small)
    assert one.severity == Severity.BEFORE_LEAVING
    assert "No operating point" in one.words


def test_a_cut_off_that_trips_above_the_reserve():
    tired = {"chemistry": "flooded", "capacity": "100 Ah", "health": "60 %", "reserve": "10 %"}
    feed = {"id": "D01", "run": "5 m", "current": "80 A", "size": "6 AWG", "protection": "100 A",
            "allowed": "other"}  # fmt: skip
    all_found = found(
        loads=[KETTLE], inverter={"rating": "1000 W", "circuit": "D01"}, bank=tired,
        circuits=[feed], boat={"tape": "0 m"},
    )  # fmt: skip
    trips = [one for one in all_found if one.where == "inverter"]
    assert len(trips) == 1
    assert "cut-off trips" in trips[0].words
    assert trips[0].severity == Severity.SHOULD


def test_the_gravest_come_first():
    all_found = found(
        looks={"live": "yes", "posts": "no"},
        circuits=[{"id": "D01", "run": "10 ft", "current": "20 A", "size": "10 AWG"}],
        loads=[KETTLE],
        inverter={"rating": "500 W"},
    )
    ranks = [list(Severity).index(one.severity) for one in all_found]
    assert ranks == sorted(ranks)
    assert len(all_found) == 4


def test_the_guess_that_spreads_a_day_most():
    """4 A spread × 10 h × 0.5 = 20; 2 h × 4 A × 0.5 = 4; 0.2 × 10 h × 4 A = 8 Ah."""
    fridge = {"id": "L01", "draw": "4 A (2 to 6)", "hours_anchor": "10 h (9 to 11)",
              "duty": "0.5 (0.4 to 0.6)", "draw_by": "nameplate"}  # fmt: skip
    sure = {"id": "L02", "draw": "9 A", "hours_anchor": "9 h"}
    unknown = {"id": "L03", "draw": "5-9 A"}
    plan = plan_of({"format": 1, "loads": [fridge, sure, unknown]})
    doubts = doubts_of(plan, "anchor", 9)
    assert [one.part for one in doubts] == ["draw", "duty", "hours"]
    assert [one.spread for one in doubts] == pytest.approx([20.0, 8.0, 4.0])
    assert doubts_of(plan, "anchor", 1)[0].known_by == "nameplate"


def days(**bank):
    loads = [{"id": "L01", "draw": "2 A", "hours_anchor": "10 h"}]
    bank = {"temperature": "25 degC", **bank}
    return alone(plan_of({"format": 1, "loads": loads, "bank": bank}), "anchor")


def test_days_alone():
    """200 Ah down to half is 100 Ah; 20 Ah a day times the median of habits, about 1.006."""
    sure = days(chemistry="agm", capacity="200 Ah", health="100 %")
    assert sure is not None
    assert sure.likely == pytest.approx(5.0, rel=0.01)
    assert sure.low < sure.likely < sure.high
    unknown = days(chemistry="agm", capacity="200 Ah")
    assert unknown is not None
    assert unknown.low == pytest.approx(sure.low * 0.6)
    assert unknown.high == pytest.approx(sure.high)
    assert unknown.known_by == "unknown"
    assert days(chemistry="agm", capacity="200 Ah", age="new") is not None
    new = days(chemistry="agm", capacity="200 Ah", age="new")
    assert new is not None
    assert new.likely == pytest.approx(sure.likely)
    assert new.known_by == "default"


def test_days_alone_not_known():
    assert days() is None
    assert days(chemistry="agm") is None
    bank = {"chemistry": "agm", "capacity": "200 Ah"}
    assert alone(plan_of({"format": 1, "bank": bank}), "anchor") is None


def test_the_made_up_boat_s_planned_bank():
    """Its plan, section 3: 224 Ah usable of 280; 1.7 days at 132 Ah, 1.5 at the median.

    At 20 °C lithium holds 1.3 % less.
    """
    found_days = alone(plan_of(made_up_document()), "anchor")
    assert found_days is not None
    assert found_days.likely == pytest.approx(224 * 0.9872 / 145.6, rel=0.01)
