"""The page script by itself, with a stand-in for the engine: what the reader types is kept."""

import base64
import json
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from playwright.sync_api import Page, expect

if TYPE_CHECKING:
    from tests.browser.conftest import MakeHost, Reader

pytestmark = pytest.mark.browser

FAKE = (Path(__file__).parent / "fake_engine.mjs").read_text(encoding="utf-8")
FOCUSED = "document.activeElement.id"
SELECTED = "getSelection().toString()"
# A link inside a sentence is as tall as its line; everything else meets a thumb.
SMALL_TARGETS = """[...document.querySelectorAll(
  "a, button, select, summary, textarea, label:has(input), input:not([type=checkbox], [type=radio])"
)].filter((element) => element.checkVisibility() && !element.closest("p, .skip, label label"))
  .map((element) => [element.outerHTML.slice(0, 70), element.getBoundingClientRect()])
  .filter(([, { width, height }]) => Math.min(width, height) < 47.9)
  .map(([html, { width, height }]) => `${html} ${width} x ${height}`)"""
MEAN_LUMINANCE = """async (picture) => {
  const image = new Image();
  image.src = `data:image/png;base64,${picture}`;
  await image.decode();
  const canvas = new OffscreenCanvas(image.width, image.height);
  const context = canvas.getContext("2d");
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  const linear = (byte) =>
    byte <= 10 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4;
  let sum = 0;
  for (let at = 0; at < data.length; at += 4) {
    const [red, green, blue] = data.slice(at, at + 3);
    sum += 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
  }
  return sum / (data.length / 4);
}"""

Shell = Callable[..., "Reader"]


@pytest.fixture
def shell(reader: "Reader", make_host: "MakeHost") -> Shell:
    """Open the page with the stand-in engine: ``shell(start=milliseconds)``."""

    def open_it(start: int = 0, *, wait: bool = True) -> "Reader":
        script = FAKE.replace("START = 0", f"START = {start}").encode()
        address = make_host(replaced={"worker.mjs": script}).address
        if wait:
            return reader.open(address)
        reader.page.goto(address)
        return reader

    return open_it


def events(reader: "Reader", kind: str) -> list[dict[str, Any]]:
    came = json.loads(reader.page.locator("#events").text_content() or "[]")
    return [event for event in came if event["kind"] == kind]


def slow_down(reader: "Reader", milliseconds: int) -> None:
    """Let the stand-in answer late."""
    reader.page.evaluate(
        """milliseconds => {
          const button = document.createElement("button");
          Object.assign(button.dataset, { do: "pause", arg: milliseconds });
          document.body.append(button);
          button.click();
          button.remove();
        }""",
        milliseconds,
    )
    reader.settle()


# ---- typing ----


def test_a_half_typed_value_outlives_the_answers_it_causes(shell: Shell) -> None:
    reader = shell()
    reader.page.focus("#f-amps")
    reader.page.keyboard.type("12.", delay=150)
    reader.settle()
    assert reader.page.input_value("#f-amps") == "12."
    assert "amps 12." in reader.text("#answer")
    assert {event["typing"] for event in events(reader, "set")} == {True}


def test_a_field_that_was_left_shows_what_the_engine_made_of_it(shell: Shell) -> None:
    reader = shell().type_in("run", "7,5")
    assert reader.page.input_value("#f-run") == "7.5"
    last = events(reader, "set")[-1]
    assert last == {"kind": "set", "path": "run", "value": "7,5", "typing": False}


def test_a_late_answer_does_not_undo_a_choice(shell: Shell) -> None:
    reader = shell()
    slow_down(reader, 200)
    page = reader.page
    page.check("#shore-yes")
    page.check("#volts-24")
    page.select_option("#f-size", "10")
    for _ in range(8):  # while answers to the first choices come in
        assert page.is_checked("#shore-yes")
        assert page.is_checked("#volts-24")
        assert page.input_value("#f-size") == "10"
        page.wait_for_timeout(50)
    assert "shore yes, 24 V, size 10" in reader.settle().text("#answer")


def test_focus_and_open_details_stay_through_a_morph(shell: Shell) -> None:
    reader = shell()
    page = reader.page
    page.locator("#why summary").click()
    page.locator("#f-run").focus()
    page.keyboard.type("8")
    reader.wait("document.getElementById('answer').textContent.startsWith('run 8')")
    page.keyboard.type("9")
    reader.settle()
    assert page.evaluate(FOCUSED) == "f-run"
    assert page.input_value("#f-run") == "89"
    assert page.locator("#why").get_attribute("open") is not None
    reader.wait("document.getElementById('why').textContent.includes('Because of 89')")


def test_enter_goes_to_the_next_field_and_selects_it(shell: Shell) -> None:
    reader = shell()
    page = reader.page
    page.click("#f-run")
    reader.wait(f"{SELECTED} === '6.1'")
    page.keyboard.type("5")
    page.keyboard.press("Enter")
    reader.wait(f"{SELECTED} === '14'")
    assert page.evaluate(FOCUSED) == "f-amps"
    assert events(reader.settle(), "set")[-1]["value"] == "5"


