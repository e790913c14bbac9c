"""Tables of the AC side: sources, isolation, plugs and abroad."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.shore_bonds import source_states
from engine.check.shore_dock import abroad_of, elsewhere, fixed_installation
from engine.check.shore_feed import crossings
from engine.check.shore_isolation import isolation_answer
from engine.finding import Verdict
from engine.shore.isolation import DEFEATED_BY, Isolation
from engine.units import said, words
from engine.views.parts.form import entry
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import blank, figures, verdict

if TYPE_CHECKING:
    from engine.plan.shore_parts import ShorePlan
    from engine.shore.services import Service
    from engine.views.parts.scene import Scene


def states_table(plan: ShorePlan, *, measured: bool = False) -> Html | None:
    """Return, for each source in use, where neutral and safety ground ought to be joined."""
    found = source_states(plan)
    if not found:
        return None
    rows = [
        tag(
            "tr",
            tag("th", str(one.state.supply).capitalize(), scope="row"),
            tag("td", one.state.bond, data_label="Should be", class_="wide"),
            tag("td", one.stated, data_label="In this plan"),
            tag("td", verdict(one.part.verdict), data_label="Verdict"),
            tag("td", one.state.transfers, data_label="Should change over", class_="wide"),
            tag("td", one.state.measured, data_label="Should be found", class_="wide"),
            tag(
                "td",
                one.found or blank(),
                data_label="Found",
                class_="wide",
            )
            if measured
            else None,
        )
        for one in found
    ]
    labels = ["Source in use", "Should be", "In this plan", "Verdict", "Should change over",
              "Should be found"]  # fmt: skip
    wrong = [one.part for one in found if one.part.mend]
    return joined(
        tag("h2", "Neutral and safety ground, source by source"),
        tag("table", head(*labels, *(["Found"] if measured else [])), tag("tbody", *rows),
            class_="grid cards stack said"),
        *(tag("p", verdict(one.verdict), f" {one.words} {one.mend}") for one in wrong),
        tag("p", "Joined once, at the source in use, and nowhere else. This is never an owner's "
            "measurement.", class_="note"),
    )  # fmt: skip


def isolation_part(plan: ShorePlan) -> Html | None:
    """Return what the choice of isolation brings, and what the safety ground costs without."""
    if plan.service is None:
        return None
    found = isolation_answer(plan)
    parts = [one for one in found.asked.parts if one.weighs] or found.asked.parts[:1]
    pairs = []
    if found.transformer:
        brings = found.transformer
        pairs = [
            ("its weight", f"{said(brings.weight[0], 2)} to {said(brings.weight[1], 2)} kg"),
            ("loss with no load",
             f"{said(brings.no_load[0])} to {said(brings.no_load[1])} W"),
            ("inrush", f"{said(brings.inrush[0])} to {said(brings.inrush[1])} A"),
            ("stands in for leakage protection",
             "yes, near enough to the inlet" if brings.exempts else "no, too far from the inlet"),
        ]  # fmt: skip
    without = f"{said(found.without.current)} A and {said(found.without.zinc, 2)} kg of zinc a year"
    defeated = None
    if plan.isolated.kind is Isolation.ISOLATOR:
        defeated = tag(
            "details",
            tag("summary", "What lets galvanic current past an isolator"),
            tag("ul", *(tag("li", _sentence(one)) for one in DEFEATED_BY), class_="list"),
            class_="why",
            id="shore-defeated",
        )
    return joined(
        tag("h2", "Galvanic isolation"),
        *(tag("p", verdict(one.verdict), f" {one.words} {one.mend}") for one in parts),
        figures(*pairs) if pairs else None,
        tag("p", f"Without any, zinc and a neighbour's steel at 0.35 V through 0.5 Ω are {without}."
            " The safety ground is never cut for it: it carries a fault away from people.",
            class_="note"),
        defeated,
    )  # fmt: skip


def _sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}."


def plugs_table(plan: ShorePlan) -> Html | None:
    """Return which other dock outlets may feed the inlet, and which can never."""
    found = crossings(plan)
    if not found:
        return None
    rows = [
        tag(
            "tr",
            tag("th", name, scope="row"),
            tag("td", verdict(one.verdict), data_label="May feed it"),
            tag("td", one.words, data_label="Why", class_="wide"),
        )
        for name, one in found
    ]
    return tag(
        "details",
        tag("summary", "Other dock outlets, and which cannot be crossed"),
        tag("table", head("Dock outlet", "May feed it", "Why"), tag("tbody", *rows),
            class_="grid cards"),
        class_="why",
        id="shore-crossings",
    )  # fmt: skip


def _not_there(there: Service, stops: list[tuple[str, bool]]) -> Html | None:
    """Return what may not be used by its own plate, and apart from it what passes power on."""
    own = words(name for name, its_own in stops if its_own)
    passing = words(name for name, its_own in stops if not its_own)
    on = f"On {there.name}, {said(there.hertz)} Hz, "
    if not own and not passing:
        return None
    return joined(
        tag("p", f"{on}do not use the ", tag("b", own), ".") if own else None,
        tag("p", f"{on}do not feed the ", tag("b", passing), " either: its own plate would do, "
            "but as wired it passes shore power on.") if passing else None,
    )  # fmt: skip


def abroad_table(scene: Scene) -> Html:
    """Return which appliances may be used on another country's service."""
    plan = scene.plan.shore
    found = [(one.appliance.name, answer) for one, answer in abroad_of(plan)]
    there, fixed = elsewhere(plan), fixed_installation(plan)
    stops = [(name, answer.own) for name, answer in found if answer.verdict is Verdict.STOP]
    if fixed is not None:
        found = [("what is wired in", fixed), *found]
    rows = [
        tag(
            "tr",
            tag("th", name, scope="row"),
            tag("td", verdict(answer.verdict), data_label="Verdict"),
            tag("td", answer.words, data_label="Why", class_="wide"),
        )
        for name, answer in found
    ]
    answer = _not_there(there, stops) if there is not None else None
    if fixed is not None:
        answer = joined(tag("p", verdict(fixed.verdict), f" {fixed.words}"), answer)
    return joined(
        tag("h2", "Abroad"),
        tag("div", entry(scene, "shore.abroad"), class_="fields no-print"),
        answer,
        tag(
            "details",
            tag("summary", "Appliance by appliance"),
            tag("table", head("Appliance", "Verdict", "Why"), tag("tbody", *rows),
                class_="grid cards"),
            class_="why",
            id="shore-abroad-each",
        )
        if rows
        else None,
        tag("p", "Plugs and polarity differ by country, and dock leakage devices usually trip at "
            "30 mA. Ask the licensed person there.", class_="note"),
    )  # fmt: skip
