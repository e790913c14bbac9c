"""What stands above all of shore power, and every question asked of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.looked import LOOKED, looked
from engine.check.shore import shore_asked
from engine.check.shore_gravest import LOOKS, gravest
from engine.finding import Verdict
from engine.plan.look_fields import LOOKS as QUESTIONS
from engine.views.parts.asked import Questions, Row, asked_part, questions
from engine.views.parts.html import Html, joined, tag
from engine.views.parts.say import severity, verdict

if TYPE_CHECKING:
    from engine.check.shore_load import LoadAnswer
    from engine.finding import Finding
    from engine.views.parts.scene import Scene

ABOVE: Final = 3
"""How many findings stand above the load's verdict; the rest are folded."""


def gravest_part(scene: Scene) -> Html | None:
    """Return what is gravest on the AC side, and whether to plug in at all."""
    found = gravest(scene.plan)
    rest = tuple(one for one in found.findings if one not in found.because)
    rows = [_grave(one) for one in (*found.because, *rest)]
    if not rows:
        return None
    more = len(rows) - ABOVE
    return joined(
        tag("p", verdict(Verdict.STOP, found.headline), class_="answer") if found.unplug else None,
        tag("ul", *rows[:ABOVE], class_="list"),
        tag("details", tag("summary", f"{more} more"), tag("ul", *rows[ABOVE:], class_="list"),
            class_="why", id="gravest-more")
        if more > 0 else None,
    )  # fmt: skip


def _grave(one: Finding) -> Html:
    return tag("li", severity(one), f" {one.words} {one.mend} ",
               tag("span", one.who.value, class_="known"))  # fmt: skip


def gravest_line(scene: Scene) -> Html | None:
    """Return the gravest in one line, for a sheet that lists the rest of them below."""
    found = gravest(scene.plan)
    rows = found.because or found.findings
    if not rows:
        return None
    more = f" More stand under “To mend”: {len(rows) - 1}." if len(rows) > 1 else ""
    first = no_plug(scene) or severity(rows[0])
    return tag("p", first, f" {rows[0].words}{more}", class_="answer")


def no_plug(scene: Scene) -> Html | None:
    """Return that nobody ought to plug in, short, for beside a verdict that knows nothing of it."""
    found = gravest(scene.plan)
    return verdict(Verdict.STOP, found.headline) if found.unplug else None


def load_verdict(found: LoadAnswer) -> Html:
    """Return the verdict on the load, which speaks of nothing else."""
    return verdict(found.worst.now.verdict, found.load_words)


def _looks(scene: Scene) -> tuple[list[Row], list[str]]:
    """Return what looking at shore power turned up, and what nobody has looked at."""
    answers = dict(scene.plan.looks)
    found = {one.where: one for one in looked(scene.plan) if one.where in LOOKS}
    rows, wanting = [], []
    for name, question in QUESTIONS.items():
        where = f"looks.{name}"
        if where not in LOOKS:
            continue
        answer, one = answers.get(name, ""), found.get(where)
        if one is not None:
            rows.append(Row(question.label, one.verdict, (f"{one.words} {one.mend}",)))
        elif answer in {"yes", "no"}:
            rows.append(Row(question.label, Verdict.FINE, (f"{answer.capitalize()}, by looking.",)))
        else:
            wanting.append(question.label)
    return rows, wanting


def shore_part(scene: Scene) -> Html | None:
    """Return every question of shore power, the looks among them."""
    found = questions(shore_asked(scene.plan))
    looks, open_ = _looks(scene)
    if not scene.plan.shore.stated and not found.rows and not looks:
        return None
    rules = (*found.rules, LOOKED) if found.rows and looks else found.rules
    return asked_part(Questions((*found.rows, *looks), (*found.wanting, *open_), rules), "shore")
