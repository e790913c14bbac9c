"""Node volts and branch currents of a tree of runs, loads of constant power included."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.feeders.tree import BEYOND, Behaves, Draw, Tree
from engine.problem import Problem, quoted
from engine.source import Source
from engine.units import Amp, Ohm, Volt, Watt, said

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

METHOD: Final = Source(
    "Kirchhoff's and Ohm's laws", "direct current", "Newton's method, from the volts at rest"
)

CONVERGED: Final = 1e-12
"""Largest move of any node's volts in the last round, over the volts of the bank at rest."""
EDGE: Final = 1e-7
"""A move so small that a network which then fails stands at its collapse power, the last bits
aside; the volts are known there to the square root of them."""
NO_VOLTS: Final = 1e-9
"""Volts over those of the bank at rest that count as none."""
MOST_ROUNDS: Final = 60


@dataclass(frozen=True, slots=True)
class Network:
    """An operating point: volts of every node, amperes and watts lost of every branch.

    ``current`` leaves the bank, less than nothing while it is charged. ``taken`` is what the draws
    take, less what sources among them push in. ``worst`` is the node of fewest volts that takes
    anything, None where none does.
    """

    open_volts: Volt
    volts: Mapping[str, Volt]
    amps: Mapping[str, Amp]
    lost: Mapping[str, Watt]
    current: Amp
    lost_in_bank: Watt
    taken: Watt
    worst: str | None

    @property
    def heat(self) -> Watt:
        """All that is lost, in conductors and in the bank, W."""
        return Watt(sum(self.lost.values()) + self.lost_in_bank)

    @property
    def supplied(self) -> Watt:
        """What the bank's cells give, W."""
        return Watt(self.open_volts * self.current)


@dataclass(frozen=True, slots=True)
class _Taken:
    """What each node takes, by place: constant amperes, siemens and watts."""

    amps: list[float]
    siemens: list[float]
    watts: list[float]


def solve(tree: Tree, volts: Volt, bank_resistance: Ohm, draws: Sequence[Draw]) -> Network | None:
    """Return the operating point of a tree, or None where there is none.

    Parameters
    ----------
    tree : Tree
        Of runs; a resistance of zero joins two nodes.
    volts : Volt
        Of the bank at rest. [V]
    bank_resistance : Ohm
        Within the bank, from 0. [Ω]
    draws : sequence of Draw
        Any number on any node. [A, W or Ω]

    Returns
    -------
    Network or None
        The upper of the roots. None where the draws ask for more than the runs can bring, which is
        a finding and no error.

    Raises
    ------
    Problem
        If a draw hangs on no node, or a figure is none of this world.

    Notes
    -----
    Seen from above, a node and all below it take ``I = g V + j``. A run of r ohms before it turns
    that into ``(g V + j) / (1 + g r)``, with no division by r. One pass to the root and one back
    solve the network exactly where power is taken as its tangent ``2 P/V − (P/V²) V``; Newton's
    rounds repeat that. From above the upper root they come down to it and never pass it.

    Examples
    --------
    >>> from engine.feeders.tree import Branch, tree_of
    >>> tree, _ = tree_of("bank", [Branch("lamp", "bank", Ohm(0.48))])
    >>> found = solve(tree, Volt(12.0), Ohm(0.0), [Draw("lamp", 10.0, Behaves.POWER)])
    >>> found.amps["lamp"], found.volts["lamp"]
    (0.8631, 11.5857)
    >>> solve(tree, Volt(12.0), Ohm(0.0), [Draw("lamp", 80.0, Behaves.POWER)]) is None
    True
    """
    _check(volts, bank_resistance)
    taken = _gathered(tree, draws)
    ohms: list[float] = [bank_resistance, *(branch.resistance for branch in tree.branches)]
    found = _settled(tree.parents, ohms, volts, taken)
    return None if found is None else _network(tree, volts, found, ohms, draws)


def _check(volts: Volt, bank_resistance: Ohm) -> None:
    if not 0 < volts < BEYOND:
        raise Problem("volts", f"A bank of {said(volts)} V feeds nothing.", "Enter 12.8 V or so.")
    if not 0 <= bank_resistance < BEYOND:
        raise Problem(
            "bank_resistance",
            f"{said(bank_resistance)} Ω is no resistance of a bank.",
            "Enter 0 ohm or more, such as 3 mohm.",
        )


