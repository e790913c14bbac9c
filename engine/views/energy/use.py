"""Day's use: the loads table, edited in place, and what each way of living costs."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.finding import Step
from engine.loads.day_use import always_live, by_group, day_use
from engine.loads.generic import GENERIC
from engine.loads.load import CONDITIONS
from engine.plan.edit import rows_of
from engine.units import said, words
from engine.views.energy.day_bars import Bar, day_bars
from engine.views.home.home import answer_sentence, band_working, banner, charge, conditions
from engine.views.parts.foot import foot
from engine.views.parts.form import cell
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import button, link, subpages, whole, why

if TYPE_CHECKING:
    from engine.estimate import Estimate
    from engine.loads.day_use import AlwaysLive, DayUse
    from engine.plan.document import Row
    from engine.views.parts.scene import Scene

GROUPS: Final = (("", "as listed"), ("zone", "by zone"), ("circuit", "by circuit"))


def energy_pages(scene: Scene, here: str) -> Html:
    """Return the pages of this section, and the foot of their printed sheets."""
    pages = subpages(
        here,
        ("energy/use", "Day's use"),
        ("energy/bank", "Bank"),
        ("energy/charging", "Charging"),
        ("energy/ahead", "Days ahead"),
        ("energy/what-if", "What if"),
    )
    return joined(pages, foot(scene))


def four_ways(scene: Scene) -> Html:
    """Return the four living conditions side by side."""
    rows = []
    for name, spoken in CONDITIONS.items():
        found = day_use(scene.plan.loads, name, scene.plan.supply)
        per = scene.plan.boat.volts if scene.units.charge == "Ah" else 1 / scene.plan.boat.volts
        other = found.total.likely * (per if scene.units.charge == "Ah" else 1.0)
        figures = (
            charge(scene, found.total.likely),
            f"{charge(scene, found.total.low)} to {charge(scene, found.total.high)}",
            charge(scene, found.band.median),
            f"{charge(scene, found.band.p10)} to {charge(scene, found.band.p90)}",
            whole(other),
            f"{said(found.peak.running)} A, {said(found.peak.with_surge)} with a start",
            str(len(found.missing)) if found.missing else "none",
        )
        labels = HEADS if scene.units.charge == "Ah" else (*HEADS[:4], "Ah", *HEADS[5:])
        rows.append(
            tag(
                "tr",
                tag("th", spoken.capitalize(), scope="row"),
                *(
                    tag("td", figure, class_="n", data_label=label)
                    for figure, label in zip(figures, labels, strict=True)
                ),
            )
        )
    heads = HEADS if scene.units.charge == "Ah" else (*HEADS[:4], "Ah", *HEADS[5:])
    return tag(
        "div",
        tag(
            "table",
            tag("caption", f"A day in {scene.units.charge}", class_="quiet"),
            tag(
                "thead",
                tag(
                    "tr",
                    tag("th", "", scope="col"),
                    *(tag("th", one, scope="col", class_="n") for one in heads),
                ),
            ),
            tag("tbody", *rows),
            class_="grid cards stack",
        ),
        class_="scroll",
        tabindex="0",
        role="region",
        aria_label="The four ways of living",
    )


HEADS: Final = ("Likely", "All low to all high", "Median", "8 days in 10", "Wh", "At one time",
                "Not known")  # fmt: skip


def users(scene: Scene, answer: DayUse) -> Html:
    """Return the five largest users as bars with whiskers."""
    unit = scene.units.charge
    bars = [
        Bar(
            link(f"energy/use/{use.load.ident}", use.load.name),
            use.load.name,
            use.day,
            charge(scene, use.day.likely),
            f"{charge(scene, use.day.low)} to {charge(scene, use.day.high)}",
        )
        for use in answer.largest
    ]
    return day_bars("use-largest", bars, unit)


def standing(scene: Scene) -> Html:
    """Return what no switch stops."""
    found = always_live(scene.plan.loads, scene.plan.supply)
    if not found.standing:
        return tag("p", "No load is marked always live.", class_="note")
    names = words(load.name for load in found.standing)
    seldom = words(load.name for load in found.now_and_then)
    return joined(
        tag(
            "p",
            "With every switch off ",
            tag("b", f"{said(found.current, 2)} A"),
            " stays on: ",
            tag("b", f"{said(found.day, 2)} Ah a day, {said(found.week, 2)} Ah in a week"),
            " with nobody aboard.",
        ),
        tag("p", f"{names}." + (f" Now and then: {seldom}." if seldom else ""), class_="note"),
        why("Why these numbers?", _standing_steps(found), "why-standing"),
    )


def _standing_steps(found: AlwaysLive) -> tuple[Step, ...]:
    current = said(found.current, 2)
    return (
        Step("standing draw", "loads marked always live that run 24 h with nobody aboard",
             f"{current} A"),
        Step("a day", f"{current} A × 24 h", f"{said(found.day, 2)} Ah"),
        Step("a week", "a day × 7", f"{said(found.week, 2)} Ah"),
    )  # fmt: skip


def unknown(answer: DayUse) -> Html | None:
    """Return what keeps the sum from being whole."""
    if not answer.missing:
        return None
    rows = [
        tag("li", link(f"energy/use/{one.load.ident}", f"{one.load.name}: {one.what}"))
        for one in answer.missing
    ]
    return joined(
        tag("h2", "Not known, and not counted"),
        tag("ul", *rows, class_="list"),
    )


def use(scene: Scene) -> tuple[Block, ...]:
    """Return the Day's use page."""
    answer = day_use(scene.plan.loads, scene.condition, scene.plan.supply)
    picture = None
    if answer.largest:
        picture = joined(
            tag("h2", f"Five largest, {CONDITIONS[scene.condition]}"), users(scene, answer)
        )
    return (
        block("use-head", banner(scene), energy_pages(scene, "energy/use"), tag("h1", "Day's use")),
        block(
            "use-answer",
            conditions(scene),
            answer_sentence(scene, answer),
            why(f"Why {charge(scene, answer.band.median)}?", band_working(answer), "why-use"),
            picture,
        ),
        block("use-four", tag("h2", "Four ways of living"), four_ways(scene)),
        block("use-standing", tag("h2", "Always live"), standing(scene)),
        block("use-unknown", unknown(answer)),
        block(
            "use-loads-head",
            tag("h2", f"Loads, {CONDITIONS[scene.condition]}"),
            tag(
                "p",
                "Type as you would write it: 4.6 A, 60 W, 1h30, 4-5 A, ~4 A, or ? for not known.",
                class_="note",
            ),
            _adding(),
            _grouping(scene),
        ),
        _table(scene, answer),
        block("use-groups", _sums(scene, answer)),
    )


