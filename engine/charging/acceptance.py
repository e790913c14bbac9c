"""What a bank takes of a source: the least of what the source has, the limit, and the taper."""

from __future__ import annotations

from dataclasses import dataclass
from math import expm1, log
from typing import TYPE_CHECKING, Final

from engine.problem import Problem
from engine.source import Source
from engine.units import Amp, AmpHour, Hour, Share, said

if TYPE_CHECKING:
    from engine.charging.intake import Intake

ACCEPTANCE: Final = Source(
    "Mas' law", "own closed form", "steady until the taper line, then exponential", typical=True
)


@dataclass(frozen=True, slots=True)
class Charged:
    """A step of charging: ``charge`` after it (1), ``taken`` and ``curtailed`` (Ah)."""

    charge: Share
    taken: AmpHour
    curtailed: AmpHour


def acceptance(intake: Intake, charge: Share, source: Amp) -> Amp:
    """Return the current a bank takes at one moment.

    Parameters
    ----------
    intake : Intake
        Of the bank.
    charge : Share
        State of charge, 0 to 1. [1]
    source : Amp
        What the source has over, after the loads. [A]

    Returns
    -------
    Amp
        The least of source, limit and taper. [A]

    Examples
    --------
    >>> from engine.charging.intake import Intake
    >>> from engine.units import PerHour
    >>> bank = Intake(AmpHour(400.0), PerHour(0.25), PerHour(0.6))
    >>> [acceptance(bank, Share(s), Amp(150.0)) for s in (0.5, 0.9)]
    [100.0, 24.0]
    """
    _refuse_charge("charge", charge)
    return min(intake.bulk(source), Amp(intake.taper * intake.capacity * (1 - charge)))


def charge_for(intake: Intake, charge: Share, source: Amp, time: Hour) -> Charged:
    """Return a bank after a step of charging from a steady source, exactly.

    Parameters
    ----------
    intake : Intake
        Of the bank.
    charge : Share
        At the start, 0 to 1. [1]
    source : Amp
        What the source has over, after the loads. [A]
    time : Hour
        Of the step, not negative. [h]

    Notes
    -----
    Up to the taper line the current is steady; from there the lack falls as
    ``exp(−efficiency × taper × t)``. What the source had and the bank did not take is curtailed.

    Examples
    --------
    >>> from engine.charging.intake import Intake
    >>> from engine.units import PerHour
    >>> bank = Intake(AmpHour(400.0), PerHour(0.25), PerHour(0.6))
    >>> charge_for(bank, Share(0.5), Amp(80.0), Hour(0.5))
    Charged(charge=0.6, taken=40.0, curtailed=0.0)
    """
    _refuse_charge("charge", charge)
    bulk, line = intake.bulk(source), intake.taper_line(source)
    speed = intake.efficiency * bulk / intake.capacity
    steady = min((line - charge) / speed, time) if speed > 0 and charge < line else 0.0
    gained = steady * speed
    if speed > 0:
        gained += (1 - charge - gained) * -expm1(
            -intake.efficiency * intake.taper * (time - steady)
        )
    taken = gained * intake.capacity / intake.efficiency
    over = max(source, 0.0) * time - taken
    return Charged(Share(min(charge + gained, 1.0)), AmpHour(taken), AmpHour(max(over, 0.0)))


def time_to_charge(intake: Intake, start: Share, end: Share, source: Amp) -> Hour | None:
    """Return how long a steady source takes to charge a bank.

    Parameters
    ----------
    intake : Intake
        Of the bank.
    start : Share
        State of charge, from 0. [1]
    end : Share
        State of charge, above the start and below 1. [1]
    source : Amp
        What the source has over, after the loads. [A]

    Returns
    -------
    Hour or None
        None where no current flows: nothing is over, or the bank must not be charged. [h]

    Raises
    ------
    Problem
        If the end is not above the start, or is 1, which a taper never reaches.

    Examples
    --------
    >>> from engine.charging.intake import Intake
    >>> from engine.units import PerHour
    >>> flooded = Intake(AmpHour(400.0), PerHour(0.25), PerHour(0.6))
    >>> ends = ((0.5, 0.8), (0.8, 0.9), (0.9, 0.95), (0.95, 0.98))
    >>> [round(time_to_charge(flooded, Share(a), Share(b), Amp(80.0)), 2) for a, b in ends]
    [1.68, 1.16, 1.16, 1.53]
    """
    _refuse_ends(start, end)
    bulk, line = intake.bulk(source), intake.taper_line(source)
    if not bulk > 0:
        return None
    steady = max(min(end, line) - start, 0.0) * intake.capacity / (intake.efficiency * bulk)
    if end <= line:
        return Hour(steady)
    return Hour(
        steady + log((1 - max(start, line)) / (1 - end)) / (intake.taper * intake.efficiency)
    )


def _refuse_charge(where: str, charge: Share) -> None:
    if not 0 <= charge <= 1:
        raise Problem(where, f"{said(charge * 100)} % is no state of charge.", "Enter 0 to 100 %.")


def _refuse_ends(start: Share, end: Share) -> None:
    _refuse_charge("from", start)
    _refuse_charge("to", end)
    said_start, said_end = f"{said(start * 100)} %", f"{said(end * 100)} %"
    if end <= start:
        raise Problem(
            "to",
            f"From {said_start} to {said_end} is no charge.",
            f"Enter more than {said_start}, such as 95 %; or lower where it starts.",
        )
    if end >= 1:
        raise Problem(
            "to",
            "A tapering current comes ever nearer to 100 % and never arrives.",
            "Enter 98 %, which most call full.",
        )
