"""Variants side by side, what each changes first, and the forms that keep them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.ahead.changes import variants_of
from engine.ahead.compare import FAR, MOST_BESIDE
from engine.ahead.told import odds
from engine.ahead.what_if import COLUMN_RUNS
from engine.finding import Step
from engine.plan.edit import rows_of
from engine.plan.fields import ROWS, SINGLE, field_at
from engine.units import said
from engine.views.parts.cautions import caution, chemistry_caution
from engine.views.parts.form import control, entry, problem_at, typed_at
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.progress import waiting
from engine.views.parts.say import button, hours, whole, why

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.ahead.compare import Column, Figures
    from engine.ahead.what_if import Reckoned
    from engine.plan.document import Row
    from engine.simulate.chance import Chance
    from engine.views.parts.scene import Scene

WITHIN = (2, 3, 5, 7)
"""Days by which charging may be called for."""


def columns_block(scene: Scene, columns: tuple[Column, ...], found: Reckoned | None) -> Block:
    """Return the plan and its variants side by side."""
    if not any(one.figures for one in columns):
        return block("whatif-columns")
    names = [one.name for one in columns]
    rows = []
    needed = "Engine needed" if any(_driven(one) for one in columns) else "Charging needed"
    for what, tell in _told_by(needed):
        cells: list[str | Html] = []
        for one in columns:
            chance = found.chance_of(one.ident) if found else None
            cell = tell(one.figures, chance) if one.figures else _why_not(one)
            cells.append(cell or waiting(scene).lower())
        rows.append(_row(what, columns, cells))
    table = tag("table", head("", *names), tag("tbody", *rows), class_="grid cards")
    return block(
        "whatif-columns",
        tag("h2", "Side by side"),
        _changes(columns[1:]),
        tag("div", table, class_="scroll", tabindex="0", role="region", aria_label="Side by side"),
        *_cautions(columns),
        why("How these are reckoned", _steps(), "why-columns"),
    )


def _cautions(columns: tuple[Column, ...]) -> list[Html]:
    now = columns[0].plan.bank
    kinds = {one.plan.bank.chemistry for one in columns[1:] if one.plan.bank and not one.problem}
    others = sorted(kinds - ({now.chemistry} if now else set()))
    return [caution(chemistry_caution(one), f"whatif-{one}") for one in others]


def _row(what: str, columns: tuple[Column, ...], cells: list[str | Html]) -> Html:
    pairs = zip(columns, cells, strict=True)
    return tag(
        "tr",
        tag("th", what, scope="row"),
        *(tag("td", cell, data_label=one.name) for one, cell in pairs),
    )


def _changes(variants: tuple[Column, ...]) -> Html | None:
    """Return what each variant changes."""
    if not variants:
        return None
    rows = []
    for one in variants:
        said_so: Html | str = "nothing"
        if one.problem:
            said_so = tag("span", str(one.problem.at("")), class_="problem")
        elif one.told:
            lines = (tag("div", f"{it.what}: {it.after}, was {it.before}") for it in one.told)
            said_so = joined(*lines)
        rows.append(tag("tr", tag("th", one.name, scope="row"), tag("td", said_so, class_="wide")))
    return tag(
        "table", head("Variant", "What it changes"), tag("tbody", *rows), class_="grid cards"
    )


def _why_not(one: Column) -> str:
    return "cannot say" if one.problem else "not known"


def _driven(one: Column) -> bool:
    return bool(one.figures and one.figures.has_engine)


def _told_by(needed: str) -> list[tuple[str, Callable[[Figures, Chance | None], str]]]:
    """Return each row's words and what tells its cell."""
    return [
        ("Days to the reserve, part cloud", lambda one, _: days_of(one.part)),
        ("Days to the reserve, dull", lambda one, _: days_of(one.dull)),
        *(
            (f"{needed} within {day} days", lambda _, drawn, by=day: times(drawn, by))
            for day in WITHIN
        ),
        ("Engine a week, part cloud", lambda one, _: _hours(one)),
        ("Engine a week, drawn weathers", _drawn_hours),
        ("Fuel a week, drawn weathers", _fuel),
        ("Lowest charge, part cloud", lambda one, _: f"{whole(one.lowest * 100)} %"),
    ]


