"""How batteries side by side share a current, by where the main leads take it off."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING, Final

from engine.finding import Rule
from engine.problem import Problem
from engine.source import Source, common_practice
from engine.units import Ohm, Share, said

if TYPE_CHECKING:
    from collections.abc import Sequence

MOST: Final = 24
"""Batteries side by side."""
LIMIT: Final = 1.1
"""Largest share over an even one."""

EVEN: Final = Rule(
    "even share",
    "no battery side by side with others gives more than 1.1 times an even share",
    common_practice("even share within a tenth"),
)
SHARING: Final = Source(
    "Kirchhoff's laws", "direct current", "equal volts at rest, every loop sums to nothing"
)


class TakeOff(StrEnum):
    """Where the main leads of a row of batteries are fastened."""

    ONE_END = "one end"
    DIAGONAL = "diagonal"
    EQUAL_LEADS = "equal leads"


def shares(resistances: Sequence[Ohm], links: Ohm, take_off: TakeOff) -> tuple[Share, ...]:
    """Return the share of the whole current that each battery of a row gives.

    Parameters
    ----------
    resistances : sequence of Ohm
        Within each battery, shape ``(n,)``, n from 1 to 24; the first has the positive lead. [Ω]
    links : Ohm
        One link between neighbours with its lugs, alike on the positive and the negative side;
        with equal leads, one lead of one battery. [Ω]
    take_off : TakeOff
        ``one end``: both main leads on the first battery. ``diagonal``: positive on the first,
        negative on the last. ``equal leads``: every battery by two leads of its own.

    Returns
    -------
    tuple of Share
        Shape ``(n,)``, sum 1. Of the same volts at rest, so of one age and one charge. [1]

    Raises
    ------
    Problem
        If there is no battery or too many, or a resistance is none.

    Notes
    -----
    Neighbours differ by what is lost in the links between them. The positive link carries all that
    lies beyond it. The negative link carries the same with both leads at one end, and all that
    lies before it with diagonal leads.

    Examples
    --------
    >>> shares([Ohm(0.003)] * 2, Ohm(0.0005), TakeOff.ONE_END)
    (0.571, 0.429)
    >>> shares([Ohm(0.003)] * 4, Ohm(0.0005), TakeOff.DIAGONAL)
    (0.286, 0.214, 0.214, 0.286)
    """
    _check(resistances, links)
    count = len(resistances)
    if take_off is TakeOff.EQUAL_LEADS:
        ways = [1 / (resistance + 2 * links) for resistance in resistances]
        return tuple(Share(way / sum(ways)) for way in ways)
    before, beyond = (0.0, -2 * links) if take_off is TakeOff.ONE_END else (links, -links)
    rows = [[1.0] * (count + 1)]
    for first in range(count - 1):
        row = [before] * (first + 1) + [beyond] * (count - first - 1) + [0.0]
        row[first] += resistances[first]
        row[first + 1] -= resistances[first + 1]
        rows.append(row)
    return tuple(Share(share) for share in _eliminated(rows))


def uneven(found: Sequence[Share]) -> float:
    """Return the largest share over an even one.

    Parameters
    ----------
    found : sequence of Share
        Shape ``(n,)``, n at least 1. [1]

    Returns
    -------
    float
        From 1, where all give the same. [1]

    Examples
    --------
    >>> uneven([Share(0.6), Share(0.4)])
    1.2
    """
    return max(found) * len(found)


def _check(resistances: Sequence[Ohm], links: Ohm) -> None:
    if not 1 <= len(resistances) <= MOST:
        raise Problem(
            "batteries", f"{len(resistances)} batteries side by side.", f"Enter 1 to {MOST}."
        )
    for resistance in resistances:
        if not 1e-9 <= resistance <= 1e9:
            raise Problem(
                "resistance",
                f"No battery has a resistance of {said(resistance)} Ω.",
                "Enter more than 0 ohm, such as 3 mohm.",
            )
    if not 0 <= links <= 1e9:
        raise Problem(
            "link", f"No link has a resistance of {said(links)} Ω.", "Enter 0 ohm or more."
        )


def _eliminated(rows: list[list[float]]) -> list[float]:
    """Return the unknowns of linear equations, each row its factors and then its sum."""
    count = len(rows)
    for column in range(count):
        best = max(range(column, count), key=lambda place: abs(rows[place][column]))
        rows[column], rows[best] = rows[best], rows[column]
        top = [factor / rows[column][column] for factor in rows[column]]
        rows[column] = top
        for place in range(count):
            factor = rows[place][column]
            if place != column and factor:
                rows[place] = [
                    one - factor * other for one, other in zip(rows[place], top, strict=True)
                ]
    return [row[-1] for row in rows]
