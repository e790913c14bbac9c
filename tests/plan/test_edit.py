"""Edits make a new document, refuse what could not be read back, and never touch the old one."""

import json
from typing import Any

import pytest

from engine.plan.document import new_document, parsed, written
from engine.plan.edit import (
    moved_row,
    next_id,
    row_of,
    value_at,
    with_row,
    with_value,
    without_row,
)
from engine.plan.fields import MOST_ROWS
from engine.problem import Problem

START: dict[str, Any] = {
    "format": 1,
    "boat": {"name": "Gannet"},
    "loads": [{"id": "L01", "name": "lamp"}, {"id": "L02"}, {"id": "L03", "draw": "4 A"}],
}


@pytest.fixture(autouse=True)
def _the_old_one_stays():
    before = json.dumps(START)
    yield
    assert json.dumps(START) == before


def order(document):
    return [row["id"] for row in document["loads"]]


def test_a_value_is_set_changed_and_removed():
    changed = with_value(START, "boat.volts", "24 V")
    assert value_at(changed, "boat.volts") == "24 V"
    assert value_at(START, "boat.volts") == ""
    assert with_value(changed, "boat.volts", "")["boat"] == START["boat"]
    lamp = with_value(START, "loads.L01.draw", "0.5 A")
    assert value_at(lamp, "loads.L01.draw") == "0.5 A"
    assert lamp["loads"][1:] == START["loads"][1:]
    assert with_value(lamp, "loads.L01.draw", "") == START
    assert with_value({"format": 1}, "bank.charge", "50 %")["bank"] == {"charge": "50 %"}


def test_what_was_typed_stays_even_where_it_cannot_be_read():
    assert value_at(with_value(START, "loads.L01.draw", "3 kg"), "loads.L01.draw") == "3 kg"


@pytest.mark.parametrize(
    "path",
    ["", "boat", "boat.wheels", "loads", "loads.L01", "loads.L01.wheels", "hull.length",
     "loads.L01.x.draw", "boat.x.name", "loads.draw", "__proto__.x", "loads.L01.id"],
)  # fmt: skip
def test_no_such_field(path):
    with pytest.raises(Problem, match="is no field of a plan"):
        with_value(START, path, "x")


@pytest.mark.parametrize("path", ["loads.L99.draw", "circuits.D01.run"])
def test_no_such_row(path):
    for act in (lambda: with_value(START, path, "x"), lambda: value_at(START, path)):
        with pytest.raises(Problem, match="There is no"):
            act()


def test_too_long_to_keep():
    with pytest.raises(Problem, match="201 characters") as caught:
        with_value(START, "boat.name", "x" * 201)
    assert caught.value.where == "boat.name"
    assert with_value(START, "boat.note", "x" * 2000)
    with pytest.raises(Problem):
        with_value(START, "boat.note", "x" * 2001)


def test_no_choice_that_could_not_be_read_back():
    assert value_at(with_value(START, "boat.month", "july"), "boat.month") == "july"
    assert value_at(with_value(START, "boat.month", "July "), "boat.month") == "july"
    with pytest.raises(Problem) as caught:
        with_value(START, "boat.month", "Smarch")
    assert caught.value.where == "boat.month"
    with pytest.raises(Problem):
        with_row(START, "loads", {"draw_by": "hearsay"})


def test_a_row_comes_at_the_end_or_after_another():
    document, ident = with_row(START, "loads", {"name": "fan", "id": "L77", "note": ""})
    assert ident == "L04"
    assert row_of(document, "loads", "L04") == {"id": "L04", "name": "fan"}
    document, ident = with_row(START, "loads", {}, after="L01")
    assert order(document) == ["L01", "L04", "L02", "L03"]
    document, _ = with_row(START, "circuits", {})
    assert document["circuits"] == [{"id": "D01"}]
    document, _ = with_row(START, "loads", {}, after="L55")
    assert order(document)[-1] == "L04"


def test_a_row_with_too_long_a_text_is_refused():
    with pytest.raises(Problem) as caught:
        with_row(START, "loads", {"name": "x" * 201})
    assert caught.value.where == "loads.L04.name"


def test_a_part_has_its_limit():
    document = new_document()
    for _ in range(MOST_ROWS["sources"]):
        document, _ = with_row(document, "sources", {})
    with pytest.raises(Problem, match="50 sources at most"):
        with_row(document, "sources", {})
    assert parsed(written(document)) == document


def test_ids_stay_readable_past_the_last():
    document = {"format": 1, "loads": [{"id": "L1"}, {"id": "L9999"}, {"id": "L02"}]}
    assert next_id(document, "loads") == "L03"
    changed, ident = with_row(document, "loads", {})
    assert parsed(written(changed)) == changed
    assert ident == "L03"
    assert next_id({"format": 1, "loads": [{"id": "L0099"}]}, "loads") == "L100"


def test_a_row_goes():
    assert order(without_row(START, "loads", "L02")) == ["L01", "L03"]
    with pytest.raises(Problem):
        without_row(START, "loads", "L09")


@pytest.mark.parametrize(
    ("ident", "by", "expected"),
    [
        ("L02", -1, ["L02", "L01", "L03"]),
        ("L02", 1, ["L01", "L03", "L02"]),
        ("L01", -1, ["L01", "L02", "L03"]),
        ("L03", 1, ["L01", "L02", "L03"]),
        ("L01", 99, ["L02", "L03", "L01"]),
    ],
)
def test_a_row_moves(ident, by, expected):
    assert order(moved_row(START, "loads", ident, by)) == expected


def test_no_row_to_move():
    with pytest.raises(Problem):
        moved_row(START, "loads", "L09", 1)
