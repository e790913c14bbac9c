"""The one door: events in, only the changed fragments out, and the screen is always whole."""

import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from engine import door
from engine.plan.document import parsed, written
from engine.plan.link import packed
from engine.plan.made_up import made_up_document
from engine.session.commands import COMMANDS
from engine.views.page import whole_page
from tests.session.page import PARTS, Page
from tests.views.markup import Element
from tests.views.markup import parsed as markup

ROUTES = (
    "#home", "#home/findings", "#energy", "#energy/use", "#energy/use/L01", "#energy/bank",
    "#energy/paste", "#wiring", "#wiring/circuits", "#wiring/circuits/D01", "#wiring/inverter",
    "#proving", "#papers", "#papers/receive", "#start", "#start/3", "#start/4", "#start/answer",
    "#sum/conductor?current=6+A&run=16+ft", "#sum/drop", "#sum/none", "#nowhere/at/all", "", "#",
)  # fmt: skip


@pytest.fixture
def visit(monkeypatch):
    found = Page(monkeypatch)
    found.open()
    return found


def drawn_anew(visit):
    """Return the screen as it would be if it were drawn from nothing."""
    screen = Element("body", {}, [Element("div", {"id": one}) for one in PARTS])
    for part in whole_page(visit.state.scene()):
        screen.at(part.ident).inside = markup(part.inner).inside
    return screen


def test_the_first_page_needs_no_event():
    first = door.first_page()
    assert set(first) == set(PARTS)
    assert "made-up boat" in first["strip"]
    assert "146" in first["page"]
    for html in first.values():
        markup(html)


def test_the_first_reply_holds_the_whole_page(visit):
    assert visit.sent() == list(PARTS)
    assert visit.reply["title"]
    assert visit.screen.at("page").plain() == drawn_anew(visit).at("page").plain()


def test_the_first_page_is_what_the_first_reply_shows(visit):
    first = door.first_page()
    assert visit.screen.at("page").within() == markup(first["page"]).within()


def test_nothing_changed_nothing_sent(visit):
    assert visit.go("#home")["fragments"] == []
    assert visit.send()["fragments"] == []


def test_an_edit_of_one_load_sends_its_row_and_the_answer_and_no_table(visit):
    visit.do("look-around")
    visit.go("#energy/use")
    visit.set("loads.L11.draw", "5 A")
    sent = visit.sent()
    assert "row-L11" in sent
    assert not [one for one in sent if one.startswith("row-") and one != "row-L11"]
    assert not {"page", "loads", "loads-table", "loads-all", "rail"} & set(sent)
    visit.set("loads.L11.zone", "aft")
    assert not [one for one in visit.sent() if one.startswith("row-L") and one != "row-L11"]


def test_an_edit_of_one_circuit_sends_its_row(visit):
    visit.go("#wiring/circuits")
    visit.set("circuits.D05.size", "6 AWG")
    rows = [one for one in visit.sent() if one.startswith("row-")]
    assert rows == ["row-D05"]


def test_many_events_are_drawn_once(visit):
    reply = visit.send(
        {"kind": "go", "route": "#energy/use"},
        {"kind": "set", "path": "loads.L11.draw", "value": "5 A"},
        {"kind": "do", "name": "add-load", "arg": "", "form": {}},
    )
    assert reply["route"] == "#energy/use/L44"
    assert visit.screen.at("page").plain() == drawn_anew(visit).at("page").plain()


def test_one_bad_event_leaves_the_others(visit):
    visit.send(
        {"kind": "set", "path": "loads.L11.draw", "value": "5 A"},
        {"kind": "set", "path": "no.such.path", "value": "x"},
    )
    assert visit.notice()
    assert visit.document["loads"][10]["draw"] == "5 A"


