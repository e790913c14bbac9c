"""Every button: what it does, what it says, and what it refuses."""

import json

import pytest

from engine.loads.generic import GENERIC
from engine.plan.document import new_document, parsed, written
from engine.plan.link import packed, unpacked
from engine.plan.made_up import made_up_document
from engine.session.commands import COMMANDS

TABLE = "Load,Draw,Hours\nFan,1 A,5\nPump,3 kg,1\n"


def ids(visit, part="loads"):
    return [row["id"] for row in visit.document.get(part, [])]


@pytest.mark.parametrize("name", sorted(COMMANDS))
def test_no_button_fails_without_its_argument(visit, name):
    for route in ("#home", "#energy/use", "#papers/receive", "#sum/conductor", "#start/1"):
        visit.go(route)
        visit.do(name)
        assert visit.reply["title"]


def test_a_button_nobody_knows_does_nothing(visit):
    visit.do("fly")
    assert visit.document == made_up_document()
    assert visit.sent() == []


def test_my_own_boat_begins_empty_and_is_kept(visit):
    reply = visit.do("start-own")
    assert visit.document == new_document()
    assert reply["route"] == "#start/1"
    assert reply["record"]["id"] == "plan-1"
    assert json.loads(reply["record"]["text"])["document"] == new_document()


def test_looking_around_shows_the_boat_as_it_was_made(mine):
    mine.do("add-load")
    reply = mine.do("look-around")
    assert mine.document == made_up_document()
    assert reply["settings"]["chosen"] == "looked"
    assert "record" not in reply
    reply = mine.do("chooser")
    assert "chosen" not in reply["settings"]
    assert reply["route"] == "#home"


def test_looking_around_keeps_what_was_tried(visit):
    visit.set("loads.L11.draw", "9 A")
    visit.do("look-around")
    assert visit.document["loads"][10]["draw"] == "9 A"


def test_undo_and_redo_name_what_they_do(mine):
    mine.do("add-load")
    reply = mine.do("undo")
    assert ids(mine) == []
    assert "add a load" in reply["say"]
    assert json.loads(reply["record"]["text"])["undone"]
    reply = mine.do("redo")
    assert ids(mine) == ["L01"]
    assert "add a load" in reply["say"]


def test_nothing_to_undo_or_redo(mine):
    for name in ("undo", "redo"):
        reply = mine.do(name)
        assert "say" not in reply
        assert "record" not in reply


def test_a_new_edit_ends_what_could_be_redone(mine):
    mine.do("add-load")
    mine.do("undo")
    mine.do("add-circuit")
    mine.do("redo")
    assert ids(mine) == []
    assert ids(mine, "circuits") == ["D01"]


@pytest.mark.parametrize(
    ("name", "part", "route"),
    [
        ("add-load", "loads", "#energy/use/L01"),
        ("add-circuit", "circuits", "#wiring/circuits/D01"),
        ("add-appliance", "loads", "#energy/use/L01"),
    ],
)
def test_a_new_row_is_shown(mine, name, part, route):
    reply = mine.do(name)
    assert len(ids(mine, part)) == 1
    assert reply["route"] == route
    assert mine.screen.at(reply["focus"]).name in {"input", "textarea"}


def test_an_ac_load_is_one(mine):
    mine.do("add-appliance")
    assert mine.document["loads"][0]["supply"] == "inverter"


def test_a_typical_load(mine):
    mine.go("#energy/use")
    name = next(iter(GENERIC))
    reply = mine.do("add-generic", pick=name)
    assert mine.document["loads"][0]["name"] == name
    assert mine.document["loads"][0]["draw_by"] == "default"
    assert mine.screen.at(reply["focus"])
    mine.do("add-generic", pick="Perpetual motion")
    assert "No such typical load" in mine.notice()
    assert ids(mine) == ["L01"]


def test_a_sum_is_kept_as_a_circuit(mine):
    mine.go("#sum/conductor?current=20+A&run=10+ft&catalogue=awg&bundle=3")
    reply = mine.do("keep-circuit")
    assert mine.document["circuits"] == [
        {"id": "D01", "run": "10 ft", "current": "20 A", "bundle": "3"}
    ]
    assert reply["route"] == "#wiring/circuits/D01"


def test_a_sum_too_long_to_keep_is_refused(mine):
    mine.go("#sum/conductor")
    mine.set("sum.conductor.run", "9" * 500)
    mine.do("keep-circuit")
    assert "500" in mine.notice()
    assert ids(mine, "circuits") == []


def test_a_row_is_copied_next_to_it(visit):
    visit.go("#energy/use")
    reply = visit.do("copy-row", "loads.L11")
    place = ids(visit).index("L11")
    copy = visit.document["loads"][place + 1]
    assert copy["id"] == "L44"
    assert copy["name"].startswith("Fridge compressor")
    assert copy["draw"] == visit.document["loads"][place]["draw"]
    assert visit.screen.at(reply["focus"])


