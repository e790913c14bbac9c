"""A stalled motor: does its protection open before it burns?"""

from __future__ import annotations

from typing import Final

from engine.finding import Judgement, Rule, Verdict, meets
from engine.problem import Problem
from engine.protection.clearing import band
from engine.protection.tables import BANDS
from engine.source import Source
from engine.units import Amp, Ohm, Volt, said

USUAL: Final = "blade"
"""The series whose opening times stand for those that are not known."""
PREFERRED: Final = 2.0
"""Stalled current over rating that is better not gone below."""
SOON: Final = 60.0
"""Time within which a protection that opens is soon enough, s."""
MOTOR: Final = 1.25

STALLED: Final = Rule(
    "stalled motor",
    "with its rotor held, a motor's protection opens, or the motor bears it for hours",
    Source("ISO 8849", "2021", "5.3; 135 and 200 % of the rating are typical of blade fuses", True),  # noqa: FBT003
)
MOTOR_LINE: Final = Rule(
    "motor protection",
    "below 50 V a motor's protection is at most 125 % of its full-load current",
    Source("46 CFR", "in force", "169.673(g)"),
)


def stalled_current(volts: Volt, stall_current: Amp, cable: Ohm, contacts: Ohm) -> Amp:
    """Return what a stalled motor draws at the end of its conductor.

    Parameters
    ----------
    volts : Volt
        Nominal, as the stall current is stated for. [V]
    stall_current : Amp
        Of the motor at its own terminals. [A]
    cable : Ohm
        Of the loop. [Ω]
    contacts : Ohm
        Of switch, float and joints. [Ω]

    Returns
    -------
    Amp
        ``V / (V / I + cable + contacts)``. [A]

    Raises
    ------
    Problem
        If volts or stall current are not above nothing, or a resistance is negative.

    Examples
    --------
    >>> stalled_current(Volt(12.0), Amp(14.0), Ohm(0.08286), Ohm(0.0))
    12.77
    """
    if volts <= 0 or stall_current <= 0:
        raise Problem(
            "stall_current",
            f"{said(stall_current)} A at {said(volts)} V is no stalled motor.",
            "Enter both above 0, such as 14 A at 12 V.",
        )
    if cable < 0 or contacts < 0:
        least = min(cable, contacts)
        raise Problem("", f"A resistance of {said(least)} Ω is less than none.", "Enter 0 or more.")
    return Amp(volts / (volts / stall_current + cable + contacts))


def judge_stall(current: Amp, rating: Amp, series: str = "") -> Judgement:
    """Return whether a stalled motor opens its protection.

    Parameters
    ----------
    current : Amp
        Of the stalled motor through its conductor. [A]
    rating : Amp
        What the protection is marked. [A]
    series : str
        A name in ``SERIES``; where its opening times are known they decide, else the points of a
        blade fuse.

    Raises
    ------
    Problem
        If the rating is not above nothing.

    References
    ----------
    .. [1] ISO 8849, 5.3; opening points of blade fuses (typical).

    Examples
    --------
    >>> [judge_stall(Amp(a), Amp(7.5)).verdict.value for a in (16.0, 10.71, 7.08)]
    ['within limit', 'should', 'stop']
    """
    if rating <= 0:
        raise Problem(
            "rating", f"{said(rating)} A is no rating.", "Enter what is marked, such as 7.5 A."
        )
    ratio = current / rating
    words = (
        f"Stalled, the motor draws {said(current)} A, {said(ratio)} times the rating of "
        f"{said(rating)} A"
    )
    mend = "Use a thicker conductor or a smaller rating, never more than the motor's maker states."
    times = band(series if series in BANDS else USUAL, ratio)
    most = times[1] if times else None
    if most is None:
        return Judgement(Verdict.STOP, f"{words}: it may never open.", mend, STALLED)
    if meets(most, SOON) and meets(PREFERRED, ratio):
        return Judgement(Verdict.FINE, f"{words}: it opens soon.", "", STALLED)
    time = f"{said(most / 60, 2)} minutes" if most > SOON else f"{said(most, 2)} s"
    words += f": it may take {time} to open, and twice the rating is preferred."
    return Judgement(Verdict.SHOULD, words, mend, STALLED)


def motor_limit(current: Amp) -> Amp:
    """Return the most the protection of a motor below 50 V may be marked.

    Parameters
    ----------
    current : Amp
        Full-load current of the motor. [A]

    Returns
    -------
    Amp
        125 % of it. [A]

    References
    ----------
    .. [1] 46 CFR 169.673(g).

    Examples
    --------
    >>> motor_limit(Amp(4.0))
    5.0
    """
    return Amp(MOTOR * current)
