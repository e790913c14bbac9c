"""Pages that come late, by section and name; imported only when one of them is asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.views.energy.bank import bank
from engine.views.energy.charging import charging
from engine.views.energy.days import days
from engine.views.energy.what_if import what_if

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.views.parts.html import Block
    from engine.views.parts.scene import Scene

PAGES: Final[dict[tuple[str, str], Callable[[Scene], tuple[Block, ...]]]] = {
    ("energy", "bank"): bank,
    ("energy", "charging"): charging,
    ("energy", "ahead"): days,
    ("energy", "what-if"): what_if,
}
"""Pages by section and name."""
ROWS: Final[dict[tuple[str, str], Callable[[Scene, str], tuple[Block, ...]]]] = {}
"""Pages of one row of a list."""
