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


@pytest.mark.parametrize("route", [SHEET, "#wiring/shore/A03"])
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
