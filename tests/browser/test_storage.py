"""The plan outlives a damaged write, a full device, a second tab and a page thrown away."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from playwright.sync_api import expect

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser.conftest import MakeHost, Reader

pytestmark = pytest.mark.browser

FAKE = (Path(__file__).parent / "fake_engine.mjs").read_text(encoding="utf-8")

# Runs a body with the object stores `slots`, `snapshots` and `about` open for writing.
IN_STORE = """(body) => new Promise((resolve, reject) => {
  const request = indexedDB.open("ohmward");
  request.onerror = () => reject(request.error);
  request.onsuccess = () => {
    const names = ["slots", "snapshots", "about"];
    const transaction = request.result.transaction(names, "readwrite");
    const [slots, snapshots, about] = names.map((name) => transaction.objectStore(name));
    const done = {};
    transaction.oncomplete = () => { request.result.close(); resolve(done.value); };
    const bodies = {
      slots: () => { slots.getAll().onsuccess = ({ target }) => { done.value = target.result; }; },
      snapshots: () => {
        snapshots.getAll().onsuccess = ({ target }) => { done.value = target.result; };
      },
      plans: () => {
        about.get("plans").onsuccess = ({ target }) => { done.value = target.result; };
      },
      damageNewest: () => {
        slots.openCursor().onsuccess = ({ target: { result: cursor } }) => {
          if (!cursor) {
            const { key, value } = done.newest;
            slots.put({ ...value, text: value.text.slice(0, -7) }, key);
            return;
          }
          if (!done.newest || cursor.value.seq > done.newest.value.seq) {
            done.newest = { key: cursor.key, value: cursor.value };
          }
          cursor.continue();
        };
      },
      damageSlots: () => {
        slots.openCursor().onsuccess = ({ target: { result: cursor } }) => {
          if (!cursor) return;
          cursor.update({ ...cursor.value, text: "" });
          cursor.continue();
        };
      },
      empty: () => { slots.clear(); snapshots.clear(); about.clear(); },
    };
    bodies[body]();
  };
})"""


@pytest.fixture
def address(make_host: "MakeHost") -> str:
    """Give the address of the page with the stand-in engine."""
    return make_host(replaced={"worker.mjs": FAKE.encode()}).address


@pytest.fixture
def tab(reader: "Reader", address: str) -> Callable[[], "Reader"]:
    """Open one more tab of the same browser."""

    def open_tab() -> "Reader":
        page = reader.page.context.new_page()
        return type(reader)(page).open(address)

    return open_tab


def in_store(page: "Page", body: str) -> Any:
    return page.evaluate(IN_STORE, body)


def name_boat(reader: "Reader", name: str) -> None:
    """Name the boat, and wait until that is stored."""
    reader.type_in("boat", name)
    for _ in range(100):
        if any(json.loads(slot["text"] or "{}").get("boat") == name for slot in stored(reader)):
            return
        reader.page.wait_for_timeout(20)
    pytest.fail(f"{name} was never stored")


def stored(reader: "Reader") -> list[dict[str, Any]]:
    slots: list[dict[str, Any]] = in_store(reader.page, "slots")
    return slots


def states(reader: "Reader", key: str) -> list[Any]:
    came = json.loads(reader.page.locator("#events").text_content() or "[]")
    return [event["value"] for event in came if event["kind"] == "state" and event["key"] == key]


def test_two_slots_are_written_in_turn(reader: "Reader", address: str) -> None:
    reader.open(address)
    for name in ("Ash", "Beech", "Cedar"):
        name_boat(reader, name)
    slots = sorted(stored(reader), key=lambda slot: slot["seq"])
    assert [slot["seq"] for slot in slots] == [2, 3]
    assert [json.loads(slot["text"])["boat"] for slot in slots] == ["Beech", "Cedar"]
    [plan] = in_store(reader.page, "plans")
    assert (plan["id"], plan["name"]) == ("p1", "Cedar")


def test_a_damaged_newest_slot_costs_one_step(reader: "Reader", address: str) -> None:
    reader.open(address)
    for name in ("Ash", "Beech", "Cedar"):
        name_boat(reader, name)
    in_store(reader.page, "damageNewest")
    reader.page.reload()
    assert reader.wait_ready().text("h1") == "Beech"
    name_boat(reader, "Damson")  # written over the damaged one, not over the good one
    kept = {json.loads(slot["text"])["boat"] for slot in stored(reader)}
    assert kept == {"Beech", "Damson"}


def test_behind_both_slots_stands_a_snapshot(reader: "Reader", address: str) -> None:
    reader.open(address)
    name_boat(reader, "Ash")
    name_boat(reader, "Beech")
    assert len(in_store(reader.page, "snapshots")) == 1  # one in five minutes at most
    in_store(reader.page, "damageSlots")
    reader.page.reload()
    assert reader.wait_ready().text("h1") == "Ash"


def test_a_second_tab_only_reads_until_the_first_closes(
    reader: "Reader", address: str, tab: Callable[[], "Reader"]
) -> None:
    reader.open(address)
    name_boat(reader, "Ash")
    second = tab()
    assert (reader.text("#tab"), second.text("#tab")) == ("writer", "reader")
    second.type_in("boat", "Never")
    second.page.wait_for_timeout(300)
    assert {json.loads(slot["text"])["boat"] for slot in stored(second)} == {"Ash"}

    reader.page.reload()  # to load again is not to leave
    assert reader.wait_ready().text("#tab") == "writer"

    reader.page.close()
    second.wait("document.getElementById('tab')?.textContent === 'writer'")
    second.settle()
    assert second.text("h1") == "Ash"
    name_boat(second, "Beech")


def test_saving_is_told_and_asked_to_be_kept(reader: "Reader", address: str) -> None:
    reader.open(address)
    name_boat(reader, "Ash")
    reader.wait("document.getElementById('events').textContent.includes('storage')")
    reader.settle()
    assert states(reader, "saved")[0][2] == ":"
    assert states(reader, "storage")[0] in {"kept", "may be cleared", "unknown"}
    assert states(reader, "plans")[0][0]["name"] == "Ash"


def test_a_write_that_fails_is_said_and_the_plan_can_be_taken_away(
    reader: "Reader", address: str
) -> None:
    page = reader.page
    page.add_init_script(
        "IDBObjectStore.prototype.put = () => { throw new DOMException('The device is full'); };"
    )
    reader.open(address).type_in("boat", "Ash")
    expect(page.locator("#stop")).to_contain_text("The device is full")
    reader.settle()
    assert states(reader, "saved") == ["failed: The device is full"]
    with page.expect_download() as download:
        page.get_by_role("button", name="Save a copy to a file now").click()
    assert json.loads(Path(download.value.path()).read_text())["boat"] == "Ash"


def test_without_a_store_the_page_still_works(reader: "Reader", address: str) -> None:
    reader.page.add_init_script(
        "IDBFactory.prototype.open = () => { throw new DOMException('not allowed here'); };"
    )
    reader.open(address)
    assert states(reader, "saved") == ["failed: not allowed here"]
    assert reader.type_in("boat", "Ash").text("h1") == "Ash"


def test_an_emptied_store_is_noticed(reader: "Reader", address: str) -> None:
    reader.open(address)
    name_boat(reader, "Ash")
    reader.wait("localStorage.getItem('ohmward.had')")
    in_store(reader.page, "empty")
    reader.page.reload()
    reader.wait_ready().wait("document.getElementById('events').textContent.includes('lost')")
    assert states(reader, "storage") == ["lost"]


def test_what_was_typed_as_the_page_went_away_is_there_again(
    reader: "Reader", address: str
) -> None:
    reader.open(address)
    name_boat(reader, "Ash")
    reader.page.locator("#f-amps").fill("21")  # and never left
    reader.page.reload()
    assert "amps 21" in reader.wait_ready().text("#answer")


def test_a_dropped_plan_leaves_nothing(reader: "Reader", address: str) -> None:
    reader.open(address)
    name_boat(reader, "Ash")
    reader.press("delete")
    reader.wait("localStorage.getItem('ohmward.page') === 'null'")
    for _ in range(100):
        if not in_store(reader.page, "plans"):
            break
        reader.page.wait_for_timeout(20)
    assert [in_store(reader.page, body) for body in ("slots", "snapshots", "plans")] == [[], [], []]
