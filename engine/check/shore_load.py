"""What runs together on shore power, leg by leg, and at a weak dock?"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from engine.check.shore_dock import wrong_dock
from engine.check.shore_said import More, Side, gravity, sentence_of, unread_words
from engine.check.shore_ways import in_force, ways_in
from engine.finding import Verdict, meets
from engine.plan.shore_parts import BOTH
from engine.shore.apart import mends, pairs_apart, relief
from engine.shore.appliances import current_at
from engine.shore.pass_through import limit_setting
from engine.shore.together import total
from engine.units import Amp, Volt, Watt, said, words

if TYPE_CHECKING:
    from engine.check.shore_ways import Way
    from engine.plan.shore_parts import AcCircuit, Item, ShorePlan
    from engine.shore.services import Service


LOAD_WORDS: Final = {
    Verdict.FINE: "Load alone: within {}",
    Verdict.SHOULD: "Load alone: above 80 % of {}",
    Verdict.STOP: "Load alone: over {}",
    Verdict.NOT_KNOWN: "Load alone: not known",
}


@dataclass(frozen=True, slots=True)
class LoadAnswer:
    """What runs at one time and what comes of it; current and rating of the fullest side.

    ``leave_off`` says what to switch off of what is on, ``with_all`` if everything were on; both
    are empty where nothing need be. ``unread`` says whose watts are not known.
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
    unread: str

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
    unread = tuple(one for one in shore.circuits if one.unknown and one.planned)
    across = _across(shore, on)
    sides = tuple(_side(way, on, unread, service, sure=not across) for way in ways)
    worst = max(sides, key=gravity)
    way = ways[sides.index(worst)]
    neutral = next((way for way in ways if way.neutral), None)
    everything = way.of(shore.items)
    pairs = pairs_apart(everything, worst.rating, service.volts, service.volts)
    more = _more(on, off, ways, service)
    return LoadAnswer(
        service,
        frozenset(one.ident for one in on),
        Watt(sum(one.appliance.watts for one in on)),
        sides,
        worst,
        neutral.current(on, service.volts, service.volts) if neutral else None,
        across or sentence_of(on, off, sides, service, more, unread),
        tuple((one.name, other.name) for one, other in pairs),
        tuple(one.name for one in more),
        _moved(on, service, up=False),
        _moved(on, service, up=True),
        limit_setting(service, Amp(_beside(shore, on, service))),
        relief(way.of(on), worst.rating, service.volts, service.volts) if way.sure else "",
        relief(everything, worst.rating, service.volts, service.volts),
        unread_words(unread),
    )


def _across(shore: ShorePlan, on: tuple[Item, ...]) -> str:
    """Return that what asks for two legs gets only one phase; empty where it does not."""
    one_phase = shore.one_phase or (shore.dock is not None and shore.dock.legs == 1)
    names = [one.appliance.name for one in on if one.leg == BOTH]
    if not one_phase or not names:
        return ""
    return (
        f"Not known what shore power carries: the {words(names)} asks for two legs, and here both "
        "are of one phase, which gives it no volts."
    )


def _side(
    way: Way,
    on: tuple[Item, ...],
    unread: tuple[AcCircuit, ...],
    service: Service,
    *,
    sure: bool = True,
) -> Side:
    """Return what a way carries; not known while nothing is on, or an entry on it was not read."""
    open_still = not on or not sure or any(way.holds(one.leg) for one in unread)
    now, weak = (
        way.judged(on, volts, service.volts) for volts in (service.volts, service.weak_volts)
    )
    if open_still:
        now, weak = (
            one if one.verdict is Verdict.STOP else replace(one, verdict=Verdict.NOT_KNOWN)
            for one in (now, weak)
        )
    return Side(way.name, way.rating, now, weak, way.neutral)


def _more(
    on: tuple[Item, ...], off: tuple[Item, ...], ways: tuple[Way, ...], service: Service
) -> tuple[More, ...]:
    """Return what is off and would pass what a way it hangs on may carry."""
    found = []
    for one in off:
        over = [way for way in ways if way.sure and way.holds(one.leg)
                and not meets(_with(on, one, way, service), way.rating)]  # fmt: skip
        guarded = [_with(on, one, way, service) / way.rating for way in over if not way.neutral]
        if over:
            current = Amp(max(guarded) * service.rating) if guarded else None
            found.append(More(one.appliance.name, current))
    return tuple(found)


def _with(on: tuple[Item, ...], one: Item, way: Way, service: Service) -> Amp:
    return way.current((*on, one), service.volts, service.volts)


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
