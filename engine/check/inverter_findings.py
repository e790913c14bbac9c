"""What needs doing about the inverter."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.inverter import inverter_answer
from engine.finding import Finding, Rule, Severity, Verdict, Who
from engine.inverter.sag import OPERATES, TRIPS
from engine.inverter.surge import CARRIES_SURGE
from engine.units import said

if TYPE_CHECKING:
    from engine.plan.parts import Plan

RATED: Final = Rule(
    "rating", "a load alone is no more than the inverter's rating", TRIPS.source
)  # fmt: skip


def inverter_findings(plan: Plan, chosen: frozenset[str]) -> list[Finding]:
    """Return what the inverter cannot do with these loads together.

    Parameters
    ----------
    plan : Plan
        As read.
    chosen : frozenset of str
        Ids of the AC loads that run together.
    """
    answer = inverter_answer(plan, chosen)
    if answer is None:
        return []
    found = []
    for one in answer.appliances:
        name = f"{one.load.ident} {one.load.name}"
        if one.fits == Verdict.STOP:
            found.append(
                _inverter(
                    Severity.BEFORE_LEAVING,
                    f"{name} takes {said(one.watts, 4)} W, more than the inverter's rating.",
                    "Leave it for shore power, or plan a larger inverter.",
                    RATED,
                )
            )
        elif one.starts == Verdict.SHOULD:
            found.append(
                _inverter(
                    Severity.SHOULD,
                    f"{name} may take more in starting than the inverter's surge rating.",
                    "Try it before you rely on it.",
                    CARRIES_SURGE,
                )
            )
    result = answer.result
    if result and result.no_point and result.first is None:
        found.append(
            _inverter(
                Severity.BEFORE_LEAVING,
                f"No operating point: bank and cable cannot bring {said(answer.dc, 4)} W at all.",
                "Run less together, or a larger bank and a thicker, shorter feed.",
                OPERATES,
            )
        )
    elif result and result.tripped_at is not None:
        at = f"{said(result.tripped_at * 100)} %"
        why = " The drop in its feed does it." if answer.feed_trips else ""
        found.append(
            _inverter(
                Severity.SHOULD,
                f"With {said(answer.watts, 4)} W the cut-off trips at {at} charge, above the "
                f"reserve line.{why}",
                "Run less together, or a thicker, shorter feed.",
                TRIPS,
            )
        )
    return found


def _inverter(severity: Severity, words: str, mend: str, rule: Rule) -> Finding:
    verdict = Verdict.STOP if severity == Severity.BEFORE_LEAVING else Verdict.SHOULD
    return Finding("inverter", verdict, severity, words, mend, rule, Who.OWNER)
