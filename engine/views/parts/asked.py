"""Questions with their verdicts, what could not be asked yet, and the rules behind them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.check.part import WORST_FIRST
from engine.finding import Verdict
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import capital, link, verdict

if TYPE_CHECKING:
    from engine.check.asked import Asked
    from engine.finding import Rule


@dataclass(frozen=True, slots=True)
class Row:
    """A question with its verdict, what was found, and how it is mended."""

    name: str
    verdict: Verdict
    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Questions:
    """Questions that were asked, the words of the open ones, and the rules behind them."""

    rows: tuple[Row, ...]
    wanting: tuple[str, ...]
    rules: tuple[Rule, ...]


def questions(asked: tuple[Asked, ...]) -> Questions:
    """Return what was asked, as it is shown."""
    rows: list[Row] = []
    wanting: list[str] = []
    rules: dict[str, Rule] = {}
    for one in asked:
        weighing = [part for part in one.parts if part.weighs]
        wanting += [part.words for part in one.parts if not part.weighs]
        rules |= {part.rule.name: part.rule for part in weighing}
        if one.verdict is not Verdict.NOT_KNOWN or weighing:
            texts = tuple(f"{part.words} {part.mend}".strip() for part in one.parts)
            rows.append(Row(capital(one.name), one.verdict, texts))
    return Questions(tuple(rows), tuple(wanting), tuple(rules.values()))


def asked_part(found: Questions, ident: str) -> Html | None:
    """Return every question, folded under their count and the gravest verdict."""
    if not found.rows and not found.wanting:
        return None
    return joined(
        tag("h2", "What was asked"),
        _folded(found, ident) if found.rows else None,
        _wanting(found.wanting, ident),
    )


def _folded(found: Questions, ident: str) -> Html:
    table = tag(
        "table",
        head("Question", "Verdict", "Why"),
        tag("tbody", *(_row(one) for one in found.rows)),
        class_="grid cards",
    )
    return tag(
        "details",
        tag("summary", *_counted(found)),
        table,
        _rules(found.rules, ident),
        class_="why",
        id=f"{ident}-all",
    )


def _counted(found: Questions) -> tuple[str | Html, ...]:
    """Return how many were asked and are not known; “all” only where nothing is open."""
    verdicts = {one.verdict for one in found.rows}
    worst = next(one for one in WORST_FIRST if one in verdicts)
    asked, open_ = f"{len(found.rows)} asked", len(found.wanting)
    if not open_:
        all_ = "all" if len(verdicts) == 1 else "the gravest"
        return f"{asked}, {all_}:\u00a0", verdict(worst)
    if WORST_FIRST.index(worst) < WORST_FIRST.index(Verdict.NOT_KNOWN):
        return f"{asked}, {open_} not known, the gravest:\u00a0", verdict(worst)
    return f"{asked},\u00a0", verdict(Verdict.NOT_KNOWN, f"{open_} not known")


def _row(row: Row) -> Html:
    return tag(
        "tr",
        tag("th", row.name, scope="row"),
        tag("td", verdict(row.verdict), data_label="Verdict", class_="wide"),
        tag("td", *(tag("p", text) for text in row.texts), data_label="Why", class_="wide"),
    )


def _wanting(open_: tuple[str, ...], ident: str) -> Html | None:
    if not open_:
        return None
    return tag(
        "details",
        tag("summary", f"Not known yet: {len(open_)}"),
        tag("ul", *(tag("li", one) for one in open_), class_="list"),
        tag("p", link("proving", "Look and measure")),
        class_="why",
        id=f"{ident}-open",
    )


def _rules(rules: tuple[Rule, ...], ident: str) -> Html:
    rows = (
        tag("li", tag("b", f"{capital(rule.name)}. "), f"{capital(rule.words)}. ",
            tag("span", f"{rule.source}.", class_="source"))
        for rule in rules
    )  # fmt: skip
    return tag(
        "details",
        tag("summary", "The rules and where they stand"),
        tag("ul", *rows, class_="list"),
        class_="why",
        id=f"{ident}-rules",
    )
