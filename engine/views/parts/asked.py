"""Questions with their verdicts, what could not be asked yet, and the rules behind them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.finding import Verdict
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import verdict

if TYPE_CHECKING:
    from engine.check.asked import Asked


def asked_part(found: tuple[Asked, ...], ident: str) -> Html | None:
    """Return every question with its verdict; what could not be asked is folded."""
    if not found:
        return None
    shown = [one for one in found if one.verdict is not Verdict.NOT_KNOWN]
    wanting = [part for one in found for part in one.parts if not part.weighs]
    rows = [
        tag(
            "tr",
            tag("th", _capital(one.name), scope="row"),
            tag("td", verdict(one.verdict), data_label="Verdict"),
            tag(
                "td",
                *(
                    tag("p", f"{part.words} {part.mend}".strip())
                    for part in one.parts
                    if part.weighs
                ),
                data_label="Why",
                class_="wide",
            ),
        )
        for one in shown
    ]
    table = tag("table", head("Question", "Verdict", "Why"), tag("tbody", *rows),
                class_="grid cards")  # fmt: skip
    return joined(
        tag("h2", "What was asked"),
        table if rows else None,
        _wanting([part.words for part in wanting], ident),
        _rules(shown, ident),
    )


def _capital(words_: str) -> str:
    return words_[0].upper() + words_[1:]


def _wanting(open_: list[str], ident: str) -> Html | None:
    if not open_:
        return None
    return tag(
        "details",
        tag("summary", f"Not asked yet: {len(open_)}"),
        tag("ul", *(tag("li", one) for one in open_), class_="list"),
        class_="why",
        id=f"{ident}-open",
    )


def _rules(found: list[Asked], ident: str) -> Html | None:
    rules = {part.rule.name: part.rule for one in found for part in one.parts if part.weighs}
    if not rules:
        return None
    rows = (
        tag("li", tag("b", f"{_capital(rule.name)}. "), f"{_capital(rule.words)}. ",
            tag("span", f"{rule.source}.", class_="source"))
        for rule in rules.values()
    )  # fmt: skip
    return tag(
        "details",
        tag("summary", "The rules and where they stand"),
        tag("ul", *rows, class_="list"),
        class_="why",
        id=f"{ident}-rules",
    )
