"""One load, all its fields."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.estimate import KNOWN_BY, SURENESS
from engine.finding import Step
from engine.loads.day_use import use_of
from engine.loads.load import CONDITIONS, bank_current
from engine.plan.edit import rows_of
from engine.plan.fields import LOAD
from engine.units import said
from engine.views.home.home import banner, charge
from engine.views.parts.cautions import dangers
from engine.views.parts.form import circuit_choice, entry
from engine.views.parts.html import Block, Html, block, tag
from engine.views.parts.say import beside, button, link, titled, why

if TYPE_CHECKING:
    from engine.loads.load import Load
    from engine.views.parts.scene import Scene


def load_page(scene: Scene, ident: str) -> tuple[Block, ...]:
    """Return one load's page."""
    load = next((one for one in scene.plan.loads if one.ident == ident), None)
    back = link("energy/use", "Day's use", class_="crumb")
    if load is None or not any(row["id"] == ident for row in rows_of(scene.document, "loads")):
        return (
            block("load-head", back, tag("h1", "No such load"),
                  tag("p", f"{ident} is not in this plan. It may be deleted.", class_="empty")),
        )  # fmt: skip
    path = f"loads.{ident}"
    danger = None
    if load.supply in {"inverter", "shore"}:
        danger = dangers("load", swim=load.supply == "shore")
    others = (
        (f"energy/use/{one.ident}", f"{one.ident} {one.name}", one is load)
        for one in scene.plan.loads
    )
    return (
        block("load-beside", beside("Loads", others), class_="beside"),
        block("load-head", banner(scene), back, tag("h1", titled(ident, load.name)), danger),
        block("load-answer", _answer(scene, load)),
        block(
            "load-draw",
            tag("h2", "What it takes"),
            tag(
                "div",
                entry(scene, f"{path}.name"),
                entry(scene, f"{path}.draw"),
                entry(scene, f"{path}.draw_by"),
                entry(scene, f"{path}.marked"),
                entry(scene, f"{path}.surge"),
                class_="fields",
            ),
            sureness(f"{path}.draw"),
            tag(
                "p",
                KNOWN_BY.get(load.known_by, "").capitalize() + ".",
                class_="note",
            ),
        ),
        block(
            "load-hours",
            tag("h2", "How long it runs"),
            tag(
                "div",
                *(entry(scene, f"{path}.hours_{name}", help_=False) for name in CONDITIONS),
                entry(scene, f"{path}.duty"),
                entry(scene, f"{path}.window"),
                class_="fields",
            ),
            sureness(f"{path}.duty", "How sure of the duty?"),
        ),
        block(
            "load-place",
            tag("h2", "Where it belongs"),
            tag(
                "div",
                entry(scene, f"{path}.zone"),
                circuit_choice(scene, f"{path}.circuit", "not entered"),
                entry(scene, f"{path}.supply"),
                entry(scene, f"{path}.note"),
                class_="fields",
            ),
            tag(
                "div",
                entry(scene, f"{path}.essential"),
                entry(scene, f"{path}.always_live"),
                class_="ticks",
            ),
        ),
        block(
            "load-change",
            tag(
                "p",
                button("Copy", "copy-row", path),
                button("Move up", "move-up", path),
                button("Move down", "move-down", path),
                button("Delete", "delete-row", path),
                class_="actions",
            ),
        ),
    )


def sureness(path: str, label: str = "How sure?") -> Html:
    """Return the one control that puts low and high around a likely value."""
    return tag(
        "p",
        tag("span", label, class_="known"),
        *(button(name, "how-sure", f"{path}|{name}", class_="small") for name in SURENESS),
        class_="actions",
    )


def _answer(scene: Scene, load: Load) -> Html:
    current = bank_current(load, scene.plan.supply)
    day = use_of(load, scene.condition, scene.plan.supply)
    where = CONDITIONS[scene.condition]
    if day is None or current is None:
        return tag(
            "p",
            f"Not known {where}: enter its draw and hours; the rest of the day goes on without it.",
            class_="answer",
        )
    unit = scene.units.charge
    span = ""
    if not day.certain:
        span = f", {charge(scene, day.low)} to {charge(scene, day.high)}"
    return tag(
        "div",
        tag(
            "p",
            tag("b", f"{charge(scene, day.likely)} {unit}"),
            f" a day {where}{span}.",
            class_="answer",
        ),
        why("Why this number?", _steps(scene, load), f"why-{load.ident}"),
    )


def _steps(scene: Scene, load: Load) -> tuple[Step, ...]:
    current = bank_current(load, scene.plan.supply)
    hours, duty = load.hours_in(scene.condition), load.duty
    volts = said(scene.plan.supply.volts)
    steps = []
    if load.watts and load.supply == "inverter":
        steps.append(
            Step("power from the bank", "AC watts with the inverter's loss at this load",
                 f"{said(current.likely * scene.plan.supply.volts if current else 0)} W")
        )  # fmt: skip
    if load.watts:
        steps.append(
            Step("current", f"power / {volts} V", f"{said(current.likely if current else 0)} A")
        )
    else:
        steps.append(Step("current", "as entered", f"{said(current.likely if current else 0)} A"))
    steps.append(Step("hours", "as entered", f"{said(hours.likely if hours else 0)} h"))
    share = duty.likely if duty else 1.0
    steps.append(Step("duty", LOAD["duty"].help.split(".")[0].lower(), said(share)))
    day = use_of(load, scene.condition, scene.plan.supply)
    steps.append(Step("a day", "current × hours × duty", f"{said(day.likely if day else 0)} Ah"))
    return tuple(steps)
