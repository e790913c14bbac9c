"""How long an inverter can carry a load."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import inf
from typing import TYPE_CHECKING, Final

from engine.batteries.peukert import CLAMP, clamped_delivered
from engine.finding import Step, meets
from engine.inverter.efficiency import CURVE, Curve, dc_watts, efficiency
from engine.inverter.sag import SAG, OperatingPoint, operating_point
from engine.problem import Problem
from engine.units import Amp, AmpHour, Hour, Ohm, Share, Volt, Watt, said

if TYPE_CHECKING:
    from collections.abc import Callable

STEPS: Final = 20
"""Equal steps of charge a run is walked in."""
HALVINGS: Final = 50
"""Enough to place a trip to the last digits of the charge."""


@dataclass(frozen=True, slots=True)
class Store:
    """A bank as an inverter sees it.

    ``capacity`` in Ah at ``rated_hours`` in h; ``exponent`` is Peukert's, ``low_rate_gain`` bounds
    what a slow discharge gives, ``temperature_factor`` is what a cold bank still gives (all 1).
    ``open_volts`` and ``resistance`` return V and Ω at a charge of 0 to 1; as the charge falls,
    the first must not rise nor the second fall. ``nominal_volts`` are the system's, V.
    """

    capacity: AmpHour
    rated_hours: Hour
    exponent: float
    low_rate_gain: float
    nominal_volts: Volt
    open_volts: Callable[[Share], Volt]
    resistance: Callable[[Share], Ohm]
    temperature_factor: float = 1.0

    def delivers(self, current: Amp) -> AmpHour:
        """Return what the full bank gives at a steady current.

        Parameters
        ----------
        current : Amp
            Steady, above zero. [A]

        Returns
        -------
        AmpHour
            Peukert's figure, clamped, times the temperature factor. [Ah]
        """
        warm = clamped_delivered(
            self.capacity, self.rated_hours, current, self.exponent, self.low_rate_gain
        )
        return AmpHour(warm * self.temperature_factor)


@dataclass(frozen=True, slots=True)
class Job:
    """What is asked: AC watts, from a charge down to the reserve (shares), through a feeder.

    ``feeder`` is the resistance of the inverter's cable there and back, Ω; ``cut_off`` are the
    volts at the inverter below which it stops, V.
    """

    watts: Watt
    from_charge: Share
    reserve: Share
    feeder: Ohm
    cut_off: Volt


@dataclass(frozen=True, slots=True)
class Run:
    """How long it went (h), what it took (Ah), where it began and ended, and how that was reached.

    ``first`` and ``last`` are None where the bank cannot bring the watts at all. ``tripped_at`` is
    the charge at which the inverter stopped before the reserve; ``no_point`` says that it stopped
    for want of an operating point. ``lossless_time`` is the plain comparison: no inverter loss,
    no rate effect, no sag, no cold.
    """

    time: Hour
    amp_hours: AmpHour
    first: OperatingPoint | None
    last: OperatingPoint | None
    tripped_at: Share | None
    no_point: bool
    lossless_time: Hour
    working: tuple[Step, ...] = ()


def run(store: Store, curve: Curve, job: Job) -> Run:
    """Return how long the bank carries a steady load through the inverter.

    Parameters
    ----------
    store : Store
        The bank.
    curve : Curve
        Of the inverter.
    job : Job
        What is asked.

    Returns
    -------
    Run
        Ends at the reserve, or earlier where the inverter stops.

    Raises
    ------
    Problem
        If nothing draws, for then it never ends.

    Notes
    -----
    The charge is walked down in 20 equal steps from its start to its end. In the middle of each
    the sagging supply settles at a current; at that current the whole bank would give so many
    ampere-hours by Peukert's law, and the step is its share of them. A trip is placed by halving.

    Examples
    --------
    >>> steady = Store(AmpHour(400.0), Hour(20.0), 1.2, 1.15, Volt(12.0), lambda s: 12.0,
    ...                lambda s: 0.0)
    >>> loss = Curve(Watt(2000.0), 0.0, 1 / 0.88 - 1, 0.0)
    >>> run(steady, loss, Job(Watt(1000.0), Share(1.0), Share(0.5), Ohm(0.0), Volt(10.5))).time
    1.548
    """
    watts = dc_watts(curve, job.watts)
    if watts <= 0:
        raise Problem("watts", "Nothing draws from the bank.", "Enter watts, such as 600 W.")
    end, beyond = _ends(store, job, watts)
    share = max(job.from_charge - end, 0.0) / STEPS
    middles = [Share(job.from_charge - (step + 0.5) * share) for step in range(STEPS)]
    points = [point for middle in middles if share and (point := _point(store, job, watts, middle))]
    taken = [share * store.delivers(point.current) for point in points]
    found = Run(
        time=Hour(sum(ah / point.current for ah, point in zip(taken, points, strict=True))),
        amp_hours=AmpHour(sum(taken)),
        first=_point(store, job, watts, job.from_charge),
        last=_point(store, job, watts, end),
        tripped_at=None if beyond is None else end,
        no_point=beyond is not None and _point(store, job, watts, beyond) is None,
        lossless_time=lossless_time(store, job),
    )
    return replace(found, working=_working(store, curve, job, found))


def _point(store: Store, job: Job, watts: Watt, charge: Share) -> OperatingPoint | None:
    loop = Ohm(store.resistance(charge) + job.feeder)
    return operating_point(store.open_volts(charge), loop, watts)


def _ends(store: Store, job: Job, watts: Watt) -> tuple[Share, Share | None]:
    """Return the charge a run ends at; where it trips, the nearest that no longer carries it."""

    def carries(charge: Share) -> bool:
        point = _point(store, job, watts, charge)
        return point is not None and meets(job.cut_off, point.volts)

    if not carries(job.from_charge):
        return job.from_charge, job.from_charge
    if carries(min(job.reserve, job.from_charge)):
        return min(job.reserve, job.from_charge), None
    good, bad = job.from_charge, job.reserve
    for _ in range(HALVINGS):
        middle = Share((good + bad) / 2)
        good, bad = (middle, bad) if carries(middle) else (good, middle)
    return good, bad


def lossless_time(store: Store, job: Job) -> Hour:
    """Return the plain comparison: how long, were nothing lost.

    Parameters
    ----------
    store : Store
        The bank.
    job : Job
        What is asked; AC watts above zero.

    Returns
    -------
    Hour
        Capacity in use times nominal volts over AC watts. [h]
    """
    used = store.capacity * max(job.from_charge - job.reserve, 0.0)
    return Hour(used * store.nominal_volts / job.watts if job.watts > 0 else inf)


def _working(store: Store, curve: Curve, job: Job, found: Run) -> tuple[Step, ...]:
    watts = dc_watts(curve, job.watts)
    part = f"{said(100 * efficiency(curve, job.watts))} % of it comes out"
    steps = [
        Step(
            "watts from the bank",
            f"{said(job.watts, 4)} W out of an inverter of {said(curve.rating, 4)} W; {part}",
            f"{said(watts, 4)} W",
            CURVE,
        )
    ]
    end = job.reserve if found.tripped_at is None else found.tripped_at
    for when, charge, point in (
        ("at the start", job.from_charge, found.first),
        ("at the end", end, found.last),
    ):
        loop = store.resistance(charge) + job.feeder
        rest = f"{said(100 * charge)} % charge, {said(store.open_volts(charge), 4)} V at rest"
        steps.append(
            Step(
                when,
                f"{rest} behind {said(1000 * loop)} mΩ of bank and cable",
                f"{said(point.current)} A at {said(point.volts, 4)} V" if point else "no point",
                SAG,
            )
        )
    if found.first:
        rated = f"{said(store.capacity, 4)} Ah stated for {said(store.rated_hours)} h"
        steps.append(
            Step(
                "the full bank would give",
                f"{rated}, exponent {said(store.exponent)}, at {said(found.first.current)} A",
                f"{said(store.delivers(found.first.current))} Ah",
                CLAMP,
            )
        )
    span = f"{STEPS} equal steps from {said(100 * job.from_charge)} % to {said(100 * end)} % charge"
    plain = f"{said(store.nominal_volts)} V × charge in use ÷ {said(job.watts, 4)} W"
    return (
        *steps,
        Step("time", span, f"{said(found.time)} h"),
        Step("ignoring losses", plain, f"{said(found.lossless_time)} h"),
    )
