"""How do batteries side by side share the current?"""

from __future__ import annotations

from typing import Final

from engine.feeders.parallel import EVEN, LIMIT, MOST, SHARING, TakeOff, shares, uneven
from engine.field import CHOICE, Field
from engine.finding import Step, Verdict, meets
from engine.problem import Problem
from engine.sums.inputs import CURRENT_FIELD
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import NUMBER, RESISTANCE, Ohm, said

BATTERIES: Final = Field(
    "batteries", "Batteries side by side", NUMBER, "All of one kind, one age and one charge.", "2",
    2.0, float(MOST),
)  # fmt: skip
INNER: Final = Field(
    "resistance", "Resistance within each", RESISTANCE,
    "Of one battery, its fuse included; typically 2 to 7 mohm for 12 V and 100 Ah.",
    above=True, least=0.0, most=0.25, usual=(0.0005, 0.05),
)  # fmt: skip
LINK: Final = Field(
    "link", "One link", RESISTANCE,
    "Between neighbours, lugs included, alike on both sides; with equal leads, one lead.",
    "0.5 mohm", 0.0, 0.25,
)  # fmt: skip
CURRENT: Final = Field(
    "current", "Current", CURRENT_FIELD.kind, "Out of all of them together, or into them.",
    "100 A", above=True, least=0.0, most=5000.0,
)  # fmt: skip
TAKE_OFF: Final = Field(
    "take_off", "Main leads", CHOICE, "Where they are fastened.", "one-end",
    choices=(
        ("one-end", "both on the first battery"),
        ("diagonal", "positive on the first, negative on the last"),
        ("equal", "each battery by two leads of its own, all alike"),
    ),
)  # fmt: skip
WAYS: Final = {
    "one-end": (TakeOff.ONE_END, "both main leads at one end", "Move one lead to the other end."),
    "diagonal": (TakeOff.DIAGONAL, "diagonal leads", "Use thicker links or equal leads."),
    "equal": (TakeOff.EQUAL_LEADS, "equal leads", "Make all leads alike."),
}
"""How the leads are fastened, in words, and how the sharing gets better."""


def answer(inputs: Inputs) -> Outcome:
    """Return the largest and the smallest share, and how uneven they are.

    Raises
    ------
    Problem
        If the batteries are no whole number.
    """
    stated, current = inputs["batteries"], inputs["current"]
    count = round(stated)
    if count != stated:
        raise Problem("batteries", f"{said(stated)} is no number of batteries.", "Enter 2 or more.")
    take_off, leads, mend = WAYS[inputs.texts["take_off"]]
    found = shares([Ohm(inputs["resistance"])] * count, Ohm(inputs["link"]), take_off)
    most, least, ratio = max(found), min(found), uneven(found)
    verdict = Verdict.FINE if meets(ratio, LIMIT) else Verdict.SHOULD
    answers = {
        "most_share": Value(most, "share", "largest share"),
        "least_share": Value(least, "share", "smallest share"),
        "most_current": Value(most * current, "A", "most a battery gives"),
        "least_current": Value(least * current, "A", "least a battery gives"),
        "uneven": Value(ratio, "", "largest share over an even one"),
    }
    steps = [
        Step(f"battery {place}", f"{said(share * 100)} % of {said(current)} A",
             f"{said(share * current)} A", SHARING)
        for place, share in enumerate(found, 1)
    ]  # fmt: skip
    steps.append(Step("largest over even", f"{said(most)} × {count}", said(ratio), EVEN.source))
    words = (
        f"With {leads}, the most loaded of {count} batteries gives {said(most * current)} A and "
        f"the least {said(least * current)} A of {said(current)} A. "
        f"The most is {said(ratio)} times an even share: {verdict}"
    )
    if verdict is Verdict.FINE:
        return Outcome(answers, f"{words}, which is {LIMIT}.", tuple(steps))
    words = f"{words} be no more than {LIMIT}. {mend}"
    return Outcome(answers, words, tuple(steps), EVEN.name)


SHARE: Final = Sum(
    "share",
    "How do batteries side by side share the current?",
    "By where the main leads are fastened and what the links between the batteries lose.",
    (BATTERIES, INNER, LINK, CURRENT, TAKE_OFF),
    answer,
)
