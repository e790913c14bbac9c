"""A variant: the plan with some of its fields changed, and what those changes are."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, TypeAlias

from engine.plan.edit import row_of, rows_of, value_at, with_row, with_value
from engine.plan.fields import ROWS, field_at
from engine.problem import Problem, quoted

if TYPE_CHECKING:
    from collections.abc import Iterable

    from engine.field import Field
    from engine.plan.document import Document, Row

Changes: TypeAlias = tuple[tuple[str, str], ...]
"""Paths and texts, shape ``(n, 2)``; a row called new, new2 … is added."""

NEW: Final = re.compile(r"new\d{0,2}")
MOST_CHANGES: Final = 40
MEND: Final = "Write a line such as bank.capacity = 380 Ah."


@dataclass(frozen=True, slots=True)
class Variant:
    """A plan with some of its fields changed."""

    ident: str
    name: str
    changes: Changes


@dataclass(frozen=True, slots=True)
class Told:
    """One change in words: whose field, what stood there, and what stands there now."""

    path: str
    what: str
    before: str
    after: str


def changes_in(text: str) -> Changes:
    """Return the changes in a text of lines.

    Raises
    ------
    Problem
        For the first line that is no change of a field of the plan.

    Examples
    --------
    >>> changes_in("bank.capacity = 380 Ah")
    (('bank.capacity', '380 Ah'),)
    """
    found = []
    for line in text.splitlines():
        if not line.strip():
            continue
        path, mark, value = line.partition("=")
        if not mark:
            raise Problem("", f"{quoted(line)} changes nothing.", MEND)
        found.append((path.strip(), value.strip()))
        _field(found[-1][0])
    if len(found) > MOST_CHANGES:
        raise Problem("", f"{len(found)} changes are many.", f"Enter {MOST_CHANGES} at most.")
    return tuple(found)


def text_of(changes: Iterable[tuple[str, str]]) -> str:
    """Return changes as lines of text."""
    return "\n".join(f"{path} = {value}" for path, value in changes)


def _field(path: str) -> Field:
    try:
        if path.partition(".")[0] != "variants":
            return field_at(path)
    except (KeyError, ValueError):
        pass
    raise Problem("", f"{quoted(path)} is no field of a plan.", MEND)


def changed(document: Document, changes: Changes) -> Document:
    """Return the document with the changes made.

    Parameters
    ----------
    document : Document
        The plan.
    changes : tuple of tuple of str
        Shape ``(n, 2)``.

    Raises
    ------
    Problem
        If there is no such field or row, or a text cannot be kept.

    Examples
    --------
    >>> changed({"format": 1}, (("sources.new.kind", "wind"),))["sources"]
    [{'id': 'S01', 'kind': 'wind'}]
    """
    added: dict[tuple[str, str], Row] = {}
    for path, text in changes:
        _field(path)
        part, *rest = path.split(".")
        if part in ROWS and NEW.fullmatch(rest[0]):
            added.setdefault((part, rest[0]), {})[rest[1]] = text
        else:
            document = with_value(document, path, text)
    for (part, _), row in added.items():
        document, _ = with_row(document, part, row)
    return document


def variants_of(document: Document) -> tuple[tuple[Variant, Problem | None], ...]:
    """Return the variants a document keeps, each with what is wrong with it, if anything.

    Parameters
    ----------
    document : Document
        The plan.
    """
    found: list[tuple[Variant, Problem | None]] = []
    for row in rows_of(document, "variants"):
        ident = row["id"]
        name = row.get("name", "") or ident
        try:
            changes = changes_in(row.get("changes", ""))
            changed(document, changes)
        except Problem as problem:
            wrong = problem.at(f"variants.{ident}.changes")
            found.append((Variant(ident, name, ()), wrong))
        else:
            found.append((Variant(ident, name, changes), None))
    return tuple(found)


def told(document: Document, changes: Changes) -> tuple[Told, ...]:
    """Return changes in words, in their order.

    Parameters
    ----------
    document : Document
        The plan before them.
    changes : tuple of tuple of str
        Shape ``(n, 2)``; of fields that exist.
    """
    return tuple(_told(document, path, text) for path, text in changes)


def _told(document: Document, path: str, text: str) -> Told:
    field = field_at(path)
    part, *rest = path.split(".")
    label = field.label[0].lower() + field.label[1:]
    before = ""
    if part not in ROWS:
        whose = f"{part.capitalize()}, {label}"
        before = value_at(document, path)
    elif NEW.fullmatch(rest[0]):
        whose = f"New in {part}, {label}"
    else:
        row = row_of(document, part, rest[0])
        before = row.get(rest[1], "")
        whose = f"{_named(part, row)}, {label}"
    return Told(path, whose, _shown(field, before), _shown(field, text))


def _named(part: str, row: Row) -> str:
    if row.get("name"):
        return row["name"]
    kind = dict(ROWS[part]["kind"].choices).get(row.get("kind", "")) if "kind" in ROWS[part] else ""
    return f"{row['id']} {kind}" if kind else row["id"]


def _shown(field: Field, text: str) -> str:
    """Return a text, or the meaning of a choice; “not stated” where nothing stands."""
    stated = text or field.default
    return dict(field.choices).get(stated, stated) or "not stated"
