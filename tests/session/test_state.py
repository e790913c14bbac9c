"""What is kept between visits: the plan with its history, whole or not at all."""

import json

import pytest

from engine.plan.document import new_document
from engine.plan.made_up import made_up_document
from engine.session.state import State


def record_of(**more):
    whole = {"id": "plan-3", "document": new_document("Gannet"), "done": [], "undone": []}
    return json.dumps({**whole, **more})


def test_the_made_up_boat_is_never_kept(visit):
    for act in (
        lambda: visit.set("loads.L11.draw", "5 A"),
        lambda: visit.do("add-load"),
        lambda: visit.do("undo"),
        lambda: visit.do("redo"),
        lambda: visit.do("delete-row", "loads.L11"),
    ):
        assert "record" not in act()


def test_a_reader_s_tab_keeps_nothing(visit):
    visit.open(record=record_of(), tab="reader")
    assert visit.document == new_document("Gannet")
    for name in ("add-load", "undo", "redo", "copy-plan", "start-own"):
        assert "record" not in visit.do(name)
    assert "record" not in visit.set("boat.name", "x")


def test_every_edit_hands_back_the_whole_plan(mine):
    reply = mine.set("boat.name", "Gannet")
    assert reply["record"]["id"] == "plan-1"
    assert reply["record"]["name"] == "Gannet"
    assert json.loads(reply["record"]["text"])["document"] == mine.document
    assert "record" not in mine.set("boat.name", "Gannet")


def test_a_plan_opens_again_with_all_that_was_done(mine):
    mine.set("boat.name", "Gannet")
    mine.do("add-load")
    mine.set("loads.L01.name", "Lamp")
    record = mine.do("undo")["record"]["text"]
    mine.open(record=record, plans=[{"id": "plan-1", "name": "Gannet", "saved": "14:02"}])
    assert mine.document["loads"] == [{"id": "L01"}]
    mine.do("redo")
    assert mine.document["loads"] == [{"id": "L01", "name": "Lamp"}]
    for _ in range(9):
        mine.do("undo")
    assert mine.document == new_document()


def test_history_has_its_depth(mine):
    for number in range(210):
        mine.set("boat.name", f"boat {number}")
    assert len(mine.state.done) == 200
    while mine.state.done:
        mine.do("undo")
    assert mine.document["boat"]["name"] == "boat 9"


@pytest.mark.parametrize(
    "record",
    [
        "x", "{}", "[]", "5", "null", "[" * 100_000,
        record_of(document=5),
        record_of(document={"format": 7}),
        record_of(document={"format": 1, "wheels": 4}),
        record_of(done=5),
        record_of(done=[["a"]]),
        record_of(done=[["a", [[5]]]]),
        record_of()[:-20],
    ],
    ids=range(13),
)  # fmt: skip
def test_a_damaged_record_is_said_and_changes_nothing(mine, record):
    mine.set("boat.name", "Mine")
    before = mine.document
    mine.send({"kind": "record", "id": "plan-3", "record": record})
    assert mine.notice()
    assert "record" not in mine.reply
    assert (mine.document, mine.state.plan_id) == (before, "plan-1")
    mine.open(record=record)
    assert mine.notice()
    assert "record" not in mine.reply


def test_another_plan_of_this_device_is_opened(mine):
    reply = mine.send({"kind": "record", "id": "plan-3", "record": record_of()})
    assert mine.document == new_document("Gannet")
    assert reply["route"] == "#home"
    assert mine.state.plan_id == "plan-3"


@pytest.mark.parametrize("record", [None, ""])
def test_a_plan_that_is_gone(mine, record):
    mine.send({"kind": "record", "id": "plan-3", "record": record})
    assert mine.notice()
    assert mine.state.plan_id == "plan-1"


def test_a_new_plan_never_takes_the_id_of_another(visit):
    kept = [{"id": f"plan-{n}", "name": "", "saved": ""} for n in (1, 2, 4)]
    visit.open(plans=kept)
    visit.do("start-own")
    assert visit.state.plan_id == "plan-3"
    visit.do("start-own")
    assert visit.state.plan_id == "plan-5"


def test_a_made_up_boat_that_was_received_stays_flagged(mine):
    mine.do("receive-text", text=json.dumps(made_up_document()))
    reply = mine.do("accept")
    assert mine.document["made_up"] is True
    assert json.loads(reply["record"]["text"])["document"]["made_up"] is True
    assert mine.state.mine


def test_a_first_visit_shows_the_made_up_boat():
    state = State()
    assert state.document == made_up_document()
    assert not state.mine
