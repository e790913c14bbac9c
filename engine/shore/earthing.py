"""Neutral and safety ground: joined once, at the source in use, and nowhere else."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from engine.finding import Finding, Rule, Severity, Verdict, Who
from engine.problem import Problem, quoted
from engine.source import Source
from engine.units import words

CAUTION: Final = (
    "Danger. Shore power and inverter output can kill. Licensed or qualified person only."
)
SWIM_CAUTION: Final = (
    "Danger. Never swim near docks or boats with shore power. Fresh water is worst; salt water is "
    "not a promise."
)

ONE_BOND: Final = Rule(
    "one bond",
    "neutral and safety ground are joined once, at the source in use",
    Source("ISO 13297", "2020", "6.8"),
)
PERMANENT_BOND: Final = Rule(
    "no bond aboard on shore power",
    "on shore power the neutral is not joined to safety ground on board",
    Source("ISO 13297", "2020", "6.8"),
)
ONE_TIE: Final = Rule(
    "one tie",
    "safety ground meets DC negative and bonding once, and that tie is never cut",
    Source("ISO 13297", "2020", "protective conductor to the main grounding point"),
)


class Supply(StrEnum):
    """What feeds the boat's AC panel."""

    SHORE = "shore"
    INVERTER = "inverter"
    GENERATOR = "generator"
    TRANSFORMER = "isolation transformer"


@dataclass(frozen=True, slots=True)
class State:
    """One source in use: where the bond is, what transfers, and what a licensed person measures."""

    supply: Supply
    bond: str
    transfers: str
    measured: str
    who: Who = Who.LICENSED


_OPEN: Final = "Licensed person, dead: neutral to safety ground reads open on board."
_CLOSED: Final = (
    "Licensed person: neutral to safety ground is joined at the {} and reads open once it is "
    "switched away."
)

STATES: Final = {
    one.supply: one
    for one in (
        State(
            Supply.SHORE,
            "On shore, in the dock's own supply. None on board.",
            "All live conductors and the neutral go to shore; every bond on board opens.",
            _OPEN,
        ),
        State(
            Supply.INVERTER,
            "In the inverter, by its own relay, while it inverts.",
            "All live conductors and the neutral go to the inverter; its relay opens the bond "
            "before shore power passes through.",
            _CLOSED.format("inverter"),
        ),
        State(
            Supply.GENERATOR,
            "At the generator, on its side of the transfer switch.",
            "All live conductors and the neutral go to the generator; the bond stays with it.",
            _CLOSED.format("generator"),
        ),
        State(
            Supply.TRANSFORMER,
            "At the transformer's secondary, to the boat's safety ground.",
            "Shore power ends at the primary; the boat's neutral begins at the secondary.",
            _CLOSED.format("transformer's secondary")
            + " Primary and secondary are apart: no continuity between them.",
        ),
    )
}
"""How each source in use ought to be, by its name."""


def states(supplies: tuple[Supply, ...]) -> tuple[State, ...]:
    """Return how neutral and safety ground ought to be, one row for each source.

    Parameters
    ----------
    supplies : tuple of Supply
        Every source aboard, shape ``(n,)``.

    Raises
    ------
    Problem
        If there is no source.

    Examples
    --------
    >>> [str(state.supply) for state in states((Supply.SHORE, Supply.INVERTER))]
    ['shore', 'inverter']
    """
    if not supplies:
        raise Problem(
            "supplies", "No source of alternating current is stated.", f"Choose {words(Supply)}."
        )
    return tuple(STATES[supply] for supply in supplies)


BOND_OF: Final = {
    Supply.SHORE: "shore",
    Supply.INVERTER: "inverter",
    Supply.GENERATOR: "generator",
    Supply.TRANSFORMER: "transformer",
}
"""Name of the place where each source's bond belongs."""
PLACES: Final = ("panel", *BOND_OF.values())


def in_use(supply: Supply) -> str:
    """Return a source in use, in words.

    Parameters
    ----------
    supply : Supply
        Feeding the panel.

    Examples
    --------
    >>> in_use(Supply.SHORE), in_use(Supply.INVERTER)
    ('shore power in use', 'the inverter in use')
    """
    return "shore power in use" if supply is Supply.SHORE else f"the {supply} in use"


def judge_bonds(supply: Supply, closed: frozenset[str]) -> Finding | None:
    """Return what is wrong with the bonds that are closed while a source is in use, or None.

    Parameters
    ----------
    supply : Supply
        In use.
    closed : frozenset of str
        Where the panel's neutral, as things are switched, is joined to safety ground: ``panel``,
        ``shore``, ``inverter``, ``generator`` or ``transformer``.

    Raises
    ------
    Problem
        If a place is none of these.
    """
    for place in sorted(closed):
        if place not in PLACES:
            raise Problem(
                "bonds", f"{quoted(place)} is no place of a bond.", f"Choose {words(PLACES)}."
            )
    right = BOND_OF[supply]
    wrong = sorted(closed - {right})
    if "panel" in closed:
        return permanent_bond()
    if wrong:
        rule = PERMANENT_BOND if supply is Supply.SHORE else ONE_BOND
        return _stop(
            f"With {in_use(supply)}, neutral and safety ground are joined at the "
            f"{words(wrong)} as well: current of the neutral flows in the safety ground.",
            rule,
        )
    if right not in closed:
        return _stop(
            f"With {in_use(supply)}, neutral and safety ground are joined nowhere: a fault "
            "trips nothing.",
            ONE_BOND,
        )
    return None


def permanent_bond() -> Finding:
    """Return the finding on a bond that is always closed on board."""
    return _stop(
        "Neutral and safety ground are joined on board for good: on shore power, current of the "
        "neutral flows in the safety ground, the bonding and the water.",
        PERMANENT_BOND,
    )


def _stop(text: str, rule: Rule) -> Finding:
    return Finding(
        "shore.bond",
        Verdict.STOP,
        Severity.STOP_NOW,
        text,
        "Unplug at the dock, and have a licensed person look at it before it is used again.",
        rule,
        Who.LICENSED,
    )
