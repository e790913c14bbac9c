"""Measure this next: which guess, if known, would narrow the days ahead most."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import sqrt
from typing import TYPE_CHECKING, Final

from engine.ahead.compare import FAR, figures_of
from engine.check.bank_now import health_of
from engine.check.doubts import doubts_of
from engine.estimate import Estimate
from engine.loads.load import CONDITIONS
from engine.problem import Problem
from engine.solar.tables import SHADE
from engine.source import Source, common_practice
from engine.units import MetrePerSecond, Share, Watt

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from engine.ahead.compare import Figures
    from engine.loads.load import Load
    from engine.plan.parts import Plan
    from engine.plan.source_parts import SourcePlan

LOADS: Final = 8
"""Guesses of loads that are tried: those that spread the day's use most."""
LEAST_DAYS: Final = 0.05
"""Days to the reserve below which a guess moves nothing."""
LEAST_HOURS: Final = 1 / 60
"""Engine hours a week below which it moves nothing."""
HOT: Final = Estimate(0.6, 0.75, 0.85, "default")
"""What a hot alternator has left, where nobody read it."""
WINDY: Final = Estimate(0.8, 1.0, 1.2, "default")
"""The mean wind a chart gives against the one at a mooring."""
RANGES: Final = common_practice("health 60 to 100 %, hot alternator 60 to 85 %, wind ± 20 %")
ROOT: Final = Source("JCGM 100 (GUM)", "2008", "5.1.2, root of the sum of squares")


@dataclass(frozen=True, slots=True)
class Guess:
    """One guess: its field, words, how known, and the figures with it low and high alone."""

    path: str
    words: str
    known_by: str
    low: Figures
    high: Figures

    @property
    def days(self) -> tuple[float, float]:
        """Days to the reserve under part cloud, fewest and most; FAR stands for more."""
        ends = sorted(FAR if one.part is None else one.part for one in (self.low, self.high))
        return ends[0], ends[1]

    @property
    def spread(self) -> float:
        """How far the days to the reserve are apart, d."""
        return self.days[1] - self.days[0]

    @property
    def engine(self) -> tuple[float, float]:
        """Engine hours a week, fewest and most, h."""
        ends = sorted((self.low.engine, self.high.engine))
        return ends[0], ends[1]


@dataclass(frozen=True, slots=True)
class NextGuess:
    """Guesses, the one that spreads the answer most first, and the spread of all together, d."""

    guesses: tuple[Guess, ...]
    spread: float

    def without(self, guess: Guess) -> float:
        """Return the spread that stays once a guess is known.

        Parameters
        ----------
        guess : Guess
            One of them.

        Returns
        -------
        float
            Root of the sum of squares of the others. [d]
        """
        return sqrt(max(self.spread**2 - guess.spread**2, 0.0))


def guesses_of(plan: Plan, condition: str) -> Iterator[Guess]:
    """Yield each guess of a plan that moves the days ahead, with both its ends tried.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Notes
    -----
    Each guess is set to its low and to its high end alone; the others stay.
    """
    for path, words, known_by, ends in _ends(plan, condition):
        low, high = (_figures(one, condition) for one in ends)
        if low and high:
            guess = Guess(path, words, known_by, low, high)
            if guess.spread >= LEAST_DAYS or guess.engine[1] - guess.engine[0] >= LEAST_HOURS:
                yield guess


def next_guess(guesses: Iterable[Guess]) -> NextGuess:
    """Return guesses in the order in which they leave the days to the reserve in doubt.

    Parameters
    ----------
    guesses : iterable of Guess
        Shape ``(n,)``.

    Notes
    -----
    Spreads add as the root of the sum of their squares, as independent doubts do; weather and
    habits stay out, since nobody can measure them beforehand.
    """
    ordered = sorted(guesses, key=lambda one: (-one.spread, one.engine[0] - one.engine[1]))
    return NextGuess(tuple(ordered), sqrt(sum(one.spread**2 for one in ordered)))


def _figures(plan: Plan, condition: str) -> Figures | None:
    try:
        return figures_of(plan, condition)
    except Problem:
        return None


def _ends(plan: Plan, condition: str) -> Iterator[tuple[str, str, str, tuple[Plan, Plan]]]:
    """Yield path, words, how known, and the plan with that guess low and high."""
    for doubt in doubts_of(plan, condition, LOADS):
        load, part = doubt.load, doubt.part
        name = f"hours_{condition}" if part == "hours" else part
        ends = (_with_load(plan, condition, load, part, high=high) for high in (False, True))
        yield f"loads.{load.ident}.{name}", f"{load.name}: {part}", doubt.known_by, _pair(ends)
    bank = plan.bank
    if bank is not None:
        health = health_of(bank)
        if not health.certain:
            pair = _pair(
                replace(plan, bank=replace(bank, health=Estimate.exact(end)))
                for end in (health.low, health.high)
            )
            yield "bank.health", "Bank: health", health.known_by, pair
    for source in plan.sources:
        if source.counted:
            yield from _of_source(plan, source)


def _pair(ends: Iterator[Plan]) -> tuple[Plan, Plan]:
    low, high = ends
    return low, high


def _of_source(
    plan: Plan, source: SourcePlan
) -> Iterator[tuple[str, str, str, tuple[Plan, Plan]]]:  # fmt: skip
    path = f"sources.{source.ident}"
    if source.kind == "solar" and source.watts and source.panels.overall is None:
        low, likely, high = SHADE[source.panels.shade]
        if low < high:
            ends = (Watt(source.watts * end / likely) for end in (low, high))
            pair = _pair(_with_source(plan, replace(source, watts=end)) for end in ends)
            yield f"{path}.overall", f"{source.called}: what shade leaves", "default", pair
    if source.kind == "alternator" and source.current and source.turning.read is None:
        pair = _pair(
            _with_source(plan, replace(source, turning=replace(source.turning, hot=Share(end))))
            for end in (HOT.low, HOT.high)
        )
        yield f"{path}.read", f"{source.called}: current when hot", "default", pair
    if source.kind == "wind" and source.rotor.wind_speed:
        speeds = (MetrePerSecond(source.rotor.wind_speed * end) for end in (WINDY.low, WINDY.high))
        pair = _pair(
            _with_source(plan, replace(source, rotor=replace(source.rotor, wind_speed=speed)))
            for speed in speeds
        )
        yield f"{path}.wind_speed", f"{source.called}: mean wind", "estimate", pair


def _with_source(plan: Plan, source: SourcePlan) -> Plan:
    sources = tuple(source if one.ident == source.ident else one for one in plan.sources)
    return replace(plan, sources=sources)


def _with_load(plan: Plan, condition: str, load: Load, part: str, *, high: bool) -> Plan:
    """Return the plan with one part of a load at one of its ends, and sure."""

    def end(stated: Estimate | None) -> Estimate | None:
        if stated is None:
            return None
        return Estimate.exact(stated.high if high else stated.low, stated.known_by)

    if part == "draw":
        known = replace(load, draw=end(load.draw), watts=end(load.watts))
    elif part == "duty":
        known = replace(load, duty=end(load.duty))
    else:
        place = list(load.hours)
        place[list(CONDITIONS).index(condition)] = end(load.hours_in(condition))
        known = replace(load, hours=tuple(place))
    loads = tuple(known if one.ident == load.ident else one for one in plan.loads)
    return replace(plan, loads=loads)