STEPS = st.one_of(
    st.sampled_from(ROUTES).map(lambda route: {"kind": "go", "route": route}),
    st.tuples(
        st.sampled_from(
            ["loads.L01.draw", "loads.L02.name", "loads.L11.hours_anchor", "circuits.D01.run",
             "circuits.D14.size", "boat.volts", "boat.name", "bank.capacity", "inverter.rating",
             "loads.L11.note", "looks.fuse", "bank.chemistry", "loads.L39.supply"]
        ),
        st.sampled_from(["", "5", "4.6 A (4 to 5)", "3 kg", "60 W", "24 V", "no", "agm", "shore",
                         "10 AWG", "<b>", "1e309", "?", "Lamp", "x" * 201]),
    ).map(lambda pair: {"kind": "set", "path": pair[0], "value": pair[1], "typing": False}),
    st.tuples(
        st.sampled_from(
            ["undo", "redo", "add-load", "add-circuit", "copy-row", "delete-row", "move-up",
             "move-down", "start-own", "look-around", "copy-plan", "chooser"]
        ),
        st.sampled_from(["loads.L01", "loads.L11", "circuits.D01", ""]),
    ).map(lambda pair: {"kind": "do", "name": pair[0], "arg": pair[1], "form": {}}),
    st.sampled_from(["passage", "dock"]).map(
        lambda name: {"kind": "set", "path": "show.condition", "value": name}
    ),
    st.sampled_from(["zone", "circuit", ""]).map(
        lambda name: {"kind": "set", "path": "show.group", "value": name}
    ),
    st.sampled_from(["ft", "m"]).map(
        lambda name: {"kind": "set", "path": "settings.length", "value": name}
    ),
)  # fmt: skip


@settings(max_examples=30, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.lists(STEPS, min_size=1, max_size=3), max_size=8))
def test_whatever_happens_the_screen_is_whole_and_the_plan_can_be_read_back(monkeypatch, batches):
    visit = Page(monkeypatch)
    visit.open()
    for batch in batches:
        reply = visit.send(*batch)
        assert visit.screen.plain() == drawn_anew(visit).plain()
        assert parsed(written(visit.document)) == visit.document
        kept = [*reply.get("left", []), *([reply["record"]] if "record" in reply else [])]
        assert len({one["id"] for one in kept} | {"made-up"}) == len(kept) + 1
        for one in kept:
            assert parsed(json.dumps(json.loads(one["text"])["document"]))


def test_plans_left_within_one_batch_are_all_kept(visit):
    visit.open()
    start, look = ({"kind": "do", "name": name} for name in ("start-own", "look-around"))
    name = {"kind": "set", "path": "boat.name", "value": "First"}
    reply = visit.send(start, name, look, start)
    assert [one["name"] for one in reply["left"]] == ["First"]
    assert [reply["left"][0]["id"], reply["record"]["id"]] == ["plan-1", "plan-2"]


@pytest.mark.parametrize("route", ROUTES)
def test_every_address_has_its_page(visit, route):
    reply = visit.go(route)
    assert reply["title"].endswith("Ohmward")
    assert visit.screen.named("h1")


@pytest.mark.parametrize(
    "route",
    [
        "#start/²",
        "#start/99",
        "#start/-1",
        "#energy/use/%00",
        "#sum/drop?run",
        "#sum/drop?%ff=%ff",
        "#//",
        "#energy/use/L1/x",
    ],
)
def test_an_odd_address_is_harmless(visit, route):
    visit.go(route)
    assert visit.screen.named("h1")


def test_a_visit_may_begin_anywhere(visit):
    visit.open(route="#wiring/inverter")
    assert visit.screen.at("inverter-head").named("h1")[0].text == "Inverter"


def test_starting_makes_one_plan_and_going_on_makes_no_other(visit):
    assert visit.go("#start")["record"]["id"] == "plan-1"
    assert "record" not in visit.go("#start/2")
    assert visit.state.plan_id == "plan-1"


def test_a_link_is_looked_at_and_its_address_cleared(visit):
    reply = visit.go("#" + packed(made_up_document()))
    assert reply["route"] == "#papers/receive"
    assert "43" in visit.screen.at("page").text
    assert visit.document == made_up_document()
    visit.go("#home")
    assert visit.state.incoming is None


@pytest.mark.parametrize("cut", [1, 5, 400])
def test_a_damaged_link_says_so_and_opens_nothing(visit, cut):
    visit.do("start-own")
    before = visit.document
    reply = visit.go("#" + packed(made_up_document())[:-cut])
    assert reply["title"].startswith("Error")
    assert "damaged" in visit.screen.at("problems").text
    assert visit.document == before
    assert reply["route"] == "#papers/receive"


