"""Skies and winds: three days to compare, and days that follow each other as chance has them."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, erfc, log, pi, sqrt
from typing import TYPE_CHECKING, Final

from engine.generator import mixed, share_of, stepped
from engine.loads.draws import GOLDEN, HABITS, triangle
from engine.problem import Problem
from engine.simulate.days import Days
from engine.simulate.use import STEP, intervals
from engine.source import common_practice
from engine.table import Table
from engine.units import Amp, Hour, Share, said

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from engine.simulate.policy import Setup

SKIES: Final = Table(
    title="Sun of a day over that of a clear one",
    key="sky",
    value="share of the clear day's irradiation, 1",
    source=common_practice("clear, part cloud and dull days"),
    rows={"clear": 1.0, "part": 0.65, "dull": 0.25},
)
WIND_LIKE_YESTERDAY: Final = 0.5
"""Correlation of the normal scores of the winds of two days that follow each other."""
WIND_SOURCE: Final = common_practice("Rayleigh's winds of days, correlated 0.5")
FORTNIGHT: Final = 14


@dataclass(frozen=True, slots=True)
class Sun:
    """What panels bring in a day by its clearness.

    ``clearness`` rises (1); for each row there is a profile of a day, shape ``(96,)`` (A).
    """

    clearness: tuple[Share, ...]
    profiles: tuple[tuple[Amp, ...], ...]

    def __post_init__(self) -> None:
        rising = all(a < b for a, b in zip(self.clearness, self.clearness[1:], strict=False))
        if not self.clearness or not rising or self.clearness[0] <= 0:
            raise Problem("clearness", "It does not rise.", "Enter shares from small to large.")
        if len({len(one) for one in self.profiles}) != 1 or len(self.profiles) != len(
            self.clearness
        ):
            raise Problem(
                "profiles",
                f"{len(self.profiles)} profiles stand for {len(self.clearness)} days.",
                "Enter one profile for each clearness, all of one length.",
            )

    def at(self, clearness: float) -> list[float]:
        """Return the profile of a day.

        Parameters
        ----------
        clearness : float
            Of that day. [1]

        Returns
        -------
        list of float
            Straight between two rows; in proportion to the clearness beyond them. [A]

        Examples
        --------
        >>> Sun((Share(0.2), Share(0.6)), ((Amp(1.0),), (Amp(5.0),))).at(0.3)
        [2.0]
        """
        rows = self.clearness
        if clearness <= rows[0] or len(rows) == 1 or clearness >= rows[-1]:
            nearest = 0 if clearness <= rows[0] else -1
            factor = clearness / rows[nearest]
            return [factor * one for one in self.profiles[nearest]]
        above = next(n for n, row in enumerate(rows) if row >= clearness)
        part = (clearness - rows[above - 1]) / (rows[above] - rows[above - 1])
        rest = 1 - part
        pairs = zip(self.profiles[above - 1], self.profiles[above], strict=True)
        return [rest * low + part * high for low, high in pairs]


@dataclass(frozen=True, slots=True)
class Outlook:
    """What lies ahead, day by day; profiles are of one day, shape ``(96,)`` (A).

    ``spells`` gives, for a number of days and a seed, the clearness of each; ``wind`` the mean
    current of a day by its wind over the mean wind, and ``steady_wind`` the one that brings as much
    as many days do on average (1); ``days`` is how many; ``clear`` is a clear day's clearness (1),
    the sun's last row where None; ``on_demand`` where shore gives no more than is asked.
    """

    setup: Setup
    loads: tuple[Amp, ...]
    sun: Sun
    spells: Callable[[int, int], Sequence[float]]
    essential: tuple[Amp, ...] = ()
    wind: Callable[[float], float] | None = None
    shore: tuple[Amp, ...] = ()
    days: int = FORTNIGHT
    step: Hour = STEP
    steady_wind: float = 1.0
    clear: Share | None = None
    on_demand: bool = False

    def __post_init__(self) -> None:
        count = intervals(self.step)
        for name in ("loads", "essential", "shore"):
            rows = getattr(self, name)
            if len(rows) != count and (rows or name == "loads"):
                raise Problem(
                    name, f"{len(rows)} steps are no day.", f"Enter {count}, one for each step."
                )
        if len(self.sun.profiles[0]) != count:
            raise Problem(
                "sun", f"{len(self.sun.profiles[0])} steps are no day.", f"Enter {count} of them."
            )
        if not 1 <= self.days <= 60:
            raise Problem("days", f"{said(self.days)} days cannot be drawn.", "Enter 1 to 60.")

    def ahead(self, clearness: Sequence[float], winds: Sequence[float], habits: float) -> Days:
        """Return the days of one weather.

        Parameters
        ----------
        clearness, winds : sequence of float
            Shape ``(days,)``; winds over the mean wind. [1]
        habits : float
            What all loads are multiplied by. [1]
        """
        days, count = self.days, intervals(self.step)
        blown = [self.wind(day) for day in winds] if self.wind else []
        return Days(
            loads=tuple(Amp(habits * one) for one in self.loads) * days,
            essential=tuple(Amp(habits * one) for one in self.essential) * days,
            sun=tuple(Amp(one) for day in clearness for one in self.sun.at(day)),
            wind=tuple(Amp(one) for one in blown for _ in range(count)),
            shore=self.shore * days,
            step=self.step,
            on_demand=self.on_demand,
        )

    def under(self, sky: str) -> Days:
        """Return days that are all alike, in the steady wind.

        Parameters
        ----------
        sky : str
            A row of SKIES.
        """
        clearness = (self.clear or self.sun.clearness[-1]) * SKIES[sky]
        return self.ahead([clearness] * self.days, [self.steady_wind] * self.days, 1.0)

    def drawn(self, run: int, seed: int) -> tuple[list[float], list[float], list[float]]:
        """Return loads, essential loads and free sources of one run of a chance.

        Parameters
        ----------
        run : int
            From 0. [1]
        seed : int
            Of the whole chance. [1]

        Returns
        -------
        tuple of list of float
            Shape ``(96 days,)`` each. [A]
        """
        clear, blown, habits = self._weather(run, seed)
        free: list[float] = []
        for day, clearness in enumerate(clear):
            profile = self.sun.at(clearness)
            if self.wind and blown:
                mean = self.wind(blown[day])
                profile = [one + mean for one in profile]
            if self.shore:
                profile = [one + other for one, other in zip(profile, self.shore, strict=True)]
            free += profile
        loads = [habits * one for one in self.loads] * self.days
        essential = [habits * one for one in self.essential] * self.days
        return loads, essential or [0.0] * len(loads), free

    def drawn_days(self, run: int, seed: int) -> Days:
        """Return the days of one run of a chance, with each source by itself.

        Parameters
        ----------
        run : int
            From 0. [1]
        seed : int
            Of the whole chance. [1]
        """
        clear, blown, habits = self._weather(run, seed)
        return self.ahead(clear, blown, habits)

    def _weather(self, run: int, seed: int) -> tuple[Sequence[float], Sequence[float], float]:
        """Return clearness and wind of each day, and the habits of all, of one run."""
        own = mixed(seed, f"run {run}")
        blown = windy(self.days, own) if self.wind else ()
        return self.spells(self.days, own), blown, triangle(HABITS, (run + 0.5) * GOLDEN % 1)


def windy(days: int, seed: int) -> tuple[float, ...]:
    """Return the wind of days that follow each other, each over the mean wind.

    Parameters
    ----------
    days : int
        How many. [1]
    seed : int
        Any; the same gives the same days. [1]

    Returns
    -------
    tuple of float
        Shape ``(days,)``, spread as Rayleigh found. [1]

    Examples
    --------
    >>> windy(3, 1) == windy(3, 1), windy(3, 1) == windy(3, 2)
    (True, False)
    """
    state, found = mixed(seed, "wind"), []
    score, fresh = 0.0, 1.0
    for _ in range(days):
        radius = stepped(state)
        state = stepped(radius)
        normal = sqrt(-2 * log(share_of(radius))) * cos(2 * pi * share_of(state))
        score = sqrt(1 - fresh) * score + sqrt(fresh) * normal
        fresh = 1 - WIND_LIKE_YESTERDAY**2
        found.append(rayleigh(erfc(score / sqrt(2)) / 2))
    return tuple(found)


def rayleigh(above: float) -> float:
    """Return the wind, over the mean wind, that a share of winds lies above.

    Parameters
    ----------
    above : float
        Above 0 and at most 1. [1]

    Returns
    -------
    float
        ``√(−4/π ln above)``. [1]

    Examples
    --------
    >>> from math import exp, pi
    >>> rayleigh(1.0), rayleigh(exp(-pi / 4))
    (0.0, 1.0)
    """
    return sqrt(max(-4 / pi * log(above), 0.0))
