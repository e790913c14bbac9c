"""Drawn curves read by tap, drag and key, and a place picked on the map; answers morph them."""

import json
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from engine.solar.place import sea_map as sea_cells
from engine.views.energy.course import Course, Trace, nights_of
from engine.views.energy.curve import curve
from engine.views.energy.sea_map import sea_map

if TYPE_CHECKING:
    from tests.browser.conftest import MakeHost, Reader

pytestmark = pytest.mark.browser

FAKE = (Path(__file__).parent / "fake_engine.mjs").read_text(encoding="utf-8")
HOURS = 24 * 14
FALLING = tuple(1 - n / HOURS / 2 for n in range(HOURS + 1))
SAID = "#c output"


def charts(charges: tuple[float, ...]) -> str:
    course = Course(14, 1.0, (Trace("a", charges),), nights=nights_of(5.4, 20.6, 14))
    return curve("c", "Charge", course)


@pytest.fixture
def reader_at(reader: "Reader", make_host: "MakeHost") -> "Reader":
    """Give a reader at a page with a curve, that turns round when amps are not 14, and a map."""
    one, other = charts(FALLING), charts(FALLING[::-1])
    markup = (
        f"<h1>Charts</h1>${{fields.amps === '14' ? `{one}` : `{other}`}}"
        f"{sea_map('m', sea_cells(), 43.0, 5.0)}"
    )
    script = FAKE.replace("<h1>${text(fields.boat)}</h1>", markup)
    address = make_host(replaced={"worker.mjs": script.encode()}).address
    return reader.open(address)


def middle_of(reader: "Reader", selector: str) -> tuple[float, float]:
    drawing = reader.page.locator(f"{selector} svg[data-plot]:visible").last
    drawing.scroll_into_view_if_needed()
    frame = drawing.bounding_box()
    assert frame
    return frame["x"] + frame["width"] / 2, frame["y"] + frame["height"] / 2


def sets(reader: "Reader") -> list[tuple[str, str]]:
    came = json.loads(reader.page.locator("#events").text_content() or "[]")
    return [(one["path"], one["value"]) for one in came if one["kind"] == "set"]


def test_a_tap_and_a_drag_read_the_curve(reader_at: "Reader") -> None:
    page = reader_at.page
    x, y = middle_of(reader_at, "#c")
    page.mouse.move(x, y)
    page.mouse.down()
    first = page.inner_text(SAID)
    page.mouse.move(x + 60, y)
    page.mouse.up()
    assert first.startswith(("Day 7", "Day 8"))
    assert page.inner_text(SAID) != first
    page.mouse.move(x - 200, y)  # without a button it reads nothing
    assert page.inner_text(SAID).startswith(("Day 8", "Day 9"))
    assert page.locator("#c line.cursor[visibility='visible']").count() == 2  # wide, and its week
    assert not sets(reader_at)
    assert not reader_at.errors


def test_keys_and_buttons_read_the_curve_by_the_hour(reader_at: "Reader") -> None:
    page = reader_at.page
    page.focus("#c input")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    assert page.inner_text(SAID) == "Day 1, 02:00: 100 %"
    assert page.get_attribute("#c input", "aria-valuetext") == "Day 1, 02:00"
    page.keyboard.press("End")
    assert page.inner_text(SAID) == "Day 15, 00:00: 50 %"
    page.click("#c button[data-by='-1']")
    assert page.inner_text(SAID).startswith("Day 14, 23:00")
    assert not sets(reader_at)


def test_a_phone_reads_the_second_week_in_its_own_line(reader_at: "Reader") -> None:
    page = reader_at.page
    page.set_viewport_size({"width": 390, "height": 844})
    drawings = page.locator("#c svg[data-plot]:visible")
    assert drawings.count() == 2
    x, y = middle_of(reader_at, "#c")
    page.mouse.click(x, y)
    assert page.inner_text(SAID).startswith("Day 11")
    assert drawings.nth(0).locator("line.cursor").get_attribute("visibility") == "hidden"
    assert drawings.nth(1).locator("line.cursor").get_attribute("visibility") == "visible"
    assert page.evaluate("document.documentElement.scrollWidth") == 390


def test_what_was_read_is_read_again_from_a_new_answer(reader_at: "Reader") -> None:
    page = reader_at.page
    page.focus("#c input")
    page.keyboard.press("ArrowRight")
    assert page.inner_text(SAID) == "Day 1, 01:00: 100 %"
    reader_at.type_in("amps", "15")
    assert page.inner_text(SAID) == "Day 1, 01:00: 50 %"
    assert page.locator("#c line.cursor[visibility='visible']").count() == 2  # wide, and its week
    page.focus("#c input")
    page.keyboard.press("ArrowRight")
    assert page.inner_text(SAID).startswith("Day 1, 02:00")
    assert not reader_at.errors


def test_a_tap_on_the_map_sends_one_place(reader_at: "Reader") -> None:
    page = reader_at.page
    x, y = middle_of(reader_at, "#m")
    page.mouse.click(x, y)
    reader_at.settle()
    ((path, place),) = sets(reader_at)
    assert path == "start.place.spot"
    latitude, longitude = place.split(", ")
    degrees, side = latitude.split()
    assert side in "NS"
    assert int(degrees) < 9
    assert abs(int(longitude.split()[0])) < 5


def test_arrows_aim_and_enter_takes_the_place(reader_at: "Reader") -> None:
    page = reader_at.page
    page.focus("#m .pick")
    for key in ("ArrowUp", "ArrowLeft", "ArrowLeft"):
        page.keyboard.press(key)
    assert page.inner_text("#m output") == "46 N, 1 W"
    assert not sets(reader_at)
    page.keyboard.press("Enter")
    reader_at.settle()
    assert sets(reader_at) == [("start.place.spot", "46 N, 1 W")]
    assert not reader_at.errors
