"""DC circuits: the list with verdicts, and one circuit with its strip and scale."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.circuits import CircuitAnswer, circuit_answer, percent
from engine.finding import Verdict
from engine.plan.edit import rows_of
from engine.units import fixed, said, words
from engine.views.home.home import banner
from engine.views.parts.cautions import MEASURING, SHORT_CIRCUIT, caution
from engine.views.parts.form import entry
from engine.views.parts.html import Block, Html, block, joined, tag
from engine.views.parts.pictures import (
    Scale,
    Stop,
    scale_picture,
    share_bar,
    strip_picture,
)
from engine.views.parts.say import (
    beside,
    button,
    length,
    link,
    subpages,
    titled,
    verdict,
    warmth,
    why,
)

if TYPE_CHECKING:
    from engine.check.circuits import Part, Wire
    from engine.conductors.sizing import Choice
    from engine.plan.parts import Circuit
    from engine.views.parts.scene import Scene


def wiring_pages(here: str) -> Html:
    """Return the pages of this section."""
    return subpages(here, ("wiring/circuits", "DC circuits"), ("wiring/inverter", "Inverter"))


def answers_of(scene: Scene) -> list[CircuitAnswer]:
    """Return what is found of every circuit."""
    return [circuit_answer(one, scene.plan.boat.catalogue) for one in scene.plan.circuits]


def circuits(scene: Scene) -> tuple[Block, ...]:
    """Return the list of circuits."""
    found = answers_of(scene)
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
        block("circuits-set", _settings(scene)),
    )  # fmt: skip


def _summary(found: list[CircuitAnswer]) -> Html:
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
    return tag("p", tag("b", f"{fine} of {len(found)}"), f" circuits within limit{tail}.",
               class_="answer")  # fmt: skip


def _settings(scene: Scene) -> Html:
    return joined(
        tag("h2", "For every circuit"),
        tag(
            "div",
            entry(scene, "boat.volts"),
            entry(scene, "boat.tape"),
            entry(scene, "boat.catalogue"),
            class_="fields",
        ),
    )


def _list(scene: Scene, found: list[CircuitAnswer]) -> Block:
    heads = ("Circuit", "Run", "Current", "Conductor", "Drop", "Protection", "Verdict")
    head = tag("thead", tag("tr", *(tag("th", one, scope="col") for one in heads)))
    rows = (_row(scene, one) for one in found)
    body = block("circuits-body", *rows, name="tbody")
    table = block("circuits-table", head, body, name="table", class_="grid cards")
    return block("circuits", table if found else None, name="div")


def _row(scene: Scene, answer: CircuitAnswer) -> Block:
    circuit, wire = answer.circuit, answer.wire
    drop: Html | str = "not known"
    if wire:
        title = f"{percent(wire.share.likely, 3)} of {percent(wire.allowed)}"
        drop = joined(share_bar(wire.share, wire.allowed, title), tag("span", title))
    run, current = circuit.run, circuit.current
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
        tag("td", length(run.likely, scene.units) if run else "not known", data_label="Run"),
        tag("td", f"{said(current.likely)} A" if current else "not known", data_label="Current"),
        tag("td", str(circuit.size) if circuit.size else "not known", data_label="Conductor"),
        tag("td", drop, data_label="Drop"),
        tag(
            "td",
            f"{said(circuit.rating)} A" if circuit.rating else "not known",
            data_label="Protection",
        ),
        tag("td", verdict(answer.verdict), data_label="Verdict"),
        name="tr",
    )


def circuit_page(scene: Scene, ident: str) -> tuple[Block, ...]:
    """Return one circuit's page."""
    answer = next((one for one in answers_of(scene) if one.circuit.ident == ident), None)
    back = link("wiring/circuits", "DC circuits", class_="crumb")
    if answer is None:
        return (
            block("circuit-head", back, tag("h1", "No such circuit"),
                  tag("p", f"{ident} is not in this plan. It may be deleted.", class_="empty")),
        )  # fmt: skip
    circuit = answer.circuit
    path = f"circuits.{ident}"
    others = (
        (f"wiring/circuits/{one.circuit.ident}", _short(one), one is answer)
        for one in answers_of(scene)
    )
    return (
        block("circuit-beside", beside("Circuits", others), class_="beside"),
        block("circuit-head", banner(scene), back, tag("h1", titled(ident, circuit.name))),
        block("circuit-answer", _answer(answer)),
        block("circuit-strip", _strip(scene, answer)),
        block("circuit-window", _window(answer)),
        block(
            "circuit-form",
            tag("h2", "The run"),
            tag(
                "div",
                entry(scene, f"{path}.name"),
                _run_field(scene, path, circuit),
                entry(scene, f"{path}.run_by"),
                entry(scene, f"{path}.current"),
                entry(scene, f"{path}.current_by"),
                entry(scene, f"{path}.size"),
                entry(scene, f"{path}.allowed"),
                class_="fields",
            ),
            tag("h2", "Where it runs"),
            tag(
                "div",
                *(entry(scene, f"{path}.{name}") for name in ("insulation", "bundle", "ambient")),
                class_="fields",
            ),
            tag("div", entry(scene, f"{path}.engine_space"), class_="ticks"),
            tag("h2", "Its protection"),
            tag(
                "div",
                *(
                    entry(scene, f"{path}.{name}")
                    for name in ("protection", "protection_kind", "abreast")
                ),
                class_="fields",
            ),
            tag("div", entry(scene, f"{path}.continuous"), class_="ticks"),
            tag("h2", "The rest"),
            tag(
                "div",
                *(entry(scene, f"{path}.{name}") for name in ("volts", "note")),
                class_="fields",
            ),
        ),
        block("circuit-loads", _loads(scene, ident)),
        block(
            "circuit-care",
            tag("h2", "Care"),
            caution(SHORT_CIRCUIT, "circuit"),
            caution(MEASURING, "measuring"),
        ),
        block(
            "circuit-change",
            tag(
                "p",
                tag("button", "Print this page", type="button", data_local="print"),
                button("Copy", "copy-row", path),
                button("Move up", "move-up", path),
                button("Move down", "move-down", path),
                button("Delete", "delete-row", path),
                class_="actions",
            ),
            foot(scene),
        ),
    )


