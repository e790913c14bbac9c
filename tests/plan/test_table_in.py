"""A table of loads, as people have them: any separator, any order of columns, nothing executed."""

import csv
from io import StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.plan.document import parsed, plain_text, written
from engine.plan.edit import with_row
from engine.plan.fields import LOAD
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.plan.table_in import exported, guarded, incoming
from engine.problem import Problem

COMMAS = "Load,Draw,Hours at anchor,Duty\nFridge,4.6 A,24,0.4\nLamp,0.5,4,\n"


def rows(text):
    return [line.row for line in incoming(text).lines]


def plan_from(text):
    document = {"format": 1}
    for line in incoming(text).lines:
        document, _ = with_row(document, "loads", line.row)
    return document


def refusal(text):
    with pytest.raises(Problem) as caught:
        incoming(text)
    assert caught.value.where == "table"
    return caught.value.what


FRIDGE = {"name": "Fridge", "draw": "4.6 A", "hours_anchor": "24", "duty": "0.4",
          "draw_by": "estimate"}  # fmt: skip
LAMP = {"name": "Lamp", "draw": "0.5", "hours_anchor": "4", "draw_by": "estimate"}


@pytest.mark.parametrize(
    "text",
    [
        COMMAS,
        COMMAS.replace(",", ";"),
        COMMAS.replace(",", "\t"),
        COMMAS.replace("\n", "\r\n"),
        "\ufeff" + COMMAS,
        "\n\n" + COMMAS + "\n\n",
        COMMAS.replace("Load", '"Load"').replace("Fridge", '"Fridge"'),
        "| Load | Draw | Hours at anchor | Duty |\n|---|:-:|---|--:|\n"
        "| Fridge | 4.6 A | 24 | 0.4 |\n| Lamp | 0.5 | 4 | |\n",
        "Duty,Hours (at anchor),ITEM,Amps\n0.4,24,Fridge,4.6 A\n,4,Lamp,0.5",
        "Load,,Draw,Hours,Duty\nFridge,,4.6 A,24,0.4\n,,,,\nLamp,,0.5,4,",
        COMMAS + "Total,5.1,,\n",
        COMMAS + "Grand total:,5.1,,\n",
    ],
)
def test_the_same_table_in_many_clothes(text):
    assert rows(text) == [FRIDGE, LAMP]


def test_what_is_used_and_what_is_left_out_is_said():
    found = incoming("Load,Colour,,Watts\nLamp,red,,5\nSum,,,5\n,blue,,7")
    assert found.used == (("Load", "name"), ("Watts", "watts"))
    assert found.left_out == ("Colour", "(blank)")
    assert len(found.passed) == 2
    assert "line 3" in found.passed[0]
    assert "line 4" in found.passed[1]
    assert rows("Load,Watts\nLamp,5")[0]["draw"] == "5 W"
    assert rows("Load,Watts\nLamp,5 kW")[0]["draw"] == "5 kW"


def test_a_range_in_three_columns_becomes_one_text():
    assert rows("Load,Low A,Likely A,High A\nPump,4,5,7")[0]["draw"] == "5 (4 to 7)"
    assert rows("Load,Low A,Likely A,High A\nPump,4,5,")[0]["draw"] == "5"
    assert "draw" not in rows("Load,Low A,Likely A,High A\nPump,4,,7")[0]


def test_a_comma_for_the_decimal_point_between_semicolons():
    assert rows("Load;Draw\nPump;4,6 A")[0]["draw"] == "4,6 A"
    draw = plan_of(plan_from("Load;Draw\nPump;4,6 A")).loads[0].draw
    assert draw is not None
    assert draw.likely == 4.6


def test_problems_stand_beside_their_line_and_entries_stay_as_typed():
    found = incoming("Load,Draw,Hours,Known by,Essential\nPump,3 kg,25,hearsay,perhaps")
    line = found.lines[0]
    assert line.number == 2
    assert [problem.where for problem in line.problems] == [
        "hours_anchor", "draw_by", "essential", "draw",
    ]  # fmt: skip
    assert (line.row["draw"], line.row["hours_anchor"]) == ("3 kg", "25")
    assert line.row["draw_by"] == "estimate"


def test_a_choice_in_capitals_can_be_read_back():
    document = plan_from("Load,Known by\nPump,Measured")
    assert document["loads"][0]["draw_by"] == "measured"
    assert parsed(written(document)) == document


def test_a_cell_too_long_to_keep():
    line = incoming(f"Load,Zone\nPump,{'x' * 201}").lines[0]
    assert "zone" not in line.row
    assert line.problems[0].where == "zone"


def test_what_is_no_table():
    assert "No table" in refusal("")
    assert "No table" in refusal("Load,Draw")
    assert "No heading" in refusal("a,b\n1,2")
    assert "300,001" in refusal("x" * 300_001)
    assert "cannot be read" in refusal('Load,Draw\n"' + "x" * 140_000 + '",5')


def test_ten_thousand_rows_are_refused_whole():
    assert "10,000" in refusal("Load,Draw\n" + "Lamp,1\n" * 10_000)


@pytest.mark.parametrize(
    "cell", ["=1+1", '=HYPERLINK("x")', "+1+1", "-1-1", "@SUM(A1)", "\tx", "\rx"]
)
def test_a_formula_is_only_text_and_leaves_as_text(cell):
    out = StringIO()
    csv.writer(out).writerows([["Load", "Draw"], [cell, "1 A"]])
    document = plan_from(out.getvalue())
    assert document["loads"][0]["name"] == cell.strip()
    cells = list(csv.reader(StringIO(exported(document))))
    assert cells[1][1] == ("'" if guarded(cell.strip()) != cell.strip() else "") + cell.strip()


@pytest.mark.parametrize("cell", ["-12", "+4.6", "4.6 A", "", "a=b"])
def test_what_is_no_formula_stays(cell):
    assert guarded(cell) == cell


def test_the_export_comes_back_as_the_same_loads():
    document = made_up_document()
    again = plan_from(exported(document))
    assert again["loads"] == document["loads"]
    assert incoming(exported(document)).left_out == ("Id",)


NAMES = st.text(st.characters(exclude_categories=("Cs", "Cc")), min_size=1, max_size=40).map(
    lambda text: plain_text(text).strip()
)


@given(NAMES.filter(bool))
def test_any_name_survives_the_way_out_and_in(name):
    document, _ = with_row({"format": 1}, "loads", {"name": name, "draw_by": "measured"})
    found = incoming(exported(document))
    if not found.passed:
        assert found.lines[0].row["name"] == name


def test_every_field_of_a_load_has_its_column():
    head = next(csv.reader(StringIO(exported({"format": 1}))))
    assert head == ["Id", *(declared.label for declared in LOAD.values())]
