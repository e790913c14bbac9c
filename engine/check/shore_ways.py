"""The ways that shore power takes to the boat: legs, inlets, and the outlet they share."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from engine.finding import Verdict
from engine.plan.shore_parts import BOTH
from engine.shore.legs import NEUTRAL, Legs
from engine.shore.services import split
from engine.shore.together import Together, judged, total
from engine.units import Amp

if TYPE_CHECKING:
    from engine.plan.shore_parts import Item, ShorePlan
    from engine.shore.appliances import Appliance
    from engine.shore.services import Service
    from engine.units import Volt


def in_force(shore: ShorePlan) -> Service | None:
    """Return the service with the least of dock, inlet and main in its rating.

    Parameters
    ----------
    shore : ShorePlan
        As read; None comes back where no inlet is stated.
    """
    if shore.service is None:
        return None
    ratings = [shore.service.rating]
    if shore.dock is not None:
        ratings.append(shore.dock.rating)
    if shore.main.least is not None:
        ratings.append(shore.main.least)
    return replace(shore.service, rating=Amp(min(ratings)))


@dataclass(frozen=True, slots=True)
class Way:
    """One leg, inlet, outlet or neutral: its name, rating in A, the legs on it, whether it is sure.

    What ``differs`` is a neutral that carries the difference of two opposed legs.
    """

    name: str
    rating: Amp
    legs: tuple[str, ...] = ("1", "2")
    sure: bool = True
    neutral: bool = False
    differs: bool = False

    def holds(self, leg: str) -> bool:
        """Return whether what hangs on a leg hangs on it; 240 V need no neutral.

        Parameters
        ----------
        leg : str
            Of an appliance.
        """
        return not self.neutral if leg == BOTH else leg in self.legs

    def of(self, items: tuple[Item, ...]) -> tuple[Appliance, ...]:
        """Return the appliances that hang on it, with the watts they take from it.

        Parameters
        ----------
        items : tuple of Item
            Shape ``(n,)``.
        """
        alone = len(self.legs) == 1
        return tuple(one.on_leg if alone else one.appliance for one in items if self.holds(one.leg))

    def current(self, items: tuple[Item, ...], volts: Volt, rated: Volt) -> Amp:
        """Return what these take from it.

        Parameters
        ----------
        items : tuple of Item
            That are on, shape ``(n,)``.
        volts, rated : Volt
            At their plugs, and on their plates. [V]
        """
        if not self.differs:
            return total(self.of(items), volts, rated)
        one, two = (total(replace(self, legs=(leg,)).of(items), volts, rated) for leg in self.legs)
        return Legs(one, two).neutral

    def judged(self, items: tuple[Item, ...], volts: Volt, rated: Volt) -> Together:
        """Return how these run together on it; not known where the way itself is not.

        Parameters
        ----------
        items : tuple of Item
            That are on, shape ``(n,)``.
        volts, rated : Volt
            At their plugs, and on their plates. [V]
        """
        found = judged(self.current(items, volts, rated), self.rating)
        if self.neutral and found.verdict is Verdict.STOP:
            found = replace(found, rule=NEUTRAL)
        return found if self.sure else replace(found, verdict=Verdict.NOT_KNOWN)


def ways_in(shore: ShorePlan, service: Service) -> tuple[Way, ...]:
    """Return the legs or inlets, and the one outlet of one leg that both hang on.

    Two inlets behind a splitter have a leg each only where the dock gives two; else one outlet,
    and one cord to the splitter, carry both. The neutral two legs share comes last.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    service : Service
        In force.
    """
    dock = shore.dock
    if service.legs == 2:
        two = (Way("leg 1", service.rating, ("1",)), Way("leg 2", service.rating, ("2",)))
        one_phase = shore.one_phase or (dock is not None and dock.legs == 1)
        neutral = Way("the neutral", service.rating, neutral=True, differs=not one_phase)
        shared = (Way("one dock outlet", dock.rating),) if dock and dock.legs == 1 else ()
        return (*two, *shared, neutral)
    if shore.inlets != 2 or shore.feeding == "selector":
        return (Way("", service.rating),)
    each = (service.rating, service.rating)
    if shore.feeding == "splitter" and dock:
        each = split(dock, (service, service)).each  # type: ignore[assignment]
    two = (Way("inlet 1", each[0], ("1",)), Way("inlet 2", each[1], ("2",)))
    if shore.feeding == "splitter" and dock and dock.legs == 2 and shore.one_phase:
        return (*two, Way("the splitter cord's neutral", dock.rating, neutral=True))
    if shore.feeding == "apart" or (dock and dock.legs == 2):
        return two
    outlet = Amp(split(dock, (service, service)).together) if dock else service.rating
    return (*two, Way("one dock outlet", outlet, sure=bool(dock and shore.feeding)))
