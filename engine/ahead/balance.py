"""What comes by itself in a day, beside what is used."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.ahead.brought import Brought, brought_of
from engine.loads.day_use import day_use
from engine.units import AmpHour

if TYPE_CHECKING:
    from engine.plan.parts import Plan


@dataclass(frozen=True, slots=True)
class Balance:
    """A day: what each source brings, and the median of what is used (Ah).

    ``free`` are the sources that count and that nobody starts.
    """

    brought: tuple[Brought, ...]
    used: AmpHour

    @property
    def free(self) -> tuple[Brought, ...]:
        """Sources that count and bring something by themselves."""
        return tuple(
            one for one in self.brought if one.source.counted and not one.started and one.clear > 0
        )

    @property
    def plugged(self) -> tuple[Brought, ...]:
        """Chargers on shore power that count: they give what is asked, up to their current."""
        return tuple(one for one in self.brought if one.source.counted and one.docked)

    @property
    def likely(self) -> AmpHour:
        """What they bring on a likely day, Ah."""
        return AmpHour(sum(one.likely for one in self.free))

    @property
    def over(self) -> AmpHour:
        """What is over on a likely day, Ah; below zero where it is short."""
        return AmpHour(self.likely - self.used)

    def sun(self) -> tuple[AmpHour, AmpHour, AmpHour]:
        """Return what all panels bring on a clear, a likely and a dull day, shape ``(3,)`` (Ah)."""
        panels = [one for one in self.free if one.source.kind == "solar"]
        return (
            AmpHour(sum(one.clear for one in panels)),
            AmpHour(sum(one.likely for one in panels)),
            AmpHour(sum(one.dull for one in panels)),
        )


def balance_of(plan: Plan, condition: str) -> Balance:
    """Return what comes by itself in a day beside what is used.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    """
    used = day_use(plan.loads, condition, plan.supply).band.median
    return Balance(brought_of(plan, condition), used)
