"""What may a conductor carry?"""

from __future__ import annotations

from typing import Final

from engine.conductors.carrying import HEAT, carries, printed_amperes, working_of_carries
from engine.conductors.mechanics import insulation_judgement
from engine.conductors.sizes import read_size
from engine.finding import Verdict
from engine.problem import Problem
from engine.sums.inputs import AMBIENT, BUNDLE, ENGINE, INSULATION, SIZE_FIELD, surroundings_of
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import said


def answer(inputs: Inputs) -> Outcome:
    """Return the carrying capacity after every factor.

    Raises
    ------
    Problem
        If the size cannot be read or is thinner than the table.
    """
    try:
        size = read_size(inputs.texts["size"], "awg")
        around = surroundings_of(inputs)
        printed_amperes(size, around.insulation)
    except Problem as problem:
        raise problem.at(problem.where or "size") from None
    limit = carries(size, around)
    notes: tuple[str, ...] = ()
    hot = insulation_judgement(around.insulation, engine_space=around.engine_space)
    if hot.verdict != Verdict.FINE:
        notes = (f"{hot.words} {hot.mend}",)
    found = f"{size} carries {said(limit)} A here."
    if limit <= 0:
        found = f"{size} carries nothing here: the air is as warm as its insulation may get."
    return Outcome(
        {"carries": Value(limit, "A", "carries")},
        found,
        working_of_carries(size, around),
        HEAT.name,
        notes,
    )


CARRYING: Final = Sum(
    "carrying",
    "What may a conductor carry?",
    "Carrying capacity with insulation, engine space, bundle and ambient.",
    (SIZE_FIELD, INSULATION, ENGINE, BUNDLE, AMBIENT),
    answer,
)
