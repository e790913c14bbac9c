"""The made-up boat *Wherrilow*: invented from keel to masthead, and flagged so in the data."""

from __future__ import annotations

from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING

from engine.plan.document import parsed

if TYPE_CHECKING:
    from engine.plan.document import Document


@lru_cache(maxsize=1)
def made_up_document() -> Document:
    """Return the made-up boat's plan."""
    return parsed(files("engine.plan").joinpath("wherrilow.json").read_text(encoding="utf-8"))
