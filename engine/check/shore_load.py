"""What runs together on shore power, leg by leg, and at a weak dock?"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from engine.check.shore_dock import wrong_dock
from engine.check.shore_ways import in_force, ways_in
from engine.finding import Verdict, meets
from engine.shore.apart import mends, pairs_apart, relief
from engine.shore.appliances import current_at
from engine.shore.legs import Legs
from engine.shore.pass_through import limit_setting
from engine.shore.together import Together, sentence, total, trips_words
from engine.units import Amp, Volt, Watt, said, words

if TYPE_CHECKING:
    from engine.check.shore_ways import Way
    from engine.plan.shore_parts import Item, ShorePlan
    from engine.shore.services import Service


LOAD_WORDS: Final = {
    Verdict.FINE: "Load alone: within {}",
    Verdict.SHOULD: "Load alone: above 80 % of {}",
    Verdict.STOP: "Load alone: over {}",
    Verdict.NOT_KNOWN: "Load alone: not known",
}


@dataclass(frozen=True, slots=True)
class Side:
    """One leg or inlet: its name, what it may carry in A, and what it carries."""

    name: str
    rating: Amp
    now: Together
    weak: Together


@dataclass(frozen=True, slots=True)
class LoadAnswer:
    """What runs at one time and what comes of it; current and rating of the fullest side.

    ``leave_off`` says what to switch off of what is on, ``with_all`` if everything were on; both
    are empty where nothing need be.
    """

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
    leave_off: str
    with_all: str

    @property
    def load_words(self) -> str:
        """The load's verdict in words of its own: it says nothing of shore power as a whole."""
        return LOAD_WORDS[self.worst.now.verdict].format(f"{said(self.worst.rating)} A")

    @property
    def weak_volts(self) -> Volt:
        """What a weak dock still gives, V."""
        return self.service.weak_volts


def load_answer(shore: ShorePlan, running: frozenset[str]) -> LoadAnswer | None:
    """Return what comes of running these appliances together.

    None where no inlet is stated, or where the dock is not for it.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    running : frozenset of str
        Ids of the appliances that are on.
    """
    service = in_force(shore)
    if service is None or wrong_dock(shore):
        return None
    on = tuple(one for one in shore.items if one.ident in running)
    off = tuple(one for one in shore.items if one.ident not in running)
    ways = ways_in(shore, service)
    sides = tuple(
        Side(
            way.name,
            way.rating,
            way.judged(on, service.volts, service.volts),
            way.judged(on, service.weak_volts, service.volts),
        )
        for way in ways
    )
    worst = max(sides, key=lambda side: (side.now.verdict is Verdict.STOP, side.now.share))
    way = ways[sides.index(worst)]
    neutral = None
    if service.legs == 2:
        one_phase = shore.one_phase or (shore.dock is not None and shore.dock.legs == 1)
        legs = Legs(sides[0].now.current, sides[1].now.current, one_phase)
        neutral = legs.neutral
    everything = way.of(shore.items)
    pairs = pairs_apart(everything, worst.rating, service.volts, service.volts)
    tripping = tuple(one.appliance.name for one in off if _trips(on, one, ways, service))
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
        relief(way.of(on), worst.rating, service.volts, service.volts) if way.sure else "",
        relief(everything, worst.rating, service.volts, service.volts),
    )


def _trips(on: tuple[Item, ...], one: Item, ways: tuple[Way, ...], service: Service) -> bool:
    """Return whether one more appliance passes what a way it hangs on may carry."""
    volts = service.volts
    return any(
        not meets(total(way.of((*on, one)), volts, volts), way.rating)
        for way in ways
        if one.leg in way.legs and way.sure
    )


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
    worst = max(sides, key=lambda side: (side.now.verdict is Verdict.STOP, side.now.share))
    if worst.now.verdict is Verdict.STOP:
        how = trips_words(worst.now.current, replace(service, rating=worst.rating))
        return f"Shore power does not carry the {names} together ({shares}): {worst.name}, {how}."
    if worst.now.verdict is Verdict.NOT_KNOWN:
        return (
            f"Not known whether shore power carries the {names} together ({shares}): say how the "
            "two inlets are fed and what the dock offers."
        )
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
    loads = ways_in(shore, found.service)[found.sides.index(found.worst)].of(on)
    volts = found.service.volts
    return tuple(one.name for one in mends(loads, found.worst.rating, volts, volts))
