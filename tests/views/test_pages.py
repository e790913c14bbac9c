"""Every page of every boat: whole markup, labelled fields, headed tables, and nothing inline."""

import pytest

from engine.plan.document import shaped, written
from tests.views.boats import BOATS, ROUTES
from tests.views.markup import Element


def shown(visit, boat, route, state="plain"):
    """Put a boat on the screen and follow an address."""
    visit.state.open_own(shaped(BOATS[boat]))
    visit.state.document = {**visit.state.document, "made_up": boat == "made up"}
    if state == "feet":
        visit.set("settings.length", "ft")
        visit.set("settings.temperature", "degF")
        visit.set("settings.charge", "Wh")
        visit.set("show.condition", "passage")
    if state == "grouped":
        visit.set("show.group", "zone")
    visit.go(route)
    return visit.screen


def check(screen: Element) -> None:
    """Ask of a screen what must always hold."""
    every = list(screen.every())
    idents = [str(one.attributes["id"]) for one in every if "id" in one.attributes]
    assert len(idents) == len(set(idents)), [one for one in idents if idents.count(one) > 1]
    for one in every:
        for attribute, value in one.attributes.items():
            assert attribute != "style", one
            assert not attribute.startswith("on"), one
            assert attribute not in {"id", "for", "href", "name"} or value, one
        for name in ("for", "aria-describedby", "aria-labelledby"):
            for target in (one.attributes.get(name) or "").split():
                assert target in idents, f"{name} points to {target}, which is not there"
    for table in screen.named("table"):
        heads = table.named("th")
        assert heads, "a table has no heading"
        assert all(head.attributes.get("scope") for head in heads)
    assert len(screen.named("h1")) == 1
    labelled = {one.attributes.get("for") for one in screen.named("label")}
    wrapped = {id(one) for label in screen.named("label") for one in label.every()}
    for one in screen.named("input", "select", "textarea"):
        ident = one.attributes.get("id")
        spoken = one.attributes.get("aria-label") or ident in labelled or id(one) in wrapped
        assert spoken, f"{ident or one.attributes} has no label"
    for one in screen.named("button", "a"):
        assert one.text or one.attributes.get("aria-label"), "a button says nothing"
    for one in screen.named("a"):
        assert str(one.attributes.get("href")).startswith("#")
    pictures = screen.named("svg")
    windows = {id(part) for one in pictures for part in one.every() if part is not one}
    for one in pictures:
        hidden = one.attributes.get("aria-hidden") == "true" or id(one) in windows
        assert hidden or one.named("title")
    assert not screen.named("script", "style", "iframe", "object")


@pytest.mark.parametrize("boat", BOATS)
@pytest.mark.parametrize("route", ROUTES)
def test_a_page_is_whole(visit, boat, route):
    check(shown(visit, boat, route))


@pytest.mark.parametrize("boat", ["made up", "broken"])
@pytest.mark.parametrize("state", ["feet", "grouped"])
@pytest.mark.parametrize(
    "route", ["#home", "#energy/use", "#energy/use/L39", "#wiring/circuits/D01"]
)
def test_a_page_is_whole_however_it_is_shown(visit, boat, state, route):
    check(shown(visit, boat, route, state))


def test_the_first_page_of_all_is_whole(visit):
    check(visit.screen)


def test_pages_of_what_came_in_are_whole(visit):
    for boat in BOATS.values():
        visit.do("receive-text", text=written(boat))
        check(visit.screen)
    visit.do("receive-text", text="x")
    check(visit.screen)


def test_pages_of_a_table_are_whole(visit):
    visit.go("#energy/paste")
    for text in ("x", "Load,Colour,,Draw\nFan,red,,1 A\n,,,2\nTotal,,,3", "Load\nFan"):
        visit.do("paste", table=text)
        check(visit.screen)


def test_a_page_after_everything_the_device_can_say(visit):
    kept = [{"id": "plan-2"}, {"id": "plan-3", "name": "Tern", "saved": "9:00"}]
    visit.open(route="#papers", plans=kept)
    visit.do("ask-delete", "plan-3")
    visit.send({"kind": "state", "key": "update", "value": "waiting"},
               {"kind": "state", "key": "offline", "value": "failed: gone"},
               {"kind": "state", "key": "storage", "value": "may be cleared"})  # fmt: skip
    check(visit.screen)
    visit.do("share")
    check(visit.screen)


def test_a_field_that_cannot_be_read_is_marked_and_described(visit):
    shown(visit, "made up", "#energy/use/L11")
    visit.set("loads.L11.draw", "3 kg")
    box = visit.screen.at("f-loads-L11-draw")
    assert box.attributes["aria-invalid"] == "true"
    assert box.attributes["value"] == "3 kg"
    described = visit.screen.at(str(box.attributes["aria-describedby"]).split()[0])
    assert "3 kg" in described.text
    assert visit.screen.at("load-answer").text
    check(visit.screen)


@pytest.mark.parametrize("name", ["engine_space", "note", "allowed", "ambient"])
def test_every_kind_of_field_keeps_what_was_typed(visit, name):
    shown(visit, "made up", "#wiring/circuits/D14")
    values = {"engine_space": "yes", "note": "two\nlines <b>", "allowed": "other",
              "ambient": "86 degF"}  # fmt: skip
    visit.set(f"circuits.D14.{name}", values[name])
    one = visit.screen.at(f"f-circuits-D14-{name}")
    if name == "engine_space":
        assert "checked" in one.attributes
    elif name == "note":
        assert "".join(str(part) for part in one.inside) == "two\nlines <b>"
    elif name == "allowed":
        chosen = [option for option in one.named("option") if "selected" in option.attributes]
        assert [option.attributes["value"] for option in chosen] == ["other"]
    else:
        assert one.attributes["value"] == "86 degF"


def test_the_d14_page_says_it_cannot_say(visit):
    shown(visit, "made up", "#wiring/circuits/D14")
    text = visit.screen.at("circuit-answer").text
    assert "Cannot say" in text
    assert "3.04 %" in text


def test_the_home_page_answers_first(visit):
    shown(visit, "made up", "#home")
    text = visit.screen.at("home-answer").text
    for figure in ("146", "132"):
        assert figure in text
    rows = visit.screen.at("home-two").named("tbody")[0].named("tr")
    assert [row.named("a")[0].attributes["href"] for row in rows] == [
        f"#energy/use/{ident}" for ident in ("L11", "L37", "L39", "L34", "L40")
    ]
