"""What is asked of the bank and its join to the start bank: each rule broken, open and met."""

import pytest

from engine.batteries.tables import ABSORB
from engine.check.bank_asked import bank_asked, bank_findings
from engine.check.findings import findings_of
from engine.finding import Severity, Verdict
from engine.plan.read import plan_of

FLOODED = {"chemistry": "flooded", "capacity": "200 Ah"}
LITHIUM = {"chemistry": "lithium", "capacity": "200 Ah"}
DARK = {"id": "L01", "name": "Windlass", "draw": "80 A", "surge": "160 A", "hours_anchor": "0.1 h"}


def plan(bank=None, start=None, loads=()):
    return plan_of({"format": 1, "bank": bank or {}, "start": start or {}, "loads": list(loads)})


def verdict(where, **parts):
    return next(one.verdict for one in bank_asked(plan(**parts)) if one.where == where)


def only(**parts):
    (found,) = bank_findings(plan(**parts))
    assert found.words
    assert found.mend
    assert found in findings_of(plan(**parts))
    return found


def test_nothing_stated_nothing_asked():
    assert bank_asked(plan()) == ()
    assert bank_findings(plan(bank=FLOODED)) == []
    assert verdict("start.joined", bank=FLOODED) == Verdict.NOT_KNOWN


@pytest.mark.parametrize(
    ("degrees", "stop", "expected"),
    [
        ("-3 degC", "", (Verdict.STOP, Severity.BEFORE_LEAVING)),
        ("-3 degC", "no", (Verdict.STOP, Severity.BEFORE_LEAVING)),
        ("-3 degC", "yes", (Verdict.SHOULD, Severity.SHOULD)),
        ("2 degC", "yes", (Verdict.SHOULD, Severity.SHOULD)),
        ("2 degC", "no", (Verdict.SHOULD, Severity.SHOULD)),
        ("20 degC", "no", (Verdict.SHOULD, Severity.SHOULD)),
    ],
)
def test_cold_lithium(degrees, stop, expected):
    found = only(bank={**LITHIUM, "temperature": degrees, "cold_stop": stop})
    assert (found.where, found.rule.name) == ("bank.cold_stop", "cold charge")
    assert (found.verdict, found.severity) == expected


def test_lithium_that_is_warm_or_whose_sensor_is_not_known():
    stopped = {**LITHIUM, "temperature": "3 degC", "cold_stop": "yes"}
    assert verdict("bank.cold_stop", bank=stopped) == Verdict.FINE
    assert bank_findings(plan(bank=stopped)) == []
    assert verdict("bank.cold_stop", bank=LITHIUM) == Verdict.NOT_KNOWN


def test_cold_lead_may_be_charged_but_not_frozen_lead():
    assert verdict("bank.cold_stop", bank={**FLOODED, "temperature": "-5 degC"}) == Verdict.FINE
    found = only(bank={**FLOODED, "temperature": "-25 degC"})
    assert found.verdict == Verdict.STOP


@pytest.mark.parametrize(
    ("bank", "reserve", "deep"),
    [(FLOODED, "50 %", False), (FLOODED, "40 %", False), (FLOODED, "30 %", True),
     (LITHIUM, "10 %", False), (LITHIUM, "0 %", True)],
)  # fmt: skip
def test_a_reserve_line_deeper_than_common(bank, reserve, deep):
    found = bank_findings(plan(bank={**bank, "reserve": reserve}))
    assert [one.where for one in found] == (["bank.reserve"] if deep else [])
    if deep:
        assert "cycles" in found[0].words


def test_unlike_batteries_in_one_bank():
    mixed = {**FLOODED, "strings": "2", "alike": "no"}
    assert only(bank=mixed).rule.name == "alike"
    assert verdict("bank.alike", bank={**mixed, "alike": "yes"}) == Verdict.FINE
    assert verdict("bank.alike", bank={**mixed, "alike": ""}) == Verdict.NOT_KNOWN
    assert verdict("bank.alike", bank=FLOODED) == Verdict.FINE


@pytest.mark.parametrize(
    ("most", "expected"),
    [("200 A", Verdict.FINE), ("100 A", Verdict.SHOULD), ("50 A", Verdict.STOP),
     ("", Verdict.NOT_KNOWN)],
)  # fmt: skip
def test_the_largest_discharge(most, expected):
    bank = {**FLOODED, "most_discharge": most}
    assert verdict("bank.most_discharge", bank=bank, loads=[DARK]) == expected
    assert verdict("bank.most_discharge", bank=bank) == Verdict.NOT_KNOWN


@pytest.mark.parametrize(
    ("how", "parts", "expected"),
    [
        ("selector", "no", Verdict.STOP),
        ("selector", "", Verdict.NOT_KNOWN),
        ("selector", "yes", Verdict.FINE),
        ("relay", "no", Verdict.STOP),
        ("relay", "", Verdict.NOT_KNOWN),
        ("relay", "yes", Verdict.FINE),
        ("always", "yes", Verdict.STOP),
        ("converter", "", Verdict.FINE),
        ("apart", "", Verdict.FINE),
    ],
)
def test_how_the_banks_are_joined(how, parts, expected):
    start = {"joined": how, "parts": parts, "converter": "30 A"}
    assert verdict("start.joined", start=start) == expected
    found = bank_findings(plan(start=start))
    if expected is Verdict.FINE:
        assert found == []
        return
    assert "flatten the good one" in found[0].words
    assert "the engine does not start" in found[0].words
    assert found[0].mend


@pytest.mark.parametrize(
    ("house", "other", "fits"),
    [("flooded", "flooded", True), ("agm", "flooded", True), ("flooded", "gel", False),
     ("lithium", "flooded", False), ("flooded", "lithium", False), ("gel", "agm", True)],
)  # fmt: skip
def test_both_banks_on_the_same_volts(house, other, fits):
    """Fits where the first's likely volts lie in the second's range, both lead: as printed."""
    low, _, high = ABSORB[other]
    assert ("lithium" not in {house, other} and low <= ABSORB[house][1] <= high) == fits
    parts = {
        "bank": {"chemistry": house, "capacity": "200 Ah", "cold_stop": "yes"},
        "start": {"joined": "relay", "parts": "yes", "chemistry": other},
    }
    assert verdict("start.chemistry", **parts) == (Verdict.FINE if fits else Verdict.SHOULD)
    apart = {**parts, "start": {**parts["start"], "joined": "converter"}}
    assert verdict("start.chemistry", **apart) == Verdict.FINE


def test_both_banks_with_one_not_known():
    assert verdict("start.chemistry", bank=FLOODED) == Verdict.NOT_KNOWN
    half = {"chemistry": "agm"}
    assert verdict("start.chemistry", bank=FLOODED, start=half) == Verdict.NOT_KNOWN


def cold(**bank):
    (part,) = next(
        one.parts for one in bank_asked(plan(bank=bank)) if one.where == "bank.cold_stop"
    )
    return part


def test_a_frozen_lead_battery_is_never_charged():
    """Common practice: a discharged one freezes a little below 0 °C, and bursts when charged."""
    freezing = cold(**FLOODED, temperature="-2 degC")
    assert freezing.verdict == Verdict.FINE
    assert "never charge a frozen battery" in freezing.words
    assert "frozen" not in cold(**FLOODED, temperature="5 degC").words
    assert "frozen" not in cold(**LITHIUM, temperature="-2 degC", cold_stop="yes").words


def test_each_chemistry_has_its_own_note_on_cold():
    assert "lithium" not in str(cold(**FLOODED).rule.source)
    assert "lithium plates" in str(cold(**LITHIUM, cold_stop="yes").rule.source)
