"""Which page an address means, and the whole of it as blocks."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.late import here
from engine.views.energy.load import load_page
from engine.views.energy.use import use
from engine.views.frame import rail, strip
from engine.views.home.home import findings, home
from engine.views.home.start import start
from engine.views.home.sums import sum_page
from engine.views.papers.papers import papers, paste, receive
from engine.views.parts.html import Block, block, tag
from engine.views.parts.late import fetching
from engine.views.proving.proving import proving
from engine.views.wiring.circuit import circuit_page
from engine.views.wiring.circuits import circuits
from engine.views.wiring.heavy import heavy
from engine.views.wiring.inverter import inverter
from engine.views.wiring.network import network
from engine.views.wiring.shore import shore, shore_row

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.views.parts.scene import Scene


PAGES: Final[dict[tuple[str, str], Callable[[Scene], tuple[Block, ...]]]] = {
    ("home", "findings"): findings,
    ("energy", ""): use,
    ("energy", "use"): use,
    ("energy", "paste"): paste,
    ("wiring", ""): circuits,
    ("wiring", "circuits"): circuits,
    ("wiring", "network"): network,
    ("wiring", "heavy"): heavy,
    ("wiring", "inverter"): inverter,
    ("wiring", "shore"): shore,
    ("proving", ""): proving,
    ("papers", ""): papers,
    ("papers", "receive"): receive,
}
"""Pages by section and name."""
ROWS: Final[dict[tuple[str, str], Callable[[Scene, str], tuple[Block, ...]]]] = {
    ("energy", "use"): load_page,
    ("wiring", "circuits"): circuit_page,
    ("wiring", "shore"): shore_row,
}
"""Pages of one row of a list."""
NAMED: Final[dict[str, Callable[[Scene, str], tuple[Block, ...]]]] = {
    "sum": sum_page,
    "start": start,
}
"""Sections whose second word is no page but a name."""
LATE: Final = frozenset(("energy", name) for name in ("bank", "charging", "ahead", "what-if"))
"""Pages that :mod:`engine.views.late` holds, by section and name."""


def blocks_of(scene: Scene) -> tuple[Block, ...]:
    """Return the blocks of the page an address means; an unknown address means Home."""
    section, name, row, *_ = (*scene.route, "", "", "")
    if section in NAMED:
        return NAMED[section](scene, name)
    if (section, name) in LATE:
        return _late(scene, (section, name), row)
    if row and (section, name) in ROWS:
        return ROWS[section, name](scene, row)
    return PAGES.get((section, name), home)(scene)


def _late(scene: Scene, address: tuple[str, str], row: str) -> tuple[Block, ...]:
    """Return a page that comes late, or what stands in its place until then."""
    if not here():
        return block("late-head", tag("h1", address[0].capitalize())), fetching(scene)
    from engine.views import late  # noqa: PLC0415 - comes with the late parcel

    if row and address in late.ROWS:
        return late.ROWS[address](scene, row)
    return late.PAGES.get(address, home)(scene)


def whole_page(scene: Scene) -> tuple[Block, Block, Block]:
    """Return strip, rail and page; what went wrong with the last command stands on top."""
    notice = tag("div", *scene.notice, class_="problems", role="alert") if scene.notice else None
    page = block("page", block("notice", notice), *blocks_of(scene), name="main")
    return strip(scene), rail(scene), page


def title_of(scene: Scene) -> str:
    """Return the window's title."""
    section = scene.route[0] if scene.route else "home"
    name = scene.plan.boat.name
    shown = {"sum": "Quick sums", "start": "First questions"}.get(section, section.capitalize())
    error = "Error: " if scene.refused.get("receive") or scene.refused.get("paste") else ""
    return f"{error}{shown} · {name} · Ohmward" if name else f"{error}{shown} · Ohmward"
