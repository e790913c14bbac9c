"""The inverter and the AC generator: what may hang on each, and what it costs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.shore_inverter import generator_answer, inverter_ac
from engine.units import said
from engine.views.parts.cautions import EXHAUST, caution
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import figures, link, verdict

if TYPE_CHECKING:
    from engine.check.shore_inverter import InverterAc
    from engine.plan.shore_parts import ShorePlan
    from engine.views.parts.scene import Scene


def inverter_part(scene: Scene) -> Html | None:
    """Return what may hang behind the inverter: wave, surge, two starting, warm air."""
    found = inverter_ac(scene.plan)
    if not found.behind and found.rating is None:
        return None
    wave = scene.plan.shore.on_inverter.wave
    rows = [
        tag(
            "tr",
            tag("th", one.item.appliance.name, scope="row"),
            tag("td", f"{said(one.item.appliance.watts, 4)} W", data_label="Runs at"),
            tag("td", f"{said(one.surge, 4)} W", data_label="Starts with"),
            tag("td", None if wave == "pure" else verdict(one.modified.verdict),
                f" {one.modified.words}",
                data_label="On a modified wave", class_="wide"),
        )
        for one in found.behind
    ]  # fmt: skip
    table = tag(
        "table",
        head("Behind the inverter", "Runs at", "Starts with", "On a modified wave"),
        tag("tbody", *rows),
        class_="grid cards",
    )
    yours = f" Your wave is {'pure' if wave == 'pure' else 'modified'}." if wave else ""
    return joined(
        tag("h2", "On the inverter"),
        table if rows else None,
        tag("p", f"{found.starting}{yours}".strip(), class_="note") if rows else None,
        _inverter_figures(found),
        tag(
            "p",
            link("wiring/inverter", "The inverter from the bank's side"),
            " · ",
            link("sum/motor-start", "What a motor takes to start, by its code letter"),
            class_="note",
        ),
    )


def _inverter_figures(found: InverterAc) -> Html | None:
    pairs = []
    if found.gives is not None and found.rating is not None:
        pairs.append(("in its warmest air", f"{said(found.gives, 4)} of {said(found.rating, 4)} W"))
    if found.idle:
        low, likely, high = found.idle
        pairs.append(
            ("typical draw with no load", f"{said(likely)} W ({said(low)} to {said(high)})")
        )
    if found.search:
        pairs.append(("search mode saves, 20 h idle", f"{said(found.search, 2)} Wh a day"))
    return figures(*pairs) if pairs else None


def generator_part(plan: ShorePlan) -> Html | None:
    """Return what an AC generator must give and burns, under the danger of its exhaust."""
    if plan.generator is None and plan.bonds.generator in {"", "absent"}:
        return None
    return joined(
        tag("h2", "AC generator"),
        caution(EXHAUST, "generator", brief=True),
        _asked_of_it(plan),
    )


def _asked_of_it(plan: ShorePlan) -> Html | None:
    found = generator_answer(plan)
    if found is None:
        return None
    part = found.asked.parts[0]
    burns = ""
    if found.burns is not None:
        burns = f" It burns about {said(found.burns, 2)} L/h then."
        if not found.charted:
            burns += " That is beyond the fuel chart, or too light a load for a diesel."
    return tag("p", verdict(part.verdict), f" {part.words} {part.mend}{burns}")
