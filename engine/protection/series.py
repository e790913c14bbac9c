"""Standard ratings by trade type. What a shop has may be fewer."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.finding import meets
from engine.source import Source
from engine.table import Table
from engine.units import Amp

if TYPE_CHECKING:
    from engine.protection.window import Window

Ratings = tuple[float, ...]


def _series(name: str, source: Source, ratings: Ratings) -> Table[str, Ratings]:
    return Table(f"Standard ratings, {name}", "series", "ratings, A", source, {name: ratings})


_TRADE: Final = Source("makers' catalogues", "common ratings", "no document", typical=True)

_BREAKER: Final = Source(
    "NFPA 70 (NEC)",
    "common ratings",
    "240.6(A), with the small ratings of boat panels",
    typical=True,
)
_BREAKER_RATINGS: Final = (
    *(3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200),
    *(225, 250, 300, 350, 400, 450, 500, 600),
)

SERIES: Final = {
    "blade": _series(
        "blade",
        Source("ISO 8820-3", "common ratings", "blade fuse-links", typical=True),
        (1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30),
    ),
    "large blade": _series("large blade", _TRADE, (20, 30, 40, 50, 60, 70, 80)),
    "bolt-down small": _series(
        "bolt-down small",
        Source("ISO 8820-5", "common ratings", "SF30", typical=True),
        (30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200),
    ),
    "bolt-down large": _series(
        "bolt-down large",
        Source("ISO 8820-5", "common ratings", "SF51", typical=True),
        (40, 60, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 500),
    ),
    "terminal-mount": _series(
        "terminal-mount",
        _TRADE,
        (30, 40, 50, 60, 75, 80, 90, 100, 125, 150, 175, 200, 225, 250, 300),
    ),
    "plate": _series(
        "plate",
        _TRADE,
        (
            *(35, 40, 50, 60, 80, 100, 130, 150, 175, 200, 225, 250, 275, 300, 325, 350),
            *(400, 500, 600, 750),
        ),
    ),
    "class T": _series(
        "class T",
        Source("UL 248-15", "common ratings", "class T", typical=True),
        (
            *(1, 3, 6, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150),
            *(175, 200, 225, 250, 300, 350, 400, 450, 500, 600),
        ),
    ),
    "thermal breaker": _series("thermal breaker", _BREAKER, _BREAKER_RATINGS),
    "magnetic breaker": _series("magnetic breaker", _BREAKER, _BREAKER_RATINGS),
}
"""Table of each series, by its name."""


def ratings_of(series: str) -> Ratings:
    """Return the standard ratings of a series, small to large, A.

    Parameters
    ----------
    series : str
        A name in ``SERIES``.
    """
    return SERIES[series][series]


def smallest_in(window: Window, series: str) -> Amp | None:
    """Return the smallest standard rating within a window, or None where there is none.

    Parameters
    ----------
    window : Window
        For the load on its conductor.
    series : str
        A name in ``SERIES``.

    Returns
    -------
    Amp or None
        What to mark the protection. [A]

    Examples
    --------
    >>> from engine.protection.window import Window
    >>> smallest_in(Window(Amp(17.5), Amp(25.0)), "blade")
    20.0
    >>> smallest_in(Window(Amp(31.0), Amp(60.0)), "blade") is None
    True
    """
    fitting = (r for r in ratings_of(series) if meets(window.least, r) and meets(r, window.most))
    found = next(fitting, None)
    return None if found is None else Amp(float(found))