def _gathered(tree: Tree, draws: Sequence[Draw]) -> _Taken:
    """Return what each node takes, or raise the first draw that cannot be placed."""
    places = {node: place for place, node in enumerate(tree.nodes)}
    taken = _Taken(*([0.0] * len(places) for _ in range(3)))
    for draw in draws:
        place = places.get(draw.node)
        if place is None:
            raise Problem(
                draw.node, f"Nothing is called {quoted(draw.node)}.", "Name a run of the tree."
            )
        if not abs(draw.amount) < BEYOND:
            raise Problem(
                draw.node, f"{said(draw.amount)} is beyond all bounds.", "Enter a smaller draw."
            )
        if draw.behaves is Behaves.CURRENT:
            taken.amps[place] += draw.amount
        elif draw.behaves is Behaves.POWER:
            taken.watts[place] += draw.amount
        elif draw.amount * BEYOND <= 1:
            raise Problem(
                draw.node,
                f"A load of {said(draw.amount)} Ω is a short circuit.",
                "Enter more than 0 ohm.",
            )
        else:
            taken.siemens[place] += 1 / draw.amount
    return taken


def _settled(
    parents: Sequence[int], ohms: list[float], volts: Volt, taken: _Taken
) -> list[float] | None:
    """Return the volts of every node where all draws are met, or None.

    The start is what the sources alone would lift the nodes to: no upper root lies above it.
    """
    pushed = [
        min(amps, 0.0) + min(watts, 0.0) / volts
        for amps, watts in zip(taken.amps, taken.watts, strict=True)
    ]
    now = _swept(parents, ohms, volts, [0.0] * len(ohms), pushed)
    moved: float = volts
    for _ in range(MOST_ROUNDS):
        if now is None or moved <= CONVERGED * volts:
            break
        slopes, offsets = _tangents(taken, now)
        new = _swept(parents, ohms, volts, slopes, offsets)
        if new is None:
            break
        moved = max(abs(one - other) for one, other in zip(new, now, strict=True))
        now = new
    return now if moved <= EDGE * volts else None


def _tangents(taken: _Taken, now: list[float]) -> tuple[list[float], list[float]]:
    """Return what each node takes as ``slope × volts + offset``, exact at the present volts."""
    slopes, offsets = taken.siemens[:], taken.amps[:]
    for place, watts in enumerate(taken.watts):
        if watts:
            slopes[place] -= watts / now[place] ** 2
            offsets[place] += 2 * watts / now[place]
    return slopes, offsets


def _swept(
    parents: Sequence[int],
    ohms: list[float],
    volts: Volt,
    slopes: list[float],
    offsets: list[float],
) -> list[float] | None:
    """Return the volts of a linear tree, or None where they would not stay up.

    Leaves to root, then root to leaves; slopes and offsets gather what lies below each node.
    """
    pivots = [1.0] * len(ohms)
    for place in range(len(ohms) - 1, -1, -1):
        pivot = 1 + slopes[place] * ohms[place]
        if pivot <= 0:
            return None
        pivots[place] = pivot
        if place:
            parent = parents[place - 1]
            slopes[parent] += slopes[place] / pivot
            offsets[parent] += offsets[place] / pivot
    found: list[float] = []
    for place, pivot in enumerate(pivots):
        above: float = found[parents[place - 1]] if place else volts
        here = (above - ohms[place] * offsets[place]) / pivot
        if here <= NO_VOLTS * volts:
            return None
        found.append(here)
    return found


def _network(
    tree: Tree, volts: Volt, found: list[float], ohms: list[float], draws: Sequence[Draw]
) -> Network:
    """Return the operating point with its currents, gathered from the draws up to the bank."""
    nodes = tree.nodes
    at = dict(zip(nodes, map(Volt, found), strict=True))
    through = dict.fromkeys(nodes, 0.0)
    for draw in draws:
        through[draw.node] += _current(draw, at[draw.node])
    for branch in reversed(tree.branches):
        through[branch.source] += through[branch.ident]
    lost = {
        node: Watt(through[node] * through[node] * resistance)
        for node, resistance in zip(nodes, ohms, strict=True)
    }
    taking = [draw.node for draw in draws if draw.amount > 0]
    return Network(
        open_volts=volts,
        volts=at,
        amps={branch.ident: Amp(through[branch.ident]) for branch in tree.branches},
        lost={branch.ident: lost[branch.ident] for branch in tree.branches},
        current=Amp(through[tree.root]),
        lost_in_bank=lost[tree.root],
        taken=Watt(sum(_current(draw, at[draw.node]) * at[draw.node] for draw in draws)),
        worst=min(taking, key=at.__getitem__, default=None),
    )


def _current(draw: Draw, volts: Volt) -> float:
    """Return what a draw takes at its volts, A."""
    if draw.behaves is Behaves.CURRENT:
        return draw.amount
    return draw.amount / volts if draw.behaves is Behaves.POWER else volts / draw.amount
