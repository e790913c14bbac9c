"""What may run together, and how that is said."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Rule, Verdict, meets
from engine.problem import Problem
from engine.shore.appliances import current_at
from engine.source import Source
from engine.units import Amp, Share, Volt, said, words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from engine.shore.appliances import Appliance
    from engine.shore.services import Service

CONTINUOUS: Final = Share(0.8)
"""Share of its rating that a breaker on alternating current may carry for hours."""
EIGHTY: Final = Rule(
    "80 % continuous",
    "what runs for hours takes at most 80 % of the breaker's rating",
    Source("NFPA 70 (NEC)", "common reading", "210.20(A) and 215.3", typical=True),
)
TRIPS: Final = Rule(
    "trips",
    "all that runs at one time takes no more than the rating",
    Source("breakers", "nature of a breaker", "above its rating it opens in time"),
)
LATE: Final = Rule(
    "trips late",
    "above its rating a breaker opens within the hour only from 1.35 times it, or 1.45 for 230 V",
    Source("UL 489 and IEC 60898", "as remembered", "conventional tripping current", typical=True),
)
IN_AN_HOUR: Final = {True: Share(1.35), False: Share(1.45)}
"""Share of its rating from which a breaker opens within the hour, by whether North American."""


@dataclass(frozen=True, slots=True)
class Together:
    """Current of all that runs in A, its share of the rating, the verdict, and the rule."""

    current: Amp
    share: Share
    verdict: Verdict
    rule: Rule


def check_rating(rating: Amp, where: str) -> None:
    """Refuse a rating that no breaker has.

    Parameters
    ----------
    rating : Amp
        As stated. [A]
    where : str
        Path of the entry.

    Raises
    ------
    Problem
        If it is not above zero.
    """
    if rating <= 0:
        raise Problem(where, f"A breaker of {said(rating)} A is none.", "Enter such as 15 A.")


def total(loads: tuple[Appliance, ...], volts: Volt, rated: Volt) -> Amp:
    """Return the current of appliances that run at one time.

    Parameters
    ----------
    loads : tuple of Appliance
        Shape ``(n,)``.
    volts : Volt
        At their plugs. [V]
    rated : Volt
        What their plates say. [V]

    Returns
    -------
    Amp
        Sum of amperes, as if all were in phase: never too little. [A]
    """
    return Amp(sum(current_at(one, volts, rated) for one in loads))


def judged(current: Amp, rating: Amp) -> Together:
    """Return the verdict on a current behind a breaker.

    Parameters
    ----------
    current : Amp
        Of all that runs. [A]
    rating : Amp
        Of the breaker or inlet. [A]

    Returns
    -------
    Together
        Stop above the rating, should above 80 % of it, else within limit.

    Raises
    ------
    Problem
        If the rating is not above zero.

    Examples
    --------
    >>> [judged(Amp(a), Amp(30.0)).verdict.value for a in (23.9, 24.0, 27.0, 32.7)]
    ['within limit', 'within limit', 'should', 'stop']
    """
    check_rating(rating, "rating")
    share = Share(current / rating)
    if not meets(current, rating):
        return Together(current, share, Verdict.STOP, TRIPS)
    if not meets(share, CONTINUOUS):
        return Together(current, share, Verdict.SHOULD, EIGHTY)
    return Together(current, share, Verdict.FINE, EIGHTY)


def together(loads: tuple[Appliance, ...], service: Service, volts: Volt | None = None) -> Together:
    """Return whether appliances may run together on one leg of a service.

    Parameters
    ----------
    loads : tuple of Appliance
        Rated for the service's nominal volts.
    service : Service
        What the dock offers.
    volts : Volt or None
        What it gives today; its nominal volts where None. [V]

    Raises
    ------
    Problem
        If the volts are not above zero.

    Examples
    --------
    >>> from engine.shore.appliances import read_appliances
    >>> from engine.shore.services import service
    >>> loads = read_appliances("charger 680 W, kettle 1000 W, heater 750 W, laptop 440 W")
    >>> found = together(loads, service("30 A 120 V"))
    >>> found.current, found.verdict.value
    (23.92, 'within limit')
    """
    there = service.volts if volts is None else volts
    if there <= 0:
        raise Problem("volts", f"{said(there)} V is no supply.", "Enter such as 108 V.")
    return judged(total(loads, there, service.volts), service.rating)


@dataclass(frozen=True, slots=True)
class Branch:
    """An AC circuit behind the main: its name and its breaker's rating in A."""

    name: str
    rating: Amp

    def __post_init__(self) -> None:
        check_rating(self.rating, f"branches.{self.name}")


