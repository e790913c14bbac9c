"""What a circuit states: its run, where it runs, its protection, and what was read."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.views.parts.form import circuit_choice, entry
from engine.views.parts.html import Block, Html, block, tag
from engine.views.parts.say import length

if TYPE_CHECKING:
    from engine.plan.parts import Circuit
    from engine.views.parts.scene import Scene

RUN: Final = ("run_by", "current", "current_by", "size", "allowed")
RUN_MORE: Final = ("legs", "bends", "parallel", "joints")
PLACE: Final = ("insulation", "bundle", "ambient", "function")
GUARD: Final = ("protection", "series", "to_protection", "protection_kind")
GUARD_MORE: Final = ("interrupting", "abreast", "far_end", "label_most", "stall")


def forms(scene: Scene, path: str, circuit: Circuit) -> tuple[Block, ...]:
    """Return the fields of one circuit; what is seldom needed is folded."""

    def fields(*names: str) -> Html:
        return tag("div", *(entry(scene, f"{path}.{name}") for name in names), class_="fields")

    def ticks(*names: str) -> Html:
        return tag("div", *(entry(scene, f"{path}.{name}") for name in names), class_="ticks")

    ident = circuit.ident
    return (
        block(
            "circuit-form",
            tag("h2", "The run"),
            tag(
                "div",
                entry(scene, f"{path}.name"),
                _run_field(scene, path, circuit),
                *(entry(scene, f"{path}.{name}") for name in RUN),
                circuit_choice(scene, f"{path}.fed_from", "the bank", ident),
                entry(scene, f"{path}.feeds"),
                class_="fields",
            ),
            _more("Legs, joints, conductors side by side", f"run-{ident}", fields(*RUN_MORE)),
        ),
        block(
            "circuit-place",
            tag("h2", "Where it runs"),
            fields(*PLACE),
            ticks("engine_space", "in_sheath"),
        ),
        block(
            "circuit-guard",
            tag("h2", "Its protection"),
            fields(*GUARD),
            ticks("continuous", "sheathed"),
            _more(
                "Interrupting rating, two sources, motors, labels",
                f"guard-{ident}",
                fields(*GUARD_MORE),
                ticks("self_limiting"),
            ),
        ),
        block(
            "circuit-rest",
            tag("h2", "Read aboard, and the rest"),
            fields("read_drop", "volts", "note"),
        ),
    )


def _more(label: str, ident: str, *content: Html) -> Html:
    return tag("details", tag("summary", label), *content, class_="why", id=f"more-{ident}")


def _run_field(scene: Scene, path: str, circuit: Circuit) -> Html:
    run = circuit.run
    there = None
    if run:
        there = tag("p", f"{length(2 * run.likely, scene.units)} there and back", class_="echo")
    return tag("div", entry(scene, f"{path}.run"), there, class_="run")
