"""A plan as the days ahead see it: bank, loads by the clock, sources, and when the engine runs."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.ahead.brought import Brought, brought_of
from engine.ahead.by_clock import lacking_loads, uses_of
from engine.ahead.panels import sun_of
from engine.ahead.place import Where, where_of
from engine.ahead.winds import Winds, turbines_of
from engine.batteries.chemistry import CHEMISTRIES
from engine.check.bank_now import held_now, limit_in
from engine.simulate.house import FULL, House, house_of
from engine.simulate.policy import DAY, NEVER, Engine, Policy, Setup
from engine.simulate.use import STEP, intervals, profile
from engine.simulate.weather import FORTNIGHT, Outlook
from engine.solar.cloud import Clearness, spell
from engine.units import Amp, AmpHour, Share

if TYPE_CHECKING:
    from engine.plan.parts import Bank, Plan

RESTORED: Final = Share(0.4)
"""How much an engine run puts back where the plan states no end."""
LEAD_OFF: Final = Share(0.85)
"""Charge above which lead takes too little to keep an engine running for."""


@dataclass(frozen=True, slots=True)
class Spells:
    """Draws the clearness of days that follow each other."""

    days: Clearness | None

    def __call__(self, length: int, seed: int) -> tuple[Share, ...]:
        """Return the clearness of each day, shape ``(length,)``; one in a dark month, of no sun."""
        return spell(self.days, length, seed) if self.days else (Share(1.0),) * length


def house_in(bank: Bank) -> House:
    """Return a bank as the days ahead see it.

    Parameters
    ----------
    bank : Bank
        With a capacity.

    Raises
    ------
    Problem
        If it cannot be run through days.
    """
    limit = limit_in(bank)
    return house_of(
        CHEMISTRIES[bank.chemistry],
        held_now(bank) or AmpHour(0.0),
        bank.volts,
        bank.charge,
        bank.reserve,
        bank.temperature,
        limit.current if limit else None,
    )


def policy_in(plan: Plan, house: House) -> Policy:
    """Return when the engine charges, with what is not stated filled in.

    Parameters
    ----------
    plan : Plan
        As read.
    house : House
        Its bank.

    Raises
    ------
    Problem
        If the hours or charges do not fit each other.
    """
    stated = plan.policy
    if stated.never:
        return NEVER
    on = house.reserve if stated.engine_on_at is None else stated.engine_on_at
    most = LEAD_OFF if house.chemistry.lead else FULL
    off = stated.engine_off_at
    if off is None:
        off = Share(min(on + RESTORED, max(most, min(on + 0.05, FULL))))
    return Policy(on, off, stated.least_run, stated.quiet_from, stated.quiet_to)


def startable(brought: tuple[Brought, ...]) -> tuple[Brought, ...]:
    """Return the sources that can be started to charge.

    Parameters
    ----------
    brought : tuple of Brought
        Of all sources of a plan.
    """
    return tuple(one for one in brought if one.started and one.current and one.source.counted)


def started_by(plan: Plan, brought: tuple[Brought, ...]) -> Brought | None:
    """Return the source that is started when the bank is low: the one named, else the first.

    Parameters
    ----------
    plan : Plan
        As read.
    brought : tuple of Brought
        Of all its sources.
    """
    able = startable(brought)
    named = [one for one in able if one.source.ident == plan.policy.source]
    return next(iter(named or able), None)


@lru_cache(maxsize=64)
def outlook_of(plan: Plan, condition: str, days: int = FORTNIGHT) -> Outlook | None:
    """Return what lies ahead of a plan; None where something of `lacking` is not known.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    days : int
        How many, 1 to 60. [1]

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    return outlook_in(plan, condition, where_of(plan), days)


@lru_cache(maxsize=64)
def outlook_in(
    plan: Plan, condition: str, where: Where | None, days: int = FORTNIGHT
) -> Outlook | None:
    """Return what lies ahead of a plan in a place and month.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    where : Where or None
        Place and month; None gives None.
    days : int
        How many, 1 to 60. [1]

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    bank = plan.bank
    if bank is None or not bank.capacity or where is None or lacking_loads(plan, condition):
        return None
    counted = tuple(one for one in plan.sources if one.counted)
    brought = brought_of(replace(plan, sources=counted), condition)
    house = house_in(bank)
    starter = None if condition == "unattended" else started_by(plan, brought)
    engine = None
    if starter and starter.current and house.intake.limit > 0:
        engine = Engine(starter.current, starter.fuel or 0.0)
    setup = Setup(house, policy_in(plan, house) if engine else NEVER, engine)
    uses = uses_of(plan, condition)
    winds = Winds(turbines_of(counted, where, condition), plan.boat.volts)
    docked = condition == "dock"
    steady = sum(_steady(one) for one in brought if docked or one.source.kind == "water")
    return Outlook(
        setup=setup,
        loads=profile(uses, where.daylight),
        sun=sun_of(counted, where, plan.boat.volts, condition),
        spells=Spells(where.days),
        essential=profile(tuple(one for one in uses if one.essential), where.daylight),
        wind=winds if winds.turbines else None,
        shore=tuple(Amp(steady) for _ in range(intervals(STEP))) if steady else (),
        days=days,
        steady_wind=winds.steady if winds.turbines else 1.0,
        clear=where.clear or None,
        on_demand=docked,
    )


def _steady(one: Brought) -> float:
    """Return what a rotor tows up, or a shore charger can give, as the mean of a day, A."""
    if one.source.kind == "shore":
        return (one.current or 0.0) * one.source.hours / DAY
    return one.likely / DAY if one.source.kind == "water" else 0.0
