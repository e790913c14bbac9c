"""Files and links that are broken, too large or of another kind: said, and nothing is lost."""

import json
import zlib
from base64 import urlsafe_b64encode

import pytest

from engine.plan.document import new_document, written
from engine.plan.link import packed
from engine.plan.made_up import made_up_document
from tests.views.test_pages import check

GOOD = written(made_up_document())
LINK = packed(made_up_document())


def bomb():
    body = zlib.compress(b" " * 40_000_000, 9, wbits=-15)
    text = urlsafe_b64encode(body).decode().rstrip("=")
    return f"p1.{len(body)}.{zlib.crc32(body):08x}.{text}"


FILES = {
    "empty": "",
    "one byte": "x",
    "only a byte order mark": "\ufeff",
    "truncated": GOOD[:-30],
    "two plans": GOOD + GOOD,
    "a list": "[1, 2]",
    "a number": "1e309",
    "a picture": "\x89PNG\r\n\x1a\n\x00\x00",
    "a page": "<!doctype html><script>alert(1)</script>",
    "no format": json.dumps({"boat": {"name": "x"}}),
    "format 7": json.dumps({"format": 7, "boat": {}}),
    "an unknown key": json.dumps({"format": 1, "crew": []}),
    "a key twice": '{"format":1,"boat":{"name":"a","name":"b"}}',
    "not a number": '{"format":1,"bank":{"capacity":NaN}}',
    "infinity": '{"format":1,"bank":{"capacity":-Infinity}}',
    "a thousand deep": '{"format":1,"boat":' + '{"a":' * 1000 + "1" + "}" * 1001,
    "ten thousand loads": json.dumps(
        {"format": 1, "loads": [{"id": f"L{n:04d}", "name": "x"} for n in range(10_000)]}
    ),
    "a million letters": json.dumps({"format": 1, "boat": {"name": "x" * 1_000_000}}),
    "more than two million": " " * 2_100_000,
    "machinery": '{"format":1,"__proto__":{"x":1}}',
    "colliding ids": '{"format":1,"loads":[{"id":"L1"},{"id":"L1"}]}',
    "ids of another part": '{"format":1,"loads":[{"id":"D01"}]}',
    "a link of version 9": LINK.replace("p1", "p9", 1),
    "a link cut short": LINK[:-100],
    "a link with a letter changed": LINK[:900] + ("a" if LINK[900] != "a" else "b") + LINK[901:],
    "a link with a line break": LINK[:900] + "\n" + LINK[900:],
    "a link that unfolds to forty million": bomb(),
}


@pytest.fixture
def mine(visit):
    visit.do("start-own")
    visit.set("boat.name", "Gannet")
    visit.do("add-load")
    visit.go("#papers/receive")
    return visit


@pytest.mark.parametrize("kind", FILES)
@pytest.mark.parametrize("way", ["file", "text"])
def test_a_broken_plan_is_said_and_nothing_is_lost(mine, kind, way):
    before = mine.document
    if way == "file":
        mine.send({"kind": "file", "name": "plan.json", "text": FILES[kind]})
    else:
        mine.do("receive-text", text=FILES[kind])
    said = mine.screen.at("problems").text
    assert 20 < len(said) < 400
    assert mine.reply["title"].startswith("Error")
    assert "record" not in mine.reply
    assert "drop" not in mine.reply
    assert mine.document is before
    mine.do("accept")
    assert mine.document is before
    check(mine.screen)


@pytest.mark.parametrize("kind", [name for name in FILES if name.startswith("a link")])
def test_a_broken_link_in_the_address(mine, kind):
    before = mine.document
    mine.go("#" + FILES[kind])
    assert mine.screen.at("problems").text
    assert mine.document is before


def test_a_good_plan_after_a_broken_one(mine):
    mine.do("receive-text", text="x")
    mine.do("receive-text", text=GOOD)
    assert not mine.reply["title"].startswith("Error")
    mine.do("accept")
    assert mine.document == made_up_document()


def test_entries_that_cannot_be_read_stay_as_typed_and_the_rest_goes_on(mine):
    rows = [
        {"id": "L01", "name": "Pump", "draw": "3 kg", "hours_anchor": "2 h"},
        {"id": "L02", "name": "Lamp", "draw": "1 A", "hours_anchor": "2 h"},
        {"id": "L03", "name": "Fan", "draw": "1e309 A", "hours_anchor": "NaN", "duty": "-1"},
    ]
    runs = [{"id": f"D{n:02d}", "run": run} for n, run in enumerate(
        ["3 kg", "0 m", "-4 m", "4 km", "NaN", "1e309 m", "four", "½ m"], 1)]  # fmt: skip
    document = {**new_document("Tern"), "loads": rows, "circuits": runs}
    mine.do("receive-text", text=written(document))
    preview = mine.screen.at("page").text
    assert "11 value" in preview
    mine.do("accept")
    assert mine.document == document
    plan = mine.state.plan()
    assert len(plan.problems) == 11
    assert plan.circuits[7].run.likely == 0.5
    mine.go("#energy/use")
    assert mine.screen.at("f-loads-L01-draw").attributes["value"] == "3 kg"
    assert "3 kg" in mine.screen.at("f-loads-L01-draw-p").text
    for number in range(1, 8):
        mine.go(f"#wiring/circuits/D{number:02d}")
        box = mine.screen.at(f"f-circuits-D{number:02d}-run")
        assert box.attributes["value"] == runs[number - 1]["run"]
        assert box.attributes["aria-invalid"] == "true"
        check(mine.screen)


@pytest.mark.parametrize(
    "text",
    ["x", "a,b\n1,2", "Load,Draw\n" + "Lamp,1\n" * 10_000, "\x00" * 50, '"' * 99,
     "Load,Draw\n" + "x" * 400_000],
    ids=range(6),
)  # fmt: skip
def test_a_broken_table_is_said_and_nothing_is_lost(mine, text):
    mine.go("#energy/paste")
    before = mine.document
    mine.send({"kind": "file", "name": "x.csv", "text": text})
    assert mine.screen.at("problems").text
    mine.do("take-table")
    assert mine.document is before
    check(mine.screen)


def test_a_full_plan_of_long_names_still_shows_and_can_be_read_back(mine):
    rows = [{"id": f"L{n:03d}", "name": "W" * 200, "draw": "1 A"} for n in range(1, 501)]
    mine.do("receive-text", text=written({**new_document("Barge"), "loads": rows}))
    mine.do("accept")
    mine.go("#energy/use")
    check(mine.screen)
    mine.do("add-load")
    assert "500" in mine.notice()
    assert len(mine.document["loads"]) == 500
