"""Plain adverse words of a licensed person, and what of their words can be compared at all."""

from __future__ import annotations

import re
from typing import Final

from engine.finding import Rule, meets
from engine.shore.joins import ABOUT_JOIN
from engine.shore.ohms import ohms_of
from engine.source import Source
from engine.units import Ohm, said

INSULATION: Final = Rule(
    "insulation",
    "insulation of what runs on alternating current is at least 1 Mohm",
    Source("BS 7671", "as reprinted", "table 61, 500 V; older editions 0.5 Mohm"),
)
LEAST: Final = Ohm(1e6)
"""Least insulation, Ω."""
CONTINUOUS: Final = Ohm(1.0)
"""Up to here a safety ground is continuous, Ω."""
AS_OPEN: Final = Ohm(1000.0)
"""From here up it is as good as open, Ω."""

POLARITY: Final = re.compile(r"\b(?:polarity|phasing)\b", re.IGNORECASE)
GROUND: Final = re.compile(
    r"\b(?:(?:safety|protective)[\s-]+)?(?:ground|earth|pe|cpc)\b(?!\s+(?:fault|leak))",
    re.IGNORECASE,
)
CONTINUITY: Final = re.compile(r"\bcontinu\w+", re.IGNORECASE)
INSULATED: Final = re.compile(r"\b(?:insulation|megger\w*)\b", re.IGNORECASE)
_NEUTRAL: Final = re.compile(r"\b(?:neutral|n)\b", re.IGNORECASE)
_CLAUSES: Final = re.compile(
    r"[;\n]|[,.](?!\d)|\bbut\b|\band\b(?!\s+(?:safety\s+)?(?:ground|earth|pe)\b)", re.IGNORECASE
)

_ADVERSE: Final = re.compile(
    r"\b(?:danger\w*|unsafe|hazard\w*|faulty|defective|defects?|burn(?:s|t|ed|ing)|scorch\w*"
    r"|melt\w*|shocks?|condemned|wrong\w*|incorrect\w*|bad|fail(?:s|ed|ing|ure)?"
    r"(?![\s-]*(?:safe|closed|to))|too\s+(?:high|low|slow|long|late)|has\s+a\s+fault"
    r"|faults?\s+(?:found|present)|(?:needs?|must\s+be)\s+(?:repair|replac|renew)\w*|out\s+of\s+(?:limits?|range|tolerance|order))\b",
    re.IGNORECASE,
)
_FORBIDS: Final = re.compile(
    r"\b(?:do|must|may|should|shall)\s+not\s+(?:be\s+)?(?:use|plug|connect|energi|operat|switch)"
    r"|\bnot\s+(?:safe|ok|okay|acceptable|good|in\s+order|pass\w*|fit)\b",
    re.IGNORECASE,
)
_CROSSED: Final = re.compile(
    r"\b(?:revers\w+|cross\w+|swapped|inverted|interchanged|transposed)\b", re.IGNORECASE
)
_INDICATOR: Final = re.compile(
    r"\b(?:indicator|lamp|light|buzzer|alarm|shown?|shows)\b", re.IGNORECASE
)
_BROKEN: Final = re.compile(
    r"\b(?:open(?:\s+circuit)?|discontinu\w+|broken|interrupted|missing|disconnected|loose"
    r"|(?:no|not|without|lacks)\s+(?:any\s+)?(?:continu\w+|connect\w+)"
    r"|no\s+(?:safety\s+)?(?:ground|earth|pe)(?=\s*(?:$|at|to|on|in|found|present)))\b",
    re.IGNORECASE,
)
_ENDLESS: Final = re.compile(r"\b(?:infinite|ol)\b", re.IGNORECASE)
_CLEAN: Final = re.compile(
    r"\b(?:no|without)\s+(?:faults?|defects?)\b|\b(?:correct|right|good|ok|okay|in\s+order)\b"
    r"|\b(?:no|not)\s+(?:revers\w+|cross\w+)\b",
    re.IGNORECASE,
)
_MILLI: Final = re.compile(r"\d\s*m[\s-]*[oO]hm")
"""Milliohms as written, which of insulation is as likely a slip for Mohm."""
_DENIED: Final = re.compile(
    r"(?:\b(?:no|not|nothing|never|without|none|nor|or)|n't)\W+(?:\w+\W+)?$", re.IGNORECASE
)


