"""May what is planned run together on shore power, also at a weak dock?"""

from __future__ import annotations

from typing import TYPE_CHECKING

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
        part = open_question(TRIPS, "Enter AC circuits with their appliances and watts.")
        return Asked("simultaneous load", "shore.service", (part,))
    parts = [_now(found)]
    if found.worst.now.verdict is not Verdict.NOT_KNOWN:
        parts.append(_weak(found))
    if found.neutral is not None:
        parts.append(_neutral(found))
    return Asked("simultaneous load", "shore.service", tuple(parts))


def _now(found: LoadAnswer) -> Part:
    now = found.worst.now
    if now.verdict is Verdict.FINE:
        return fine(now.rule, found.sentence)
    if now.verdict is Verdict.NOT_KNOWN:
        return open_question(now.rule, found.sentence)
    grave = Severity.BEFORE_LEAVING if now.verdict is Verdict.STOP else Severity.SHOULD
    return wrong(now.rule, now.verdict, found.sentence, found.leave_off, grave, Who.OWNER)


def _weak(found: LoadAnswer) -> Part:
    sure = [side.weak for side in found.sides if side.weak.verdict is not Verdict.NOT_KNOWN]
    weak = max(sure, key=lambda one: one.share)
    at = f"At a weak dock of {said(found.weak_volts)} V it is {said(weak.current)} A"
    text = f"{at}, {round(weak.share * 100)} %: {_who_moves(found)}."
    if weak.verdict is Verdict.STOP and found.worst.now.verdict is not Verdict.STOP:
        mend = "Run less together where the volts are low."
        return wrong(WEAK_DOCK, Verdict.SHOULD, text, mend, Severity.SHOULD, Who.OWNER)
    return fine(WEAK_DOCK, text)


def _who_moves(found: LoadAnswer) -> str:
    parts = []
    if found.falls:
        parts.append(f"{words(found.falls)} draw{'s' * (len(found.falls) == 1)} less")
    if found.rises:
        parts.append(f"{words(found.rises)} draw{'s' * (len(found.rises) == 1)} more")
    return ", ".join(parts) or "nothing changes"


def _neutral(found: LoadAnswer) -> Part:
    neutral = found.neutral or Amp(0.0)
    text = f"The neutral carries {said(neutral)} A."
    if meets(neutral, found.service.rating):
        return fine(NEUTRAL, text)
    return wrong(
        NEUTRAL,
        Verdict.STOP,
        f"{text} Both legs are one phase: their currents add in it, past "
        f"{said(found.service.rating)} A, and no breaker watches it.",
        "Use one leg only on such a dock.",
        Severity.BEFORE_LEAVING,
        Who.OWNER,
    )


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
