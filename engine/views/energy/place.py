"""Where and when: sea areas, map and month, what the sun gives there, and the plan by month."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.ahead.by_clock import lacking
from engine.ahead.month import month_at
from engine.ahead.place import where_of
from engine.ahead.year import IN_A_YEAR, Year
from engine.estimate import Estimate
from engine.plan.fields import MONTHS
from engine.simulate.weather import FORTNIGHT
from engine.solar.place import CLIMATOLOGY
from engine.solar.place import sea_map as cells
from engine.solar.tables import SEA_AREAS, TURBIDITY
from engine.units import said, words
from engine.views.energy.sea_map import sea_map
from engine.views.energy.year_strip import Month, year_strip
from engine.views.parts.form import entry
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.progress import progress_of
from engine.views.parts.say import hours, link

if TYPE_CHECKING:
    from engine.ahead.year import MonthAhead
    from engine.views.parts.scene import Scene

FIELDS: Final = ("latitude", "longitude", "month", "place")
KNOTS: Final = 3600 / 1852
A_DAY: Final = "kWh/m²"


def areas(scene: Scene) -> Html:
    """Return the list of sea areas, which moves the boat there."""
    boat = scene.plan.boat
    return _areas((boat.latitude, boat.longitude))


@lru_cache(maxsize=8)
def _areas(at: tuple[float | None, float | None]) -> Html:
    options = [
        tag("option", name, value=name, selected=place == at)
        for name, place in sorted(SEA_AREAS.rows.items())
    ]
    blank = tag("option", "choose one", value="")
    return tag(
        "div",
        tag("label", "A sea area", for_="area"),
        tag("select", blank, *options, name="start.place.area", id="area"),
        tag("p", "The boat moves there at once.", class_="help"),
        class_="field",
    )


def place_block(scene: Scene) -> Block:
    """Return where the boat lies and what the sun gives there in the month."""
    boat = scene.plan.boat
    return block(
        "charging-place",
        tag("h2", "Place and month"),
        areas(scene),
        tag("div", *(entry(scene, f"boat.{name}") for name in FIELDS), class_="fields"),
        sea_map("sea-map", cells(), boat.latitude, boat.longitude),
        _month(scene),
    )


def _month(scene: Scene) -> Html:
    where = where_of(scene.plan)
    if where is None:
        return tag("p", "Enter latitude and month to see what the sun gives.", class_="empty")
    found = month_at(where)
    doubt = f"±{said(found.doubt * 100)} %"
    span = f"{said(found.likely.low)} to {said(found.likely.high)}"
    wind = "not known"
    if found.wind is not None:
        wind = f"{said(found.wind)} m/s, {said(found.wind * KNOTS, 2)} kn"
    rows = [
        ("Mean day", f"{said(found.likely.likely)} {A_DAY}", f"{doubt} a month: {span}"),
        ("Clear day", f"{said(found.clear)} {A_DAY}", "by the sun's height and a clear sea air"),
        ("Dull day", f"{said(found.dull)} {A_DAY}", "a quarter of a clear day"),
        ("One day in ten has less than", f"{said(found.tenth)} {A_DAY}", "by the spread of days"),
        ("Wind, mean", wind, "10 m above open water"),
        ("Night", hours(found.night), "sunset to sunrise"),
    ]
    if found.dark:
        rows = [("Sun", "none", "the sun does not rise to speak of"), *rows[-2:]]
    month = MONTHS[where.month - 1]
    return joined(
        tag(
            "table",
            head("A day, on a level plane", month, numbers=(month,)),
            tag(
                "tbody",
                *(
                    tag("tr", tag("th", name, tag("small", reason, class_="range"), scope="row"),
                        tag("td", value, class_="n"))
                    for name, value, reason in rows
                ),
            ),
            class_="grid",
        ),
        tag(
            "p",
            "Coasts and islands with their own cloud can be 20 to 30 % off. ",
            tag("span", f"{CLIMATOLOGY}; clear air: {TURBIDITY.source}", class_="source"),
            class_="note",
        ),
    )  # fmt: skip


def year_block(scene: Scene) -> Block:
    """Return the plan in every month of its place."""
    title = tag("h2", "The plan in every month")
    found = lacking(scene.plan, scene.condition)
    missing = tuple(told for path, told in found.items() if path != "boat.month")
    if missing:
        ask = tag("p", f"Not known yet: {words(missing)}. ", link("energy/bank", "Enter the bank"),
                  class_="empty")  # fmt: skip
        return block("charging-year", title, ask)
    return block(
        "charging-year",
        title,
        progress_of(scene, "Reckoning the months"),
        _year(scene),
        tag(
            "p",
            f"Each month under its likely sky, the whiskers under as much less and more as its "
            f"sun may be out; days alike, counted up to {FORTNIGHT}. "
            "Spells of cloud are not in it: ",
            link("energy/ahead", "Days ahead"),
            " has those.",
            class_="note",
        ),
    )


def _year(scene: Scene) -> Html | None:
    done = scene.progress.result if scene.progress else None
    if not isinstance(done, Year):
        return None
    found = {one.month: one for one in done.months}
    per = scene.plan.boat.volts if scene.units.charge == "Wh" else 1.0
    months = [_shown(found.get(month), month, per) for month in range(1, IN_A_YEAR + 1)]
    stated = scene.plan.boat.month
    chosen = MONTHS.index(stated.capitalize()) + 1 if stated else None
    return year_strip("year", "The plan in every month", months, chosen, scene.units.charge)


def _shown(found: MonthAhead | None, month: int, per: float) -> Month:
    name = MONTHS[month - 1]
    if found is None:
        return Month(name, Estimate.exact(0.0), unknown="not reckoned yet")
    return Month(name, found.sun.scaled(per), found.days, found.engine, found.dark)
