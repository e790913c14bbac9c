"""Home: the answer first, what needs doing, the largest users, and single questions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.doubts import alone, doubts_of
from engine.check.findings import findings_of
from engine.finding import Severity, Step
from engine.late import here
from engine.loads.day_use import day_use
from engine.loads.draws import DRAWS, HABITS_SOURCE
from engine.loads.load import CONDITIONS
from engine.plan.made_up import AS_FOUND
from engine.problem import Problem
from engine.sums import TITLES
from engine.units import said
from engine.views.energy.not_counted import left_out, not_counted, unsure
from engine.views.parts.cautions import PLANNING, caution, dangers, dangers_of
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import button, link, severity, whole, why

if TYPE_CHECKING:
    from engine.finding import Finding
    from engine.loads.day_use import DayUse
    from engine.views.parts.scene import Scene

TRADE: Final = "Plan and check your boat's electrics. Works without a connection."


def charge(scene: Scene, amp_hours: float) -> str:
    """Return a charge in the unit chosen for showing, without it.

    Parameters
    ----------
    scene : Scene
        The choice of showing.
    amp_hours : float
        The charge. [Ah]
    """
    per = scene.plan.boat.volts if scene.units.charge == "Wh" else 1.0
    return whole(amp_hours * per)


def answer_sentence(scene: Scene, answer: DayUse) -> Html:
    """Return what a day costs, as one sentence with its range."""
    unit = scene.units.charge
    band = answer.band
    if not answer.uses or band.p90 <= 0:
        return tag("p", "Nothing is switched on in this way of living yet.", class_="answer")
    days = alone(scene.plan, answer.condition)
    bank = None
    if days:
        low, high = said(days.low, 2), said(days.high, 2)
        span = f" ({low} to {high})" if low != high else ""
        bank = joined(
            " The bank alone lasts about ", tag("b", f"{said(days.likely, 2)} days"), f"{span}."
        )
    words = not_counted(scene)
    missing = tag("span", f" {words}", class_="known") if words else None
    return tag(
        "p",
        "About ",
        tag("b", f"{charge(scene, band.median)} {unit}"),
        f" a day, 8 days in 10 between {charge(scene, band.p10)} and {charge(scene, band.p90)}; ",
        f"the likely figures alone add up to {charge(scene, answer.total.likely)}.",
        bank,
        missing,
        class_="answer",
    )


def ahead_sentence(scene: Scene) -> Html | None:
    """Return the days ahead in a sentence; None while what reckons them is not here or cannot."""
    if not here():
        return None
    from engine.ahead.told import at_home, likely_soon  # noqa: PLC0415 - comes with the late parcel

    try:
        told = at_home(scene.plan, scene.condition)
        good = bool(told) and not likely_soon(scene.plan, scene.condition)
    except Problem:
        return None
    if not told:
        return None
    days = link("energy/ahead", "Days ahead")
    return joined(tag("p", unsure(scene, favourable=good), told, " ", days), left_out(scene))


def band_working(answer: DayUse) -> tuple[Step, ...]:
    """Return how the band was reached, and why independent draws mislead."""
    apart = answer.independent
    return (
        Step("each load", "current × hours × duty, low with low and high with high", "Ah a day"),
        Step("sum of likely values", "all loads", f"{whole(answer.total.likely)} Ah"),
        Step(
            "everything low at once, everything high at once",
            "sums of the ends",
            f"{whole(answer.total.low)} and {whole(answer.total.high)} Ah",
        ),
        Step(
            "if errors were independent",
            f"{DRAWS} seeded draws from each load's triangle",
            f"{whole(apart.p10)} to {whole(apart.p90)} Ah: too narrow, since errors cancel",
        ),
        Step(
            "with habits and heat moving together",
            "each day's sum × one factor drawn between 0.84 and 1.18",
            f"{whole(answer.band.p10)} to {whole(answer.band.p90)} Ah, "
            f"median {whole(answer.band.median)}",
            HABITS_SOURCE,
        ),
    )


def conditions(scene: Scene) -> Html:
    """Return the choice of living condition; at the dock the dangers stand below it."""
    labels = [
        tag(
            "label",
            tag(
                "input", type="radio", name="show.condition", value=name,
                checked=name == scene.condition,
            ),
            spoken,
        )
        for name, spoken in CONDITIONS.items()
    ]  # fmt: skip
    choice = tag(
        "fieldset",
        tag("legend", "How you live", class_="quiet"),
        *labels,
        class_="choices",
    )
    at_dock = scene.condition == "dock"
    return joined(choice, dangers("at-dock", brief=True) if at_dock else None)


def banner(scene: Scene) -> Html | None:
    """Return the made-up boat's flag."""
    if not scene.plan.made_up:
        return None
    return tag(
        "div",
        tag(
            "p",
            tag("b", "Made-up boat. "),
            "Everything about ",
            tag("i", "Wherrilow"),
            " is invented. Change what you like; nothing here is kept. ",
            link("start", "Start my own boat"),
        ),
        tag(
            "p",
            "This is the boat as she was found, with her faults to mend. "
            if scene.plan.boat.revision == AS_FOUND
            else "This is the boat as planned. ",
            button("See her as planned", "as-planned")
            if scene.plan.boat.revision == AS_FOUND
            else button("See her as found", "as-found"),
        ),
        class_="banner",
    )


