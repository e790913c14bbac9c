"""Loads and sources of some whole days, step by step."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.problem import Problem
from engine.simulate.use import STEP, intervals

if TYPE_CHECKING:
    from engine.units import Amp, Hour

MOST_DAYS: Final = 366
PROFILES: Final = ("loads", "essential", "sun", "wind", "shore")


@dataclass(frozen=True, slots=True)
class Days:
    """The means of each step of some whole days from a midnight on; all in A but ``step`` (h).

    ``loads`` are all of them, ``essential`` those a disconnect leaves on; ``sun``, ``wind`` and
    ``shore`` are what these could bring. An empty profile is none. ``on_demand`` where shore gives
    no more than is asked, so that what it has over is not curtailed.
    """

    loads: tuple[Amp, ...]
    essential: tuple[Amp, ...] = ()
    sun: tuple[Amp, ...] = ()
    wind: tuple[Amp, ...] = ()
    shore: tuple[Amp, ...] = ()
    step: Hour = STEP
    on_demand: bool = False

    def __post_init__(self) -> None:
        count = intervals(self.step)
        if not self.loads or len(self.loads) % count or len(self.loads) > MOST_DAYS * count:
            raise Problem(
                "loads",
                f"{len(self.loads)} steps are no whole days of {count}.",
                f"Enter 1 to {MOST_DAYS} whole days.",
            )
        for name in PROFILES:
            rows = getattr(self, name)
            if rows and len(rows) != len(self.loads):
                raise Problem(
                    name,
                    f"It has {len(rows)} steps and the loads have {len(self.loads)}.",
                    "Enter one value for each step.",
                )
            if rows and not (min(rows) >= 0 and max(rows) < 1e9):
                raise Problem(name, "A current in it is below zero.", "Enter 0 A or more.")
        if any(one > every for one, every in zip(self.essential, self.loads, strict=False)):
            raise Problem(
                "essential", "It is more than all loads together.", "Count essential loads in both."
            )

    @property
    def free(self) -> list[float]:
        """What all sources but the engine could bring in each step, A."""
        profiles = [rows for rows in (self.sun, self.wind, self.shore) if rows]
        if not profiles:
            return [0.0] * len(self.loads)
        return [sum(step) for step in zip(*profiles, strict=True)]

    @property
    def dock(self) -> tuple[Amp, ...]:
        """What gives no more than is asked, A; empty where there is none."""
        return self.shore if self.on_demand else ()

    @property
    def kept_on(self) -> tuple[float, ...]:
        """What a disconnect leaves on, A."""
        return self.essential or (0.0,) * len(self.loads)
