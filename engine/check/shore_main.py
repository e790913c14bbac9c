"""Are the main breaker and its leakage protection where and what they should be?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.asked import Asked, fine, part_of, wrong
from engine.check.part import Part, open_question
from engine.finding import Rule, Severity, Verdict, Who
from engine.shore.isolation import Isolation
from engine.shore.leakage import Guard, judge_main_leakage
from engine.shore.leakage_asks import main_asks
from engine.shore.panel import (
    DOUBLE_POLE,
    INTERRUPTS_ENOUGH,
    MAIN_FITS,
    MAIN_NEAR,
    Main,
    interrupts_needed,
    judge_interrupting,
    judge_main,
)
from engine.source import common_practice
from engine.units import Amp, Metre, said

if TYPE_CHECKING:
    from engine.plan.shore_parts import MainBreaker, ShorePlan
    from engine.shore.services import Service

FITTING: Final = Metre(0.0)
ONE_MAIN: Final = Rule(
    "one main",
    "the main breaker's own fields and the circuit from the inlet say the same of it",
    common_practice("one breaker has one mark"),
)


def main_asked(shore: ShorePlan) -> Asked:
    """Return what is found of the main breaker.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    service, main, away = shore.service, shore.main, shore.feed.length
    where = "shore.main_rating"
    rating = main.largest
    if service is None or rating is None:
        part = open_question(MAIN_FITS, "Enter the shore service and the main breaker's rating.")
        return Asked("main breaker", where, (part,))
    parts = [
        part_of(one)
        for one in judge_main(
            Main(
                rating,
                FITTING if away is None else away,
                min(2 if one is None else one for one in (main.poles, main.other[1])),
                shore.feed.guarded,
            ),
            service,
        )
    ]
    parts += _twice(main)
    if not parts:
        parts.append(fine(MAIN_FITS, _main_words(shore)))
    if away is None:
        parts.append(open_question(MAIN_NEAR, "Enter how far the main is from the inlet."))
    if main.poles is None:
        parts.append(open_question(DOUBLE_POLE, "Enter how many poles the main has."))
    return Asked("main breaker", where, tuple(parts))


def _twice(main: MainBreaker) -> list[Part]:
    """Return what the main's own fields and the inlet's circuit say differently of it."""
    rating, poles = main.other
    told = []
    if rating is not None:
        told.append(f"{said(main.rating or 0.0)} A and {said(rating)} A")
    if poles is not None:
        told.append(f"{main.poles} and {poles} poles")
    mend = "Enter what is marked on it in both places, or leave one of them empty."
    text = "The main breaker is entered twice, here and as {}, with {}."
    return [
        wrong(ONE_MAIN, Verdict.SHOULD, text.format(main.ident, one), mend, Severity.SHOULD,
              Who.OWNER)
        for one in told
    ]  # fmt: skip


def _main_words(shore: ShorePlan) -> str:
    main, away = shore.main, shore.feed.length
    poles = {1: "one pole", 2: "two poles"}.get(main.poles or 0, "")
    said_poles = f" of {poles}" if poles else ""
    at = "" if away is None else f", {said(away)} m along the conductor from the inlet"
    guarded = ", that run guarded" if shore.feed.guarded and away else ""
    return f"Main breaker {said(main.rating or 0.0)} A{said_poles}{at}{guarded}."


def interrupting_asked(shore: ShorePlan) -> Asked:
    """Return what is found of the interrupting ratings.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    service = shore.service
    where = "shore.main_interrupting"
    if service is None:
        part = open_question(INTERRUPTS_ENOUGH, "Choose the shore service first.")
        return Asked("interrupting rating", where, (part,))
    parts = [
        _interrupts(rating, service, main=main)
        for rating, main in (
            (shore.main.interrupts, True),
            (shore.main.branches_interrupt, False),
        )
    ]
    return Asked("interrupting rating", where, tuple(parts))


def _interrupts(rating: Amp | None, service: Service, *, main: bool) -> Part:
    name = "main" if main else "branches"
    needed = interrupts_needed(service, main=main)
    if needed is None:
        text = (
            f"The least interrupting rating for {service.name} is not in this program's tables. "
            "Ask the marina for the fault current at its outlet."
        )
        return open_question(INTERRUPTS_ENOUGH, text, Verdict.CANNOT_SAY)
    least = said(needed[0], 4)
    if rating is None:
        text = f"Enter what the {name} interrupt{'s' if main else ''}; {least} A is the least."
        return open_question(INTERRUPTS_ENOUGH, text)
    found = judge_interrupting(rating, service, main=main)
    if found is not None:
        return part_of(found)
    verb = "The main interrupts" if main else "Branches interrupt"
    return fine(INTERRUPTS_ENOUGH, f"{verb} {said(rating, 4)} A; {least} A is the least.")


def stands_in(shore: ShorePlan) -> bool:
    """Return whether an isolation transformer stands in for leakage protection.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    distance = _to_transformer(shore)
    return distance is not None and judge_main_leakage(Guard(), distance) is None


def _to_transformer(shore: ShorePlan) -> Metre | None:
    isolated = shore.isolated
    return isolated.distance if isolated.kind is Isolation.TRANSFORMER else None


def leakage_asked(shore: ShorePlan) -> Asked:
    """Return what is found of the leakage protection at the main.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    leakage, where = shore.leakage, "shore.leakage"
    rule = main_asks(shore.service).rule
    distance = _to_transformer(shore)
    if shore.service is None or leakage.fitted is None:
        text = "Say whether the main has leakage protection: look for its test button."
        return Asked("leakage protection", where, (open_question(rule, text),))
    if leakage.fitted and leakage.trip is None:
        part = open_question(rule, "Enter the leakage it opens at, marked on it.")
        return Asked("leakage protection", where, (part,))
    guard = Guard(leakage.trip if leakage.fitted else None, leakage.time)
    found = judge_main_leakage(guard, distance, shore.service)
    if found is None:
        text = "An isolation transformer near the inlet stands in for it."
        if guard.trip is not None:
            text = f"Opens at {said(guard.trip * 1000)} mA"
            text += f" within {said((guard.time or 0.0) * 1000)} ms." if guard.time else "."
        return Asked("leakage protection", where, (fine(rule, text),))
    if found.verdict is Verdict.NOT_KNOWN:
        return Asked("leakage protection", where, (open_question(rule, found.words),))
    return Asked("leakage protection", where, (part_of(found),))
