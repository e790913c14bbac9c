"""What drove a day: what was lacking, the engine, sources against use, and what differed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.simulate.stretch import heard
from engine.units import Share, fixed, said, words

if TYPE_CHECKING:
    from engine.simulate.run import Day

ALIKE: Final = Share(0.05)
"""Part of a day's use below which a difference is not worth a word."""
MOST: Final = 2
"""Sentences a day."""


def drove(day: Day, days: tuple[Day, ...]) -> str:
    """Return what drove a day, the weightiest first.

    Parameters
    ----------
    day : Day
        One of them.
    days : tuple of Day
        Shape ``(n,)``.

    Returns
    -------
    str
        One or two sentences.
    """
    worth = ALIKE * max(day.asked, 1.0)
    more_used = day.asked - _mean(days, "asked")
    found = [
        (heard(day.charge.unmet) * 1e6, f"Loads go without {_ah(day.charge.unmet)}."),
        (day.charge.engine, _engine(day)),
        (abs(more_used), f"{_ah(day.asked)} are used, {_against(more_used, '')}."),
    ]
    told = [one for one in found if one[0] > worth]
    told.append(_balance(day, days, worth))
    told.sort(key=lambda one: -one[0])
    return " ".join(sentence for _, sentence in told[:MOST])


def _engine(day: Day) -> str:
    return f"The engine runs {said(day.engine_hours, 2)} h and brings {_ah(day.charge.engine)}."


def _balance(day: Day, days: tuple[Day, ...], worth: float) -> tuple[float, str]:
    """Return how the sources stood against the use, with its weight (Ah)."""
    brought = {"sun": day.sun, "wind": day.wind, "shore power": day.shore}
    names = [name for name, charge in brought.items() if charge > 0]
    if not names:
        return day.asked, f"Nothing brings charge by itself: {_ah(day.asked)} are used."
    apart, spoken = sum(brought.values()) - day.asked, words(names)
    bring = "brings" if len(names) == 1 else "bring"
    if day.shore and apart > 0:
        cover = "covers" if len(names) == 1 else "cover"
        return apart, f"{spoken.capitalize()} {cover} the {_ah(day.asked)} used."
    against = "as much as is used"
    if abs(apart) > worth:
        against = f"{_ah(abs(apart))} {'more' if apart > 0 else 'less'} than is used"
    left = day.charge.curtailed
    over = f"; {_ah(left)} cannot be taken" if left > worth else ""
    differ = {"sun": day.sun - _mean(days, "sun"), "wind": day.wind - _mean(days, "wind")}
    most = max(differ, key=lambda name: abs(differ[name]))
    unlike = f"; {_against(differ[most], f' {most}')}" if abs(differ[most]) > worth else ""
    told = f"{spoken.capitalize()} {bring} {_ah(sum(brought.values()))}, {against}"
    return max(abs(apart), abs(differ[most])), f"{told}{over}{unlike}."


def _against(apart: float, what: str) -> str:
    return f"{_ah(abs(apart))} {'more' if apart > 0 else 'less'}{what} than on the mean day"


def _mean(days: tuple[Day, ...], name: str) -> float:
    return sum(float(getattr(one, name)) for one in days) / len(days)


def _ah(charge: float) -> str:
    return f"{fixed(charge, 0) if abs(charge) >= 9.5 else said(charge, 2)} Ah"