def test_a_row_without_a_name_is_copied_without_one(mine):
    mine.do("add-load")
    mine.do("copy-row", "loads.L01")
    assert mine.document["loads"] == [{"id": "L01"}, {"id": "L02"}]


def test_the_copy_of_the_longest_name_can_be_read_back(mine):
    mine.do("add-load")
    mine.set("loads.L01.name", "x" * 200)
    mine.set("boat.name", "y" * 200)
    mine.do("copy-row", "loads.L01")
    assert ids(mine) == ["L01", "L02"]
    mine.do("copy-plan")
    assert mine.state.plan_id == "plan-2"
    assert parsed(written(mine.document)) == mine.document


def test_a_row_goes_and_undo_brings_it_back(visit):
    visit.go("#energy/use/L11")
    reply = visit.do("delete-row", "loads.L11")
    assert "L11" not in ids(visit)
    assert "Fridge" in reply["say"]
    assert reply["route"] == "#energy/use"
    visit.do("undo")
    assert visit.document == made_up_document()
    visit.go("#energy/use")
    assert "route" not in visit.do("delete-row", "loads.L11")


def test_a_row_moves_and_says_where_it_is(visit):
    reply = visit.do("move-up", "loads.L11")
    assert ids(visit)[9:11] == ["L11", "L10"]
    assert "10" in reply["say"]
    visit.do("move-down", "loads.L11")
    assert visit.document == made_up_document()
    visit.do("move-up", "loads.L01")
    assert visit.document == made_up_document()


@pytest.mark.parametrize("name", ["copy-row", "delete-row", "move-up", "move-down"])
@pytest.mark.parametrize("arg", ["loads.L99", "circuits.D99", "nothing", ""])
def test_no_such_row(visit, name, arg):
    visit.do(name, arg)
    assert visit.notice()
    assert visit.document == made_up_document()


def test_how_sure(visit):
    visit.go("#energy/use/L11")
    visit.do("how-sure", "loads.L11.draw|rough ±30 %")
    assert visit.document["loads"][10]["draw"] == "4.6 A (3.22 to 5.98)"
    visit.set("loads.L11.draw", "60 W")
    visit.do("how-sure", "loads.L11.draw|about ±10 %")
    assert visit.document["loads"][10]["draw"] == "60 W (54 to 66)"
    visit.set("loads.L11.duty", "")
    visit.do("how-sure", "loads.L11.duty|about ±10 %")
    assert "0.9" in visit.document["loads"][10]["duty"]


def test_nothing_to_be_sure_of_is_said_beside_the_field(mine):
    mine.do("add-load")
    mine.do("how-sure", "loads.L01.draw|exact")
    problem = mine.screen.at("f-loads-L01-draw-p")
    assert "no value yet" in problem.text
    assert mine.document["loads"] == [{"id": "L01"}]


@pytest.mark.parametrize(
    "arg", ["", "loads.L11.draw", "loads.L11.draw|no idea", "loads.L99.draw|exact", "a.b|exact"]
)
def test_how_sure_of_what(visit, arg):
    visit.do("how-sure", arg)
    assert visit.document == made_up_document()


def test_not_knowing_goes_on(mine):
    routes = [mine.do("dont-know", str(number))["route"] for number in range(1, 8)]
    assert routes == [*(f"#start/{n}" for n in range(2, 8)), "#start/answer"]
    assert mine.do("dont-know", "x")["route"] == "#start/answer"
    assert mine.do("dont-know", "²")["route"] == "#start/answer"


def test_a_link_holds_the_whole_plan(visit):
    visit.open(base="//boat.invalid/")
    visit.go("#papers")
    reply = visit.do("share")
    base, _, fragment = reply["copy"].partition("#")
    assert base == "//boat.invalid/"
    assert unpacked(fragment) == made_up_document()
    assert reply["share"]["url"] == reply["copy"]
    assert "Wherrilow" in reply["share"]["title"]
    assert visit.screen.at("link-text").text == reply["copy"]


def test_a_plan_is_saved_as_a_file(visit):
    reply = visit.do("export")["download"]
    assert reply["name"] == "wherrilow.json"
    assert parsed(reply["text"]) == made_up_document()


def test_loads_are_saved_as_a_table(visit):
    reply = visit.do("export-loads")["download"]
    assert reply["name"] == "wherrilow-loads.csv"
    assert reply["text"].startswith("\ufeffId,")
    assert reply["text"].count("\r\n") == 44


@pytest.mark.parametrize(
    ("name", "file"),
    [("", "plan"), ("../../etc", "etc"), ("Ma Ré / 2", "ma-ré---2"), ("x" * 200, "x" * 60)],
)
def test_a_file_s_name_is_only_letters(mine, name, file):
    mine.set("boat.name", name)
    assert mine.do("export")["download"]["name"] == f"{file}.json"


