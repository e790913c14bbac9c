"""What needs doing about charging: sources that do not fit the bank, or are not known."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.batteries.charging_volts import charging_volts
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.tables import ABSORB
from engine.charging.alternator import Alternator, output
from engine.charging.tables import MOST_CHARGE
from engine.check.bank_now import held_now, limit_in
from engine.finding import Finding, Rule, Severity, Verdict, Who, meets
from engine.problem import Problem
from engine.source import Source, common_practice
from engine.units import Amp, AmpHour, said

if TYPE_CHECKING:
    from engine.charging.intake import Limit
    from engine.plan.parts import Bank, Plan
    from engine.plan.source_parts import SourcePlan

TOO_HIGH: Final = 1.5
"""Volts of a string over those the bank is charged to, from which a plain one loses a third."""
HIGH: Final = 60.0
"""Volts of a string that are no work for an owner, V."""
LEAST_CHARGER: Final = 0.1
"""Of the bank's ampere-hours, below which a charger takes more than a night, 1/h."""
FILLING: Final = 13.2 / 12.0
"""Volts of a bank that fills over its nominal ones, as panels are reckoned with."""
FREE: Final = {"solar", "wind", "water", "shore"}
FIGURES: Final = {
    "solar": ("watts", "its watts"),
    "alternator": ("current", "its amperes"),
    "shore": ("current", "its amperes"),
    "wind": ("diameter", "how far its rotor is across"),
    "water": ("diameter", "how far its rotor is across"),
    "generator": ("watts", "its watts"),
}
"""The figure of a kind without which it brings nothing here, and its words."""

CHARGES: Final = Rule(
    "charging", "something charges the bank", common_practice("a bank only lent from runs down")
)
FIGURE: Final = Rule(
    "source's figure", "a source that counts has its figure", common_practice("read its label")
)
LIMIT: Final = Rule(
    "charge limit", "a source gives no more than the bank should see", MOST_CHARGE.source
)
LABEL: Final = Rule(
    "charge limit", "a source gives no more than the bank's label allows",
    Source("the bank's label", "as stated", "most charging current"),
)  # fmt: skip
TOGETHER: Final = Rule(
    "charge limit, together", "what charges at once gives no more than the bank should see",
    MOST_CHARGE.source,
)  # fmt: skip
SIZE: Final = Rule(
    "charger's size", "a charger has a tenth of the bank's ampere-hours or more",
    common_practice("half a bank in a night of ten hours, with the taper and its losses"),
)  # fmt: skip
HOT: Final = Rule(
    "alternator's limit",
    "an alternator that feeds lithium is held to what it can give when hot",
    common_practice("lithium takes all it is given for hours"),
)
STRING: Final = Rule(
    "string's volts", "a plain controller's panels fit the volts of the bank", ABSORB.source
)
ALIKE: Final = Rule(
    "strings alike", "strings side by side have as many panels each",
    common_practice("the shorter string is pulled down, or charges nothing"),
)  # fmt: skip
ABOVE: Final = Rule(
    "string above 60 V",
    "an owner works on no more than 60 V of direct current",
    common_practice("strings above 60 V are for a qualified person"),
)


def charging_findings(plan: Plan) -> list[Finding]:
    """Return what does not fit about charging, or is not known.

    Parameters
    ----------
    plan : Plan
        As read.
    """
    counted = [one for one in plan.sources if one.counted]
    found = _nothing(plan, counted)
    for one in counted:
        found += _figure(plan, one)
        if one.kind == "solar":
            found += _strings(plan, one)
        if one.kind == "alternator" and plan.bank:
            found += _alternator(one, plan.bank)
    limit = limit_in(plan.bank) if plan.bank else None
    if plan.bank and limit and limit.current > 0:
        found += _over(plan, plan.bank, counted, limit)
    return found


def _nothing(plan: Plan, counted: list[SourcePlan]) -> list[Finding]:
    if not plan.policy.never or any(one.kind in FREE for one in counted):
        return []
    return [
        Finding(
            "policy.never", Verdict.STOP, Severity.BEFORE_LEAVING,
            "Nothing charges the bank: the engine never runs for it, and nothing else counts.",
            "Let the engine run, or add panels or a shore charger.",
            CHARGES,
        )
    ]  # fmt: skip


def _figure(plan: Plan, one: SourcePlan) -> list[Finding]:
    field, words = FIGURES.get(one.kind, ("", "the kind of source"))
    known = {
        "watts": one.watts,
        "current": one.current or (one.turning.read if one.kind == "alternator" else None),
        "diameter": one.rotor.diameter,
    }.get(field)
    if known or plan.problem_at(f"sources.{one.ident}.{field}"):
        return []
    return [
        _about(one, Verdict.NOT_KNOWN, Severity.SHOULD,
               f"not known: {words}; so it brings nothing here.",
               "Read its label, or set it not to count.", FIGURE)
    ]  # fmt: skip