def adverse(name: str, text: str) -> tuple[str, ...]:
    """Return, in words, what of a result speaks against what was tested.

    Parameters
    ----------
    name : str
        What was tested.
    text : str
        What was found.

    Examples
    --------
    >>> adverse("Insulation", "0.2 Mohm")
    ('insulation of 0.2 Mohm is less than 1 Mohm',)
    >>> adverse("Polarity", "reversed"), adverse("Polarity", "not reversed, no fault")
    (('polarity is crossed: reversed',), ())
    """
    found: list[str] = []
    for clause in (one.strip() for one in _CLAUSES.split(text)):
        found += _plain(clause) or _crossed(name, clause) or _open_ground(name, clause)
        found += _thin(name, clause)
    return tuple(dict.fromkeys(found))


def _denied(clause: str, start: int) -> bool:
    return _DENIED.search(clause[:start]) is not None


def _plain(clause: str) -> list[str]:
    if _FORBIDS.search(clause):
        return [clause]
    return [clause] if any(not _denied(clause, one.start()) for one in _ADVERSE.finditer(clause)) \
        else []  # fmt: skip


def _crossed(name: str, clause: str) -> list[str]:
    found = _CROSSED.search(clause)
    if not found or _INDICATOR.search(clause) or _denied(clause, found.start()):
        return []
    about = POLARITY.search(name) or POLARITY.search(clause) or _NEUTRAL.search(clause)
    return [f"polarity is crossed: {clause}"] if about else []


def _about_ground(name: str, clause: str) -> bool:
    """Return whether a clause is about the safety ground itself, not its join with the neutral."""
    if INSULATED.search(clause) or _NEUTRAL.search(clause):
        return False
    if GROUND.search(clause):
        return True
    return bool((GROUND.search(name) or CONTINUITY.search(name)) and not ABOUT_JOIN.search(name))


def _open_ground(name: str, clause: str) -> list[str]:
    if not _about_ground(name, clause):
        return []
    found = _BROKEN.search(clause)
    endless = not INSULATED.search(name) and (
        _ENDLESS.search(clause) or any(meets(AS_OPEN, one) for one in ohms_of(clause))
    )
    if not endless and (found is None or _denied(clause, found.start())):
        return []
    return [f"the safety ground is not continuous: {clause}"]


def _thin(name: str, clause: str) -> list[str]:
    """Return each insulation that is too little; a small figure may be continuity instead."""
    here = INSULATED.search(clause)
    if not here and (not INSULATED.search(name) or CONTINUITY.search(clause)):
        return []
    if _MILLI.search(clause):
        return []
    both = not here and (GROUND.search(name) or CONTINUITY.search(name))
    return [
        f"insulation of {said(one / 1e6)} Mohm is less than 1 Mohm"
        for one in ohms_of(clause)
        if not meets(LEAST, one) and not (both and meets(one, 10.0))
    ]


def not_compared(name: str, text: str) -> tuple[str, ...]:
    """Return what of polarity, safety ground and insulation a result leaves unsaid.

    Parameters
    ----------
    name : str
        What was tested.
    text : str
        What was found; nothing adverse in it.

    Examples
    --------
    >>> not_compared("Polarity, safety-ground continuity, insulation", "no fault; 5 Mohm")
    ()
    >>> not_compared("Insulation, polarity", "as it should be")
    ('polarity', 'insulation')
    """
    clean, ohms = _CLEAN.search(text), ohms_of(text)
    continuous = CONTINUITY.search(text) or any(meets(one, CONTINUOUS) for one in ohms)
    asks = (
        ("polarity", asks_polarity(name, text), clean),
        ("safety ground", asks_ground(name), clean or continuous),
        ("insulation", asks_insulation(name, text), any(meets(LEAST, one) for one in ohms)),
    )
    return tuple(word for word, asked, met in asks if asked and not met)


def asks_polarity(name: str, text: str) -> bool:
    """Return whether a result is about polarity."""
    return POLARITY.search(f"{name} {text}") is not None


def asks_ground(name: str) -> bool:
    """Return whether a result is about the safety ground's continuity."""
    found = GROUND.search(name) or CONTINUITY.search(name)
    return bool(found and not ABOUT_JOIN.search(name))


def asks_insulation(name: str, text: str) -> bool:
    """Return whether a result is about insulation."""
    return INSULATED.search(f"{name} {text}") is not None