def on_branch(branch: Branch, loads: tuple[Appliance, ...], volts: Volt, rated: Volt) -> Together:
    """Return whether what hangs on a branch may run together.

    Parameters
    ----------
    branch : Branch
        With its breaker.
    loads : tuple of Appliance
        Of the whole boat; those of this branch count.
    volts : Volt
        At their plugs. [V]
    rated : Volt
        What their plates say. [V]
    """
    here = tuple(one for one in loads if one.branch == branch.name)
    return judged(total(here, volts, rated), branch.rating)


def trips_words(current: Amp, service: Service) -> str:
    """Return how a breaker takes a current over its rating; the one wording of it.

    Parameters
    ----------
    current : Amp
        Of all that runs, above the rating. [A]
    service : Service
        With its rating.

    Examples
    --------
    >>> from engine.shore.services import service
    >>> trips_words(Amp(32.7), service("30 A 120 V"))
    'it trips, late or not at all at 109 %: plug and cord heat first'
    """
    if meets(IN_AN_HOUR[service.american] * service.rating, current):
        return "it trips"
    share = round(current / service.rating * 100)
    return f"it trips, late or not at all at {share} %: plug and cord heat first"


def add_words(tripping: Sequence[tuple[str, Amp]], service: Service) -> str:
    """Return what one more appliance would do, the mildest of them told; empty without any.

    Parameters
    ----------
    tripping : sequence of tuple of str and Amp
        Each by name, and all that runs with it. [A]
    service : Service
        With its rating.
    """
    if not tripping:
        return ""
    least = min(current for _, current in tripping)
    names = words((name for name, _ in tripping), "or")
    return f"; add the {names} and {trips_words(least, service)}"


def sentence(
    base: tuple[Appliance, ...], service: Service, extra: tuple[Appliance, ...] = ()
) -> str:
    """Return in one sentence what a service carries, and what would trip it.

    Parameters
    ----------
    base : tuple of Appliance
        Planned to run together.
    service : Service
        What the dock offers.
    extra : tuple of Appliance
        Asked for besides, one after another.

    Examples
    --------
    >>> from engine.shore.appliances import read_appliances
    >>> from engine.shore.services import service
    >>> base = read_appliances("charger 680 W, kettle 1000 W, heater 1190 W")
    >>> sentence(base, service("30 A 120 V"), read_appliances("microwave 1050 W"))
    'Shore power carries the charger, kettle and heater together (80 % of 30 A); add the microwave \
and it trips, late or not at all at 109 %: plug and cord heat first.'
    """
    found = together(base, service)
    names = words(one.name for one in base)
    share = f"{round(found.share * 100)} % of {said(service.rating)} A"
    side_by_side = " together" if len(base) > 1 else ""
    if found.verdict is Verdict.STOP:
        tail = trips_words(found.current, service)
        return f"Shore power does not carry the {names}{side_by_side} ({share}): {tail}."
    text = f"Shore power carries the {names}{side_by_side} ({share})"
    with_it = [(one.name, together((*base, one), service)) for one in extra]
    tripping = [(name, one.current) for name, one in with_it if one.verdict is Verdict.STOP]
    if found.verdict is Verdict.SHOULD:
        text += ", for minutes rather than hours"
    return f"{text}{add_words(tripping, service)}."
