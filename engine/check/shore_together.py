"""May what is planned run together on shore power, also at a weak dock?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.asked import Asked, fine, wrong
from engine.check.part import Part, open_question
from engine.check.shore_load import load_answer
from engine.finding import Severity, Verdict, Who, meets
from engine.shore.legs import NEUTRAL
from engine.shore.pass_through import CURRENT_LIMIT
from engine.shore.services import WEAK_DOCK
from engine.shore.together import TRIPS
from engine.units import Amp, Share, said, words

if TYPE_CHECKING:
    from engine.check.shore_load import LoadAnswer
    from engine.plan.shore_parts import ShorePlan


ONE_LEG: Final = (
    "Both legs are one phase: their currents add in the neutral. Use one leg only on such a dock."
)


def load_asked(shore: ShorePlan) -> Asked:
    """Return whether what is planned to run together may.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    found = load_answer(shore, shore.planned)
    if found is None:
        part = open_question(TRIPS, "Choose the shore service the inlet is made for.")
        return Asked("simultaneous load", "shore.service", (part,))
    if not found.running:
        untold = f" {found.sentence}" if found.unread else ""
        text = f"Enter AC circuits with their appliances and watts.{untold}"
        part = open_question(TRIPS, text)
        return Asked("simultaneous load", "shore.service", (part,))
    parts = [_now(found)]
    if found.worst.now.verdict is not Verdict.NOT_KNOWN:
        parts += _weak(found)
    if found.neutral is not None and not _by_neutral(found):
        parts.append(fine(NEUTRAL, f"The neutral carries {said(found.neutral)} A."))
    return Asked("simultaneous load", "shore.service", tuple(parts))


def _now(found: LoadAnswer) -> Part:
    now = found.worst.now
    if now.verdict is Verdict.FINE:
        return fine(now.rule, found.sentence)
    if now.verdict is Verdict.NOT_KNOWN:
        return open_question(now.rule, found.sentence)
    grave = Severity.BEFORE_LEAVING if now.verdict is Verdict.STOP else Severity.SHOULD
    mend = f"{ONE_LEG} {found.leave_off}" if _by_neutral(found) else found.leave_off
    rule = NEUTRAL if _by_neutral(found) else now.rule
    return wrong(rule, now.verdict, found.sentence, mend, grave, Who.OWNER)


def _by_neutral(found: LoadAnswer) -> bool:
    """Return whether the neutral is overloaded, which nothing but the person aboard notices."""
    return any(side.neutral and side.now.verdict is Verdict.STOP for side in found.sides)


def _weak(found: LoadAnswer) -> list[Part]:
    sure = [side.weak for side in found.sides if side.weak.verdict is not Verdict.NOT_KNOWN]
    if not sure or found.worst.now.verdict is Verdict.STOP:
        return []
    weak = max(sure, key=lambda one: one.share)
    at = f"At a weak dock of {said(found.weak_volts)} V it is {said(weak.current)} A"
    text = f"{at}, {round(weak.share * 100)} %: {_who_moves(found)}."
    if weak.verdict is Verdict.STOP:
        mend = "Run less together where the volts are low."
        return [wrong(WEAK_DOCK, Verdict.SHOULD, text, mend, Severity.SHOULD, Who.OWNER)]
    return [fine(WEAK_DOCK, text)]


def _who_moves(found: LoadAnswer) -> str:
    parts = []
    if found.falls:
        parts.append(f"{words(found.falls)} draw{'s' * (len(found.falls) == 1)} less")
    if found.rises:
        parts.append(f"{words(found.rises)} draw{'s' * (len(found.rises) == 1)} more")
    return ", ".join(parts) or "nothing changes"


def limit_asked(shore: ShorePlan) -> Asked | None:
    """Return what the input current limit of an inverter-charger should be; None without one.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    found = load_answer(shore, shore.planned)
    if not shore.on_inverter.circuit or found is None or not found.running:
        return None
    return Asked("input current limit", "shore.limit", (_limit(shore, found),))


def _limit(shore: ShorePlan, found: LoadAnswer) -> Part:
    if found.unread:
        text = f"What is left for the inverter-charger is not known: {found.unread}."
        return open_question(CURRENT_LIMIT, text)
    most = found.limit
    stated = shore.on_inverter.limit
    left = f"{said(most)} A" if most is not None else "nothing"
    advice = f"Beside what else runs, {left} is left for the inverter-charger within 80 %."
    if stated is None:
        return open_question(CURRENT_LIMIT, f"{advice} Enter what its limit is set to.")
    share = Share((stated + _rest(found, most)) / found.service.rating)
    if meets(share, 1.0):
        return fine(CURRENT_LIMIT, f"{advice} It is set to {said(stated)} A.")
    text = f"{advice} It is set to {said(stated)} A: with that the main can open."
    mend = "Set the limit lower while the rest runs."
    return wrong(CURRENT_LIMIT, Verdict.SHOULD, text, mend, Severity.NOTE, Who.OWNER)


def _rest(found: LoadAnswer, most: Amp | None) -> float:
    """Return the current beside the inverter-charger, from what was left within 80 %."""
    return 0.8 * found.service.rating - most if most is not None else found.worst.now.current
