"""Colours by what a conductor does."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.conductors.tables import COLOURS_CIRCUITS, COLOURS_ISO, COLOURS_POWER
from engine.problem import Problem, quoted

if TYPE_CHECKING:
    from engine.conductors.tables import Colours
    from engine.table import Table

YELLOW_CLASH: Final = (
    "Yellow has two meanings. On newer boats it may be DC negative; on older ones it is the bilge "
    "blower or a generator's field, and so positive. Prove a yellow conductor with a meter before "
    "joining it to anything, and label it."
)
FUNCTIONS: Final = (*COLOURS_POWER.rows, *COLOURS_CIRCUITS.rows)
"""What a conductor may do, as the two tables print it."""


def table_of(function: str) -> Table[str, Colours]:
    """Return the table a function's colours stand in, for its source.

    Raises
    ------
    Problem
        If no table knows that function.
    """
    for table in (COLOURS_POWER, COLOURS_CIRCUITS):
        if function in table:
            return table
    raise Problem(
        "",
        f"{quoted(function)} is no function with a colour of its own.",
        f"Choose {', '.join(FUNCTIONS)}.",
    )


def colours(function: str) -> Colours:
    """Return the colours a conductor of a function may have, the usual first.

    Parameters
    ----------
    function : str
        One of ``FUNCTIONS``.

    Raises
    ------
    Problem
        If no table knows that function.

    References
    ----------
    .. [1] ABYC E-11, tables XIV and XV, as reprinted. One reprint prints purple for the main
       power feed, where the others print red: a misprint.

    Examples
    --------
    >>> colours("bilge blower")
    ('brown with yellow stripe', 'yellow')
    """
    return table_of(function)[function]


def international_colours(function: str) -> Colours:
    """Return the colours of the international standard, typical; empty where it names none.

    Parameters
    ----------
    function : str
        One of ``FUNCTIONS``.

    Examples
    --------
    >>> international_colours("DC negative"), international_colours("pumps")
    (('black', 'yellow'), ())
    """
    return COLOURS_ISO.rows.get(function, ())
