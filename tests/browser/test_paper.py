"""What a licensed person is handed: one sheet, short, alone, with its dangers on it."""

import re
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.browser.conftest import Reader

pytestmark = pytest.mark.browser

PAGE = re.compile(rb"/Type\s*/Page\b")
SHEET = "#wiring/shore/licensed"


def sheets(reader: "Reader") -> int:
    """Return how many sheets of A4 a page takes, its folded parts opened as on paper."""
    reader.page.evaluate("dispatchEvent(new Event('beforeprint'))")
    printed = reader.page.pdf(format="A4", prefer_css_page_size=True)
    reader.page.evaluate("dispatchEvent(new Event('afterprint'))")
    return len(PAGE.findall(printed))


@pytest.mark.parametrize("revision", ["as-planned", "as-found"])
@pytest.mark.parametrize("view", ["plain", "sun"])
def test_the_licensed_persons_sheet_takes_two_pages_at_most(
    page_ready: "Reader", revision: str, view: str
) -> None:
    page_ready.press("look-around")
    if revision == "as-found":
        page_ready.press(revision)
    page_ready.choose("settings.view", view)
    assert sheets(page_ready.go(SHEET)) <= 2


@pytest.mark.parametrize("view", ["plain", "sun"])
def test_shore_power_takes_four_pages_at_most(page_ready: "Reader", view: str) -> None:
    page_ready.press("look-around")
    page_ready.choose("settings.view", view)
    assert sheets(page_ready.go("#wiring/shore")) <= 4


def test_no_form_of_shore_power_goes_on_paper(page_ready: "Reader") -> None:
    page_ready.press("look-around")
    page = page_ready.go("#wiring/shore").page
    page.emulate_media(media="print")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    for part in ("#shore-form", "#shore-load .ticks", "#shore-abroad .fields"):
        assert not page.locator(part).is_visible()
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    page.emulate_media(media="screen")


def test_there_is_room_to_write(page_ready: "Reader") -> None:
    """A name or a reading by hand takes 3 cm and more: 113 px and more at 96 px an inch."""
    page_ready.press("look-around")
    page = page_ready.go(SHEET).page
    page.emulate_media(media="print")
    page.set_viewport_size({"width": 680, "height": 1000})
    signed = page.locator(".signed > .blank")
    assert signed.count() == 4
    for number in range(4):
        box = signed.nth(number).bounding_box()
        assert box
        assert box["width"] >= 113
    row = page.locator("#licensed-results tr.print-only").first.locator(".blank")
    widths = [box["width"] for one in row.all() if (box := one.bounding_box())]
    assert min(widths) >= 58
    assert sum(widths) >= 520
    page.emulate_media(media="screen")


@pytest.mark.parametrize("route", [SHEET, "#wiring/shore/A03", "#wiring/shore"])
def test_on_paper_a_sheets_dangers_keep_their_first_line(page_ready: "Reader", route: str) -> None:
    page_ready.press("look-around")
    page = page_ready.go(route).page
    page.emulate_media(media="print")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert page.locator(".caution.danger > summary:visible").count() == 2
    assert page.locator(".caution.danger li:visible").count() == 0
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    page.emulate_media(media="screen")


def test_the_sheet_stands_alone(page_ready: "Reader") -> None:
    page_ready.press("look-around")
    page = page_ready.go(SHEET).page
    page.emulate_media(media="print")
    assert not page.locator("#strip").is_visible()
    assert not page.locator("#rail").is_visible()
    assert page.locator(".print-foot").count() == 1
    page.emulate_media(media="screen")
