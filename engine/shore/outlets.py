"""Outlets behind a branch breaker: what they are marked, against what the breaker lets through."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Rule, Verdict, meets
from engine.source import Source, common_practice
from engine.units import Amp, said

if TYPE_CHECKING:
    from engine.shore.services import Service

OUTLETS: Final = Rule(
    "outlets' mark",
    "a branch breaker is rated no more than the outlets it feeds, but one of 20 A may feed several "
    "of 15 A",
    Source("NFPA 70 (NEC)", "as remembered", "210.21(B)(1) and table 210.21(B)(3)", typical=True),
)
OUTLETS_230: Final = Rule(
    "outlets' mark at 230 V",
    "a branch breaker is rated no more than the outlets it feeds",
    common_practice("no outlet behind a breaker larger than its mark"),
)
SEVERAL: Final = (Amp(20.0), Amp(15.0))
"""The largest breaker that may feed several smaller outlets, and their least mark, A."""
LEAST: Final = {True: Amp(15.0), False: Amp(10.0)}
"""Smallest outlet commonly sold, by whether the service is North American, A."""
FUSED: Final = Amp(13.0)
"""Mark of outlets whose plugs have a fuse, A."""
SERVICE_FIRST: Final = "choose the shore service first."
"""Said where the rule differs by service and none is chosen."""


@dataclass(frozen=True, slots=True)
class Fit:
    """Whether outlets fit their breaker, and why."""

    verdict: Verdict
    words: str
    rule: Rule


def outlets_fit(
    breaker: Amp, mark: Amp | None, count: int | None, service: Service | None
) -> Fit | None:
    """Return whether outlets fit the breaker before them; None where there is nothing to ask.

    Parameters
    ----------
    breaker : Amp
        Of the branch. [A]
    mark : Amp or None
        What the outlets are marked, None where not known. [A]
    count : int or None
        How many there are; a double one counts as two. [1]
    service : Service or None
        What the inlet is for; not known where None.

    Examples
    --------
    >>> from engine.shore.services import service
    >>> dock = service("30 A 120 V")
    >>> found = [outlets_fit(Amp(20.0), Amp(15.0), many, dock) for many in (1, 2, None)]
    >>> [one.verdict.value for one in found]
    ['stop', 'within limit', 'not known']
    """
    american = service is not None and service.american
    rule = OUTLETS if american else OUTLETS_230
    if count == 0 or (mark is None and meets(breaker, LEAST[american])):
        return None
    if service is None or mark is None:
        text = (
            f"enter what its outlets are marked, to compare with the breaker of {said(breaker)} A."
        )
        return Fit(Verdict.NOT_KNOWN, text if service else SERVICE_FIRST, rule)
    pair = f"outlets of {said(mark)} A behind a breaker of {said(breaker)} A"
    if meets(breaker, mark):
        return Fit(Verdict.FINE, f"{pair}.", rule)
    if not american:
        return _at_230(pair, mark)
    if not (meets(breaker, SEVERAL[0]) and meets(SEVERAL[1], mark)):
        return Fit(Verdict.STOP, f"{pair}: they burn before it opens.", rule)
    return _several(pair, count)


def _at_230(pair: str, mark: Amp) -> Fit:
    """Return whether outlets at 230 V may stand below their breaker: fused plugs decide."""
    if mark == FUSED:
        text = f"{pair}: enough where each plug has a fuse of its own. A licensed person says."
        return Fit(Verdict.NOT_KNOWN, text, OUTLETS_230)
    return Fit(Verdict.SHOULD, f"{pair}: one appliance may take more than its mark.", OUTLETS_230)


def _several(pair: str, count: int | None) -> Fit:
    """Return whether outlets that only several may stand so are several."""
    if count is None:
        text = f"{pair}: only several may stand so. Enter how many outlets there are."
        return Fit(Verdict.NOT_KNOWN, text, OUTLETS)
    if count == 1:
        return Fit(Verdict.STOP, f"one outlet, {pair}: only several may stand so.", OUTLETS)
    return Fit(Verdict.FINE, f"{count} {pair}, as several may stand.", OUTLETS)
