"""What may run together on shore power?"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING, Final

from engine.field import TEXT, Field
from engine.finding import Step, Verdict
from engine.shore.apart import mends, pairs_apart
from engine.shore.appliances import read_appliances
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from engine.shore.services import AMERICAN, WEAK, WEAK_DOCK, service
from engine.shore.together import judged, total, trips_words
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import CURRENT, VOLTS, Amp, Volt, said, words

if TYPE_CHECKING:
    from engine.shore.appliances import Appliance

RATED: Final = Field(
    "volts", "Rated volts", VOLTS, "What dock and appliances are made for: 120 or 230.", "120 V",
    90.0, 264.0,
)  # fmt: skip
SERVICE: Final = Field(
    "service", "Service", CURRENT, "What the dock breaker is marked: 30 A.", above=True, least=0.0,
    most=200.0,
)  # fmt: skip
LOADS: Final = Field(
    "loads", "Loads", TEXT, "With watts, one after another: kettle 1000 W, charger 680 W."
)
SAID: Final = {
    Verdict.FINE: "By their load alone they may run together for hours.",
    Verdict.SHOULD: "For minutes only: over 80 % for hours, the breaker warms and opens.",
}


def answer(inputs: Inputs) -> Outcome:
    """Return current, share of the service and verdict of what runs together.

    Raises
    ------
    Problem
        If the list of loads cannot be read.
    """
    loads = _apart_by_name(read_appliances(inputs.texts["loads"]))
    volts, rating = Volt(inputs["volts"]), Amp(inputs["service"])
    found = judged(total(loads, volts, volts), rating)
    weak_volts = Volt(volts * WEAK)
    weak = total(loads, weak_volts, volts)
    watts = sum(one.watts for one in loads)
    answers = {
        "current": Value(found.current, "A", "current"),
        "share_of_service": Value(found.share, "share", "share of the service"),
        "verdict": Value(found.verdict.value, "", "verdict on the load alone"),
    }
    steps = (
        Step("watts", " + ".join(f"{one.name} {said(one.watts, 4)}" for one in loads[:12])
             + (" and more" if len(loads) > 12 else ""), f"{said(watts, 4)} W"),
        Step("current", "watts / volts", f"{said(found.current)} A"),
        Step("share of the service", f"current / {said(rating)} A",
             f"{said(found.share * 100)} %", found.rule.source),
        Step("at a weak dock", f"each by its class, at {said(weak_volts)} V", f"{said(weak)} A",
             WEAK_DOCK.source),
    )  # fmt: skip
    text = (
        f"{said(watts, 4)} W are {said(found.current)} A, {said(found.share * 100)} % of "
        f"{said(rating)} A. {SAID.get(found.verdict) or _trips(found.current, rating, volts)}"
    )
    notes = [_apart(loads, rating, volts, found.verdict)]
    notes.append(
        f"At a weak dock of {said(weak_volts)} V it is {said(weak)} A: heaters draw less, "
        "chargers and motors more."
    )
    return Outcome(answers, text, steps, found.rule.name, tuple(note for note in notes if note))


def _apart_by_name(loads: tuple[Appliance, ...]) -> tuple[Appliance, ...]:
    """Return the loads, those of one name with their watts in it."""
    names = Counter(one.name.lower() for one in loads)
    return tuple(
        replace(one, name=f"{one.name} of {said(one.watts, 4)} W")
        if names[one.name.lower()] > 1
        else one
        for one in loads
    )


def _trips(current: Amp, rating: Amp, volts: Volt) -> str:
    like = service("30 A 120 V" if volts < AMERICAN else "16 A 230 V")
    told = trips_words(current, replace(like, rating=rating))
    return f"{told[0].upper()}{told[1:]}."


def _apart(loads: tuple[Appliance, ...], rating: Amp, volts: Volt, verdict: Verdict) -> str:
    """Return which two not to run together, or else what must stay off."""
    if verdict is not Verdict.STOP:
        return ""
    pairs = pairs_apart(loads, rating, volts, volts)
    if pairs:
        named = words((f"{one.name} and {other.name}" for one, other in pairs), "or")
        return f"Do not run together: {named}."
    alone = mends(loads, rating, volts, volts)
    return f"Leave the {alone[0].name} off." if alone else "More than one of them must stay off."


SHORE_LOAD: Final = Sum(
    "shore-load",
    "What may run together on shore power?",
    "Current of all that runs, its share of the service, and which two to keep apart.",
    (RATED, SERVICE, LOADS),
    answer,
    CAUTION,
    SWIM_CAUTION,
)
