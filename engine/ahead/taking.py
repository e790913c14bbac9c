"""How the plan's bank takes what its sources give: time to charge, and what it cannot take."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.ahead.place import where_of
from engine.ahead.setup import house_in, outlook_of
from engine.charging.acceptance import time_to_charge
from engine.check.bank_now import limit_in
from engine.finding import meets
from engine.loads.day_use import day_use
from engine.problem import Problem
from engine.simulate.house import FULL
from engine.simulate.policy import DAY
from engine.simulate.run import run
from engine.simulate.stretch import heard
from engine.units import Amp, AmpHour, Hour, Share

if TYPE_CHECKING:
    from engine.ahead.brought import Brought
    from engine.charging.intake import Intake
    from engine.derate import Derate
    from engine.plan.parts import Bank, Plan

ENDS: Final = (Share(0.8), Share(0.9), FULL)
"""Charges a time is told for; the last counts as 100 %."""


@dataclass(frozen=True, slots=True)
class Taking:
    """How a bank takes charge: most current (A), warm and as cold as it is, and the cold's part.

    ``stated`` where its label sets the limit.
    """

    intake: Intake
    warm: Amp
    limit: Amp
    cold: tuple[Derate, ...]
    stated: bool


@dataclass(frozen=True, slots=True)
class Charging:
    """A source that charges from one state of charge: ``over`` after the loads (A).

    ``line`` is the charge from which the current tapers (1); ``times`` come to each of ENDS (h),
    0 where it is there already and None where nothing flows.
    """

    brought: Brought
    start: Share
    over: Amp
    line: Share
    times: tuple[Hour | None, ...]


@dataclass(frozen=True, slots=True)
class Curtailed:
    """Clear days: what a mean day brings and what the bank cannot take of it (Ah).

    A shore charger gives only what is asked, and is in neither.
    """

    brought: AmpHour
    curtailed: AmpHour
    full_at: Hour | None


def taking_of(bank: Bank) -> Taking:
    """Return how a bank takes charge.

    Parameters
    ----------
    bank : Bank
        With a capacity.

    Raises
    ------
    Problem
        If it holds nothing.
    """
    limit = limit_in(bank)
    if limit is None:
        raise Problem("capacity", "It is not known.", "Enter 220 Ah.")
    return Taking(house_in(bank).intake, limit.warm, limit.current, limit.cold, limit.stated)


def charging_of(plan: Plan, condition: str, brought: tuple[Brought, ...]) -> tuple[Charging, ...]:
    """Return how long each source that can be switched on takes, from now and from the reserve.

    Parameters
    ----------
    plan : Plan
        As read, with a bank that has a capacity.
    condition : str
        One of CONDITIONS; its loads run on.
    brought : tuple of Brought
        Of all its sources.
    """
    bank = plan.bank
    if bank is None or not bank.capacity:
        return ()
    house = house_in(bank)
    loads = day_use(plan.loads, condition, plan.supply).band.median / DAY
    starts = dict.fromkeys((house.start, house.reserve))
    able = [one for one in brought if one.current and one.source.kind != "water"]
    return tuple(
        _charging(one, start, Amp((one.current or 0.0) - loads), house.filling)
        for one in able
        for start in starts
    )


def _charging(brought: Brought, start: Share, over: Amp, intake: Intake) -> Charging:
    times = tuple(
        Hour(0.0) if meets(end, start) else time_to_charge(intake, start, end, over) for end in ENDS
    )
    return Charging(brought, start, over, intake.taper_line(over), times)


def curtailed_of(plan: Plan, condition: str) -> Curtailed | None:
    """Return what cannot be taken on clear days; None where days cannot be reckoned.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    outlook, where = outlook_of(plan, condition), where_of(plan)
    if outlook is None or where is None:
        return None
    winds = [outlook.steady_wind] * outlook.days
    told = run(outlook.setup, outlook.ahead([where.clear] * outlook.days, winds, 1.0))
    shore = 0.0 if outlook.on_demand else 1.0
    brought = sum(day.sun + day.wind + shore * day.shore for day in told.days) / told.length
    lost = told.charge.curtailed / told.length
    return Curtailed(AmpHour(heard(brought)), AmpHour(heard(lost)), told.full_at)
