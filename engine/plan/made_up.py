"""The made-up boat *Wherrilow*: invented from keel to masthead, and flagged so in the data."""

from __future__ import annotations

from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final

from engine.plan.document import parsed

if TYPE_CHECKING:
    from engine.plan.document import Document


PLANNED: Final = "planned"
AS_FOUND: Final = "as found"
FILES: Final = {PLANNED: "wherrilow.json", AS_FOUND: "wherrilow-as-found.json"}


@lru_cache(maxsize=2)
def made_up_document(revision: str = PLANNED) -> Document:
    """Return the made-up boat's plan, or the boat as it was found."""
    return parsed(files("engine.plan").joinpath(FILES[revision]).read_text(encoding="utf-8"))
