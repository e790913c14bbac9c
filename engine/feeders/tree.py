"""The tree of runs that hangs on a bank: who feeds whom, and what draws where."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING, Final

from engine.problem import Problem, quoted
from engine.units import said

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from engine.units import Ohm

BEYOND: Final = 1e9
"""Ohms, amperes, watts or volts that no boat has, in any of these units."""


class Behaves(StrEnum):
    """What a draw holds constant when its volts change."""

    CURRENT = "current"
    POWER = "power"
    RESISTANCE = "resistance"


@dataclass(frozen=True, slots=True)
class Branch:
    """A pair of conductors from one node to another: Ω there and back, joints included.

    A node is named for the branch that ends in it.
    """

    ident: str
    source: str
    resistance: Ohm


@dataclass(frozen=True, slots=True)
class Draw:
    """What one node takes: A, W or Ω by how it behaves; less than nothing for what charges."""

    node: str
    amount: float
    behaves: Behaves


@dataclass(frozen=True, slots=True)
class Tree:
    """Branches in an order in which each stands after the one that feeds it.

    ``parents`` holds the place among the nodes of what feeds each branch; the root is node 0,
    and branch 0 ends in node 1.
    """

    root: str
    branches: tuple[Branch, ...]
    parents: tuple[int, ...]

    @property
    def nodes(self) -> tuple[str, ...]:
        """Every node, the root first."""
        return (self.root, *(branch.ident for branch in self.branches))


def tree_of(root: str, branches: Iterable[Branch]) -> tuple[Tree, tuple[Problem, ...]]:
    """Return the tree of what can be fed, and a problem for every branch left out.

    Parameters
    ----------
    root : str
        Name of the bank's terminals.
    branches : iterable of Branch
        In any order. Of two with one name the first is kept.

    Returns
    -------
    tuple of Tree and tuple of Problem
        ``where`` of each problem is the name of its branch.

    Examples
    --------
    >>> main, fridge = Branch("main", "bank", 0.001), Branch("fridge", "main", 0.04)
    >>> tree, problems = tree_of("bank", [fridge, main, Branch("lamp", "mast", 0.1)])
    >>> tree.nodes
    ('bank', 'main', 'fridge')
    >>> print(problems[0])
    lamp: “lamp” is fed from “mast”, which does not exist. Feed it from “bank” or from another run.
    """
    problems: list[Problem] = []
    kept: dict[str, Branch] = {}
    broken: set[str] = set()
    for branch in branches:
        fault = _fault(branch, root, kept)
        if fault:
            problems.append(fault)
            broken.add(branch.ident)
        else:
            kept[branch.ident] = branch
    tree = _ordered(root, kept)
    rest = {ident: branch for ident, branch in kept.items() if ident not in set(tree.nodes)}
    loops = _loops(rest)
    for branch in rest.values():
        known = branch.source in kept or branch.source in broken
        problems.append(_unfed(branch, root, loop=branch.ident in loops, known=known))
    return tree, tuple(problems)


def _fault(branch: Branch, root: str, kept: Collection[str]) -> Problem | None:
    """Return what is wrong with a branch by itself."""
    name = quoted(branch.ident)
    if branch.ident == root:
        what, mend = f"{name} is the name of the bank.", "Give the run a name of its own."
    elif branch.ident in kept:
        what, mend = f"Two runs are called {name}.", "Rename one of them."
    elif branch.source == branch.ident:
        what, mend = f"{name} feeds itself.", f"Feed it from {quoted(root)} or from another run."
    elif not 0 <= branch.resistance < BEYOND:
        what = f"{name} has a resistance of {said(branch.resistance)} Ω."
        mend = "Enter 0 ohm or more."
    else:
        return None
    return Problem(branch.ident, what, mend)


def _ordered(root: str, kept: dict[str, Branch]) -> Tree:
    """Return what the root feeds, nearest first."""
    fed: dict[str, list[Branch]] = {}
    for branch in kept.values():
        fed.setdefault(branch.source, []).append(branch)
    ordered: list[Branch] = []
    parents: list[int] = []
    nodes = [root]
    for place, node in enumerate(nodes):  # grows while it is walked
        children = fed.get(node, [])
        ordered += children
        parents += [place] * len(children)
        nodes += [branch.ident for branch in children]
    return Tree(root, tuple(ordered), tuple(parents))


def _loops(rest: dict[str, Branch]) -> set[str]:
    """Return the branches that feed themselves: what is left when every loose end is taken off."""
    left = {ident: branch.source for ident, branch in rest.items()}
    while loose := left.keys() - set(left.values()):
        for ident in loose:
            del left[ident]
    return set(left)


def _unfed(branch: Branch, root: str, *, loop: bool, known: bool) -> Problem:
    """Return why nothing reaches a branch."""
    name, source = quoted(branch.ident), quoted(branch.source)
    if loop:
        what = f"{name} feeds itself: it is fed from {source}, which it feeds."
        mend = f"Feed one of them from {quoted(root)}."
    elif known:
        what, mend = f"{name} hangs on {source}, which is left out.", f"Mend {source} first."
    else:
        what = f"{name} is fed from {source}, which does not exist."
        mend = f"Feed it from {quoted(root)} or from another run."
    return Problem(branch.ident, what, mend)
