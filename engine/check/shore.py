"""The alternating-current side as a whole: every question, its findings, and its report."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final

from engine.check.shore_bonds import (
    bonds_asked,
    polarity_asked,
    source_states,
    transfer_asked,
)
from engine.check.shore_dock import abroad_of, fixed_installation, no_load_words, wrong_dock
from engine.check.shore_feed import dock_asked, feed_answer, feed_asked
from engine.check.shore_inverter import generator_answer, inverter_ac
from engine.check.shore_isolation import ISOLATED, isolation_asked
from engine.check.shore_load import load_answer
from engine.check.shore_main import interrupting_asked, leakage_asked, main_asked
from engine.check.shore_panel import branch_asked
from engine.check.shore_records import records_asked
from engine.check.shore_together import limit_asked, load_asked
from engine.finding import Verdict
from engine.shore.earthing import PERMANENT_BOND
from engine.shore.leakage_asks import MAIN_LEAKAGE, MAIN_LEAKAGE_230
from engine.shore.transfer import POLARITY

if TYPE_CHECKING:
    from engine.check.asked import Asked
    from engine.finding import Finding
    from engine.plan.parts import Plan

SEEN: Final = {
    MAIN_LEAKAGE.name: ("leakage", "no"),
    MAIN_LEAKAGE_230.name: ("leakage", "no"),
    POLARITY.name: ("polarity", "no"),
    ISOLATED.name: ("isolator", "no"),
    PERMANENT_BOND.name: ("bond", "yes"),
}
"""Rules whose findings a look may have brought already, and its answer; they are said once."""


@lru_cache(maxsize=32)
def shore_asked(plan: Plan) -> tuple[Asked, ...]:
    """Return every question of the AC side, the way from the dock first; none where none is stated.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    shore = plan.shore
    if not shore.stated and not shore.records:
        return ()
    generator = generator_answer(shore) if shore.generator is not None else None
    wrong = wrong_dock(shore)
    found = (
        dock_asked(shore) if wrong else None,
        None if wrong else load_asked(shore),
        None if wrong else limit_asked(shore),
        None if wrong else dock_asked(shore),
        None if wrong else feed_asked(shore),
        main_asked(shore),
        interrupting_asked(shore),
        leakage_asked(shore),
        polarity_asked(shore),
        isolation_asked(shore),
        transfer_asked(shore),
        bonds_asked(shore),
        *(branch_asked(shore, one) for one in shore.branches),
        *inverter_ac(plan).asked,
        generator.asked if generator else None,
        records_asked(shore),
    )
    return tuple(one for one in found if one is not None)


def shore_findings(plan: Plan) -> list[Finding]:
    """Return what needs doing on the AC side, leaving out what looking has already found.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    looks = dict(plan.looks)
    found: list[Finding] = []
    for asked in shore_asked(plan):
        for one in asked.findings:
            question, answer = SEEN.get(one.rule.name, ("", "any"))
            if looks.get(question) != answer:
                found.append(one)
    return found


def shore_report(plan: Plan) -> dict[str, Any]:
    """Return the AC side as plain data; currents in A, volts in V, shares as fractions.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    shore = plan.shore
    load, feed = load_answer(shore, shore.planned), feed_answer(shore)
    fixed = fixed_installation(shore)
    questions = {one.name: one.verdict.value for one in shore_asked(plan)}
    if load is None or feed is None:
        if shore.service is None:
            return {"problem": "The plan states no shore power."}
        return {"problem": no_load_words(shore), "questions": questions}
    return {
        "service": load.service.name,
        "watts": load.watts,
        "current": load.worst.now.current,
        "share": load.worst.now.share,
        "verdict": load.worst.now.verdict.value,
        "sentence": load.sentence,
        "apart": [f"{one} and {other}" for one, other in load.apart],
        "weak_volts": load.weak_volts,
        "weak_current": max(side.weak.current for side in load.sides),
        "neutral": load.neutral,
        "feed_drop": feed.lost if feed.cord or feed.feed else None,
        "feed_share": feed.share if feed.cord or feed.feed else None,
        "states": {str(one.state.supply): one.part.verdict.value for one in source_states(shore)},
        "not_abroad": [
            one.appliance.name
            for one, found in abroad_of(shore)
            if found.verdict is Verdict.STOP and found.own
        ],
        "passes_on_abroad": [
            one.appliance.name for one, found in abroad_of(shore) if not found.own
        ],
        "fixed_abroad": fixed.words if fixed else None,
        "questions": questions,
    }
