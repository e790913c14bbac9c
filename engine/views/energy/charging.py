"""Charging: what a day brings beside what it uses, each source, how the bank takes it, the year."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.ahead.balance import balance_of
from engine.ahead.by_clock import lacking
from engine.ahead.day_hours import day_hours
from engine.finding import Step
from engine.loads.load import CONDITIONS
from engine.plan.edit import rows_of
from engine.plan.source_fields import KINDS
from engine.units import said, words
from engine.views.energy.charging_bank import bank_takes
from engine.views.energy.charging_source import source_block
from engine.views.energy.course import nights_of
from engine.views.energy.not_counted import left_out, unsure
from engine.views.energy.place import place_block, year_block
from engine.views.energy.tide_day import tide_day
from engine.views.energy.use import energy_pages
from engine.views.energy.volts_note import volts_note
from engine.views.home.home import banner, charge, conditions
from engine.views.parts.html import Block, Html, block, joined, tag
from engine.views.parts.say import button, link, why

if TYPE_CHECKING:
    from engine.ahead.balance import Balance
    from engine.views.parts.scene import Scene

EVEN: Final = 0.5
"""A difference of a day that is not worth a word, Ah."""


def charging(scene: Scene) -> tuple[Block, ...]:
    """Return the Charging page."""
    balance = balance_of(scene.plan, scene.condition)
    shown = {one.source.ident: one for one in balance.brought}
    rows = [one["id"] for one in rows_of(scene.document, "sources")]
    return (
        block("charging-head", banner(scene), energy_pages(scene, "energy/charging"),
              tag("h1", "Charging")),
        block("charging-answer", conditions(scene), _answer(scene, balance), _first(scene)),
        block("charging-sources-head", tag("h2", "Sources"), _none_yet(rows)),
        block(
            "charging-sources",
            *(source_block(scene, shown[ident]) for ident in rows if ident in shown),
            name="div",
        ),
        block("charging-add", _adding()),
        block("charging-day", _day(scene)),
        bank_takes(scene, balance),
        place_block(scene),
        year_block(scene),
    )  # fmt: skip


def _answer(scene: Scene, balance: Balance) -> Html:
    unit, plan = scene.units.charge, scene.plan
    spoken = CONDITIONS[scene.condition]
    _, likely, dull = balance.sun()
    others = [one for one in balance.free if one.source.kind != "solar"]
    month = plan.boat.month.capitalize()
    parts: list[str | Html] = []
    dark = _sun_not_known(balance)
    if dark:
        parts.append(f"Cannot say what the sun brings: {words(dark)} not known")
    if likely > 0:
        parts += [
            ". Of the rest, likely sun " if dark else "Likely sun ",
            tag("b", f"{charge(scene, likely)} {unit}"),
            f" a day in {month}, {charge(scene, dull)} on a dull day",
        ]  # fmt: skip
    for one in others:
        name = one.source.name.lower() if parts else one.source.name
        parts += [f", {name} " if parts else f"{name} ", tag("b", charge(scene, one.likely))]
        if likely <= 0:
            parts.append(f" {unit} a day")
    if not parts:
        parts = [f"Nothing charges by itself {spoken}"]
    parts.append("; ")
    if balance.used > 0:
        parts += [tag("b", charge(scene, balance.used)), f" are used {spoken}: ",
                  tag("b", _over(scene, balance)), "."]  # fmt: skip
        if dark:
            parts[-3:] = [f" are used {spoken}."]
    else:
        parts.append(f"nothing is known to run {spoken} yet.")
    favourable = balance.used > 0 and balance.over > -EVEN and not dark
    return joined(
        tag("p", unsure(scene, favourable=favourable), *parts, class_="answer"),
        left_out(scene),
        why("Why this number?", _steps(scene, balance), "why-charging"),
    )


def _sun_not_known(balance: Balance) -> tuple[str, ...]:
    """Return what is not known of panels that count and bring sun nobody can tell yet."""
    panels = [one for one in balance.brought if one.source.kind == "solar" and one.source.counted]
    return tuple(dict.fromkeys(what for one in panels for what in one.missing))


def _over(scene: Scene, balance: Balance) -> str:
    if abs(balance.over) < EVEN:
        return "even"
    if balance.over < 0:
        short = f"short by {charge(scene, -balance.over)}"
        current = sum(one.current or 0.0 for one in balance.plugged)
        return f"{short}, which shore power gives, up to {said(current)} A" if current else short
    return f"{charge(scene, balance.over)} over"


def _steps(scene: Scene, balance: Balance) -> tuple[Step, ...]:
    unit = scene.units.charge
    free = (
        Step(one.source.called, "likely, after every derate",
             f"{charge(scene, one.likely)} {unit}")
        for one in balance.free
    )  # fmt: skip
    over = "cannot say" if _sun_not_known(balance) else _over(scene, balance)
    return (
        *free,
        Step("used", "median of the day", f"{charge(scene, balance.used)} {unit}"),
        Step("over or short", "what comes by itself − what is used", over),
    )


def _first(scene: Scene) -> Html | None:
    """Return what must be entered before the days can be reckoned."""
    found = lacking(scene.plan, scene.condition)
    if not found:
        return None
    ways = [
        link(route, label)
        for part, route, label in (("bank", "energy/bank", "Go to the bank"),
                                   ("loads", "energy/use", "Go to the loads"))
        if any(path.startswith(part) for path in found)
    ]  # fmt: skip
    return tag(
        "p",
        f"Not known yet: {words(found.values())}. ",
        *(joined(one, ". ") for one in ways),
        "Sources and place are entered below.",
        class_="note",
    )


def _none_yet(rows: list[str]) -> Html | None:
    if rows:
        return None
    return tag(
        "p",
        "No source yet. Add what is fitted: panels with their watts first, then the alternator "
        "with its amperes. What each brings stands below it at once.",
        class_="empty",
    )


def _day(scene: Scene) -> Html | None:
    """Return a likely day by the hour."""
    found = day_hours(scene.plan, scene.condition)
    if found is None:
        return None
    spoken = CONDITIONS[scene.condition]
    return joined(
        tag("h2", "A likely day by the hour"),
        tide_day(
            "tide",
            f"Use and likely sun {spoken}, hour by hour",
            found.use,
            found.sun,
            nights=nights_of(found.sunrise, found.sunset, 1),
        ),
        volts_note(scene, sun=True),
    )


def _adding() -> Html:
    return tag(
        "p",
        *(button(f"Add {spoken}", "add-source", kind) for kind, spoken in KINDS),
        class_="actions",
    )
