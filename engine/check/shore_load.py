"""What runs together on shore power, leg by leg, and at a weak dock?"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from engine.finding import Verdict, meets
from engine.shore.apart import mends, pairs_apart
from engine.shore.appliances import current_at
from engine.shore.legs import Legs
from engine.shore.pass_through import limit_setting
from engine.shore.services import split
from engine.shore.together import Together, judged, sentence, total
from engine.units import Amp, Volt, Watt, said, words

if TYPE_CHECKING:
    from engine.plan.shore_parts import Item, ShorePlan
    from engine.shore.appliances import Appliance
    from engine.shore.services import Service


@dataclass(frozen=True, slots=True)
class Side:
    """One leg or inlet: its name, what it may carry in A, and what it carries."""

    name: str
    rating: Amp
    now: Together
    weak: Together


@dataclass(frozen=True, slots=True)
class LoadAnswer:
    """What runs at one time and what comes of it; current and rating of the fullest side."""

    service: Service
    running: frozenset[str]
    watts: Watt
    sides: tuple[Side, ...]
    worst: Side
    neutral: Amp | None
    sentence: str
    apart: tuple[tuple[str, str], ...]
    tripping: tuple[str, ...]
    falls: tuple[str, ...]
    rises: tuple[str, ...]
    limit: Amp | None

    @property
    def weak_volts(self) -> Volt:
        """What a weak dock still gives, V."""
        return self.service.weak_volts


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
    if shore.main.rating is not None:
        ratings.append(shore.main.rating)
    return replace(shore.service, rating=Amp(min(ratings)))


def _sides(shore: ShorePlan, service: Service) -> tuple[tuple[str, Amp], ...]:
    """Return the names of legs or inlets and what each may carry."""
    two_inlets = shore.inlets == 2 and shore.feeding != "selector"
    if service.legs == 2:
        return (("leg 1", service.rating), ("leg 2", service.rating))
    if not two_inlets:
        return (("", service.rating),)
    each = (service.rating, service.rating)
    if shore.feeding == "splitter":
        each = split(shore.dock or service, (service, service)).each  # type: ignore[assignment]
    return (("inlet 1", each[0]), ("inlet 2", each[1]))


def _of(items: tuple[Item, ...], place: int, sides: int) -> tuple[Appliance, ...]:
    return tuple(one.appliance for one in items if sides == 1 or one.leg == str(place))


def load_answer(shore: ShorePlan, running: frozenset[str]) -> LoadAnswer | None:
    """Return what comes of running these appliances together; None where no inlet is stated.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    running : frozenset of str
        Ids of the appliances that are on.
    """
    service = in_force(shore)
    if service is None:
        return None
    on = tuple(one for one in shore.items if one.ident in running)
    off = tuple(one for one in shore.items if one.ident not in running)
    named = _sides(shore, service)
    sides = tuple(
        Side(
            name,
            rating,
            judged(total(_of(on, place, len(named)), service.volts, service.volts), rating),
            judged(total(_of(on, place, len(named)), service.weak_volts, service.volts), rating),
        )
        for place, (name, rating) in enumerate(named, 1)
    )
    worst = max(sides, key=lambda side: side.now.share)
    neutral = None
    if service.legs == 2:
        legs = Legs(sides[0].now.current, sides[1].now.current, shore.one_phase)
        neutral = legs.neutral
    everything = _of(shore.items, sides.index(worst) + 1, len(sides))
    pairs = pairs_apart(everything, worst.rating, service.volts, service.volts)
    tripping = tuple(one.appliance.name for one in off if _trips(on, one, named, service))
    return LoadAnswer(
        service,
        frozenset(one.ident for one in on),
        Watt(sum(one.appliance.watts for one in on)),
        sides,
        worst,
        neutral,
        _sentence(on, off, sides, service, tripping),
        tuple((one.name, other.name) for one, other in pairs),
        tripping,
        _moved(on, service, up=False),
        _moved(on, service, up=True),
        limit_setting(service, Amp(_beside(shore, on, service))),
    )


def _trips(
    on: tuple[Item, ...], one: Item, named: tuple[tuple[str, Amp], ...], service: Service
) -> bool:
    """Return whether one more appliance passes what its side may carry."""
    place = int(one.leg) if len(named) > 1 else 1
    loads = _of((*on, one), place, len(named))
    return not meets(total(loads, service.volts, service.volts), named[place - 1][1])


def _sentence(
    on: tuple[Item, ...],
    off: tuple[Item, ...],
    sides: tuple[Side, ...],
    service: Service,
    tripping: tuple[str, ...],
) -> str:
    if not on:
        return "Nothing is switched on."
    if len(sides) == 1:
        return sentence(
            tuple(one.appliance for one in on), service, tuple(one.appliance for one in off)
        )
    shares = words(
        f"{round(side.now.share * 100)} % of {said(side.rating)} A on {side.name}" for side in sides
    )
    names = words(one.appliance.name for one in on)
    worst = max(sides, key=lambda side: side.now.share)
    if worst.now.verdict is Verdict.STOP:
        return f"Shore power does not carry the {names} together ({shares}): {worst.name} trips."
    tail = f"; add the {words(tripping, 'or')} and it trips" if tripping else ""
    return f"Shore power carries the {names} together ({shares}){tail}."


def _moved(on: tuple[Item, ...], service: Service, *, up: bool) -> tuple[str, ...]:
    """Return the appliances whose current rises, or falls, at a weak dock."""
    found = []
    for one in on:
        now, weak = (
            current_at(one.appliance, volts, service.volts)
            for volts in (service.volts, service.weak_volts)
        )
        if (weak > now) if up else (weak < now):
            found.append(one.appliance.name)
    return tuple(found)


def _beside(shore: ShorePlan, on: tuple[Item, ...], service: Service) -> float:
    """Return the current beside the inverter-charger's input."""
    aside = tuple(
        one.appliance for one in on if not one.inverter and one.circuit != shore.on_inverter.circuit
    )
    return total(aside, service.volts, service.volts)


def left_off(shore: ShorePlan, running: frozenset[str]) -> tuple[str, ...]:
    """Return the appliances any one of which, switched off, ends an overload.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    running : frozenset of str
        Ids of the appliances that are on.
    """
    found = load_answer(shore, running)
    if found is None or found.worst.now.verdict is not Verdict.STOP:
        return ()
    on = tuple(one for one in shore.items if one.ident in running)
    loads = _of(on, found.sides.index(found.worst) + 1, len(found.sides))
    volts = found.service.volts
    return tuple(one.name for one in mends(loads, found.worst.rating, volts, volts))
