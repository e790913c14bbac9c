"""What do the volts come to everywhere, with these loads running at one time?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.voltage import open_circuit
from engine.check.path import FULL, bank_ohms, loop_ohms
from engine.check.users import (
    THROUGH_INVERTER,
    User,
    dc_watts_of,
    forced_user,
    users_of,
)
from engine.feeders.solve import solve
from engine.feeders.tree import Behaves, Branch, Draw, tree_of
from engine.units import Ohm, Share, Volt

if TYPE_CHECKING:
    from engine.feeders.solve import Network
    from engine.plan.parts import Bank, Plan

BANK: Final = "bank"
LEVELS: Final = {
    "full": "the bank full",
    "now": "the bank as it is now",
    "lowest": "the bank at its reserve line",
}
"""How far the bank is charged while the loads run, and how a sentence says it."""


@dataclass(frozen=True, slots=True)
class NetworkAnswer:
    """Every node's volts with a set of users running, or why there is no such point.

    ``solved`` is None where there is no operating point. ``left_out`` names what could not be
    counted, by id.
    """

    users: tuple[User, ...]
    running: frozenset[str]
    level: str
    solved: Network | None
    left_out: tuple[tuple[str, str], ...]
    open_volts: Volt

    def volts_at(self, ident: str) -> Volt | None:
        """Return the volts at a circuit's far end; None where it is not solved."""
        return self.solved.volts.get(ident) if self.solved else None

    def lost_to(self, ident: str) -> Volt | None:
        """Return the volts lost from the bank's terminals to a circuit's far end."""
        there = self.volts_at(ident)
        if there is None or self.solved is None:
            return None
        return Volt(self.solved.volts[BANK] - there)


def bank_at(bank: Bank | None, level: str, nominal: Volt) -> tuple[Volt, Ohm]:
    """Return the bank's open-circuit volts and inner resistance at a level of charge.

    Parameters
    ----------
    bank : Bank or None
        None: nominal volts that nothing pulls down.
    level : str
        One of LEVELS.
    nominal : Volt
        Of the system. [V]

    Returns
    -------
    tuple of Volt, Ohm
        [V], [Ω]; no resistance where the capacity is not known.
    """
    if bank is None:
        return nominal, Ohm(0.0)
    charge = {"full": FULL, "now": bank.charge, "lowest": Share(bank.reserve)}[level]
    volts = open_circuit(CHEMISTRIES[bank.chemistry], charge, bank.volts)
    return volts, bank_ohms(bank, charge) or Ohm(0.0)


@lru_cache(maxsize=64)
def network_answer(
    plan: Plan, running: frozenset[str], level: str = "now", forced: str = ""
) -> NetworkAnswer:
    """Return every node's volts with these running.

    Parameters
    ----------
    plan : Plan
        As read.
    running : frozenset of str
        Ids of loads, and of circuits that stand for themselves.
    level : str
        One of LEVELS.
    forced : str
        Id of a circuit taken at its design current, whatever runs on it; none by default.
    """
    branches, left_out = [], []
    for circuit in plan.circuits:
        if not circuit.on_bank:
            continue
        ohms = loop_ohms(circuit)
        if ohms is None:
            left_out.append((circuit.ident, "its run or conductor is not known"))
        else:
            branches.append(Branch(circuit.ident, circuit.fed_from or BANK, ohms))
    tree, problems = tree_of(BANK, branches)
    left_out += [(problem.where, problem.what) for problem in problems]
    nodes = set(tree.nodes)
    draws: list[Draw] = []
    users = users_of(plan)
    alone = forced_user(plan, forced, users)
    through: dict[str, list[User]] = {}
    for user in users:
        if user.node not in nodes:
            where = f"{user.node} is not solved" if user.node else "its circuit is not entered"
            left_out.append((user.ident, where))
        elif user.ident not in running or (alone and user.node == forced):
            continue
        elif user.supply in THROUGH_INVERTER:
            through.setdefault(user.node, []).append(user)
        else:
            draws.append(Draw(user.node, user.amount, user.behaves))
    draws += [Draw(node, dc_watts_of(plan, on), Behaves.POWER) for node, on in through.items()]
    if alone and forced in nodes:
        draws.append(Draw(forced, alone.amount, alone.behaves))
    volts, inner = bank_at(plan.bank, level, plan.boat.volts)
    if inner <= 0:
        left_out.append((BANK, "its chemistry and capacity are not known, nor how far it sags"))
    solved = solve(tree, volts, inner, draws)
    return NetworkAnswer(users, running, level, solved, tuple(left_out), volts)
