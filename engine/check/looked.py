"""What did looking turn up?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.shore_main import stands_in
from engine.conductors.mechanics import MOST_ON_STUD, STUD_STACK
from engine.finding import Finding, Rule, Severity, Verdict, Who, meets
from engine.loads.day_use import always_live
from engine.plan.look_fields import LOOKS
from engine.source import Source, common_practice
from engine.units import said

if TYPE_CHECKING:
    from engine.plan.parts import Plan

LOOKED: Final = Rule(
    "looks", "nothing found by looking is left", common_practice("a first look round")
)
ONE_BOND: Final = Rule(
    "one bond",
    "neutral and safety ground join only at the source of power in use",
    Source("ISO 13297", "2020", "6.8: shore neutral is not grounded on board"),
)
STANDING: Final = Rule(
    "always live",
    "with everything off, the bank gives no more than the loads known to stay on",
    common_practice("clamp meter on the battery lead"),
)

STOP, LEAVING, SHOULD = Severity.STOP_NOW, Severity.BEFORE_LEAVING, Severity.SHOULD
FOUND: Final = {
    ("fuse", "no"): (
        STOP,
        "A lead from the battery has no fuse or breaker within reach.",
        "Do not use that lead until it has one close to the battery.",
        Who.TWO,
    ),
    ("inlet", "yes"): (
        STOP,
        "The shore inlet or its plug has been hot, is brown or loose.",
        "Unplug at the dock and do not use it again until a licensed person has seen it.",
        Who.LICENSED,
    ),
    ("posts", "no"): (
        LEAVING,
        "Battery posts are open, or the box is not strapped down.",
        "Cover the posts and strap the box.",
        Who.OWNER,
    ),
    ("live", "yes"): (
        STOP,
        "Something is wired to the battery with no fuse at all.",
        "Disconnect it until it has a fuse close to the battery.",
        Who.TWO,
    ),
    ("vent", "no"): (
        LEAVING,
        "Gas cannot leave the battery box at its top.",
        "Open it at the top and let it out of doors; no sparks near it until then.",
        Who.OWNER,
    ),
    ("selector", "yes"): (
        LEAVING,
        "The alternator's output passes through the selector switch: turning it off while the "
        "engine runs can destroy the alternator.",
        "Lead the output to the bank by its own protected conductor; until then leave the switch "
        "alone while the engine runs.",
        Who.TWO,
    ),
    ("unlabelled", "yes"): (
        LEAVING,
        "Some wires have no label or a cut end; a live one can touch anything.",
        "Trace each, label both ends, cap the cut ones.",
        Who.OWNER,
    ),
    ("backbone", "yes"): (
        SHOULD,
        "The instrument backbone is fed at more than one place.",
        "Keep one feed and take the other away.",
        Who.OWNER,
    ),
    ("leakage", "no"): (
        LEAVING,
        "The AC main has no leakage trip.",
        "Do not use shore power until a licensed person has fitted one.",
        Who.LICENSED,
    ),
    ("polarity", "no"): (
        LEAVING,
        "The reverse-polarity light is dead.",
        "Do not rely on it; a licensed person replaces it and checks the polarity.",
        Who.LICENSED,
    ),
    ("isolator", "no"): (
        SHOULD,
        "Nothing keeps stray current off the safety ground: anodes and fittings pay for it.",
        "Have a galvanic isolator or an isolation transformer fitted. Never cut the safety ground.",
        Who.LICENSED,
    ),
    ("lead", "yes"): (
        STOP,
        "Something aboard is fed by a household lead or a twist connector.",
        "Unplug at the dock and do not use it until a licensed person has wired it.",
        Who.LICENSED,
    ),
}
"""By question and answer: how grave, what it is, what to do, who may."""
GRAVEST: Final = tuple(question for (question, _), row in FOUND.items() if row[0] is STOP)
BOND: Final = (
    "A licensed person found neutral joined to safety ground aboard while on shore power: the "
    "hull and the water round it can become live."
)
NO_SHORE: Final = "Do not plug in until a licensed person has taken the join away."


def looked(plan: Plan) -> list[Finding]:
    """Return what looking round turned up, and the reading with everything off.

    Parameters
    ----------
    plan : Plan
        With its looks.
    """
    answers = dict(plan.looks)
    if stands_in(plan.shore):
        answers.pop("leakage", None)
    found = [
        Finding(f"looks.{question}", Verdict.STOP, severity, words, mend, LOOKED, who)
        for (question, answer), (severity, words, mend, who) in FOUND.items()
        if answers.get(question) == answer
    ]
    found += [_not_looked(question) for question in GRAVEST if answers.get(question) == "unknown"]
    if answers.get("bond") == "yes":
        bond = Finding("looks.bond", Verdict.STOP, STOP, BOND, NO_SHORE, ONE_BOND, Who.LICENSED)
        found.append(bond)
    return [*found, *_stack(plan), *_standing(plan)]


def _not_looked(question: str) -> Finding:
    """Return that a grave question is still open."""
    words = f"Not known: {LOOKS[question].label[0].lower()}{LOOKS[question].label[1:]}"
    mend = "Look before leaving; until then take it that it is not as it should be."
    where = f"looks.{question}"
    return Finding(where, Verdict.NOT_KNOWN, LEAVING, words, mend, LOOKED, Who.OWNER)


def _stack(plan: Plan) -> list[Finding]:
    count = plan.stack
    if count is None or meets(count, MOST_ON_STUD):
        return []
    words = (
        f"{said(count)} ring terminals on one post or stud, where {MOST_ON_STUD} is the most: the "
        "stack works loose and heats."
    )
    mend = "Fit a busbar and move them to it, two to a stud."
    return [Finding("looks.stack", Verdict.STOP, LEAVING, words, mend, STUD_STACK, Who.TWO)]


def _standing(plan: Plan) -> list[Finding]:
    read = plan.standing
    if read is None:
        return []
    known = always_live(plan.loads, plan.supply)
    if meets(read.low, known.most):
        return []
    lost = read.likely - known.current
    words = (
        f"{said(read.likely)} A read with everything off, {said(known.current, 2)} A expected: "
        f"{said(lost, 2)} A is unaccounted for, {said(lost * 24, 2)} Ah a day."
    )
    mend = "Pull one fuse at a time and watch the reading; what drops it is what draws."
    return [Finding("looks.standing", Verdict.SHOULD, SHOULD, words, mend, STANDING)]
