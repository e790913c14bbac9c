"""Voltage drop, two answers kept apart: by the compliance rule, and by physics."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.conductors.sizes import MM2_PER_CIRCULAR_MIL
from engine.finding import Rule
from engine.source import Source
from engine.units import Amp, Metre, OhmPerKm, Share, SquareMm, Volt

if TYPE_CHECKING:
    from engine.conductors.sizes import Size

K: Final = 10.75
"""Ω·cmil/ft: one foot of one circular mil, the constant of the US compliance rule."""
FOOT: Final = 0.3048

DROP: Final = Rule(
    "drop",
    "the loop loses no more of the nominal volts than the class allows",
    Source("46 CFR", "in force", "183.340(p), with K = 10.75 and the loop there and back"),
)
PHYSICS: Final = Source("Ohm's law", "direct current", "2 × run × resistance × current")

CLASSES: Final = (
    ("critical", "3 %: panel feeds, navigation lights, bilge pumps, blowers, electronics"),
    ("other", "10 %: everything that only gets dimmer or slower"),
)
ALLOWED: Final = {"critical": Share(0.03), "other": Share(0.10)}
"""The share of nominal volts each class may lose; the custom of the US trade (ABYC E-11)."""


@dataclass(frozen=True, slots=True)
class Task:
    """What a run must do: nominal volts, amperes, metres one way, and the share it may lose."""

    volts: Volt
    current: Amp
    run: Metre
    allowed: Share

    @property
    def loop(self) -> Metre:
        """There and back, m."""
        return Metre(2 * self.run)

    @property
    def volts_allowed(self) -> Volt:
        """Volts that may be lost, V."""
        return Volt(self.volts * self.allowed)


def circular_mils_needed(task: Task) -> float:
    """Return the least copper for the drop, by the compliance rule.

    Parameters
    ----------
    task : Task
        Volts are nominal, never charging, volts.

    Returns
    -------
    float
        Least area. [cmil]

    References
    ----------
    .. [1] 46 CFR 183.340(p): CM = K I L / E. Its metric K of 3.28 is a slip; 35.27 is right.

    Examples
    --------
    >>> circular_mils_needed(Task(Volt(12.0), Amp(10.0), Metre(10.5 * 0.3048), Share(0.03)))
    6270.83
    """
    return K * task.current * task.loop / FOOT / task.volts_allowed


def rule_drop(current: Amp, run: Metre, size: Size) -> Volt:
    """Return the volts lost in the loop, by the compliance rule.

    Parameters
    ----------
    current : Amp
        Steady. [A]
    run : Metre
        One way. [m]
    size : Size
        Of any catalogue.

    Returns
    -------
    Volt
        By K = 10.75, which is solid copper at 29 °C. [V]

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> rule_drop(Amp(14.0), Metre(6.1), read_size("8 AWG"))
    0.3649
    """
    return Volt(K * current * 2 * run / FOOT / size.circular_mils)


def loop_drop(current: Amp, run: Metre, resistance: OhmPerKm) -> Volt:
    """Return the volts lost in the loop, by physics.

    Parameters
    ----------
    current : Amp
        Steady. [A]
    run : Metre
        One way. [m]
    resistance : OhmPerKm
        Of one conductor at its working temperature. [Ω/km]

    Returns
    -------
    Volt
        ``2 L R I``. [V]

    Examples
    --------
    >>> loop_drop(Amp(10.0), Metre(5.0), OhmPerKm(7.98))
    0.798
    """
    return Volt(2 * run / 1000 * resistance * current)


def longest_run(task: Task, size: Size) -> Metre:
    """Return the longest one-way run that stays within the drop, by the compliance rule.

    Parameters
    ----------
    task : Task
        Its own run does not count.
    size : Size
        Of any catalogue.

    Returns
    -------
    Metre
        One way. [m]

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> task = Task(Volt(12.0), Amp(14.0), Metre(6.1), Share(0.03))
    >>> longest_run(task, read_size("8 AWG"))
    6.018
    """
    return Metre(task.volts_allowed * size.circular_mils * FOOT / (K * task.current * 2))


def square_mm_of(circular_mils: float) -> SquareMm:
    """Return an area in the metric unit.

    Parameters
    ----------
    circular_mils : float
        Area. [cmil]

    Returns
    -------
    SquareMm
        The same area. [mm²]
    """
    return SquareMm(circular_mils * MM2_PER_CIRCULAR_MIL)
