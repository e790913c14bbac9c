"""Single changes: which apply to a plan, and what each gains under the same weather."""

from __future__ import annotations

from dataclasses import dataclass
from math import copysign
from typing import TYPE_CHECKING, Final

from engine.ahead.left_off import may_be_left
from engine.ahead.runs import engine_runs
from engine.ahead.setup import outlook_of
from engine.loads.day_use import day_use
from engine.loads.load import bank_current
from engine.problem import Problem
from engine.simulate.gain import ranked
from engine.units import LATITUDE, on_earth, said

if TYPE_CHECKING:
    from collections.abc import Mapping

    from engine.ahead.changes import Changes
    from engine.loads.load import Load
    from engine.plan.parts import Plan
    from engine.simulate.gain import Gain, Told

SHINES: Final = 0.5
"""Draw of a masthead light beyond which it is no LED, A."""
LED: Final = "2 W"
"""What an LED anchor light takes: common practice."""
WORN: Final = 0.8
"""Health below which a bank is replaced, not added to: the weakest drags the others down."""
FIT: Final = "fit"
LEAVE: Final = "leave"
MOVE: Final = "move"
TURBINE: Final = (("kind", "wind"), ("watts", "400 W"), ("diameter", "1.15 m"))
"""A small turbine, where the plan has none."""


@dataclass(frozen=True, slots=True)
class Single:
    """One change a person might make, alone: to FIT or change, to LEAVE off, or to go (MOVE)."""

    name: str
    changes: Changes
    kind: str = FIT


def singles_of(plan: Plan, condition: str) -> tuple[Single, ...]:
    """Return the single changes that apply to a plan.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    """
    found = [
        *_panels(plan),
        *_bank(plan),
        *_turbines(plan),
        *_alternator(plan, condition),
        *_loads(plan, condition),
        *_latitude(plan),
    ]
    return tuple(found)


def _panels(plan: Plan) -> list[Single]:
    fitted = [one for one in plan.sources if one.kind == "solar" and one.counted and one.watts]
    if not fitted:
        row = (("sources.new.kind", "solar"), ("sources.new.watts", "100 W"))
        return [Single("a 100 W panel", row)]
    first = fitted[0]
    more = f"{said((first.watts or 0.0) + 100, 6)} W"
    found = [Single("100 W more panel", ((f"sources.{first.ident}.watts", more),))]
    clear = "arch clear of the boom"
    shaded = [one for one in fitted if one.panels.shade != clear and one.panels.overall is None]
    if shaded:
        changes = tuple((f"sources.{one.ident}.shade", clear) for one in shaded)
        found.append(Single("panels clear of the boom's shade", changes))
    return found


def _bank(plan: Plan) -> list[Single]:
    bank = plan.bank
    capacity = bank.capacity if bank else None
    if not bank or not capacity:
        return []
    if bank.health and bank.health.likely < WORN:
        return [Single(f"a new bank of {said(capacity, 6)} Ah", (("bank.health", "100 %"),))]
    return [Single("100 Ah more bank", (("bank.capacity", f"{said(capacity + 100, 6)} Ah"),))]


def _turbines(plan: Plan) -> list[Single]:
    kept = [one for one in plan.sources if not one.counted and one.kind in {"wind", "solar"}]
    found = [
        Single(f"{one.called} counted", ((f"sources.{one.ident}.counted", "yes"),)) for one in kept
    ]
    if not any(one.kind == "wind" for one in plan.sources):
        row = tuple((f"sources.new.{name}", text) for name, text in TURBINE)
        found.append(Single("a 400 W wind turbine", row))
    return found


def _alternator(plan: Plan, condition: str) -> list[Single]:
    if not _engine_runs(plan, condition):
        return []
    for one in plan.sources:
        limit = one.turning.limit
        if one.kind == "alternator" and one.counted and limit and one.turning.read is None:
            more = f"{said(limit + 10, 6)} A"
            return [Single("engine limit up by 10 A", ((f"sources.{one.ident}.limit", more),))]
    return []


def _engine_runs(plan: Plan, condition: str) -> bool:
    """Return whether an engine charges at all; where that cannot be reckoned, it does not."""
    try:
        outlook = outlook_of(plan, condition)
    except Problem:
        return False
    return outlook is not None and engine_runs(outlook)


def _loads(plan: Plan, condition: str) -> list[Single]:
    use = day_use(plan.loads, condition, plan.supply)
    found = []
    for load in (one.load for one in use.largest if may_be_left(one.load)):
        off = ((f"loads.{load.ident}.hours_{condition}", "0 h"),)
        found.append(Single(f"{load.name} off", off, LEAVE))
    rests = [one.load for one in use.largest if one.load.duty and one.load.duty.likely < 1]
    if rests and rests[0].duty:
        less = said(rests[0].duty.likely * 0.75)
        change = ((f"loads.{rests[0].ident}.duty", less),)
        found.append(Single(f"{rests[0].name}: a quarter less", change))
    found += [
        Single(f"{load.name} as LED, {LED}", ((f"loads.{load.ident}.draw", LED),))
        for load in plan.loads
        if _no_led(load, plan, condition)
    ]
    return found


def _no_led(load: Load, plan: Plan, condition: str) -> bool:
    current, hours = bank_current(load, plan.supply), load.hours_in(condition)
    aloft = load.window == "night" and load.zone.strip().lower() == "masthead"
    return aloft and current is not None and current.likely > SHINES and hours is not None


def _latitude(plan: Plan) -> list[Single]:
    at = plan.boat.latitude
    if at is None or abs(at) < 1:
        return []
    nearer = on_earth(at - copysign(1, at), LATITUDE)
    return [Single("one degree of latitude nearer the equator", (("boat.latitude", nearer),), MOVE)]


def ranking(
    singles: tuple[Single, ...], before: Told, after: Mapping[int, Told]
) -> tuple[tuple[Single, Gain], ...]:
    """Return single changes with what each gains, the one that gains most days first.

    Parameters
    ----------
    singles : tuple of Single
        Shape ``(n,)``.
    before : Told
        As it is.
    after : mapping of int to Told
        By the place of the change, under the same weather; those left out are not ranked. [1]
    """
    told = {str(place): one for place, one in after.items()}
    return tuple((singles[int(one.change)], one) for one in ranked(before, told))