def test_a_form_with_a_command_goes_as_a_whole(shell: Shell) -> None:
    reader = shell()
    page = reader.page
    page.fill("#f-find", "fridge")
    reader.type_in("boat", "Birch")  # an answer in between leaves it alone
    assert page.input_value("#f-find") == "fridge"
    page.press("#f-find", "Enter")
    reader.settle()
    assert events(reader, "do") == [
        {"kind": "do", "name": "find", "arg": "", "form": {"find": "fridge"}}
    ]
    assert "find" not in {event["path"] for event in events(reader, "set")}
    assert page.input_value("#f-find") == ""


# ---- before the engine is ready ----


def test_what_is_done_before_the_engine_is_ready_waits_for_it(shell: Shell) -> None:
    reader = shell(start=1500, wait=False)
    page = reader.page
    assert page.evaluate("'waking' in document.documentElement.dataset")
    page.evaluate("location.hash = '#other'")
    reader.wait_ready()
    kinds = [event["kind"] for event in json.loads(page.locator("#events").text_content() or "")]
    assert kinds[:2] == ["open", "go"]
    assert reader.text("h1") == "Another page"


def test_a_returning_owner_sees_the_last_page_and_may_type_at_once(shell: Shell) -> None:
    reader = shell(start=1500).type_in("boat", "Birch")
    page = reader.page
    reader.wait("localStorage.getItem('ohmward.page')?.includes('Birch')")
    page.reload()
    assert page.evaluate("'waking' in document.documentElement.dataset")
    assert reader.text("h1") == "Birch"
    page.fill("#f-amps", "9")
    page.focus("#f-boat")
    page.keyboard.type("Ced")  # left half typed
    assert page.evaluate("'waking' in document.documentElement.dataset")
    reader.wait_ready()
    assert page.evaluate(FOCUSED) == "f-boat"
    assert page.input_value("#f-boat") == "Ced"
    assert "amps 9" in reader.text("#answer")


def test_a_long_wait_is_named(shell: Shell) -> None:
    reader = shell()
    slow_down(reader, 1600)
    reader.page.check("#shore-yes")
    assert reader.text(".progress") == ""
    reader.wait("document.querySelector('.progress').textContent === 'Still working'")
    assert reader.settle().text(".progress") == ""


# ---- commands ----


def test_undo_keys_belong_to_the_plan_unless_something_is_half_typed(shell: Shell) -> None:
    reader = shell().type_in("boat", "Birch")
    page = reader.page
    page.locator("#f-run").focus()
    page.keyboard.press("Control+z")
    assert reader.settle().text("h1") == "Alder"
    page.keyboard.type("3")
    page.keyboard.press("Control+z")
    page.keyboard.press("Control+Shift+z")
    page.wait_for_timeout(200)
    reader.settle()
    assert [event["name"] for event in events(reader, "do")] == ["undo"]
    page.locator("h1").click()
    page.keyboard.press("Control+Shift+z")
    reader.settle()
    assert [event["name"] for event in events(reader, "do")] == ["undo", "redo"]


def test_a_second_tap_at_once_is_ignored(shell: Shell) -> None:
    reader = shell()
    reader.page.dblclick("[data-do=add]")
    assert len(events(reader.settle(), "do")) == 1
    reader.page.wait_for_timeout(350)
    reader.press("add")
    assert len(events(reader, "do")) == 2


def test_the_splash_lock_freezes_input_and_two_taps_open_it(shell: Shell) -> None:
    reader = shell()
    page = reader.page
    page.click("[data-local=lock]")
    button = page.locator(".lock button")
    assert reader.page.evaluate("document.getElementById('page').inert")
    expect(page.locator("#answer")).to_be_visible()
    first = button.bounding_box()
    button.click()
    second = button.bounding_box()
    assert first
    assert second
    assert abs(first["x"] - second["x"]) > 100
    page.mouse.click(640, 300)  # a splash: all over again
    button.click()
    expect(button).to_be_visible()
    button.click()
    expect(button).to_have_count(0)
    assert not reader.page.evaluate("document.getElementById('page').inert")
    page.click("[data-local=lock]")
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    expect(button).to_have_count(0)


def test_a_tap_anywhere_in_a_row_follows_its_link(shell: Shell) -> None:
    reader = shell()
    reader.page.locator("#L2 td").last.click()
    reader.wait("location.hash === '#other/L2'")


# ---- going and coming back ----


def test_a_new_page_starts_at_its_heading_and_back_returns_to_the_row(shell: Shell) -> None:
    reader = shell()
    page = reader.page
    page.locator("#foot a").click()
    reader.wait("document.querySelector('#page details')")
    reader.settle()
    assert page.evaluate("[document.activeElement.localName, scrollY]") == ["h1", 0]
    page.go_back()
    reader.wait("document.getElementById('foot')")
    reader.settle()
    assert page.evaluate("document.activeElement.parentNode.id") == "foot"
    assert page.evaluate("scrollY") > 300


