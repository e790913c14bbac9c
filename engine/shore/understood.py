"""What of a licensed person's words is understood: figures, and plain words for a good result.

A result counts as within limit only where nothing else stands in it. Words nobody foresaw are told
as not compared, so that a denial in unusual words is never read as a pass.
"""

from __future__ import annotations

import re
from typing import Final

_NUMBER: Final = r"\d+(?:[.,]\d+)?"
_OHM: Final = r"(?:M?[oO]hms?|M?Ω|mohms?)"
_FIGURES: Final = re.compile(
    rf"(?:\b(?:above|over|more\s+than)|>)\s*{_NUMBER}\s*{_OHM}(?!\w)"
    rf"|[<≤]?\s*{_NUMBER}\s*(?:m?A|m?s|m?V|Hz|%|{_OHM})(?!\w)"
    rf"|\b(?:on|at|to|outlets?|legs?)\s+\d+(?!\s*[\w.,Ω])"
)
_PHRASES: Final = re.compile(
    r"\b(?:(?:do|did|does)\s+)?(?:no|not|never)\s+(?:trip|open|operate)\w*|\b(?:holds?|held)\b"
    r"|\b(?:no|without)\s+(?:faults?|defects?|reversals?)\b|\b(?:link|bond|join)\s+removed\b"
    r"|\bnot\s+(?:reversed|crossed|joined|bonded|linked|stuck|jammed|dead)\b"
    r"|\bno\s+(?:join|bond|link|continuity)(?=\s+(?:on|to|with|between)\b)"
    r"|\bin\s+order\b|\bas\s+(?:stated|expected|marked)\b|\bper\s+device\b",
    re.IGNORECASE,
)
"""Denials whose meaning is judged elsewhere, or that speak for the result."""
_PLAIN: Final = """
    trip trips tripped tripping open opens opened operate operates operated closed joined bonded
    linked isolated separate apart infinite ol correct right good ok okay pass passed passes fine
    continuous continuity a an and all at both by each every for from in is are was of off on the
    to with within after when while under between only one shore power dock inverter inverting
    generator running inlet main panel aboard board boat outlet outlets receptacle receptacles
    socket sockets branch circuit circuits button test tested neutral ground grounding safety
    protective earth pe n l polarity phasing insulation megger leakage residual elci rcd rcbo gfci
    device time current source half lead connected
"""
_WORDS: Final = frozenset(_PLAIN.split())


def beyond(text: str) -> tuple[str, ...]:
    """Return the words of a result that are not understood, in their order.

    Parameters
    ----------
    text : str
        What was found.

    Examples
    --------
    >>> beyond("trips at 24 mA in 38 ms; did not trip at 15 mA"), beyond("no fault; 5 Mohm")
    ((), ())
    >>> beyond("remains closed at 30 mA, 40 ms"), beyond("not correct"), beyond("5 Mohm, 300 k")
    (('remains',), ('not',), ('300', 'k'))
    """
    plain = _FIGURES.sub(" ", _PHRASES.sub(" ", text.replace("\u2019", "'")))
    return tuple(
        one for one in re.findall(r"[^\W_][\w'/-]*|\?", plain) if one.lower() not in _WORDS
    )
