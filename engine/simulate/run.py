"""One run of days, told whole: charge by the step, what happened when, and what every day did."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.simulate.days import Days
from engine.simulate.drove import drove
from engine.simulate.house import FULL
from engine.simulate.lasting import lasting_hours
from engine.simulate.ledger import Volts, joined, ledgers
from engine.simulate.march import march_of
from engine.simulate.policy import DAY, NEVER, Setup
from engine.simulate.stretch import flows
from engine.simulate.use import intervals
from engine.units import Amp, AmpHour, Hour, Share

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.simulate.house import House
    from engine.simulate.ledger import Ledger, Told
    from engine.simulate.stretch import Flows
    from engine.simulate.switches import Event

WEEK: Final = 7.0


@dataclass(frozen=True, slots=True)
class Day:
    """One day: charge at both ends (1), its ledgers, what sources could bring (Ah), engine (h)."""

    start: Share
    end: Share
    charge: Ledger
    energy: Ledger
    asked: AmpHour
    sun: AmpHour
    wind: AmpHour
    shore: AmpHour
    engine_hours: Hour


@dataclass(frozen=True, slots=True)
class Series:
    """What a run of days came to.

    ``charges`` (1) stand at the start and after each step; ``currents``, into the bank, and
    ``engine`` are means of each step (A). ``needed_at`` is when the engine, or without one any
    charging, was first called for, ``reserve_at`` when the reserve was reached, ``full_at`` when
    the bank was first full (h; None where it never was). ``lasting_hours`` are the engine's with
    what the bank lost or gained since the start made good (h).
    """

    setup: Setup
    inputs: Days
    charges: tuple[Share, ...]
    currents: tuple[Amp, ...]
    engine: tuple[Amp, ...]
    events: tuple[Event, ...]
    days: tuple[Day, ...]
    charge: Ledger
    energy: Ledger
    lowest: Share
    lowest_at: Hour
    needed_at: Hour | None
    reserve_at: Hour | None
    full_at: Hour | None
    since_full: Hour | None
    engine_hours: Hour
    lasting_hours: Hour

    @property
    def length(self) -> float:
        """Days of the run."""
        return float(len(self.days))

    @property
    def days_until_needed(self) -> float:
        """Days until charging was first called for, counted up to the length of the run."""
        return self.length if self.needed_at is None else self.needed_at / DAY

    @property
    def engine_hours_a_week(self) -> Hour:
        """Engine hours a week that would leave the bank as charged as it began, h."""
        return Hour(self.lasting_hours / self.length * WEEK)

    @property
    def fuel_a_week(self) -> float:
        """Fuel for charging, L a week."""
        engine = self.setup.engine
        return self.engine_hours_a_week * engine.fuel if engine else 0.0

    @property
    def drove(self) -> tuple[str, ...]:
        """What drove each day, a sentence a day."""
        return tuple(drove(day, self.days) for day in self.days)


def run(setup: Setup, inputs: Days) -> Series:
    """Return what some days come to.

    Parameters
    ----------
    setup : Setup
        Bank, policy and engine.
    inputs : Days
        Loads and sources.

    Raises
    ------
    UnbalancedError
        If the ledger does not close: a fault of the program.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> from engine.simulate.house import house_of
    >>> from engine.units import Volt
    >>> bank = house_of(CHEMISTRIES["lithium"], AmpHour(240.0), Volt(12.0), Share(1.0))
    >>> alone = run(Setup(bank, NEVER), Days((Amp(4.0),) * 288))
    >>> alone.lowest, alone.reserve_at
    (0.1, 48.0)
    """
    march = march_of(setup, record=True)
    march.go(inputs.loads, inputs.kept_on, inputs.free, inputs.step, inputs.dock)
    full, events, kept = march.bank.full, march.switches.events, march.bank.efficiency
    steps = [[(part, flows(part, kept)) for part in parts] for parts in march.record or ()]
    count, volts = intervals(inputs.step), Volts(setup.house)
    days = tuple(
        _day(setup.house, inputs, steps, volts, slice(first, first + count))
        for first in range(0, len(steps), count)
    )
    shares = tuple(Share(total / full) for total in march.totals)
    since = max((n for n, one in enumerate(shares) if one >= FULL), default=None)
    return Series(
        setup=setup,
        inputs=inputs,
        charges=shares,
        currents=tuple(_mean(step, inputs.step, lambda one: one.put - one.out) for step in steps),
        engine=tuple(_mean(step, inputs.step, lambda one: one.engine) for step in steps),
        events=tuple(events),
        days=days,
        charge=joined([day.charge for day in days]),
        energy=joined([day.energy for day in days]),
        lowest=Share(max(round(march.lowest / full, 12), 0.0)),
        lowest_at=Hour(march.lowest_at),
        needed_at=None if march.switches.needed_at is None else Hour(march.switches.needed_at),
        reserve_at=_first(events, "reserve"),
        full_at=_first(events, "full"),
        since_full=None if since is None else Hour((len(steps) - since) * inputs.step),
        engine_hours=Hour(march.engine_hours),
        lasting_hours=lasting_hours(march),
    )


def _first(events: list[Event], kind: str) -> Hour | None:
    return next((Hour(event.time) for event in events if event.kind == kind), None)


def _mean(step: list[Told], time: Hour, flow: Callable[[Flows], float]) -> Amp:
    return Amp(sum(flow(one) for _, one in step) / time)


def _day(house: House, inputs: Days, steps: list[list[Told]], volts: Volts, when: slice) -> Day:
    told = [one for step in steps[when] for one in step]
    charge, energy = ledgers(house, told, volts)
    asked, sun, wind, shore = (
        AmpHour(sum(rows[when]) * inputs.step)
        for rows in (inputs.loads, inputs.sun, inputs.wind, inputs.shore)
    )
    return Day(
        start=Share(told[0][0].before / house.full),
        end=Share(told[-1][0].after / house.full),
        charge=charge,
        energy=energy,
        asked=asked,
        sun=sun,
        wind=wind,
        shore=shore,
        engine_hours=Hour(sum(part.time for part, _ in told if part.engine)),
    )


def days_alone(setup: Setup, inputs: Days) -> float | None:
    """Return how many days the bank comes to its reserve in, with nothing that charges it.

    Parameters
    ----------
    setup : Setup
        The bank counts.
    inputs : Days
        The loads count.

    Returns
    -------
    float or None
        None where it lasts longer than the days. [d]
    """
    bare = Days(inputs.loads, inputs.essential, step=inputs.step)
    reached = run(Setup(setup.house, NEVER), bare).reserve_at
    return None if reached is None else reached / DAY
