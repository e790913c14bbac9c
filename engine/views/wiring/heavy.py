"""Heavy cables: main feed, inverter, windlass, starter, charging, and the bank's own links."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.battery_share import MENDS, shares_of
from engine.check.circuits import CircuitAnswer, answers_of
from engine.check.path import bank_ohms
from engine.check.short_circuit import fault_at_start
from engine.conductors.mechanics import FRICTION, MOST_ON_STUD, PARALLEL, STUD_STACK
from engine.conductors.tables import STUDS
from engine.feeders.parallel import TakeOff
from engine.finding import Verdict
from engine.units import said
from engine.views.home.home import banner
from engine.views.parts.cautions import SHORT_CIRCUIT, caution, chemistry_caution
from engine.views.parts.form import entry
from engine.views.parts.html import Block, Html, block, head, joined, tag
from engine.views.parts.say import length, link, verdict
from engine.views.wiring.circuits import protection_words, wiring_pages

if TYPE_CHECKING:
    from engine.plan.parts import Bank
    from engine.views.parts.scene import Scene

HEAVY: Final = 50.0
"""Design current from which a circuit counts as heavy, A."""
ALWAYS: Final = {"bus", "inverter", "source", "bank", "starter"}
BANK_FIELDS: Final = (
    "chemistry", "capacity", "resistance", "cranking", "strings", "take_off", "link_run",
    "link_size",
)  # fmt: skip


def heavy(scene: Scene) -> tuple[Block, ...]:
    """Return the page of heavy cables."""
    found = [one for one in answers_of(scene.plan) if _is_heavy(one)]
    bank = scene.plan.bank
    return (
        block("heavy-head", banner(scene), wiring_pages("wiring/heavy"), tag("h1", "Heavy cables")),
        block(
            "heavy-care",
            caution(SHORT_CIRCUIT, "heavy"),
            caution(chemistry_caution(bank.chemistry), "chemistry") if bank else None,
        ),
        block("heavy-list", _table(scene, found)),
        block("heavy-share", tag("h2", "Batteries side by side"), _shares(bank)),
        block(
            "heavy-bank",
            tag("h2", "The bank, for its cables"),
            tag("div", *(entry(scene, f"bank.{name}") for name in BANK_FIELDS), class_="fields"),
        ),
        block("heavy-rules", tag("h2", "Rules for thick cable"), _rules()),
    )


def _is_heavy(answer: CircuitAnswer) -> bool:
    circuit = answer.circuit
    large = circuit.current is not None and circuit.current.likely >= HEAVY
    return large or circuit.feeds in ALWAYS


def _table(scene: Scene, found: list[CircuitAnswer]) -> Html:
    if not found:
        return tag("p", "No circuit of 50 A or more yet, nor one that feeds a bus or the inverter.",
                   class_="empty")  # fmt: skip
    heads = head("Circuit", "Conductor", "Protection", "Terminals", "Verdict")
    return tag("table", heads, tag("tbody", *(_row(scene, one) for one in found)),
               class_="grid cards")  # fmt: skip


def _row(scene: Scene, answer: CircuitAnswer) -> Html:
    circuit, wire = answer.circuit, answer.wire
    fault = fault_at_start(circuit, circuit.size, answer.path) if circuit.size else None
    side = f"{circuit.parallel} × " if circuit.parallel > 1 else ""
    conductor = f"{side}{circuit.size}" if circuit.size else "not known"
    if circuit.run and circuit.size:
        conductor += f", {length(2 * circuit.run.likely * circuit.parallel, scene.units)} in all"
    asked = f"{said(circuit.current.likely)} A" if circuit.current else "a current not known"
    limit = f"{said(wire.carries)} A" if wire else "not known"
    short = f"{said(fault)} A" if fault else "not known"
    return tag(
        "tr",
        tag("th", link(f"wiring/circuits/{circuit.ident}", f"{circuit.ident} {circuit.name}",
                       class_="whole"), scope="row"),
        tag("td", f"{conductor}; {asked} asked, carries {limit}", data_label="Conductor"),
        tag("td", f"{protection_words(answer)}; a short there {short}", data_label="Protection"),
        tag("td", terminals(answer), data_label="Terminals"),
        tag("td", verdict(answer.verdict), data_label="Verdict"),
    )  # fmt: skip


def terminals(answer: CircuitAnswer) -> str:
    """Return the terminals a circuit needs, for the parts list.

    Parameters
    ----------
    answer : CircuitAnswer
        With a conductor.
    """
    circuit = answer.circuit
    if circuit.size is None:
        return "not known"
    count = 4 * circuit.parallel + (2 if circuit.guard.fitted else 0)
    stud = STUDS.rows.get(circuit.guard.series, "")
    hole = f", {stud} at the protection" if stud else ""
    return f"{count} lugs for {circuit.size}{hole}"


def _shares(bank: Bank | None) -> Html:
    if bank is None:
        return tag("p", "The bank is not entered yet.", class_="empty")
    if bank.strings < 2:
        return tag("p", "One battery, or one string: nothing to share.", class_="note")
    found = shares_of(bank)
    if found is None:
        return tag("p", "Enter where the main leads leave and what links the batteries, to see how "
                   "they share.", class_="empty")  # fmt: skip
    whole = bank_ohms(bank, bank.charge) or 0.0
    rows = [
        tag(
            "tr",
            tag("th", f"Battery {place}", scope="row"),
            tag("td", f"{said(share * 100)} %", class_="n"),
            tag("td", f"{said(share * 100 * len(found.shares), 3)} % of an even share"),
        )
        for place, share in enumerate(found.shares, 1)
    ]
    word = Verdict.FINE if found.even else Verdict.SHOULD
    tail = (
        "they share near enough evenly."
        if found.even
        else f"the one at the leads works most and wears out first. {MENDS[TakeOff(bank.take_off)]}"
    )
    return joined(
        tag("p", verdict(word), f" {bank.strings} batteries: {tail}", class_="answer"),
        tag("table", head("Battery", "Share", ""), tag("tbody", *rows), class_="grid"),
        tag("p", f"Each battery {said(whole * bank.strings * 1000)} mΩ, each link "
            f"{said(found.link * 1000)} mΩ with its lugs.", class_="note"),
    )  # fmt: skip


def _rules() -> Html:
    rows = (
        ("No short duty", "A windlass or starter is sized as if it ran on: no rating for minutes "
         "is taken for granted."),
        ("Side by side", f"{_capital(PARALLEL.words)}. {PARALLEL.source}."),
        ("On one stud", f"{_capital(STUD_STACK.words)}, here {MOST_ON_STUD}; the thickest lug "
         f"lowest. {STUD_STACK.source}."),
        ("Push-on terminals", f"{_capital(FRICTION.words)}. {FRICTION.source}. Not for heavy "
         "cables."),
        ("Strings of batteries", "The same make, age and size, links of the same length, leads "
         "from opposite corners or from common posts."),
    )  # fmt: skip
    return tag(
        "ul",
        *(tag("li", tag("b", f"{name}. "), text) for name, text in rows),
        class_="list",
    )


def _capital(words: str) -> str:
    return words[0].upper() + words[1:]