def test_a_link_with_a_damaged_mark_is_still_known_for_one(visit):
    visit.go("#q" + packed(made_up_document())[1:])
    assert visit.screen.at("problems").text


def test_a_sum_in_the_address(visit):
    visit.go("#sum/conductor?current=20+A&run=10+ft&volts=12+V")
    assert "8 SAE" in visit.screen.at("sum-answer").text
    visit.go("#sum/conductor")
    assert "8 SAE" in visit.screen.at("sum-answer").text
    visit.go("#sum/drop")
    assert "8 SAE" not in visit.screen.at("sum-answer").text


def test_a_file_is_a_plan_or_a_table_where_one_is_asked_for(visit):
    visit.go("#papers/receive")
    visit.send({"kind": "file", "name": "x.json", "text": written(made_up_document())})
    assert "43" in visit.screen.at("page").text
    visit.go("#energy/paste")
    visit.send({"kind": "file", "name": "x.csv", "text": "Load,Draw\nFan,1 A"})
    assert "Fan" in visit.screen.at("paste-preview").text


@pytest.mark.parametrize("route", ["#papers/receive", "#energy/paste"])
def test_a_file_too_large_is_said(visit, route):
    visit.go(route)
    visit.send({"kind": "file", "name": "x", "text": None, "size": 99_000_000})
    assert "too large" in visit.screen.at("problems").text


def test_what_the_device_says_is_shown(visit):
    visit.do("start-own")
    visit.send({"kind": "state", "key": "saved", "value": "14:02"})
    assert "14:02" in visit.screen.at("strip").text
    visit.send({"kind": "state", "key": "saved", "value": "failed: full"})
    assert "full" in visit.screen.at("strip").text
    visit.go("#papers")
    for value in ("ready", "checking", "failed: no cache", "none"):
        visit.send({"kind": "state", "key": "offline", "value": value})
        assert ("ready offline" in visit.screen.at("strip").text.lower()) == (
            value == "ready" or value.startswith("failed")
        )
    for value in ("kept", "may be cleared", "lost", "unknown"):
        visit.send({"kind": "state", "key": "storage", "value": value})
    visit.send({"kind": "state", "key": "update", "value": "waiting"})
    assert [one for one in visit.screen.named("button")
            if one.attributes.get("data-do") == "update-now"]  # fmt: skip


def test_a_reader_s_tab_says_so(visit):
    visit.open(tab="reader")
    visit.do("start-own")
    assert "only" in visit.screen.at("strip").text


@pytest.mark.parametrize("value", ['[{"id":"plan-2","name":"Tern","saved":"9:00"}]',
                                   [{"id": "plan-2", "name": "Tern"}], None])  # fmt: skip
def test_the_plans_of_this_device(visit, value):
    visit.go("#papers")
    visit.send({"kind": "state", "key": "plans", "value": value})
    assert ("Tern" in visit.screen.at("papers-plans").text) == bool(value)


@pytest.mark.parametrize("value", ["neon", "furlong", "", "5"])
def test_settings_of_another_release_are_passed_over(visit, value):
    names = ("view", "length", "temperature", "charge", "hand", "extra_dim", "x")
    for route in ("#home", "#energy/use", "#wiring/circuits/D14", "#energy/bank"):
        visit.open(route=route, settings=dict.fromkeys(names, value))
        assert visit.screen.named("h1")


def test_warming_leaves_no_trace(monkeypatch):
    visit = Page(monkeypatch)
    door.warm()
    assert visit.state.document == made_up_document()
    assert (visit.state.done, visit.state.reply, visit.desk.shown) == ((), {}, ())
    assert set(visit.open()) >= {"fragments", "title"}
    assert visit.sent() == list(PARTS)


def test_every_button_of_every_page_has_its_command(visit):
    visit.open(plans=[{"id": "plan-9", "name": "Tern", "saved": "9:00"}])
    visit.send({"kind": "state", "key": "update", "value": "waiting"})
    found = set()
    for route in ROUTES:
        visit.go(route)
        found |= {one.attributes["data-do"] for one in visit.screen.every()
                  if "data-do" in one.attributes}  # fmt: skip
    assert found - {"update-now"} <= set(COMMANDS)
