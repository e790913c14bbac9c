"""How large the bank must be: the worksheet for steady use, the section method for bursts."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING, Final

from engine.batteries.bursts import (
    Period,
    corrected_capacity,
    factor_by_exponent,
    section_capacity,
    working_of_bursts,
)
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.sizing import Need, Worksheet, worksheet
from engine.batteries.temperature import capacity_factor
from engine.check.bank import heaviest
from engine.check.bank_now import capacity_now
from engine.finding import Step
from engine.loads.day_use import day_use
from engine.loads.load import running_hours
from engine.units import Amp, AmpHour, Hour, Share, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry
    from engine.plan.parts import Bank, Plan

SHORTEST: Final = Hour(1 / 60)
"""A burst counts for a minute at least, as the worksheet asks."""
BURST: Final = Hour(1.0)
"""A heavy load that runs less in a day is a burst, and no part of the largest steady current."""


@dataclass(frozen=True, slots=True)
class Sizing:
    """The capacity a way of living asks for, Ah: the greater of steady use and bursts.

    ``apart`` names the loads that count as bursts, each with its current, A, and time, h.
    """

    kind: Chemistry
    sheet: Worksheet
    apart: tuple[tuple[str, Period], ...]
    bursts: AmpHour
    burst_working: tuple[Step, ...]

    @property
    def capacity(self) -> AmpHour:
        """The greater of the two, Ah."""
        return max(self.sheet.capacity, self.bursts)


def sizing_of(plan: Plan, condition: str, chemistry: str = "") -> Sizing | None:
    """Return how large a bank must be.

    Parameters
    ----------
    plan : Plan
        With its bank, which says for how many days and how deep.
    condition : str
        One of CONDITIONS.
    chemistry : str
        Another one, at its typical depth and exponent; empty for the bank's own.

    Returns
    -------
    Sizing or None
        None where the chemistry is not known or nothing is used.
    """
    bank = plan.bank
    if bank is None:
        return None
    own = chemistry in {"", bank.chemistry}
    kind = CHEMISTRIES[chemistry or bank.chemistry]
    used = day_use(plan.loads, condition, plan.supply)
    if used.band.median <= 0 or used.peak.running <= 0:
        return None
    depth = Share(1 - bank.reserve) if own else kind.usable
    wanted, apart = bank.wanted, _bursts(plan, condition)
    steady = used.peak.running - sum(one.current for _, one in apart)
    need = Need(
        used.band.median,
        wanted.days,
        depth,
        wanted.daily_depth or depth,
        wanted.end_of_life,
        Amp(steady if steady > 0 else used.peak.running),
        1 / max(capacity_factor(kind, bank.temperature), 0.01),
        wanted.margin,
    )
    exponent = bank.exponent if own else kind.exponent.likely
    periods = _periods(Amp(used.band.median / 24), Hour(wanted.days * 24), apart)
    section = section_capacity(
        periods, partial(_factor, kind=kind, rated=bank.rated_hours, exponent=exponent)
    )
    corrections = (section, need.temperature_factor, need.margin, need.end_of_life)
    return Sizing(
        kind,
        worksheet(need),
        apart,
        corrected_capacity(*corrections),
        (_spell(periods), *working_of_bursts(*corrections)),
    )


def _factor(time: Hour, kind: Chemistry, rated: Hour, exponent: float) -> Hour:
    """Return Ah for each ampere carried so long, by the law and its low-rate clamp."""
    return Hour(max(factor_by_exponent(time, rated, exponent), time / kind.low_rate_gain))


def _bursts(plan: Plan, condition: str) -> tuple[tuple[str, Period], ...]:
    """Return the heaviest loads that run for minutes, heaviest last, with their own current."""
    found = []
    for load, current in reversed(heaviest(plan)):
        hours = running_hours(load, condition)
        if hours and hours < BURST:
            found.append((load.name, Period(current, Hour(max(hours, SHORTEST)))))
    return tuple(found)


def _periods(
    steady: Amp, spell: Hour, bursts: tuple[tuple[str, Period], ...]
) -> tuple[Period, ...]:
    """Return the spell at its mean current, with the bursts at its end."""
    left = max(spell - sum(one.time for _, one in bursts), 0.0)
    heavy = (Period(Amp(steady + one.current), one.time) for _, one in bursts)
    return (Period(steady, Hour(left)), *heavy)


def _spell(periods: tuple[Period, ...]) -> Step:
    first, *bursts = periods
    then = "".join(
        f", then {said(one.current)} A for {said(one.time * 60, 2)} min" for one in bursts
    )
    return Step(
        "the spell",
        f"{said(first.current)} A for {said(first.time)} h{then}",
        f"{len(periods)} section{'s' * (len(periods) > 1)}",
    )


def counts_as(bank: Bank) -> AmpHour | None:
    """Return the label a bank still stands for in the worksheet, which allows for some ageing.

    Parameters
    ----------
    bank : Bank
        As stated.

    Returns
    -------
    AmpHour or None
        Its label, or less once it holds less than a bank grown old; None where not known. [Ah]
    """
    held = capacity_now(bank)
    if held is None or bank.capacity is None:
        return None
    return AmpHour(min(bank.capacity, held / bank.wanted.end_of_life))
