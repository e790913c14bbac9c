"""What single changes bring: days gained before charging is needed, and engine hours saved."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from engine.units import Hour

if TYPE_CHECKING:
    from collections.abc import Mapping


class Told(Protocol):
    """A run or a chance: days until charging is needed, and engine hours a week."""

    @property
    def days_until_needed(self) -> float:
        """Counted up to the length of the run, d."""

    @property
    def engine_hours_a_week(self) -> Hour:
        """Engine hours a week, h."""


@dataclass(frozen=True, slots=True)
class Gain:
    """What a change brings: days until charging is needed (d), engine hours saved a week (h)."""

    change: str
    days: float
    hours_saved: Hour


def gain(change: str, before: Told, after: Told) -> Gain:
    """Return what a change brings.

    Parameters
    ----------
    change : str
        What is changed.
    before, after : Told
        Two runs, or two chances of as many runs, under the same weather.
    """
    return Gain(
        change,
        after.days_until_needed - before.days_until_needed,
        Hour(before.engine_hours_a_week - after.engine_hours_a_week),
    )


def ranked(before: Told, changes: Mapping[str, Told]) -> tuple[Gain, ...]:
    """Return what each change alone brings, first the one that gains most days.

    Parameters
    ----------
    before : Told
        As it is.
    changes : mapping of str to Told
        With each change alone, under the same weather.

    Returns
    -------
    tuple of Gain
        Shape ``(n,)``; equal days in order of engine hours saved.
    """
    gains = [gain(change, before, after) for change, after in changes.items()]
    return tuple(sorted(gains, key=lambda one: (-one.days, -one.hours_saved)))