def chooser() -> Html:
    """Return the three first choices."""
    choices = (
        ("start-own", "Start my boat", "Seven questions, five minutes; skip what you don't know."),
        ("look-around", "Look around Wherrilow", "A made-up boat, complete, for trying things."),
        ("receive", "Receive a plan", "From a link, a file or pasted text."),
    )
    return tag(
        "div",
        *(
            tag(
                "button",
                tag("b", title),
                tag("small", line),
                type="button",
                data_do=do,
                class_="choice",
            )
            for do, title, line in choices
        ),
        class_="chooser",
    )


def finding_row(one: Finding) -> Html:
    """Return one finding: verdict, words, mend, who, and the way there."""
    part, _, rest = one.where.partition(".")
    route = {
        "circuits": f"wiring/circuits/{rest}",
        "inverter": "wiring/inverter",
        "network": "wiring/network",
        "bank": "wiring/heavy" if rest == "take_off" else "energy/bank",
        "start": "energy/bank",
        "shore": "wiring/shore",
        "ac": f"wiring/shore/{rest}",
        "records": "wiring/shore",
        "sources": "energy/charging",
        "policy": "energy/ahead",
    }.get(part, f"proving/{rest}")
    there = {"shore": "shore power", "records": "the results", "circuits": rest, "ac": rest,
             "start": "the start bank", "sources": "charging",
             "policy": "days ahead"}  # fmt: skip
    label = "Answer this" if part == "looks" else f"Go to {there.get(part, part)}"
    return tag(
        "li",
        severity(one),
        tag("span", f" {one.who.value}", class_="known"),
        tag("p", one.words),
        tag("p", one.mend, " ", link(route, label), class_="note"),
    )


def findings_list(scene: Scene, most: int = 0) -> Html:
    """Return what needs doing, gravest first."""
    found = [one for one in findings_of(scene.plan, scene.chosen) if one.severity != Severity.NOTE]
    if not found:
        words = "No problem found in what you entered."
        if not scene.plan.circuits:
            words = "Nothing to check yet: add a DC circuit."
        return tag("p", words, class_="empty")
    shown = found[: most or None]
    more = (
        tag("p", link("home/findings", f"All {len(found)} findings"))
        if most and len(found) > most
        else None
    )
    return joined(
        dangers_of(shown, "found"),
        tag("ul", *(finding_row(one) for one in shown), class_="list"),
        more,
    )


def largest_table(scene: Scene, answer: DayUse) -> Html:
    """Return the five largest users."""
    a_day = f"{scene.units.charge} a day"
    rows = [
        tag(
            "tr",
            tag("td", link(f"energy/use/{use.load.ident}", use.load.name)),
            tag("td", charge(scene, use.day.likely), class_="n"),
            tag("td", use.load.known_by, class_="known"),
        )
        for use in answer.largest
    ]
    return tag(
        "table",
        head("Load", a_day, "Known by", numbers=(a_day,)),
        tag("tbody", *rows),
        class_="grid",
    )


