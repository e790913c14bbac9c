"""What is the bank worth: what it holds, weighs, lives, takes and gives, and at which rate."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.batteries.ageing import cycle_life, mass
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.peukert import capacity_at_hours, clamped_delivered
from engine.batteries.temperature import capacity_factor
from engine.batteries.voltage import blocks, open_circuit, resistance
from engine.check.bank_now import STANDARD, capacity_now, health_of, held_now, limit_in
from engine.estimate import Estimate
from engine.loads.day_use import day_use
from engine.loads.load import bank_current
from engine.units import Amp, AmpHour, Hour, Share, Volt, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry
    from engine.derate import Derate
    from engine.loads.load import Load
    from engine.plan.parts import Bank, Plan

HOURS: Final = (STANDARD, Hour(5.0), Hour(1.0))
"""Discharge times a bank's capacity is shown at."""
HEAVIEST: Final = 2
"""How many of the heaviest loads are shown beside them."""


@dataclass(frozen=True, slots=True)
class BankFigures:
    """What a bank is worth as it is now.

    ``held``, at 20 hours, as old and as cold as it is, and ``usable`` in Ah, ``energy`` in Wh at
    the bank's nominal volts, ``mass`` in kg,
    ``cycles`` to ``depth`` (1), ``life`` all it gives in them (Ah), ``most_charge`` in A at its
    temperature, 0 where it must not be charged, with the ``cold`` that says why; ``each`` is the
    label of one battery, Ah.
    """

    kind: Chemistry
    held: AmpHour
    usable: AmpHour
    energy: float
    mass: Estimate
    depth: Share
    cycles: Estimate
    life: AmpHour
    most_charge: Estimate
    cold: tuple[Derate, ...]
    each: AmpHour


def nominal_volts(kind: Chemistry, system: Volt) -> Volt:
    """Return a bank's nominal volts on a system, 12.8 V for lithium on 12 V.

    Parameters
    ----------
    kind : Chemistry
        Of the bank.
    system : Volt
        Of the boat. [V]

    Examples
    --------
    >>> nominal_volts(CHEMISTRIES["lithium"], Volt(24.0))
    25.6
    """
    return Volt(blocks(kind, system) * kind.block_volts)


def figures_of(bank: Bank) -> BankFigures | None:
    """Return what a bank is worth; None where its capacity is not known.

    Parameters
    ----------
    bank : Bank
        As stated; what its label does not say is typical for the chemistry.
    """
    held, limit = held_now(bank), limit_in(bank)
    if held is None or limit is None or bank.capacity is None:
        return None
    kind, more = CHEMISTRIES[bank.chemistry], bank.more
    depth = Share(1 - bank.reserve)
    cycles = _stated(more.cycles) or Estimate.exact(cycle_life(kind, depth), "default")
    return BankFigures(
        kind,
        held,
        AmpHour(held * depth),
        held * nominal_volts(kind, bank.volts),
        _stated(more.mass) or mass(kind, bank.capacity, bank.volts),
        depth,
        cycles,
        AmpHour(cycles.likely * depth * bank.capacity),
        Estimate.exact(limit.current, "nameplate" if limit.stated else "default"),
        limit.cold,
        AmpHour(bank.capacity / bank.strings),
    )


def _stated(value: float | None) -> Estimate | None:
    return None if value is None else Estimate.exact(value, "nameplate")


@dataclass(frozen=True, slots=True)
class Rate:
    """What a full bank gives at one current: A, h and Ah; ``volts`` at the reserve line then.

    ``label`` is the whole label at this rate, warm; ``cold`` at the bank's temperature; ``now``
    with its tested health too. ``why`` says which factors made it.
    """

    name: str
    current: Amp
    time: Hour
    label: AmpHour
    cold: AmpHour
    now: AmpHour
    volts: Volt
    why: str


def rates_of(plan: Plan, condition: str) -> tuple[Rate, ...]:
    """Return what the bank gives at 20, 5 and 1 hour, in a mean day and under its heaviest loads.

    Parameters
    ----------
    plan : Plan
        With its bank.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    tuple of Rate
        Shape ``(0,)`` where the bank's capacity is not known.
    """
    bank = plan.bank
    if bank is None or bank.capacity is None:
        return ()
    found = [_in_hours(bank, hours) for hours in HOURS]
    mean = day_use(plan.loads, condition, plan.supply).band.median / 24
    drawn = [("a day's mean use", Amp(mean))] if mean > 0 else []
    drawn += [(load.name, current) for load, current in heaviest(plan)]
    return (*found, *(_at_current(bank, name, current) for name, current in drawn))


def heaviest(plan: Plan) -> tuple[tuple[Load, Amp], ...]:
    """Return the loads that draw most from the bank, heaviest first, with their current.

    Parameters
    ----------
    plan : Plan
        As read.

    Returns
    -------
    tuple
        Shape ``(n,)``, n at most two. [A]
    """
    found = [
        (load, Amp(drawn.likely))
        for load in plan.loads
        if load.supply != "shore" and (drawn := bank_current(load, plan.supply))
    ]
    heavy = sorted(found, key=lambda one: -one[1])[:HEAVIEST]
    return tuple(one for one in heavy if one[1] > 0)


def _in_hours(bank: Bank, hours: Hour) -> Rate:
    """Return what a bank gives when it is emptied in so many hours."""
    capacity, held = bank.capacity or AmpHour(0.0), capacity_now(bank) or AmpHour(0.0)
    gain = CHEMISTRIES[bank.chemistry].low_rate_gain
    new, old = (
        capacity_at_hours(one, bank.rated_hours, hours, bank.exponent, gain)
        for one in (capacity, held)
    )
    warmth = capacity_factor(CHEMISTRIES[bank.chemistry], bank.temperature)
    return _rate(bank, f"emptied in {said(hours)} h", Amp(old * warmth / hours), (new, old))


def _at_current(bank: Bank, name: str, current: Amp) -> Rate:
    """Return what a bank gives at a current."""
    capacity, held = bank.capacity or AmpHour(0.0), capacity_now(bank) or AmpHour(0.0)
    gain = CHEMISTRIES[bank.chemistry].low_rate_gain
    new, old = (
        clamped_delivered(one, bank.rated_hours, current, bank.exponent, gain)
        for one in (capacity, held)
    )
    return _rate(bank, name, current, (new, old))


def _rate(bank: Bank, name: str, current: Amp, given: tuple[AmpHour, AmpHour]) -> Rate:
    """Return a rate from what the bank gives warm, as labelled and as old as it is."""
    kind, (new, old) = CHEMISTRIES[bank.chemistry], given
    warmth = capacity_factor(kind, bank.temperature)
    inner = bank.resistance or resistance(
        kind, capacity_now(bank) or AmpHour(1.0), bank.volts, bank.reserve, bank.temperature
    )
    share = new / (bank.capacity or new)
    by = "all it holds" if share >= kind.low_rate_gain else f"by exponent {said(bank.exponent)}"
    words = [f"{said(share * 100)} % of the label, {by}"]
    if warmth < 1:
        words.append(f"{said(warmth * 100)} % of that at its temperature")
    if health_of(bank).likely < 1:
        words.append(f"{said(old / new * 100)} % of that for its age")
    now = AmpHour(old * warmth)
    return Rate(
        name,
        current,
        Hour(now / current),
        new,
        AmpHour(new * warmth),
        now,
        Volt(open_circuit(kind, bank.reserve, bank.volts) - current * inner),
        "; ".join(words),
    )
