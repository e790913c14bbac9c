"""A small ladder of runs and loads, typed as one text.

Entries stand apart by a semicolon or a new line; the parts of an entry by a comma, and a comma
between two digits is a decimal comma. An entry is::

    name [from name], size, run one way[, joints mohm][, draw][, draw …]

The first entry hangs on the bank, every other on the one before it unless it says ``from``.
A draw in A holds its current, one in W its power, one in ohm its resistance; what charges has a
minus sign.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.conductors.resistance import resistance
from engine.conductors.sizes import Size, read_size
from engine.feeders.tree import Behaves, Branch, Draw, Tree, tree_of
from engine.field import Field, value_of
from engine.problem import Problem, quoted
from engine.units import CURRENT, LENGTH, POWER, RESISTANCE, Celsius, Metre, Ohm, read

if TYPE_CHECKING:
    from engine.units import Kind

BANK: Final = "bank"
WHERE: Final = "ladder"
MOST: Final = 500
"""Entries of one ladder."""
MEND: Final = "Write a name, a size and a run one way, such as “fridge, 10 AWG, 5.6 m, 4.6 A”."

_RUN: Final = Field("run", "Run, one way", LENGTH, least=0.0, most=1000.0)
_JOINTS: Final = Field("joints", "Joints", RESISTANCE, least=0.0, most=1.0)
_DRAWS: Final = (
    (Behaves.CURRENT, Field("draw", "Current", CURRENT, least=-5000.0, most=5000.0)),
    (Behaves.POWER, Field("draw", "Power", POWER, least=-100_000.0, most=100_000.0)),
    (Behaves.RESISTANCE, Field("draw", "Load", RESISTANCE, least=1e-3, most=1e6)),
)
_ENTRIES: Final = re.compile(r"[;\n]")
_PARTS: Final = re.compile(r"(?<!\d),|,(?!\d)")
_FED: Final = re.compile(r"(?:(.*\S)\s+)?from\s+(.+)", re.IGNORECASE)
_MILLIOHMS: Final = re.compile(r".*\d\s*(?:m|milli)\s?(?:ohms?|Ω)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Ladder:
    """What was read: the tree of runs, what draws where, and the size and metres of each run."""

    tree: Tree
    draws: tuple[Draw, ...]
    runs: dict[str, tuple[Size, Metre]]


def read_ladder(text: str, temperature: Celsius) -> tuple[Ladder, tuple[Problem, ...]]:
    """Return the ladder as far as it can be read, and every problem in it.

    Parameters
    ----------
    text : str
        As typed.
    temperature : Celsius
        Of the copper. [°C]

    Returns
    -------
    tuple of Ladder and tuple of Problem
        Each problem names its entry.

    Examples
    --------
    >>> text = "main, 2/0 AWG, 1.4 m; fridge, 10 AWG, 5,6 m, 0.5 mohm, 4,6 A"
    >>> ladder, problems = read_ladder(text, Celsius(20.0))
    >>> ladder.tree.nodes, ladder.draws[0].amount, problems
    (('bank', 'main', 'fridge'), 4.6, ())
    >>> _, problems = read_ladder("fridge, 10 AWG, four m, 4.6 A", Celsius(20.0))
    >>> print(problems[0].what)
    “fridge”: “four m” is not a length.
    """
    texts = [entry for entry in map(str.strip, _ENTRIES.split(text)) if entry]
    problems: list[Problem] = []
    if not texts:
        problems.append(Problem(WHERE, "The ladder has no entry.", MEND))
    if len(texts) > MOST:
        what = f"The ladder has {len(texts)} entries."
        problems.append(Problem(WHERE, what, f"Enter {MOST} at most."))
    branches: list[Branch] = []
    draws: list[Draw] = []
    runs: dict[str, tuple[Size, Metre]] = {}
    spelt = {plain(BANK): BANK}
    before = BANK
    for entry in texts[:MOST]:
        name, source, parts = _named(entry, before)
        if not plain(name):
            problems.append(Problem(WHERE, f"{quoted(entry)} begins with no name.", MEND))
            continue
        # One spelling of each name, the first, whatever its capitals and spaces.
        name, source = (spelt.setdefault(plain(one), one) for one in (name, source))
        ohms = Ohm(0.0)  # stands in for what cannot be read, so that all below it still is
        try:
            size, run, joints = _conductor(parts)
            ohms = Ohm(2 * run / 1000 * resistance(size, temperature) + joints)
            runs.setdefault(name, (size, run))
            draws += _draws(name, parts[2:])
        except Problem as problem:
            what = f"{quoted(name)}: {problem.what}"
            problems.append(Problem(WHERE, what, problem.mend or MEND))
        branches.append(Branch(name, source, ohms))
        before = name
    tree, unhung = tree_of(BANK, branches)
    problems += [Problem(WHERE, problem.what, problem.mend) for problem in unhung]
    return Ladder(tree, tuple(draws), runs), tuple(problems)


def plain(name: str) -> str:
    """Return a name as a key: small letters and digits, anything else one underscore.

    Parameters
    ----------
    name : str
        As typed.

    Examples
    --------
    >>> plain("Bow light (port)")
    'bow_light_port'
    """
    return "_".join("".join(c if c.isalnum() else " " for c in name.lower()).split())


def _named(entry: str, before: str) -> tuple[str, str, list[str]]:
    """Return an entry's name, what feeds it, and its other parts."""
    head, *parts = (" ".join(part.split()) for part in _PARTS.split(entry))
    fed = _FED.fullmatch(head)
    return (fed[1] or "", fed[2], parts) if fed else (head, before, parts)


def _conductor(parts: list[str]) -> tuple[Size, Metre, Ohm]:
    """Return the size, the run one way, and the joints."""
    if len(parts) < 2:
        raise Problem("", "a size and a run one way are needed.", MEND)
    joints = sum(_stated(_JOINTS, part) for part in parts[2:] if _MILLIOHMS.fullmatch(part))
    return read_size(parts[0]), Metre(_stated(_RUN, parts[1])), Ohm(joints)


def _stated(field: Field, part: str) -> float:
    """Return a figure that must be there, with its unit."""
    typed = value_of(field, part)
    if typed.likely is None or typed.bare:
        raise Problem("", f"{quoted(part)} has no unit.", f"Enter {field.kind.example}.")
    return typed.likely


def _draws(node: str, parts: list[str]) -> list[Draw]:
    return [_draw(node, part) for part in parts if not _MILLIOHMS.fullmatch(part)]


def _draw(node: str, part: str) -> Draw:
    for behaves, field in _DRAWS:
        if _measures(part, field.kind):
            return Draw(node, _stated(field, part), behaves)
    raise Problem("", f"{quoted(part)} is no draw.", "Enter A, W or ohm, such as 4.6 A.")


def _measures(part: str, kind: Kind) -> bool:
    """Return whether a part states this kind of quantity."""
    try:
        return read(part, kind).known
    except Problem:
        return False
