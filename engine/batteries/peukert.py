"""Peukert's law in its rated-hour form: a bank gives less when it is emptied faster.

For one discharge at one current, to show a runtime. It is no equation of state: what a fast
discharge leaves behind comes back at rest, so it must never be summed over a mixed day. No
function here takes a current of zero; the door refuses it as an entry.
"""

from __future__ import annotations

from typing import Final

from engine.source import Source
from engine.units import Amp, AmpHour, Hour

PEUKERT: Final = Source("Peukert's law", "rated-hour form", "t = H (C / (I H))^k")
CLAMP: Final = Source(
    "Doerffel and Sharkh", "J. Power Sources 155 (2006) 395", "limits of the law", typical=True
)


def discharge_time(capacity: AmpHour, rated_hours: Hour, current: Amp, exponent: float) -> Hour:
    """Return how long a full bank gives a steady current.

    Parameters
    ----------
    capacity : AmpHour
        At the rated hours. [Ah]
    rated_hours : Hour
        The discharge time the capacity was stated for. [h]
    current : Amp
        Steady, above zero. [A]
    exponent : float
        Peukert's. [1]

    Returns
    -------
    Hour
        To the rated end of discharge. [h]

    Notes
    -----
    ``t = H (C / (I H))^k``. The form ``t = C / I^k`` with a 20-hour capacity, seen in print, is
    wrong: its unit is not the hour.

    References
    ----------
    .. [1] Doerffel and Sharkh, "A critical review of using the Peukert equation", J. Power
       Sources 155 (2006) 395.

    Examples
    --------
    >>> discharge_time(AmpHour(100.0), Hour(20.0), Amp(10.0), 1.2)
    8.7055
    """
    return Hour(rated_hours * (capacity / (current * rated_hours)) ** exponent)


def delivered(capacity: AmpHour, rated_hours: Hour, current: Amp, exponent: float) -> AmpHour:
    """Return what a full bank gives at a steady current.

    Parameters
    ----------
    capacity : AmpHour
        At the rated hours. [Ah]
    rated_hours : Hour
        The discharge time the capacity was stated for. [h]
    current : Amp
        Steady, above zero. [A]
    exponent : float
        Peukert's. [1]

    Returns
    -------
    AmpHour
        ``C (C / (I H))^(k − 1)``, which grows without end for a small current. [Ah]

    Examples
    --------
    >>> delivered(AmpHour(100.0), Hour(20.0), Amp(100.0), 1.2)
    54.928
    """
    return AmpHour(current * discharge_time(capacity, rated_hours, current, exponent))


def clamped_delivered(
    capacity: AmpHour, rated_hours: Hour, current: Amp, exponent: float, low_rate_gain: float
) -> AmpHour:
    """Return what a full bank gives at a steady current, never more than it holds.

    Parameters
    ----------
    capacity : AmpHour
        At the rated hours. [Ah]
    rated_hours : Hour
        The discharge time the capacity was stated for. [h]
    current : Amp
        Steady, above zero. [A]
    exponent : float
        Peukert's. [1]
    low_rate_gain : float
        All the bank holds over its capacity at the rated hours. [1]

    Returns
    -------
    AmpHour
        The smaller of Peukert's figure and the clamp. [Ah]

    Examples
    --------
    >>> clamped_delivered(AmpHour(400.0), Hour(20.0), Amp(2.0), 1.2, 1.15)
    460.0
    """
    least = delivered(capacity, rated_hours, current, exponent)
    return min(least, AmpHour(capacity * low_rate_gain))


def capacity_at_hours(
    capacity: AmpHour, rated_hours: Hour, hours: Hour, exponent: float, low_rate_gain: float
) -> AmpHour:
    """Return what a full bank gives in a discharge that takes so many hours.

    Parameters
    ----------
    capacity : AmpHour
        At the rated hours. [Ah]
    rated_hours : Hour
        The discharge time the capacity was stated for. [h]
    hours : Hour
        Of the discharge, above zero. [h]
    exponent : float
        Peukert's. [1]
    low_rate_gain : float
        All the bank holds over its capacity at the rated hours. [1]

    Returns
    -------
    AmpHour
        ``C (h / H)^((k − 1) / k)``, never more than the clamp. [Ah]

    Examples
    --------
    >>> capacity_at_hours(AmpHour(100.0), Hour(20.0), Hour(1.0), 1.25, 1.185)
    54.928
    """
    given = capacity * (hours / rated_hours) ** ((exponent - 1) / exponent)
    return AmpHour(min(given, capacity * low_rate_gain))
