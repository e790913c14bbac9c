"""Forms: each field is drawn from its declaration, and keeps what was typed."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from engine.field import CHOICE, SIZE, TEXT, YES_NO
from engine.plan.edit import value_at
from engine.plan.fields import field_at
from engine.units import FRACTION, NUMBER, TEMPERATURE
from engine.views.parts.html import Html, escaped, tag
from engine.views.parts.say import SHORT, echo

if TYPE_CHECKING:
    from engine.field import Field
    from engine.problem import Problem
    from engine.views.parts.scene import Scene


LONG = {"note", "ladder", "changes"}
"""Fields with room for more than a line."""


def ident_of(path: str) -> str:
    """Return the id of a field's element.

    Examples
    --------
    >>> ident_of("loads.L11.draw")
    'f-loads-L11-draw'
    """
    return "f-" + path.replace(".", "-")


def problem_at(scene: Scene, path: str) -> Problem | None:
    """Return what is wrong with a field's entry, if anything."""
    return scene.refused.get(path) or scene.plan.problem_at(path)


def typed_at(scene: Scene, path: str) -> str:
    """Return what stands in a field: the entry that was refused, or the plan's."""
    if path in scene.typed:
        return scene.typed[path]
    return value_at(scene.document, path)


def unit_of(scene: Scene, field: Field) -> str:
    """Return the unit a bare figure means in a field, as it is shown."""
    if field.kind is FRACTION:
        return "%"
    unit = field.bare or scene.units.of(field.kind)
    return SHORT.get(unit, unit)


def entry(scene: Scene, path: str, label: str = "", *, help_: bool = True) -> Html:
    """Return one field of the plan: label, control, unit, echo, help and problem."""
    field = field_at(path)
    return control(
        field,
        path,
        typed_at(scene, path) or field.default,
        problem_at(scene, path),
        scene,
        label=label or field.label,
        help_=help_,
    )


def circuit_choice(scene: Scene, path: str, none: str, but: str = "") -> Html:
    """Return a field that names a circuit as a choice of those in the plan.

    ``none`` is what no circuit means there; ``but`` is left out of the list.
    """
    text = typed_at(scene, path).strip().upper()
    others = [one for one in scene.plan.circuits if one.ident != but]
    choices = [("none", none), *((one.ident, f"{one.ident} {one.name}"[:60]) for one in others)]
    if text and text not in {value for value, _ in choices}:
        choices.append((text, f"{text}, which is not here"))
    field = replace(
        field_at(path), kind=CHOICE, choices=tuple(choices), default="none", help=""
    )  # fmt: skip
    return control(field, path, text or "none", problem_at(scene, path), scene)


def control(  # noqa: PLR0913 - what a labelled control is made of
    field: Field,
    name: str,
    text: str,
    problem: Problem | None,
    scene: Scene,
    *,
    label: str = "",
    help_: bool = True,
) -> Html:
    """Return a labelled control for a declaration."""
    ident = ident_of(name)
    label = label or field.label
    if field.kind is YES_NO:
        return tick(name, label, on=(text or field.default) == "yes")
    notes = []
    if problem:
        notes.append(tag("p", str(problem.at("")), class_="problem", id=f"{ident}-p"))
    said_as = echo(field, text, scene.units) if field.kind not in (TEXT, SIZE, CHOICE) else ""
    if said_as and not problem:
        notes.append(tag("p", said_as, class_="echo", id=f"{ident}-e"))
    if help_ and field.help:
        notes.append(tag("p", field.help, class_="help", id=f"{ident}-h"))
    unit = "" if field.kind in (TEXT, SIZE, CHOICE) else unit_of(scene, field)
    shown = f"{label} ({unit})" if unit else label
    described = f"{ident}-p" if problem else (f"{ident}-h" if help_ and field.help else None)
    inner = (
        select(field, name, text, described)
        if field.kind is CHOICE
        else box(field, name, text, described, invalid=problem is not None)
    )
    suffix = tag("span", unit, class_="unit", aria_hidden="true") if unit else None
    return tag(
        "div",
        tag("label", shown, for_=ident),
        tag("div", inner, suffix, class_="control"),
        *notes,
        class_="field",
    )


def box(field: Field, name: str, text: str, described: str | None, *, invalid: bool) -> Html:
    """Return a text box; the keyboard follows the kind, and nothing typed is cut."""
    if field.name in LONG:
        return tag(
            "textarea",
            Html(escaped(text)),
            name=name,
            id=ident_of(name),
            rows=3,
            aria_invalid="true" if invalid else None,
            aria_describedby=described,
        )
    numeric = field.kind not in (TEXT, SIZE, TEMPERATURE)
    return tag(
        "input",
        type="text",
        name=name,
        id=ident_of(name),
        value=text,
        inputmode="decimal" if numeric and field.kind is NUMBER else None,
        autocomplete="off",
        autocapitalize="off" if field.kind is not TEXT else None,
        spellcheck="false",
        aria_invalid="true" if invalid else None,
        aria_describedby=described,
    )


def select(
    field: Field, path: str, text: str, described: str | None = None, name: str = ""
) -> Html:
    """Return a choice; “not known” is always one of them. Its name is for those without a label."""
    chosen = text or field.default
    blank = None if field.default else tag("option", "not known", value="", selected=not chosen)
    options = [
        tag("option", _option(field, value, meaning), value=value, selected=value == chosen)
        for value, meaning in field.choices
    ]
    return tag(
        "select",
        blank,
        *options,
        name=path,
        id=ident_of(path),
        aria_label=name or None,
        aria_describedby=described,
    )


def _option(field: Field, value: str, meaning: str) -> str:
    return value if field.name.endswith("_by") else meaning


def tick(name: str, label: str, *, on: bool) -> Html:
    """Return a tick box with its label as one target."""
    ident = ident_of(name)
    return tag(
        "div",
        tag("input", type="checkbox", name=name, id=ident, checked=on),
        tag("label", label, for_=ident),
        class_="tick",
    )


def cell(scene: Scene, path: str, label: str) -> Html:
    """Return a bare control for a table cell, named for those who do not see the heading."""
    field = field_at(path)
    text = typed_at(scene, path)
    problem = problem_at(scene, path)
    ident = ident_of(path)
    note = tag("span", str(problem.at("")), class_="problem", id=f"{ident}-p") if problem else None
    inner = tag(
        "input",
        type="text",
        name=path,
        id=ident,
        value=text,
        class_="editable",
        autocomplete="off",
        spellcheck="false",
        aria_label=label,
        aria_invalid="true" if problem else None,
        aria_describedby=f"{ident}-p" if problem else None,
    )
    if field.kind is CHOICE:
        inner = select(field, path, text, name=label)
    return tag("span", inner, note, class_="cell")
