"""The house bank as the plan states it, what it holds, and the start bank beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.bank import figures_of
from engine.check.doubts import alone
from engine.finding import Step
from engine.loads.load import CONDITIONS
from engine.source import common_practice
from engine.units import said
from engine.views.energy.bank_card import card, typical
from engine.views.energy.bank_rest import resting
from engine.views.energy.bank_sizing import comparison, sizing
from engine.views.energy.bank_start import start_bank
from engine.views.energy.bank_tables import rates
from engine.views.energy.not_counted import left_out
from engine.views.energy.use import energy_pages
from engine.views.home.home import banner
from engine.views.parts.cautions import SHORT_CIRCUIT, caution, chemistry_caution
from engine.views.parts.form import entry, typed_at
from engine.views.parts.html import Block, Html, block, head, tag
from engine.views.parts.say import whole, why

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

STATED: Final = ("chemistry", "capacity", "health", "age", "charge", "reserve")
RARER: Final = (
    ("Its batteries, in series and side by side", "batteries",
     ("battery_volts", "strings", "alike", "rated_hours")),
    ("Its limits, and the cold", "limits",
     ("temperature", "cold_stop", "most_charge", "most_discharge")),
    ("Typical figures, to replace by its papers", "typical",
     ("exponent", "resistance", "mass", "cycles")),
)  # fmt: skip


def bank(scene: Scene) -> tuple[Block, ...]:
    """Return the Bank page."""
    stated = scene.plan.bank
    return (
        block("bank-head", banner(scene), energy_pages(scene, "energy/bank"),
              tag("h1", "House bank")),
        block("bank-answer", _answer(scene)),
        block(
            "bank-care",
            caution(SHORT_CIRCUIT, "bank"),
            caution(chemistry_caution(stated.chemistry), "chemistry") if stated else None,
        ),
        block("bank-card", card(scene)),
        block(
            "bank-form",
            tag("h2", "What is there"),
            _fields(scene, *STATED),
            *(
                tag("details", tag("summary", label), _fields(scene, *names), class_="why",
                    id=f"more-bank-{ident}")
                for label, ident, names in RARER
            ),
        ),
        block("bank-typical", typical(scene)),
        block("bank-rates", rates(scene)),
        block("bank-sizing", sizing(scene)),
        block("bank-compare", comparison(scene)),
        block("bank-rest", resting(scene)),
        block("bank-start", start_bank(scene)),
    )  # fmt: skip


def _fields(scene: Scene, *names: str) -> Html:
    return tag("div", *(entry(scene, f"bank.{name}") for name in names), class_="fields")


def _answer(scene: Scene) -> Html:
    stated = scene.plan.bank
    found = figures_of(stated) if stated else None
    if stated is None or found is None:
        lacking = "its capacity" if stated else "chemistry and capacity"
        if stated is None and typed_at(scene, "bank.capacity"):
            lacking = "its chemistry"
        return tag("p", f"Enter {lacking} to see how long it lasts.", class_="empty")
    kind, held, usable = found.kind, found.held, found.usable
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
    doubt = ""
    if stated.health is None and not stated.new:
        doubt = " Its health is not known: it counts as 80 %, and the days range from 60 to 100 %."
    steps = (
        Step("holds now", "label × health × warmth, at 20 h", f"{whole(held)} Ah"),
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
            f" of {whole(held)}{_lasts(scene)}.{doubt}",
            class_="answer",
        ),
        left_out(scene),
        why("Why this number?", steps, "why-bank"),
        tag(
            "table",
            head("Without any charging", "Days", "Range", numbers=("Days",)),
            tag("tbody", *rows),
            class_="grid",
        ),
    )


def _lasts(scene: Scene) -> str:
    """Return how long that lasts in the chosen way of living."""
    days = alone(scene.plan, scene.condition)
    if days is None:
        return ""
    return f", about {said(days.likely, 2)} days {CONDITIONS[scene.condition]} without charging"
