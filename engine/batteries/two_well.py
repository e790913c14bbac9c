"""The two-well model of a bank: charge at hand, and charge that must first seep across.

The closed form of one step at one current, exact at any length. Current is positive on discharge.
For lead in a run of days; a lithium bank is counted in ampere-hours. No step here is of no time.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, expm1
from typing import TYPE_CHECKING, Final

from engine.batteries.tables import LOW_RATE_GAIN, WELL_RATE, WELL_SHARE
from engine.problem import Problem
from engine.source import Source
from engine.units import Amp, AmpHour, Hour, PerHour, Share, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry

TWO_WELL: Final = Source(
    "Manwell and McGowan", "Solar Energy 50 (1993) 399", "closed form of a step at one current"
)
PRINTED: Final = 1e-3
"""How far a printed figure may lie above a full well, since sheets round their figures."""


@dataclass(frozen=True, slots=True)
class Wells:
    """How a bank is split: ``rate`` of seeping (1/h), ``share`` at hand (1), ``full`` (Ah).

    ``rate`` is the k of the closed form, which is k' / (c (1 − c)) of the first paper; ``full`` is
    what both wells hold, more than the capacity at any rated hours.
    """

    rate: PerHour
    share: Share
    full: AmpHour

    def __post_init__(self) -> None:
        if not self.rate > 0:
            raise Problem("rate", f"A rate of {said(self.rate)} /h never seeps.", "Enter 0.3 /h.")
        if not 0 < self.share < 1:
            raise Problem(
                "share",
                f"A share of {said(self.share)} leaves one well empty.",
                "Enter 0.2 to 0.9.",
            )
        if not self.full > 0:
            raise Problem("full", f"A bank of {said(self.full)} Ah holds nothing.", "Enter 100 Ah.")

    @property
    def most_available(self) -> AmpHour:
        """What the well at hand holds when full, Ah."""
        return AmpHour(self.share * self.full)

    @property
    def most_bound(self) -> AmpHour:
        """What the other well holds when full, Ah."""
        return AmpHour((1 - self.share) * self.full)


@dataclass(frozen=True, slots=True)
class State:
    """What the two wells hold, Ah."""

    available: AmpHour
    bound: AmpHour

    @property
    def total(self) -> AmpHour:
        """In both wells, Ah."""
        return AmpHour(self.available + self.bound)


def wells_of(chemistry: Chemistry, capacity: AmpHour) -> Wells:
    """Return the typical wells of a bank.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    capacity : AmpHour
        At 20 hours, as it is now. [Ah]

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> wells_of(CHEMISTRIES["flooded"], AmpHour(200.0)).full
    237.0
    """
    name = chemistry.name
    return Wells(
        PerHour(WELL_RATE[name]),
        Share(WELL_SHARE[name]),
        AmpHour(capacity * LOW_RATE_GAIN[name]),
    )


def state_at(wells: Wells, charge: Share) -> State:
    """Return a rested bank: both wells equally full.

    Parameters
    ----------
    wells : Wells
        Of the bank.
    charge : Share
        Of what both hold, 0 to 1. [1]

    Examples
    --------
    >>> state_at(Wells(PerHour(0.4), Share(0.25), AmpHour(200.0)), Share(0.5))
    State(available=25.0, bound=75.0)
    """
    return State(AmpHour(wells.most_available * charge), AmpHour(wells.most_bound * charge))


def most_discharge(wells: Wells, state: State, time: Hour) -> Amp:
    """Return the current that empties the well at hand just at the end of a step.

    Parameters
    ----------
    wells : Wells
        Of the bank.
    state : State
        At the start.
    time : Hour
        Of the step, above zero. [h]

    Returns
    -------
    Amp
        The most the bank gives for so long; not negative. [A]

    References
    ----------
    .. [1] Manwell and McGowan, Solar Energy 50 (1993) 399.
    """
    return Amp(max(_left_at_rest(wells, state, time) / _taken_per_ampere(wells, time), 0.0))


def most_charge(wells: Wells, state: State, time: Hour) -> Amp:
    """Return the current that fills the well at hand just at the end of a step.

    Parameters
    ----------
    wells : Wells
        Of the bank.
    state : State
        At the start.
    time : Hour
        Of the step, above zero. [h]

    Returns
    -------
    Amp
        The most the wells take for so long; negative, as every charge. [A]

    References
    ----------
    .. [1] Manwell and McGowan, Solar Energy 50 (1993) 399.
    """
    room = wells.most_available - _left_at_rest(wells, state, time)
    return Amp(min(-room / _taken_per_ampere(wells, time), 0.0))


def step(wells: Wells, state: State, current: Amp, time: Hour) -> tuple[State, Amp]:
    """Return the wells after a step, and the current that truly flowed.

    Parameters
    ----------
    wells : Wells
        Of the bank.
    state : State
        At the start.
    current : Amp
        Asked for; positive on discharge. Held to what the well at hand gives or takes. [A]
    time : Hour
        Of the step, above zero. [h]

    Raises
    ------
    Problem
        If a well holds less than nothing or more than it can.

    Notes
    -----
    Within the step the well at hand is highest and lowest at the ends, because its rate of change
    only ever moves one way; so no bound is passed between them.

    References
    ----------
    .. [1] Manwell and McGowan, Solar Energy 50 (1993) 399.

    Examples
    --------
    >>> wells = Wells(PerHour(0.4), Share(0.25), AmpHour(200.0))
    >>> after, current = step(wells, state_at(wells, Share(1.0)), Amp(10.0), Hour(2.0))
    >>> round(after.total, 6), current
    (180.0, 10.0)
    """
    _refuse_impossible(wells, state)
    flowing = Amp(
        min(max(current, most_charge(wells, state, time)), most_discharge(wells, state, time))
    )
    available = _left_at_rest(wells, state, time) - flowing * _taken_per_ampere(wells, time)
    available = min(max(available, 0.0), wells.most_available)
    bound = min(max(state.total - flowing * time - available, 0.0), wells.most_bound)
    return State(AmpHour(available), AmpHour(bound)), flowing


def capacity_at(wells: Wells, time: Hour) -> AmpHour:
    """Return what a full, rested bank gives in a discharge of so many hours.

    Parameters
    ----------
    wells : Wells
        Of the bank.
    time : Hour
        Of the discharge, above zero. [h]

    Returns
    -------
    AmpHour
        At the steady current that lasts just so long. [Ah]

    Examples
    --------
    >>> wells = Wells(PerHour(0.376), Share(0.419), AmpHour(118.46))
    >>> [round(capacity_at(wells, Hour(h))) for h in (1.0, 10.0, 20.0)]
    [55, 87, 100]
    """
    return AmpHour(time * most_discharge(wells, state_at(wells, Share(1.0)), time))


def _left_at_rest(wells: Wells, state: State, time: Hour) -> float:
    """Return what would be at hand after the time if no current flowed."""
    kept = exp(-wells.rate * time)
    return state.available * kept + state.total * wells.share * -expm1(-wells.rate * time)


def _taken_per_ampere(wells: Wells, time: Hour) -> float:
    """Return how much less is at hand after the time, for each ampere of discharge."""
    seeped = -expm1(-wells.rate * time)
    return (seeped + wells.share * (wells.rate * time - seeped)) / wells.rate


def _refuse_impossible(wells: Wells, state: State) -> None:
    for name, held, most in (
        ("available", state.available, wells.most_available),
        ("bound", state.bound, wells.most_bound),
    ):
        if not 0 <= held <= most * (1 + PRINTED):
            raise Problem(
                name,
                f"{said(held, 6)} Ah cannot be in a well that holds {said(most, 6)} Ah.",
                f"Enter 0 to {said(most, 6)} Ah.",
            )