def test_a_plan_is_looked_at_before_it_opens(mine):
    mine.set("boat.name", "Mine")
    before = mine.document
    assert mine.do("receive")["route"] == "#papers/receive"
    reply = mine.do("receive-text", text=written(made_up_document()))
    assert mine.document is before
    assert "record" not in reply
    text = mine.screen.at("page").text
    assert "Wherrilow" in text
    assert "43" in text
    reply = mine.do("accept")
    assert reply["route"] == "#home"
    assert reply["record"]["id"] == "plan-2"
    assert mine.document == made_up_document()
    assert mine.state.done == ()


def test_leaving_it(mine):
    before = mine.document
    mine.do("receive-text", text=packed(made_up_document()))
    assert mine.do("refuse")["route"] == "#papers"
    mine.do("accept")
    assert mine.document == before


@pytest.mark.parametrize("text", ["", "x", packed(made_up_document())[:-9], "{}"])
def test_a_damaged_plan_opens_nothing(mine, text):
    before = mine.document
    reply = mine.do("receive-text", text=text)
    assert reply["title"].startswith("Error")
    assert mine.screen.at(reply["focus"]).text
    mine.do("accept")
    assert mine.document == before


def test_a_table_is_looked_at_and_taken(visit):
    visit.go("#energy/paste")
    visit.do("paste", table=TABLE)
    preview = visit.screen.at("paste-preview")
    assert len(preview.named("tr")) == 3
    assert "3 kg" in preview.text
    reply = visit.do("take-table")
    assert [row["name"] for row in visit.document["loads"][-2:]] == ["Fan", "Pump"]
    assert visit.document["loads"][-1]["draw"] == "3 kg"
    assert reply["route"] == "#energy/use"
    visit.do("undo")
    assert visit.document == made_up_document()


def test_a_table_is_left(visit):
    visit.go("#energy/paste")
    visit.do("paste", table=TABLE)
    visit.do("leave-table")
    assert visit.screen.at("paste-preview").text == ""
    visit.do("take-table")
    assert visit.document == made_up_document()


def test_no_table(visit):
    visit.go("#energy/paste")
    reply = visit.do("paste", table="nothing")
    assert visit.screen.at(reply["focus"]).text
    assert visit.screen.at("paste-text").text == "nothing"
    visit.do("take-table")
    assert visit.document == made_up_document()


def test_a_table_that_does_not_fit_is_refused_whole(visit):
    visit.go("#energy/paste")
    visit.do("paste", table="Load,Draw\n" + "Fan,1 A\n" * 480)
    visit.do("take-table")
    assert "500" in visit.notice()
    assert visit.document == made_up_document()


def test_another_plan_is_asked_for(mine):
    assert mine.do("open-plan", "plan-7")["want"] == "plan-7"


def test_a_plan_is_deleted_only_when_asked_twice(visit):
    visit.open(plans=[{"id": "plan-4", "name": "Old", "saved": "13:00"}])
    visit.go("#papers")
    reply = visit.do("ask-delete", "plan-4")
    assert "drop" not in reply
    assert visit.screen.at("papers-plans").text.count("Old") == 2
    visit.do("ask-delete", "")
    assert visit.screen.at("papers-plans").text.count("Old") == 1
    visit.do("ask-delete", "plan-4")
    reply = visit.do("delete-plan", "plan-4")
    assert reply["drop"] == "plan-4"
    assert "Old" not in visit.screen.at("papers-plans").text


def test_the_open_plan_deleted_leaves_the_made_up_boat(mine):
    reply = mine.do("delete-plan", "plan-1")
    assert reply["drop"] == "plan-1"
    assert "record" not in reply
    assert mine.document == made_up_document()


def test_a_plan_is_copied_as_another(mine):
    mine.set("boat.name", "Gannet")
    mine.do("add-load")
    reply = mine.do("copy-plan")
    assert reply["record"]["id"] == "plan-2"
    assert mine.document["boat"]["name"] == "Gannet, copy"
    assert ids(mine) == ["L01"]
    mine.set("boat.name", "")
    mine.do("copy-plan")
    assert mine.document["boat"]["name"] == "copy"


def test_a_link_to_a_sum(visit):
    visit.open(base="//boat.invalid/")
    reply = visit.do("copy-sum", "sum/drop?run=4+m")
    assert reply["copy"] == "//boat.invalid/#sum/drop?run=4+m"


def test_a_form_s_own_fields_are_set_first(mine):
    mine.do("add-load", **{"boat.name": "Gannet", "text": "x", "evil.path": "y"})
    assert mine.document["boat"]["name"] == "Gannet"
    assert ids(mine) == ["L01"]
