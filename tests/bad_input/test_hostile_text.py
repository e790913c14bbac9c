"""Text that is meant to do harm: kept as typed, shown as text, run by nothing.

The list follows the project's own of hostile and broken files: markup and addresses that run,
formula cells, direction and zero-width marks, the names of a language's own machinery.
"""

import json

import pytest

from engine.plan.document import parsed, shaped, written
from engine.plan.link import packed, unpacked
from tests.views.boats import ROUTES, filled, named
from tests.views.test_pages import check

SCRIPT = "<script>alert(1)</script><img src=x onerror=alert(1)>\"'><svg onload=alert(1)>"
TEXTS = {
    "script": SCRIPT,
    "breaks out": '"><b data-do="delete-row" data-arg="loads.L01">',
    "address": "javascript:alert(1)",
    "formula": '=HYPERLINK("x","y")',
    "template": "{{7*7}} ${7*7} {% x %} %s {0}",
    "right to left": "\u202eabc\u202c \u200fسفينة\u200e",
    "zero width": "a\u200bb\u200cc\u200dd\ufeffe",
    "machinery": "__proto__ constructor __class__ toString",
    "entity": "&lt;script&gt; &#60;b&#62; &amp;amp;",
    "astral": "😀" * 60,
}
PLANS = {
    "in every field": filled,
    "in every word of a boat": named,
}


@pytest.mark.parametrize("plan", PLANS)
@pytest.mark.parametrize("kind", TEXTS)
def test_hostile_text_is_only_text_on_every_page(visit, kind, plan):
    visit.state.open_own(shaped(PLANS[plan](TEXTS[kind])))
    for route in ROUTES:
        visit.go(route)
        check(visit.screen)
        raw = json.dumps(visit.reply["fragments"])  # the title is set as text
        for mark in ("<script", "<img src", "<svg onload", "<b data-do"):
            assert mark not in raw
        buttons = [one for one in visit.screen.every() if "data-do" in one.attributes]
        assert all(one.name in {"button", "form"} for one in buttons)


@pytest.mark.parametrize("kind", TEXTS)
def test_hostile_text_is_kept_and_sent_on(kind):
    document = shaped(PLANS["in every word of a boat"](TEXTS[kind]))
    assert parsed(written(document)) == document
    assert unpacked(packed(document)) == document
    assert parsed(written(shaped(filled(TEXTS[kind])))) == shaped(filled(TEXTS[kind]))


@pytest.mark.parametrize("kind", TEXTS)
def test_hostile_text_typed_into_a_field(visit, kind):
    visit.do("start-own")
    visit.do("add-load")
    for path in ("loads.L01.name", "loads.L01.draw", "loads.L01.note", "boat.place"):
        visit.set(path, TEXTS[kind])
        check(visit.screen)
    visit.go("#energy/paste")
    visit.do("paste", table=f"Load\t{TEXTS[kind]}\n{TEXTS[kind]}\t{TEXTS[kind]}")
    check(visit.screen)
    visit.do("take-table")
    check(visit.screen)
    visit.do("receive-text", text=TEXTS[kind])
    check(visit.screen)
    assert parsed(written(visit.document)) == visit.document


@pytest.mark.parametrize("kind", TEXTS)
def test_hostile_text_in_an_address_or_from_the_device(visit, kind):
    text = TEXTS[kind]
    for route in (f"#{text}", f"#sum/{text}", f"#energy/use/{text}", f"#wiring/circuits/{text}",
                  f"#sum/drop?run={text}&current={text}", f"#start/{text}"):  # fmt: skip
        visit.go(route)
        check(visit.screen)
    for key in ("saved", "offline", "storage", "update", text):
        visit.send({"kind": "state", "key": key, "value": text})
    for route in ("#home", "#papers"):
        visit.open(
            route=route, version=text, today=text, base=text, tab=text, settings={text: text},
            plans=[{"id": text, "name": text, "saved": text}],
        )  # fmt: skip
        visit.do("ask-delete", text)
        visit.do("share")
        check(visit.screen)


def test_hostile_names_of_fields_and_files(visit):
    for kind, text in TEXTS.items():
        visit.set(text, text)
        visit.do(text, text, **{text: text})
        visit.set(f"sum.{text}.{text}", text)
        visit.go("#papers")
        visit.set("boat.name", text)
        name = visit.do("export")["download"]["name"]
        assert not set(name) & set("/\\<>\"':*?|"), kind
        check(visit.screen)
