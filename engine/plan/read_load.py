"""Reads one load of a document: its draw in amperes or watts, its hours and its surge."""

from __future__ import annotations

from functools import lru_cache

from engine.estimate import Estimate
from engine.loads.load import CONDITIONS, Load
from engine.plan.fields import LOAD
from engine.plan.reader import Reader
from engine.problem import Problem, quoted
from engine.units import POWER, converts, read


@lru_cache(maxsize=4096)
def is_power(text: str) -> bool:
    """Return whether a draw was typed as power rather than current.

    Examples
    --------
    >>> is_power("60 W"), is_power("4.6 A")
    (True, False)
    """
    units = [word for word in _words(text) if word]
    for unit in units:
        try:
            converts(unit, POWER)
        except Problem:
            continue
        return True
    return False


def _words(text: str) -> list[str]:
    return "".join(c if c.isalpha() else " " for c in text).split()


@lru_cache(maxsize=2048)
def load_of(stated: tuple[tuple[str, str], ...]) -> tuple[Load, tuple[Problem, ...]]:
    """Return a load; a row that says the same is not read again."""
    row = dict(stated)
    reader = Reader(f"loads.{row['id']}", row, LOAD)
    by = row.get("draw_by", "")
    draw = watts = None
    if is_power(reader.text("draw")):
        watts = _power(reader, by)
    else:
        draw = reader.estimate("draw", by)
    surge_text = reader.text("surge")
    surge = _surge(reader, watts is not None) if surge_text else None
    load = Load(
        row["id"],
        row.get("name", "") or row["id"],
        reader.choice("supply"),
        draw,
        watts,
        surge,
        tuple(reader.estimate(f"hours_{name}") for name in CONDITIONS),
        reader.estimate("duty"),
        reader.choice("window"),
        reader.yes("essential"),
        reader.yes("always_live"),
        row.get("zone", ""),
        row.get("circuit", ""),
        reader.choice("behaves"),
    )
    return load, tuple(reader.problems)


def _power(reader: Reader, by: str) -> Estimate | None:
    """Return a draw typed in watts."""
    try:
        typed = read(reader.text("draw"), POWER)
    except Problem as problem:
        reader.problems.append(problem.at(f"{reader.where}.draw"))
        return None
    low, likely, high = typed.low or 0.0, typed.likely or 0.0, typed.high or 0.0
    most = reader.fields["draw"].most * 12
    if low < 0 or high > most:
        reader.problems.append(
            Problem(
                f"{reader.where}.draw",
                f"{quoted(reader.text('draw'))} is not a power a load aboard can have.",
                f"Enter 0 to {most:.0f} W.",
            )
        )
        return None
    return Estimate(low, likely, high, by or "estimate")


def _surge(reader: Reader, in_watts: bool) -> float | None:  # noqa: FBT001
    """Return the surge in the unit of the draw: W beside W, A beside A."""
    text = reader.text("surge")
    if in_watts != is_power(text):
        if not in_watts or any(map(str.isalpha, text)):
            unit = "watts" if in_watts else "amperes"
            reader.problems.append(
                Problem(
                    f"{reader.where}.surge",
                    f"{quoted(text)} is not in the unit of the draw.",
                    f"Enter {unit}, as the draw is.",
                )
            )
            return None
        text = f"{text} W"
    if not in_watts:
        return reader.value("surge")
    try:
        return read(text, POWER).likely
    except Problem as problem:
        reader.problems.append(problem.at(f"{reader.where}.surge"))
        return None
