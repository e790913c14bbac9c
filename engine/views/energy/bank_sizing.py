"""How large the bank must be, and the bank beside others for the same use."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.bank_compare import INSTEAD, OWN, compare
from engine.check.bank_sizing import counts_as, sizing_of
from engine.finding import Verdict, meets
from engine.loads.load import CONDITIONS
from engine.units import said, words
from engine.views.home.home import conditions
from engine.views.parts.cautions import LITHIUM, caution
from engine.views.parts.form import entry
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import capital, hours, verdict, warmth, whole, why

if TYPE_CHECKING:
    from engine.check.bank_compare import Compared
    from engine.check.bank_sizing import Sizing
    from engine.views.parts.scene import Scene

HEADS: Final = ("Label", "Energy", "Usable", "Days alone", "Mass", "Cycles",
                "Most charge current", "Reserve to 95 %", "Charging below freezing")  # fmt: skip
FIELDS: Final = ("days_wanted", "daily_depth", "end_of_life", "margin")


def sizing(scene: Scene) -> Html | None:
    """Return the sizing worksheet, every line of it."""
    bank = scene.plan.bank
    if bank is None:
        return None
    found = sizing_of(scene.plan, scene.condition)
    return joined(
        tag("h2", "How large it must be"),
        conditions(scene),
        _sentence(scene, found) if found else tag(
            "p", f"Nothing is switched on {CONDITIONS[scene.condition]}: there is nothing to size "
            "for.", class_="empty",
        ),
        tag("div", *(entry(scene, f"bank.{name}") for name in FIELDS), class_="fields"),
        _sheets(found) if found else None,
    )  # fmt: skip


def _sentence(scene: Scene, found: Sizing) -> Html:
    bank = scene.plan.bank
    days = said(found.sheet.need.days)
    one = days == "1"
    asked = joined(
        f" {days} day{'s' * (not one)} {CONDITIONS[scene.condition]} without charging "
        f"ask{'s' * one} for ",
        tag("b", f"{whole(found.capacity)} Ah"),
        f" of {found.kind.label}, as labelled",
    )
    if bank is None or bank.capacity is None:
        return tag("p", asked, ".", class_="answer")
    counts = counts_as(bank) or bank.capacity
    enough = meets(found.capacity, counts)
    label = f"; the label says {whole(bank.capacity)}"
    if counts < bank.capacity:
        label += f", but at its health it counts as {whole(counts)}"
    return tag("p", verdict(Verdict.FINE if enough else Verdict.SHOULD,
                            "large enough" if enough else "too small"), asked, f"{label}.",
               class_="answer")  # fmt: skip


def _sheets(found: Sizing) -> Html:
    names = words(name for name, _ in reversed(found.apart))
    without = f" {names} run for minutes and are reckoned below." if names else ""
    return joined(
        why(
            f"The worksheet: {whole(found.sheet.capacity)} Ah",
            found.sheet.working,
            "why-sizing",
            f"The greatest of the three demands counts; they are never multiplied.{without}",
        ),
        why(
            f"With the short heavy loads at its end: {whole(found.bursts)} Ah",
            found.burst_working,
            "why-bursts",
            "The section method, for a bank grown old that still carries them before it is empty.",
        ),
    )


def comparison(scene: Scene) -> Html | None:
    """Return the bank beside others for the same use."""
    plan = scene.plan
    found = compare(plan, scene.condition)
    if plan.bank is None or len(found) < 2:
        return None
    lead = plan.bank.chemistry != "lithium"
    basis = (
        "The other chemistries are sized to last as long as this bank."
        if plan.made_up
        else "Each chemistry is as large as the worksheet above asks for."
    )
    table = tag(
        "table", head("Bank", *HEADS, numbers=HEADS),
        tag("tbody", *(_row(scene, one) for one in found)), class_="grid cards stack",
    )  # fmt: skip
    return joined(
        tag("h2", "Beside other banks"),
        caution(LITHIUM, "instead") if lead else None,
        tag("p", f"For the same use, {CONDITIONS[scene.condition]}. {basis} Figures that are not "
            "yours are typical.", class_="note"),
        tag("div", table, class_="scroll", tabindex="0", role="region",
            aria_label="Banks side by side"),
    )  # fmt: skip


def _row(scene: Scene, one: Compared) -> Html:
    figures = one.figures
    name = figures.kind.label
    if one.name != INSTEAD:
        name = f"{capital(one.name)}: {name}"
    freezing = figures.kind.coldest_charge
    cells = (
        f"{whole(one.capacity)} Ah",
        f"{said(figures.energy)} Wh",
        f"{whole(figures.usable)} Ah, {said(figures.depth * 100)} %",
        said(one.days, 2) if one.days else "not known",
        f"{said(figures.mass.likely, 2)} kg",
        said(figures.cycles.likely, 2),
        f"{said(figures.most_charge.likely)} A",
        hours(one.hours) if one.hours else "cannot say",
        "slow" if figures.kind.lead else f"not below {warmth(freezing, scene.units)}",
    )
    title = capital(name)
    return tag(
        "tr",
        tag("th", tag("b", title) if one.name == OWN else title, scope="row"),
        *(
            tag("td", shown, class_="n", data_label=label)
            for label, shown in zip(HEADS, cells, strict=True)
        ),
    )
