"""What needs doing: every finding of a plan, gravest first."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.check.circuits import circuit_answer
from engine.check.inverter import inverter_answer
from engine.finding import Finding, Rule, Severity, Verdict, Who
from engine.inverter.sag import OPERATES, TRIPS
from engine.inverter.surge import CARRIES_SURGE
from engine.source import common_practice
from engine.units import said

if TYPE_CHECKING:
    from engine.check.circuits import CircuitAnswer
    from engine.plan.document import Row
    from engine.plan.parts import Plan

SEVERITIES: Final = {
    Verdict.STOP: Severity.STOP_NOW,
    Verdict.SHOULD: Severity.SHOULD,
    Verdict.CANNOT_SAY: Severity.SHOULD,
    Verdict.NOT_KNOWN: Severity.NOTE,
}
ORDER: Final = list(Severity)

LOOKED: Final = Rule(
    "four looks", "nothing found by looking is left", common_practice("a first look round")
)
RATED: Final = Rule(
    "rating", "a load alone is no more than the inverter's rating", TRIPS.source
)  # fmt: skip

LOOKS: Final = {
    ("fuse", "no"): (
        Severity.STOP_NOW,
        "A lead from the battery has no fuse or breaker within reach.",
        "Do not use that lead until it has one close to the battery.",
        Who.OWNER,
    ),
    ("inlet", "yes"): (
        Severity.STOP_NOW,
        "The shore inlet or its plug has been hot, is brown or loose.",
        "Unplug at the dock and do not use it again until a licensed person has seen it.",
        Who.LICENSED,
    ),
    ("posts", "no"): (
        Severity.BEFORE_LEAVING,
        "Battery posts are open, or the box is not strapped down.",
        "Cover the posts and strap the box.",
        Who.OWNER,
    ),
    ("live", "yes"): (
        Severity.STOP_NOW,
        "Something is wired to the battery with no fuse at all.",
        "Disconnect it until it has a fuse close to the battery.",
        Who.TWO,
    ),
}
"""What a look can turn up: by question and answer."""


def _of_circuit(answer: CircuitAnswer) -> list[Finding]:
    circuit = answer.circuit
    return [
        Finding(
            f"circuits.{circuit.ident}",
            part.verdict,
            SEVERITIES[part.verdict],
            f"{circuit.ident} {circuit.name}: {part.words}",
            part.mend,
            part.rule,
        )
        for part in answer.parts
        if part.verdict != Verdict.FINE
    ]


def _of_inverter(plan: Plan, chosen: frozenset[str]) -> list[Finding]:
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


def looked(looks: Row) -> list[Finding]:
    """Return what the four looks turned up.

    Parameters
    ----------
    looks : Row
        Answers by question: yes, no or unknown.
    """
    found = []
    for (question, answer), (severity, words, mend, who) in LOOKS.items():
        if looks.get(question) == answer:
            found.append(
                Finding("looks." + question, Verdict.STOP, severity, words, mend, LOOKED, who)
            )
    return found


@lru_cache(maxsize=16)
def findings_of(plan: Plan, chosen: frozenset[str] = frozenset()) -> tuple[Finding, ...]:
    """Return every finding of a plan, gravest first.

    Parameters
    ----------
    plan : Plan
        As read.
    chosen : frozenset of str
        Ids of the AC loads that run together.
    """
    found = looked(dict(plan.looks))
    for circuit in plan.circuits:
        found += _of_circuit(circuit_answer(circuit, plan.boat.catalogue))
    found += _of_inverter(plan, chosen)
    return tuple(sorted(found, key=lambda finding: ORDER.index(finding.severity)))
