"""The inverter: which loads together, for how long, how low, and whether its cut-off trips."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.check.inverter import InverterAnswer, inverter_answer
from engine.finding import Verdict, meets
from engine.units import fixed, said, words
from engine.views.home.home import banner
from engine.views.parts.cautions import SHORT_CIRCUIT, caution, dangers
from engine.views.parts.form import circuit_choice, entry
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import button, figures, hours, link, verdict, why
from engine.views.wiring.circuits import wiring_pages

if TYPE_CHECKING:
    from engine.check.inverter import Appliance
    from engine.views.parts.scene import Scene

STATED = ("rating", "surge", "curve", "idle", "cutoff")


def inverter(scene: Scene) -> tuple[Block, ...]:
    """Return the Inverter page."""
    found = inverter_answer(scene.plan, scene.chosen)
    return (
        block(
            "inverter-head", banner(scene), wiring_pages("wiring/inverter"), tag("h1", "Inverter"),
            dangers("inverter", swim=False),
        ),
        block("inverter-answer", _answer(scene, found)),
        block("inverter-loads", tag("h2", "What runs together"), _appliances(found)),
        block(
            "inverter-form",
            tag("h2", "The inverter"),
            tag(
                "div",
                *(entry(scene, f"inverter.{name}") for name in STATED),
                circuit_choice(scene, "inverter.circuit", "not entered"),
                class_="fields",
            ),
            tag("h2", "The bank it draws on"),
            tag(
                "div",
                *(entry(scene, f"bank.{name}") for name in ("chemistry", "capacity", "charge",
                                                            "reserve")),
                class_="fields",
            ),
            tag("p", link("energy/bank", "All of the bank"), class_="note"),
        ),
        block(
            "inverter-care",
            tag("p", link("wiring/shore", "Its AC side: wave, starting, what runs on shore power"),
                class_="note"),
            caution(SHORT_CIRCUIT, "feed"),
        ),
    )  # fmt: skip


def _answer(scene: Scene, found: InverterAnswer | None) -> Html:
    if found is None:
        return tag("p", "Enter the inverter's rating to see what it can carry.", class_="empty")
    if not found.together:
        return tag(
            "p",
            "No AC load runs through it yet. Add one here, or mark a load as fed by the inverter.",
            class_="empty",
        )
    names = words(one.load.name for one in found.together)
    result, bank = found.result, scene.plan.bank
    missing = tag("p", f"Not known: {words(found.missing)}.", class_="note")
    if result is None or bank is None:
        return tag(
            "div",
            tag("p", verdict(Verdict.NOT_KNOWN), f" {names} ask for {said(found.watts, 4)} W.",
                class_="answer"),
            missing,
        )  # fmt: skip
    return tag(
        "div",
        _sentence(found, names, said(bank.charge * 100), said(bank.reserve * 100)),
        _overload(scene, found),
        _figures(found),
        missing if found.missing else None,
        why("Why these numbers?", result.working, "why-inverter"),
    )


def _sentence(found: InverterAnswer, names: str, start: str, reserve: str) -> Html:
    result = found.result
    assert result is not None  # noqa: S101 - the caller has one
    if result.first is None:
        return tag(
            "p",
            verdict(Verdict.STOP),
            f" {names}: no operating point. The bank and its cable cannot bring "
            f"{said(found.dc, 4)} W at all.",
            class_="answer",
        )
    until = f"from {start} % to the reserve line at {reserve} %"
    if result.tripped_at is not None:
        until = f"from {start} %, then the cut-off trips at {said(result.tripped_at * 100, 2)} %"
        if found.feed_trips:
            until += "; the drop in its feed does it, a thicker or shorter one would not"
    after = None
    if found.charge_after is not None:
        after = joined(
            " Their usual minutes of a day leave ",
            tag("b", f"{said(found.charge_after * 100, 2)} %"),
            ".",
        )
    if result.time <= 0:
        core = joined(f" {names}: nothing is left above the reserve line at {start} %.")
    else:
        core = joined(
            f" {names}: about ", tag("b", hours(result.time)), f", {until}. ",
            f"Ignoring losses it would have been {hours(result.lossless_time)}.",
        )  # fmt: skip
    return tag("p", verdict(found.trips), core, after, class_="answer")


def _overload(scene: Scene, found: InverterAnswer) -> Html | None:
    inverter = scene.plan.inverter
    if inverter is None or meets(found.watts, inverter.rating):
        return None
    return tag(
        "p",
        verdict(Verdict.STOP),
        f" Together they ask for {said(found.watts, 4)} W of {said(inverter.rating, 4)} W: "
        "it will stop.",
    )


def _figures(found: InverterAnswer) -> Html:
    result = found.result
    first = result.first if result else None
    last = result.last if result else None
    return figures(
        ("AC power", f"{said(found.watts, 4)} W"),
        ("from the bank", f"{said(found.dc, 4)} W, {said(found.efficiency * 100)} %"),
        ("current at the start", f"{said(first.current)} A" if first else "none"),
        ("volts at the inverter", f"{fixed(first.volts, 2)} V" if first else "none"),
        ("volts at the end", f"{fixed(last.volts, 2)} V" if last else "none"),
        (
            "feed, there and back",
            f"{said(found.feeder * 1000)} mΩ" if found.feeder else "not known",
        ),
    )


def _appliances(found: InverterAnswer | None) -> Html:
    rows = [_row(one, found) for one in (found.appliances if found else ())]
    heads = ("Runs", "Load", "AC power", "A day", "From the bank", "Rating", "Starting")
    table = tag(
        "table",
        head(*heads),
        tag("tbody", *rows),
        class_="grid cards stack",
    )
    return joined(
        table if rows else None,
        tag("p", button("Add an AC load", "add-appliance", class_="main"), class_="actions"),
    )


def _row(one: Appliance, found: InverterAnswer | None) -> Html:
    ident, name = one.load.ident, one.load.name
    on = found is not None and one in found.together
    minutes = "not known" if one.minutes is None else f"{said(one.minutes)} min"
    day = "not known" if one.day is None else f"{said(one.day)} Ah"
    return tag(
        "tr",
        tag(
            "td",
            tag(
                "div",
                tag("input", type="checkbox", name=f"show.together.{ident}", id=f"run-{ident}",
                    checked=on),
                tag("label", tag("span", name, class_="quiet"), for_=f"run-{ident}"),
                class_="tick",
            ),
            data_label="Runs",
        ),
        tag("th", link(f"energy/use/{ident}", name), scope="row"),
        tag("td", f"{said(one.watts, 4)} W", data_label="AC power"),
        tag("td", minutes, data_label="A day"),
        tag("td", day, data_label="From the bank"),
        tag("td", verdict(one.fits), data_label="Rating"),
        tag("td", verdict(one.starts), data_label="Starting"),
        id=f"row-{ident}",
    )  # fmt: skip
