"""Shore power: what runs together, the way from dock to panel, and what was asked of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.shore_dock import no_load_words
from engine.check.shore_feed import lopsided
from engine.check.shore_load import LoadAnswer, load_answer
from engine.plan.shore_parts import BOTH
from engine.shore.appliances import current_at
from engine.units import said, words
from engine.views.home.home import banner
from engine.views.parts.cautions import dangers
from engine.views.parts.foot import foot
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import button, capital, link, verdict
from engine.views.wiring.circuits import wiring_pages
from engine.views.wiring.licensed import licensed
from engine.views.wiring.shore_asked import gravest_part, load_verdict, no_plug, shore_part
from engine.views.wiring.shore_circuits import ac_circuit_page, circuits_table
from engine.views.wiring.shore_forms import forms, records
from engine.views.wiring.shore_inverter import generator_part, inverter_part
from engine.views.wiring.shore_pictures import inlet_strip, load_bars
from engine.views.wiring.shore_tables import (
    abroad_table,
    isolation_part,
    plugs_table,
    states_table,
)

if TYPE_CHECKING:
    from engine.plan.shore_parts import Item, ShorePlan
    from engine.views.parts.scene import Scene


def shore(scene: Scene) -> tuple[Block, ...]:
    """Return the page of shore power."""
    plan = scene.plan.shore
    found = load_answer(plan, running_of(scene))
    return (
        block(
            "shore-head",
            banner(scene),
            wiring_pages("wiring/shore"),
            tag("h1", "Shore power"),
            dangers("shore", brief=True),
        ),
        block("shore-gravest", gravest_part(scene)),
        block("shore-answer", _answer(scene, found), class_="sticky"),
        block("shore-load", _board(plan, found)),
        block("shore-weak", _weak(plan, found)),
        block("shore-strip", _strip(scene)),
        block("shore-asked", shore_part(scene)),
        block("shore-circuits", circuits_table(scene)),
        block("shore-form", *forms(scene), class_="no-print"),
        block("shore-states", states_table(plan)),
        block("shore-isolation", isolation_part(plan)),
        block("shore-inverter", inverter_part(scene)),
        block("shore-generator", generator_part(plan)),
        block("shore-plugs", plugs_table(plan)),
        block("shore-abroad", abroad_table(scene)),
        block("shore-records", records(scene)),
        block(
            "shore-sheet",
            tag(
                "p",
                link("wiring/shore/licensed", "The licensed person's sheet", class_="button"),
                tag("button", "Print this page", type="button", data_local="print"),
                class_="actions",
            ),
            foot(scene),
        ),
    )


def shore_row(scene: Scene, ident: str) -> tuple[Block, ...]:
    """Return the licensed person's sheet, or the page of one AC circuit."""
    return licensed(scene) if ident == "licensed" else ac_circuit_page(scene, ident)


def running_of(scene: Scene) -> frozenset[str]:
    """Return the appliances switched on: by hand, or as planned."""
    return scene.plan.shore.planned if scene.plugged is None else scene.plugged


def _answer(scene: Scene, found: LoadAnswer | None) -> Html:
    plan = scene.plan.shore
    if found is None:
        return tag("p", no_plug(scene), f" {no_load_words(plan)}", class_="empty")
    if not plan.items:
        return tag("p", "Add AC circuits with their appliances to see what may run together.",
                   class_="empty")  # fmt: skip
    stop = no_plug(scene)
    return tag("p", joined(stop, " ") if stop else None, load_verdict(found),
               f" {found.sentence} {found.leave_off}".rstrip(), class_="answer")  # fmt: skip


def _board(plan: ShorePlan, found: LoadAnswer | None) -> Html | None:
    if found is None or not plan.items:
        return None
    return joined(
        tag("h2", "What runs together"),
        load_bars(found),
        tag("div", *(_tick(one, found) for one in plan.items), class_="ticks many"),
        tag(
            "p",
            button("As planned", "plug-planned"),
            button("Nothing", "plug-none"),
            class_="actions",
        ),
        _apart(found),
    )


def _tick(one: Item, found: LoadAnswer) -> Html:
    ident = f"plug-{one.ident.replace('.', '-')}"
    amps = current_at(one.on_leg, found.service.volts, found.service.volts)
    each = " on each leg" if one.leg == BOTH else ""
    shown = f"{said(one.appliance.watts, 4)} W, {said(amps)} A{each}"
    return tag(
        "div",
        tag("input", type="checkbox", name=f"show.shore.{one.ident}", id=ident,
            checked=one.ident in found.running),
        tag("label", tag("span", f"{one.appliance.name} ", tag("span", shown, class_="known")),
            for_=ident),
        class_="tick",
    )  # fmt: skip


def _apart(found: LoadAnswer) -> Html | None:
    """Return which two never to run together, and what to leave off if all is switched on."""
    pairs = words((f"{one} and {other}" for one, other in found.apart), "or")
    every = ""
    if found.with_all and found.with_all != found.leave_off:
        every = f"With everything on: {found.with_all[0].lower()}{found.with_all[1:]}"
    if not pairs and not every:
        return None
    return tag("p", tag("b", f"Not together: {pairs}. ") if pairs else None, every)


def _weak(plan: ShorePlan, found: LoadAnswer | None) -> Html | None:
    if found is None or not found.running:
        return None
    rows = [
        tag(
            "tr",
            tag("th", capital(side.name or "shore power"), scope="row"),
            tag("td", f"{said(side.now.current)} A, {round(side.now.share * 100)} %",
                data_label=f"At {said(found.service.volts)} V"),
            tag("td", f"{said(side.weak.current)} A, {round(side.weak.share * 100)} %",
                data_label=f"At {said(found.weak_volts)} V"),
            tag("td", verdict(side.weak.verdict), data_label="Load alone there"),
        )
        for side in found.sides
    ]  # fmt: skip
    heads = head("", f"At {said(found.service.volts)} V", f"At {said(found.weak_volts)} V",
                 "Load alone there")  # fmt: skip
    falls = f"Less at a weak dock: {words(found.falls)}." if found.falls else ""
    rises = f" More: {words(found.rises)}." if found.rises else ""
    neutral = ""
    lost = None
    if found.service.legs == 2:
        lost = lopsided(plan, found.sides[0].now.current, found.sides[1].now.current)
    if lost:
        neutral = (
            f" In the cord leg 1 loses {said(lost[0], 2)} V and leg 2 {said(lost[1], 2)} V, "
            "each with its part of the neutral's; below zero is a rise."
        )
    return joined(
        tag("h2", "At a weak dock"),
        tag("table", heads, tag("tbody", *rows), class_="grid cards"),
        tag("p", f"{falls}{rises}{neutral}", class_="note"),
    )


def _strip(scene: Scene) -> Html | None:
    picture = inlet_strip(scene)
    return joined(tag("h2", "From dock to panel"), picture) if picture else None
