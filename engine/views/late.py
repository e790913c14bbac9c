"""Pages that come late, by section and name; imported only when one of them is asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.views.energy.bank import bank

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.views.parts.html import Block
    from engine.views.parts.scene import Scene

PAGES: Final[dict[tuple[str, str], Callable[[Scene], tuple[Block, ...]]]] = {
    ("energy", "bank"): bank,
}
"""Pages by section and name."""
ROWS: Final[dict[tuple[str, str], Callable[[Scene, str], tuple[Block, ...]]]] = {}
"""Pages of one row of a list."""
