"""A value with its range and how it is known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

KNOWN_BY: Final = {
    "measured": "read aboard with a meter or a tape",
    "nameplate": "read off the gear or its papers",
    "estimate": "a guess of yours, to be replaced",
    "default": "a typical figure this program brought; check it",
    "unknown": "nobody knows yet",
}
"""The ladder of knowledge: tag and meaning."""

SURENESS: Final = {
    "exact": (1.0, 1.0),
    "about ±10 %": (0.9, 1.1),
    "rough ±30 %": (0.7, 1.3),
    "wild ×2": (0.5, 2.0),
}
"""How sure? The factors below and above the likely value."""


@dataclass(frozen=True, slots=True)
class Estimate:
    """Low, likely and high of one value, in one unit, with how it is known."""

    low: float
    likely: float
    high: float
    known_by: str = "estimate"

    @classmethod
    def exact(cls, value: float, known_by: str = "measured") -> Estimate:
        """Return an estimate without a range."""
        return cls(value, value, value, known_by)

    @property
    def certain(self) -> bool:
        """True where low and high are the same."""
        return self.low == self.high

    def scaled(self, factor: float) -> Estimate:
        """Return the estimate in another unit or times a sure number.

        Parameters
        ----------
        factor : float
            Not negative. [1]

        Examples
        --------
        >>> Estimate(1.0, 2.0, 4.0).scaled(0.5)
        Estimate(low=0.5, likely=1.0, high=2.0, known_by='estimate')
        """
        return Estimate(self.low * factor, self.likely * factor, self.high * factor, self.known_by)
