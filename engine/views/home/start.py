"""Seven questions, one a screen, all skippable; every answer lands in the real plan."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.late import here
from engine.loads.common import COMMON, FRIDGES
from engine.loads.day_use import day_use
from engine.plan.edit import rows_of
from engine.plan.look_fields import FIRST
from engine.views.home.home import (
    ahead_sentence,
    answer_sentence,
    band_working,
    charge,
    measure_next,
)
from engine.views.parts.cautions import SHORT_CIRCUIT, caution, dangers
from engine.views.parts.form import entry, ident_of
from engine.views.parts.html import Block, Html, block, joined, tag
from engine.views.parts.say import button, link, why
from engine.views.proving.proving import look

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

TITLES: Final = (
    "What is she called, and which volts?",
    "How do you live aboard?",
    "What do you have? Tick it.",
    "How many hours in 24 does the fridge hum?",
    "Which battery?",
    "What charges it?",
    "Where, and when?",
)
VOLTS: Final = ("12 V", "24 V", "48 V")


def start(scene: Scene, step: str) -> tuple[Block, ...]:
    """Return one question, or the first answer."""
    if step == "answer":
        return _first_answer(scene)
    number = int(step) if step.isdecimal() and 1 <= int(step) <= len(TITLES) else 1
    bodies = (_name, _living, _have, _hum, _bank, _charging, _where)
    after = f"start/{number + 1}" if number < len(TITLES) else "start/answer"
    before = f"start/{number - 1}" if number > 1 else "home"
    return (
        block(
            "start-head",
            link(before, "Back", class_="crumb"),
            tag("p", f"Question {number} of {len(TITLES)}", class_="known"),
            tag("h1", TITLES[number - 1]),
        ),
        block("start-body", bodies[number - 1](scene)),
        block(
            "start-foot",
            tag(
                "p",
                link(after, "Next", class_="button main"),
                button("Don't know", "dont-know", str(number)),
                link("start/answer", "Straight to the answer") if number > 3 else None,
                class_="actions",
            ),
        ),
    )


def _name(scene: Scene) -> Html:
    chosen = scene.document.get("boat", {}).get("volts", "12 V")
    labels = [
        tag(
            "label",
            tag("input", type="radio", name="boat.volts", value=volts, checked=volts == chosen),
            volts,
        )
        for volts in VOLTS
    ]
    return joined(
        tag("div", entry(scene, "boat.name"), class_="fields"),
        tag("fieldset", tag("legend", "System volts"), *labels, class_="choices"),
    )


def _living(scene: Scene) -> Html:
    return tag("div", entry(scene, "boat.use"), entry(scene, "boat.people"), class_="fields")


def _have(scene: Scene) -> Html:
    names = {row.get("name", "") for row in rows_of(scene.document, "loads")}
    labels = [
        tag(
            "label",
            tag(
                "input", type="checkbox", name=f"start.have.{place}", id=f"have-{place}",
                checked=one.words in names,
            ),
            one.words,
        )
        for place, one in enumerate(COMMON)
    ]  # fmt: skip
    return joined(
        tag(
            "p",
            "Each brings a typical draw with its range and typical hours, tagged default. "
            "You replace them with what you read and measure.",
            class_="note",
        ),
        tag(
            "fieldset",
            tag("legend", "What is aboard", class_="quiet"),
            *labels,
            class_="ticks",
        ),
    )


def _hum(scene: Scene) -> Html:
    rows = [row for row in rows_of(scene.document, "loads") if row.get("name") in FRIDGES]
    if not rows:
        return tag("p", "No fridge ticked, so nothing to ask.", class_="empty")
    fields = [
        tag(
            "div",
            tag(
                "label", f"{row['name']}: hours in 24 (h)", for_=ident_of(f"start.hum.{row['id']}")
            ),
            tag(
                "input",
                type="text",
                name=f"start.hum.{row['id']}",
                id=ident_of(f"start.hum.{row['id']}"),
                value=scene.typed.get(f"start.hum.{row['id']}", ""),
                autocomplete="off",
            ),
            _said(scene, f"start.hum.{row['id']}", row.get("duty", "")),
            class_="field",
        )
        for row in rows
    ]
    return joined(
        tag("p", "The biggest doubt of most days. Listen, count, or guess a range such as 9-13.",
            class_="note"),
        tag("div", *fields, class_="fields"),
    )  # fmt: skip


def _said(scene: Scene, path: str, duty: str) -> Html:
    problem = scene.refused.get(path)
    if problem:
        return tag("p", str(problem.at("")), class_="problem")
    return tag("p", f"Counted as a duty of {duty}." if duty else "", class_="echo")


def _bank(scene: Scene) -> Html:
    return joined(
        caution(SHORT_CIRCUIT, "start"),
        tag(
            "div",
            *(entry(scene, f"bank.{name}") for name in ("chemistry", "capacity", "age")),
            class_="fields",
        ),
        tag("p", "Of unknown age: leave it. Its health then counts as 60 to 100 %.", class_="note"),
    )


def _charging(scene: Scene) -> Html:
    rows = {row.get("kind", ""): row for row in rows_of(scene.document, "sources")}
    fields = [
        tag(
            "div",
            tag("label", label, for_=ident_of(f"start.source.{kind}")),
            tag(
                "input",
                type="text",
                name=f"start.source.{kind}",
                id=ident_of(f"start.source.{kind}"),
                value=rows.get(kind, {}).get("marked", ""),
                autocomplete="off",
            ),
            class_="field",
        )
        for kind, label in (
            ("solar", "Solar panels (W)"),
            ("alternator", "Alternator, as marked (A)"),
        )
    ]
    return joined(
        tag("div", *fields, class_="fields"),
        tag("p", "The Charging page tells what each brings and why; add other sources there.",
            class_="note"),
    )  # fmt: skip


def _where(scene: Scene) -> Html:
    fields = ("latitude", "longitude", "month", "place")
    return joined(
        _areas(scene),
        tag("div", *(entry(scene, f"boat.{name}") for name in fields), class_="fields"),
    )


def _areas(scene: Scene) -> Html | None:
    """Return the list of sea areas, once it is here."""
    if not here():
        return None
    from engine.views.energy.place import areas  # noqa: PLC0415 - comes with the late parcel

    return areas(scene)


def _first_answer(scene: Scene) -> tuple[Block, ...]:
    found = day_use(scene.plan.loads, scene.condition, scene.plan.supply)
    return (
        block(
            "first-answer",
            link("start/7", "Back", class_="crumb"),
            tag("h1", "A first answer"),
            answer_sentence(scene, found),
            ahead_sentence(scene),
            why(f"Why {charge(scene, found.band.median)}?", band_working(found), "why-first"),
        ),
        block(
            "first-next",
            tag("h2", "Three things that would sharpen this most"),
            measure_next(scene),
            _health(scene),
        ),
        block(
            "first-looks",
            tag("h2", "Four looks first"),
            dangers("looks"),
            *(look(scene, one) for one in FIRST),
        ),
        block(
            "first-on",
            tag(
                "p",
                link("home", "Go on to Home", class_="button main"),
                link("energy/use", "See every load", class_="button"),
                class_="actions",
            ),
        ),
    )


def _health(scene: Scene) -> Html | None:
    bank = scene.plan.bank
    if bank is None:
        return tag("p", link("energy/bank", "Say which battery"), " to see how long it lasts.")
    if bank.health is None and not bank.new:
        return tag(
            "p",
            link("energy/bank", "Test the bank's capacity"),
            ": its unknown health alone spreads the days by two thirds.",
            class_="note",
        )
    return None
