"""A plan file: its shape is checked whole, and each refusal says where, what and what to do."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.plan.document import new_document, parsed, plain_text, shaped, written
from engine.plan.edit import rows_of
from engine.plan.fields import MOST_ROWS, ROWS, SINGLE, field_at
from engine.plan.made_up import made_up_document
from engine.problem import Problem

TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=60)


@st.composite
def documents(draw):
    """Plans with any text in any text field."""
    document = new_document(draw(TEXTS.map(plain_text)))
    for part, letter in (("loads", "L"), ("circuits", "D"), ("sources", "S")):
        names = ["note"] if part == "sources" else ["name", "note"]
        rows = draw(st.lists(st.dictionaries(st.sampled_from(names), TEXTS), max_size=3))
        document[part] = [
            {"id": f"{letter}{n:02d}", **{key: plain_text(text) for key, text in row.items()}}
            for n, row in enumerate(rows, 1)
        ]
    return document


def refusal(text):
    with pytest.raises(Problem) as caught:
        parsed(text)
    assert caught.value.what
    assert caught.value.mend
    return caught.value


@given(documents())
def test_a_plan_is_read_as_it_was_written(document):
    assert parsed(written(document)) == document


def test_the_made_up_boat_is_read_as_it_was_written():
    assert parsed(written(made_up_document())) == made_up_document()


def test_a_new_plan_is_empty():
    assert new_document() == {"format": 1, "boat": {}}
    assert new_document("Gannet") == {"format": 1, "boat": {"name": "Gannet"}}


def test_a_byte_order_mark_is_no_part_of_it():
    assert parsed("\ufeff" + written(new_document())) == new_document()


@pytest.mark.parametrize("text", ["", "{", "x", "\ufeff", '{"format":1', "[1,", '"', "null x"])
def test_a_broken_file_says_where_it_stops(text):
    assert "line 1" in refusal(text).what


@pytest.mark.parametrize("text", ["[]", "null", "1", '"plan"', "{}", '{"boat":{}}'])
def test_what_has_no_format_is_no_plan(text):
    assert "is not a plan" in refusal(text).what


@pytest.mark.parametrize(
    ("version", "newer"),
    [("7", True), ("2", True), ("0", False), ('"1"', False), ("true", False), ("null", False),
     ("1e309", False), ("[1]", False)],
)  # fmt: skip
def test_another_format_is_named(version, newer):
    problem = refusal(f'{{"format":{version}}}')
    assert problem.where == "format"
    assert ("Update" in problem.mend) == newer


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity"])
def test_no_number_that_is_none(number):
    assert number in refusal(f'{{"format":1,"bank":{{"capacity":{number}}}}}').what


def test_numbers_become_what_a_person_would_have_typed():
    document = parsed('{"format":1,"bank":{"capacity":220,"charge":0.5},"boat":{"people":2.0}}')
    assert document["bank"] == {"capacity": "220", "charge": "0.5"}
    assert document["boat"] == {"people": "2"}
    assert parsed('{"format":1,"bank":{"capacity":1e309}}')["bank"] == {"capacity": "inf"}
    assert parsed('{"format":1,"bank":{"capacity":1234567.25}}')["bank"] == {
        "capacity": "1234567.25"
    }


def test_a_yes_in_other_clothes():
    document = parsed('{"format":1,"loads":[{"id":"L1","essential":true,"always_live":false}]}')
    assert document["loads"] == [{"id": "L1", "essential": "yes", "always_live": "no"}]


def test_a_number_of_thousands_of_digits():
    assert "thousands of digits" in refusal('{"format":' + "9" * 5000 + "}").what
    assert "characters" in refusal('{"format":1,"bank":{"capacity":' + "9" * 4000 + "}}").what


def test_nesting_a_thousand_deep():
    for deep in (1_000, 100_000):
        assert refusal('{"format":1,"boat":' + "[" * deep + "]" * deep + "}").mend


def test_a_key_stated_twice():
    assert "“name” twice" in refusal('{"format":1,"boat":{"name":"a","name":"b"}}').what
    assert "twice" in refusal('{"format":1,"format":1}').what


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ('"__proto__":{}', "__proto__"),
        ('"constructor":{}', "constructor"),
        ('"price":1', "price"),
        ('"made_up":"yes"', "made_up"),
        ('"boat":{"__proto__":"x"}', "boat.__proto__"),
        ('"boat":[]', "boat"),
        ('"boat":{"name":[]}', "boat.name"),
        ('"boat":{"name":null}', "boat.name"),
        ('"boat":{"use":"racing"}', "boat.use"),
        ('"loads":{}', "loads"),
        ('"loads":[5]', "loads.1"),
        ('"loads":[{"name":"a"}]', "loads.1"),
        ('"loads":[{"id":7}]', "loads.1"),
        ('"loads":[{"id":"D1"}]', "loads.1"),
        ('"loads":[{"id":"L00000"}]', "loads.1"),
        ('"loads":[{"id":"L1\\n"}]', "loads.1"),
        ('"loads":[{"id":"L1"},{"id":"L1"}]', "loads.L1"),
        ('"loads":[{"id":"L1","wheels":"4"}]', "loads.L1.wheels"),
        ('"circuits":[{"id":"D1","run":{}}]', "circuits.D1.run"),
    ],
)
def test_each_refusal_has_its_path(text, where):
    assert refusal(f'{{"format":1,{text}}}').where == where


def test_ten_thousand_loads_are_refused_whole():
    rows = [{"id": f"L{n}"} for n in range(10_000)]
    problem = refusal(json.dumps({"format": 1, "loads": rows}))
    assert problem.where == "loads"
    assert "10,000" in problem.what
    assert str(MOST_ROWS["loads"]) in problem.what


def test_a_name_of_a_million_characters():
    problem = refusal(json.dumps({"format": 1, "boat": {"name": "x" * 1_000_000}}))
    assert problem.where == "boat.name"
    assert len(str(problem)) < 200


def test_a_file_larger_than_any_plan():
    assert "2,000,001" in refusal(" " * 2_000_001).what


def test_a_name_may_be_200_long_and_a_note_2000():
    shaped({"format": 1, "boat": {"name": "x" * 200, "note": "x" * 2000}})
    for name, length in (("name", 201), ("note", 2001)):
        with pytest.raises(Problem):
            shaped({"format": 1, "boat": {name: "x" * length}})


def test_controls_go_and_the_marks_of_a_language_stay():
    assert plain_text("a\x00b\x1bc\u202ed") == "abcd"
    assert plain_text("\u200fسفينة\u200e 😀\tx\ny") == "\u200fسفينة\u200e 😀\tx\ny"
    assert plain_text("5\u00a01/2\u3000in") == "5 1/2 in"
    assert plain_text("half \ud800 a pair") == "half  a pair"


def test_half_a_pair_never_gets_into_a_plan():
    text = '{"format":1,"loads":[{"id":"L1","name":"a\\ud800","draw":"4\\udfff A"}]}'
    assert parsed(text)["loads"] == [{"id": "L1", "name": "a", "draw": "4 A"}]


def test_every_field_is_found_by_its_path():
    for part, fields in SINGLE.items():
        for name, declared in fields.items():
            assert field_at(f"{part}.{name}") is declared
    for part, fields in ROWS.items():
        for name, declared in fields.items():
            assert field_at(f"{part}.X01.{name}") is declared


def test_every_field_says_what_it_is():
    for fields in (*SINGLE.values(), *ROWS.values()):
        for name, declared in fields.items():
            assert declared.name == name
            assert declared.label
            assert declared.least <= declared.most


def test_rows_of_a_part_that_is_not_there():
    assert rows_of(new_document(), "loads") == []
