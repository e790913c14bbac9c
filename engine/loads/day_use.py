"""What a day costs: sums, the band, the largest users, and what is not known."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from operator import add, mul
from typing import Final

from engine.estimate import Estimate
from engine.loads.draws import DRAWS, drawn, habits, quantile
from engine.loads.load import ALWAYS, CONDITIONS, Load, Supply, bank_current, surge_current
from engine.units import Amp, AmpHour

FULL_DUTY: Final = Estimate.exact(1.0, "default")


@dataclass(frozen=True, slots=True)
class Use:
    """One load's share of a day, Ah."""

    load: Load
    day: Estimate


@dataclass(frozen=True, slots=True)
class Band:
    """Where the middle 80 % of days lie, Ah."""

    p10: AmpHour
    median: AmpHour
    p90: AmpHour


@dataclass(frozen=True, slots=True)
class Peak:
    """The most current at one time: everything used in a window running, plus one start, A."""

    window: str
    running: Amp
    with_surge: Amp
    starter: str


@dataclass(frozen=True, slots=True)
class Missing:
    """A load whose day cannot be reckoned, and what is not known of it."""

    load: Load
    what: str


@dataclass(frozen=True, slots=True)
class DayUse:
    """The answer for one living condition; charges in Ah at nominal volts."""

    condition: str
    uses: tuple[Use, ...]
    total: Estimate
    band: Band
    independent: Band
    night: AmpHour
    peak: Peak
    essential: AmpHour
    missing: tuple[Missing, ...]

    @property
    def largest(self) -> tuple[Use, ...]:
        """The five largest users, first the largest."""
        ordered = sorted(self.uses, key=lambda use: -use.day.likely)
        return tuple(use for use in ordered[:5] if use.day.likely > 0)


def use_of(load: Load, condition: str, supply: Supply) -> Estimate | None:
    """Return what one load takes in a day.

    Parameters
    ----------
    load : Load
        Any supply.
    condition : str
        One of CONDITIONS.
    supply : Supply
        Nominal volts and the inverter.

    Returns
    -------
    Estimate or None
        Current × hours × duty, ends with ends. None where a part is not known. [Ah]

    Examples
    --------
    >>> from engine.units import Volt
    >>> hours = (Estimate.exact(24.0),) * 4
    >>> fridge = Load("L11", "fridge", draw=Estimate(4.3, 4.6, 5.0), hours=hours,
    ...               duty=Estimate.exact(0.4))
    >>> use_of(fridge, "anchor", Supply(Volt(12.0))).likely
    44.16
    """
    hours = load.hours_in(condition)
    if hours is not None and hours.high == 0:
        return Estimate.exact(0.0, load.known_by)
    current = bank_current(load, supply)
    if hours is None or current is None:
        return None
    duty = load.duty or FULL_DUTY
    return Estimate(
        current.low * hours.low * duty.low,
        current.likely * hours.likely * duty.likely,
        current.high * min(hours.high, ALWAYS) * min(duty.high, 1.0),
        load.known_by,
    )


def _band(totals: list[float]) -> Band:
    ordered = sorted(totals)
    low, middle, high = (quantile(ordered, share) for share in (0.1, 0.5, 0.9))
    return Band(AmpHour(low), AmpHour(middle), AmpHour(high))


def _bands(uses: list[Use]) -> tuple[Band, Band]:
    """Return the band with the shared factor, and the misleading one without."""
    sure = sum(use.day.likely for use in uses if use.day.certain)
    totals = [sure] * DRAWS
    for use in uses:
        if not use.day.certain:
            totals = list(map(add, totals, drawn(use.load.ident, use.day)))
    return _band(list(map(mul, sorted(totals), habits()))), _band(totals)


def _peak(loads: list[Load], supply: Supply) -> Peak:
    """Return the greater of the day's and the night's sum of running currents."""
    found = []
    for window in ("day", "night"):
        running, best, starter = 0.0, 0.0, ""
        for load in loads:
            current = bank_current(load, supply)
            if load.window not in {"any", window} or current is None:
                continue
            running += current.likely
            rise = (surge_current(load, supply) or current.likely) - current.likely
            if rise > best:
                best, starter = rise, load.name
        found.append(Peak(window, Amp(running), Amp(running + best), starter))
    return max(found, key=lambda peak: peak.with_surge)


