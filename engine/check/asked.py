"""One question of the alternating-current side, with all that was found on it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.check.part import WORST_FIRST, Part
from engine.finding import Finding, Verdict, Who

if TYPE_CHECKING:
    from engine.finding import Rule, Severity
OPEN: Final = frozenset({Verdict.NOT_KNOWN, Verdict.CANNOT_SAY})
"""Verdicts that keep a question open though its part does not weigh."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A question by name, the path it is about, and what was found."""

    name: str
    where: str
    parts: tuple[Part, ...]

    @property
    def verdict(self) -> Verdict:
        """The gravest of what weighs; what is not known comes before what is within limit."""
        found = {part.verdict for part in self.parts if part.weighs or part.verdict in OPEN}
        return next((one for one in WORST_FIRST if one in found), Verdict.NOT_KNOWN)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What a rule does not want."""
        return tuple(part.finding(self.where) for part in self.parts if part.asks)


def part_of(found: Finding) -> Part:
    """Return a finding of the trade room as a part of an answer.

    Parameters
    ----------
    found : Finding
        As judged there.
    """
    return Part(found.rule, found.verdict, found.words, found.mend, found.severity, found.who)


def fine(rule: Rule, words: str) -> Part:
    """Return that a rule is met, and by what."""
    return Part(rule, Verdict.FINE, words, who=Who.LICENSED)


def wrong(  # noqa: PLR0913, PLR0917 - what a finding is made of
    rule: Rule,
    verdict: Verdict,
    words: str,
    mend: str,
    grave: Severity | None = None,
    who: Who = Who.LICENSED,
) -> Part:
    """Return that a rule is not met; work on alternating current is a licensed person's."""
    return Part(rule, verdict, words, mend, grave, who)
