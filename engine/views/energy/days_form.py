"""What the days ahead rest on: what must be entered first, what is not counted, and the policy."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from engine.ahead.brought import brought_of
from engine.ahead.by_clock import lacking, lacking_loads, uses_of
from engine.ahead.setup import startable
from engine.field import CHOICE
from engine.finding import Verdict
from engine.loads.day_use import day_use
from engine.plan.fields import field_at
from engine.simulate.use import spilt
from engine.units import said, words
from engine.views.parts.form import control, entry, problem_at, typed_at
from engine.views.parts.html import Html, joined, tag
from engine.views.parts.say import link, verdict
from engine.views.parts.scene import DAYS, SKIES_SHOWN

if TYPE_CHECKING:
    from engine.ahead.place import Where
    from engine.problem import Problem
    from engine.views.parts.scene import Scene

POLICY: Final = (
    "engine_on_at", "engine_off_at", "least_run", "quiet_from", "quiet_to", "never",
)  # fmt: skip
NEEDED: Final = ("bank.chemistry", "bank.capacity", "boat.latitude", "boat.month")
"""Fields without which no day can be reckoned."""


def first_fields(scene: Scene) -> Html:
    """Return what must be entered first, with the fields to enter it in."""
    plan = scene.plan
    first = f"Enter {words(lacking(plan, scene.condition).values())} to see the days ahead."
    bank, boat = plan.bank, plan.boat
    known = (bank is not None, bool(bank and bank.capacity), boat.latitude is not None, boat.month)
    fields = [entry(scene, path) for path, has in zip(NEEDED, known, strict=True) if not has]
    loads = link("energy/use", "Go to the loads", class_="button")
    return joined(
        tag("p", first, class_="empty"),
        tag("div", *fields, class_="fields") if fields else None,
        tag("p", loads, class_="actions") if lacking_loads(plan, scene.condition) else None,
    )


def trouble(problem: Problem) -> Html:
    """Return why no day can be reckoned, and what mends it."""
    part = "energy/bank" if problem.where in {"start", "reserve", "capacity", "volts"} else ""
    return joined(
        tag("p", str(problem.at("")), class_="problem"),
        tag("p", link(part, "Go to the bank")) if part else None,
    )


def choices(scene: Scene) -> Html:
    """Return the choice of how many days are shown, and under what sky."""
    spans = [(one, f"{one} days") for one in DAYS]
    return joined(
        _radios("show.days", "How far", spans, str(scene.days)),
        _radios("show.sky", "Sky", list(SKIES_SHOWN.items()), scene.sky),
    )


def _radios(name: str, legend: str, values: list[tuple[str, str]], chosen: str) -> Html:
    labels = [
        tag("label", tag("input", type="radio", name=name, value=value, checked=value == chosen),
            spoken)
        for value, spoken in values
    ]  # fmt: skip
    return tag("fieldset", tag("legend", legend, class_="quiet"), *labels, class_="choices")


def notes(scene: Scene, where: Where) -> Html | None:
    """Return what is not counted, and what does not fit its window."""
    plan, condition = scene.plan, scene.condition
    rows = [
        joined(f"{one.source.name} is not counted: enter {words(one.missing)}. ",
               link("energy/charging", "Go to charging"))
        for one in brought_of(plan, condition)
        if one.missing and one.source.counted
    ]  # fmt: skip
    found = day_use(plan.loads, condition, plan.supply)
    if found.missing:
        loads = "1 load is" if len(found.missing) == 1 else f"{len(found.missing)} loads are"
        rows.append(joined(f"{loads} not known and not counted. ",
                           link("energy/use", "Go to the loads")))  # fmt: skip
    if where.days is None:
        rows.append(joined("There is no sun in that month."))
    rows += [joined(one) for one in spilt(uses_of(plan, condition), where.daylight)]
    return tag("ul", *(tag("li", one) for one in rows), class_="list") if rows else None


def form(scene: Scene) -> Html:
    """Return the charge to start from, and when the engine charges."""
    plan = scene.plan
    started = _starter(scene)
    return joined(
        tag("h2", "From what charge, and when the engine charges"),
        tag(
            "div",
            entry(scene, "bank.charge"),
            started,
            entry(scene, f"policy.{POLICY[0]}"),
            below_reserve(scene),
            *(entry(scene, f"policy.{name}") for name in POLICY[1:]),
            class_="fields",
        ),
        None
        if started
        else tag("p", "No engine or generator that charges is in the plan. ",
                 link("energy/charging", "Go to charging"), class_="note"),
        tag("p", f"The reserve line is at {said(plan.bank.reserve * 100)} %. ",
            link("energy/bank", "Go to the bank"), class_="note")
        if plan.bank
        else None,
    )  # fmt: skip


def below_reserve(scene: Scene) -> Html | None:
    """Return what it means where the engine is started only below the reserve line."""
    bank, on = scene.plan.bank, scene.plan.policy.engine_on_at
    if bank is None or on is None or on >= bank.reserve:
        return None
    told = (
        f" Engine on at {said(on * 100)} % is below the reserve line of "
        f"{said(bank.reserve * 100)} %: the plan goes below its reserve before the engine starts."
    )
    return tag("p", verdict(Verdict.SHOULD), told, class_="note")


def _starter(scene: Scene) -> Html | None:
    """Return the choice of what is started when the bank is low; None where nothing can be."""
    path = "policy.source"
    able = [one.source for one in startable(brought_of(scene.plan, scene.condition))]
    if not able:
        return None
    able_ones = [(one.ident, f"{one.ident} {one.name}"[:60]) for one in able]
    text = typed_at(scene, path).strip().upper()
    if text and text not in {value for value, _ in able_ones}:
        able_ones.append((text, f"{text}, which is not here"))
    field = replace(field_at(path), kind=CHOICE, choices=tuple(able_ones), default=able[0].ident,
                    help="")  # fmt: skip
    return control(field, path, text or able[0].ident, problem_at(scene, path), scene)
