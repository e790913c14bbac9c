"""What may hang behind the inverter: its wave, warm air, what starts, and two at one time?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.check.asked import Asked, fine, wrong
from engine.check.part import Part, open_question
from engine.check.shore_said import unread_words
from engine.finding import Severity, Verdict, Who, governing, meets
from engine.inverter.surge import CARRIES_SURGE
from engine.shore.appliances import Nature
from engine.shore.generator import charted, fuel, size_needed, works_hard_enough
from engine.shore.starting import IN_TURN, Starter, start_in_turn, start_together, starts
from engine.shore.wave import MODIFIED, WAVE, OnModified, idle, saved_by_search, warm_share
from engine.units import Hour, Share, Watt, said, words

if TYPE_CHECKING:
    from engine.finding import Demand
    from engine.plan.parts import Plan
    from engine.plan.shore_parts import Item, ShorePlan
    from engine.shore.appliances import Appliance

KINDS: Final = {
    "air condition": "air conditioner", "air-condition": "air conditioner",
    "fridge": "mains compressor", "freezer": "mains compressor",
    "dehumidifier": "mains compressor", "ice maker": "mains compressor",
    "compressor": "mains compressor", "drill": "brush motor", "grinder": "brush motor",
    "vacuum": "brush motor", "microwave": "microwave",
}  # fmt: skip
"""Words in a name, and their class in the surge table."""
BY_NATURE: Final = {
    Nature.RESISTIVE: "heater",
    Nature.CONSTANT_POWER: "electronics",
    Nature.ELECTRONIC: "electronics",
    Nature.MOTOR: "induction motor",
    Nature.TRANSFORMER: "microwave",
}
SEARCHED: Final = Hour(20.0)
"""Hours on with nothing to feed, in the figure for search mode."""


@dataclass(frozen=True, slots=True)
class BehindInverter:
    """One appliance behind the inverter: its surge in W, and how it takes a modified wave."""

    item: Item
    surge: Watt
    kind: str
    modified: OnModified


@dataclass(frozen=True, slots=True)
class InverterAc:
    """What the AC side asks of the inverter; watts, and shares of its rating."""

    behind: tuple[BehindInverter, ...]
    warm: Share | None
    rating: Watt | None
    gives: Watt | None
    idle: tuple[Watt, Watt, Watt] | None
    search: float | None
    starting: str
    asked: tuple[Asked, ...]


def starter_of(appliance: Appliance) -> Starter:
    """Return an appliance with its class in the surge table, by name and nature."""
    name = appliance.name.lower()
    kind = next((kind for word, kind in KINDS.items() if word in name), None)
    return Starter(appliance.name, appliance.watts, kind or BY_NATURE[appliance.nature])


def inverter_ac(plan: Plan) -> InverterAc:
    """Return what may hang behind the inverter.

    Parameters
    ----------
    plan : Plan
        With its AC side.
    """
    shore, inverter = plan.shore, plan.inverter
    rating, surge = (inverter.rating, inverter.surge) if inverter else (None, None)
    behind = tuple(
        BehindInverter(item, starter.surge, starter.kind, MODIFIED[item.appliance.nature])
        for item in shore.items
        if item.inverter
        for starter in (starter_of(item.appliance),)
    )
    air = shore.on_inverter.air
    warm = warm_share(air) if air is not None else None
    gives = None
    if rating is not None and air is not None:
        gives = Watt(rating * (warm or 0.0))
    starters = tuple(starter_of(one.item.appliance) for one in behind)
    starting = _start_words(starters, surge) if starters and surge else ""
    asked: tuple[Asked, ...] = ()
    if behind:
        asked = (
            Asked("wave", "shore.wave", _wave(shore, behind)),
            Asked("starting", "shore.inverter", (_starting(starters, surge), *_unread(shore))),
            Asked("warm air", "shore.air", (_warm(behind, gives, air), *_unread(shore))),
        )
    elif unread := _unread(shore):
        asked = (Asked("starting", "shore.inverter", unread),)
    return InverterAc(
        behind,
        warm,
        rating,
        gives,
        idle(rating) if rating else None,
        saved_by_search(rating, SEARCHED) if rating else None,
        starting,
        asked,
    )


def _unread(shore: ShorePlan) -> tuple[Part, ...]:
    """Return that watts behind the inverter are not known; nothing where all are."""
    told = unread_words([one for one in shore.circuits if one.supply == "inverter"])
    return (open_question(CARRIES_SURGE, f"Not counted, as {told}."),) if told else ()


def _wave(shore: ShorePlan, behind: tuple[BehindInverter, ...]) -> tuple[Part, ...]:
    wave = shore.on_inverter.wave
    if not wave:
        return (open_question(WAVE, "Say which wave the inverter gives."),)
    if wave == "pure":
        return (fine(WAVE, "A pure wave feeds all of them."),)
    found = [
        wrong(
            WAVE,
            one.modified.verdict,
            f"The {one.item.appliance.name} on a modified wave: {_lower(one.modified.words)}",
            "A pure-wave inverter, or leave it for shore power.",
            Severity.BEFORE_LEAVING if one.modified.verdict is Verdict.STOP else Severity.SHOULD,
            Who.OWNER,
        )
        for one in behind
        if one.modified.verdict is not Verdict.FINE
    ]
    return tuple(found) or (fine(WAVE, "A modified wave feeds heaters."),)


def _lower(text: str) -> str:
    return text[0].lower() + text[1:]


def _start_words(starters: tuple[Starter, ...], surge: Watt) -> str:
    if len(starters) > 1:
        return starts(starters, Watt(0.0), surge)
    (one,) = starters
    return f"The {one.name} asks {said(one.surge, 4)} W of {said(surge, 4)} W to start."


def _starting(starters: tuple[Starter, ...], surge: Watt | None) -> Part:
    if surge is None:
        return open_question(CARRIES_SURGE, "Enter the inverter's surge rating.")
    text = _start_words(starters, surge)
    if meets(start_together(starters, Watt(0.0)), surge):
        return fine(IN_TURN, text)
    if meets(start_in_turn(starters, Watt(0.0)), surge):
        return open_question(IN_TURN, text, Verdict.SHOULD)
    mend = "Start the largest alone, or leave it for shore power."
    return wrong(IN_TURN, Verdict.SHOULD, text, mend, Severity.SHOULD, Who.OWNER)


def _warm(behind: tuple[BehindInverter, ...], gives: Watt | None, air: float | None) -> Part:
    if gives is None or air is None:
        return open_question(WAVE, "Enter the warmest air at the inverter, for what it then gives.")
    at = f"In air of {said(air)} °C the inverter gives {said(gives, 4)} W"
    over = [one.item.appliance for one in behind if not meets(one.item.appliance.watts, gives)]
    if not over:
        return fine(WAVE, f"{at}, enough for each alone.")
    names = words(f"{one.name} of {said(one.watts, 4)} W" for one in over)
    mend = "Bring it cooler air, or run less."
    return wrong(WAVE, Verdict.SHOULD, f"{at}: not the {names}.", mend, Severity.SHOULD, Who.OWNER)


@dataclass(frozen=True, slots=True)
class GeneratorAnswer:
    """What the planned load asks of a generator, and what it burns in L/h."""

    asked: Asked
    demands: tuple[Demand, Demand]
    burns: float | None
    charted: bool


def generator_answer(shore: ShorePlan) -> GeneratorAnswer | None:
    """Return what a generator must give for what is planned together; None without a load.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    running = tuple(one.appliance for one in shore.items if one.planned)
    if not running:
        return None
    watts = Watt(sum(one.watts for one in running))
    starting = start_in_turn(tuple(starter_of(one) for one in running), Watt(0.0))
    demands = size_needed(watts, starting)
    most = governing(demands)
    rating, where = shore.generator, "shore.generator_rating"
    asks = f"All that is planned asks for {said(most.least, 4)} W by {most.rule.name}"
    if rating is None:
        part = open_question(most.rule, f"{asks}. Enter a generator's rating to compare.")
        return GeneratorAnswer(Asked("generator", where, (part,)), demands, None, charted=False)
    if not meets(most.least, rating):
        part = wrong(
            most.rule,
            Verdict.SHOULD,
            f"{asks}; the generator has {said(rating, 4)} W.",
            "Run less together on it.",
            Severity.SHOULD,
            Who.OWNER,
        )
    else:
        part = fine(most.rule, f"{asks}; the generator has {said(rating, 4)} W.")
    burns = fuel(rating, watts) if meets(watts, rating) else None
    inside = burns is not None and charted(rating, watts) and works_hard_enough(rating, watts)
    return GeneratorAnswer(Asked("generator", where, (part,)), demands, burns, inside)
