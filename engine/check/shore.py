"""The alternating-current side as a whole: every question, its findings, and its report."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final

from engine.check.shore_bonds import (
    bonds_asked,
    polarity_asked,
    records_asked,
    source_states,
    transfer_asked,
)
from engine.check.shore_feed import dock_asked, feed_answer, feed_asked
from engine.check.shore_inverter import generator_answer, inverter_ac
from engine.check.shore_isolation import ISOLATED, isolation_asked
from engine.check.shore_load import load_answer
from engine.check.shore_panel import branch_asked, interrupting_asked, leakage_asked, main_asked
from engine.check.shore_together import load_asked
from engine.finding import Verdict
from engine.shore.abroad import Abroad, abroad
from engine.shore.earthing import PERMANENT_BOND
from engine.shore.leakage import MAIN_LEAKAGE
from engine.shore.transfer import POLARITY

if TYPE_CHECKING:
    from engine.check.asked import Asked
    from engine.finding import Finding
    from engine.plan.parts import Plan
    from engine.plan.shore_parts import Item, ShorePlan

SEEN: Final = {
    MAIN_LEAKAGE.name: ("leakage", "no"),
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
    found = (
        load_asked(shore),
        dock_asked(shore),
        feed_asked(shore),
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


def abroad_of(shore: ShorePlan) -> tuple[tuple[Item, Abroad], ...]:
    """Return whether each appliance may be used on the service abroad; none where none is chosen.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    there = shore.abroad
    if there is None:
        return ()
    return tuple((one, abroad(one.appliance, one.plate, there)) for one in shore.items)


def shore_report(plan: Plan) -> dict[str, Any]:
    """Return the AC side as plain data; currents in A, volts in V, shares as fractions.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    shore = plan.shore
    load, feed = load_answer(shore, shore.planned), feed_answer(shore)
    if load is None or feed is None:
        return {"problem": "The plan states no shore power."}
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
            one.appliance.name for one, found in abroad_of(shore) if found.verdict is Verdict.STOP
        ],
        "questions": {one.name: one.verdict.value for one in shore_asked(plan)},
    }
