"""What a rule asks, what was found, and how a figure was reached."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from engine.source import Source

CLOSE: Final = 1e-9
"""Relative difference below which two figures are the same (WASM and native differ in the last
bit, and printed limits are often met exactly)."""


def meets(value: float, limit: float) -> bool:
    """Return whether a value is at most its limit, forgiving the last bits.

    Parameters
    ----------
    value : float
        Any unit. [1]
    limit : float
        The same unit. [1]

    Examples
    --------
    >>> meets(0.1 + 0.2, 0.3), meets(3.04, 3.0)
    (True, False)
    """
    return value <= limit + abs(limit) * CLOSE


class Verdict(StrEnum):
    """The five words a question can end in."""

    FINE = "within limit"
    SHOULD = "should"
    STOP = "stop"
    CANNOT_SAY = "cannot say"
    NOT_KNOWN = "not known"


class Severity(StrEnum):
    """How much a finding matters, by its consequence."""

    STOP_NOW = "stop now"
    BEFORE_LEAVING = "before leaving"
    SHOULD = "should"
    NOTE = "note"


class Who(StrEnum):
    """Who may mend it."""

    OWNER = "owner"
    TWO = "owner with a second person"
    LICENSED = "licensed person only"


@dataclass(frozen=True, slots=True)
class Rule:
    """What is asked, in words, and where it stands. Declared once, referred to everywhere."""

    name: str
    words: str
    source: Source


@dataclass(frozen=True, slots=True)
class Judgement:
    """A verdict on one thing, why, what to do, and the rule it rests on."""

    verdict: Verdict
    words: str
    mend: str
    rule: Rule


@dataclass(frozen=True, slots=True)
class Demand:
    """The least a rule needs, and the sum that says so."""

    rule: Rule
    least: float
    words: str


def governing(demands: tuple[Demand, ...]) -> Demand:
    """Return the demand that asks for most; the first of equals.

    Parameters
    ----------
    demands : tuple of Demand
        Shape ``(n,)``, n at least 1, all in one unit. [1]
    """
    return max(demands, key=lambda demand: demand.least)


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a working: what, the formula in words, the figure, the source."""

    what: str
    formula: str
    value: str
    source: Source | None = None

    def __str__(self) -> str:
        tail = f" [{self.source}]" if self.source else ""
        return f"{self.what}: {self.formula} = {self.value}{tail}"


@dataclass(frozen=True, slots=True)
class Finding:
    """Something the plan does that a rule does not want, or that cannot be called."""

    where: str
    verdict: Verdict
    severity: Severity
    words: str
    mend: str
    rule: Rule
    who: Who = Who.OWNER
    working: tuple[Step, ...] = ()
