"""The report of a plan: its keys are a contract, whatever the plan holds."""

import json

import pytest

from engine.check.report import as_lines, report_of
from engine.plan.document import new_document
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of

UNREADABLE = {
    "format": 1,
    "boat": {"volts": "many"},
    "loads": [{"id": "L01", "draw": "3 kg", "hours_anchor": "always"}],
    "circuits": [{"id": "D01", "run": "four", "current": "x", "size": "thick"}],
    "bank": {"chemistry": "agm", "capacity": "big"},
    "inverter": {"rating": "strong"},
}
DAY = {"likely", "low", "high", "median", "p10", "p90"}
CIRCUIT = {"drop", "share", "verdict", "governing"}
INVERTER = {"watts", "dc_watts", "dc_current", "time", "lossless_time", "cut_off"}


@pytest.mark.parametrize("document", [new_document(), made_up_document(), UNREADABLE])
def test_the_keys_are_always_there(document):
    found = json.loads(json.dumps(report_of(plan_of(document)), allow_nan=False))
    for condition in ("anchor", "passage", "dock", "unattended"):
        assert set(found["day_use"][condition]) >= DAY
        assert all(isinstance(found["day_use"][condition][key], float | int) for key in DAY)
    assert set(found["circuits"]) == {row["id"] for row in document.get("circuits", [])}
    assert all(set(circuit) >= CIRCUIT for circuit in found["circuits"].values())
    assert isinstance(found["findings"], list)
    assert list(as_lines(found))


def test_an_empty_plan():
    found = report_of(plan_of(new_document()))
    assert found["day_use"]["anchor"]["likely"] == 0
    assert found["inverter"] == {"problem": "The plan has no inverter."}
    assert found["days_alone"]["anchor"] is None
    assert (found["circuits"], found["findings"], found["problems"]) == ({}, [], [])


def test_what_cannot_be_read_is_listed_and_not_known():
    found = report_of(plan_of(UNREADABLE))
    assert [row["where"] for row in found["problems"]] == [
        "boat.volts", "loads.L01.draw", "loads.L01.hours_anchor", "circuits.D01.run",
        "circuits.D01.current", "circuits.D01.size", "bank.capacity", "inverter.rating",
    ]  # fmt: skip
    assert found["circuits"]["D01"]["drop"] is None
    assert found["circuits"]["D01"]["verdict"] == "not known"
    assert found["day_use"]["anchor"]["missing"] == ["L01: hours at anchor"]


def test_the_made_up_boat_s_inverter():
    inverter = report_of(plan_of(made_up_document()))["inverter"]
    assert set(inverter) >= INVERTER
    assert 0 < inverter["time"] < inverter["lossless_time"]


def test_an_inverter_with_no_bank():
    parts = {"loads": [{"id": "L01", "supply": "inverter", "draw": "500 W"}],
             "inverter": {"rating": "1 kW"}}  # fmt: skip
    inverter = report_of(plan_of({"format": 1, **parts}))["inverter"]
    assert inverter["time"] is None
    assert inverter["dc_watts"] > 500
    assert inverter["missing"]


def test_lines_for_people():
    lines = list(as_lines({"a": {"b": 1.23456, "c": None}, "d": [], "e": [{"f": 1}], "g": "h"}))
    assert lines == ["a:", "  b: 1.235", "  c: not known", "d: none", "e: f 1", "g: h"]