def _over(
    plan: Plan, bank: Bank, counted: list[SourcePlan], limit: Limit
) -> list[Finding]:  # fmt: skip
    """Hold each source that is started or plugged in, and all at once, against the limit."""
    held = held_now(bank) or AmpHour(0.0)
    rule, why = (LABEL, "by its label") if limit.stated else (LIMIT, f"for its {said(held)} Ah")
    if limit.cold:
        why = f"in the cold: {limit.cold[0].why}"
    found = []
    for one in counted:
        given = _given(one)
        if given and not meets(given, limit.current):
            words = f"it gives {said(given)} A; the bank should see {said(limit.current)} A, {why}."
            mend = f"Set it to {said(limit.current)} A or less."
            found.append(_about(one, Verdict.SHOULD, Severity.SHOULD, words, mend, rule))
        elif given and one.kind == "shore":
            found += _small(one, given, bank, limit)
    together = _together(plan, counted)
    if not found and not meets(together, limit.current):
        words = (
            f"What charges at once gives up to {said(together)} A; the bank should see "
            f"{said(limit.current)} A, {why}."
        )
        mend = "Hold them to it together, or see that they are not on at once."
        found.append(
            Finding("bank.most_charge", Verdict.SHOULD, Severity.NOTE, words, mend, TOGETHER)
        )
    return found


def _small(one: SourcePlan, given: Amp, bank: Bank, limit: Limit) -> list[Finding]:
    held = held_now(bank) or AmpHour(0.0)
    least = Amp(min(LEAST_CHARGER * held, limit.current))
    if meets(least, given):
        return []
    words = (
        f"its {said(given)} A are less than a tenth of the bank's {said(held)} Ah: a night at the "
        "dock does not fill it."
    )
    mend = f"Plan {said(least)} A or more, and what runs meanwhile on top."
    return [_about(one, Verdict.SHOULD, Severity.SHOULD, words, mend, SIZE)]


def _given(one: SourcePlan) -> Amp | None:
    """Return the most a source gives that is started or plugged in; None for others."""
    if one.kind in {"shore", "generator"}:
        return one.current
    if one.kind != "alternator" or (one.current is None and one.turning.read is None):
        return None
    turning = one.turning
    if turning.read is not None or one.current is None:
        return turning.read
    try:
        fitted = Alternator(one.current, turning.ratio, turning.hot, turning.limit)
        return output(fitted, turning.speed).current
    except Problem:
        return None


def _together(plan: Plan, counted: list[SourcePlan]) -> Amp:
    """Return what can charge at once: a dock's charger not under way, unless a generator runs."""
    given = {
        kind: sum(_given(one) or 0.0 for one in counted if one.kind == kind)
        for kind in ("alternator", "shore", "generator")
    }
    plugged = max(given["shore"], given["generator"])
    aboard = any(one.kind == "generator" for one in counted)
    started = given["alternator"] + plugged if aboard else max(given["alternator"], plugged)
    watts = sum(one.watts or 0.0 for one in counted if one.kind in {"solar", "wind", "water"})
    return Amp(started + watts / (FILLING * plan.boat.volts))


def _alternator(one: SourcePlan, bank: Bank) -> list[Finding]:
    turning = one.turning
    lead = CHEMISTRIES[bank.chemistry].lead
    if lead or one.current is None or turning.limit is not None or turning.read is not None:
        return []
    return [
        _about(one, Verdict.SHOULD, Severity.BEFORE_LEAVING,
               "it feeds lithium, and neither a set limit nor a current read hot is stated. It "
               "may run flat out until it overheats.",
               "Fit a regulator that minds its temperature, set a limit, and read it hot.", HOT)
    ]  # fmt: skip


def _strings(plan: Plan, one: SourcePlan) -> list[Finding]:
    panels, volts = one.panels, one.panels.string_volts
    found = []
    if panels.panels % panels.strings:
        words = f"{panels.panels} panels do not share out over {panels.strings} strings."
        mend = "Give each string as many panels, or each its own controller."
        found.append(_about(one, Verdict.SHOULD, Severity.SHOULD, words, mend, ALIKE))
    if volts > HIGH:
        words = f"a string has {said(volts)} V at its best point, more than 60 V."
        mend = "Fewer panels in series; or leave the work to a qualified person."
        found.append(_about(one, Verdict.SHOULD, Severity.SHOULD, words, mend, ABOVE, Who.LICENSED))
    if panels.controller != "plain" or plan.bank is None:
        return found
    wanted = charging_volts(CHEMISTRIES[plan.bank.chemistry], "absorb", plan.boat.volts)
    if wanted is None:
        return found
    if volts < wanted.likely:
        words = (
            f"a string of {said(volts)} V behind a plain controller cannot bring the bank to "
            f"{said(wanted.likely)} V."
        )
        mend = "More panels in series, or a controller that steps volts up."
        found.append(_about(one, Verdict.STOP, Severity.BEFORE_LEAVING, words, mend, STRING))
    elif volts > TOO_HIGH * wanted.likely:
        words = (
            f"a plain controller pulls a string of {said(volts)} V down to the bank's "
            f"{said(wanted.likely)} V; the rest is lost."
        )
        mend = "Panels side by side, or a controller that tracks the best point (MPPT)."
        found.append(_about(one, Verdict.SHOULD, Severity.SHOULD, words, mend, STRING))
    return found


def _about(  # noqa: PLR0913, PLR0917 - what a finding is made of
    one: SourcePlan, verdict: Verdict, severity: Severity, words: str, mend: str, rule: Rule,
    who: Who = Who.OWNER,
) -> Finding:  # fmt: skip
    return Finding(
        f"sources.{one.ident}", verdict, severity, f"{one.called}: {words}", mend, rule, who
    )