def _short(answer: CircuitAnswer) -> Html:
    circuit = answer.circuit
    return joined(f"{circuit.ident} {circuit.name} ", verdict(answer.verdict))


def foot(scene: Scene) -> Html:
    """Return the line every printed sheet carries."""
    boat = scene.plan.boat
    name = f"{boat.name}, {boat.revision}" if boat.revision else boat.name
    made_up = " Made-up boat." if scene.plan.made_up else ""
    return tag(
        "p",
        f"{name}. {scene.device.get('today', '')}.{made_up} Planning aid, not a survey, design "
        "approval or certificate. Check against local rules and makers' instructions. "
        "Prepared by: ____ Checked by: ____ Date: ____",
        class_="print-foot print-only",
    )


def _run_field(scene: Scene, path: str, circuit: Circuit) -> Html:
    run = circuit.run
    there = None
    if run:
        there = tag("p", f"{length(2 * run.likely, scene.units)} there and back", class_="echo")
    return tag("div", entry(scene, f"{path}.run"), there, class_="run")


def _answer(answer: CircuitAnswer) -> Html:
    if answer.wire is None:
        words_missing = words(answer.missing)
        buy = None
        choice = answer.choice
        if choice and choice.size:
            buy = joined(
                " For this run ",
                tag("b", str(choice.size)),
                f" is enough; {choice.governing.name} governs.",
            )
        return tag(
            "p",
            verdict(Verdict.NOT_KNOWN),
            f" Enter {words_missing}." if words_missing else " ",
            buy,
            class_="answer",
        )
    telling: list[Part] = [part for part in answer.parts if part.verdict == answer.verdict]
    main = telling[0] if telling else answer.parts[0]
    others = [part for part in answer.parts if part is not main]
    mend = joined(" ", main.mend) if main.mend else None
    missing = f" Not known: {words(answer.missing)}." if answer.missing else ""
    return tag(
        "div",
        tag(
            "p",
            verdict(answer.verdict),
            f" {main.words}",
            mend,
            missing,
            tag("span", f" Governing: {answer.governing}.", class_="known"),
            class_="answer",
        ),
        tag(
            "ul",
            *(
                tag("li", verdict(part.verdict), f" {part.words} {part.mend}")
                for part in others
            ),
            class_="list",
        ),
        _sizes(answer.wire, answer.choice) if answer.choice else None,
        why("Why these numbers?", answer.working, f"why-{answer.circuit.ident}"),
    )  # fmt: skip


