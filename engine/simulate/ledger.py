"""The ledger of a run, in ampere-hours and in watt-hours: nothing comes from nowhere.

Watt-hours are ampere-hours at the volts the bank shows at rest, at the charge they flowed at.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING, Final

from engine.batteries.voltage import open_circuit
from engine.simulate.stretch import heard
from engine.units import Share

if TYPE_CHECKING:
    from collections.abc import Sequence

    from engine.simulate.house import House
    from engine.simulate.stretch import Flows, Stretch

    Told = tuple[Stretch, Flows]

CLOSES: Final = 1e-9
"""How far, relative to all that flowed and is stored, a ledger may be from closing."""
ROWS: Final = 100
"""Even steps of charge between which the volts at rest run straight."""


class UnbalancedError(ArithmeticError):
    """A ledger that does not close: a fault of the program, not of an entry."""


@dataclass(frozen=True, slots=True)
class Ledger:
    """What a run moved, all in one unit, Ah or Wh.

    ``start`` and ``end`` are stored; ``sources`` gave without an engine, ``engine`` with; of which
    the loads were ``served`` and charging ``lost``. ``curtailed`` and ``unmet`` never flowed.
    """

    start: float
    sources: float
    engine: float
    served: float
    lost: float
    end: float
    curtailed: float
    unmet: float

    @property
    def residual(self) -> float:
        """What is not accounted for, in the ledger's unit."""
        return self.start + self.sources + self.engine - self.served - self.lost - self.end

    def closed(self) -> Ledger:
        """Return the same ledger, if it closes.

        Raises
        ------
        UnbalancedError
            If more than 1e-9 of what flowed and is stored is not accounted for.
        """
        whole = self.start + self.sources + self.engine + self.served + self.lost + self.end
        if not abs(self.residual) <= CLOSES * max(whole, 1.0):
            raise UnbalancedError(f"{self.residual} of {whole} is not accounted for")
        return self


class Volts:
    """Volts at rest by charge, and the watt-hours stored below a charge for each ampere-hour."""

    __slots__ = ("_below", "_rows")

    def __init__(self, house: House) -> None:
        charges = [Share(n / ROWS) for n in range(ROWS + 1)]
        rows = [open_circuit(house.chemistry, charge, house.volts) for charge in charges]
        self._rows = rows
        means = ((one + other) / 2 / ROWS for one, other in pairwise(rows))
        self._below = list(accumulate(means, initial=0.0))

    def at(self, charge: float) -> float:
        """Return the volts at rest.

        Parameters
        ----------
        charge : float
            State of charge, 0 to 1. [1]

        Returns
        -------
        float
            Straight between the rows. [V]
        """
        low = min(int(charge * ROWS), ROWS - 1)
        return self._rows[low] + (charge * ROWS - low) * (self._rows[low + 1] - self._rows[low])

    def stored(self, charge: float) -> float:
        """Return what is stored for each ampere-hour the bank holds when full.

        Parameters
        ----------
        charge : float
            State of charge, 0 to 1. [1]

        Returns
        -------
        float
            The volts, summed up to that charge. [V]
        """
        low = min(int(charge * ROWS), ROWS - 1)
        return self._below[low] + (charge - low / ROWS) * (self._rows[low] + self.at(charge)) / 2

    def mean(self, before: float, after: float) -> float:
        """Return the mean volts from one charge to another.

        Parameters
        ----------
        before, after : float
            States of charge, 0 to 1. [1]

        Returns
        -------
        float
            By ampere-hours. [V]
        """
        if int(before * ROWS) == int(after * ROWS):
            return self.at((before + after) / 2)
        return (self.stored(after) - self.stored(before)) / (after - before)


def ledgers(house: House, told: list[Told], volts: Volts) -> tuple[Ledger, Ledger]:
    """Return the ledgers of some stretches that follow each other, in Ah and in Wh.

    Parameters
    ----------
    house : House
        The house bank.
    told : list of Told
        At least one stretch, each with its flows.
    volts : Volts
        Of that bank.

    Raises
    ------
    UnbalancedError
        If a ledger does not close.

    Notes
    -----
    Served is what the loads asked, less what was unmet; lost is what charging put in and the bank
    did not keep. Neither is reckoned from what the other terms leave.
    """
    full, kept = house.full, house.intake.efficiency
    charge, energy = [0.0] * 6, [0.0] * 6
    for one, flow in told:
        moved = (
            one.free * one.time - flow.curtailed,
            flow.engine,
            one.asked * one.time - flow.unmet,
            flow.put * (1 - kept),
            max(flow.curtailed - one.dock * one.time, 0.0),
            flow.unmet,
        )
        at = volts.mean(one.before / full, one.after / full)
        for n, amount in enumerate(moved):
            charge[n] += amount
            energy[n] += amount * at
    ends = told[0][0].before, told[-1][0].after
    below = [volts.stored(end / full) * full for end in ends]
    return _ledger(ends[0], charge, ends[1]), _ledger(below[0], energy, below[1])


def _ledger(start: float, moved: list[float], end: float) -> Ledger:
    sources, engine, served, lost, curtailed, unmet = moved
    told = Ledger(start, sources, engine, served, lost, end, heard(curtailed), heard(unmet))
    return told.closed()


def joined(days: Sequence[Ledger]) -> Ledger:
    """Return the ledger of days that follow each other.

    Parameters
    ----------
    days : sequence of Ledger
        Shape ``(n,)``, at least one, all in one unit.

    Raises
    ------
    UnbalancedError
        If it does not close.
    """
    moved = [
        sum(getattr(day, name) for day in days)
        for name in ("sources", "engine", "served", "lost", "curtailed", "unmet")
    ]
    return _ledger(days[0].start, moved, days[-1].end)
