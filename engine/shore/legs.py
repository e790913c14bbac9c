"""Two legs and their neutral."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.finding import Rule
from engine.problem import Problem
from engine.source import Source
from engine.units import Amp, Metre, OhmPerKm, Volt, said

NEUTRAL: Final = Rule(
    "neutral",
    "the neutral carries the difference of two opposed legs, and their sum where both are one "
    "phase",
    Source("Kirchhoff's current law", "split phase", "legs half a turn apart"),
)


NOT_WATCHED: Final = "the neutral carries too much, and no breaker watches it"
"""Said where a breaker would trip."""


@dataclass(frozen=True, slots=True)
class Legs:
    """Current of each leg in A; ``one_phase`` where both legs come from the same phase."""

    one: Amp
    two: Amp
    one_phase: bool = False

    def __post_init__(self) -> None:
        if self.one < 0 or self.two < 0:
            raise Problem(
                "legs",
                f"{said(min(self.one, self.two))} A on a leg is less than nothing.",
                "Enter 0 A or more.",
            )

    @property
    def neutral(self) -> Amp:
        """Current of the neutral, A."""
        return Amp(self.one + self.two if self.one_phase else abs(self.one - self.two))


def leg_drops(legs: Legs, run: Metre, resistance: OhmPerKm) -> tuple[Volt, Volt]:
    """Return the volts each leg loses between dock and boat.

    Parameters
    ----------
    legs : Legs
        Currents.
    run : Metre
        One way. [m]
    resistance : OhmPerKm
        Of each conductor, neutral included. [Ω/km]

    Returns
    -------
    tuple of Volt
        Each leg's own one-way drop and its part of the neutral's, which lifts the lighter leg of
        an opposed pair: a negative figure is a rise. [V]

    Examples
    --------
    >>> leg_drops(Legs(Amp(40.0), Amp(40.0)), Metre(15.0), OhmPerKm(1.6))
    (0.96, 0.96)
    >>> leg_drops(Legs(Amp(40.0), Amp(0.0)), Metre(15.0), OhmPerKm(1.6))
    (1.92, -0.96)
    """
    ohms = run / 1000 * resistance
    back = legs.one + legs.two if legs.one_phase else legs.one - legs.two
    other = back if legs.one_phase else -back
    return Volt(ohms * (legs.one + back)), Volt(ohms * (legs.two + other))
