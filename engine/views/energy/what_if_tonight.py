"""What buys a day: for tonight, from the charge the crew reads off the monitor."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.ahead.evening import FIELDS, evening_of, plain_hour
from engine.ahead.tonight import AHEAD, FAR, tonight
from engine.finding import Step
from engine.problem import Problem
from engine.simulate.policy import DAY
from engine.units import said, words
from engine.views.energy.not_counted import charge_stated
from engine.views.parts.form import control
from engine.views.parts.html import Block, Html, block, joined, tag
from engine.views.parts.say import hours, whole, why

if TYPE_CHECKING:
    from engine.ahead.evening import Evening
    from engine.ahead.tonight import LeftOff, Tonight
    from engine.views.parts.scene import Scene

DAYS = ("today", "tomorrow", "the day after tomorrow")
ASK = "Enter the charge the monitor shows now."
WORTH = 0.25
"""Hours below which leaving a load off is not worth a word."""


def tonight_block(scene: Scene) -> Block:
    """Return the evening's fields and their answer."""
    bank = scene.plan.bank
    if bank is None:
        return block("whatif-tonight")
    stated = charge_stated(scene) or bool(scene.tonight.get("charge", "").strip(" ?"))
    now, wrong = evening_of(scene.tonight, bank.charge)
    fields = [
        control(
            field,
            f"show.tonight.{name}",
            scene.tonight.get(name, "") or _default(scene, name, now),
            wrong.get(name),
            scene,
        )
        for name, field in FIELDS.items()
    ]
    return block(
        "whatif-tonight",
        tag("h2", "What buys a day"),
        tag("div", *fields, class_="fields"),
        None if wrong else _told(scene, now) if stated else tag("p", ASK, class_="empty"),
    )


def _default(scene: Scene, name: str, now: Evening) -> str:
    if name != "charge":
        return FIELDS[name].default
    return f"{whole(now.charge * 100)} %" if charge_stated(scene) else ""


def _told(scene: Scene, now: Evening) -> Html:
    try:
        found = tonight(scene.plan, scene.condition, now)
    except Problem as problem:
        return tag("p", str(problem.at("")), class_="problem")
    if found is None:
        return tag("p", "Not known yet.", class_="empty")
    at = f"At {whole(now.charge * 100)} % now"
    line = f"the reserve of {whole(found.reserve * 100)} %"
    if found.reserve_in is None:
        return tag("p", f"{at} you stay above {line} for the next {AHEAD} days.", class_="answer")
    if found.reserve_in <= 0:
        lead = f"{at} you are at {line} or below it."
    else:
        lead = f"{at} you reach {line} {_when(now.hour + found.reserve_in)}."
    remedies = _remedies(found, now)
    more = _less_than_a_day(found)
    return joined(
        tag("p", lead, class_="answer"),
        tag("p", "To have one more day, any of:" if remedies else "Nothing here buys a whole day."),
        tag("ul", *(tag("li", one) for one in remedies), class_="list") if remedies else None,
        tag("p", more, class_="note") if more else None,
        why("How this is reckoned", _steps(), "why-tonight"),
    )


def _when(hour: float) -> str:
    day, time = plain_hour(hour)
    where = DAYS[day] if day < len(DAYS) else f"in {day} days"
    return f"about {time} {where}"


def _remedies(found: Tonight, now: Evening) -> list[str]:
    remedies = []
    if found.engine is not None:
        when = "now" if found.engine_from <= 0 else f"from {_when(now.hour + found.engine_from)}"
        remedies.append(f"engine {hours(found.engine)} {when}")
    remedies += [_alone(one) for one in found.singles if one.a_day]
    if found.together:
        remedies.append(f"{words(one.name for one in found.together)} left off together")
    return remedies


def _alone(one: LeftOff) -> str:
    if one.beyond:
        return f"{one.name} left off: it then lasts more than {FAR} days"
    days = said(one.hours / DAY, 2)
    return f"{one.name} left off: {days} day{'s' * (days != '1')} more"


def _less_than_a_day(found: Tonight) -> str:
    some = [one for one in found.singles if one.hours >= WORTH and not one.a_day]
    if not some:
        return ""
    parts = (f"{one.name} {hours(one.hours)}" for one in some)
    return f"Left off alone, each puts it off by: {words(parts)}."


def _steps() -> tuple[Step, ...]:
    return (
        Step("from now on", "the plan's use by the clock, the sky chosen, rest of today included",
             "the first moment at the reserve"),
        Step("one more day", "each remedy is tried until the reserve comes 24 h later, the engine "
             "out of the quiet hours", "the least that is enough, in steps of 5 min"),
    )  # fmt: skip
