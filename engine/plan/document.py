"""The plan as one JSON document: its shape, its limits, and how text becomes it."""

from __future__ import annotations

import json
import re
from typing import Any, Final, TypeAlias

from engine.field import CHOICE, Field
from engine.plan.fields import LETTERS, LONG, LONGEST_NAME, LONGEST_NOTE, MOST_ROWS, ROWS, SINGLE
from engine.problem import Problem, quoted

Document: TypeAlias = dict[str, Any]
"""Nested dicts, lists and strings, as read from JSON; treated as frozen."""
Row: TypeAlias = dict[str, str]

FORMAT: Final = 1
LARGEST: Final = 2_000_000
"""Characters of a plan file that are read."""

NEWER: Final = "Update this page, or ask for a file made with this version."


def new_document(name: str = "") -> Document:
    """Return an empty plan."""
    return {"format": FORMAT, "boat": {"name": name} if name else {}}


def written(document: Document) -> str:
    """Return the document as text; the same document gives the same text."""
    return json.dumps(document, ensure_ascii=False, separators=(",", ":"))


def parsed(text: str) -> Document:
    """Return the document in a text, its shape checked against the declared fields.

    Raises
    ------
    Problem
        If it is no plan, of another version, or beyond the limits. Never half a plan.
    """
    if len(text) > LARGEST:
        raise Problem(
            "", f"The file holds {len(text):,} characters.", f"A plan has {LARGEST:,} at most."
        )
    try:
        raw = json.loads(
            text.lstrip("\ufeff"), object_pairs_hook=_unique, parse_constant=_no_constant
        )
    except json.JSONDecodeError as error:
        raise Problem(
            "",
            f"This is not a whole plan file: it stops making sense at line {error.lineno}.",
            "Ask for the file again.",
        ) from None
    except RecursionError:
        raise Problem(
            "", "The file is nested too deep to be a plan.", "Ask for the file again."
        ) from None
    except ValueError:
        raise Problem(
            "", "The file holds a number of thousands of digits.", "Ask for the file again."
        ) from None
    return shaped(raw)


def _unique(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key, value in pairs:
        if key in found:
            raise Problem(
                "", f"The file states {quoted(key)} twice.", "Keep one of the two and try again."
            )
        found[key] = value
    return found


def _no_constant(name: str) -> float:
    raise Problem("", f"The file holds {name}, which is no value.", "Enter a number or ?.")


def shaped(raw: object) -> Document:
    """Return a document of known shape, or say what keeps it from being one.

    Raises
    ------
    Problem
        For the first thing that is not a plan's.
    """
    if not isinstance(raw, dict) or "format" not in raw:
        raise Problem("", "This file is not a plan.", "Choose a plan saved by this page.")
    version = raw["format"]
    if version != FORMAT or isinstance(version, bool):
        newer = isinstance(version, int) and version > FORMAT
        raise Problem(
            "format",
            f"The plan has format {quoted(str(version))}; this page reads format {FORMAT}.",
            NEWER if newer else "Choose a plan saved by this page.",
        )
    document: Document = {"format": FORMAT}
    for key, value in raw.items():
        if key in SINGLE:
            document[key] = _fields(key, value, SINGLE[key])
        elif key in ROWS:
            document[key] = _rows(key, value)
        elif key == "made_up" and isinstance(value, bool):
            document[key] = value
        elif key != "format":
            raise Problem(key, f"{quoted(key)} is no part of a plan.", "Remove it and try again.")
    return document


def _rows(part: str, value: object) -> list[Row]:
    if not isinstance(value, list):
        raise Problem(part, f"{part} must be a list.", "Ask for the file again.")
    if len(value) > MOST_ROWS[part]:
        raise Problem(
            part,
            f"The file has {len(value):,} {part}; a plan has {MOST_ROWS[part]} at most.",
            "Split it, or remove rows and try again.",
        )
    seen: set[str] = set()
    rows = []
    for place, raw in enumerate(value, 1):
        ident = raw.get("id") if isinstance(raw, dict) else None
        if not isinstance(ident, str) or not re.fullmatch(rf"{LETTERS[part]}\d{{1,4}}", ident):
            raise Problem(
                f"{part}.{place}",
                f"Row {place} of {part} has no id such as {LETTERS[part]}01.",
                "Give each row its own id.",
            )
        if ident in seen:
            raise Problem(
                f"{part}.{ident}", f"Two rows of {part} have the id {ident}.", "Give one another."
            )
        seen.add(ident)
        fields = {key: one for key, one in raw.items() if key != "id"}
        rows.append({"id": ident, **_fields(f"{part}.{ident}", fields, ROWS[part])})
    return rows


def _fields(where: str, value: object, known: dict[str, Field]) -> Row:
    if not isinstance(value, dict):
        raise Problem(where, f"{where} must hold named values.", "Ask for the file again.")
    found = {}
    for name, raw in value.items():
        path = f"{where}.{name}"
        if name not in known:
            raise Problem(path, f"{quoted(name)} is no field of a plan.", "Remove it.")
        found[name] = _text(path, raw, known[name])
    return found


def _text(path: str, raw: object, field: Field) -> str:
    if isinstance(raw, bool):
        raw = "yes" if raw else "no"
    if isinstance(raw, int | float):
        raw = str(raw).removesuffix(".0")
    if not isinstance(raw, str):
        raise Problem(path, f"{field.label} must be text.", "Write it in quotation marks.")
    most = LONGEST_NOTE if field.name in LONG else LONGEST_NAME
    if len(raw) > most:
        raise Problem(path, f"{field.label} has {len(raw):,} characters.", f"Enter {most} at most.")
    if field.kind is CHOICE and field.choices and raw:
        names = [name for name, _ in field.choices]
        if raw not in names:
            raise Problem(
                path,
                f"{quoted(raw)} is not a choice for {field.label.lower()}.",
                f"Choose {', '.join(names)}.",
            )
    return plain_text(raw)


def plain_text(text: str) -> str:
    r"""Return a text without control characters; direction marks stay where a language needs them.

    A space of any width becomes a plain one, so that “5 1/2” stays two words.

    Examples
    --------
    >>> plain_text("pump\x00\x07"), plain_text("5\u00a01/2")
    ('pump', '5 1/2')
    """
    kept = (
        c if c.isprintable() or c in "\n\t\u200e\u200f\u200d\u200c" else " " * c.isspace()
        for c in text
    )
    return "".join(kept)
