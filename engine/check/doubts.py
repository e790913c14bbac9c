"""Which guess matters most: what to measure next."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.check.bank_now import health_of, held_now
from engine.estimate import Estimate
from engine.loads.day_use import FULL_DUTY, day_use
from engine.loads.load import bank_current
from engine.units import AmpHour

if TYPE_CHECKING:
    from engine.loads.load import Load, Supply
    from engine.plan.parts import Plan


@dataclass(frozen=True, slots=True)
class Doubt:
    """One guess, and the spread it alone puts into a day, Ah."""

    load: Load
    part: str
    spread: AmpHour
    known_by: str


def _spread(load: Load, condition: str, supply: Supply, part: str) -> float:
    """Return the day's spread when all but one part is sure."""
    parts = {
        "draw": bank_current(load, supply),
        "hours": load.hours_in(condition),
        "duty": load.duty or FULL_DUTY,
    }
    loose = parts[part]
    if loose is None or any(one is None for one in parts.values()):
        return 0.0
    others = 1.0
    for name, one in parts.items():
        others *= one.likely if name != part and one else 1.0
    return (loose.high - loose.low) * others


def _known_by(load: Load, condition: str, part: str) -> str:
    """Return how one part of a load is known: a draw measured says nothing of the hours."""
    if part == "draw":
        return load.known_by
    found = load.duty if part == "duty" else load.hours_in(condition)
    return found.known_by if found else "unknown"


def doubts_of(plan: Plan, condition: str, most: int = 3) -> tuple[Doubt, ...]:
    """Return the guesses that spread the day's use most, largest first.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    most : int
        How many. [1]
    """
    found = [
        Doubt(load, part, AmpHour(spread), _known_by(load, condition, part))
        for load in plan.loads
        for part in ("draw", "hours", "duty")
        if (spread := _spread(load, condition, plan.supply, part)) > 0
    ]
    return tuple(sorted(found, key=lambda doubt: -doubt.spread)[:most])


def alone(plan: Plan, condition: str) -> Estimate | None:
    """Return how many days the bank lasts without charging; unknown health widens the range.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    Estimate or None
        Low and high by the day's middle 80 % and the bank's health. [d]
    """
    bank = plan.bank
    held = held_now(bank) if bank else None
    if bank is None or held is None:
        return None
    band = day_use(plan.loads, condition, plan.supply).band
    if band.p10 <= 0:
        return None
    health = health_of(bank)
    full = held / health.likely * (1 - bank.reserve)
    return Estimate(
        full * health.low / band.p90,
        full * health.likely / band.median,
        full * health.high / band.p10,
        health.known_by,
    )
