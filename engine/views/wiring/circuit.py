"""One circuit: its verdict, the run as a strip with volts, the fuse window, and its fields."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.circuits import answers_of
from engine.check.network import network_answer
from engine.check.users import used_in
from engine.check.wire import percent
from engine.plan.edit import rows_of
from engine.units import fixed, said, words
from engine.views.home.home import banner
from engine.views.parts.cautions import MEASURING, SHORT_CIRCUIT, caution
from engine.views.parts.foot import foot
from engine.views.parts.html import Block, Html, block, joined, tag
from engine.views.parts.say import beside, button, figures, link, titled, verdict, why
from engine.views.wiring.circuit_forms import forms
from engine.views.wiring.run_pictures import strip, window_scale
from engine.views.wiring.work import work_notes

if TYPE_CHECKING:
    from engine.check.circuits import CircuitAnswer
    from engine.check.part import Part
    from engine.views.parts.scene import Scene


def circuit_page(scene: Scene, ident: str) -> tuple[Block, ...]:
    """Return one circuit's page."""
    found = answers_of(scene.plan)
    answer = next((one for one in found if one.circuit.ident == ident), None)
    back = link("wiring/circuits", "DC circuits", class_="crumb")
    if answer is None:
        return (
            block("circuit-head", back, tag("h1", "No such circuit"),
                  tag("p", f"{ident} is not in this plan. It may be deleted.", class_="empty")),
        )  # fmt: skip
    circuit = answer.circuit
    path = f"circuits.{ident}"
    others = ((f"wiring/circuits/{one.circuit.ident}", _short(one), one is answer) for one in found)
    shared = network_answer(
        scene.plan, used_in(scene.plan, scene.condition), scene.level, circuit.ident
    )
    return (
        block("circuit-beside", beside("Circuits", others), class_="beside"),
        block("circuit-head", banner(scene), back, tag("h1", titled(ident, circuit.name))),
        block("circuit-verdict", _line(answer), class_="sticky"),
        block("circuit-answer", _answer(answer)),
        block("circuit-strip", strip(scene, answer, shared)),
        block("circuit-window", window_scale(answer)),
        *forms(scene, path, circuit),
        block("circuit-loads", _loads(scene, ident)),
        block("circuit-work", work_notes(scene, answer)),
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


def _line(answer: CircuitAnswer) -> Html:
    """Return the verdict in one line, which stays in sight while fields are changed."""
    governing = f" {answer.governing}" if answer.governing else ""
    words = tag("span", governing, class_="known")
    return tag("p", answer.circuit.ident, " ", verdict(answer.verdict), words, class_="line")


def _short(answer: CircuitAnswer) -> Html:
    circuit = answer.circuit
    return joined(f"{circuit.ident} {circuit.name} ", verdict(answer.verdict))


def _answer(answer: CircuitAnswer) -> Html:
    asked = [part for part in answer.parts if part.weighs]
    unasked = [part for part in answer.parts if not part.weighs]
    if answer.wire is None:
        return tag(
            "div", _unknown(answer), _parts(asked), why_missing(unasked)
        )  # fmt: skip
    telling = [part for part in asked if part.verdict == answer.verdict]
    main = telling[0] if telling else asked[0]
    others = [part for part in asked if part is not main]
    missing = f" Not known: {words(answer.missing)}." if answer.missing else ""
    return tag(
        "div",
        tag(
            "p",
            verdict(answer.verdict),
            f" {main.words}",
            joined(" ", main.mend) if main.mend else None,
            missing,
            tag("span", f" Governing: {answer.governing}.", class_="known"),
            class_="answer",
        ),
        _parts(others),
        why_missing(unasked),
        _sizes(answer),
        why("Why these numbers?", answer.working, f"why-{answer.circuit.ident}"),
    )


def _unknown(answer: CircuitAnswer) -> Html:
    missing = words(answer.missing)
    choice = answer.choice
    buy = None
    if choice and choice.size:
        governs = f" is enough; {choice.governing.name} governs."
        buy = joined(" For this run ", tag("b", str(choice.size)), governs)
    return tag(
        "p",
        verdict(answer.verdict),
        f" Enter {missing}." if missing else " ",
        buy,
        class_="answer",
    )


def _parts(parts: list[Part]) -> Html | None:
    rows = [
        tag(
            "li",
            verdict(part.verdict),
            f" {part.words} {part.mend} ",
            tag("span", part.rule.name, class_="known"),
        )
        for part in parts
    ]
    return tag("ul", *rows, class_="list") if rows else None


def why_missing(parts: list[Part]) -> Html | None:
    """Return what could not be asked or called, folded away."""
    if not parts:
        return None
    rows = [tag("li", verdict(part.verdict), f" {part.words} {part.mend}") for part in parts]
    return tag(
        "details",
        tag("summary", f"Not asked yet: {len(parts)}"),
        tag("ul", *rows, class_="list"),
        class_="why",
        id="circuit-open",
    )


def _sizes(answer: CircuitAnswer) -> Html | None:
    wire, choice = answer.wire, answer.choice
    if wire is None or choice is None:
        return None
    by_rule = f"{fixed(wire.drop, 2)} V, {percent(wire.share.likely, 3)}"
    return figures(
        ("least for the drop", str(choice.for_drop or "none")),
        ("least for heat", str(choice.for_heat or "none")),
        ("size to buy", str(choice.size or "none")),
        ("drop by the rule", by_rule),
        ("drop by physics", f"{fixed(wire.physical, 2)} V"),
        ("carries", f"{said(wire.carries)} A"),
    )


def _loads(scene: Scene, ident: str) -> Html | None:
    rows = [row for row in rows_of(scene.document, "loads") if row.get("circuit") == ident]
    fed = [one for one in scene.plan.circuits if one.fed_from == ident]
    if not rows and not fed:
        return None
    links = [link(f"energy/use/{row['id']}", f"{row['id']} {row.get('name', '')}") for row in rows]
    links += [link(f"wiring/circuits/{one.ident}", f"{one.ident} {one.name}") for one in fed]
    heading = "Circuits and loads on it" if fed else "Loads on it"
    return joined(
        tag("h2", heading), tag("ul", *(tag("li", one) for one in links), class_="list")
    )  # fmt: skip
