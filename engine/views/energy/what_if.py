"""What if: variants side by side, single changes ranked, and what would narrow the answer."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.ahead.by_clock import lacking
from engine.ahead.compare import columns_of
from engine.ahead.rank import FIT, LEAVE
from engine.ahead.what_if import Reckoned
from engine.loads.load import CONDITIONS
from engine.units import said
from engine.views.energy.not_counted import FROM_FULL, charge_stated, left_out, unsure
from engine.views.energy.use import energy_pages
from engine.views.energy.what_if_rank import PAGES, next_block, ranking_block
from engine.views.energy.what_if_tonight import tonight_block
from engine.views.energy.what_if_variants import columns_block, days_of, variants_block
from engine.views.energy.what_if_volts import volts_block
from engine.views.home.home import banner, conditions
from engine.views.parts.form import entry
from engine.views.parts.html import Block, Html, block, joined, tag
from engine.views.parts.progress import progress_of
from engine.views.parts.say import capital, hours, link

if TYPE_CHECKING:
    from engine.ahead.compare import Column
    from engine.views.parts.scene import Scene

WORK: Final = "what-if"
"""Name of the long work behind this page."""

WORTH: Final = 0.05
"""Days that are worth a word."""


def what_if(scene: Scene) -> tuple[Block, ...]:
    """Return the What if page."""
    columns = columns_of(scene.document, scene.condition)
    found = _reckoned(scene)
    plan = columns[0]
    ready = plan.figures is not None
    return (
        block(
            "whatif-head",
            banner(scene),
            energy_pages(scene, "energy/what-if"),
            tag("h1", "What if"),
        ),
        block("whatif-answer", conditions(scene), _answer(scene, plan, found)),
        block("whatif-lacking", None if ready else _lacking(scene, plan)),
        columns_block(scene, columns, found),
        ranking_block(scene, found) if ready else block("whatif-ranking"),
        next_block(scene, found) if ready else block("whatif-next"),
        tonight_block(scene) if ready else block("whatif-tonight"),
        volts_block(scene),
        variants_block(scene, columns),
    )


def _reckoned(scene: Scene) -> Reckoned | None:
    work = scene.progress
    if work and work.name == WORK and isinstance(work.result, Reckoned):
        return work.result
    return None


def _answer(scene: Scene, plan: Column, found: Reckoned | None) -> Html | None:
    if plan.figures is None:
        return None
    base = (
        f"{CONDITIONS[scene.condition].capitalize()}, with part cloud every day and no engine, the "
        f"charge lasts {days_of(plan.figures.part)} days down to the reserve"
        f"{'' if charge_stated(scene) else f', {FROM_FULL}'}."
    )
    far = unsure(scene, favourable=days_of(plan.figures.part) == days_of(None))
    lasts = joined(far, base)
    lines = [_best(found, FIT), _best(found, LEAVE), lasts] if found else [lasts]
    first, *others = [line for line in lines if line]
    return joined(
        tag("p", first, class_="answer"),
        left_out(scene),
        *(tag("p", line) for line in others),
        progress_of(scene, "Drawing weathers"),
    )


def _best(found: Reckoned, kind: str) -> str:
    """Return the single change that gains most of those to fit, or of those to do without."""
    gains = found.gains if found.done else ()
    best = next((one for one in gains if one[0].kind == kind and one[1].days >= WORTH), None)
    if best is None:
        return ""
    single, gained = best
    saved = ""
    if gained.hours_saved * 60 >= 1:
        saved = f" and {hours(gained.hours_saved)} less engine a week"
    what = "fit or change" if kind == FIT else "do without"
    return (
        f"{capital(single.name)} gains most of what you could {what}: "
        f"{said(gained.days, 2)} days more before charging is called for{saved}."
    )


def _lacking(scene: Scene, plan: Column) -> Html:
    missing = lacking(scene.plan, scene.condition)
    if not missing and plan.problem:
        return tag("p", str(plan.problem.at("")), class_="problem")
    rows = []
    for path, what in missing.items():
        page = PAGES.get(path.partition(".")[0])
        if page:
            rows.append(tag("li", link(page, what)))
    place = None
    if {"boat.latitude", "boat.month"} & missing.keys():
        fields = (entry(scene, "boat.latitude"), entry(scene, "boat.month"))
        place = tag("div", *fields, class_="fields")
    return joined(
        tag("p", "Days ahead cannot be reckoned yet. Enter first:", class_="empty"),
        tag("ul", *rows, class_="list") if rows else None,
        place,
    )
