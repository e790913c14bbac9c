"""Variants of a plan side by side: what each comes to, and how likely the engine is needed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.ahead.by_clock import lacking
from engine.ahead.changes import Told, changed, told, variants_of
from engine.ahead.runs import engine_runs
from engine.ahead.setup import outlook_of
from engine.plan.read import plan_of
from engine.problem import Problem
from engine.simulate.lasting import lasting_hours
from engine.simulate.march import march_of
from engine.simulate.policy import DAY, NEVER, Setup
from engine.simulate.run import WEEK
from engine.units import Hour, Share

if TYPE_CHECKING:
    from engine.plan.document import Document
    from engine.plan.parts import Plan
    from engine.simulate.weather import Outlook

MOST_BESIDE: Final = 3
"""Variants shown beside the plan at once."""
FAR: Final = 30
"""Days looked ahead for the reserve."""
AS_IT_IS: Final = "This plan"


@dataclass(frozen=True, slots=True)
class Figures:
    """What a plan comes to under skies that stay alike.

    ``part`` and ``dull`` are days until the reserve with nothing but sun, wind and shore (None
    where it lasts beyond FAR); ``engine`` h and ``fuel`` L a week, and ``lowest`` charge (1), are
    under part cloud with the engine as the policy says. ``has_engine`` is false where none charges.
    """

    part: float | None
    dull: float | None
    engine: Hour
    fuel: float
    lowest: Share
    has_engine: bool


@dataclass(frozen=True, slots=True)
class Column:
    """One variant: what it changes, and its figures, or why there are none."""

    ident: str
    name: str
    told: tuple[Told, ...]
    plan: Plan
    figures: Figures | None
    missing: tuple[str, ...] = ()
    problem: Problem | None = None


def days_alone_under(outlook: Outlook, sky: str) -> float | None:
    """Return how long a bank stays above its reserve without an engine.

    Parameters
    ----------
    outlook : Outlook
        What lies ahead.
    sky : str
        One of SKIES, every day.

    Returns
    -------
    float or None
        None where it lasts beyond FAR. [d]
    """
    far = replace(outlook, days=FAR, setup=Setup(outlook.setup.house, NEVER))
    march = march_of(far.setup)
    days = far.under(sky)
    march.go(days.loads, days.kept_on, days.free, days.step)
    reached = march.switches.needed_at
    return None if reached is None else reached / DAY


@lru_cache(maxsize=128)
def figures_of(plan: Plan, condition: str) -> Figures | None:
    """Return what a plan comes to; None where something is lacking.

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
    outlook = outlook_of(plan, condition)
    if outlook is None:
        return None
    march = march_of(outlook.setup)
    days = outlook.under("part")
    march.go(days.loads, days.kept_on, days.free, days.step)
    hours = Hour(lasting_hours(march) / outlook.days * WEEK)
    engine = outlook.setup.engine
    return Figures(
        days_alone_under(outlook, "part"),
        days_alone_under(outlook, "dull"),
        hours,
        hours * engine.fuel if engine else 0.0,
        Share(march.lowest / march.bank.full),
        engine_runs(outlook),
    )


def columns_of(document: Document, condition: str) -> tuple[Column, ...]:
    """Return the plan and the variants shown beside it, at most MOST_BESIDE.

    Parameters
    ----------
    document : Document
        With its variants.
    condition : str
        One of CONDITIONS.
    """
    shown = {row["id"] for row in document.get("variants", []) if row.get("shown", "yes") == "yes"}
    beside = [one for one in variants_of(document) if one[0].ident in shown][:MOST_BESIDE]
    columns = [_column(document, AS_IT_IS, "", (), condition)]
    for variant, problem in beside:
        if problem:
            bare = plan_of(document)
            columns.append(Column(variant.ident, variant.name, (), bare, None, (), problem))
        else:
            columns.append(
                _column(document, variant.name, variant.ident, variant.changes, condition)
            )
    return tuple(columns)


def _column(
    document: Document,
    name: str,
    ident: str,
    changes: tuple[tuple[str, str], ...],
    condition: str,
) -> Column:
    words = told(document, changes)
    plan = plan_of(changed(document, changes))
    paths = {path for path, _ in changes}
    wrong = next((one for one in plan.problems if one.where in paths), None)
    if wrong:
        return Column(ident, name, words, plan, None, (), wrong)
    try:
        figures = figures_of(plan, condition)
    except Problem as problem:
        return Column(ident, name, words, plan, None, (), problem)
    return Column(ident, name, words, plan, figures, tuple(lacking(plan, condition).values()))
