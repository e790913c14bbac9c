"""Does the way from the dock keep its volts, and do the plugs belong together?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.check.asked import Asked, fine, wrong
from engine.check.part import Part, open_question
from engine.check.shore_carrying import Run, protects, run_of
from engine.check.shore_dock import fixed_installation, wrong_dock
from engine.finding import Severity, Verdict, Who, meets
from engine.shore.cord import (
    ALLOWED,
    CORD_SIZE,
    FEED_DROP,
    Cord,
    cord_drop,
    cord_resistance,
    thick_enough,
)
from engine.shore.legs import Legs, leg_drops
from engine.shore.panel import BRANCH_PROTECTS
from engine.shore.services import PLUGS, SERVICES, Crossing, crossing
from engine.units import Metre, OhmPerKm, Share, Volt, said, words

if TYPE_CHECKING:
    from engine.plan.shore_parts import ShorePlan
    from engine.units import Amp


@dataclass(frozen=True, slots=True)
class FeedAnswer:
    """Volts lost at full load in cord and feed, None where not known; and their share."""

    current: Amp
    cord: Volt | None
    feed: Volt | None
    lost: Volt
    share: Share
    missing: tuple[str, ...]


def feed_answer(shore: ShorePlan) -> FeedAnswer | None:
    """Return the volts lost at full load, copper warm.

    None where no inlet is stated, or where the dock is not for it.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    service, feed = shore.service, shore.feed
    if service is None or wrong_dock(shore):
        return None
    missing = []
    cord = inner = None
    if feed.cord_length and feed.cord_size:
        cord = cord_drop(service.rating, Cord(feed.cord_length, feed.cord_size))
    else:
        missing.append("the cord's length and conductor")
    if feed.length and feed.size:
        inner = cord_drop(service.rating, Cord(feed.length, feed.size))
    elif feed.length is None or feed.length > 0:
        missing.append("the run from inlet to main")
    lost = Volt((cord or 0.0) + (inner or 0.0))
    return FeedAnswer(
        service.rating, cord, inner, lost, Share(lost / service.volts), tuple(missing)
    )


def lopsided(shore: ShorePlan, one: Amp, two: Amp) -> tuple[Volt, Volt] | None:
    """Return what each leg of a service with two loses in cord and feed, as it is loaded now.

    Parameters
    ----------
    shore : ShorePlan
        As read; None comes back where it has one leg or the way is not known.
    one, two : Amp
        On the legs. [A]

    Returns
    -------
    tuple of Volt or None
        A leg's own and its part of the neutral's; a negative figure is a rise. [V]
    """
    service, feed = shore.service, shore.feed
    if service is None or service.legs != 2 or not (feed.cord_length and feed.cord_size):
        return None
    ohms = cord_resistance(feed.cord_size, Cord(feed.cord_length, feed.cord_size).temperature)
    return leg_drops(Legs(one, two, shore.one_phase), Metre(feed.cord_length), OhmPerKm(ohms))


def feed_asked(shore: ShorePlan) -> Asked:
    """Return whether cord and feed keep enough volts.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    found = feed_answer(shore)
    if found is None:
        part = open_question(FEED_DROP, "Choose the shore service first.")
        return Asked("cord and feed", "shore.cord_length", (part,))
    parts: list[Part] = []
    way = "from dock to main"
    if found.missing:
        way = "in the cord" if found.feed is None else "from inlet to main"
    text = (
        f"{said(found.lost)} V are lost {way} at {said(found.current)} A with the copper "
        f"warm, {said(found.share * 100, 2)} % of the volts."
    )
    if found.cord is None and found.feed is None:
        parts.append(open_question(FEED_DROP, f"Enter {words(found.missing)}."))
    elif not meets(found.share, ALLOWED):
        parts.append(
            wrong(
                FEED_DROP,
                Verdict.SHOULD,
                f"{text} 5 % is the most.",
                "A shorter or thicker cord, or less load on it.",
                Severity.SHOULD,
                Who.OWNER,
            )
        )
    else:
        parts.append(fine(FEED_DROP, text))
        if found.missing:
            parts.append(open_question(FEED_DROP, f"Not counted: {words(found.missing)}."))
    return Asked("cord and feed", "shore.cord_length", (*parts, *_thick(shore), *_feed(shore)))


def _feed(shore: ShorePlan) -> tuple[Part, ...]:
    """Return whether the main guards each conductor stated for the run from the inlet."""
    main, inlet, feed = shore.main.largest, shore.inlet, shore.feed
    sizes = dict.fromkeys(
        one for one in (feed.size, inlet.size if inlet else None) if one is not None
    )
    name = "From inlet to main"
    if not sizes and feed.length is not None and not feed.length:
        return ()
    if not sizes or main is None:
        what = "its conductor" if main is not None else "the main breaker's rating"
        return (open_question(BRANCH_PROTECTS, f"{name}: enter {what}."),)
    return tuple(protects(name, main, run_of(inlet, one) if inlet else Run(one)) for one in sizes)


def _thick(shore: ShorePlan) -> tuple[Part, ...]:
    service, size = shore.service, shore.feed.cord_size
    if service is None or size is None:
        return ()
    enough = thick_enough(size, service.rating)
    if enough is None:
        text = f"The thinnest cord for {service.name} is not in this program's tables."
        return (open_question(CORD_SIZE, text, Verdict.CANNOT_SAY),)
    if enough:
        return (fine(CORD_SIZE, f"{size} is thick enough for {said(service.rating)} A."),)
    text = f"A cord of {size} is too thin for {said(service.rating)} A: it burns at its plug."
    mend = "Do not use it; a cord made for the service."
    return (wrong(CORD_SIZE, Verdict.STOP, text, mend, Severity.STOP_NOW, Who.OWNER),)


def dock_asked(shore: ShorePlan) -> Asked | None:
    """Return whether the dock's outlet may feed the inlet; None where nothing else is offered.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    if shore.dock is None or shore.service is None:
        return None
    found = crossing(shore.dock, shore.service)
    fixed = fixed_installation(shore) if wrong_dock(shore) else None
    part = Part(
        found.rule,
        found.verdict,
        f"{found.words} {fixed.words}" if fixed else found.words,
        "" if found.verdict is Verdict.FINE else "No adaptors in a chain, none made at home.",
        Severity.STOP_NOW if found.verdict is Verdict.STOP else Severity.SHOULD,
        Who.LICENSED,
    )
    return Asked(PLUGS.name, "shore.dock", (part,))


def crossings(shore: ShorePlan) -> tuple[tuple[str, Crossing], ...]:
    """Return every other dock outlet, and whether it may feed this inlet.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    inlet = shore.service
    if inlet is None:
        return ()
    return tuple(
        (name, crossing(dock, inlet)) for name, dock in SERVICES.items() if name != inlet.name
    )