def _missing(load: Load, condition: str, supply: Supply) -> Missing:
    """Return what keeps a load's day from being reckoned."""
    if load.hours_in(condition) is None:
        return Missing(load, f"hours {CONDITIONS[condition]}")
    if load.supply == "inverter" and load.watts and supply.curve is None:
        return Missing(load, "the inverter it runs through")
    return Missing(load, "its draw")


@lru_cache(maxsize=64)
def day_use(loads: tuple[Load, ...], condition: str, supply: Supply) -> DayUse:
    """Return what a day costs in one living condition.

    Parameters
    ----------
    loads : tuple of Load
        Shape ``(n,)``.
    condition : str
        One of CONDITIONS.
    supply : Supply
        Nominal volts and the inverter.

    Notes
    -----
    The sum of likely values is not the middle of the outcome: most ranges are lopsided upward,
    so the median of the draws lies above it.
    """
    uses, missing, running = [], [], []
    total = Estimate.exact(0.0)
    night = essential = 0.0
    for load in loads:
        day = use_of(load, condition, supply)
        if day is None:
            missing.append(_missing(load, condition, supply))
            continue
        uses.append(Use(load, day))
        total = Estimate(total.low + day.low, total.likely + day.likely, total.high + day.high)
        night += day.likely * {"night": 1.0, "any": 0.5, "day": 0.0}[load.window]
        essential += day.likely if load.essential else 0.0
        if day.likely > 0:
            running.append(load)
    band, independent = _bands(uses)
    return DayUse(
        condition,
        tuple(uses),
        total,
        band,
        independent,
        AmpHour(night),
        _peak(running, supply),
        AmpHour(essential),
        tuple(missing),
    )


@dataclass(frozen=True, slots=True)
class AlwaysLive:
    """What no switch stops, with nobody aboard: likely and at worst, A."""

    standing: tuple[Load, ...]
    now_and_then: tuple[Load, ...]
    current: Amp
    most: Amp

    @property
    def day(self) -> AmpHour:
        """Charge a day, Ah."""
        return AmpHour(self.current * ALWAYS)

    @property
    def week(self) -> AmpHour:
        """Charge a week, Ah."""
        return AmpHour(self.day * 7)


def always_live(loads: tuple[Load, ...], supply: Supply) -> AlwaysLive:
    """Return the draw that stays on with every switch off.

    Parameters
    ----------
    loads : tuple of Load
        Those marked always live count: the ones on all day with nobody aboard add up to the
        standing draw, the others run now and then.
    supply : Supply
        Nominal volts and the inverter.
    """
    standing, seldom = [], []
    current = most = 0.0
    for load in loads:
        if not load.always_live:
            continue
        hours = load.hours_in("unattended")
        taken = bank_current(load, supply)
        if hours is not None and hours.likely >= ALWAYS and taken is not None:
            standing.append(load)
            current += taken.likely * (load.duty or FULL_DUTY).likely
            most += taken.high * (load.duty or FULL_DUTY).high
        else:
            seldom.append(load)
    return AlwaysLive(tuple(standing), tuple(seldom), Amp(current), Amp(most))


def by_group(answer: DayUse, group: str) -> dict[str, AmpHour]:
    """Return the day's likely use by zone or circuit, largest first.

    Parameters
    ----------
    answer : DayUse
        One condition.
    group : str
        ``zone`` or ``circuit``.
    """
    sums: dict[str, float] = {}
    for use in answer.uses:
        name = use.load.zone if group == "zone" else use.load.circuit
        sums[name] = sums.get(name, 0.0) + use.day.likely
    ordered = sorted(sums.items(), key=lambda pair: -pair[1])
    return {name: AmpHour(charge) for name, charge in ordered}
