"""Tables of the days ahead: three skies side by side, each day, and the ledger."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.units import fixed, said
from engine.views.energy.course import DAY, clock, percent
from engine.views.parts.html import Html, head, joined, tag
from engine.views.parts.say import hours, whole

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from engine.simulate.run import Day, Series

SAID: Final = {"clear": "Clear", "part": "Part cloud", "dull": "Dull"}
LACK: Final = 0.05
"""Ampere-hours below which nothing is said to lack or to be left over."""
DROVE: Final = "What drives it"


def at(time: float | None) -> str:
    """Return a moment of the days ahead.

    Parameters
    ----------
    time : float or None
        Since the first midnight; None for never. [h]

    Examples
    --------
    >>> at(30.25), at(None)
    ('day 2, 06:15', 'never')
    """
    return "never" if time is None else f"day {int(time // DAY) + 1}, {clock(time)}"


def sky_table(skies: Mapping[str, Series], *, engine: bool) -> Html:
    """Return what days come to that are all alike, a column a sky."""
    rows: list[tuple[str, Callable[[Series], str]]] = [
        ("Sun a day", lambda one: f"{whole(one.days[0].sun)} Ah"),
        ("Lowest charge", lambda one: f"{percent(one.lowest)} %"),
        ("When", lambda one: at(one.lowest_at)),
        ("Engine first called for" if engine else "Charging first called for",
         lambda one: at(one.needed_at)),
        ("Full first", lambda one: at(one.full_at)),
        ("Since full, at the end", _since),
    ]  # fmt: skip
    if engine:
        rows += [
            ("Engine a week", lambda one: hours(one.engine_hours_a_week)),
            ("Fuel a week", lambda one: f"{said(one.fuel_a_week, 2)} L"),
        ]
    rows += [
        ("Cannot be taken, a day", lambda one: f"{_ah(one.charge.curtailed / one.length)} Ah"),
        ("Loads go without", lambda one: _lacked(one.charge.unmet)),
    ]
    names = [SAID[sky] for sky in skies]
    return tag(
        "table",
        head("Sky", *names, numbers=tuple(names)),
        tag(
            "tbody",
            *(
                tag(
                    "tr",
                    tag("th", label, scope="row"),
                    *(
                        tag("td", figure(one), class_="n", data_label=name)
                        for name, one in zip(names, skies.values(), strict=True)
                    ),
                )
                for label, figure in rows
            ),
        ),
        class_="grid cards",
    )


def _since(series: Series) -> str:
    if series.since_full is None:
        return "never full"
    if series.since_full < 2 * DAY:
        return hours(series.since_full) if series.since_full else "full"
    return f"{said(series.since_full / DAY, 2)} days"


def _ah(charge: float) -> str:
    return whole(charge) if charge > LACK else "0"


def _lacked(charge: float) -> str:
    return f"{whole(charge)} Ah" if charge > LACK else "no"


def each_day(series: Series) -> Html:
    """Return each day's flows, and what drives it."""
    days = series.days
    columns: list[tuple[str, Callable[[Day], str], bool]] = [
        ("Charge", lambda one: f"{percent(one.start)} to {percent(one.end)} %", True),
        ("Used, Ah", lambda one: _ah(one.charge.served), True),
        ("Sun, Ah", lambda one: _ah(one.sun), _any(days, lambda one: one.sun)),
        ("Wind, Ah", lambda one: _ah(one.wind), _any(days, lambda one: one.wind)),
        ("Shore charger, Ah", lambda one: _ah(one.shore), _any(days, lambda one: one.shore)),
        ("Engine", lambda one: hours(one.engine_hours) if one.engine_hours else "0",
         _any(days, lambda one: one.engine_hours)),
        ("Not taken, Ah", lambda one: _ah(one.charge.curtailed),
         _any(days, lambda one: one.charge.curtailed)),
        ("Gone without, Ah", lambda one: _ah(one.charge.unmet),
         _any(days, lambda one: one.charge.unmet)),
    ]  # fmt: skip
    shown = [(label, figure) for label, figure, has in columns if has]
    rows = [
        tag(
            "tr",
            tag("th", f"Day {place}", scope="row"),
            *(tag("td", figure(one), class_="n", data_label=label) for label, figure in shown),
            tag("td", drove, class_="wide"),
        )
        for place, (one, drove) in enumerate(zip(days, series.drove, strict=True), 1)
    ]
    labels = [label for label, _ in shown]
    return tag(
        "table",
        head("Day", *labels, DROVE, numbers=tuple(labels)),
        tag("tbody", *rows),
        class_="grid cards",
    )


def _any(days: Sequence[Day], figure: Callable[[Day], float]) -> bool:
    return any(figure(one) > LACK for one in days)


def ledger(series: Series) -> Html:
    """Return what came, went, was lost and is kept, in ampere-hours and watt-hours."""
    charge, energy = series.charge, series.energy
    rows = (
        ("In the bank at the start", charge.start, energy.start),
        ("In, by sun, wind and shore charger", charge.sources, energy.sources),
        ("In, by the engine", charge.engine, energy.engine),
        ("Out, to the loads", charge.served, energy.served),
        ("Lost in charging", charge.lost, energy.lost),
        ("In the bank at the end", charge.end, energy.end),
        ("Cannot be taken", charge.curtailed, energy.curtailed),
        ("Loads go without", charge.unmet, energy.unmet),
    )
    return joined(
        tag(
            "table",
            head("Charge and energy", "Ah", "Wh", numbers=("Ah", "Wh")),
            tag(
                "tbody",
                *(
                    tag(
                        "tr",
                        tag("th", label, scope="row"),
                        tag("td", fixed(one, 1), class_="n"),
                        tag("td", fixed(other, 0), class_="n"),
                    )
                    for label, one, other in rows
                ),
            ),
            class_="grid",
        ),
        tag(
            "p",
            "It closes: start and in, less out and lost, is the end, to a billionth. "
            "Watt-hours are at the volts the bank shows at rest.",
            class_="note",
        ),
    )