@lru_cache(maxsize=1)
def _adding() -> Html:
    options = [
        tag("option", f"{one.name} ({said(one.watts.likely)} W)", value=one.name)
        for one in GENERIC.values()
    ]
    return tag(
        "form",
        tag("div", tag("label", "A typical load", for_="pick"), tag("select", *options, name="pick",
            id="pick"), class_="field"),
        tag("button", "Add it", type="button", data_do="add-generic"),
        button("Add an empty load", "add-load", class_="main"),
        link("energy/paste", "Paste a table", class_="button"),
        class_="actions",
        data_do="add-generic",
    )  # fmt: skip


def _grouping(scene: Scene) -> Html:
    labels = [
        tag(
            "label",
            tag("input", type="radio", name="show.group", value=value,
                checked=value == scene.group),
            label,
        )
        for value, label in GROUPS
    ]  # fmt: skip
    return tag(
        "fieldset", tag("legend", "Order of the table", class_="quiet"), *labels, class_="choices"
    )


def _table(scene: Scene, answer: DayUse) -> Block:
    """Return the loads, one block a row, so that an edit sends one row."""
    days = {use.load.ident: use.day for use in answer.uses}
    rows = rows_of(scene.document, "loads")
    bodies: list[Block] = []
    if scene.group:
        groups: dict[str, list[Row]] = {}
        for row in rows:
            groups.setdefault(row.get(scene.group, ""), []).append(row)
        for place, (name, members) in enumerate(sorted(groups.items())):
            title = tag(
                "tr", tag("th", name or f"no {scene.group} yet", colspan=7, scope="rowgroup")
            )
            bodies.append(
                block(
                    f"loads-{place}",
                    title,
                    *(_row(scene, row, days.get(row["id"])) for row in members),
                    name="tbody",
                )
            )
    else:
        bodies.append(
            block(
                "loads-all",
                *(_row(scene, row, days.get(row["id"])) for row in rows),
                name="tbody",
            )
        )
    heads = ("Load", "Draw", "Known by", "Hours", "Duty", f"{scene.units.charge} a day", "")
    top = tag(
        "thead",
        tag(
            "tr",
            *(
                tag("th", one, scope="col", class_="n" if "a day" in one else None)
                for one in heads[:-1]
            ),
            tag("th", tag("span", "Change", class_="quiet"), scope="col"),
        ),
    )
    table = block("loads-table", top, *bodies, name="table", class_="grid cards loads")
    return block("loads", table, name="div", class_="loads-holder")


