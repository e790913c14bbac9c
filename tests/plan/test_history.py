"""Undo and redo: whatever was done, all undone is the start and all redone is the end."""

import json

from hypothesis import given
from hypothesis import strategies as st

from engine.plan.document import new_document
from engine.plan.edit import moved_row, rows_of, with_row, with_value, without_row
from engine.plan.history import (
    Change,
    Step,
    applied,
    as_json,
    changes_between,
    from_json,
    reversed_step,
)
from engine.plan.made_up import made_up_document

PARTS = ("loads", "circuits")
edits = st.lists(
    st.tuples(
        st.sampled_from(["boat", "value", "add", "copy", "delete", "up", "down"]),
        st.sampled_from(PARTS),
        st.integers(0, 60),
        st.sampled_from(["", "a", "b", "4.6 A"]),
    ),
    max_size=25,
)
starts = st.sampled_from([new_document(), new_document("Gannet"), made_up_document()])


def edited(document, edit):
    """Return the document after one random edit."""
    what, part, number, text = edit
    rows = rows_of(document, part)
    if what == "boat":
        return with_value(document, "boat.name", text)
    if what == "add" or not rows:
        return with_row(document, part, {"name": text})[0]
    ident = rows[number % len(rows)]["id"]
    if what == "value":
        return with_value(document, f"{part}.{ident}.note", text)
    if what == "copy":
        return with_row(document, part, rows[number % len(rows)], after=ident)[0]
    if what == "delete":
        return without_row(document, part, ident)
    return moved_row(document, part, ident, -1 if what == "up" else 1)


@given(starts, edits)
def test_all_undone_is_the_start_and_all_redone_the_end(start, done):
    document, steps = start, []
    for edit in done:
        after = edited(document, edit)
        steps.append(Step("edit", changes_between(document, after)))
        document = after
    kept = from_json(json.loads(json.dumps(as_json(tuple(steps)))))
    assert kept == tuple(steps)
    back = document
    for step in reversed(kept):
        back = applied(back, reversed_step(step).changes)
    assert back == start
    again = back
    for step in kept:
        again = applied(again, step.changes)
    assert again == document


@given(starts, edits)
def test_a_step_leaves_the_document_it_came_from(start, done):
    before = json.dumps(start)
    document = start
    for edit in done:
        document = edited(document, edit)
    applied(start, changes_between(start, document))
    assert json.dumps(start) == before


def test_a_step_keeps_only_what_changed():
    boat = made_up_document()
    after = with_value(boat, "loads.L11.draw", "5 A")
    changes = changes_between(boat, after)
    assert [change.path for change in changes] == [("loads",)]
    assert [row["id"] for row in changes[0].old] == ["L11"]
    assert changes_between(boat, boat) == ()
    assert changes_between(boat, json.loads(json.dumps(boat))) == ()


def test_a_part_that_was_not_there():
    start = new_document()
    after = with_row(start, "loads", {"name": "lamp"})[0]
    changes = changes_between(start, after)
    assert changes == (Change(("loads",), -1, None, [{"id": "L01", "name": "lamp"}]),)
    assert applied(after, reversed_step(Step("", changes)).changes) == start
