"""Loads from a pasted table or a CSV file, and back out; no cell is ever executed."""

from __future__ import annotations

import csv
import re
from dataclasses import dataclass
from io import StringIO
from typing import TYPE_CHECKING, Final

from engine.field import CHOICE, TEXT, YES_NO, value_of, yes
from engine.plan.document import plain_text
from engine.plan.edit import rows_of
from engine.plan.fields import LOAD, LONGEST_NAME, MOST_ROWS
from engine.plan.read_load import is_power
from engine.problem import Problem, quoted
from engine.units import CURRENT, POWER, read

if TYPE_CHECKING:
    from engine.plan.document import Document, Row

LARGEST: Final = 300_000
FORMULA: Final = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet takes for the start of a formula."""

HEADINGS: Final = {
    "name": ("load", "name", "item", "device", "appliance", "equipment", "description"),
    "zone": ("zone", "place", "location", "where"),
    "circuit": ("circuit", "breaker", "feed"),
    "draw_by": ("known by", "how known", "source", "basis"),
    "marked": ("as marked", "nameplate", "marked", "label"),
    "surge": ("surge", "inrush", "start", "starting", "peak"),
    "duty": ("duty", "duty cycle"),
    "hours_anchor": ("hours at anchor", "hours anchor", "hours", "hours a day", "hours per day",
                     "h/day", "hrs", "hours/day", "anchor"),
    "hours_passage": ("hours on passage", "hours passage", "hours at sea", "passage"),
    "hours_dock": ("hours at the dock", "hours at dock", "hours dock", "dock"),
    "hours_unattended": ("hours nobody aboard", "hours unattended", "unattended"),
    "supply": ("fed by", "supply"),
    "window": ("when",),
    "behaves": ("as the volts fall",),
    "essential": ("essential",),
    "always_live": ("always live",),
    "note": ("note", "notes", "remark", "remarks", "comment"),
    "likely": ("draw", "current", "amps", "a", "likely a", "likely", "amperes", "draw a",
               "current a"),
    "watts": ("watts", "w", "power", "power w", "draw w"),
    "low": ("low a", "low", "min", "minimum"),
    "high": ("high a", "high", "max", "maximum"),
}  # fmt: skip
"""Headings recognised, by the field they fill."""
TOTALS: Final = {"total", "totals", "sum", "subtotal", "grand total"}


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the table: the load it would make, and what is wrong with it."""

    number: int
    row: Row
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Incoming:
    """A table before it is taken: columns used and left out, lines, and lines passed over."""

    used: tuple[tuple[str, str], ...]
    left_out: tuple[str, ...]
    lines: tuple[Line, ...]
    passed: tuple[str, ...]


def incoming(text: str) -> Incoming:
    """Return what a pasted table or CSV text would bring, for a preview.

    Raises
    ------
    Problem
        If it is no table, too large, or has no column of loads.
    """
    if len(text) > LARGEST:
        raise Problem("table", f"That is {len(text):,} characters.", f"Paste {LARGEST:,} at most.")
    rows = [row for row in _cells(text) if any(cell.strip() for cell in row)]
    if len(rows) < 2:
        raise Problem(
            "table", "No table was found.", "Paste a heading row and at least one row under it."
        )
    columns = {place: _column(heading) for place, heading in enumerate(rows[0])}
    if "name" not in columns.values():
        raise Problem(
            "table",
            f"No heading for the load's name among {quoted(', '.join(rows[0]))}.",
            "Name one column “Load”.",
        )
    lines, passed = [], []
    for number, cells in enumerate(rows[1:], 2):
        found = {
            field: _unguarded(cells[place])
            for place, field in columns.items()
            if field and place < len(cells) and cells[place].strip()
        }
        if _is_total(found, cells):
            passed.append(f"line {number}: {quoted(' '.join(cells))} looks like a total")
            continue
        if "name" not in found:
            passed.append(f"line {number}: no name")
            continue
        lines.append(_line(number, found))
    if len(lines) > MOST_ROWS["loads"]:
        raise Problem(
            "table",
            f"The table has {len(lines):,} loads; a plan has {MOST_ROWS['loads']} at most.",
            "Split it and try again.",
        )
    used = tuple((rows[0][place], field) for place, field in columns.items() if field)
    left = tuple(rows[0][place] or "(blank)" for place, field in columns.items() if not field)
    return Incoming(used, left, tuple(lines), tuple(passed))


