"""An estimate is kept as one text, “4.6 A (4.3 to 5)”; its parts can be edited apart."""

from __future__ import annotations

import re
from typing import Final

from engine.estimate import SURENESS
from engine.problem import Problem
from engine.units import Kind, number, read, said

_WHOLE: Final = re.compile(r"\s*(.*?)\s*\(\s*(.+?)\s*(?:\bto\b|-|–|—)\s*(.+?)\s*\)\s*")

_SIMPLE: Final = re.compile(r"(\d+(?:[.,]\d+)?)\s*[^\d\s.,]*")


def parts_of(text: str) -> tuple[str, str, str]:
    """Return likely, low and high as typed; low and high empty where no range stands apart.

    Examples
    --------
    >>> parts_of("4.6 A (4.3 to 5)")
    ('4.6 A', '4.3', '5')
    >>> parts_of("4-5 A")
    ('4-5 A', '', '')
    """
    found = _WHOLE.fullmatch(text)
    return (found[1], found[2], found[3]) if found else (text.strip(), "", "")


def composed(likely: str, low: str = "", high: str = "") -> str:
    """Return the parts as one text; half a range is kept too, to be completed.

    Examples
    --------
    >>> composed("4.6 A", "4.3", "5")
    '4.6 A (4.3 to 5)'
    """
    if not low and not high:
        return likely.strip()
    return f"{likely.strip()} ({low.strip() or '?'} to {high.strip() or '?'})".strip()


def with_sureness(text: str, sureness: str, kind: Kind) -> str:
    """Return the text with the range that “How sure?” stands for.

    Raises
    ------
    Problem
        If there is no value to put a range around.

    Examples
    --------
    >>> from engine.units import CURRENT
    >>> with_sureness("4.6 A", "about ±10 %", CURRENT)
    '4.6 A (4.14 to 5.06)'
    """
    below, above = SURENESS[sureness]
    likely = parts_of(text)[0]
    typed = read(likely, kind)
    if typed.likely is None:
        raise Problem("", "There is no value yet to be sure of.", f"Enter {kind.example} first.")
    simple = _SIMPLE.fullmatch(likely)
    if not simple:
        likely = f"{said(typed.likely, 4)} {kind.shown}".strip()
    if sureness == "exact":
        return likely
    figure = number(simple[1]) if simple else typed.likely
    return composed(likely, said(figure * below), said(figure * above))
