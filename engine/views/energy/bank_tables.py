"""What the bank gives at a rate, in its cold and at its age."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.batteries.peukert import CLAMP, PEUKERT
from engine.check.bank import rates_of
from engine.units import fixed, said
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import capital, hours, warmth, whole

if TYPE_CHECKING:
    from engine.plan.parts import Bank
    from engine.views.parts.scene import Scene


def _worn(bank: Bank) -> str:
    """Return why a worn bank gives less than its health at a fast rate."""
    if bank.health is None or bank.health.likely >= 1:
        return ""
    return (
        f" A bank of {said(bank.health.likely * 100)} % health gives less than that share of its "
        "label: the same amperes are a faster discharge for it."
    )


def rates(scene: Scene) -> Html | None:
    """Return the capacity at each rate, with the reason in each line."""
    bank, found = scene.plan.bank, rates_of(scene.plan, scene.condition)
    if bank is None or not found:
        return None
    cold = f"At {warmth(bank.temperature, scene.units)}"
    health = f"Now, health {said(bank.health.likely * 100)} %" if bank.health else "Now"
    rows = (
        tag(
            "tr",
            tag("th", capital(one.name), scope="row"),
            tag("td", f"{said(one.current)} A", class_="n", data_label="Current"),
            tag("td", f"{whole(one.label)} Ah", class_="n", data_label="New and warm"),
            tag("td", f"{whole(one.cold)} Ah", class_="n", data_label=cold),
            tag("td", f"{whole(one.now)} Ah", class_="n", data_label=health),
            tag("td", hours(one.time), class_="n", data_label="Lasts"),
            tag(
                "td",
                f"{fixed(one.volts, 1)} V" if one.volts > 0 else "none",
                class_="n",
                data_label="Volts at the reserve",
            ),
            tag("td", f"{one.why}.", class_="wide"),
        )
        for one in found
    )
    figures = ("Current", "New and warm", cold, health, "Lasts", "Volts at the reserve")
    table = tag("table", head("From full to empty", *figures, "Why", numbers=figures),
                tag("tbody", *rows), class_="grid cards stack")  # fmt: skip
    return joined(
        tag("h2", "Capacity at a rate"),
        tag("div", table, class_="scroll", tabindex="0", role="region",
            aria_label="Capacity at a rate"),
        tag("p", "For one discharge at one current: what a fast one leaves behind comes back at "
            "rest.", _worn(bank), tag("span", f" {PEUKERT}. {CLAMP}.", class_="source"),
            class_="note"),
    )  # fmt: skip
