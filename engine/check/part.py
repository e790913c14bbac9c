"""One question about a circuit: its rule, the verdict, and why."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Finding, Severity, Verdict, Who

if TYPE_CHECKING:
    from engine.finding import Judgement, Rule

WORST_FIRST: Final = (
    Verdict.STOP,
    Verdict.SHOULD,
    Verdict.CANNOT_SAY,
    Verdict.NOT_KNOWN,
    Verdict.FINE,
)
SEVERITIES: Final = {
    Verdict.STOP: Severity.STOP_NOW,
    Verdict.SHOULD: Severity.SHOULD,
    Verdict.CANNOT_SAY: Severity.SHOULD,
    Verdict.NOT_KNOWN: Severity.NOTE,
}


@dataclass(frozen=True, slots=True)
class Part:
    """What one rule says of a circuit.

    ``grave`` is the severity where the verdict alone does not say it. A part that does not
    ``weigh`` is shown, but neither makes a finding nor changes the circuit's verdict: nobody has
    said what it needs.
    """

    rule: Rule
    verdict: Verdict
    words: str
    mend: str = ""
    grave: Severity | None = None
    who: Who = Who.OWNER
    weighs: bool = True

    @property
    def severity(self) -> Severity:
        """How much it matters."""
        return self.grave or SEVERITIES.get(self.verdict, Severity.NOTE)

    @property
    def asks(self) -> bool:
        """True where something is to be done about it."""
        return self.weighs and self.verdict != Verdict.FINE

    def finding(self, where: str, about: str = "") -> Finding:
        """Return it as a finding at a place, its words after what they are about."""
        words = f"{about}{self.words}"
        return Finding(
            where, self.verdict, self.severity, words, self.mend, self.rule, self.who
        )  # fmt: skip


def judged(found: Judgement, who: Who = Who.OWNER) -> Part:
    """Return a judgement as a part; what says stop is to be done before leaving."""
    grave = Severity.BEFORE_LEAVING if found.verdict == Verdict.STOP else None
    return Part(found.rule, found.verdict, found.words, found.mend, grave, who)


def open_question(rule: Rule, words: str, verdict: Verdict = Verdict.NOT_KNOWN) -> Part:
    """Return a question that cannot be asked until more is entered."""
    return Part(rule, verdict, words, weighs=False)
