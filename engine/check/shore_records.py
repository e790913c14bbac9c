"""What did a licensed person find, and do the figures of a pass bear it out?"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from engine.check.asked import Asked, fine, wrong
from engine.check.part import Part, open_question
from engine.finding import Rule, Severity, Verdict
from engine.shore.adverse import (
    INSULATION,
    adverse,
    asks_ground,
    asks_insulation,
    asks_polarity,
    not_compared,
)
from engine.shore.earthing import PERMANENT_BOND, Supply
from engine.shore.joins import ABOUT_JOIN, joined_on_shore, said_of
from engine.shore.leakage_asks import main_asks, outlets_ask
from engine.shore.results import ABOUT_OUTLETS, Trip, about_trip, held_against, over, trip_of
from engine.shore.understood import beyond
from engine.source import common_practice
from engine.units import Amp, said, words

if TYPE_CHECKING:
    from engine.plan.shore_parts import Record, ShorePlan
    from engine.shore.leakage_asks import Ask

RESULTS: Final = Rule(
    "results",
    "a pass counts with a name, a date and figures that bear it out; a fail counts whoever wrote "
    "it",
    common_practice("a test sheet is signed and dated"),
)
UNPLUG: Final = "Unplug at the dock until a licensed person has mended and tested it."
AGAIN: Final = "A licensed person tests it again; until then take it as failed."
SLOW: Final = "Some standards ask 100 ms: a licensed person says which one counts here."
NOT_COMPARED: Final = "not compared"
LEAST_TRIP: Final = Amp(0.001)
"""No device opens at less, A."""
STRANGE: Final = 6
"""Words told of those nobody foresaw."""
NOBODY: Final = frozenset({"unknown", "n/a", "na", "none", "nobody", "not known", "anon"})
"""What stands where a name is asked and is none."""


def records_asked(shore: ShorePlan) -> Asked | None:
    """Return what the results say, a fail by anybody counting; None without any.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    parts = tuple(_record(shore, one) for one in shore.records)
    return Asked("results", "records", parts) if parts else None


def _record(shore: ShorePlan, one: Record) -> Part:
    name = f"{one.ident} {one.name}"
    if one.result == "fail":
        tail = f": {one.found}" if one.found else ""
        text = f"{name}: failed, by {one.person or 'nobody named'}{tail}."
        return wrong(RESULTS, Verdict.STOP, text, UNPLUG, Severity.STOP_NOW)
    against = _against(shore, one)
    if against is not None:
        return against
    if one.result != "pass":
        tail = f" Found: {one.found}." if one.found else ""
        return open_question(RESULTS, f"{name}: no result yet.{tail}")
    wanting = _unsigned(one)
    if wanting:
        text = f"{name}: a pass without a {words(wanting)} does not count."
        return open_question(RESULTS, text)
    told = f"found {one.found}" if one.found else "nothing written down"
    text = f"{name}: passed, {one.person}, {one.date}; {told}"
    left = _left(shore, one)
    return open_question(RESULTS, f"{text}, {left}.") if left else fine(RESULTS, f"{text}.")


def _unsigned(one: Record) -> tuple[str, ...]:
    """Return what a signature lacks: a name has a letter, a date a figure."""
    asked = (("name", r"[^\W\d_]", one.person), ("date", r"\d", one.date))
    return tuple(
        word
        for word, needs, text in asked
        if not re.search(needs, text) or text.strip().lower() in NOBODY
    )


def _against(shore: ShorePlan, one: Record) -> Part | None:
    """Return what speaks against a result in its own words; None where nothing does."""
    name = f"{one.ident} {one.name}: {'entered as pass, but ' if one.result == 'pass' else ''}"
    if joined_on_shore(one.name, one.found):
        text = f"{name}neutral and safety ground are joined aboard on shore power."
        return wrong(PERMANENT_BOND, Verdict.STOP, text, UNPLUG, Severity.STOP_NOW)
    told = adverse(one.name, one.found)
    if told:
        rule = INSULATION if all(text.startswith(INSULATION.name) for text in told) else RESULTS
        return wrong(rule, Verdict.STOP, f"{name}{words(told)}.", UNPLUG, Severity.STOP_NOW)
    return _trip_against(shore, one, name) if about_trip(one.name, one.found) else None


