"""Rooms that come to the browser only when the page is awake; natively they are always here.

Whoever needs one asks :func:`here` first, and imports it inside the function that needs it.
"""

from __future__ import annotations

from importlib.util import find_spec
from typing import Final

WITNESS: Final = "engine.simulate"
"""One of the late rooms: they come all at once."""


def here() -> bool:
    """Return whether the late rooms can be imported.

    Examples
    --------
    >>> here()
    True
    """
    return find_spec(WITNESS) is not None
