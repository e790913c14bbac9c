"""What a plan comes to, as plain data: the contract of ``report``."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from engine.check.bank import figures_of
from engine.check.bank_sizing import sizing_of
from engine.check.circuits import CircuitAnswer, answers_of
from engine.check.doubts import alone
from engine.check.findings import findings_of
from engine.check.inverter import inverter_answer
from engine.check.shore import shore_report
from engine.loads.day_use import always_live, day_use
from engine.loads.load import CONDITIONS
from engine.units import said

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from engine.plan.parts import Plan


def report_of(plan: Plan) -> dict[str, Any]:
    """Return every answer of a plan by name; charges in Ah, volts in V, shares as fractions."""
    standing = always_live(plan.loads, plan.supply)
    return {
        "boat": plan.boat.name,
        "made_up": plan.made_up,
        "day_use": {condition: _day(plan, condition) for condition in CONDITIONS},
        "always_live": {
            "current": standing.current,
            "day": standing.day,
            "week": standing.week,
            "loads": [load.ident for load in standing.standing],
        },
        "circuits": {one.circuit.ident: _circuit(one) for one in answers_of(plan)},
        "inverter": _inverter(plan),
        "shore": shore_report(plan),
        "days_alone": _days_alone(plan),
        "bank": _bank(plan),
        "findings": [
            {
                "where": finding.where,
                "verdict": finding.verdict.value,
                "severity": finding.severity.value,
                "words": finding.words,
                "mend": finding.mend,
                "rule": finding.rule.name,
                "source": str(finding.rule.source),
                "who": finding.who.value,
            }
            for finding in findings_of(plan)
        ],
        "problems": [problem.as_row() for problem in plan.problems],
    }  # fmt: skip


def _day(plan: Plan, condition: str) -> dict[str, Any]:
    answer = day_use(plan.loads, condition, plan.supply)
    return {
        "likely": answer.total.likely,
        "low": answer.total.low,
        "high": answer.total.high,
        "median": answer.band.median,
        "p10": answer.band.p10,
        "p90": answer.band.p90,
        "watt_hours": answer.total.likely * plan.supply.volts,
        "peak_current": answer.peak.running,
        "peak_with_surge": answer.peak.with_surge,
        "night": answer.night,
        "essential": answer.essential,
        "largest": [use.load.ident for use in answer.largest],
        "missing": [f"{one.load.ident}: {one.what}" for one in answer.missing],
    }


def _circuit(answer: CircuitAnswer) -> dict[str, Any]:
    wire, choice = answer.wire, answer.choice
    return {
        "drop": wire.drop if wire else None,
        "share": wire.share.likely if wire else None,
        "share_low": wire.share.low if wire else None,
        "share_high": wire.share.high if wire else None,
        "allowed": wire.allowed if wire else None,
        "working_drop": wire.physical if wire else None,
        "volts_at_load": wire.at_load if wire else None,
        "carries": wire.carries if wire else None,
        "protection_least": wire.window.least if wire else None,
        "protection_most": wire.window.most if wire else None,
        "size_to_buy": str(choice.size) if choice and choice.size else None,
        "verdict": answer.verdict.value,
        "governing": answer.governing,
        "missing": list(answer.missing),
    }


def _inverter(plan: Plan) -> dict[str, Any]:
    answer = inverter_answer(plan, frozenset())
    if answer is None:
        return {"problem": "The plan has no inverter."}
    result = answer.result
    first = result.first if result else None
    return {
        "watts": answer.watts,
        "dc_watts": answer.dc,
        "efficiency": answer.efficiency,
        "dc_current": first.current if first else None,
        "volts": first.volts if first else None,
        "time": result.time if result else None,
        "lossless_time": result.lossless_time if result else None,
        "tripped_at": result.tripped_at if result else None,
        "cut_off": answer.trips.value,
        "missing": list(answer.missing),
    }


def _bank(plan: Plan) -> dict[str, Any]:
    found = figures_of(plan.bank) if plan.bank else None
    if found is None:
        return {"problem": "The bank's chemistry or capacity is not known."}
    sizes = {name: sizing_of(plan, name) for name in CONDITIONS}
    return {
        "holds": found.held,
        "usable": found.usable,
        "watt_hours": found.energy,
        "mass": found.mass.likely,
        "cycles": found.cycles.likely,
        "most_charge": found.most_charge.likely,
        "size_asked": {name: one.capacity if one else None for name, one in sizes.items()},
        "start_joined": plan.start.joined or None,
    }


def _days_alone(plan: Plan) -> dict[str, Any]:
    found = {}
    for condition in CONDITIONS:
        days = alone(plan, condition)
        found[condition] = (
            {"low": days.low, "likely": days.likely, "high": days.high} if days else None
        )
    return found


def as_lines(found: Mapping[str, Any], indent: str = "") -> Iterable[str]:
    """Return a report as indented lines for people."""
    for key, value in found.items():
        if isinstance(value, dict):
            yield f"{indent}{key}:"
            yield from as_lines(value, indent + "  ")
        elif isinstance(value, list):
            rows = [_row(one) for one in value]
            yield f"{indent}{key}: {'; '.join(rows) or 'none'}"
        else:
            yield f"{indent}{key}: {_row(value)}"


def _row(value: object) -> str:
    if isinstance(value, dict):
        return ", ".join(f"{key} {one}" for key, one in value.items())
    if value is None:
        return "not known"
    return said(value, 4) if isinstance(value, float) else str(value)