def _asks(shore: ShorePlan, one: Record) -> Ask:
    of_outlets = ABOUT_OUTLETS.search(one.name) is not None
    return outlets_ask(shore.service) if of_outlets else main_asks(shore.service)


def _trip_against(shore: ShorePlan, one: Record, name: str) -> Part | None:
    """Return what speaks against a leakage trip: what it held, its current, its time."""
    asks, trip = _asks(shore, one), trip_of(one.found)
    verdict, held = held_against(trip, asks.trip)
    passed = over(trip, asks.trip, asks.time)
    if verdict is Verdict.STOP or passed:
        told = (*((held,) if held else ()), *passed)
        mend = UNPLUG if verdict is Verdict.STOP else AGAIN
        return wrong(asks.rule, Verdict.STOP, f"{name}{words(told)}.", mend, Severity.STOP_NOW)
    if asks.habit is None or one.result != "pass":
        return None
    slow = over(Trip(times=trip.times), asks.trip, asks.habit)
    if not slow:
        return None
    limit = said((asks.time or 0.0) * 1000)
    text = f"{one.ident} {one.name}: {words(slow)}, within {limit} ms."
    return wrong(asks.rule, Verdict.SHOULD, text, SLOW, Severity.SHOULD)


def _left(shore: ShorePlan, one: Record) -> str:
    """Return what was not compared, empty where all was."""
    about = f"{one.name} {one.found}"
    left = list(not_compared(one.name, one.found))
    known = bool(asks_polarity(*(told := (one.name, one.found))) or asks_insulation(*told)
                 or asks_ground(one.name))  # fmt: skip
    if ABOUT_JOIN.search(about):
        known = True
        if joined_on_shore(one.name, one.found) is None:
            left.append("shore power")
    if about_trip(one.name, one.found):
        known = True
        left += _trip_left(shore, one)
    strange = beyond(one.found)
    if strange and known:
        left.append(f"“{' '.join(strange[:STRANGE])}”")
    if not known:
        return NOT_COMPARED
    return f"{words(left)} {NOT_COMPARED}" if left else ""


def _trip_left(shore: ShorePlan, one: Record) -> tuple[str, ...]:
    """Return what of a leakage trip was not compared."""
    trip, asks = trip_of(one.found), _asks(shore, one)
    if shore.service is None:
        return ("without the shore service the trip is",)
    verdict, held = held_against(trip, asks.trip)
    real = [one for one in trip.currents if one >= LEAST_TRIP]
    asked = (("current", real), ("time", any(trip.times) or asks.time is None))
    left = [word for word, read in asked if not read]
    if verdict is Verdict.NOT_KNOWN:
        left.append(f"that {held} is")
    return tuple(left)


def found_with(shore: ShorePlan, supply: Supply) -> str:
    """Return what a licensed person found of neutral and safety ground with a source in use.

    Parameters
    ----------
    shore : ShorePlan
        With its results.
    supply : Supply
        In use.

    Returns
    -------
    str
        Each with its id and result; empty where none names the source.
    """
    found = []
    for one in shore.records:
        if not ABOUT_JOIN.search(f"{one.name} {one.found}"):
            continue
        told = said_of(supply, one.found) or (one.found if said_of(supply, one.name) else "")
        if told or (one.result == "fail" and not one.found):
            found.append(_with_result(one, told))
    return "; ".join(found)


def found_on(shore: ShorePlan, question: str) -> str:
    """Return what a licensed person found on a question, each with its id and result.

    Parameters
    ----------
    shore : ShorePlan
        With its results.
    question : str
        ``leakage protection``, ``neutral and safety ground``, or words of the result's own name,
        such as ``polarity``.
    """
    found = [_with_result(one, one.found) for one in shore.records if _is_about(one, question)]
    return "; ".join(found)


def _is_about(one: Record, question: str) -> bool:
    if question == "leakage protection":
        return about_trip(one.name, one.found)
    if question == "neutral and safety ground":
        return ABOUT_JOIN.search(f"{one.name} {one.found}") is not None
    return question in one.name.lower()


def _with_result(one: Record, told: str) -> str:
    signed = one.result != "pass" or not _unsigned(one)
    result = one.result or "no result"
    if not signed:
        result += ", not signed"
    return f"{told} ({one.ident}, {result})".strip()
