"""The DC network: what is switched on, and the volts, currents and heat everywhere at once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.network import BANK, LEVELS, NetworkAnswer, network_answer
from engine.check.users import User, used_in
from engine.finding import Verdict, meets
from engine.loads.load import CONDITIONS
from engine.units import fixed, said
from engine.views.home.home import banner, conditions
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import button, figures, link, verdict
from engine.views.wiring.circuits import wiring_pages

if TYPE_CHECKING:
    from engine.plan.parts import Circuit
    from engine.views.parts.scene import Scene

MOVED: Final = 0.005
"""Volts below which a change is not worth a word."""
TINY: Final = 0.005
"""Watts below which heat is not."""


def network(scene: Scene) -> tuple[Block, ...]:
    """Return the DC network's page."""
    answer = _answer_of(scene, scene.running)
    before = None
    if scene.before is not None or scene.running is not None:
        before = _answer_of(scene, scene.before)
    return (
        block("network-head", banner(scene), wiring_pages("wiring/network"),
              tag("h1", "DC network")),
        block("network-answer", _sentence(scene, answer), class_="sticky"),
        block("network-figures", _figures(answer)),
        block("network-set", conditions(scene), _levels(scene)),
        block("network-users", _switches(answer)),
        block("network-table", _table(scene, answer, before)),
        block("network-left", _left_out(answer)),
    )  # fmt: skip


def _answer_of(scene: Scene, running: frozenset[str] | None) -> NetworkAnswer:
    if running is None:
        running = used_in(scene.plan, scene.condition)
    return network_answer(scene.plan, running, scene.level)


def _sentence(scene: Scene, answer: NetworkAnswer) -> Html:
    what = "what you switched on"
    if scene.running is None:
        what = f"all that is used {CONDITIONS[scene.condition]} running at one time"
    where = f"With {what}, {LEVELS[scene.level]}"
    solved = answer.solved
    if not scene.plan.circuits:
        return tag("p", "No circuits yet. The network is drawn from them.", class_="empty")
    if solved is None:
        return tag(
            "p",
            verdict(Verdict.STOP),
            f" {where}: no operating point. The volts collapse before every load has its power.",
            class_="answer",
        )
    if solved.worst is None:
        return tag("p", f"{where}: nothing draws.", class_="answer")
    names = {one.ident: one.name for one in scene.plan.circuits}
    worst = solved.worst
    return tag(
        "p",
        f"{where}, the bank gives ",
        tag("b", f"{said(solved.current)} A"),
        " and the lowest volts are ",
        tag("b", f"{fixed(solved.volts[worst], 2)} V"),
        " at ",
        link(f"wiring/circuits/{worst}", f"{worst} {names.get(worst, '')}"),
        ".",
        class_="answer",
    )


def _figures(answer: NetworkAnswer) -> Html | None:
    solved = answer.solved
    if solved is None:
        return None
    return figures(
        ("bank at rest", f"{fixed(answer.open_volts, 2)} V"),
        ("bank's terminals", f"{fixed(solved.volts[BANK], 2)} V"),
        ("lost as heat in conductors", f"{said(sum(solved.lost.values()), 2)} W"),
        ("lost inside the bank", f"{said(solved.lost_in_bank, 2)} W"),
        ("reaches the loads", f"{said(solved.taken)} W"),
    )


def _levels(scene: Scene) -> Html:
    labels = [
        tag(
            "label",
            tag("input", type="radio", name="show.level", value=name,
                checked=name == scene.level),
            spoken,
        )
        for name, spoken in LEVELS.items()
    ]  # fmt: skip
    return tag("fieldset", tag("legend", "The bank", class_="quiet"), *labels, class_="choices")


def _table(scene: Scene, answer: NetworkAnswer, before: NetworkAnswer | None) -> Html | None:
    if answer.solved is None:
        return None
    by_id = {one.ident: one for one in scene.plan.circuits}
    rows = [
        _row(by_id[branch], answer, before, _depth(by_id[branch], by_id))
        for branch in _ordered(scene.plan.circuits)
        if branch in answer.solved.amps
    ]
    if not rows:
        return None
    return tag(
        "table",
        head("Circuit", "Volts at its end", "From the bank", "Current", "Heat", "Last change"),
        tag("tbody", *rows),
        class_="grid cards",
    )


