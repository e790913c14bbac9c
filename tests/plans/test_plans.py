"""Every plan file this program ever wrote still opens.

One file per format and kind, kept for good; a new format adds files here and changes none.
"""

import json
from pathlib import Path

import pytest

from engine.check.report import report_of
from engine.plan.document import parsed, written
from engine.plan.link import packed, unpacked
from engine.plan.read import plan_of

FOLDER = Path(__file__).parent
PLANS = sorted(FOLDER.glob("*.json"))
UNREAD = {
    "format-1-guesses.json": {
        "boat.people", "loads.L02.draw", "loads.L03.hours_anchor", "circuits.D02.run",
        "circuits.D02.size", "bank.charge",
    },
}  # fmt: skip
"""What cannot be read in a plan; nothing in the others."""


def named(path):
    return path.name


@pytest.mark.parametrize("path", PLANS, ids=named)
def test_an_old_plan_opens_and_every_answer_follows(path):
    document = parsed(path.read_text(encoding="utf-8"))
    plan = plan_of(document)
    assert {problem.where for problem in plan.problems} == UNREAD.get(path.name, set())
    found = json.loads(json.dumps(report_of(plan)))
    assert set(found["circuits"]) == {row["id"] for row in document.get("circuits", [])}
    assert set(found["day_use"]) == {"anchor", "passage", "dock", "unattended"}


@pytest.mark.parametrize("path", PLANS, ids=named)
def test_an_old_plan_is_written_as_it_is_read(path):
    document = parsed(path.read_text(encoding="utf-8"))
    assert parsed(written(document)) == document
    assert unpacked(packed(document)) == document


def test_there_is_one_of_each_kind():
    assert [path.name for path in PLANS] == [
        "format-1-empty.json",
        "format-1-guesses.json",
        "format-1-small.json",
        "format-1-twenty-four-volts.json",
    ]
