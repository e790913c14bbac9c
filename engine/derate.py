"""What makes a figure smaller, or larger, than the one it is marked with: one line a reason."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite, prod
from typing import TYPE_CHECKING

from engine.finding import Step
from engine.problem import Problem
from engine.units import said

if TYPE_CHECKING:
    from engine.source import Source


@dataclass(frozen=True, slots=True)
class Derate:
    """One factor (1) with its name and its reason."""

    name: str
    factor: float
    why: str
    source: Source | None = None

    def __str__(self) -> str:
        return f"{self.name} × {said(self.factor)}: {self.why}"

    def __post_init__(self) -> None:
        if not (isfinite(self.factor) and self.factor >= 0):
            raise Problem(
                self.name, f"{said(self.factor)} cannot be a factor.", "Enter 0 to 1, such as 0.75."
            )


def derated(marked: float, derates: tuple[Derate, ...]) -> float:
    """Return a figure after every factor.

    Parameters
    ----------
    marked : float
        In any unit. [1]
    derates : tuple of Derate
        Shape ``(n,)``.

    Returns
    -------
    float
        In the same unit. [1]

    Examples
    --------
    >>> derated(90.0, (Derate("speed", 0.9, "fast"), Derate("heat", 0.75, "hot")))
    60.75
    """
    return marked * prod(one.factor for one in derates)


def working_of(marked: float, unit: str, derates: tuple[Derate, ...]) -> tuple[Step, ...]:
    """Return each factor and what is left after it.

    Parameters
    ----------
    marked : float
        Before any factor. [1]
    unit : str
        Shown beside the figures.
    derates : tuple of Derate
        Shape ``(n,)``.

    Examples
    --------
    >>> print(*working_of(90.0, "A", (Derate("heat", 0.75, "hot"),)))
    heat: hot, × 0.75 = 67.5 A
    """
    return tuple(
        Step(
            one.name,
            f"{one.why}, × {said(one.factor)}",
            f"{said(derated(marked, derates[: n + 1]))} {unit}",
            one.source,
        )
        for n, one in enumerate(derates)
    )
