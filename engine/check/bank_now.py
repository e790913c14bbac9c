"""What the house bank is worth now: its health, what it holds, and the charge it should see."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.peukert import capacity_at_hours
from engine.batteries.temperature import capacity_factor
from engine.charging.intake import limit_of
from engine.estimate import Estimate
from engine.units import AmpHour, Hour

if TYPE_CHECKING:
    from engine.charging.intake import Limit
    from engine.plan.parts import Bank

UNTESTED: Final = Estimate(0.6, 0.8, 1.0, "unknown")
"""Health of a bank nobody tested."""
NEW: Final = Estimate.exact(1.0, "default")
STANDARD: Final = Hour(20.0)
"""Discharge that what a bank holds is told for."""


def health_of(bank: Bank) -> Estimate:
    """Return the health a bank counts with, and its range.

    Parameters
    ----------
    bank : Bank
        As stated.

    Returns
    -------
    Estimate
        As tested; 1 when new; else 0.8, from 0.6 to 1. [1]
    """
    return bank.health or (NEW if bank.new else UNTESTED)


def capacity_now(bank: Bank) -> AmpHour | None:
    """Return the label as old as the bank is, at the label's own hours and warm.

    Parameters
    ----------
    bank : Bank
        As stated.

    Returns
    -------
    AmpHour or None
        None where the capacity is not known. [Ah]
    """
    return None if bank.capacity is None else AmpHour(bank.capacity * health_of(bank).likely)


def held_now(bank: Bank) -> AmpHour | None:
    """Return what a bank holds now: label × health × warmth, at 20 hours.

    Parameters
    ----------
    bank : Bank
        As stated.

    Returns
    -------
    AmpHour or None
        None where the capacity is not known. [Ah]
    """
    now = capacity_now(bank)
    if now is None:
        return None
    kind = CHEMISTRIES[bank.chemistry]
    at_20 = capacity_at_hours(now, bank.rated_hours, STANDARD, bank.exponent, kind.low_rate_gain)
    return AmpHour(at_20 * capacity_factor(kind, bank.temperature))


def limit_in(bank: Bank) -> Limit | None:
    """Return the most current a bank should be charged with, by its label, its kind and the cold.

    Parameters
    ----------
    bank : Bank
        As stated.

    Returns
    -------
    Limit or None
        None where the capacity is not known. [A]
    """
    held = held_now(bank)
    if held is None:
        return None
    kind, more = CHEMISTRIES[bank.chemistry], bank.more
    return limit_of(kind, held, bank.temperature, more.most_charge, sensor=bool(more.cold_stop))