# ---- light and paper ----


def lightness(page: Page) -> float:
    """Mean luminance of what the screen shows, as a share of full white."""
    picture = base64.b64encode(page.screenshot()).decode()
    return float(page.evaluate(MEAN_LUMINANCE, picture))


@pytest.mark.parametrize("view", ["dim-red", "dim-plain"])
def test_no_white_flash_when_dim(shell: Shell, view: str) -> None:
    reader = shell()
    page = reader.page
    page.evaluate(
        "view => localStorage.setItem('ohmward.settings', JSON.stringify({ view }))", view
    )
    # Neither the page script nor the engine ever comes: what is painted is dark all the same.
    page.route("**/app.mjs", lambda route: route.abort())
    page.reload()
    style = "getComputedStyle(document.documentElement)"
    ground = page.evaluate(f"{style}.backgroundColor.match(/\\d+/g).map(Number)")
    assert max(ground) < 12
    assert page.evaluate(f"{style}.colorScheme") == "dark"


def test_the_view_is_kept_for_the_next_visit(shell: Shell) -> None:
    reader = shell().press("view", "dim-red")
    view = "document.documentElement.dataset.view"
    assert reader.page.evaluate(view) == "dim-red"
    reader.page.reload()
    assert reader.page.evaluate(view) == "dim-red"


@pytest.mark.parametrize("view", ["dim-red", "dim-plain"])
@pytest.mark.parametrize("extra", [0, 3])
def test_dim_is_dim(page_ready: "Reader", view: str, extra: int) -> None:
    page_ready.page.evaluate(
        "settings => Object.assign(document.documentElement.dataset, settings)",
        {"view": view, "extra": str(extra)},
    )
    assert lightness(page_ready.page) < 0.02


def test_paper_is_white_and_carries_no_buttons(page_ready: "Reader") -> None:
    page = page_ready.page
    page.evaluate("document.documentElement.dataset.view = 'dim-red'")
    page.emulate_media(media="print")
    style = "getComputedStyle(document.documentElement)"
    assert page.evaluate(f"{style}.backgroundColor") == "rgb(255, 255, 255)"
    assert page.evaluate(f"{style}.color") == "rgb(0, 0, 0)"
    expect(page.locator("#rail")).to_be_hidden()
    assert page.locator("button:visible").count() == 0
    page.emulate_media(media="screen")


def test_folded_parts_are_open_on_paper_only(shell: Shell) -> None:
    reader = shell()
    for event, is_open in (("beforeprint", True), ("afterprint", False)):
        reader.page.evaluate("name => dispatchEvent(new Event(name))", event)
        assert reader.page.evaluate("document.getElementById('why').open") is is_open


# ---- sizes ----


@pytest.mark.parametrize("width", [1280, 768, 390])
@pytest.mark.parametrize("view", ["plain", "sun"])
def test_everything_tappable_meets_a_thumb(shell: Shell, width: int, view: str) -> None:
    reader = shell()
    reader.page.set_viewport_size({"width": width, "height": 900})
    reader.page.evaluate("view => { document.documentElement.dataset.view = view; }", view)
    assert reader.page.evaluate(SMALL_TARGETS) == []


@pytest.mark.parametrize("text_size", [100, 200])
def test_nothing_scrolls_sideways_on_the_smallest_screen(shell: Shell, text_size: int) -> None:
    page = shell().page
    page.set_viewport_size({"width": 320, "height": 640})
    page.evaluate(
        "size => { document.documentElement.style.fontSize = size; }", f"{1.125 * text_size}%"
    )
    assert page.evaluate("document.documentElement.scrollWidth") <= 320


# ---- when something breaks ----


def test_a_broken_calculator_offers_the_plan_as_a_file(shell: Shell) -> None:
    reader = shell().type_in("boat", "Birch")
    page = reader.page
    page.click("[data-do=break]")
    expect(page.locator("#stop")).to_contain_text("broken on purpose")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save a copy to a file now").click()
    assert json.loads(Path(download.value.path()).read_text())["boat"] == "Birch"


def test_long_work_goes_on_by_itself_and_lets_a_tap_through(shell: Shell) -> None:
    reader = shell()
    reader.press("work").press("add")
    assert reader.text("#L4")
    reader.wait("document.getElementById('slices').textContent === '40'")
    assert len(events(reader, "more")) == 40


def test_long_work_rests_and_goes_on(shell: Shell) -> None:
    reader = shell()
    slow_down(reader, 20)
    reader.press("work")
    reader.wait("document.getElementById('slices').textContent > 3")
    reader.press("rest")
    reader.page.wait_for_timeout(100)
    done = reader.text("#slices")
    reader.page.wait_for_timeout(150)
    assert reader.text("#slices") == done
    assert int(done) < 40
    reader.press("work")
    reader.wait("document.getElementById('slices').textContent === '40'")
