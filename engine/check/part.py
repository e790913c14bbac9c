"""One question about a circuit: its rule, the verdict, and why."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Severity, Verdict, Who

if TYPE_CHECKING:
    from engine.finding import Rule

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


def open_question(rule: Rule, words: str, verdict: Verdict = Verdict.NOT_KNOWN) -> Part:
    """Return a question that cannot be asked until more is entered."""
    return Part(rule, verdict, words, weighs=False)
