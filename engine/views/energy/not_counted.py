"""What an answer leaves out: loads of which not enough is known, said under every lead sentence."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.bank_now import UNTESTED
from engine.field import value_of
from engine.loads.day_use import day_use
from engine.plan.fields import field_at
from engine.problem import Problem
from engine.views.parts.form import typed_at
from engine.views.parts.html import Html, tag

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

NAMED: Final = 4
"""Loads that are called by name; the rest are only counted."""
FAVOURABLE: Final = "Cannot say: loads are missing. With the known ones alone: "
"""What stands before an answer that only more loads could worsen."""
FROM_FULL: Final = "from full, as no charge is stated"
"""How days are reckoned where nobody said what is in the bank."""


def not_counted(scene: Scene, *, worse: bool = True) -> str:
    """Return which loads are not counted; empty where all of them are.

    Parameters
    ----------
    scene : Scene
        The plan and the way of living.
    worse : bool
        Whether to say what that does to the answer.
    """
    names = missing_names(scene)
    if not names:
        return ""
    count = f"{len(names)} load{'s' * (len(names) > 1)} not known and not counted"
    named = ", ".join((*names[:NAMED], *("…",) * (len(names) > NAMED)))
    return f"{count}: {named}.{' The true answer is worse.' if worse else ''}"


def missing_names(scene: Scene) -> tuple[str, ...]:
    """Return the names of the loads not counted, shape ``(n,)``."""
    plan = scene.plan
    missing = day_use(plan.loads, scene.condition, plan.supply).missing
    return tuple(one.load.name or one.load.ident for one in missing)


def left_out(scene: Scene) -> Html | None:
    """Return the line that stands under a lead sentence; None where nothing is left out."""
    words = " ".join(one for one in (not_counted(scene), _untested(scene)) if one)
    return tag("p", words, class_="known left-out") if words else None


def _untested(scene: Scene) -> str:
    """Return what is taken for the health of a bank nobody tested; empty where it is known."""
    bank = scene.plan.bank
    if bank is None or bank.new or bank.health is not None or not bank.capacity:
        return ""
    low, likely, high = (round(one * 100) for one in (UNTESTED.low, UNTESTED.likely, UNTESTED.high))
    return f"The bank's health is not known: {likely} % is taken, it may be {low} to {high} %."


def unsure(scene: Scene, *, favourable: bool) -> Html | None:
    """Return what stands before a lead sentence that more loads could turn round.

    Parameters
    ----------
    scene : Scene
        The plan and the way of living.
    favourable : bool
        Whether the sentence is good news.
    """
    return tag("b", FAVOURABLE) if favourable and missing_names(scene) else None


def charge_stated(scene: Scene) -> bool:
    """Return whether the plan states what charge the bank has now."""
    path = "bank.charge"
    try:
        return value_of(field_at(path), typed_at(scene, path)).likely is not None
    except Problem:
        return False
