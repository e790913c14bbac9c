"""How large a bank must be for steady use, by the worksheet, and how long it lasts alone."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.finding import Demand, Rule, Step, governing
from engine.problem import Problem
from engine.source import Source
from engine.units import Amp, AmpHour, Hour, Share, said

WORKSHEET: Final = Source("IEEE 1013", "as taught in lecture notes", "bank sizing worksheet")

DEPTH: Final = Rule("depth", "the whole spell empties the bank no deeper than planned", WORKSHEET)
DAILY_DEPTH: Final = Rule(
    "daily depth", "one day empties the bank no deeper than planned", WORKSHEET
)
AGE: Final = Rule("age", "the bank still carries the spell when it has grown old", WORKSHEET)


@dataclass(frozen=True, slots=True)
class Need:
    """What a bank must do.

    ``daily`` is a day's use (Ah) and ``days`` how many of them without charging (d); ``depth`` and
    ``daily_depth`` are the shares that may be taken in the spell and in a day, ``end_of_life`` the
    share of its capacity an old bank still has (1). ``temperature_factor`` is the cell-size
    multiplier, 1 or more, ``margin`` likewise. ``largest_current`` is the most that runs (A).
    """

    daily: AmpHour
    days: float
    depth: Share
    daily_depth: Share
    end_of_life: Share
    largest_current: Amp
    temperature_factor: float = 1.0
    margin: float = 1.1

    def __post_init__(self) -> None:
        for name in ("daily", "days", "largest_current", "temperature_factor", "margin"):
            if not getattr(self, name) > 0:
                mend = "Enter more than 0."
                raise Problem(name, f"{said(getattr(self, name))} sizes no bank.", mend)
        for name in ("depth", "daily_depth", "end_of_life"):
            if not 0 < getattr(self, name) <= 1:
                mend = "Enter more than 0 and at most 1."
                raise Problem(name, f"{said(getattr(self, name))} is no share of a bank.", mend)


@dataclass(frozen=True, slots=True)
class Worksheet:
    """The filled worksheet: Ah, but for ``hour_rate`` (h)."""

    need: Need
    unadjusted: AmpHour
    demands: tuple[Demand, ...]
    capacity: AmpHour
    hour_rate: Hour

    @property
    def governing(self) -> Demand:
        """The greatest of the three demands; they are never multiplied with each other."""
        return governing(self.demands)

    @property
    def working(self) -> tuple[Step, ...]:
        """Every line of the worksheet, in its order."""
        need, largest = self.need, self.governing
        warmed = largest.least * need.temperature_factor
        return (
            Step("unadjusted",
                 f"{said(need.daily, 4)} Ah × {said(need.days)} day{'s' * (need.days != 1)}",
                 f"{said(self.unadjusted, 4)} Ah", WORKSHEET),
            *(Step(f"by {one.rule.name}", one.words, f"{said(one.least, 4)} Ah", one.rule.source)
              for one in self.demands),
            Step("greatest demand", f"by {largest.rule.name}", f"{said(largest.least, 4)} Ah"),
            Step("for temperature", f"× {said(need.temperature_factor)}", f"{said(warmed, 4)} Ah"),
            Step("capacity", f"× margin of {said(need.margin)}", f"{said(self.capacity, 4)} Ah"),
            Step("hour rate", f"capacity / {said(need.largest_current)} A, the largest current",
                 f"{said(self.hour_rate)} h"),
        )  # fmt: skip


def worksheet(need: Need) -> Worksheet:
    """Return the filled sizing worksheet.

    Parameters
    ----------
    need : Need
        What the bank must do.

    Notes
    -----
    The capacity is what the bank must give at its hour rate, so it is chosen by its capacity at
    that rate and not at the label's.

    References
    ----------
    .. [1] IEEE 1013, worksheet, as taught in lecture notes.

    Examples
    --------
    >>> need = Need(AmpHour(51.4), 6, Share(0.8), Share(0.2), Share(0.8), Amp(6.1))
    >>> worksheet(need).capacity
    424.1
    """
    spell = AmpHour(need.daily * need.days)
    demands = (
        _demand(DEPTH, "unadjusted", spell, need.depth),
        _demand(DAILY_DEPTH, "a day's use", need.daily, need.daily_depth),
        _demand(AGE, "unadjusted", spell, need.end_of_life),
    )
    capacity = AmpHour(governing(demands).least * need.temperature_factor * need.margin)
    return Worksheet(need, spell, demands, capacity, Hour(capacity / need.largest_current))


def _demand(rule: Rule, what: str, charge: AmpHour, share: Share) -> Demand:
    return Demand(rule, charge / share, f"{what} / {said(share * 100)} %")


def days_alone(capacity: AmpHour, usable: Share, health: Share, net_daily: AmpHour) -> float | None:
    """Return how many days a full bank lasts.

    Parameters
    ----------
    capacity : AmpHour
        As labelled. [Ah]
    usable : Share
        Of what it holds. [1]
    health : Share
        Tested capacity over the label's. [1]
    net_daily : AmpHour
        A day's use less what comes in. [Ah]

    Returns
    -------
    float or None
        None where what comes in covers the use. [d]

    Examples
    --------
    >>> days_alone(AmpHour(280.0), Share(0.8), Share(1.0), AmpHour(132.4))
    1.692
    """
    return capacity * health * usable / net_daily if net_daily > 0 else None
