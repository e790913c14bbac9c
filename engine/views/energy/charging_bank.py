"""How the bank takes charge: limit, taper, volts, time to charge, and what is curtailed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.ahead.taking import charging_of, taking_of
from engine.ahead.year import Year
from engine.batteries.charging_volts import STAGES, charging_volts
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.tables import EQUALISE
from engine.batteries.temperature import RATED
from engine.charging.acceptance import ACCEPTANCE
from engine.charging.tables import COULOMBIC, MOST_CHARGE, TAPER
from engine.derate import working_of
from engine.finding import Step
from engine.loads.load import CONDITIONS
from engine.problem import Problem
from engine.units import said
from engine.views.home.home import charge
from engine.views.parts.cautions import EQUALISING, caution, chemistry_caution
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import capital, hours, link, warmth, why

if TYPE_CHECKING:
    from engine.ahead.balance import Balance
    from engine.ahead.taking import Charging, Taking
    from engine.plan.parts import Bank
    from engine.views.parts.scene import Scene

TITLE: Final = "How the bank takes it"
TO: Final = ("To 80 %", "To 90 %", "To 100 %")


def bank_takes(scene: Scene, balance: Balance) -> Block:
    """Return how the bank takes what its sources give."""
    bank = scene.plan.bank
    title = tag("h2", TITLE)
    if bank is None or not bank.capacity:
        ask = tag("p", link("energy/bank", "Enter chemistry and capacity"),
                  " to see how long charging takes.", class_="empty")  # fmt: skip
        return block("charging-bank", title, ask)
    try:
        taking = taking_of(bank)
        times = charging_of(scene.plan, scene.condition, balance.brought)
    except Problem as problem:
        return block("charging-bank", title, tag("p", str(problem.at("")), class_="problem"))
    return block(
        "charging-bank",
        title,
        caution(chemistry_caution(bank.chemistry), "charging-bank"),
        _limit(scene, bank, taking),
        _times(scene, times),
        _curtailed(scene),
        _volts(scene, bank),
    )


def _limit(scene: Scene, bank: Bank, taking: Taking) -> Html:
    intake, name = taking.intake, bank.chemistry
    kept = f"{said(intake.efficiency * 100)} %"
    if taking.limit > 0:
        first = tag(
            "p",
            "Takes ", tag("b", f"{said(taking.limit)} A"), " at most; of each ampere-hour put in "
            f"it keeps {kept}. What loads leave of the source, the limit and the taper: the least "
            "counts.",
            class_="answer",
        )  # fmt: skip
    else:
        first = tag(
            "p", tag("b", "Takes no charge now. "), f"{capital(taking.cold[0].why)}.",
            class_="answer",
        )  # fmt: skip
    words, source = f"{said(intake.capacity)} Ah now × {said(MOST_CHARGE[name])} A each", None
    if taking.stated:
        words = f"by its label; else {words}"
    else:
        source = MOST_CHARGE.source
    steps = (
        Step("limit", words, f"{said(taking.warm)} A", source),
        *working_of(taking.warm, "A", taking.cold),
        Step("taper", "current for each ampere-hour it still lacks", f"{said(intake.taper)} /h",
             TAPER.source),
        Step("kept", "ampere-hours given back over those put in", kept, COULOMBIC.source),
    )  # fmt: skip
    at = warmth(bank.temperature, scene.units)
    return joined(first, why("Why this limit?", steps, "why-limit", f"Bank at {at}."))


def _times(scene: Scene, times: tuple[Charging, ...]) -> Html:
    if not times:
        return tag("p", "No alternator, charger or generator with its amperes yet, so no time to "
                   "charge.", class_="empty")  # fmt: skip
    rows = [
        tag(
            "tr",
            tag("th", f"{one.brought.source.ident} {one.brought.source.name}, from "
                f"{said(one.start * 100)} %", scope="row"),
            tag("td", f"{said(max(one.over, 0.0))} A", class_="n", data_label="After loads"),
            tag("td", f"{said(one.line * 100)} %", class_="n", data_label="Tapers from"),
            *(tag("td", _time(one, place), class_="n", data_label=label)
              for place, label in enumerate(TO)),
        )
        for one in times
    ]  # fmt: skip
    heads = ("After loads", "Tapers from", *TO)
    return joined(
        tag(
            "table",
            tag("caption", f"Time to charge {CONDITIONS[scene.condition]}, from now and from the "
                "reserve line", class_="quiet"),
            head("Source", *heads, numbers=heads),
            tag("tbody", *rows),
            class_="grid cards",
        ),
        tag(
            "p",
            "A tapering current never comes to 100 %: 98 % counts, which most call full. "
            "What the loads take meanwhile, the day's mean, is taken off first. ",
            tag("span", str(ACCEPTANCE), class_="source"),
            class_="note",
        ),
    )  # fmt: skip


def _time(one: Charging, place: int) -> str:
    time = one.times[place]
    if time is None:
        return "never: nothing flows"
    return hours(time) if time > 0 else "there"


def _curtailed(scene: Scene) -> Html | None:
    done = scene.progress.result if scene.progress else None
    found = done.curtailed if isinstance(done, Year) else None
    if found is None or found.brought <= 0:
        return None
    unit = scene.units.charge
    if charge(scene, found.curtailed) == "0":
        return tag("p", "On clear days in a row the bank takes all that comes by itself.")
    return tag(
        "p",
        "On clear days in a row ",
        tag("b", f"{charge(scene, found.curtailed)} {unit}"),
        f" of the {charge(scene, found.brought)} {unit} that come by themselves in a day cannot be "
        "taken and are curtailed: the bank is full. Use them then: watermaker, laundry, tools.",
    )


def _volts(scene: Scene, bank: Bank) -> Html:
    kind, volts = CHEMISTRIES[bank.chemistry], scene.plan.boat.volts
    rated, now = warmth(RATED, scene.units), warmth(bank.temperature, scene.units)
    heads = (f"At {rated}", f"At {now}, as the bank is" if now != rated else "Range")
    rows = []
    for stage in STAGES:
        at = charging_volts(kind, stage, volts, RATED)
        warm = charging_volts(kind, stage, volts, bank.temperature)
        if at is None or warm is None:
            cells = [tag("td", "never", class_="n"), tag("td", "", class_="n")]
        else:
            cells = [
                tag("td", f"{said(at.likely)} V", class_="n"),
                tag("td", f"{said(warm.likely)} V", tag("small", f"{said(warm.low)} to "
                    f"{said(warm.high)}", class_="range"), class_="n"),
            ]  # fmt: skip
        rows.append(tag("tr", tag("th", capital(stage), scope="row"), *cells))
    words = (
        "Lead wants more volts when it is cold and fewer when it is warm: fit the sensor on the "
        "bank." if kind.lead else "Lithium is not compensated: switch compensation off."
    )  # fmt: skip
    return joined(
        tag(
            "table",
            tag("caption", "Charging volts, typical; the maker's sheet decides", class_="quiet"),
            head("Stage", *heads, numbers=heads),
            tag("tbody", *rows),
            class_="grid",
        ),
        tag("p", words, class_="note"),
        caution(EQUALISING, "equalise") if EQUALISE.rows.get(kind.name) else None,
    )