def _cells(text: str) -> list[list[str]]:
    """Return the cells, separated as the first line is."""
    plain = text.lstrip("\ufeff").strip("\r\n")
    first = plain.split("\n", 1)[0]
    mark = max("\t;,|", key=first.count)
    if mark == "|":
        lines = [line.strip().strip("|") for line in plain.splitlines()]
        plain = "\n".join(line for line in lines if not re.fullmatch(r"[\s|:-]*", line))
    try:
        return [[cell.strip() for cell in row] for row in csv.reader(StringIO(plain),
                                                                     delimiter=mark)]  # fmt: skip
    except csv.Error:
        raise Problem("table", "The table cannot be read.", "Paste it again, or as CSV.") from None


def _column(heading: str) -> str:
    """Return the field a heading names; empty where it names none."""
    plain = " ".join(re.sub(r"[()\[\],:]", " ", heading.lower()).split())
    for field, names in HEADINGS.items():
        if plain in names:
            return field
    return ""


def _unguarded(cell: str) -> str:
    """Return a cell without the apostrophe an export put in front."""
    return cell[1:] if cell[1:] and guarded(cell[1:]) == cell else cell


def _is_total(found: Row, cells: list[str]) -> bool:
    name = found.get("name", "") or next((cell for cell in cells if cell), "")
    first = re.sub(r"[^a-z ]", "", name.lower()).split()
    return bool(first) and (first[0] in TOTALS or " ".join(first[:2]) in TOTALS)


def _line(number: int, found: Row) -> Line:
    """Return one load with its problems; entries stay as typed."""
    row: Row = {}
    problems = []
    for field, text in found.items():
        if field not in LOAD:
            continue
        if len(text) > LONGEST_NAME:
            problems.append(Problem(field, f"{LOAD[field].label} is too long.", "Shorten it."))
            continue
        row[field] = plain_text(text)
    row["draw"] = _draw(found)
    if not row["draw"]:
        del row["draw"]
    for field, text in list(row.items()):
        problem = _checked(field, text)
        if problem:
            problems.append(problem)
            if LOAD[field].kind is CHOICE:
                del row[field]
        elif LOAD[field].kind is CHOICE:
            row[field] = text.lower()
    row.setdefault("draw_by", "estimate")
    return Line(number, row, tuple(problems))


def _draw(found: Row) -> str:
    """Return the draw as the plan would state it, with its range where the table has one."""
    likely = found.get("likely", "")
    if not likely and found.get("watts"):
        likely = found["watts"]
        if not re.search(r"[A-Za-z]", likely):
            likely += " W"
    low, high = found.get("low", ""), found.get("high", "")
    if likely and low and high:
        return f"{likely} ({low} to {high})"
    return likely


def _checked(field: str, text: str) -> Problem | None:
    declared = LOAD[field]
    try:
        if declared.kind is CHOICE:
            names = [name for name, _ in declared.choices]
            if text.lower() not in names:
                raise Problem(  # noqa: TRY301 - one way of saying it
                    "", f"{quoted(text)} is not a choice.", f"Choose {', '.join(names)}."
                )
        elif declared.kind is YES_NO:
            yes(text)
        elif declared.kind is CURRENT and is_power(text):
            read(text, POWER)
        elif declared.kind is not TEXT:
            value_of(declared, text)
    except Problem as problem:
        return problem.at(field)
    return None


def exported(document: Document) -> str:
    """Return the loads as CSV; a cell a spreadsheet could take for a formula is made text."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(["Id", *(declared.label for declared in LOAD.values())])
    for row in rows_of(document, "loads"):
        writer.writerow([row["id"], *(guarded(row.get(name, "")) for name in LOAD)])
    return out.getvalue()


def guarded(cell: str) -> str:
    """Return a cell with an apostrophe in front where it would start a formula.

    Examples
    --------
    >>> guarded("=1+1"), guarded("4.6 A"), guarded("-12")
    ("'=1+1", '4.6 A', '-12')
    """
    if cell.startswith(FORMULA) and not re.fullmatch(r"[+-]?\d+(?:\.\d+)?", cell):
        return "'" + cell
    return cell