def _ordered(circuits: tuple[Circuit, ...]) -> list[str]:
    """Return circuits so that each stands under what feeds it."""
    fed: dict[str, list[str]] = {}
    known = {one.ident for one in circuits}
    for one in circuits:
        fed.setdefault(one.fed_from if one.fed_from in known else "", []).append(one.ident)
    ordered: list[str] = []
    waiting = list(reversed(fed.get("", [])))
    while waiting:
        ident = waiting.pop()
        ordered.append(ident)
        waiting += reversed(fed.get(ident, []))
    return ordered


def _depth(circuit: Circuit, by_id: dict[str, Circuit]) -> int:
    depth = 0
    above = by_id.get(circuit.fed_from)
    while above is not None and depth < len(by_id):
        depth += 1
        above = by_id.get(above.fed_from)
    return depth


def _row(circuit: Circuit, answer: NetworkAnswer, before: NetworkAnswer | None, depth: int) -> Html:
    ident = circuit.ident
    solved = answer.solved
    assert solved is not None  # noqa: S101 - the caller has one
    volts, lost = solved.volts[ident], answer.lost_to(ident) or 0.0
    change = ""
    if before is not None and before.volts_at(ident) is not None:
        moved = volts - (before.volts_at(ident) or 0.0)
        change = (
            f"{'−' if moved < 0 else '+'}{fixed(abs(moved), 2)} V" if abs(moved) > MOVED else ""
        )
    place = f"in{min(depth, 3)}"
    over = None
    rating = circuit.rating
    if rating is not None and not meets(abs(solved.amps[ident]), rating * circuit.guard.abreast):
        over = joined(" ", verdict(Verdict.SHOULD, f"over its {said(rating)} A"))
    return tag(
        "tr",
        tag("th", link(f"wiring/circuits/{ident}", f"{ident} {circuit.name}", class_="whole"),
            scope="row", class_=place),
        tag("td", f"{fixed(volts, 2)} V", data_label="Volts at its end"),
        tag("td", f"{fixed(lost, 2)} V, {said(lost / circuit.volts * 100, 2)} %",
            data_label="From the bank"),
        tag("td", f"{said(solved.amps[ident])} A", over, data_label="Current"),
        tag("td", watts(solved.lost[ident]), data_label="Heat"),
        tag("td", change, data_label="Last change"),
        id=f"row-{ident}",
    )  # fmt: skip


def watts(lost: float) -> str:
    """Return heat as people say it; the very small is none.

    Parameters
    ----------
    lost : float
        Power. [W]

    Examples
    --------
    >>> watts(41.2), watts(0.16), watts(4e-6)
    ('41 W', '0.16 W', '0 W')
    """
    return f"{said(lost, 2)} W" if lost >= TINY else "0 W"


def _switches(answer: NetworkAnswer) -> Html:
    takers = [user for user in answer.users if not user.pushes]
    givers = [user for user in answer.users if user.pushes]
    if not answer.users:
        return joined()
    return tag(
        "details",
        tag("summary", f"What runs: {len(answer.running)} of {len(answer.users)}"),
        tag(
            "p",
            button("All that is used", "run-condition"),
            button("Nothing", "run-none"),
            class_="actions",
        ),
        tag("div", *(_tick(user, answer) for user in takers), class_="ticks many"),
        tag("h3", "Charging sources") if givers else None,
        tag("div", *(_tick(user, answer) for user in givers), class_="ticks many")
        if givers
        else None,
        class_="why",
        id="runs",
    )


def _tick(user: User, answer: NetworkAnswer) -> Html:
    ident = f"runs-{user.ident}"
    amount = {"current": "A", "power": "W", "resistance": "Ω"}[user.behaves]
    shown = f"{said(abs(user.amount))} {amount}"
    return tag(
        "div",
        tag("input", type="checkbox", name=f"show.running.{user.ident}", id=ident,
            checked=user.ident in answer.running),
        tag("label", tag("span", f"{user.name} ", tag("span", shown, class_="known")), for_=ident),
        class_="tick",
    )  # fmt: skip


def _left_out(answer: NetworkAnswer) -> Html | None:
    if not answer.left_out:
        return None
    names = {user.ident: user.name for user in answer.users}
    rows = [
        tag("li", link(f"energy/use/{ident}", f"{ident} {names[ident]}"), f": {why}")
        if ident in names and ident.startswith("L")
        else tag("li", f"{ident}: {why}")
        for ident, why in answer.left_out
    ]
    return joined(tag("h2", "Not counted"), tag("ul", *rows, class_="list"))
