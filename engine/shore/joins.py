"""What a licensed person's words say of neutral and safety ground, source by source."""

from __future__ import annotations

import re
from typing import Final

from engine.finding import meets
from engine.shore.earthing import Supply
from engine.shore.ohms import ohms_of
from engine.units import Ohm

ABOUT_JOIN: Final = re.compile(
    r"\bneutral\b.*\b(?:ground|earth|pe)\b|\b(?:ground|earth|pe)\b.*\bneutral\b|\bn[-–]p?[eg]\b",
    re.IGNORECASE,
)

NAMES: Final = {
    Supply.SHORE: re.compile(r"\b(?:shore|dock\w*|plugged|cord|pedestal)\b", re.IGNORECASE),
    Supply.INVERTER: re.compile(r"\b(?:invert\w*)\b", re.IGNORECASE),
    Supply.GENERATOR: re.compile(r"\b(?:generat\w*|genset)\b", re.IGNORECASE),
    Supply.TRANSFORMER: re.compile(r"\b(?:transformer\w*|secondary)\b", re.IGNORECASE),
}
"""Words that name each source in use."""
_STATE: Final = r"(?:open|joined|join|closed|bonded|linked|connected|continu\w+|separate|apart)"
_CLAUSES: Final = re.compile(
    rf"[;\n]|[,.](?!\d)|\bbut\b|\band\b(?=\s+(?:is\s+|are\s+|was\s+)?(?:not\s+)?{_STATE}\b)",
    re.IGNORECASE,
)
_JOINED: Final = re.compile(
    r"\b(?:joined|join|closed|bonded|bond|connected|connection|continuous|continuity|link(?:ed)?"
    r"|bridged?|strapped|tied|jumper\w*|short(?:ed)?)\b",
    re.IGNORECASE,
)
_OPEN: Final = re.compile(
    r"\b(?:open|separated?|apart|unbonded|disconnected|isolated|infinite|ol)\b", re.IGNORECASE
)
_NOT: Final = re.compile(r"\b(?:no|not|never|none|isn't|without|removed|undone)\b", re.IGNORECASE)
_LEAD: Final = re.compile(
    r"\b(?:shore|dock)?\s*\b(?:lead|cord|cable|power|supply|plug|shore|dock)\s+(?:is\s+|was\s+)?"
    r"(?:dis)?connected\b|\bconnected\s+to\s+(?:the\s+)?(?:shore|dock)\b",
    re.IGNORECASE,
)
"""The cord is plugged in: nothing of neutral and ground."""
_WHERE: Final = re.compile(
    r"\b(?:panel|switchboard|board|bus\s*bar|bus|distribution)\b", re.IGNORECASE
)
"""A place where a join lasts, whatever the source."""
JOINS: Final = Ohm(10.0)
"""Up to here neutral and ground are joined, Ω."""
PARTS: Final = Ohm(1e6)
"""From here up they are apart, Ω: as much as insulation is asked for."""


def said_of(supply: Supply, text: str) -> str:
    """Return the part of a result that names a source in use; empty where none does.

    Parameters
    ----------
    supply : Supply
        In use.
    text : str
        As the licensed person gave it.

    Examples
    --------
    >>> said_of(Supply.INVERTER, "open on shore, joined while inverting")
    'joined while inverting'
    """
    clauses = (one.strip() for one in _CLAUSES.split(text))
    return "; ".join(one for one in clauses if NAMES[supply].search(one))


def joined_in(text: str) -> bool | None:
    """Return whether words say that neutral and ground are joined; None where they say neither.

    Parameters
    ----------
    text : str
        One part of a result.

    Examples
    --------
    >>> [joined_in(one) for one in ("joined on shore", "no join on shore", "open", "20 ohm")]
    [True, False, False, None]
    >>> joined_in("0.1 ohm on shore"), joined_in("shore lead connected")
    (True, None)
    """
    plain = text if ABOUT_JOIN.search(text) else _LEAD.sub("shore", text)
    joined, apart = bool(_JOINED.search(plain)), bool(_OPEN.search(plain))
    if joined == apart:
        return None if joined else _by_ohms(plain)
    return joined != (len(_NOT.findall(plain)) % 2 == 1)


def _by_ohms(text: str) -> bool | None:
    found = ohms_of(text)
    if any(meets(one, JOINS) for one in found):
        return True
    return False if found and all(meets(PARTS, one) for one in found) else None


def joined_on_shore(name: str, text: str) -> bool | None:
    """Return whether a result says that neutral and ground are joined aboard on shore power.

    Words that name no source count for shore power, since a join that lasts is the danger.

    Parameters
    ----------
    name : str
        What was tested.
    text : str
        What was found.

    Examples
    --------
    >>> joined_on_shore("Neutral to safety ground", "open on shore, joined while inverting")
    False
    >>> [joined_on_shore("Neutral to ground", one) for one in ("bonded", "0.1 ohm on shore")]
    [True, True]
    >>> joined_on_shore("Neutral to ground", "joined while inverting") is None
    True
    """
    if not ABOUT_JOIN.search(f"{name} {text}"):
        return None
    known = [one for one in (_on_shore(*each) for each in _by_source(text)) if one is not None]
    return any(known) if known else None


def _on_shore(clause: str, sources: frozenset[Supply]) -> bool | None:
    """Return what a clause says of shore power; a join at the panel lasts there too."""
    found = joined_in(clause)
    if not sources or Supply.SHORE in sources:
        return found
    return found if found and _WHERE.search(clause) else None


def _by_source(text: str) -> tuple[tuple[str, frozenset[Supply]], ...]:
    """Return each clause with the sources it is about; a mere source speaks for the next one."""
    found, before = [], frozenset[Supply]()
    for clause in _CLAUSES.split(text):
        here = frozenset(one for one, pattern in NAMES.items() if pattern.search(clause))
        found.append((clause, here or before))
        before = here if here and joined_in(clause) is None else frozenset()
    return tuple(found)
