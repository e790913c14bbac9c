"""The plan's loads laid by the clock, and what must be entered before days can be reckoned."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.loads.day_use import DayUse, day_use
from engine.loads.load import CONDITIONS, bank_current
from engine.simulate.use import Use
from engine.units import Amp, Hour, Share

if TYPE_CHECKING:
    from engine.plan.parts import Plan


def lacking_loads(plan: Plan, condition: str) -> bool:
    """Return whether nothing is known to run.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    """
    return not day_use(plan.loads, condition, plan.supply).total.likely > 0


def lacking(plan: Plan, condition: str) -> dict[str, str]:
    """Return what must be entered before days ahead can be reckoned: words by path.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    """
    found = {}
    if plan.bank is None:
        found["bank.chemistry"] = "the bank's chemistry"
    elif not plan.bank.capacity:
        found["bank.capacity"] = "the bank's capacity"
    if lacking_loads(plan, condition):
        found["loads"] = f"a load that runs {CONDITIONS[condition]}"
    if plan.boat.latitude is None:
        found["boat.latitude"] = "the boat's latitude"
    if not plan.boat.month:
        found["boat.month"] = "the month"
    return found


def uses_of(plan: Plan, condition: str) -> tuple[Use, ...]:
    """Return what runs in a day; what is not known is left out, as the day's use leaves it out.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Notes
    -----
    Currents are scaled so that the day comes to its median, not to the sum of the likely figures:
    most ranges reach farther up than down.
    """
    found = day_use(plan.loads, condition, plan.supply)
    scale = middle_over_likely(found)
    uses = []
    for one in found.uses:
        load = one.load
        hours, current = load.hours_in(condition), bank_current(load, plan.supply)
        if hours is None or current is None:
            continue
        duty = load.duty.likely if load.duty else 1.0
        uses.append(
            Use(
                load.name,
                Amp(current.likely * scale),
                Hour(hours.likely),
                Share(duty),
                load.window,
                load.essential,
            )
        )
    return tuple(uses)


def middle_over_likely(found: DayUse) -> float:
    """Return the median of a day over the sum of its likely figures.

    Parameters
    ----------
    found : DayUse
        Of one condition.

    Returns
    -------
    float
        1 where nothing runs. [1]
    """
    return found.band.median / found.total.likely if found.total.likely > 0 else 1.0
