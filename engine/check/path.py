"""What lies between the bank and where a circuit starts."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.voltage import open_circuit
from engine.batteries.voltage import resistance as bank_resistance
from engine.conductors.carrying import working_temperature
from engine.conductors.drop import loop_drop
from engine.conductors.resistance import resistance
from engine.protection.fault import cold_cable
from engine.units import Amp, AmpHour, Celsius, Metre, Ohm, Share, Volt

if TYPE_CHECKING:
    from engine.plan.parts import Bank, Circuit, Plan

FULL: Final = Share(1.0)
NOTHING: Final = Ohm(0.0)
SOUND: Final = Ohm(0.001)
"""All that switch, protection and lugs of a sound circuit have together, typical, Ω."""
WARM: Final = Celsius(25.0)
"""Temperature from which a bank's resistance is least in its table, °C."""


@dataclass(frozen=True, slots=True)
class Path:
    """The way from the bank to a circuit's start, as a fault takes it, and as a load does.

    ``volts`` and ``bank`` are None where the bank is not known, ``upstream`` (Ω, cold copper and
    sound joints) and ``warm`` (Ω, as it works) where a feeder is not. ``feeders`` run from the bank
    on; ``guard`` is the least rating on the way and ``guarded_by`` its circuit. ``lost`` says why
    the way leads to no bank, and ``other_bank`` that another bank adds to the fault.
    """

    feeders: tuple[str, ...] = ()
    volts: Volt | None = None
    bank: Ohm | None = None
    upstream: Ohm | None = NOTHING
    warm: Ohm | None = NOTHING
    guard: Amp | None = None
    guarded_by: str = ""
    cranking: Amp | None = None
    capacity: AmpHour | None = None
    lithium: bool = False
    lost: str = ""
    other_bank: bool = False

    @property
    def at_bank(self) -> bool:
        """True where the circuit starts at the bank itself."""
        return not self.feeders and not self.lost


def bank_ohms(bank: Bank, charge: Share, *, warm: bool = False) -> Ohm | None:
    """Return the bank's inner resistance as stated, or typical for its chemistry and capacity.

    Parameters
    ----------
    bank : Bank
        As stated.
    charge : Share
        State of charge. [1]
    warm : bool
        Whether the cells are taken as warm at least, as a fault may find them.

    Returns
    -------
    Ohm or None
        None where neither it nor the capacity is known. [Ω]

    Notes
    -----
    Of the labelled capacity: a worn bank has more, and the fault is never understated.
    """
    if bank.resistance is not None:
        return bank.resistance
    if bank.capacity is None:
        return None
    kind = CHEMISTRIES[bank.chemistry]
    temperature = Celsius(max(bank.temperature, WARM)) if warm else bank.temperature
    return bank_resistance(kind, bank.capacity, bank.volts, charge, temperature)


def chain_of(circuit: Circuit, by_id: dict[str, Circuit]) -> tuple[Circuit, ...]:
    """Return the feeders of a circuit, bank first; a loop is cut where it closes."""
    chain: list[Circuit] = []
    seen = {circuit.ident}
    above = by_id.get(circuit.fed_from)
    while above is not None and above.ident not in seen:
        seen.add(above.ident)
        chain.append(above)
        above = by_id.get(above.fed_from)
    return tuple(reversed(chain))


def cold_ohms(circuit: Circuit) -> Ohm | None:
    """Return a circuit's loop, cold, short and with sound joints; None where unknown.

    A joint that is worse than sound will be mended, and the fault grows when it is.
    """
    if circuit.run is None or circuit.size is None:
        return None
    cable = cold_cable(Metre(circuit.run.low), circuit.size)
    return Ohm(cable / circuit.parallel + min(circuit.joints or 0.0, SOUND))


def loop_ohms(circuit: Circuit) -> Ohm | None:
    """Return a circuit's loop at its working temperature with its joints; None where unknown.

    Parameters
    ----------
    circuit : Circuit
        Carrying its design current, or cold where that is not known. [Ω]
    """
    size, run, around = circuit.size, circuit.run, circuit.around
    if size is None or run is None or around is None or not size.counts_as:
        return None
    current = circuit.current.likely if circuit.current else 0.0
    warm = working_temperature(size, around, Amp(current / circuit.parallel))
    warm = Celsius(min(warm, around.insulation))  # beyond it the verdict on heat says stop
    cable = loop_drop(Amp(1.0), Metre(run.likely), resistance(size, warm))
    return Ohm(cable / circuit.parallel + (circuit.joints or 0.0))


def _path(circuit: Circuit, by_id: dict[str, Circuit], start: Path) -> Path:
    chain = chain_of(circuit, by_id)
    lost = _lost(circuit, chain, by_id)
    if lost or not circuit.on_bank:
        return replace(start, volts=None, bank=None, lost=lost)
    guards = [
        (Amp(one.rating * one.guard.abreast), one.ident)
        for one in chain
        if one.rating is not None and one.guard.fitted
    ]
    guard, guarded_by = min(guards, default=(None, ""))
    return replace(
        start,
        feeders=tuple(feeder.ident for feeder in chain),
        upstream=_summed([cold_ohms(one) for one in chain]),
        warm=_summed([loop_ohms(one) for one in chain]),
        guard=guard,
        guarded_by=guarded_by,
    )


def _summed(ohms: list[Ohm | None]) -> Ohm | None:
    known = [one for one in ohms if one is not None]
    return Ohm(sum(known)) if len(known) == len(ohms) else None


def _lost(circuit: Circuit, chain: tuple[Circuit, ...], by_id: dict[str, Circuit]) -> str:
    """Return why a circuit hangs on no bank; empty where it does."""
    first = (*chain, circuit)[0]
    if not first.fed_from:
        apart = next((one.ident for one in chain if not one.on_bank), "")
        return f"It is fed from {apart}, which has volts of its own." if apart else ""
    if first.fed_from in by_id:
        return "It is fed by itself, in a ring."
    return f"{first.fed_from}, which should feed it, is not here."


@lru_cache(maxsize=16)
def paths_of(circuits: tuple[Circuit, ...], bank: Bank | None) -> dict[str, Path]:
    """Return the path of every circuit, by id.

    Parameters
    ----------
    circuits : tuple of Circuit
        Shape ``(n,)``.
    bank : Bank or None
        None where it is not known.
    """
    start = Path()
    if bank is not None:
        kind = CHEMISTRIES[bank.chemistry]
        start = Path(
            volts=open_circuit(kind, FULL, bank.volts),
            bank=bank_ohms(bank, FULL, warm=True),
            cranking=bank.cranking,
            capacity=bank.capacity,
            lithium=not kind.lead,
            other_bank=any(one.feeds == "bank" and not one.guard.self_limiting for one in circuits),
        )
    by_id = {circuit.ident: circuit for circuit in circuits}
    return {circuit.ident: _path(circuit, by_id, start) for circuit in circuits}


def whole_plan(plan: Plan) -> dict[str, Path]:
    """Return the paths of a plan."""
    return paths_of(plan.circuits, plan.bank)
