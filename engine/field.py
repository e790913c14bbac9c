"""A field is declared once: name, label, unit, limits, help and caution.

Form, command line, validation text, documentation and plan all read that declaration.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import inf
from typing import Final

from engine.estimate import KNOWN_BY, Estimate
from engine.problem import Problem, quoted
from engine.units import FRACTION, Kind, Typed, read, said

TEXT: Final = Kind("text", "", "", "a few words")
CHOICE: Final = Kind("choice", "", "", "")
YES_NO: Final = Kind("yes or no", "", "", "yes")
SIZE: Final = Kind("size", "", "", "10 AWG, 10 SAE or 6 mm2")
"""A conductor's size; the conductors room reads it."""

YES: Final = {"yes", "y", "true", "on", "1"}
NO: Final = {"no", "n", "false", "off", "0", ""}


@dataclass(frozen=True, slots=True)
class Field:
    """One thing a person may state.

    ``least`` and ``most`` are hard limits in the kind's unit, ``above`` excludes the least
    itself; ``usual`` is what is seen aboard, beyond which the page asks again.
    ``choices`` maps each value to its meaning; with ``counted`` its place, from 1, or its first
    letters do as well. A quick sum goes on without one not ``needed``. ``like`` is what to type,
    where the kind's own example does not fit.
    """

    name: str
    label: str
    kind: Kind
    help: str = ""
    default: str = ""
    least: float = -inf
    most: float = inf
    above: bool = False
    usual: tuple[float, float] = (-inf, inf)
    choices: tuple[tuple[str, str], ...] = ()
    bare: str = ""
    caution: str = ""
    needed: bool = True
    counted: bool = False
    like: str = ""

    @property
    def example(self) -> str:
        """What to type, for instance."""
        return self.like or self.kind.example

    @property
    def unit(self) -> str:
        """The unit shown beside the field."""
        return "%" if self.kind is FRACTION else self.kind.shown


def by_name(*fields: Field) -> dict[str, Field]:
    """Return fields by their names, in their order."""
    return {field.name: field for field in fields}


@lru_cache(maxsize=16384)
def value_of(field: Field, text: str) -> Typed:
    """Return what was typed in a quantity field, within its limits.

    Raises
    ------
    Problem
        If it cannot be read or lies outside the limits.
    """
    typed = read(text, field.kind, field.bare)
    high = typed.high or 0.0
    if field.kind is FRACTION and typed.bare and high >= 1 and high > field.most:
        typed = read(text, field.kind, "percent")
    for end in (typed.low, typed.high):
        if end is None:
            continue
        if end > field.most or end < field.least or (field.above and end == field.least):
            raise Problem("", f"{quoted(text)}: {_outside(field, end)}", _limits(field))
    return typed


def _outside(field: Field, value: float) -> str:
    label = field.label[0].lower() + field.label[1:]
    if value <= field.least:
        word = "above" if field.above else "at least"
        return f"{label} must be {word} {_shown(field, field.least)}."
    return f"{label} of {_shown(field, value)} is more than this program can believe."


def _limits(field: Field) -> str:
    if field.most == inf:
        return f"Enter {field.kind.a_word}, such as {field.example}."
    least = _shown(field, 0.0 if field.least == -inf else field.least)
    if field.above:
        return f"Enter more than {least}, up to {_shown(field, field.most)}."
    return f"Enter {least} to {_shown(field, field.most)}."


def _shown(field: Field, value: float) -> str:
    if field.kind is FRACTION:
        value *= 100
    space = " " if field.unit else ""
    return f"{said(value, 4)}{space}{field.unit}"


def estimate_of(
    field: Field, text: str, low: str = "", high: str = "", by: str = ""
) -> Estimate | None:
    """Return an estimate from its typed parts; None where it is not known.

    A range typed in the likely field counts unless low and high are given apart.

    Raises
    ------
    Problem
        If a part cannot be read, or the parts are out of order.
    """
    typed = value_of(field, text)
    ends = value_of(field, low), value_of(field, high)
    if typed.likely is None:
        if ends[0].likely is None or ends[1].likely is None:
            return None
        middle = (ends[0].likely + ends[1].likely) / 2
        typed = Typed(middle, middle, middle)
    known_by = by if by in KNOWN_BY else "estimate"
    least = typed.low if ends[0].likely is None else ends[0].likely
    most = typed.high if ends[1].likely is None else ends[1].likely
    assert least is not None  # noqa: S101 - a typed value has all three
    assert most is not None  # noqa: S101
    assert typed.likely is not None  # noqa: S101
    if not least <= typed.likely <= most:
        raise Problem(
            "",
            f"{said(least)}, {said(typed.likely)} and {said(most)} are not low, likely and high.",
            "Enter them from small to large.",
        )
    return Estimate(least, typed.likely, most, known_by)


def yes(text: str) -> bool:
    """Return a yes-or-no.

    Raises
    ------
    Problem
        If it is neither.

    Examples
    --------
    >>> yes("yes"), yes("")
    (True, False)
    """
    plain = text.strip().lower()
    if plain in YES:
        return True
    if plain in NO:
        return False
    raise Problem("", f"{quoted(text)} is neither yes nor no.", "Enter yes or no.")


def chosen(field: Field, text: str) -> str:
    """Return a choice, or the field's default where nothing is chosen.

    Raises
    ------
    Problem
        If it is not one of the choices.
    """
    plain = text.strip() or field.default
    names = [name for name, _ in field.choices]
    found = [name for name in names if name.lower() == plain.lower()]
    if field.counted and plain and not found:
        found = _counted(names, plain.lower())
    if found or not plain:
        return found[0] if found else ""
    raise Problem(
        "",
        f"{quoted(text)} is not a choice for {field.label.lower()}.",
        f"Choose {', '.join(names)}.",
    )


SHORTEST: Final = 3
"""Letters that tell one of the counted choices."""


def _counted(names: list[str], plain: str) -> list[str]:
    """Return the choice meant by its place from 1, or by its first letters."""
    if plain.isdecimal():
        return names[int(plain) - 1 : int(plain)] if 1 <= int(plain) <= len(names) else []
    begun = [name for name in names if len(plain) >= SHORTEST and name.lower().startswith(plain)]
    return begun if len(begun) == 1 else []