def measure_next(scene: Scene, most: int = 3) -> Html:
    """Return which guesses, if known, would narrow the answer most."""
    found = doubts_of(scene.plan, scene.condition, most)
    if not found:
        return tag("p", "No range is wide enough to matter.", class_="empty")
    words = {"draw": "its current", "hours": "its hours", "duty": "how long it really runs"}
    rows = [
        tag(
            "li",
            link(f"energy/use/{doubt.load.ident}", f"{doubt.load.name}: {words[doubt.part]}"),
            tag(
                "span",
                f" spreads the day by {charge(scene, doubt.spread)} {scene.units.charge}, "
                f"known by {doubt.known_by}",
                class_="known",
            ),
        )
        for doubt in found
    ]
    return tag("ol", *rows, class_="list")


def quick_sums() -> Html:
    """Return the single questions."""
    return tag(
        "ul",
        *(tag("li", link(f"sum/{name}", title)) for name, title in TITLES.items()),
        class_="sums",
    )


def title_of(scene: Scene) -> str:
    """Return the heading: how, when and where."""
    boat = scene.plan.boat
    when = f" in {boat.month.capitalize()}" if boat.month else ""
    where = f", {boat.place}" if boat.place else ""
    return f"{CONDITIONS[scene.condition].capitalize()}{when}{where}"


def home(scene: Scene) -> tuple[Block, ...]:
    """Return the Home page."""
    first = not scene.mine and scene.settings.get("chosen") != "looked"
    answer = day_use(scene.plan.loads, scene.condition, scene.plan.supply)
    head: list[Html | None] = [banner(scene)]
    if first:
        head = [
            tag("h1", "Ohmward"),
            tag("p", TRADE, class_="answer"),
            chooser(),
            caution(PLANNING, "planning"),
            tag("h2", "Behind this: the made-up boat Wherrilow"),
        ]
    else:
        head.append(tag("h1", title_of(scene)))
    if scene.plan.loads:
        middle = joined(
            conditions(scene),
            tag("p", title_of(scene), class_="note") if first else None,
            answer_sentence(scene, answer),
            why(f"Why {charge(scene, answer.band.median)}?", band_working(answer), "why-day",
                "The median lies above the sum of likely values because most ranges reach further "
                "up than down."),
        )  # fmt: skip
    else:
        middle = joined(
            tag("p", "No loads yet. A day's use starts with them.", class_="empty"),
            tag(
                "p",
                link("start", "Answer seven questions", class_="button"),
                " ",
                link("energy/use", "Enter loads yourself", class_="button"),
                class_="actions",
            ),
        )
    two = tag(
        "div",
        tag("section", tag("h2", "To do before leaving"), findings_list(scene, 4)),
        tag(
            "section",
            tag("h2", f"Five largest, {CONDITIONS[scene.condition]}"),
            largest_table(scene, answer)
            if answer.largest
            else tag("p", "None yet.", class_="empty"),
        ),
        class_="two",
    )
    return (
        block("home-head", *head),
        block("home-answer", middle),
        block("home-ahead", ahead_sentence(scene)),
        block("home-two", two),
        block("home-next", tag("h2", "Measure this next"), measure_next(scene)),
        block("home-sums", tag("h2", "Quick sums"), quick_sums()),
        block(
            "home-foot",
            caution(PLANNING, "planning") if not first else None,
            tag("p", button("Show the first choices again", "chooser"), class_="actions")
            if not first and not scene.mine
            else None,
        ),
    )


def findings(scene: Scene) -> tuple[Block, ...]:
    """Return every finding on one page."""
    return (
        block(
            "findings",
            link("home", "Home", class_="crumb"),
            tag("h1", "What needs doing"),
            tag(
                "p",
                "Gravest first. A finding is a rule the plan or the boat does not meet; "
                "it never blocks you.",
                class_="note",
            ),
            findings_list(scene),
        ),
    )
