"""What each kind of protection can interrupt, and at how many volts."""

from __future__ import annotations

from typing import Final

from engine.finding import Judgement, Rule, Verdict, meets
from engine.protection.tables import INTERRUPTING
from engine.source import Source, common_practice
from engine.units import Amp, Volt, said, words

CHARGING: Final = 14.6 / 12
"""Charging volts of a full bank over its nominal volts."""
CHARGING_SOURCE: Final = common_practice("14.6 V for each nominal 12 V, absorption")

VOLTS_RATED: Final = Rule(
    "volts rated",
    "a protection is rated for at least the volts of its circuit",
    Source("ABYC E-11", "as commonly read", "voltage rating of protection", typical=True),
)


def charging_volts(nominal: Volt) -> Volt:
    """Return the most a bank of these nominal volts is charged at, typical.

    Parameters
    ----------
    nominal : Volt
        Of the system. [V]

    Returns
    -------
    Volt
        14.6 V for each nominal 12 V. [V]

    Examples
    --------
    >>> charging_volts(Volt(48.0))
    58.4
    """
    return Volt(CHARGING * nominal)


def most_volts(series: str) -> Volt:
    """Return the highest direct volts a series is marked for, typical.

    Parameters
    ----------
    series : str
        A name in ``SERIES``.

    Returns
    -------
    Volt
        As marked. [V]

    Raises
    ------
    Problem
        If there is no such series.

    Examples
    --------
    >>> most_volts("blade"), most_volts("class T")
    (32.0, 125.0)
    """
    return Volt(INTERRUPTING[series][-1][0])


def interrupts(series: str, volts: Volt) -> Amp | None:
    """Return the interrupting rating of a series at a system's volts, typical.

    Parameters
    ----------
    series : str
        A name in ``SERIES``.
    volts : Volt
        Nominal volts of the system: 12, 24, 32, 36 or 48. [V]

    Returns
    -------
    Amp or None
        None where the series is not rated at those volts. [A]

    Raises
    ------
    Problem
        If there is no such series.

    Notes
    -----
    It falls as the volts rise. The marks stand for nominal systems: 14 V for 12 V, which charges
    at 14.4 to 14.6 V; 24 and 32 V for 24 V; 58 V for 48 V. So nominal volts decide.

    Examples
    --------
    >>> [interrupts("terminal-mount", Volt(v)) for v in (12.0, 24.0, 48.0, 60.0)]
    [10000.0, 5000.0, 2000.0, None]
    """
    rows = INTERRUPTING[series]
    return next((Amp(amperes) for marked, amperes in rows if meets(volts, marked)), None)


def kinds_for(least: float, volts: Volt) -> tuple[str, ...]:
    """Return the series that typically interrupt a fault at a system's volts.

    Parameters
    ----------
    least : float
        Interrupting rating asked for. [A]
    volts : Volt
        Nominal volts of the system. [V]

    Examples
    --------
    >>> kinds_for(8000.0, Volt(12.0))
    ('terminal-mount', 'class T')
    """
    found = ((series, interrupts(series, volts)) for series in INTERRUPTING.rows)
    return tuple(series for series, rating in found if rating and meets(least, rating))


def judge_volts(series: str, volts: Volt) -> Judgement:
    """Return whether a series is rated for a system's volts.

    Parameters
    ----------
    series : str
        A name in ``SERIES``.
    volts : Volt
        Nominal volts of the system. [V]

    Raises
    ------
    Problem
        If there is no such series.

    Examples
    --------
    >>> judge_volts("blade", Volt(48.0)).words
    'Typically a blade is rated to 32 V; a 48 V bank charges at 58.4 V.'
    """
    most = most_volts(series)
    found = (
        f"Typically a {series} is rated to {said(most)} V; "
        f"a {said(volts)} V bank charges at {said(charging_volts(volts))} V."
    )
    if meets(volts, most):
        return Judgement(Verdict.FINE, found, "", VOLTS_RATED)
    fitting = [name for name in INTERRUPTING.rows if meets(volts, most_volts(name))]
    mend = "Read the volts marked on it"
    mend += f", or use {words(fitting, 'or')}." if fitting else "."
    return Judgement(Verdict.STOP, found, mend, VOLTS_RATED)
