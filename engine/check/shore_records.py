"""What did a licensed person find, and do the figures of a pass bear it out?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.asked import Asked, fine, wrong
from engine.check.part import Part, open_question
from engine.finding import Rule, Severity, Verdict
from engine.shore.earthing import PERMANENT_BOND, Supply
from engine.shore.leakage_asks import main_asks, outlets_ask
from engine.shore.results import (
    ABOUT_JOIN,
    ABOUT_OUTLETS,
    about_trip,
    joined_on_shore,
    over,
    said_of,
    trip_of,
)
from engine.source import common_practice
from engine.units import words

if TYPE_CHECKING:
    from engine.plan.shore_parts import Record, ShorePlan

RESULTS: Final = Rule(
    "results",
    "a pass counts with a name, a date and figures that bear it out; a fail counts whoever wrote "
    "it",
    common_practice("a test sheet is signed and dated"),
)
UNPLUG: Final = "Unplug at the dock until a licensed person has mended and tested it."
AGAIN: Final = "A licensed person tests it again; until then take it as failed."
NOT_COMPARED: Final = "not compared"


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
    wanting = [word for word, text in (("name", one.person), ("date", one.date.strip()))
               if not text]  # fmt: skip
    if wanting:
        text = f"{name}: a pass without a {words(wanting)} does not count."
        return open_question(RESULTS, text)
    told = (
        f"found {one.found}{_compared(one)}"
        if one.found
        else f"nothing written down{_compared(one)}"
    )
    return fine(RESULTS, f"{name}: passed, {one.person}, {one.date}; {told}.")


def _against(shore: ShorePlan, one: Record) -> Part | None:
    """Return what speaks against a result in its own words; None where nothing does."""
    name = f"{one.ident} {one.name}: {'entered as pass, but ' if one.result == 'pass' else ''}"
    if joined_on_shore(one.name, one.found):
        text = f"{name}neutral and safety ground are joined aboard on shore power."
        return wrong(PERMANENT_BOND, Verdict.STOP, text, UNPLUG, Severity.STOP_NOW)
    if not about_trip(one.name, one.found):
        return None
    of_outlets = ABOUT_OUTLETS.search(one.name) is not None
    asks = outlets_ask(shore.service) if of_outlets else main_asks(shore.service)
    passed = over(trip_of(one.found), asks.trip, asks.time)
    if not passed:
        return None
    return wrong(asks.rule, Verdict.STOP, f"{name}{words(passed)}.", AGAIN, Severity.STOP_NOW)


def _compared(one: Record) -> str:
    """Return that nothing was compared, empty where a figure was."""
    about = f"{one.name} {one.found}"
    if ABOUT_JOIN.search(about):
        return "" if joined_on_shore(one.name, one.found) is not None else f", {NOT_COMPARED}"
    if not about_trip(one.name, one.found):
        return f", {NOT_COMPARED}"
    trip = trip_of(one.found)
    wanting = [word for word, read in (("current", trip.currents), ("time", trip.times))
               if not read]  # fmt: skip
    if len(wanting) == 1:
        return f", {wanting[0]} {NOT_COMPARED}"
    return f", {NOT_COMPARED}" if wanting else ""


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
    signed = one.result != "pass" or (one.person and one.date.strip())
    result = one.result or "no result"
    if not signed:
        result += ", not signed"
    return f"{told} ({one.ident}, {result})".strip()
