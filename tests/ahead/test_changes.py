"""Variants: text becomes changes, changes become another plan, and each says what it is."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.ahead.changes import changed, changes_in, text_of, told, variants_of
from engine.plan.document import parsed, written
from engine.plan.edit import value_at, with_row
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.problem import Problem
from tests.ahead.plans import read, small

BOAT = made_up_document()


def test_lines_become_changes_and_lines_again():
    text = "bank.capacity = 380 Ah\n\n loads.L37.hours_anchor=0 h "
    found = changes_in(text)
    assert found == (("bank.capacity", "380 Ah"), ("loads.L37.hours_anchor", "0 h"))
    assert changes_in(text_of(found)) == found


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("bank.capacity 380 Ah", "“bank.capacity 380 Ah” changes nothing."),
        ("bank.wheels = 4", "“bank.wheels” is no field of a plan."),
        ("loads.L37 = 4", "“loads.L37” is no field of a plan."),
        ("variants.V01.name = x", "“variants.V01.name” is no field of a plan."),
        (" = 4", "“” is no field of a plan."),
        ("boat.name = x\n" * 41, "41 changes are many."),
    ],
)
def test_a_line_that_changes_no_field_says_so(text, what):
    with pytest.raises(Problem) as caught:
        changes_in(text)
    assert caught.value.what == what


def test_a_change_leaves_the_plan_it_came_from_as_it_was():
    before = written(BOAT)
    other = changed(BOAT, (("bank.capacity", "380 Ah"),))
    assert read(other).bank.capacity == 380
    assert written(BOAT) == before


def test_rows_called_new_are_added_one_for_each_name():
    lines = "sources.new.kind = solar\nsources.new2.kind = wind\nsources.new.watts = 100 W"
    other = changed(small(), changes_in(lines))
    assert other["sources"] == [
        {"id": "S01", "kind": "solar", "watts": "100 W"}, {"id": "S02", "kind": "wind"},
    ]  # fmt: skip


def test_a_row_that_is_gone_and_a_choice_that_is_none_are_problems():
    for line in ("loads.L99.draw = 4 A", "bank.chemistry = coal", "sources.new.kind = coal"):
        with pytest.raises(Problem):
            changed(BOAT, changes_in(line))


def test_a_change_is_told_with_what_stood_there():
    found = told(BOAT, changes_in("loads.L37.hours_anchor = 0 h\nbank.chemistry = agm"))
    assert [(one.what, one.after, one.before) for one in found] == [
        ("Watermaker, 30 L/h, hours at anchor", "0 h", "1.5 h (1 to 2)"),
        ("Bank, chemistry", "AGM lead-acid", "lithium iron phosphate"),
    ]
    new, counted = told(BOAT, changes_in("sources.new.watts = 9 W\nsources.S04.counted = yes"))
    assert (new.what, new.before) == ("New in sources, watts", "not stated")
    assert (counted.what, counted.before) == ("S04 wind turbine, counts in this plan", "no")


def test_the_made_up_boat_keeps_four_variants_that_hold():
    found = variants_of(BOAT)
    assert [variant.name[0] for variant, _ in found] == ["C", "D", "E", "B"]
    assert not any(problem for _, problem in found)
    for variant, _ in found:
        assert not read(changed(BOAT, variant.changes)).problems


def test_a_variant_that_does_not_hold_keeps_its_place_and_its_problem():
    document, _ = with_row(BOAT, "variants", {"changes": "bank.wheels = 4"})
    variant, problem = variants_of(document)[-1]
    assert (variant.name, variant.changes) == ("V05", ())
    assert problem
    assert problem.where == "variants.V05.changes"


def test_variants_survive_a_file_and_the_boat_as_found_has_none():
    assert parsed(written(BOAT)) == BOAT
    assert variants_of(made_up_document(AS_FOUND)) == ()


@given(st.text(max_size=60))
def test_any_text_is_changes_or_a_problem(text):
    try:
        found = changes_in(text)
        document = changed(BOAT, found)
    except Problem:
        return
    for path, value in dict(found).items():
        if ".new" not in path:
            assert value_at(document, path).strip() == value.strip() or not value.isprintable()