def days_of(days: float | None) -> str:
    """Return days to the reserve; None, or FAR, stands for beyond what is looked at."""
    return f"over {FAR}" if days is None or days >= FAR else said(days, 2)


def times(drawn: Chance | None, day: int) -> str:
    """Return a chance by a day in words; empty until it is reckoned."""
    return odds(drawn.needed_by(day), drawn.runs) if drawn else ""


def _hours(one: Figures) -> str:
    return hours(one.engine) if one.has_engine else "no engine"


def _drawn_hours(one: Figures, drawn: Chance | None) -> str:
    if not one.has_engine:
        return "no engine"
    return hours(drawn.engine_hours_a_week) if drawn else ""


def _fuel(one: Figures, drawn: Chance | None) -> str:
    if not one.has_engine:
        return "no engine"
    return f"{said(drawn.fuel_a_week, 2)} L" if drawn else ""


def _steps() -> tuple[Step, ...]:
    return (
        Step("days to the reserve", "every day alike, nothing but sun, wind and the shore charger",
             "the first moment at the reserve line"),
        Step("chances", f"{COLUMN_RUNS} fortnights of drawn weather and habits, one seed",
             "the same fortnights for each variant"),
        Step("standard error", "√(p (1 − p) / n)", "at most 4 in 100"),
    )  # fmt: skip


NO_ROOM = f"It does not stand there: only {MOST_BESIDE} do. Untick one of the others."
ROW_PARTS = ("sources", "loads", "circuits")
"""Lists whose rows a variant may change."""


def _left_over(row: Row, beside: set[str]) -> bool:
    """Return whether a variant is to be shown but finds no room."""
    return row.get("shown", "yes") == "yes" and row["id"] not in beside


def _names(scene: Scene, ident: str) -> Html:
    """Return the names a line of changes may begin with."""
    single = [f"{part}: {', '.join(SINGLE[part])}" for part in ("bank", "policy", "inverter")]
    rows = []
    for part in ROW_PARTS:
        here = [one["id"] for one in rows_of(scene.document, part)][:1]
        example = f"{part}.{here[0] if here else 'new'}"
        rows.append(f"{example}: {', '.join(ROWS[part])}")
    lines = (tag("li", one) for one in (*single, *rows))
    return tag(
        "details",
        tag("summary", "Names of fields"),
        tag("p", "Part, full stop, name: bank.capacity = 380 Ah", class_="note"),
        tag("ul", *lines, class_="list"),
        class_="why",
        id=f"names-{ident}",
    )


def variants_block(scene: Scene, columns: tuple[Column, ...]) -> Block:
    """Return the forms of the variants that are kept."""
    wrong = {variant.ident: problem for variant, problem in variants_of(scene.document)}
    wrong |= {one.ident: one.problem for one in columns if one.problem}
    beside = {one.ident for one in columns}
    forms = []
    for row in rows_of(scene.document, "variants"):
        path = f"variants.{row['id']}"
        changes = f"{path}.changes"
        forms.append(
            tag(
                "details",
                tag(
                    "summary",
                    row.get("name", "") or row["id"],
                    ", beside the plan" if row["id"] in beside else None,
                    ", no room beside the plan" if _left_over(row, beside) else None,
                ),
                tag(
                    "div",
                    entry(scene, f"{path}.name"),
                    control(
                        field_at(changes),
                        changes,
                        typed_at(scene, changes),
                        problem_at(scene, changes) or wrong.get(row["id"]),
                        scene,
                    ),
                    _names(scene, row["id"]),
                    entry(scene, f"{path}.shown"),
                    tag("p", NO_ROOM, class_="note") if _left_over(row, beside) else None,
                    class_="fields",
                ),
                tag("p", button("Delete", "delete-row", path), class_="actions"),
                class_="more",
                id=f"variant-{row['id']}",
                open=bool(wrong.get(row["id"])),
            )
        )
    return block(
        "whatif-variants",
        tag("h2", "Variants kept"),
        joined(*forms)
        if forms
        else tag("p", "None yet. Keep one from the ranking.", class_="note"),
        tag("p", f"At most {MOST_BESIDE} stand beside the plan at once.", class_="note"),
        tag("p", button("Add a variant", "add-variant"), class_="actions"),
    )
