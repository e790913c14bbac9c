"""The house bank as the plan states it, and what it holds."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.batteries.chemistry import CHEMISTRIES
from engine.check.doubts import alone
from engine.check.inverter import usable_capacity
from engine.finding import Step
from engine.loads.load import CONDITIONS
from engine.source import common_practice
from engine.units import said
from engine.views.energy.use import energy_pages
from engine.views.home.home import banner
from engine.views.parts.cautions import SHORT_CIRCUIT, caution, chemistry_caution
from engine.views.parts.form import entry
from engine.views.parts.html import Block, Html, block, head, tag
from engine.views.parts.say import whole, why

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

STATED = ("chemistry", "capacity", "health", "age", "charge", "reserve")
RARER = ("rated_hours", "temperature", "exponent", "resistance")


def bank(scene: Scene) -> tuple[Block, ...]:
    """Return the Bank page."""
    stated = scene.plan.bank
    return (
        block("bank-head", banner(scene), energy_pages("energy/bank"), tag("h1", "House bank")),
        block(
            "bank-care",
            caution(SHORT_CIRCUIT, "bank"),
            caution(chemistry_caution(stated.chemistry), "chemistry") if stated else None,
        ),
        block("bank-answer", _answer(scene)),
        block(
            "bank-form",
            tag("h2", "What is there"),
            tag("div", *(entry(scene, f"bank.{name}") for name in STATED), class_="fields"),
            tag("h2", "Less often changed"),
            tag("div", *(entry(scene, f"bank.{name}") for name in RARER), class_="fields"),
        ),
    )


def _answer(scene: Scene) -> Html:
    stated = scene.plan.bank
    if stated is None or stated.capacity is None:
        return tag("p", "Enter chemistry and capacity to see how long it lasts.", class_="empty")
    held = usable_capacity(stated) or 0.0
    kind = CHEMISTRIES[stated.chemistry]
    rows = []
    for name, spoken in CONDITIONS.items():
        days = alone(scene.plan, name)
        rows.append(
            tag(
                "tr",
                tag("th", spoken.capitalize(), scope="row"),
                tag("td", said(days.likely, 2) if days else "not known", class_="n"),
                tag("td", f"{said(days.low, 2)} to {said(days.high, 2)}" if days else ""),
            )
        )
    usable = held * (1 - stated.reserve)
    doubt = ""
    if stated.health is None and not stated.new:
        doubt = " Its health is not known, so the days range from 60 to 100 % of the label."
    steps = (
        Step("holds now", "label × health", f"{whole(held)} Ah"),
        Step(
            "usable", f"holds × (1 − reserve of {said(stated.reserve * 100)} %)",
            f"{whole(usable)} Ah",
            common_practice(f"{said(kind.usable * 100)} % of {kind.label} used routinely"),
        ),
        Step("days alone", "usable / the day's median; ends with the 8-in-10 band",
             "see the table"),
    )  # fmt: skip
    return tag(
        "div",
        tag(
            "p",
            "Usable down to the reserve line: ",
            tag("b", f"{whole(usable)} Ah"),
            f" of {whole(held)}.{doubt}",
            class_="answer",
        ),
        why("Why this number?", steps, "why-bank"),
        tag(
            "table",
            head("Without any charging", "Days", "Range", numbers=("Days",)),
            tag("tbody", *rows),
            class_="grid",
        ),
    )
