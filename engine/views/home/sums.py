"""Quick sums: one question on one small page, linkable with its inputs."""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import urlencode

from engine.finding import Verdict
from engine.late import here
from engine.problem import Problem
from engine.sums import SUMS, TITLES
from engine.sums.sum import Outcome, Sum, Value, inputs_of
from engine.sums.titles import LATE_TITLES
from engine.units import words
from engine.views.home.home import quick_sums
from engine.views.parts.cautions import EXHAUST, caution, dangers
from engine.views.parts.form import control
from engine.views.parts.html import Block, Html, block, tag
from engine.views.parts.late import fetching
from engine.views.parts.say import button, figures, link, verdict, why

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene

FIRST = {
    "conductor": 5,
    "runtime": 5,
    "protection": 5,
    "fault": 6,
    "locked-rotor": 5,
    "wind-day": 3,
    "sun-day": 5,
}
"""How many inputs stand in front; the rest have defaults and are folded."""


def route_of(name: str, given: dict[str, str]) -> str:
    """Return the address of a sum with its inputs.

    Examples
    --------
    >>> route_of("drop", {"run": "16 ft"})
    'sum/drop?run=16+ft'
    """
    query = urlencode({key: value for key, value in given.items() if value})
    return f"sum/{name}" + (f"?{query}" if query else "")


def sum_page(scene: Scene, name: str) -> tuple[Block, ...]:
    """Return the page of one quick sum."""
    back = link("home", "Home", class_="crumb")
    if name not in SUMS:
        return (block("sum-head", back, tag("h1", "Quick sums"), quick_sums()),)
    if name in LATE_TITLES and not here():
        return (block("sum-head", back, tag("h1", TITLES[name])), fetching(scene))
    one = SUMS[name]
    given = {key: text for key, text in scene.sum_inputs.items() if text}
    inputs, problems = inputs_of(one, given)
    outcome: Outcome | None = None
    if not problems:
        try:
            outcome = one.answer(inputs)
        except Problem as problem:
            problems = [problem]
    shown = _shown(one, given, problems, scene.quiet_field)
    return (
        block(
            "sum-head",
            back,
            tag("h1", one.title),
            dangers("sum", swim=bool(one.swim)) if one.caution else None,
            caution(EXHAUST, "sum-exhaust") if one.exhaust else None,
            tag("p", one.asks, class_="note"),
        ),
        block("sum-answer", _answer(one, given, outcome, problems)),
        block("sum-form", _form(scene, one, given, shown)),
        block("sum-share", _share(scene, one, given) if outcome else None),
        block("sum-others", tag("h2", "Other quick sums"), quick_sums()),
    )


def _shown(
    one: Sum, given: dict[str, str], problems: list[Problem], quiet: str
) -> dict[str, Problem]:
    """Return the problems to show beside fields: not of empty ones, nor of the one being typed."""
    return {
        problem.where: problem
        for problem in problems
        if given.get(problem.where) and f"sum.{one.name}.{problem.where}" != quiet
    }


def _within(label: str) -> str:
    """Return a label within a sentence; AC and DC stay as they are."""
    return label if label[:2].isupper() else label.lower()


def _answer(
    one: Sum, given: dict[str, str], outcome: Outcome | None, problems: list[Problem]
) -> Html:
    if outcome is None:
        wanted = [p for p in problems if not given.get(p.where)]
        labels = {declared.name: _within(declared.label) for declared in one.fields}
        names = words(labels.get(p.where, p.where) for p in wanted)
        ask = f"Enter {names}." if wanted else "An entry below cannot be read."
        return tag("p", ask, class_="empty")
    pairs = ((value.label or key, _figure(key, value)) for key, value in outcome.answers.items())
    return tag(
        "div",
        tag("p", outcome.words, class_="answer"),
        *(tag("p", note, class_="note") for note in outcome.cautions if note != outcome.words),
        figures(*pairs),
        why("Why these numbers?", outcome.working, f"why-{one.name}"),
    )


def _figure(key: str, value: Value) -> str:
    """Return a figure as its words; a verdict keeps its shape."""
    return verdict(Verdict(str(value))) if key == "verdict" else str(value)


def _form(scene: Scene, one: Sum, given: dict[str, str], shown: dict[str, Problem]) -> Html:
    count = FIRST.get(one.name, len(one.fields))
    drawn = [
        control(
            declared,
            f"sum.{one.name}.{declared.name}",
            given.get(declared.name, declared.default),
            shown.get(declared.name),
            scene,
        )
        for declared in one.fields
    ]
    rest = None
    if drawn[count:]:
        rest = tag(
            "details",
            tag("summary", "Insulation, engine space, bundle and the rest"
                if one.name == "conductor" else "The rest"),
            tag("div", *drawn[count:], class_="fields"),
            class_="why",
            id=f"rest-{one.name}",
        )  # fmt: skip
    return tag("form", tag("div", *drawn[:count], class_="fields"), rest, data_live=True)


def _share(scene: Scene, one: Sum, given: dict[str, str]) -> Html:
    return tag(
        "p",
        button("Copy a link to this sum", "copy-sum", route_of(one.name, given)),
        button("Keep it as a circuit", "keep-circuit")
        if one.name == "conductor" and scene.mine
        else None,
        class_="actions",
    )
