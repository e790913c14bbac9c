"""The bank in figures, how its batteries stand, and which of its figures are only typical."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.tables import (
    CYCLES_AT_HALF,
    EXPONENT,
    MASS,
    RESISTANCE_100_AH,
    USABLE,
)
from engine.charging.tables import MOST_CHARGE
from engine.check.bank import figures_of, nominal_volts
from engine.check.bank_asked import COLDEST
from engine.check.path import bank_ohms
from engine.loads.day_use import day_use
from engine.loads.load import CONDITIONS
from engine.units import said
from engine.views.energy.volts_note import volts_note
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import capital, figures, warmth, whole

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry
    from engine.check.bank import BankFigures
    from engine.estimate import Estimate
    from engine.plan.parts import Bank
    from engine.source import Source
    from engine.views.parts.scene import Scene

TYPICAL: Final = "typical"


def card(scene: Scene) -> Html | None:
    """Return what the bank is worth, in figures."""
    bank = scene.plan.bank
    found = figures_of(bank) if bank else None
    if bank is None or found is None:
        return None
    volts = nominal_volts(found.kind, bank.volts)
    peak = day_use(scene.plan.loads, scene.condition, scene.plan.supply).peak
    most = bank.more.most_discharge
    return joined(
        tag("h2", "The bank in figures"),
        figures(
            ("Holds now", f"{whole(found.held)} Ah"),
            (f"Energy at {said(volts)} V", f"{said(found.energy)} Wh"),
            (f"Usable, {said(found.depth * 100)} %", f"{whole(found.usable)} Ah"),
            (f"Mass{_known(found.mass)}", f"{said(found.mass.likely, 2)} kg"),
            (f"Cycles of {said(found.depth * 100)} %{_known(found.cycles)}",
             said(found.cycles.likely, 2)),
            (f"Most charge current{_known(found.most_charge)}", _charge(found)),
            (f"Largest discharge asked, {CONDITIONS[scene.condition]}",
             f"{said(peak.with_surge)} A"),
            ("Largest discharge it allows", f"{said(most)} A" if most else "not known"),
        ),
        _cold(found),
        volts_note(scene, stays=True),
        tag("p", f"In all its cycles it gives about {said(found.life / 1000, 2)} thousand Ah.",
            class_="note"),
        _batteries(bank, found),
    )  # fmt: skip


def _known(figure: Estimate) -> str:
    """Return how a figure is known, after its name."""
    if figure.known_by != "default":
        return ", as stated"
    span = "" if figure.certain else f" {said(figure.low, 2)} to {said(figure.high, 2)}"
    return f", {TYPICAL}{span}"


def _charge(found: BankFigures) -> str:
    most = found.most_charge.likely
    return f"{said(most)} A" if most > 0 else "none"


def _cold(found: BankFigures) -> Html | None:
    if not found.cold:
        return None
    return tag("p", *(f"{capital(one.why)}." for one in found.cold))


def _batteries(bank: Bank, found: BankFigures) -> Html | None:
    series, strings = bank.more.series, bank.strings
    if series * strings < 2:
        return None
    each = f"each {said(bank.more.battery_volts or bank.volts)} V {said(found.each)} Ah"
    if strings == 1:
        return tag("p", f"{series} batteries in series, {each}: volts add, ampere-hours do not.")
    if series == 1:
        return tag("p", f"{strings} batteries side by side, {each}: ampere-hours add, volts do "
                   "not.")  # fmt: skip
    return tag(
        "p",
        f"{series * strings} batteries, {each}: {series} in series, where volts add, and "
        f"{strings} strings side by side, where ampere-hours add.",
    )


def typical(scene: Scene) -> Html | None:
    """Return every figure of the bank that stands for a label nobody read, with its range."""
    bank = scene.plan.bank
    found = figures_of(bank) if bank else None
    if bank is None or found is None:
        return None
    kind = CHEMISTRIES[bank.chemistry]
    name, inner = kind.name, bank_ohms(bank, bank.charge)
    rows = (
        ("Peukert's exponent", said(bank.exponent), kind.exponent, "", EXPONENT.source),
        ("Share used", f"{said(found.depth * 100)} %", None, f"{said(USABLE[name] * 100)} %",
         USABLE.source),
        ("Inner resistance", f"{said((inner or 0.0) * 1000)} mΩ", kind.milliohms,
         " mΩ for 100 Ah at 12 V", _inner_source(kind)),
        ("Mass", f"{said(found.mass.likely, 2)} kg", None,
         f"{said(MASS[name][0])} to {said(MASS[name][2])} kg for each kWh", MASS.source),
        ("Cycles", said(found.cycles.likely, 2), None,
         f"{said(CYCLES_AT_HALF[name], 2)} to half its depth", CYCLES_AT_HALF.source),
        ("Most charge current", _charge(found), None,
         f"{said(MOST_CHARGE[name])} A for each Ah", MOST_CHARGE.source),
        ("Coldest charging", warmth(kind.coldest_charge, scene.units), None,
         "the same", COLDEST[kind.lead]),
    )  # fmt: skip
    body = (
        tag(
            "tr",
            tag("th", what, scope="row"),
            tag("td", used, data_label="Reckoned with"),
            tag("td", _span(span) + unit, data_label="Typical", class_="wide"),
            tag("td", tag("span", str(source), class_="source"), class_="wide"),
        )
        for what, used, span, unit, source in rows
    )
    return tag(
        "details",
        tag("summary", f"What is typical of {kind.label}"),
        tag("table", head("Figure", "Reckoned with", "Typical", "From"), tag("tbody", *body),
            class_="grid cards"),
        class_="why",
        id="bank-typical-figures",
    )  # fmt: skip


def _inner_source(kind: Chemistry) -> Source:
    """Return where a resistance comes from; only lithium has a board within."""
    source = RESISTANCE_100_AH.source
    return replace(source, place="half charged, at 25 °C") if kind.lead else source


def _span(span: Estimate | None) -> str:
    if span is None:
        return ""
    return f"{said(span.likely)} ({said(span.low)} to {said(span.high)})"
