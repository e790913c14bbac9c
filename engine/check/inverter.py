"""What can the inverter carry, for how long, and would its cut-off trip?"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.temperature import capacity_factor
from engine.batteries.voltage import open_circuit
from engine.batteries.voltage import resistance as bank_resistance
from engine.check.bank_now import capacity_now
from engine.check.path import chain_of, loop_ohms
from engine.finding import Verdict, meets
from engine.inverter.efficiency import dc_watts, efficiency
from engine.inverter.runtime import Job, Run, Store, run
from engine.inverter.surge import carries_surge
from engine.loads.load import ac_power, running_hours
from engine.units import Amp, AmpHour, Ohm, Share, Watt

if TYPE_CHECKING:
    from engine.loads.load import Load
    from engine.plan.parts import Bank, InverterPlan, Plan

LOWEST: Final = Share(0.0)


@dataclass(frozen=True, slots=True)
class Appliance:
    """One AC load on the inverter: watts at the plug, minutes a day, Ah a day, surge in W."""

    load: Load
    watts: Watt
    minutes: float | None
    day: AmpHour | None
    surge: Watt | None
    fits: Verdict
    starts: Verdict


@dataclass(frozen=True, slots=True)
class InverterAnswer:
    """What is found of the inverter with a set of loads running together."""

    appliances: tuple[Appliance, ...]
    together: tuple[Appliance, ...]
    watts: Watt
    dc: Watt
    efficiency: float
    result: Run | None
    feeder: Ohm | None
    trips: Verdict
    feed_trips: bool
    charge_after: Share | None
    missing: tuple[str, ...]


def store_of(bank: Bank) -> Store | None:
    """Return the bank as the inverter sees it.

    Parameters
    ----------
    bank : Bank
        As stated; None comes back where its capacity is not known.
    """
    capacity = capacity_now(bank)
    if capacity is None:
        return None
    kind = CHEMISTRIES[bank.chemistry]
    own = bank.resistance
    scale = 1.0
    if own is not None:
        scale = own / bank_resistance(kind, capacity, bank.volts)

    def inner(charge: Share) -> Ohm:
        typical = bank_resistance(kind, capacity, bank.volts, charge, bank.temperature)
        return Ohm(typical * scale)

    return Store(
        capacity,
        bank.rated_hours,
        bank.exponent,
        kind.low_rate_gain,
        bank.volts,
        lambda charge: open_circuit(kind, charge, bank.volts),
        inner,
        capacity_factor(kind, bank.temperature),
    )


def feeder_of(plan: Plan) -> Ohm | None:
    """Return the resistance of the whole way from the bank to the inverter, there and back.

    Parameters
    ----------
    plan : Plan
        With an inverter and its feed circuit.

    Returns
    -------
    Ohm or None
        Warm at each circuit's design current, joints and shared feeders included; None where one
        of them is not known. [Ω]
    """
    by_id = {one.ident: one for one in plan.circuits}
    feed = by_id.get(plan.inverter.circuit) if plan.inverter else None
    if feed is None:
        return None
    way = [loop_ohms(one) for one in (*chain_of(feed, by_id), feed)]
    known = [one for one in way if one is not None]
    return Ohm(sum(known)) if len(known) == len(way) else None


def _appliance(load: Load, plan: Plan, inverter: InverterPlan) -> Appliance | None:
    watts = ac_power(load, plan.supply)
    if watts is None:
        return None
    hours = running_hours(load, "anchor")
    taken = load.draw.likely if load.draw else dc_watts(inverter.curve, watts) / plan.supply.volts
    surge = None
    if load.surge is not None:
        surge = Watt(load.surge if load.watts else load.surge * plan.supply.volts)
    fits = Verdict.FINE if meets(watts, inverter.rating) else Verdict.STOP
    starts = Verdict.NOT_KNOWN
    if inverter.surge is not None:
        peak = Watt(max(surge or watts, watts))
        starts = Verdict.FINE if carries_surge(peak, inverter.surge) else Verdict.SHOULD
    return Appliance(
        load,
        watts,
        None if hours is None else hours * 60,
        None if hours is None else AmpHour(taken * hours),
        surge,
        fits,
        starts,
    )


@lru_cache(maxsize=64)
def inverter_answer(plan: Plan, chosen: frozenset[str]) -> InverterAnswer | None:
    """Return what the inverter can do with the chosen loads together; None without an inverter.

    Parameters
    ----------
    plan : Plan
        As read.
    chosen : frozenset of str
        Ids of the loads that run together; the largest alone where none is chosen.
    """
    inverter, bank = plan.inverter, plan.bank
    if inverter is None:
        return None
    found = [_appliance(load, plan, inverter) for load in plan.loads]
    appliances = tuple(one for one in found if one)
    together = tuple(one for one in appliances if one.load.ident in chosen)
    if not together and appliances:
        together = (max(appliances, key=lambda one: one.watts),)
    watts = Watt(sum(one.watts for one in together))
    feeder, store = feeder_of(plan), store_of(bank) if bank else None
    missing = []
    if bank is None or store is None:
        missing.append("the bank's chemistry and capacity")
    if feeder is None:
        missing.append("the feed circuit's run and conductor; its cable is counted as nothing")
    result = None
    trips = Verdict.NOT_KNOWN
    feed_trips = False
    after = None
    if store and bank and watts > 0:
        job = Job(watts, bank.charge, bank.reserve, feeder or Ohm(0.0), inverter.cutoff)
        result = run(store, inverter.curve, job)
        if result.tripped_at is not None:
            trips = Verdict.STOP
            feed_trips = _goes_on(store, inverter, replace(job, feeder=Ohm(0.0)))
        elif feeder is not None:
            trips = Verdict.FINE
        after = _after(together, bank, store)
    return InverterAnswer(
        appliances,
        together,
        watts,
        dc_watts(inverter.curve, watts),
        efficiency(inverter.curve, watts),
        result,
        feeder,
        trips,
        feed_trips,
        after,
        tuple(missing),
    )


def _goes_on(store: Store, inverter: InverterPlan, job: Job) -> bool:
    """Return whether the inverter would reach the reserve line."""
    return run(store, inverter.curve, job).tripped_at is None


def _after(together: tuple[Appliance, ...], bank: Bank, store: Store) -> Share | None:
    """Return the charge left after each chosen load has run its minutes once."""
    if any(one.day is None for one in together):
        return None
    taken = 0.0
    for one in together:
        if one.day and one.minutes:
            current = Amp(one.day / (one.minutes / 60))
            taken += one.day / store.delivers(current)
    return Share(max(bank.charge - taken, LOWEST))
