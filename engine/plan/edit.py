"""Edits: each takes a document and returns a new one; the old one stays as it was."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from engine.field import CHOICE, chosen
from engine.plan.document import plain_text
from engine.plan.fields import LETTERS, LONG, LONGEST_NAME, LONGEST_NOTE, MOST_ROWS, ROWS, SINGLE
from engine.problem import Problem, quoted

if TYPE_CHECKING:
    from engine.field import Field
    from engine.plan.document import Document, Row

LAST_ID: Final = 9999


def rows_of(document: Document, part: str) -> list[Row]:
    """Return the rows of a part; none where the plan has none."""
    rows: list[Row] = document.get(part, [])
    return rows


def row_of(document: Document, part: str, ident: str) -> Row:
    """Return one row.

    Raises
    ------
    Problem
        If there is no such row.
    """
    for row in rows_of(document, part):
        if row["id"] == ident:
            return row
    raise Problem(f"{part}.{ident}", f"There is no {quoted(ident)} here.", "It may be deleted.")


def value_at(document: Document, path: str) -> str:
    """Return the text at a path, empty where nothing was typed.

    Raises
    ------
    Problem
        If the row does not exist.
    """
    part, *rest = path.split(".")
    if part in SINGLE:
        found: dict[str, str] = document.get(part, {})
        return found.get(rest[0], "")
    return row_of(document, part, rest[0]).get(rest[1], "")


def with_value(document: Document, path: str, text: str) -> Document:
    """Return the document with one field set; an empty text removes it.

    Raises
    ------
    Problem
        If there is no such field or row, or the text is too long to keep.
    """
    part, *rest = path.split(".")
    known = SINGLE.get(part) or ROWS.get(part) or {}
    if len(rest) != (1 if part in SINGLE else 2) or rest[-1] not in known:
        raise Problem(path, f"{quoted(path)} is no field of a plan.", "Reload the page.")
    text = _kept(path, known[rest[-1]], text)
    if part in SINGLE:
        return {**document, part: _set(document.get(part, {}), rest[0], text)}
    rows = rows_of(document, part)
    row_of(document, part, rest[0])
    return {
        **document,
        part: [_set(row, rest[1], text) if row["id"] == rest[0] else row for row in rows],
    }


def _kept(path: str, field: Field, text: str) -> str:
    """Return a text as the plan keeps it; what it could not read back is refused here."""
    most = LONGEST_NOTE if field.name in LONG else LONGEST_NAME
    if len(text) > most:
        raise Problem(path, f"That is {len(text):,} characters.", f"Enter {most} at most.")
    if field.kind is CHOICE and text:
        try:
            return chosen(field, text)
        except Problem as problem:
            raise problem.at(path) from None
    return plain_text(text)


def _set(fields: dict[str, Any], name: str, text: str) -> dict[str, Any]:
    changed = {key: value for key, value in fields.items() if key != name or text}
    if text:
        changed[name] = text
    return changed


def next_id(document: Document, part: str) -> str:
    """Return an id no row has, the next one or, past the last, the first that is free.

    Examples
    --------
    >>> next_id({"loads": [{"id": "L07"}]}, "loads")
    'L08'
    """
    used = {int(row["id"][1:]) for row in rows_of(document, part)}
    after = max(used, default=0) + 1
    number = after if after <= LAST_ID else next(n for n in range(1, after) if n not in used)
    return f"{LETTERS[part]}{number:02d}"


def with_row(document: Document, part: str, fields: Row, after: str = "") -> tuple[Document, str]:
    """Return the document with a new row, at the end or after another, and its id.

    Raises
    ------
    Problem
        If the part is full, or a text cannot be kept.
    """
    rows = rows_of(document, part)
    if len(rows) >= MOST_ROWS[part]:
        raise Problem(part, f"A plan has {MOST_ROWS[part]} {part} at most.", "Delete one first.")
    ident = next_id(document, part)
    texts = {
        name: _kept(f"{part}.{ident}.{name}", ROWS[part][name], text)
        for name, text in fields.items()
        if name != "id"
    }
    row = {"id": ident, **{name: text for name, text in texts.items() if text}}
    place = next((i + 1 for i, one in enumerate(rows) if one["id"] == after), len(rows))
    return {**document, part: [*rows[:place], row, *rows[place:]]}, ident


def without_row(document: Document, part: str, ident: str) -> Document:
    """Return the document without a row.

    Raises
    ------
    Problem
        If there is no such row.
    """
    row_of(document, part, ident)
    return {**document, part: [row for row in rows_of(document, part) if row["id"] != ident]}


def moved_row(document: Document, part: str, ident: str, by: int) -> Document:
    """Return the document with a row moved up (−1) or down (1); at the end it stays.

    Parameters
    ----------
    document : Document
        The plan.
    part : str
        Such as ``loads``.
    ident : str
        Of the row.
    by : int
        Places. [1]

    Raises
    ------
    Problem
        If there is no such row.
    """
    rows = list(rows_of(document, part))
    row = row_of(document, part, ident)
    here = rows.index(row)
    there = min(max(here + by, 0), len(rows) - 1)
    rows.insert(there, rows.pop(here))
    return {**document, part: rows}
