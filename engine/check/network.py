"""What do the volts come to everywhere, with these loads running at one time?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.voltage import open_circuit
from engine.check.path import FULL, bank_ohms, loop_ohms
from engine.feeders.solve import solve
from engine.feeders.tree import Behaves, Branch, Draw, tree_of
from engine.loads.load import CONDITIONS, bank_current
from engine.units import Ohm, Share, Volt

if TYPE_CHECKING:
    from engine.feeders.solve import Network
    from engine.loads.load import Load
    from engine.plan.parts import Bank, Circuit, Plan

BANK: Final = "bank"
LEVELS: Final = {
    "full": "the bank full",
    "now": "the bank as it is now",
    "lowest": "the bank at its reserve line",
}
"""How far the bank is charged while the loads run, and how a sentence says it."""
THROUGH_INVERTER: Final = {"inverter", "idle"}
PUSHES: Final = "source"
HELD_BACK: Final = {PUSHES, "starter"}
"""What no living condition switches on by itself."""


@dataclass(frozen=True, slots=True)
class User:
    """What takes or brings current at the end of a circuit, A, W or Ω by how it behaves."""

    ident: str
    name: str
    node: str
    amount: float
    behaves: Behaves
    conditions: tuple[str, ...]

    @property
    def pushes(self) -> bool:
        """True for a charging source."""
        return self.amount < 0


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


def _of_load(load: Load, plan: Plan) -> User | None:
    """Return a load as it draws; None where its draw is not known or it is not on the bank."""
    drawn = bank_current(load, plan.supply)
    if drawn is None or load.supply == "shore":
        return None
    in_watts = load.supply in THROUGH_INVERTER or (load.watts is not None and load.draw is None)
    behaves = Behaves(load.behaves) if load.behaves else None
    if behaves is None:
        behaves = Behaves.POWER if in_watts else Behaves.CURRENT
    amount = drawn.likely
    if behaves == Behaves.POWER:
        amount *= plan.boat.volts
    elif behaves == Behaves.RESISTANCE:
        if amount <= 0:
            return None
        amount = plan.boat.volts / amount
    hours = [(name, load.hours_in(name)) for name in CONDITIONS]
    used = tuple(name for name, one in hours if one and one.likely > 0)
    if load.always_live:
        used = tuple(CONDITIONS)
    node = load.circuit.strip().upper()
    return User(load.ident, load.name, node, amount, behaves, used)


def _of_circuit(circuit: Circuit) -> User | None:
    """Return a circuit with no loads listed, at its design current; a source brings it."""
    if circuit.current is None:
        return None
    amount = circuit.current.likely
    if circuit.feeds == PUSHES:
        amount = -amount
    conditions = () if circuit.feeds in HELD_BACK else tuple(CONDITIONS)
    return User(
        circuit.ident, circuit.name, circuit.ident, amount, Behaves.CURRENT, conditions
    )  # fmt: skip


@lru_cache(maxsize=16)
def users_of(plan: Plan) -> tuple[User, ...]:
    """Return everything that can run: loads by their circuits, circuits without any, sources.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    found = [user for load in plan.loads if (user := _of_load(load, plan))]
    busy = {user.node for user in found}
    feeders = {one.fed_from for one in plan.circuits}
    for circuit in plan.circuits:
        feeds_on = circuit.feeds == "bus" or circuit.ident in feeders
        idle = circuit.ident not in busy and not feeds_on
        if circuit.on_bank and (idle or circuit.feeds == PUSHES):
            own = _of_circuit(circuit)
            found += [own] if own else []
    return tuple(found)


def used_in(plan: Plan, condition: str) -> frozenset[str]:
    """Return the ids of all that is used in a living condition, at one time.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    """
    return frozenset(user.ident for user in users_of(plan) if condition in user.conditions)


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


def _forced(plan: Plan, ident: str, users: tuple[User, ...]) -> User | None:
    """Return a circuit as a user of its design current; not one that only feeds others."""
    circuit = next((one for one in plan.circuits if one.ident == ident), None)
    if circuit is None or circuit.feeds == "bus":
        return None
    if circuit.feeds == PUSHES and not any(user.node == ident for user in users):
        return None
    return _of_circuit(circuit)


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
    draws = []
    users = users_of(plan)
    alone = _forced(plan, forced, users)
    for user in users:
        if user.node not in nodes:
            where = f"{user.node} is not solved" if user.node else "its circuit is not entered"
            left_out.append((user.ident, where))
        elif user.ident in running and not (alone and user.node == forced):
            draws.append(Draw(user.node, user.amount, user.behaves))
    if alone and forced in nodes:
        draws.append(Draw(forced, alone.amount, alone.behaves))
    volts, inner = bank_at(plan.bank, level, plan.boat.volts)
    solved = solve(tree, volts, inner, draws)
    return NetworkAnswer(users, running, level, solved, tuple(left_out), volts)
