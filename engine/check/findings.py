"""What needs doing: every finding of a plan, gravest first. One file asks each question."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.check.bank_asked import bank_findings
from engine.check.battery_share import battery_share
from engine.check.charging import charging_findings
from engine.check.circuits import answers_of
from engine.check.inverter_findings import inverter_findings
from engine.check.looked import looked
from engine.check.shared import shared
from engine.check.shore import shore_findings
from engine.finding import Finding, Rule, Severity, Verdict
from engine.plan.fields import field_at
from engine.source import common_practice

if TYPE_CHECKING:
    from engine.check.circuits import CircuitAnswer
    from engine.plan.parts import Plan

ORDER: Final = list(Severity)


UNREAD: Final = ("bank", "start", "sources", "policy", "shore")
"""Parts of a plan in which an entry that cannot be read is silent elsewhere."""
READABLE: Final = Rule(
    "entries are read",
    "what cannot be read counts as not known, or as usual",
    common_practice("nothing is judged by an entry nobody can read"),
)


def _unread(plan: Plan) -> list[Finding]:
    """Return a finding for each entry of bank, charging and shore power that cannot be read."""
    return [
        Finding(
            one.where,
            Verdict.NOT_KNOWN,
            Severity.SHOULD,
            f"{field_at(one.where).label}: {one.what} It counts as not known, or as usual.",
            one.mend,
            READABLE,
        )
        for one in plan.problems
        if one.where.partition(".")[0] in UNREAD
    ]


def _of_circuit(answer: CircuitAnswer) -> list[Finding]:
    circuit = answer.circuit
    about = f"{circuit.ident} {circuit.name}: "
    return [part.finding(f"circuits.{circuit.ident}", about) for part in answer.parts if part.asks]


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
    found = looked(plan)
    for answer in answers_of(plan):
        found += _of_circuit(answer)
    found += shared(plan)
    found += battery_share(plan)
    found += bank_findings(plan)
    found += inverter_findings(plan, chosen)
    found += shore_findings(plan)
    found += charging_findings(plan)
    found += _unread(plan)
    return tuple(sorted(found, key=lambda finding: ORDER.index(finding.severity)))
