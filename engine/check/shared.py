"""Can the bank bring what a way of living uses at one time?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.network import network_answer
from engine.check.users import used_in
from engine.finding import Finding, Rule, Severity, Verdict, meets
from engine.inverter.sag import OPERATES
from engine.loads.load import CONDITIONS
from engine.source import common_practice
from engine.units import Share, fixed, said, words

if TYPE_CHECKING:
    from engine.plan.parts import Plan


LOW: Final = Share(0.875)
"""Share of the nominal volts below which much gear stops: 10.5 V of 12."""
KEEPS: Final = Rule(
    "volts where used",
    "with all that is used at one time, no load sees less than 87.5 % of the nominal volts",
    common_practice("where low-voltage cut-outs of much gear lie, 10.5 V of 12"),
)


def shared(plan: Plan) -> list[Finding]:
    """Return what a way of living asks too much of: no operating point, or volts too low.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    failing = [
        spoken
        for name, spoken in CONDITIONS.items()
        if network_answer(plan, used_in(plan, name), "lowest").solved is None
    ]
    if not failing:
        return _low(plan)
    said_of = (
        f"No operating point {words(failing)}, with all of it running and the bank at its reserve "
        "line: the volts collapse before every load has its power."
    )
    mend = "Run less at one time, or give the feeders more copper and better joints."
    verdict, severity = Verdict.STOP, Severity.BEFORE_LEAVING
    return [Finding("network", verdict, severity, said_of, mend, OPERATES)]


def _low(plan: Plan) -> list[Finding]:
    """Return the finding that some load's volts fall too low, the bank as it is now."""
    limit = LOW * plan.boat.volts
    found = {}
    for name, spoken in CONDITIONS.items():
        solved = network_answer(plan, used_in(plan, name), "now").solved
        if solved and solved.worst and not meets(limit, solved.volts[solved.worst]):
            found[spoken] = (solved.volts[solved.worst], solved.worst)
    if not found:
        return []
    volts, node = min(found.values())
    said_of = (
        f"With all of it running {words(found)}, {node} falls to {fixed(volts, 2)} V, under "
        f"{said(limit)} V."
    )
    mend = "Look at the DC network for what loses it: run less together, mend joints, more copper."
    return [Finding("network", Verdict.SHOULD, Severity.SHOULD, said_of, mend, KEEPS)]
