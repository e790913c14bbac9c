"""AC circuits: their table, and the page of one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.shore_dock import no_load_words, wrong_dock
from engine.check.shore_panel import branch_asked, on_it
from engine.finding import Verdict
from engine.units import said
from engine.views.home.home import banner
from engine.views.parts.cautions import dangers
from engine.views.parts.foot import foot
from engine.views.parts.form import entry
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import beside, button, link, titled, verdict
from engine.views.wiring.shore_asked import no_plug

if TYPE_CHECKING:
    from engine.plan.shore_parts import AcCircuit, ShorePlan
    from engine.views.parts.scene import Scene

FIELDS = (
    "name", "supply", "breaker", "poles", "size", "insulation", "bundle", "appliances", "outlets",
    "outlet_rating", "place", "ground_fault",
)  # fmt: skip
MORE = ("plates", "leg", "note")
DASH = "–"


def circuits_table(scene: Scene) -> Html:
    """Return every AC circuit with what it carries and its verdict."""
    plan = scene.plan.shore
    table = None
    if plan.circuits:
        table = tag(
            "table",
            head("Circuit", "Breaker", "Conductor", "Appliances", "Planned", "All on", "Verdict"),
            tag("tbody", *(_row(scene, one) for one in plan.circuits)),
            class_="grid cards stack",
        )
    return joined(
        tag("h2", "AC circuits"),
        table,
        tag("p", button("Add an AC circuit", "add-ac", class_="main"), class_="actions"),
    )


def breaker_words(circuit: AcCircuit) -> str:
    """Return a breaker in a few words."""
    if circuit.breaker is None:
        return "not known"
    poles = {1: ", one pole", 2: ", two poles"}.get(circuit.poles or 0, "")
    return f"{said(circuit.breaker)} A{poles}"


def ampere_words(plan: ShorePlan, circuit: AcCircuit, *, planned: bool = False) -> str:
    """Return what a circuit carries; a dash where no load is reckoned."""
    if no_load_words(plan):
        return DASH
    amps = on_it(plan, circuit, planned=planned)
    behind = plan.circuits if circuit.supply == "inlet" else (circuit,)
    if not any(one.unknown for one in behind if one.planned or not planned):
        return f"{said(amps)} A"
    return f"at least {said(amps)} A" if amps else "not known"


def unread_words(circuit: AcCircuit) -> tuple[str, ...]:
    """Return a circuit's entries whose watts are not known, shape ``(n,)``, as they are shown."""
    return tuple(f"{one}: watts not known" for one in circuit.unknown)


def branch_verdict(plan: ShorePlan, circuit: AcCircuit) -> str | Html:
    """Return the verdict on a circuit; on a dock of other volts only what is wrong on any dock."""
    if circuit.supply == "inlet":
        return "the main"
    found = branch_asked(plan, circuit).verdict
    grave = found in {Verdict.STOP, Verdict.SHOULD}
    return verdict(found) if grave or not wrong_dock(plan) else DASH


def _row(scene: Scene, circuit: AcCircuit) -> Html:
    plan = scene.plan.shore
    read = (f"{one.appliance.name} {said(one.appliance.watts, 4)} W" for one in circuit.items)
    names = ", ".join((*read, *unread_words(circuit)))
    whole = circuit.supply == "inlet"
    return tag(
        "tr",
        tag("th", link(f"wiring/shore/{circuit.ident}", f"{circuit.ident} {circuit.name}",
                       class_="whole"), scope="row"),
        tag("td", breaker_words(circuit), data_label="Breaker"),
        tag("td", str(circuit.size) if circuit.size else "not known", data_label="Conductor"),
        tag("td", "all of them" if whole else names or "none entered", data_label="Appliances",
            class_="wide"),
        tag("td", ampere_words(plan, circuit, planned=True), data_label="Planned"),
        tag("td", ampere_words(plan, circuit), data_label="All on"),
        tag("td", branch_verdict(plan, circuit), data_label="Verdict"),
        id=f"row-{circuit.ident}",
    )  # fmt: skip


def ac_circuit_page(scene: Scene, ident: str) -> tuple[Block, ...]:
    """Return one AC circuit's page."""
    plan = scene.plan.shore
    circuit = next((one for one in plan.circuits if one.ident == ident), None)
    back = link("wiring/shore", "Shore power", class_="crumb")
    if circuit is None:
        return (
            block("ac-head", back, tag("h1", "No such AC circuit"), dangers("ac"),
                  tag("p", f"{ident} is not in this plan. It may be deleted.", class_="empty")),
        )  # fmt: skip
    path = f"ac.{ident}"
    others = (
        (f"wiring/shore/{one.ident}", f"{one.ident} {one.name}", one is circuit)
        for one in plan.circuits
    )
    return (
        block("ac-beside", beside("AC circuits", others), class_="beside"),
        block(
            "ac-head",
            banner(scene),
            back,
            tag("h1", titled(ident, circuit.name)),
            dangers("ac", brief=True),
        ),
        block("ac-gravest", _stop(scene)),
        block("ac-answer", _answer(scene, circuit)),
        block(
            "ac-form",
            tag("h2", "The circuit"),
            tag("div", *(entry(scene, f"{path}.{name}") for name in FIELDS), class_="fields"),
            tag("div", entry(scene, f"{path}.together"), entry(scene, f"{path}.engine_space"),
                class_="ticks"),
        ),
        block(
            "ac-more",
            tag("h2", "Plates, leg, note"),
            tag("div", *(entry(scene, f"{path}.{name}") for name in MORE), class_="fields"),
        ),
        block(
            "ac-change",
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
    )  # fmt: skip


def _stop(scene: Scene) -> Html | None:
    """Return that nobody ought to plug in, whatever the verdict on this circuit alone is."""
    stop = no_plug(scene)
    if stop is None:
        return None
    return tag("p", stop, " Why, is said on ", link("wiring/shore", "Shore power"), ".",
               class_="answer")  # fmt: skip


def _answer(scene: Scene, circuit: AcCircuit) -> Html:
    plan = scene.plan.shore
    if circuit.supply == "inlet":
        return tag("p", "This is the main itself; it is asked on the page of shore power.",
                   class_="answer")  # fmt: skip
    asked = branch_asked(plan, circuit)
    rows = [
        tag("li", verdict(part.verdict), f" {part.words} {part.mend} ",
            tag("span", part.rule.name, class_="known"))
        for part in sorted(asked.parts, key=lambda part: part.verdict is Verdict.FINE)
    ]  # fmt: skip
    return tag("ul", *rows, class_="list")
