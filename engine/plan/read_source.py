"""Reads what charges the bank, and when the engine runs for it."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final, TypeVar

from engine.field import value_of
from engine.plan.reader import Reader
from engine.plan.source_fields import KINDS, POLICY, SOURCE
from engine.plan.source_parts import Panels, PolicyPlan, Rotating, SourcePlan, Turning
from engine.problem import Problem
from engine.units import Amp, Hour, Metre, MetrePerSecond, Share, Volt, Watt, said

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.plan.document import Document

_M = TypeVar("_M")
NAMES: Final = dict(KINDS)


@lru_cache(maxsize=512)
def _source(stated: tuple[tuple[str, str], ...]) -> tuple[SourcePlan, tuple[Problem, ...]]:
    """Return a source; a row that says the same is not read again."""
    row = dict(stated)
    reader = Reader(f"sources.{row['id']}", row, SOURCE)
    kind = reader.choice("kind")
    spoken = NAMES.get(kind, "source")
    watts, current = reader.value("watts"), reader.value("current")
    overall, limit, read = (reader.value(one) for one in ("overall", "limit", "read"))
    diameter, wind = reader.value("diameter"), reader.value("wind_speed")
    panels, strings = _count(reader, "panels"), _count(reader, "strings")
    if strings > panels:
        what = f"{strings} strings are more than the panels, {panels}."
        mend = "Enter all panels above, then how many strings they make."
        reader.problems.append(Problem(f"{reader.where}.strings", what, mend))
    source = SourcePlan(
        row["id"],
        kind,
        f"{spoken[0].upper()}{spoken[1:]}",
        reader.yes("counted"),
        _measure(Watt, _marked(reader, "watts", watts)),
        _measure(Amp, _marked(reader, "current", current)),
        Panels(
            reader.choice("controller"),
            panels,
            min(strings, panels),
            Volt(reader.sure("panel_volts")),
            reader.sure("tilt"),
            reader.sure("facing"),
            reader.choice("shade"),
            reader.choice("mount"),
            Share(reader.sure("dirt")),
            _measure(Share, overall),
        ),
        Turning(
            reader.sure("ratio"),
            reader.sure("speed"),
            Share(reader.sure("hot")),
            _measure(Amp, limit),
            _measure(Amp, read),
        ),
        Rotating(
            _measure(Metre, diameter),
            Share(reader.sure("coefficient")),
            Metre(reader.sure("height")),
            Share(reader.sure("shelter")),
            _measure(MetrePerSecond, wind),
            MetrePerSecond(reader.sure("boat_speed")),
        ),
        Hour(reader.sure("hours")),
        reader.value("fuel"),
    )
    return source, tuple(reader.problems)


def _count(reader: Reader, name: str) -> int:
    """Return a whole number; what is none is a problem, and counts as the nearest."""
    value = reader.sure(name)
    nearest = max(round(value), 1)
    if value != nearest:
        what = f"{said(value)} is no whole number."
        reader.problems.append(Problem(f"{reader.where}.{name}", what, f"Enter {nearest}."))
    return nearest


def _measure(kind: Callable[[float], _M], value: float | None) -> _M | None:
    return None if value is None else kind(value)


def _marked(reader: Reader, name: str, value: float | None) -> float | None:
    """Return a figure, or what is marked where that reads as one."""
    if value is not None or reader.row.get(name, "").strip():
        return value
    try:
        found = value_of(SOURCE[name], reader.row.get("marked", ""))
    except Problem:
        return None
    return None if found.bare else found.likely


def sources_of(
    document: Document,
) -> tuple[tuple[SourcePlan, ...], PolicyPlan, tuple[Problem, ...]]:
    """Return every source a document states, when the engine charges, and what cannot be read."""
    sources: list[SourcePlan] = []
    problems: list[Problem] = []
    for row in document.get("sources", []):
        source, found = _source(tuple(row.items()))
        sources.append(source)
        problems += found
    reader = Reader("policy", document.get("policy", {}), POLICY)
    on, off = reader.value("engine_on_at"), reader.value("engine_off_at")
    if on is not None and off is not None and off <= on:
        reader.problems.append(
            Problem(
                "policy.engine_off_at",
                f"Off at {off:.0%} is no more than on at {on:.0%}.",
                "Enter the higher here, such as 60 %.",
            )
        )
        off = None
    policy = PolicyPlan(
        reader.text("source").strip().upper(),
        _measure(Share, on),
        _measure(Share, off),
        Hour(reader.sure("least_run")),
        Hour(reader.sure("quiet_from")),
        Hour(reader.sure("quiet_to")),
        reader.yes("never"),
    )
    return tuple(sources), policy, (*problems, *reader.problems)
