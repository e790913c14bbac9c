"""What is asked of the bank: cold, reserve, likeness, discharge, and its join to the start bank."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from engine.batteries.ageing import cycle_life
from engine.batteries.charging_volts import charging_volts
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.tables import COLDEST_CHARGE
from engine.check.asked import Asked
from engine.check.part import Part, open_question
from engine.finding import Finding, Rule, Severity, Verdict, Who, meets
from engine.loads.day_use import day_use
from engine.loads.load import CONDITIONS
from engine.plan.start_fields import ALWAYS, APART, CONVERTER, JOINED, RELAY, SELECTOR
from engine.source import common_practice
from engine.units import Celsius, Share, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry
    from engine.plan.parts import Bank, Plan
    from engine.plan.start_parts import StartBank

STOPS_AT: Final = Celsius(3.0)
"""Where a charge stop is set, so far above the coldest charge, °C."""
DEEPER: Final = 0.1
"""How much deeper than usual is still common, a share."""

COLDEST: Final = {
    True: replace(COLDEST_CHARGE.source, place="lead: slow in the cold, never frozen"),
    False: replace(COLDEST_CHARGE.source, place="lithium plates below"),
}
"""Where the coldest charge comes from, for lead (True) and lithium."""
COLD: Final = {
    lead: Rule("cold charge", "no bank is charged colder than its chemistry allows", source)
    for lead, source in COLDEST.items()
}
FREEZES: Final = Celsius(0.0)
"""Where a lead battery run down may be frozen, °C; a full one stands far more."""
FROZEN: Final = "Run down, it may be frozen: never charge a frozen battery, it can burst."
RESERVE: Final = Rule(
    "reserve",
    "a bank is planned to be used no deeper than its chemistry lives with",
    common_practice("to 60 % of a lead bank at most, to 90 % of a lithium bank"),
)
ALIKE: Final = Rule(
    "alike",
    "batteries of one bank are of one chemistry, make, size and age",
    common_practice("the weakest drags the others down"),
)
DISCHARGE: Final = Rule(
    "discharge", "the plan draws no more than the bank allows",
    common_practice("the label, or what its protection opens at"),
)  # fmt: skip
PARTED: Final = Rule(
    "parted",
    "with nothing charging, the start bank stands apart from the house bank",
    common_practice("one bank is always kept for starting"),
)
VOLTS: Final = Rule(
    "charging volts",
    "banks joined for charging are charged to volts that suit both",
    common_practice("typical volts of each chemistry; the maker's sheet decides"),
)
DIRECT: Final = (RELAY, SELECTOR, ALWAYS)
"""Joins that put both banks on the same volts."""
FLATTENS: Final = (
    "One bad battery, or the loads, then flatten the good one too, and the engine does not start."
)
WORDS: Final = dict(JOINED)


def bank_asked(plan: Plan) -> tuple[Asked, ...]:
    """Return every question about the bank and the start bank, with what was found.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    found = []
    if plan.bank is not None:
        found = [
            Asked("charging in the cold", "bank.cold_stop", _cold(plan.bank)),
            Asked("the reserve line", "bank.reserve", _reserve(plan.bank)),
            Asked("batteries of one kind", "bank.alike", _alike(plan.bank)),
            Asked("the largest discharge", "bank.most_discharge", _discharge(plan, plan.bank)),
        ]
    if plan.bank is not None or plan.start.stated:
        found += [
            Asked("how the banks are joined", "start.joined", _joined(plan.start)),
            Asked("charging volts of both", "start.chemistry", _volts(plan)),
        ]
    return tuple(found)


