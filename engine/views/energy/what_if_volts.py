"""System voltage: the same boat at 12, 24 and 48 V."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.ahead.volts import DENSITY_SOURCE, LARGE_SOURCE, SYSTEMS, volts_of
from engine.finding import Step
from engine.units import said, words
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import link, why

if TYPE_CHECKING:
    from engine.ahead.volts import Fitted, Row, Volts
    from engine.views.parts.scene import Scene

LARGEST = 6
"""Circuits shown unfolded."""
FITTED = "Fitted now"


def volts_block(scene: Scene) -> Block:
    """Return the same boat at each system's volts."""
    found = volts_of(scene.plan, scene.condition)
    title = tag("h2", "System voltage")
    if not found.rows:
        empty = tag("p", "No circuit with run, current and insulation yet. ",
                    link("wiring/circuits", "Enter one"), class_="empty")  # fmt: skip
        return block("whatif-volts", title, empty)
    rest = found.rows[LARGEST:]
    folded = tag(
        "details",
        tag("summary", f"{len(rest)} more circuits"),
        _table(scene, rest),
        class_="more",
        id="more-volts",
    )
    return block(
        "whatif-volts",
        title,
        tag("p", _sentence(found), class_="answer"),
        _table(scene, found.rows[:LARGEST], found),
        folded if rest else None,
        _open(found),
        _converter(scene, found),
        why("How these are reckoned", _steps(), "why-volts"),
    )


def _sentence(found: Volts) -> str:
    parts = []
    for volts, mass, left in zip(SYSTEMS, found.mass, found.unsuited, strict=True):
        none = f" ({_not_counted(left)})" if left else ""
        parts.append(f"{_mass(mass, left)} at {said(volts)} V{none}")
    fitted = f" What is fitted now holds {_mass(found.aboard, 0)}." if found.aboard else ""
    return f"The least conductors for the same watts hold copper of {words(parts)}.{fitted}"


def _mass(mass: float, left_out: int) -> str:
    least = "at least " if left_out else ""
    return f"{least}{said(mass, 3 if mass >= 10 else 2)} kg"


def _not_counted(count: int) -> str:
    return f"{count} circuit{'s' * (count > 1)} not counted, which none here suits"


def _table(scene: Scene, rows: tuple[Row, ...], found: Volts | None = None) -> Html:
    now = scene.plan.boat.volts
    names = [f"{said(one)} V, least" + (", now" if one == now else "") for one in SYSTEMS]
    lines = []
    for row in rows:
        route = f"wiring/circuits/{row.circuit.ident}"
        cells = (
            tag("td", _cell(one), data_label=name)
            for one, name in zip(row.fitted, names, strict=True)
        )
        lines.append(tag("tr", tag("th", link(route, row.circuit.name), scope="row"),
                         tag("td", _aboard(row), data_label=FITTED), *cells))  # fmt: skip
    if found:
        masses = (
            tag("td", tag("b", mass), data_label=name)
            for mass, name in (
                (_mass(found.aboard, 0) if found.aboard else "not stated", FITTED),
                *((_mass(mass, left), name)
                  for mass, left, name in zip(found.mass, found.unsuited, names, strict=True)),
            )
        )  # fmt: skip
        lines.append(tag("tr", tag("th", "Copper of all circuits", scope="row"), *masses))
    return tag("table", head("Circuit", FITTED, *names), tag("tbody", *lines), class_="grid cards")


def _aboard(row: Row) -> str:
    size, abreast = row.circuit.size, row.circuit.parallel
    if size is None:
        return "not stated"
    return f"{abreast} × {size}" if abreast > 1 else str(size)


def _cell(one: Fitted) -> str:
    if one.size is None:
        return f"{said(one.current)} A, no conductor here is thick enough"
    side = f"{one.abreast} × " if one.abreast > 1 else ""
    return f"{said(one.current)} A, {side}{one.size}"


def _open(found: Volts) -> Html | None:
    if not found.unknown:
        return None
    shown = words(found.unknown[:LARGEST])
    return tag("p", f"Not counted, since run, current or insulation is not known: {shown}.",
               class_="note")  # fmt: skip


def _converter(scene: Scene, found: Volts) -> Html:
    lines = []
    if found.large:
        lines.append(f"Buy for the bank's volts: {words(found.large)}; and inverter, alternator or "
                     "its charger, and solar controller.")  # fmt: skip
    if found.small:
        lines.append(
            f"Ask the nameplate of {len(found.small)} other DC loads: some take 10 to 32 V, those "
            "for 12 V only need a converter. If all of them did and ran at once, it would carry "
            f"{said(found.converter, 2)} W, and it loses about a tenth while it is on."
        )
    inverter = scene.plan.inverter
    if inverter:
        idle = inverter.curve.fixed * inverter.rating
        amps = words(f"{said(idle / one, 2)} A" for one in SYSTEMS)
        lines.append(f"The inverter idles at {said(idle)} W whatever the volts: {amps}.")
    lines.append(
        "Fuses, breakers and switches must be marked for the higher DC volts. The engine's start "
        "bank usually stays at 12 V. A 48 V bank charges at up to about 58 V, close to where DC "
        "is dangerous to touch."
    )
    return joined(tag("h3", "What else changes"), tag("ul", *(tag("li", one) for one in lines)))


def _steps() -> tuple[Step, ...]:
    return (
        Step("current", "the same watts / volts", "half at twice the volts"),
        Step("drop", "the circuit's allowed share of the system's volts",
             "a quarter at twice the volts, in the same conductor"),
        Step("conductor", "least size for drop, heat and handling; its protection may ask for more",
             "in the circuit's own catalogue"),
        Step("copper", "2 × run × area × 8.89 g/cm³", "without insulation", DENSITY_SOURCE),
        Step("large gear", "above 20 A at 12 V", "bought for the bank's volts", LARGE_SOURCE),
    )  # fmt: skip