def _row(scene: Scene, row: Row, day: Estimate | None) -> Block:
    ident = row["id"]
    path = f"loads.{ident}"
    hours = f"{path}.hours_{scene.condition}"
    own = tuple(
        sorted(
            (where, str(problem.at("")))
            for where, problem in scene.refused.items()
            if where.startswith(path + ".")
        )
    )
    kept = tuple(sorted((w, t) for w, t in scene.typed.items() if w.startswith(path + ".")))
    plan = tuple(str(one) for one in scene.plan.problems if one.where.startswith(path + "."))
    figure = None if day is None else (day.likely, day.low, day.high)
    key = (ident, tuple(row.items()), scene.condition, scene.units, figure, own, kept, plan,
           scene.plan.boat.volts)  # fmt: skip
    return _kept_row(_Key(key, scene, path, hours, day))


class _Key:
    """A row's content, hashed by what it shows; carries the scene along for drawing it once."""

    def __init__(
        self, key: tuple[object, ...], scene: Scene, path: str, hours: str, day: Estimate | None
    ) -> None:
        self.key = key
        self.scene = scene
        self.path = path
        self.hours = hours
        self.day = day

    def __hash__(self) -> int:
        return hash(self.key)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Key) and self.key == other.key


@lru_cache(maxsize=1024)
def _kept_row(asked: _Key) -> Block:
    """Return a row; one that shows the same is not drawn again."""
    scene, path, day = asked.scene, asked.path, asked.day
    ident = path.split(".")[1]
    row = next(one for one in rows_of(scene.document, "loads") if one["id"] == ident)
    name = row.get("name", "") or ident
    shown = "not known" if day is None else charge(scene, day.likely)
    span = None
    if day is not None and not day.certain:
        low, high = charge(scene, day.low), charge(scene, day.high)
        span = tag("small", f"{low} to {high}", class_="range")
    return block(
        f"row-{ident}",
        tag(
            "th",
            link(f"energy/use/{ident}", ident, class_="ident", aria_label=f"All of {name}"),
            " ",
            cell(scene, f"{path}.name", f"Name of {ident}"),
            scope="row",
        ),
        tag("td", cell(scene, f"{path}.draw", f"Draw of {name}"), data_label="Draw"),
        tag("td", cell(scene, f"{path}.draw_by", f"{name}, draw known by"), data_label="Known by"),
        tag("td", cell(scene, asked.hours, f"Hours of {name}"), data_label="Hours"),
        tag("td", cell(scene, f"{path}.duty", f"Duty of {name}"), data_label="Duty"),
        tag("td", shown, span, class_="n", data_label=f"{scene.units.charge} a day"),
        tag(
            "td",
            tag(
                "details",
                tag("summary", "More", aria_label=f"More for {name}"),
                tag(
                    "div",
                    link(f"energy/use/{ident}", "All fields", class_="button"),
                    button("Up", "move-up", path, aria_label=f"Move {name} up"),
                    button("Down", "move-down", path, aria_label=f"Move {name} down"),
                    button("Copy", "copy-row", path, aria_label=f"Copy {name}"),
                    button("Delete", "delete-row", path, aria_label=f"Delete {name}"),
                    class_="actions",
                ),
                class_="menu",
                id=f"more-{ident}",
            ),
        ),
        name="tr",
    )


def _sums(scene: Scene, answer: DayUse) -> Html | None:
    if not scene.group:
        return None
    a_day = f"{scene.units.charge} a day"
    rows = [
        tag("tr", tag("td", name or "none"), tag("td", charge(scene, total), class_="n"))
        for name, total in by_group(answer, scene.group).items()
    ]
    return joined(
        tag("h2", f"Sums by {scene.group}"),
        tag(
            "table",
            head(scene.group.capitalize(), a_day, numbers=(a_day,)),
            tag("tbody", *rows),
            class_="grid",
        ),
    )
