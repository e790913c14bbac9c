"""Main and branch breakers: where they sit, how many poles, how large, what they interrupt."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.conductors.carrying import carries
from engine.finding import Finding, Rule, Severity, Verdict, Who, meets
from engine.problem import Problem
from engine.shore.tables import INTERRUPTS, INTERRUPTS_LARGE
from engine.source import Source, common_practice
from engine.units import Amp, Metre, said

if TYPE_CHECKING:
    from engine.conductors.carrying import Surroundings
    from engine.conductors.sizes import Size
    from engine.shore.services import Service
    from engine.shore.together import Branch

NEAR: Final = Metre(10 * 0.3048)
"""Farthest a main breaker may sit from its inlet along the conductor, m: ten feet."""
VERY_NEAR: Final = Metre(0.5)
"""The stricter habit, m."""

MAIN_NEAR: Final = Rule(
    "main near inlet",
    "the main breaker is within 3 m (10 ft) of the inlet, measured along the conductor; one "
    "farther off needs another breaker within that length",
    Source("ABYC E-11", "as reprinted", "main shore power disconnect, distance from inlet"),
)
MAIN_VERY_NEAR: Final = Rule(
    "main very near inlet",
    "the main breaker is within 0.5 m of the inlet, or the run to it is further protected",
    Source("ISO 13297", "2020", "13.1 to 13.2.2, read in part", typical=True),
)
MAIN_FITS: Final = Rule(
    "main fits inlet",
    "the main breaker is rated no more than its inlet and cord",
    common_practice("inlet, cord and main of one rating"),
)
DOUBLE_POLE: Final = Rule(
    "double-pole main",
    "the main breaker opens live conductor and neutral at once, or both legs of two",
    Source("ISO 13297", "2020", "13.1 to 13.2.2, read in part", typical=True),
)
BRANCH_PROTECTS: Final = Rule(
    "branch protects",
    "a branch breaker is rated no more than its conductor carries after every factor",
    Source("ABYC E-11", "as commonly read", "rating against corrected amperage", typical=True),
)
INTERRUPTS_ENOUGH: Final = Rule(
    "interrupting rating",
    "a breaker interrupts at least what its place asks",
    INTERRUPTS.source,
)


@dataclass(frozen=True, slots=True)
class Main:
    """A main breaker: rating in A, m along the conductor from the inlet, and poles."""

    rating: Amp
    distance: Metre
    poles: int = 2
    further_protected: bool = False

    def __post_init__(self) -> None:
        if self.rating <= 0:
            raise Problem(
                "main.rating", f"A breaker of {said(self.rating)} A is none.", "Enter such as 30 A."
            )
        if self.distance < 0:
            raise Problem(
                "main.distance", f"{said(self.distance)} m is no distance.", "Enter such as 2 m."
            )
        if not 1 <= self.poles <= 4:
            raise Problem("main.poles", f"{self.poles} poles is no breaker.", "Enter 2.")


def judge_main(main: Main, service: Service) -> tuple[Finding, ...]:
    """Return what is wrong with a main breaker, gravest first; nothing where all is well.

    Parameters
    ----------
    main : Main
        As it is.
    service : Service
        What the inlet is for.
    """
    found = []
    far = f"The main breaker is {said(main.distance)} m from the inlet"
    if not meets(main.rating, service.rating):
        found.append(
            _finding(
                Verdict.STOP,
                f"The main breaker of {said(main.rating)} A is larger than the inlet of "
                f"{said(service.rating)} A.",
                f"A main of {said(service.rating)} A or less.",
                MAIN_FITS,
            )
        )
    if main.poles < 2:
        found.append(
            _finding(
                Verdict.STOP,
                "The main breaker opens one conductor only.",
                "A main breaker of two poles that open together.",
                DOUBLE_POLE,
            )
        )
    if not meets(main.distance, NEAR) and not main.further_protected:
        found.append(
            _finding(
                Verdict.STOP,
                f"{far}; 3 m (10 ft) is the most.",
                "A breaker within 3 m (10 ft) of the inlet, measured along the conductor.",
                MAIN_NEAR,
            )
        )
    elif not meets(main.distance, VERY_NEAR) and not main.further_protected:
        found.append(
            _finding(
                Verdict.SHOULD,
                f"{far}: within 3 m (10 ft), but the stricter habit is 0.5 m.",
                "The main nearer to the inlet, or a sheathed run, when it is next touched.",
                MAIN_VERY_NEAR,
            )
        )
    return tuple(found)


def judge_branch(branch: Branch, size: Size, around: Surroundings) -> Finding | None:
    """Return what is wrong with a branch breaker, or None.

    Parameters
    ----------
    branch : Branch
        With its breaker.
    size : Size
        Of its conductor.
    around : Surroundings
        Where the conductor lives.

    Raises
    ------
    Problem
        If the conductor is thinner than the carrying table.
    """
    limit = carries(size, around)
    if meets(branch.rating, limit):
        return None
    return _finding(
        Verdict.STOP,
        f"{branch.name}: {said(branch.rating)} A is more than the {said(limit)} A that {size} "
        "carries here.",
        f"A breaker of {said(limit)} A or less, or a thicker conductor.",
        BRANCH_PROTECTS,
        branch.name,
    )


def interrupts_needed(service: Service, *, main: bool) -> tuple[Amp, Source] | None:
    """Return the least interrupting rating, with its source, or None where no table says.

    Parameters
    ----------
    service : Service
        What the inlet is for.
    main : bool
        The main breaker, or else a branch.

    Returns
    -------
    tuple of Amp and Source, or None
        Nothing is at hand for 230 V services: there the dock's fault current decides. [A]

    Examples
    --------
    >>> from engine.shore.services import service
    >>> found = interrupts_needed(service("50 A 125/250 V"), main=True)
    >>> found[0]
    5000.0
    >>> interrupts_needed(service("16 A 230 V"), main=True) is None
    True
    """
    volts = "125/250 V" if service.legs == 2 else f"{said(service.volts)} V"
    row = f"{volts}, {said(service.rating)} A"
    for table in (INTERRUPTS, INTERRUPTS_LARGE):
        if row in table:
            return Amp(float(table[row][1 if main else 0])), table.source
    return None


def judge_interrupting(rating: Amp, service: Service, *, main: bool) -> Finding | None:
    """Return what is wrong with an interrupting rating, or None.

    Parameters
    ----------
    rating : Amp
        As marked on the breaker, at the service's volts. [A]
    service : Service
        What the inlet is for.
    main : bool
        The main breaker, or else a branch.
    """
    needed = interrupts_needed(service, main=main)
    if needed is None:
        return _finding(
            Verdict.CANNOT_SAY,
            f"The least interrupting rating for {service.name} is not in this program's tables.",
            "Ask the marina for the fault current at its outlet.",
            INTERRUPTS_ENOUGH,
            severity=Severity.NOTE,
        )
    if meets(needed[0], rating):
        return None
    return _finding(
        Verdict.STOP,
        f"The breaker interrupts {said(rating, 4)} A; {said(needed[0], 4)} A is the least.",
        f"A breaker that interrupts {said(needed[0], 4)} A or more.",
        INTERRUPTS_ENOUGH,
    )


def _finding(  # noqa: PLR0913, PLR0917
    verdict: Verdict,
    words: str,
    mend: str,
    rule: Rule,
    where: str = "shore.main",
    severity: Severity | None = None,
) -> Finding:
    grave = Severity.BEFORE_LEAVING if verdict is Verdict.STOP else Severity.SHOULD
    return Finding(where, verdict, severity or grave, words, mend, rule, Who.LICENSED)
