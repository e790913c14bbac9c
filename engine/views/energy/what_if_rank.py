"""Single changes by what they gain, and which guess to measure next."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.ahead.changes import text_of
from engine.ahead.next_guess import RANGES, ROOT
from engine.ahead.what_if import CHANGE_RUNS
from engine.finding import Step
from engine.plan.fields import MOST_ROWS
from engine.simulate.weather import FORTNIGHT
from engine.units import said
from engine.views.energy.what_if_variants import days_of
from engine.views.parts.html import Block, Html, block, head, tag
from engine.views.parts.progress import waiting
from engine.views.parts.say import button, capital, hours, link, why

if TYPE_CHECKING:
    from engine.ahead.next_guess import Guess, NextGuess
    from engine.ahead.rank import Single
    from engine.ahead.what_if import Reckoned
    from engine.simulate.gain import Gain
    from engine.views.parts.scene import Scene

PAGES = {"loads": "energy/use", "sources": "energy/charging", "bank": "energy/bank"}
SHOWN = 6
"""Guesses shown."""
SMALL = 0.05
"""Days below which a difference is none."""


def ranking_block(scene: Scene, found: Reckoned | None) -> Block:
    """Return single changes, the one that gains most first."""
    title = tag("h2", "One change alone")
    if not found or not found.gains:
        return block("whatif-ranking", title, tag("p", waiting(scene), class_="empty"))
    saves = any(abs(gained.hours_saved) * 60 >= 1 for _, gained in found.gains)
    heads = ("Change", "Days gained", *(("Engine saved a week",) if saves else ()), "Keep")
    rows = [_ranked(scene, single, gained, saves=saves) for single, gained in found.gains]
    note = (
        f"Days until charging is called for, mean of {CHANGE_RUNS} fortnights, the same ones for "
        f"each change; a fortnight without any counts as {FORTNIGHT} days."
    )
    return block(
        "whatif-ranking",
        title,
        tag("table", head(*heads, numbers=heads[1:-1]), tag("tbody", *rows), class_="grid cards"),
        tag("p", note, class_="note"),
    )


def _ranked(scene: Scene, single: Single, gained: Gain, *, saves: bool) -> Html:
    saved = None
    if saves:
        saved = tag("td", _signed_hours(gained.hours_saved), class_="n",
                    data_label="Engine saved a week")  # fmt: skip
    name = capital(single.name)
    keep = button("Keep as a variant", "keep-variant", f"{name}|{text_of(single.changes)}",
                  class_="small", aria_label=f"Keep as a variant: {name}",
                  disabled=_full(scene))  # fmt: skip
    return tag(
        "tr",
        tag("th", name, scope="row"),
        tag("td", _signed(gained.days), class_="n", data_label="Days gained"),
        saved,
        tag("td", keep),
    )


def _full(scene: Scene) -> bool:
    return len(scene.document.get("variants", [])) >= MOST_ROWS["variants"]


def _signed(days: float) -> str:
    if abs(days) < SMALL:
        return "0"
    return f"{'+' if days > 0 else '−'}{said(abs(days), 2)}"


def _signed_hours(value: float) -> str:
    if abs(value) * 60 < 1:
        return "0"
    return hours(value) if value > 0 else f"{hours(-value)} more"


def next_block(scene: Scene, found: Reckoned | None) -> Block:
    """Return which guess, if known, would narrow the answer most."""
    title = tag("h2", "Measure this next")
    known = found.next_guess if found else None
    if known is None:
        return block("whatif-next", title, tag("p", waiting(scene), class_="empty"))
    if not known.guesses:
        words = "Nothing that is a guess moves the days ahead."
        return block("whatif-next", title, tag("p", words, class_="empty"))
    first = known.guesses[0]
    rows = [_guess(one, known) for one in known.guesses[:SHOWN]]
    heads = ("Guess", "Known by", "Days to the reserve", "Spread left", "Engine a week")
    return block(
        "whatif-next",
        title,
        tag("p", _next_words(first, known), link(_route(first), "Go there"), class_="answer"),
        tag("table", head(*heads), tag("tbody", *rows), class_="grid cards"),
        why("How the spread is reckoned", _steps(known), "why-next"),
    )


def _next_words(first: Guess, known: NextGuess) -> str:
    low, high = first.days
    if first.spread < SMALL:
        fewest, most = first.engine
        return (
            f"{first.words}: by this alone the engine runs {hours(fewest)} to {hours(most)} a "
            "week. No guess moves the days to the reserve. "
        )
    return (
        f"{first.words}: by this alone the charge lasts {said(low, 2)} to {days_of(high)} days. "
        f"Once it is known, the spread of all guesses falls from {said(known.spread, 2)} to "
        f"{said(known.without(first), 2)} days. "
    )


def _guess(one: Guess, known: NextGuess) -> Html:
    fewest, most = one.engine
    figures = (
        (one.known_by, "Known by"),
        (f"{days_of(one.days[0])} to {days_of(one.days[1])}", "Days to the reserve"),
        (f"{said(known.without(one), 2)} days", "Spread left"),
        (_span(hours(fewest), hours(most)), "Engine a week"),
    )
    return tag(
        "tr",
        tag("th", link(_route(one), one.words), scope="row"),
        *(tag("td", figure, data_label=label) for figure, label in figures),
    )


def _span(low: str, high: str) -> str:
    return low if low == high else f"{low} to {high}"


def _route(one: Guess) -> str:
    part, *rest = one.path.split(".")
    return f"{PAGES[part]}/{rest[0]}" if part == "loads" else PAGES[part]


def _steps(known: NextGuess) -> tuple[Step, ...]:
    return (
        Step("each guess alone", "its low and its high end, the others as they are",
             "days under part cloud without engine", RANGES),
        Step("all together", "√(sum of the squares of the spreads)",
             f"{said(known.spread, 2)} days", ROOT),
        Step("left out", "weather and habits, which nobody can measure beforehand",
             "they stay in the chances above"),
    )  # fmt: skip
