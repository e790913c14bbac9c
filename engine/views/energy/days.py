"""Days ahead: the answer, the charge as it goes, how likely the engine is, and the policy."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.ahead.bank_words import alone_words
from engine.ahead.by_clock import lacking
from engine.ahead.place import where_of
from engine.ahead.runs import (
    LONGEST,
    MANY,
    MIXED,
    ahead_of,
    alone_days,
    engine_runs,
    first_chance,
    mixed_days,
    three_skies,
)
from engine.ahead.told import answer, half_by, so_far, working
from engine.finding import Step
from engine.problem import Problem
from engine.simulate.chance import GRID, Chance
from engine.simulate.house import DISCONNECT_SOURCE
from engine.views.energy.chance_strip import Odds, chance_strip
from engine.views.energy.course import Course, Mark, Trace, nights_of, percent
from engine.views.energy.curve import curve
from engine.views.energy.days_form import below_reserve, choices, first_fields, form, notes, trouble
from engine.views.energy.days_tables import each_day, ledger, sky_table
from engine.views.energy.not_counted import FROM_FULL, charge_stated, left_out, unsure
from engine.views.energy.use import energy_pages
from engine.views.energy.volts_note import volts_note
from engine.views.home.home import banner, conditions
from engine.views.parts.html import Block, Html, block, tag
from engine.views.parts.say import button, why
from engine.views.parts.scene import SKIES_SHOWN

if TYPE_CHECKING:
    from engine.ahead.place import Where
    from engine.simulate.run import Series
    from engine.simulate.weather import Outlook
    from engine.views.parts.scene import Scene

HERE: Final = "energy/ahead"
FORTNIGHT: Final = 14


def days(scene: Scene) -> tuple[Block, ...]:
    """Return the Days ahead page."""
    top = block("days-head", banner(scene), energy_pages(scene, HERE), tag("h1", "Days ahead"))
    where = where_of(scene.plan)
    if lacking(scene.plan, scene.condition) or where is None:
        return top, block("days-answer", conditions(scene), first_fields(scene))
    try:
        return (top, *_reckoned(scene, where))
    except Problem as problem:
        return (
            top,
            block("days-answer", conditions(scene), trouble(problem)),
            block("days-form", form(scene)),
        )


def _reckoned(scene: Scene, where: Where) -> tuple[Block, ...]:
    plan, condition = scene.plan, scene.condition
    outlook = ahead_of(plan, condition, scene.days)
    chance = _chance(scene)
    skies = three_skies(plan, condition, scene.days)
    shown = mixed_days(plan, condition, scene.days) if scene.sky == MIXED else skies[scene.sky]
    assert outlook is not None  # noqa: S101 - nothing is lacking
    assert chance is not None  # noqa: S101
    assert shown is not None  # noqa: S101
    engine = engine_runs(outlook)
    what = "engine needed" if engine else "charging needed"
    odds = [Odds(chance.needed_by(day), chance.error_by(day)) for day in range(1, FORTNIGHT + 1)]
    alone = alone_days(plan, condition)
    told, sky = answer(chance, engine=engine), SKIES_SHOWN[scene.sky]
    return (
        block(
            "days-answer",
            conditions(scene),
            tag(
                "p",
                unsure(scene, favourable=half_by(chance) is None),
                tag("b", told[0]),
                *(f" {one}" for one in told[1:]),
                None if charge_stated(scene) else f" Reckoned {FROM_FULL}.",
                class_="answer",
            ),
            left_out(scene),
            below_reserve(scene),
            None if chance.done else tag("p", so_far(chance), class_="known"),
            tag(
                "p",
                unsure(scene, favourable=alone is None),
                alone_words(alone, LONGEST),
                class_="note",
            ),
            why("Why these numbers?", (*working(chance), _low_volts(outlook)), "why-days"),
        ),
        block("days-notes", notes(scene, where)),
        block(
            "days-curve",
            tag("h2", f"The charge, {sky} sky"),
            _drawn(
                f"Charge over {scene.days} days, {sky} sky",
                _course(shown, _settled(scene), where, f"{sky} sky"),
            ),
            tag("p", DRAWN if scene.sky == MIXED else "Every day alike.", class_="note"),
        ),
        block("days-set", choices(scene)),
        block("days-skies", tag("h2", "Three skies"), sky_table(skies, engine=engine)),
        block(
            "days-chance",
            tag("h2", f"Chance that {'the engine' if engine else 'charging'} is needed"),
            _stopped(scene),
            chance_strip("days-odds", what, odds, chance.runs, _asked(scene, chance), STOP),
        ),
        block(
            "days-each",
            tag("h2", f"Each day, {sky} sky"),
            each_day(shown),
        ),
        block(
            "days-ledger",
            tag("h2", "The ledger"),
            ledger(shown),
            volts_note(scene, sun=True, stays=True),
        ),
        block("days-form", form(scene)),
    )


STOP: Final = button("Stop", "stop-work")
DRAWN: Final = f"Days drawn from the seed, the middle one of {MANY} weathers: no forecast."


def _chance(scene: Scene) -> Chance | None:
    """Return the chance as far as it has come; a first estimate until then."""
    progress = scene.progress
    if progress and isinstance(progress.result, Chance):
        return progress.result
    return first_chance(scene.plan, scene.condition, scene.days)


def _settled(scene: Scene) -> Chance | None:
    """Return the chance whose band is drawn: the first estimate until the runs end or are stopped.

    A band drawn anew with every slice of runs would take longer than they do.
    """
    if scene.progress and scene.progress.running:
        return first_chance(scene.plan, scene.condition, scene.days)
    return _chance(scene)


@lru_cache(maxsize=4)
def _drawn(title: str, course: Course) -> Html:
    return curve("days-charge", title, course)


def _asked(scene: Scene, chance: Chance) -> int:
    """Return how many runs are under way to; those done where none are."""
    progress = scene.progress
    return chance.asked if progress and progress.running else chance.runs


def _low_volts(outlook: Outlook) -> Step:
    """Return where low volts take the loads off."""
    house = outlook.setup.house
    return Step(
        "loads off", "low volts take off every load that is not essential",
        f"at {percent(house.disconnect)} % charge", DISCONNECT_SOURCE,
    )  # fmt: skip


def _stopped(scene: Scene) -> Html | None:
    progress = scene.progress
    if progress is None or not progress.stopped:
        return None
    return tag("p", button("Go on with the runs", "go-on"), class_="actions")


def _course(series: Series, chance: Chance | None, where: Where, name: str) -> Course:
    """Return what the curve shows of a run and of the chance."""
    count = len(series.days)
    every = series.inputs.step
    house = series.setup.house
    light = where.daylight
    band = chance.charge[: round(count * 24 / GRID) + 1] if chance else ()
    return Course(
        days=count,
        step=every,
        traces=(Trace(name, series.charges),),
        band=tuple((one.p10, one.median, one.p90) for one in band),
        band_step=GRID,
        reserve=house.reserve,
        disconnect=house.disconnect,
        nights=nights_of(light.sunrise, light.sunset, count),
        marks=tuple(
            Mark(one.time, series.charges[min(round(one.time / every), count * 96)], one.words)
            for one in series.events
        ),
    )
