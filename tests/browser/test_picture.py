"""The README's picture is a picture of the page; KEEP_PICTURE=1 renews it."""

import os
from typing import TYPE_CHECKING

import pytest

import build

if TYPE_CHECKING:
    from tests.browser.conftest import Reader

pytestmark = pytest.mark.browser

PICTURE = build.SITE / "pictures" / "made-up-boat.png"


def test_the_picture_shows_the_made_up_boat(page_ready: "Reader") -> None:
    page_ready.page.set_viewport_size({"width": 1024, "height": 768})
    page_ready.press("look-around").go("#home").wait_offline()
    page_ready.wait("document.querySelector('#strip').innerText.includes('Ready offline')")
    taken = page_ready.page.screenshot()
    if os.environ.get("KEEP_PICTURE") or not PICTURE.exists():
        PICTURE.write_bytes(taken)
    assert taken[:4] == PICTURE.read_bytes()[:4] == b"\x89PNG"
    assert len(taken) > 20_000
