"""Can the bank bring what a way of living uses at one time?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.network import network_answer, used_in
from engine.finding import Finding, Severity, Verdict
from engine.inverter.sag import OPERATES
from engine.loads.load import CONDITIONS
from engine.units import words

if TYPE_CHECKING:
    from engine.plan.parts import Plan


def shared(plan: Plan) -> list[Finding]:
    """Return the finding that some way of living has no operating point, if so.

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
        return []
    said_of = (
        f"No operating point {words(failing)}, with all of it running and the bank at its reserve "
        "line: the volts collapse before every load has its power."
    )
    mend = "Run less at one time, or give the feeders more copper and better joints."
    verdict, severity = Verdict.STOP, Severity.BEFORE_LEAVING
    return [Finding("network", verdict, severity, said_of, mend, OPERATES)]
