"""The window a rating must lie in: above the load, and no more than the conductor carries."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.finding import Judgement, Rule, Verdict, meets
from engine.protection.series import ratings_of
from engine.source import Source
from engine.units import Amp, Share, Volt, said

CONTINUOUS: Final = Share(0.8)
"""Share of its rating that a protection may carry for hours."""
BY_LAW: Final = 1.5
"""Times the printed amperes that US law lets a protection be, below 50 V."""
LAW_TIGHTENS: Final = Volt(50.0)
"""Volts from which US law holds a protection to the printed amperes, V."""
SMALL_CRAFT: Final = Volt(12.0)
NEXT: Final = 1.5
"""Most that the next standard size may be, times what the conductor carries."""

HOLDS: Final = Rule(
    "protection holds",
    "a rating is at least the load, and a continuous load at most 80 % of it",
    Source("NFPA 70 (NEC)", "common reading", "210.20(A), 125 % of a load of hours", typical=True),
)
PROTECTS: Final = Rule(
    "protection protects",
    "a rating is at most what the conductor carries after every factor",
    Source("ABYC E-11", "as commonly read", "rating against corrected amperage", typical=True),
)
LAW: Final = Rule(
    "protection by law",
    "below 50 V a rating is at most 150 % of the printed amperes; from 50 V at most 100 %, or the "
    "next standard size up to 150 %",
    Source("33 CFR", "in force", "183.455(c)"),
)
NEXT_SIZE: Final = Rule(
    "next standard size",
    "where no standard rating is what the conductor carries, the next above it may serve a branch, "
    "up to 150 %; never a main",
    Source("46 CFR", "in force", "183.380(d); ABYC E-11 as commonly read keeps mains out of it"),
)


@dataclass(frozen=True, slots=True)
class Window:
    """Least and most a protection may be marked, A."""

    least: Amp
    most: Amp

    @property
    def empty(self) -> bool:
        """True where no rating can be right: the conductor is too thin for its load."""
        return not meets(self.least, self.most)


def window(current: Amp, carries: Amp, *, continuous: bool = True) -> Window:
    """Return the window for a load on a conductor.

    Parameters
    ----------
    current : Amp
        Of the load. [A]
    carries : Amp
        What one conductor carries after every factor. [A]
    continuous : bool
        Whether the load may run for hours.

    Returns
    -------
    Window
        Its least is the load over 0.8, or the load itself where it runs only for minutes.

    Examples
    --------
    >>> window(Amp(16.0), Amp(51.0))
    Window(least=20.0, most=51.0)
    """
    return Window(Amp(current / CONTINUOUS if continuous else current), carries)


def limit_by_law(printed: Amp, volts: Volt = SMALL_CRAFT) -> Amp:
    """Return the most that US law allows, shown apart: the window is stricter.

    Parameters
    ----------
    printed : Amp
        Printed amperes of the conductor, before any factor. [A]
    volts : Volt
        Of the circuit. [V]

    Returns
    -------
    Amp
        150 % of it below 50 V, 100 % from there. [A]

    References
    ----------
    .. [1] 33 CFR 183.455(c)(1) and (2).

    Examples
    --------
    >>> limit_by_law(Amp(60.0)), limit_by_law(Amp(60.0), Volt(120.0))
    (90.0, 60.0)
    """
    return Amp(printed * BY_LAW if volts < LAW_TIGHTENS else printed)


def next_size(carries: Amp, series: str) -> Amp | None:
    """Return the next standard size above what a conductor carries, where a rule may allow it.

    Parameters
    ----------
    carries : Amp
        What the conductor carries after every factor. [A]
    series : str
        A name in ``SERIES``.

    Returns
    -------
    Amp or None
        None where a standard rating is just what it carries, or the next is over 150 %. [A]

    References
    ----------
    .. [1] 46 CFR 183.380(d).

    Examples
    --------
    >>> next_size(Amp(51.0), "magnetic breaker"), next_size(Amp(50.0), "magnetic breaker")
    (60.0, None)
    """
    above = next((one for one in ratings_of(series) if meets(carries, one)), None)
    if above is None or meets(above, carries) or not meets(above, NEXT * carries):
        return None
    return Amp(float(above))


def next_size_allowed(rating: Amp, carries: Amp, series: str, *, main: bool) -> bool:
    """Return whether a rating above what the conductor carries is the next size a rule allows.

    Parameters
    ----------
    rating : Amp
        What the protection is marked. [A]
    carries : Amp
        What the conductor carries after every factor. [A]
    series : str
        A name in ``SERIES``.
    main : bool
        Whether it is a main; to a main the rule does not apply.

    References
    ----------
    .. [1] 46 CFR 183.380(d); branches only by ABYC E-11 as commonly read (typical).

    Examples
    --------
    >>> [next_size_allowed(Amp(60.0), Amp(51.0), "plate", main=main) for main in (False, True)]
    [True, False]
    """
    above = next_size(carries, series)
    return not main and above is not None and meets(rating, above) and meets(above, rating)


def judge(
    rating: Amp, window: Window, parallel: int = 1, series: str = "", *, main: bool = False
) -> Judgement:
    """Return the verdict on a rating; the graver where two rules are broken.

    Parameters
    ----------
    rating : Amp
        What the protection is marked. [A]
    window : Window
        For the load on one conductor.
    parallel : int
        Equal conductors side by side behind this one protection. [1]
    series : str
        A name in ``SERIES`` where the next standard size may be used; empty keeps to the window.
    main : bool
        Whether it is a main; to a main the next standard size is not open.

    Examples
    --------
    >>> [judge(Amp(r), Window(Amp(20.0), Amp(51.0))).verdict.value for r in (15.0, 30.0, 60.0)]
    ['should', 'within limit', 'stop']
    >>> judge(Amp(60.0), Window(Amp(20.0), Amp(51.0)), series="plate").verdict.value
    'should'
    """
    whole = Window(window.least, Amp(window.most * parallel))
    least, most = f"{said(whole.least)} A", f"{said(whole.most)} A"
    thicker = f"Use a conductor that carries at least {least}, then a rating in between."
    mend = thicker if whole.empty else f"Use {least} to {most}."
    thin = f" The conductor is too thin for its load: it carries {most}." if whole.empty else ""
    marked = f"{said(rating)} A"
    if meets(rating, whole.most):
        if meets(whole.least, rating):
            return Judgement(Verdict.FINE, f"{marked} lies within {least} to {most}.", "", PROTECTS)
        words = f"{marked} is less than the {least} the load asks for: it will open in use."
        return Judgement(Verdict.SHOULD, words + thin, mend, HOLDS)
    next_allowed = bool(series) and next_size_allowed(rating, whole.most, series, main=main)
    if next_allowed and meets(whole.least, rating):
        words = (
            f"{marked} is more than the {most} the conductor carries. As the next standard size "
            "for a branch, 46 CFR 183.380(d) allows it; the stricter habit keeps to what the "
            "conductor carries."
        )
        return Judgement(Verdict.SHOULD, words + thin, mend, NEXT_SIZE)
    words = f"{marked} is more than the {most} the conductor carries: it can overheat first."
    return Judgement(Verdict.STOP, words + thin, mend, PROTECTS)
