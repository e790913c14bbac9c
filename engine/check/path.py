"""What lies between the bank and where a circuit starts."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.voltage import open_circuit
from engine.batteries.voltage import resistance as bank_resistance
from engine.conductors.carrying import working_temperature
from engine.conductors.drop import loop_drop
from engine.conductors.resistance import resistance
from engine.protection.fault import cold_cable
from engine.units import Amp, AmpHour, Metre, Ohm, Share, Volt

if TYPE_CHECKING:
    from engine.plan.parts import Bank, Circuit, Plan

FULL: Final = Share(1.0)
NOTHING: Final = Ohm(0.0)


@dataclass(frozen=True, slots=True)
class Path:
    """The way from the bank to a circuit's start, at its coldest and fullest.

    ``volts`` and ``bank`` are None where the bank is not known, ``upstream`` (Ω, cold copper and
    joints) where a feeder is not. ``feeders`` run from the bank on; ``guard`` is the least rating
    on the way and ``guarded_by`` its circuit.
    """

    feeders: tuple[str, ...] = ()
    volts: Volt | None = None
    bank: Ohm | None = None
    upstream: Ohm | None = NOTHING
    guard: Amp | None = None
    guarded_by: str = ""
    cranking: Amp | None = None
    capacity: AmpHour | None = None
    lithium: bool = False


def bank_ohms(bank: Bank, charge: Share) -> Ohm | None:
    """Return the bank's inner resistance as stated, or typical for its chemistry and capacity.

    Parameters
    ----------
    bank : Bank
        As stated.
    charge : Share
        State of charge. [1]

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
    return bank_resistance(kind, bank.capacity, bank.volts, charge, bank.temperature)


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
    """Return a circuit's loop, cold and at its shortest, with its joints; None where unknown."""
    if circuit.run is None or circuit.size is None:
        return None
    cable = cold_cable(Metre(circuit.run.low), circuit.size)
    return Ohm(cable / circuit.parallel + (circuit.joints or 0.0))


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
    cable = loop_drop(Amp(1.0), Metre(run.likely), resistance(size, warm))
    return Ohm(cable / circuit.parallel + (circuit.joints or 0.0))


def _path(circuit: Circuit, by_id: dict[str, Circuit], start: Path) -> Path:
    chain = chain_of(circuit, by_id)
    upstream: float | None = 0.0
    guard, guarded_by = None, ""
    for feeder in chain:
        own = cold_ohms(feeder)
        upstream = None if own is None or upstream is None else upstream + own
        rating = feeder.rating if feeder.guard.fitted else None
        if rating is not None and (guard is None or rating < guard):
            guard, guarded_by = rating, feeder.ident
    return Path(
        tuple(feeder.ident for feeder in chain),
        start.volts if circuit.on_bank else None,
        start.bank if circuit.on_bank else None,
        None if upstream is None else Ohm(upstream),
        guard,
        guarded_by,
        start.cranking,
        start.capacity,
        start.lithium,
    )


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
            bank=bank_ohms(bank, FULL),
            cranking=bank.cranking,
            capacity=bank.capacity,
            lithium=not kind.lead,
        )
    by_id = {circuit.ident: circuit for circuit in circuits}
    return {circuit.ident: _path(circuit, by_id, start) for circuit in circuits}


def whole_plan(plan: Plan) -> dict[str, Path]:
    """Return the paths of a plan."""
    return paths_of(plan.circuits, plan.bank)
