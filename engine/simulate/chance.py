"""How likely it is: many runs of the same days under weathers and habits drawn by a seed.

The same setup and seed give the same figures on every machine. The runs come in slices, each with
the estimate so far, so that a page can show progress and stop.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import TYPE_CHECKING, Final

from engine.loads.draws import DRAWS, SEED, quantile
from engine.problem import Problem
from engine.simulate.lasting import lasting_hours
from engine.simulate.march import march_of
from engine.simulate.policy import DAY
from engine.simulate.stretch import heard
from engine.units import AmpHour, Hour, Share

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from engine.simulate.house import House
    from engine.simulate.weather import Outlook

SLICE: Final = 25
"""Runs between two estimates."""
MOST_RUNS: Final = 5000
GRID: Final = Hour(3.0)
"""Distance of the moments a band is told at."""
WEEK: Final = 7.0


@dataclass(frozen=True, slots=True)
class Band:
    """Where the middle 80 % of runs lie, in the unit of what is drawn."""

    p10: float
    median: float
    p90: float


@dataclass(frozen=True, slots=True)
class Chance:
    """What ``runs`` of the ``asked`` came to.

    ``needed`` counts the runs in which charging was called for within 1, 2, 3 … days; ``charge`` is
    the band every three hours, ``lowest`` that of the lowest charge (1); ``engine_hours`` are a
    week's with the charge at the end made equal to that at the start (h), ``curtailed`` a day's
    (Ah). ``starts`` are the engine's in a mean run of so many ``days``; ``unmet`` counts runs in
    which some load went without; ``house`` is the bank.
    """

    runs: int
    asked: int
    needed: tuple[int, ...]
    days_until_needed: float
    charge: tuple[Band, ...]
    lowest: Band
    engine_hours: Band
    engine_hours_a_week: Hour
    fuel_a_week: float
    curtailed: AmpHour
    unmet: int
    days: int
    starts: float
    house: House

    @property
    def done(self) -> bool:
        """True where every run asked for is in it."""
        return self.runs == self.asked

    def needed_by(self, day: int) -> Share:
        """Return the chance that charging is needed within so many days.

        Parameters
        ----------
        day : int
            From 1. [1]

        Returns
        -------
        Share
            Of the runs so far. [1]
        """
        return Share(self.needed[day - 1] / self.runs)

    def error_by(self, day: int) -> Share:
        """Return the standard error of that chance, for the number of runs.

        Parameters
        ----------
        day : int
            From 1. [1]

        Returns
        -------
        Share
            ``√(p (1 − p) / n)``. [1]
        """
        share = self.needed_by(day)
        return Share(sqrt(share * (1 - share) / self.runs))


def chances(
    outlook: Outlook, runs: int = DRAWS, seed: int = SEED, every: int = SLICE
) -> Iterator[Chance]:
    """Yield the estimate after every slice of runs.

    Parameters
    ----------
    outlook : Outlook
        What lies ahead.
    runs : int
        In all. [1]
    seed : int
        Any; the same gives the same figures. [1]
    every : int
        Runs in a slice. [1]

    Yields
    ------
    Chance
        The last one is of all runs.

    Raises
    ------
    Problem
        If there is nothing to run.
    """
    if not 1 <= runs <= MOST_RUNS or every < 1:
        raise Problem("runs", f"{runs} runs tell no chance.", f"Enter 1 to {MOST_RUNS}.")
    told: list[_Told] = []
    for run in range(runs):
        told.append(_run(outlook, run, seed))
        if len(told) % every == 0 or len(told) == runs:
            yield _estimate(outlook, told, runs)


@dataclass(frozen=True, slots=True)
class _Told:
    """What is kept of a run: charges on the grid (1), and its figures."""

    charges: list[float]
    needed_at: float | None
    lowest: float
    engine_hours: float
    curtailed: float
    unmet: float
    starts: int


def _run(outlook: Outlook, run: int, seed: int) -> _Told:
    march = march_of(outlook.setup)
    dock = outlook.shore * outlook.days if outlook.on_demand else ()
    march.go(*outlook.drawn(run, seed), outlook.step, dock)
    full, apart = march.bank.full, max(round(GRID / outlook.step), 1)
    return _Told(
        [total / full for total in march.totals[::apart]],
        march.switches.needed_at,
        max(round(march.lowest / full, 12), 0.0),
        lasting_hours(march),
        march.curtailed,
        march.unmet,
        sum(one.kind == "engine start" for one in march.switches.events),
    )


def _estimate(outlook: Outlook, told: list[_Told], asked: int) -> Chance:
    days, count = outlook.days, len(told)
    needed = [days * DAY if one.needed_at is None else one.needed_at for one in told]
    called = [one.needed_at for one in told if one.needed_at is not None]
    hours = [one.engine_hours / days * WEEK for one in told]
    mean = Hour(sum(hours) / count)
    engine = outlook.setup.engine
    return Chance(
        runs=count,
        asked=asked,
        needed=tuple(sum(at <= day * DAY for at in called) for day in range(1, days + 1)),
        days_until_needed=sum(needed) / count / DAY,
        charge=tuple(map(_band, zip(*(one.charges for one in told), strict=True))),
        lowest=_band([one.lowest for one in told]),
        engine_hours=_band(hours),
        engine_hours_a_week=mean,
        fuel_a_week=mean * engine.fuel if engine else 0.0,
        curtailed=AmpHour(heard(sum(one.curtailed for one in told) / count / days)),
        unmet=sum(heard(one.unmet) > 0 for one in told),
        days=days,
        starts=sum(one.starts for one in told) / count,
        house=outlook.setup.house,
    )


def _band(values: Sequence[float]) -> Band:
    ordered = sorted(values)
    return Band(*(quantile(ordered, share) for share in (0.1, 0.5, 0.9)))
