"""What may be left off to save charge, and what nobody should be told to switch off."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, Final

from engine.estimate import Estimate
from engine.loads.load import CONDITIONS

if TYPE_CHECKING:
    from engine.loads.load import Load
    from engine.plan.parts import Plan

KEEPS: Final = re.compile(
    r"\b(?:alarm|detector|sniffer|sensor|bilge|float switch|high[ -]?water|monitor|protection|bms"
    r"|battery management|controller|solenoid|gas|lpg|propane|blower|cpap|epirb|ais|vhf|dsc|radar"
    r"|radio|steer|autopilot|instrument|compass|tricolou?r"
    r"|(?:anchor|riding|nav\w*|running|masthead|stern|bow|steaming|deck-level) (?:light|lamp))",
    re.IGNORECASE,
)
"""Words of gear that guards boat, crew or bank, by which it is known where nobody ticked it."""


def may_be_left(load: Load) -> bool:
    """Return whether a load may be offered to be left off.

    Parameters
    ----------
    load : Load
        As stated; nothing essential, always live, or that guards boat, crew or bank.

    Examples
    --------
    >>> from engine.loads.load import Load
    >>> may_be_left(Load("L01", "Stereo")), may_be_left(Load("L02", "Gas detector"))
    (True, False)
    """
    return not (load.essential or load.always_live or KEEPS.search(load.name))


def without(plan: Plan, condition: str, off: frozenset[str]) -> Plan:
    """Return the plan with some loads left off.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    off : frozenset of str
        Ids of loads.
    """
    place = list(CONDITIONS).index(condition)
    none = Estimate.exact(0.0)
    loads = tuple(
        replace(one, hours=(*one.hours[:place], none, *one.hours[place + 1 :]))
        if one.ident in off
        else one
        for one in plan.loads
    )
    return replace(plan, loads=loads)