def _sizes(wire: Wire, choice: Choice) -> Html:
    pairs = (
        ("least for the drop", str(choice.for_drop or "none")),
        ("least for heat", str(choice.for_heat or "none")),
        ("size to buy", str(choice.size or "none")),
        ("drop by the rule", f"{fixed(wire.drop, 2)} V, {percent(wire.share.likely, 3)}"),
        ("drop by physics", f"{fixed(wire.physical, 2)} V"),
        ("volts at the load", f"{fixed(wire.at_load, 2)} V"),
    )
    return tag(
        "dl",
        *(tag("div", tag("dt", name), tag("dd", value)) for name, value in pairs),
        class_="figures",
    )


def _strip(scene: Scene, answer: CircuitAnswer) -> Html | None:
    circuit, wire = answer.circuit, answer.wire
    if wire is None or circuit.run is None or circuit.current is None:
        return None
    volts = f"{fixed(circuit.volts, 2)} V"
    fuse = f"{said(circuit.rating)} A" if circuit.rating else "no protection entered"
    stops = [
        Stop("source", volts, 0.0),
        Stop(fuse, volts if circuit.rating else "", 0.3),
        Stop("load", f"{fixed(wire.at_load, 2)} V", 1.0),
    ]
    one, both = (length(metres, scene.units) for metres in (circuit.run.likely,
                                                            2 * circuit.run.likely))  # fmt: skip
    heat = wire.physical * circuit.current.likely
    above = f"{circuit.size}, {one} one way, {both} there and back"
    below = f"{said(circuit.current.likely)} A · {fixed(wire.physical, 2)} V lost"
    title = f"{circuit.name}: {volts} at the source, {fixed(wire.at_load, 2)} V at the load"
    caption = (
        f"By physics, with the copper at {warmth(wire.temperature, scene.units)}: "
        f"{fixed(wire.physical, 2)} V lost as {said(heat, 2)} W of heat. Joints are not counted."
    )
    return tag(
        "figure",
        strip_picture(stops, above, below, title, narrow=False),
        strip_picture(stops, one + " one way", below, title, narrow=True),
        tag("figcaption", caption),
    )


def _window(answer: CircuitAnswer) -> Html | None:
    circuit, wire = answer.circuit, answer.wire
    if wire is None or circuit.current is None:
        return None
    each = circuit.current.likely / circuit.abreast
    mark = f"{said(circuit.rating)} A" if circuit.rating else "none entered"
    scale = Scale(each, wire.window.least, wire.window.most, circuit.rating, mark)
    least, most = said(wire.window.least), said(wire.window.most)
    title = f"Protection may be marked {least} to {most} A; {mark}"
    words_window = (
        f"Between {least} and {most} A: above the load"
        + (" with a fifth to spare, since it runs for hours" if circuit.continuous else "")
        + ", and no more than the conductor carries."
    )
    if wire.window.empty:
        words_window = (
            f"No rating fits: the load asks for {least} A and the conductor carries {most} A."
        )
    return joined(
        tag("h2", "Protection"),
        tag(
            "figure",
            scale_picture(scale, title, narrow=False),
            scale_picture(scale, title, narrow=True),
            tag("figcaption", words_window),
        ),
    )


def _loads(scene: Scene, ident: str) -> Html | None:
    rows = [row for row in rows_of(scene.document, "loads") if row.get("circuit") == ident]
    if not rows:
        return None
    return joined(
        tag("h2", "Loads on it"),
        tag(
            "ul",
            *(
                tag("li", link(f"energy/use/{row['id']}", f"{row['id']} {row.get('name', '')}"))
                for row in rows
            ),
            class_="list",
        ),
    )
