"""What came in is looked at first: a link, an address with a link, or the text of a file."""

import pytest

from engine.plan.document import written
from engine.plan.link import packed
from engine.plan.made_up import made_up_document
from engine.plan.receive import received
from engine.problem import Problem

BOAT = made_up_document()


@pytest.mark.parametrize(
    "text",
    [
        packed(BOAT),
        "#" + packed(BOAT),
        f"http://127.0.0.1/plan/#{packed(BOAT)}\n".replace("https://", "//"),
        written(BOAT),
        "\ufeff" + written(BOAT),
    ],
)
def test_the_same_plan_by_every_way(text):
    found = received(text)
    assert found.document == BOAT
    assert (found.name, found.revision, found.made_up) == ("Wherrilow", "planned", True)
    assert (found.loads, found.circuits, found.problems) == (43, 24, ())


def test_what_cannot_be_read_is_counted():
    row = {"id": "L01", "name": "lamp #5.5", "draw": "3 kg"}
    found = received(written({"format": 1, "loads": [row]}))
    assert [problem.where for problem in found.problems] == ["loads.L01.draw"]
    assert found.document["loads"] == [row]


@pytest.mark.parametrize("text", ["", "x", "hello.", packed(BOAT)[:-5], "#p9.1.00000000.AA", "{}"])
def test_what_is_no_whole_plan(text):
    with pytest.raises(Problem):
        received(text)
