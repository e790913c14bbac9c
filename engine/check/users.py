"""What takes or brings current in a boat's DC network, and in which way of living."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.feeders.tree import Behaves
from engine.inverter.efficiency import dc_watts
from engine.loads.load import CONDITIONS, ac_power, bank_current
from engine.units import Watt

if TYPE_CHECKING:
    from engine.loads.load import Load
    from engine.plan.parts import Circuit, Plan

THROUGH_INVERTER: Final = {"inverter", "idle"}
PUSHES: Final = "source"
HELD_BACK: Final = {PUSHES, "starter", "bank", "inverter"}
"""Circuits that no living condition switches on by themselves."""


@dataclass(frozen=True, slots=True)
class User:
    """What takes or brings current at the end of a circuit, A, W or Ω by how it behaves.

    An AC load's watts are those at its plug: what they cost goes by all that run together.
    """

    ident: str
    name: str
    node: str
    amount: float
    behaves: Behaves
    conditions: tuple[str, ...]
    supply: str = "dc"

    @property
    def pushes(self) -> bool:
        """True for a charging source."""
        return self.amount < 0


def _of_load(load: Load, plan: Plan) -> User | None:
    """Return a load as it draws; None where its draw is not known or it is not on the bank."""
    drawn = bank_current(load, plan.supply)
    if drawn is None or load.supply == "shore":
        return None
    if load.supply in THROUGH_INVERTER:
        return _through_inverter(load, plan, drawn.likely)
    in_watts = load.watts is not None and load.draw is None
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
    node = load.circuit.strip().upper()
    return User(load.ident, load.name, node, amount, behaves, _used(load))


def _used(load: Load) -> tuple[str, ...]:
    """Return the conditions a load is used in."""
    if load.always_live:
        return tuple(CONDITIONS)
    hours = [(name, load.hours_in(name)) for name in CONDITIONS]
    return tuple(name for name, one in hours if one and one.likely > 0)


def _through_inverter(load: Load, plan: Plan, current: float) -> User:
    """Return an AC load on the inverter's circuit, or the inverter itself with nothing running."""
    node = load.circuit.strip().upper()
    if plan.inverter and plan.inverter.circuit:
        node = plan.inverter.circuit.strip().upper()
    watts = ac_power(load, plan.supply)
    if watts is None:
        watts = Watt(current * plan.boat.volts)
    return User(
        load.ident, load.name, node, watts, Behaves.POWER, _used(load), load.supply
    )  # fmt: skip


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


def dc_watts_of(plan: Plan, on: list[User]) -> Watt:
    """Return what the AC loads that run together take from the bank."""
    ac = sum(user.amount for user in on if user.supply == "inverter")
    if ac <= 0:
        return Watt(sum(user.amount for user in on))
    curve = plan.supply.curve
    return dc_watts(curve, Watt(ac)) if curve else Watt(ac)


def forced_user(plan: Plan, ident: str, users: tuple[User, ...]) -> User | None:
    """Return a circuit as a user of its design current; not one that only feeds others."""
    circuit = next((one for one in plan.circuits if one.ident == ident), None)
    if circuit is None or circuit.feeds == "bus":
        return None
    if circuit.feeds == PUSHES and not any(user.node == ident for user in users):
        return None
    return _of_circuit(circuit)
