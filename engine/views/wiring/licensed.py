"""One sheet for the licensed person: plan, figures, what is left to mend, and room for results."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.findings import findings_of
from engine.check.shore import shore_asked
from engine.check.shore_dock import no_load_words
from engine.check.shore_feed import feed_answer
from engine.check.shore_load import load_answer
from engine.finding import Who
from engine.units import said
from engine.views.home.home import banner
from engine.views.parts.cautions import dangers
from engine.views.parts.foot import foot
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import blank, figures, link, severity, warmth
from engine.views.wiring.shore_asked import gravest_line, load_verdict
from engine.views.wiring.shore_circuits import (
    ampere_words,
    branch_verdict,
    breaker_words,
    unread_words,
)
from engine.views.wiring.shore_pictures import UNKNOWN, inlet_strip
from engine.views.wiring.shore_tables import states_table

if TYPE_CHECKING:
    from engine.plan.shore_parts import AcCircuit
    from engine.views.parts.scene import Scene

BLANK_ROWS: Final = 3
SIGNED: Final = ("Name", "Licence", "Signed", "Date")
RESULT: Final = ("What was tested", "What they found", "Result", "Licensed person", "Date")


def licensed(scene: Scene) -> tuple[Block, ...]:
    """Return the licensed person's sheet."""
    boat = scene.plan.boat
    name = f"{boat.name}, {boat.revision}" if boat.revision else boat.name
    return (
        block(
            "licensed-head",
            banner(scene),
            link("wiring/shore", "Shore power", class_="crumb"),
            tag("h1", "For the licensed person"),
            tag("p", f"{name or 'No name yet'}. What the owner states and plans; to be checked "
                "aboard.", class_="note"),
            dangers("licensed", brief=True),
        ),
        block("licensed-gravest", gravest_line(scene)),
        block("licensed-figures", _figures(scene)),
        block("licensed-strip", inlet_strip(scene)),
        block("licensed-circuits", _circuits(scene)),
        block("licensed-mend", _mend(scene)),
        block("licensed-states", states_table(scene.plan.shore, measured=True)),
        block("licensed-open", _open(scene)),
        block("licensed-results", _results(scene)),
        block(
            "licensed-foot",
            tag("p", tag("button", "Print this sheet", type="button", data_local="print"),
                class_="actions"),
            foot(scene),
        ),
    )  # fmt: skip


def _figures(scene: Scene) -> Html:
    plan = scene.plan.shore
    load, feed = load_answer(plan, plan.planned), feed_answer(plan)
    if load is None or feed is None:
        return tag("p", no_load_words(plan), class_="empty")
    lost = (
        f"{said(feed.lost)} V, {said(feed.share * 100, 2)} %" if not feed.missing else "not known"
    )
    pairs = [
        ("service", f"{load.service.name}, {said(load.service.hertz)} Hz"),
        ("planned together", f"{said(load.watts, 4)} W, {said(load.worst.now.current)} A"),
        ("share of the rating", f"{round(load.worst.now.share * 100)} %"),
        (f"at {said(load.weak_volts)} V", f"{said(load.worst.weak.current)} A"),
        ("lost, dock to main, full load", lost),
    ]
    if load.neutral is not None:
        pairs.append(("neutral", f"{said(load.neutral)} A"))
    return joined(figures(*pairs), tag("p", load_verdict(load), f" {load.sentence}"))


def _circuits(scene: Scene) -> Html | None:
    plan = scene.plan.shore
    if not plan.circuits:
        return None
    labels = ("Circuit", "Load", "Breaker", "Interrupts", "Conductor", "Insulation", "Bundle",
              "All on", "Planned", "Leg", "Outlets", "Verdict")  # fmt: skip
    return joined(
        tag("h2", "AC circuits"),
        tag(
            "div",
            tag("table", head(*labels), tag("tbody", *(_row(scene, one) for one in plan.circuits)),
                class_="grid cards stack"),
            class_="scroll", tabindex="0", role="region", aria_label="AC circuits",
        ),
    )  # fmt: skip


def _row(scene: Scene, circuit: AcCircuit) -> Html:
    plan = scene.plan.shore
    whole = circuit.supply == "inlet"
    watts = sum(one.appliance.watts for one in circuit.items)
    names = ", ".join(one.appliance.name for one in circuit.items)
    read = (f"{names} {said(watts, 4)} W",) if names else ()
    loads = (*read, *unread_words(circuit))
    main = plan.main
    breaks, heat = main.interrupts if whole else main.branches_interrupt, circuit.insulation
    outlets = circuit.place or UNKNOWN
    if circuit.outlets_open is not None:
        mark = f"{said(circuit.outlets_open * 1000)} mA" if circuit.outlets_open else "no leakage"
        outlets = f"{outlets}, {mark}"
    return tag(
        "tr",
        tag("th", f"{circuit.ident} {circuit.name}", scope="row"),
        tag("td", "all" if whole else "; ".join(loads) or "none",
            data_label="Load", class_="wide"),
        tag("td", breaker_words(circuit), data_label="Breaker"),
        tag("td", f"{said(breaks, 4)} A" if breaks else UNKNOWN, data_label="Interrupts"),
        tag("td", str(circuit.size) if circuit.size else UNKNOWN, data_label="Conductor"),
        tag("td", warmth(heat, scene.units) if heat else UNKNOWN, data_label="Insulation"),
        tag("td", str(circuit.bundle) if circuit.bundle else UNKNOWN, data_label="Bundle"),
        tag("td", ampere_words(plan, circuit), data_label="All on"),
        tag("td", ampere_words(plan, circuit, planned=True), data_label="Planned"),
        tag("td", circuit.leg, data_label="Leg"),
        tag("td", "" if whole else outlets, data_label="Outlets"),
        tag("td", branch_verdict(plan, circuit), data_label="Verdict"),
    )  # fmt: skip


def _mend(scene: Scene) -> Html:
    found = [one for one in findings_of(scene.plan) if one.who is Who.LICENSED]
    rows = [
        tag(
            "li",
            severity(one),
            f" {one.words} {one.mend} ",
            tag("span", str(one.rule.source), class_="source"),
        )
        for one in found
    ]
    body = tag("ul", *rows, class_="list") if rows else tag(
        "p", "Nothing found in what was entered.", class_="empty"
    )  # fmt: skip
    return joined(tag("h2", "To mend"), body)


def _open(scene: Scene) -> Html | None:
    wanting = [
        part.words for one in shore_asked(scene.plan) for part in one.parts if not part.weighs
    ]
    if not wanting:
        return None
    return joined(
        tag("h2", "Not known yet"), tag("ul", *(tag("li", one) for one in wanting), class_="list")
    )


def _results(scene: Scene) -> Html:
    rows = [
        tag(
            "tr",
            tag("td", one.name, data_label=RESULT[0]),
            tag("td", one.found, data_label=RESULT[1], class_="wide"),
            tag("td", one.result or "not stated", data_label=RESULT[2]),
            tag("td", one.person or "nobody named", data_label=RESULT[3]),
            tag("td", one.date, data_label=RESULT[4]),
        )
        for one in scene.plan.shore.records
    ]
    empty = [
        tag("tr", *(tag("td", blank(), data_label=label) for label in RESULT), class_="print-only")
        for _ in range(BLANK_ROWS)
    ]
    return joined(
        tag("h2", "Results, by a licensed person only"),
        tag("table", head(*RESULT), tag("tbody", *rows, *empty), class_="grid cards"),
        tag("p", *(joined(f"{one}: ", blank(), " ") for one in SIGNED), class_="print-only signed"),
    )
