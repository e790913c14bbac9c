"""Axe finds nothing serious on any screen in any view, full, empty, wrong or with long names."""

from typing import TYPE_CHECKING, Any

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.pages import QUESTIONS, ROUTES, VIEWS

if TYPE_CHECKING:
    from tests.browser.conftest import Reader

pytestmark = pytest.mark.browser

# Axe counts what the sticky rail happens to cover as too small; test_shell measures every target.
RULES = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"],
    "rules": {"target-size": {"enabled": False}},
}
SIZES = {"tablet": (768, 1024), "laptop": (1280, 800), "phone": (390, 844)}


def faults(reader: "Reader") -> list[str]:
    """What axe finds, serious or worse."""
    found: dict[str, Any] = Axe().run(reader.page, options=RULES).response
    return [
        f"{fault['id']}: {node['html'][:160]} {node['failureSummary'][:200]}"
        for fault in found["violations"]
        if fault["impact"] in {"serious", "critical"}
        for node in fault["nodes"][:3]
    ]


def walk(reader: "Reader", routes: tuple[str, ...]) -> list[str]:
    return [f"{route} {fault}" for route in routes for fault in faults(reader.go(route))]


@pytest.mark.parametrize("view", VIEWS)
def test_the_made_up_boat_in_every_view(page_ready: "Reader", view: str) -> None:
    page_ready.press("look-around")
    page_ready.choose("settings.view", view)
    assert walk(page_ready, ROUTES) == []


@pytest.mark.parametrize("size", SIZES)
def test_a_boat_of_ones_own_with_wrong_entries_and_long_names(
    page_ready: "Reader", size: str
) -> None:
    width, height = SIZES[size]
    page_ready.page.set_viewport_size({"width": width, "height": height})
    assert faults(page_ready) == []
    page_ready.press("start-own")
    page_ready.type_in("boat.name", "The very long-winded and unreasonably named Q" * 4)
    assert walk(page_ready, QUESTIONS) == []
    page_ready.go("#start/3")
    page_ready.page.locator('[name="start.have.0"]').check()
    page_ready.settle().go("#energy/use/L01").type_in("loads.L01.hours_anchor", "3 kg")
    assert faults(page_ready) == []
    page_ready.go("#wiring/circuits").press("add-circuit")
    page_ready.type_in("circuits.D01.run", "four")
    assert faults(page_ready) == []
    page_ready.go("#papers/receive")
    page_ready.page.locator('textarea[name="text"]').fill("p1.9.00000000.AAAA")
    page_ready.press("receive-text")
    assert page_ready.text("#problems")
    assert faults(page_ready) == []


@pytest.mark.parametrize("view", ["plain", "sun"])
@pytest.mark.parametrize("size", SIZES)
def test_no_page_scrolls_sideways(page_ready: "Reader", size: str, view: str) -> None:
    width, height = SIZES[size]
    page_ready.page.set_viewport_size({"width": width, "height": height})
    page_ready.press("look-around")
    page_ready.choose("settings.view", view)
    wide = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    over = {route: page_ready.go(route).page.evaluate(wide) for route in ROUTES}
    assert {route: width for route, width in over.items() if width > 0} == {}