def bank_findings(plan: Plan) -> list[Finding]:
    """Return what a rule does not want of the bank and the start bank.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    return [finding for one in bank_asked(plan) for finding in one.findings]


def _fine(rule: Rule, words: str) -> tuple[Part, ...]:
    return (Part(rule, Verdict.FINE, words),)


def _cold(bank: Bank) -> tuple[Part, ...]:
    kind = CHEMISTRIES[bank.chemistry]
    at, coldest, stop = bank.temperature, kind.coldest_charge, bank.more.cold_stop
    rule = COLD[kind.lead]
    least = f"{kind.label} must not be charged below {said(coldest)} °C"
    if at < coldest and not stop:
        words = f"The bank is at {said(at)} °C, and {least}: charging then spoils it for good."
        mend = "Charge nothing until it is warmer, and fit a sensor that stops charging."
        return (Part(rule, Verdict.STOP, words, mend, Severity.BEFORE_LEAVING, Who.TWO),)
    if kind.lead:
        words = f"{said(at)} °C, and this chemistry takes charge, slowly, when cold."
        return _fine(rule, f"{words} {FROZEN}" if at <= FREEZES else words)
    if stop is False:
        words = f"Nothing stops charging when the bank is cold, and {least}."
        mend = f"Fit a sensor on the bank that stops every charging source at {said(STOPS_AT)} °C."
        return (Part(rule, Verdict.SHOULD, words, mend, None, Who.TWO),)
    if stop is None:
        words = f"Say whether a sensor stops charging when the bank is cold: {least}."
        return (open_question(rule, words),)
    if at < STOPS_AT:
        words = f"At {said(at)} °C the sensor holds charging off: the bank only gives."
        mend = "Warm the bank, or plan these days without charging."
        return (Part(rule, Verdict.SHOULD, words, mend),)
    return _fine(rule, f"A sensor stops charging when it is cold; the bank is at {said(at)} °C.")


def _reserve(bank: Bank) -> tuple[Part, ...]:
    kind, used = CHEMISTRIES[bank.chemistry], 1 - bank.reserve
    words = f"Down to the reserve line {said(used * 100)} % is used, of {kind.label}"
    if meets(used, kind.usable + DEEPER):
        return _fine(RESERVE, f"{words}.")
    given, usual = (said(cycle_life(kind, Share(depth)), 2) for depth in (used, kind.usable))
    words += (
        f", where {said(kind.usable * 100)} % is common: it gives about {given} cycles so, in "
        f"place of {usual}."
    )
    mend = f"Set the reserve line at {said((1 - kind.usable) * 100)} %."
    return (Part(RESERVE, Verdict.SHOULD, words, mend),)


def _alike(bank: Bank) -> tuple[Part, ...]:
    count = bank.strings * bank.more.series
    if bank.more.alike is False:
        words = (
            "Batteries of unlike chemistry, make, size or age stand in one bank: the weakest drags "
            "the others down, and no charging volts suit them all."
        )
        mend = "Keep only what is alike, or part them into banks with a charging source each."
        return (Part(ALIKE, Verdict.SHOULD, words, mend),)
    if count < 2:
        return _fine(ALIKE, "One battery.")
    if bank.more.alike is None:
        return (open_question(ALIKE, f"Say whether the {count} batteries are all alike."),)
    return _fine(ALIKE, f"{count} batteries, all alike.")


def _discharge(plan: Plan, bank: Bank) -> tuple[Part, ...]:
    peaks = {
        spoken: day_use(plan.loads, name, plan.supply).peak for name, spoken in CONDITIONS.items()
    }
    spoken = max(peaks, key=lambda one: peaks[one].with_surge)
    peak, most = peaks[spoken], bank.more.most_discharge
    asked = (
        f"{said(peak.running)} A {spoken} with all of it running, {said(peak.with_surge)} A with "
        "a start"
    )
    if peak.running <= 0:
        return (open_question(DISCHARGE, "Nothing is switched on yet."),)
    if most is None:
        return (open_question(DISCHARGE, f"{asked}; enter what the bank allows."),)
    if meets(peak.with_surge, most):
        return _fine(DISCHARGE, f"{asked}; the bank allows {said(most)} A.")
    verdict = Verdict.SHOULD if meets(peak.running, most) else Verdict.STOP
    words = (
        f"{asked}, where the bank allows {said(most)} A: its protection may open, all goes dark."
    )
    mend = "Run less at one time, or choose a bank that allows more."
    grave = Severity.BEFORE_LEAVING if verdict is Verdict.STOP else None
    return (Part(DISCHARGE, verdict, words, mend, grave),)


def _joined(start: StartBank) -> tuple[Part, ...]:
    how = start.joined
    if not how:
        return (open_question(PARTED, "Say how the start bank is joined to the house bank."),)
    words = f"The banks are joined {WORDS[how]}"
    if how == CONVERTER:
        marked = f" of {said(start.converter)} A" if start.converter else ""
        return _fine(PARTED, f"{words}{marked}: they are never on the same volts.")
    if how == APART:
        return _fine(PARTED, "Nothing joins the banks: each has a charging source of its own.")
    if how == ALWAYS or start.parts is False:
        left = "" if how == ALWAYS else " and stay joined when charging ends"
        mend = "Part them, and join them for charging by a relay or a DC-DC charger."
        if how == SELECTOR:
            mend = "Turn it off “both” whenever charging ends, or fit a relay or a DC-DC charger."
        if how == RELAY:
            mend = "Have the relay looked at: it should open when charging ends."
        grave = Severity.BEFORE_LEAVING
        return (Part(PARTED, Verdict.STOP, f"{words}{left}. {FLATTENS}", mend, grave, Who.TWO),)
    if start.parts is None:
        mend = "Look at it an hour after charging: do they part?"
        unsure = f"{words}, and it is not known whether they part when charging ends. {FLATTENS}"
        return (Part(PARTED, Verdict.NOT_KNOWN, unsure, mend, Severity.SHOULD),)
    by_hand = " by hand: one forgotten turn joins them" if how == SELECTOR else ""
    return _fine(PARTED, f"{words}, and part when charging ends{by_hand}.")


def _volts(plan: Plan) -> tuple[Part, ...]:
    bank, start = plan.bank, plan.start
    if bank is None or not start.chemistry:
        return (open_question(VOLTS, "Enter the chemistry of both banks."),)
    if start.joined not in DIRECT:
        return _fine(VOLTS, "The banks are never on the same volts.") if start.joined else (
            open_question(VOLTS, "Say how the start bank is joined to the house bank."),
        )  # fmt: skip
    house, other = CHEMISTRIES[bank.chemistry], CHEMISTRIES[start.chemistry]
    if house is other:
        return _fine(VOLTS, f"Both are {house.label}.")
    set_to, wants = (charging_volts(one, "absorb", bank.volts) for one in (house, other))
    if set_to is None or wants is None:
        return ()
    if house.lead and other.lead and wants.low <= set_to.likely <= wants.high:
        return _fine(VOLTS, f"{said(set_to.likely)} V for the house bank suits both.")
    words = (
        f"Joined {WORDS[start.joined]}, both are charged to {said(set_to.likely, 4)} V, right for "
        f"{house.label}; the start bank, {other.label}, asks for {said(wants.low, 4)} to "
        f"{said(wants.high, 4)} V."
    )
    return (Part(VOLTS, Verdict.SHOULD, words + _lithium(house, other), DCDC, None, Who.TWO),)


DCDC: Final = "Join them by a DC-DC charger, which gives the start bank volts of its own."


def _lithium(house: Chemistry, other: Chemistry) -> str:
    """Return what more happens when one of two joined banks is lithium."""
    if house.lead and other.lead:
        return ""
    return " At rest the lithium bank's volts are the higher, and it runs down into the lead."
