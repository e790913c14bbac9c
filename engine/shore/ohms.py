"""Resistances in a licensed person's words."""

from __future__ import annotations

import re
from typing import Final

from engine.problem import Problem
from engine.units import Ohm, number

_OHMS: Final = re.compile(
    r"(\d+(?:[.,]\d+)?)\s*(m|milli|k|kilo|M|mega|meg|G|giga)?[\s-]*(?:ohms?\b|\u03a9|\u2126)"
    r"|(\d+(?:[.,]\d+)?)\s*(meg)s?\b",
    re.IGNORECASE,
)
_FACTORS: Final = {"": 1.0, "m": 1e-3, "k": 1e3, "M": 1e6, "G": 1e9}


def ohms_of(text: str) -> tuple[Ohm, ...]:
    """Return every resistance that words name.

    Parameters
    ----------
    text : str
        Such as ``above 5 Mohm``; a capital M is mega, a small one milli.

    Examples
    --------
    >>> ohms_of("0.2 ohm, above 5 Mohm, 200 milliohm, 3 megohm")
    (0.2, 5000000.0, 0.2, 3000000.0)
    """
    found = []
    for figure, prefix, other, meg in _OHMS.findall(text):
        try:
            found.append(Ohm(number(figure or other) * _FACTORS[_letter(prefix or meg)]))
        except Problem:
            continue
    return tuple(found)


def _letter(prefix: str) -> str:
    if prefix.lower().startswith("meg"):
        return "M"
    return (
        prefix
        if prefix == "M"
        else prefix[:1].upper()
        if prefix[:1] in "gG"
        else (prefix[:1].lower())
    )
