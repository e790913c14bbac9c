"""Figures and words as a person reads them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.field import value_of
from engine.finding import Severity, Verdict
from engine.problem import Problem
from engine.units import (
    ANGLE,
    CLOCK,
    FRACTION,
    LATITUDE,
    LENGTH,
    LONGITUDE,
    NUMBER,
    TEMPERATURE,
    fixed,
    in_unit,
    of_day,
    on_earth,
    said,
)
from engine.views.parts.html import Html, joined, tag

if TYPE_CHECKING:
    from collections.abc import Iterable

    from engine.field import Field
    from engine.finding import Finding, Step
    from engine.views.parts.scene import Units

SHAPES: Final = {
    Verdict.FINE: "fine",
    Verdict.SHOULD: "care",
    Verdict.STOP: "stop",
    Verdict.CANNOT_SAY: "unsure",
    Verdict.NOT_KNOWN: "unknown",
}
ON_EARTH: Final = {LATITUDE, LONGITUDE}
SHORT: Final = {"degC": "°C", "degF": "°F", "horsepower": "hp"}
ONE: Final = {("1", "days"): "day"}


def capital(text: str) -> str:
    """Return a text with its first letter capital and the rest as it is."""
    return f"{text[:1].upper()}{text[1:]}"


def verdict(found: Verdict, word: str = "") -> Html:
    """Return a verdict as its word, or another, with its shape."""
    return tag("span", capital(word or found.value), class_=f"verdict {SHAPES[found]}")


def severity(found: Finding) -> Html:
    """Return how much a finding matters as its word; what only should be mended is no stop sign."""
    light = found.severity in {Severity.SHOULD, Severity.NOTE}
    shape = Verdict.SHOULD if light and found.verdict is Verdict.STOP else found.verdict
    return verdict(shape, found.severity.value)


def whole(value: float) -> str:
    """Return a charge to the whole, as estimates are said.

    Parameters
    ----------
    value : float
        Any unit. [1]

    Examples
    --------
    >>> whole(132.45), whole(0.4)
    ('132', '0.4')
    """
    return fixed(value, 0) if abs(value) >= 9.5 else said(value, 2)


def length(metres: float, units: Units) -> str:
    """Return a length in the unit chosen for showing.

    Parameters
    ----------
    metres : float
        The length. [m]
    units : Units
        Chosen for showing.
    """
    return f"{said(in_unit(metres, LENGTH, units.length))} {units.length}"


def warmth(celsius: float, units: Units) -> str:
    """Return a temperature in the unit chosen for showing.

    Parameters
    ----------
    celsius : float
        The temperature. [°C]
    units : Units
        Chosen for showing.
    """
    shown = in_unit(celsius, TEMPERATURE, units.temperature)
    return f"{fixed(shown, 0)} {SHORT[units.temperature]}"


def hours(value: float) -> str:
    """Return a time as people say it.

    Parameters
    ----------
    value : float
        The time. [h]

    Examples
    --------
    >>> hours(1.6), hours(0.6), hours(30.0)
    ('1 h 36 min', '36 min', '30 h')
    """
    minutes = round(value * 60)
    if minutes < 60:
        return f"{minutes} min"
    if minutes >= 20 * 60 or minutes % 60 == 0:
        return f"{round(minutes / 60)} h"
    return f"{minutes // 60} h {minutes % 60} min"


def echo(field: Field, text: str, units: Units) -> str:
    """Return how an entry was read, where that is not plain from the entry itself."""
    if not text or field.kind is NUMBER:
        return ""
    try:
        typed = value_of(field, text)
    except Problem:
        return ""
    if typed.likely is None:
        return "Not known, and counted so." if text.strip() else ""
    shown = _shown(field, typed.likely, units)
    if typed.low != typed.high and typed.low is not None and typed.high is not None:
        low, high = _shown(field, typed.low, units), _shown(field, typed.high, units)
        return f"Read as {shown}, {low} to {high}"
    plain = "".join(text.split()).replace(",", ".").replace("deg", "°").lower()
    known = "".join(shown.split()).lower()
    if field.kind in ON_EARTH:
        plain = plain.replace("°", "")
    return "" if plain == known else f"Read as {shown}"


def _shown(field: Field, value: float, units: Units) -> str:
    if field.kind is FRACTION:
        return f"{said(value * 100)} %"
    if field.kind in ON_EARTH:
        return on_earth(value, field.kind)
    if field.kind is CLOCK:
        return of_day(value)
    if field.kind is ANGLE:
        return f"{said(value, 4)}°"
    unit = units.of(field.kind)
    shown = said(in_unit(value, field.kind, unit), 4)
    return f"{shown} {ONE.get((shown, unit)) or SHORT.get(unit, unit)}"


def why(label: str, steps: Iterable[Step], ident: str, note: str = "") -> Html:
    """Return “Why this number?” with its working inside."""
    rows = [
        tag(
            "li",
            tag("b", step.what),
            ": ",
            step.formula,
            " = ",
            tag("b", step.value),
            tag("span", f" {step.source}", class_="source") if step.source else None,
        )
        for step in steps
    ]
    return tag(
        "details",
        tag("summary", label),
        tag("ol", *rows, class_="working"),
        tag("p", note, class_="note") if note else None,
        class_="why",
        id=ident,
    )


def link(route: str, *content: str | Html, **attributes: str) -> Html:
    """Return a link to a page of this program."""
    return tag("a", joined(*content), href=f"#{route}", **attributes)


def button(label: str, do: str, arg: str = "", class_: str = "", **more: str | bool) -> Html:
    """Return a button that asks the engine for something."""
    return tag(
        "button",
        label,
        type="button",
        data_do=do,
        data_arg=arg or None,
        class_=class_ or None,
        **more,
    )


def subpages(here: str, *pages: tuple[str, str]) -> Html:
    """Return the pages of a section, each a route and its words, with the open one marked."""
    links = (
        link(route, label, aria_current="page") if route == here else link(route, label)
        for route, label in pages
    )
    return tag("p", *(joined(one, " ") for one in links), class_="pages")


def blank() -> Html:
    """Return room to write on paper: a ruled line."""
    return tag("span", "____", class_="blank")


def figures(*pairs: tuple[str, str]) -> Html:
    """Return figures with their names, in one row where there is room."""
    rows = (tag("div", tag("dt", name), tag("dd", value)) for name, value in pairs)
    return tag("dl", *rows, class_="figures")


def titled(ident: str, name: str) -> str:
    """Return a row's heading; one without a name says so.

    Examples
    --------
    >>> titled("D05", "Fridge"), titled("D05", "D05")
    ('D05 · Fridge', 'D05 · no name yet')
    """
    return f"{ident} · {name if name != ident else 'no name yet'}"


def beside(label: str, rows: Iterable[tuple[str, str | Html, bool]]) -> Html:
    """Return the list a wide screen shows beside one of its rows: route, words, and here or not."""
    links = [
        tag("li", link(route, words, aria_current="true") if here else link(route, words))
        for route, words, here in rows
    ]
    return tag("nav", tag("ul", *links, class_="list"), aria_label=label)
