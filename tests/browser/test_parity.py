"""The same events give the same page natively and in the browser, to the printed figure."""

import json
import re
from typing import TYPE_CHECKING, Any

import pytest

from engine import door
from tests.browser.pages import QUESTIONS, ROUTES

if TYPE_CHECKING:
    from tests.browser.conftest import Reader

pytestmark = pytest.mark.browser

ASK = """async (events) => {
  const worker = new Worker("./worker.mjs", { type: "module", name: "" });
  const replies = [];
  const [first] = events;
  await new Promise((resolve, reject) => { // until all of the engine is there, as it is natively
    worker.onmessage = ({ data }) => {
      if (data.n === 0 && data.reply) worker.here = (worker.here ?? 0) + 1;
      if (worker.here === 2) resolve();
      if (data.failed) reject(new Error(data.failed));
    };
    worker.postMessage({ n: 0, event: first });
  });
  for (const [n, event] of events.entries()) {
    replies.push(await new Promise((resolve, reject) => {
      worker.onmessage = ({ data }) => {
        if (data.n === n + 1) resolve(data.reply);
        if (data.failed) reject(new Error(data.failed));
      };
      worker.postMessage({ n: n + 1, event });
    }));
  }
  worker.terminate();
  return replies;
}"""
OPEN: dict[str, Any] = {
    "kind": "open", "record": None, "settings": {"chosen": "looked"}, "route": "#home",
    "plans": [], "today": "2026-11-25", "version": "1", "tab": "writer",
}  # fmt: skip
EDITS: tuple[dict[str, Any], ...] = (
    {"kind": "set", "path": "loads.L11.draw", "value": "5,2 A"},
    {"kind": "set", "path": "loads.L29.hours_passage", "value": "14-22"},
    {"kind": "do", "name": "how-sure", "arg": "loads.L33.draw|wild ×2"},
    {"kind": "set", "path": "circuits.D14.run", "value": "20 ft 3"},
    {"kind": "set", "path": "bank.chemistry", "value": "flooded"},
    {"kind": "set", "path": "inverter.rating", "value": "3 kg"},
    {"kind": "do", "name": "start-own", "arg": ""},
    *({"kind": "set", "path": f"start.have.{place}", "value": "yes"} for place in range(24)),
)
FIGURE = re.compile(r"-?\d+(?:\.\d+)?")


def native(events: list[dict[str, Any]]) -> list[dict[str, Any]]:
    door.warm()
    return [json.loads(door.answer(json.dumps({"events": [event]}))) for event in events]


def near(one: str, other: str) -> bool:
    """The same words, and figures that differ by the last printed digit at most."""
    if FIGURE.sub("#", one) != FIGURE.sub("#", other):
        return False
    pairs = zip(FIGURE.findall(one), FIGURE.findall(other), strict=True)
    return all(a == b or abs(float(a) - float(b)) <= 0.006 * abs(float(a)) for a, b in pairs)


def test_every_page_says_the_same_natively_and_in_the_browser(page_ready: "Reader") -> None:
    walk: list[dict[str, Any]] = [{"kind": "go", "route": route} for route in (*ROUTES, *QUESTIONS)]
    events = [OPEN, *walk[: len(ROUTES)], *EDITS, *walk]
    here = native(events)
    there = page_ready.page.evaluate(ASK, events)
    for event, one, other in zip(events, here, there, strict=True):
        assert one["title"] == other["title"], event
        assert [name for name, _ in one["fragments"]] == [name for name, _ in other["fragments"]]
        for (name, mine), (_, theirs) in zip(one["fragments"], other["fragments"], strict=True):
            assert near(mine, theirs), (event, name)
