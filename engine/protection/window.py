"""The window a rating must lie in: above the load, and no more than the conductor carries."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.finding import Rule, Verdict, meets
from engine.source import Source
from engine.units import Amp, Share, said

CONTINUOUS: Final = Share(0.8)
"""Share of its rating that a protection may carry for hours."""
BY_LAW: Final = 1.5
"""Times the printed amperes that US law lets a protection be, below 50 V."""

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
    "below 50 V a rating is at most 150 % of the printed amperes",
    Source("33 CFR", "in force", "183.455(c)(1)"),
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


@dataclass(frozen=True, slots=True)
class Judgement:
    """A verdict on a rating, why, what to do, and the rule it rests on."""

    verdict: Verdict
    words: str
    mend: str
    rule: Rule


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


def limit_by_law(printed: Amp) -> Amp:
    """Return the most that US law allows below 50 V, shown apart: the window is stricter.

    Parameters
    ----------
    printed : Amp
        Printed amperes of the conductor, before any factor. [A]

    Returns
    -------
    Amp
        150 % of it. [A]

    References
    ----------
    .. [1] 33 CFR 183.455(c)(1).

    Examples
    --------
    >>> limit_by_law(Amp(60.0))
    90.0
    """
    return Amp(printed * BY_LAW)


def judge(rating: Amp, window: Window, parallel: int = 1) -> Judgement:
    """Return the verdict on a rating; the graver where two rules are broken.

    Parameters
    ----------
    rating : Amp
        What the protection is marked. [A]
    window : Window
        For the load on one conductor.
    parallel : int
        Equal conductors side by side behind this one protection. [1]

    Examples
    --------
    >>> [judge(Amp(r), Window(Amp(20.0), Amp(51.0))).verdict.value for r in (15.0, 30.0, 60.0)]
    ['should', 'within limit', 'stop']
    """
    whole = Window(window.least, Amp(window.most * parallel))
    least, most = f"{said(whole.least)} A", f"{said(whole.most)} A"
    thicker = f"Use a conductor that carries at least {least}, then a rating in between."
    thin = f" The conductor is too thin for its load: it carries {most}." if whole.empty else ""
    marked = f"{said(rating)} A"
    if not meets(rating, whole.most):
        words = f"{marked} is more than the {most} the conductor carries: it can overheat first."
        mend = thicker if whole.empty else f"Use {least} to {most}."
        return Judgement(Verdict.STOP, words + thin, mend, PROTECTS)
    if not meets(whole.least, rating):
        words = f"{marked} is less than the {least} the load asks for: it will open in use."
        mend = thicker if whole.empty else f"Use {least} to {most}."
        return Judgement(Verdict.SHOULD, words + thin, mend, HOLDS)
    return Judgement(Verdict.FINE, f"{marked} lies within {least} to {most}.", "", PROTECTS)
