"""The bank beside others: as found or planned, and what each chemistry would be."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.temperature import capacity_factor
from engine.charging.acceptance import time_to_charge
from engine.charging.intake import intake_of
from engine.check.bank import figures_of
from engine.check.bank_sizing import sizing_of
from engine.loads.day_use import day_use
from engine.plan.made_up import AS_FOUND, PLANNED, made_up_document
from engine.plan.read import plan_of
from engine.plan.start_parts import BankMore
from engine.units import Amp, AmpHour, Hour, Share

if TYPE_CHECKING:
    from engine.check.bank import BankFigures
    from engine.plan.parts import Bank, Plan

NEARLY_FULL: Final = Share(0.95)
"""Charge up to which the time to charge is told; a taper never reaches full."""
NEW: Final = BankMore(None, 1, None, None, None, None, None, None)
OWN: Final = "this bank"
INSTEAD: Final = "instead"
OTHER: Final = {AS_FOUND: PLANNED, PLANNED: AS_FOUND}


@dataclass(frozen=True, slots=True)
class Compared:
    """One bank of the comparison: its label in Ah, days alone (d), hours from reserve to 95 %.

    ``hours`` is at its most charge current; None where it cannot be charged.
    """

    name: str
    capacity: AmpHour
    figures: BankFigures
    days: float | None
    hours: Hour | None


def compare(plan: Plan, condition: str) -> tuple[Compared, ...]:
    """Return the bank beside its other revision and beside each chemistry for the same use.

    Parameters
    ----------
    plan : Plan
        With its bank.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    tuple of Compared
        The made-up boat's alternatives last as long as her own bank; those of any other boat are
        what the worksheet asks for. Shape ``(0,)`` without a bank.
    """
    bank = plan.bank
    if bank is None:
        return ()
    daily = day_use(plan.loads, condition, plan.supply).band.median
    found = [_compared(OWN, bank, daily)]
    if plan.made_up and plan.boat.revision in OTHER:
        other = OTHER[plan.boat.revision]
        found.append(_compared(other, _bank_of(other), daily))
    found += [
        _compared(INSTEAD, _instead(plan, bank, condition, name), daily) for name in CHEMISTRIES
    ]
    return tuple(one for one in found if one)


@lru_cache(maxsize=2)
def _bank_of(revision: str) -> Bank | None:
    return plan_of(made_up_document(revision)).bank


def _instead(plan: Plan, bank: Bank, condition: str, name: str) -> Bank | None:
    """Return a new bank of a chemistry for the same use; None for one just like the plan's."""
    kind = CHEMISTRIES[name]
    if plan.made_up:
        own = figures_of(bank)
        warm = max(capacity_factor(kind, bank.temperature), 0.01)
        capacity = own.usable / kind.usable / warm if own and name != bank.chemistry else None
    else:
        sizing = sizing_of(plan, condition, name)
        capacity = sizing.capacity if sizing else None
    if capacity is None:
        return None
    reserve = bank.reserve if name == bank.chemistry else Share(1 - kind.usable)
    return replace(
        bank, chemistry=name, capacity=AmpHour(capacity), health=None, new=True, reserve=reserve,
        exponent=kind.exponent.likely, resistance=None, more=NEW,
    )  # fmt: skip


def _compared(name: str, bank: Bank | None, daily: AmpHour) -> Compared | None:
    figures = figures_of(bank) if bank else None
    if bank is None or bank.capacity is None or figures is None:
        return None
    intake = intake_of(figures.kind, figures.held, bank.temperature)
    hours = None
    if bank.reserve < NEARLY_FULL and figures.most_charge.likely > 0:
        hours = time_to_charge(intake, bank.reserve, NEARLY_FULL, Amp(figures.most_charge.likely))
    days = figures.usable / daily if daily > 0 else None
    return Compared(name, bank.capacity, figures, days, hours)
