"""DC circuits: the list with verdicts, and the legs their runs may be built from."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.circuits import CircuitAnswer, answers_of
from engine.check.network import network_answer
from engine.check.users import used_in
from engine.check.wire import percent
from engine.finding import Verdict
from engine.plan.edit import rows_of
from engine.plan.read_circuit import legs_named
from engine.units import fixed, said, words
from engine.views.home.home import banner
from engine.views.parts.form import entry
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.pictures import share_bar
from engine.views.parts.say import button, length, link, subpages, verdict

if TYPE_CHECKING:
    from engine.check.network import NetworkAnswer
    from engine.views.parts.scene import Scene


def wiring_pages(here: str) -> Html:
    """Return the pages of this section."""
    return subpages(
        here,
        ("wiring/circuits", "DC circuits"),
        ("wiring/network", "DC network"),
        ("wiring/heavy", "Heavy cables"),
        ("wiring/inverter", "Inverter"),
        ("wiring/shore", "Shore power"),
    )


def circuits(scene: Scene) -> tuple[Block, ...]:
    """Return the list of circuits."""
    found = answers_of(scene.plan)
    return (
        block("circuits-head", banner(scene), wiring_pages("wiring/circuits"),
              tag("h1", "DC circuits")),
        block("circuits-answer", _summary(found)),
        block(
            "circuits-add",
            tag(
                "p",
                button("Add a circuit", "add-circuit", class_="main"),
                link("sum/conductor", "One run, without a plan", class_="button"),
                class_="actions",
            ),
        ),
        _list(scene, found),
        block("circuits-legs", _legs(scene)),
        block("circuits-set", _settings(scene)),
    )  # fmt: skip


def _summary(found: tuple[CircuitAnswer, ...]) -> Html:
    if not found:
        return tag("p", "No circuits yet. Add one, with its run one way and its current.",
                   class_="empty")  # fmt: skip
    counts = {
        word: sum(1 for one in found if one.verdict == word)
        for word in (Verdict.STOP, Verdict.SHOULD, Verdict.CANNOT_SAY, Verdict.NOT_KNOWN)
    }
    fine = sum(1 for one in found if one.verdict == Verdict.FINE)
    rest = [f"{count} {word.value}" for word, count in counts.items() if count]
    tail = f"; {words(rest)}" if rest else ""
    return joined(
        tag("p", tag("b", f"{fine} of {len(found)}"), f" circuits within limit{tail}.",
            class_="answer"),
        _not_asked(found),
    )  # fmt: skip


def _not_asked(found: tuple[CircuitAnswer, ...]) -> Html | None:
    """Return how many circuits still have questions nobody could ask."""
    counts: dict[str, int] = {}
    for one in found:
        for part in one.parts:
            if part.verdict == Verdict.NOT_KNOWN and not part.weighs:
                counts[part.rule.name] = counts.get(part.rule.name, 0) + 1
    if not counts:
        return None
    rest = words(f"{name} of {count}" for name, count in counts.items())
    return tag("p", f"Not asked yet, for want of entries: {rest}.", class_="note")


def _settings(scene: Scene) -> Html:
    return joined(
        tag("h2", "For every circuit"),
        tag(
            "div",
            entry(scene, "boat.volts"),
            entry(scene, "boat.tape"),
            entry(scene, "boat.meter"),
            entry(scene, "boat.catalogue"),
            class_="fields",
        ),
    )


def _list(scene: Scene, found: tuple[CircuitAnswer, ...]) -> Block:
    heads = head("Circuit", "Load and run", "Drop", "Volts there", "Protection", "Verdict")
    shared = network_answer(scene.plan, used_in(scene.plan, scene.condition), scene.level)
    rows = (_row(scene, one, shared) for one in found)
    body = block("circuits-body", *rows, name="tbody")
    table = block("circuits-table", heads, body, name="table", class_="grid cards")
    return block("circuits", table if found else None, name="div")


def _row(scene: Scene, answer: CircuitAnswer, shared: NetworkAnswer) -> Block:
    circuit, wire = answer.circuit, answer.wire
    drop: Html | str = "not known"
    if wire:
        title = f"{percent(wire.share.likely, 3)} of {percent(wire.allowed)}"
        drop = joined(share_bar(wire.share, wire.allowed, title), tag("span", title))
    way = length(circuit.run.likely, scene.units) if circuit.run else "a run not known"
    load = f"{said(circuit.current.likely)} A" if circuit.current else "a current not known"
    conductor = str(circuit.size) if circuit.size else "conductor not known"
    if circuit.parallel > 1:
        conductor = f"{circuit.parallel} × {conductor}"
    there = shared.volts_at(circuit.ident)
    return block(
        f"row-{circuit.ident}",
        tag(
            "th",
            link(
                f"wiring/circuits/{circuit.ident}",
                f"{circuit.ident} {circuit.name}",
                class_="whole",
            ),
            scope="row",
        ),
        tag("td", f"{load} over {way}, {conductor}", data_label="Load and run"),
        tag("td", drop, data_label="Drop"),
        tag("td", f"{fixed(there, 2)} V" if there else "not solved", data_label="Volts there"),
        tag("td", protection_words(answer), data_label="Protection"),
        tag(
            "td",
            verdict(answer.verdict),
            tag("span", answer.governing, class_="known under") if answer.governing else None,
            data_label="Verdict",
        ),
        name="tr",
    )


def protection_words(answer: CircuitAnswer) -> str:
    """Return what protects a circuit, in a few words."""
    guard = answer.circuit.guard
    if not guard.fitted:
        return "none"
    return f"{said(guard.rating)} A" if guard.rating else "not known"


def _legs(scene: Scene) -> Html:
    rows = [
        tag(
            "div",
            entry(scene, f"legs.{leg.ident}.name", f"{leg.ident}, from and to"),
            entry(scene, f"legs.{leg.ident}.length", f"{leg.ident}, length", help_=False),
            tag("p", f"Used by {words(_users_of(scene, leg.ident)) or 'no circuit'}. ",
                button("Delete", "delete-row", f"legs.{leg.ident}"), class_="actions"),
            class_="fields",
            id=f"row-{leg.ident}",
        )
        for leg in scene.plan.legs
    ]  # fmt: skip
    return tag(
        "details",
        tag("summary", f"Legs shared between circuits ({len(rows)})"),
        tag("p", "Measure each stretch once, such as panel to mast step, and name the legs in a "
            "circuit instead of its run. Bends are added there.", class_="note"),
        *rows,
        tag("p", button("Add a leg", "add-leg"), class_="actions"),
        class_="why",
        id="legs",
    )  # fmt: skip


def _users_of(scene: Scene, leg: str) -> list[str]:
    return [row["id"] for row in rows_of(scene.document, "circuits") if leg in legs_named(row)]
