"""What volts reach the end of a ladder of runs?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.conductors.resistance import source_of
from engine.feeders.ladder import WHERE, Ladder, plain, read_ladder
from engine.feeders.solve import METHOD, Network, solve
from engine.field import TEXT, Field
from engine.finding import Step
from engine.problem import Problem
from engine.sums.drop import COPPER
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import RESISTANCE, VOLTS, Celsius, Ohm, Volt, said

if TYPE_CHECKING:
    from collections.abc import Sequence

LADDER: Final = Field(
    "ladder", "Runs and loads", TEXT,
    "Entries apart by semicolons: name, size, run one way, and its draw in A, W or ohm. Each hangs "
    "on the one before it unless it says so: main, 2/0 AWG, 1.4 m; panel, 4 AWG, 3.1 m; "
    "fridge from panel, 10 AWG, 5.6 m, 4.6 A; lamp from panel, 14 AWG, 3 m, 20 W.",
)  # fmt: skip
AT_REST: Final = Field(
    "volts", "Volts of the bank at rest", VOLTS, "Measured with nothing on; 12.8 V when full.",
    "12.8 V", above=True, least=0.0, most=1000.0,
)  # fmt: skip
WITHIN: Final = Field(
    "bank_resistance", "Resistance within the bank", RESISTANCE,
    "Typically 2 to 7 mohm for 12 V and 100 Ah; with 0 the bank holds its volts.", "0 ohm",
    0.0, 10.0,
)  # fmt: skip
SHOWN: Final = 5
"""Problems of a ladder told at one time."""


def answer(inputs: Inputs) -> Outcome:
    """Return the volts of every node, and the worst of them.

    Raises
    ------
    Problem
        If the ladder cannot be read; it tells what is wrong with each entry.
    """
    ladder, problems = read_ladder(inputs.texts["ladder"], Celsius(inputs["temperature"]))
    if problems:
        raise _together(problems)
    volts, within = Volt(inputs["volts"]), Ohm(inputs["bank_resistance"])
    found = solve(ladder.tree, volts, within, ladder.draws)
    steps = _steps(ladder, found, inputs["temperature"])
    return Outcome(_answers(ladder, found), _words(ladder, found), steps)


def _together(problems: Sequence[Problem]) -> Problem:
    """Return the problems of a ladder as one, since they stand in one field."""
    *others, last = problems[:SHOWN]
    told = [f"{problem.what} {problem.mend}" for problem in others]
    more = len(problems) - SHOWN
    if more > 0:
        told.insert(0, f"Of {len(problems)} problems the first {SHOWN}:")
    return Problem(WHERE, " ".join([*told, last.what]), last.mend)


def _answers(ladder: Ladder, found: Network | None) -> dict[str, Value]:
    """Return every figure; None where nothing can be said."""
    worst = found.worst if found else None
    worst_volts = found.volts[worst] if found and worst else None
    drop = found.volts[ladder.tree.root] - worst_volts if found and worst_volts else None
    share = drop / found.open_volts if found and drop is not None else None
    answers = {
        "worst": Value(worst, "", "worst off"),
        "worst_volts": Value(worst_volts, "V", "volts there"),
        "drop": Value(drop, "V", "lost between bank and there"),
        "share": Value(share, "share", "share of the bank's volts at rest"),
        "current": Value(found.current if found else None, "A", "current out of the bank"),
        "heat": Value(found.heat if found else None, "W", "lost as heat"),
    }
    for node in ladder.tree.nodes:
        at = found.volts[node] if found else None
        answers[f"volts_{plain(node)}"] = Value(at, "V", f"volts at {node}")
    return answers


def _words(ladder: Ladder, found: Network | None) -> str:
    if found is None:
        return (
            "No operating point: the draws ask for more than these runs can bring from this bank. "
            "Take some off, or use thicker or shorter runs."
        )
    way = "go into" if found.current < 0 else "leave"
    flow = f"{said(abs(found.current))} A {way} the bank, {said(found.heat)} W are lost as heat."
    if found.worst is None:
        return f"Nothing here takes current. {flow}"
    lowest, bank = found.volts[found.worst], found.volts[ladder.tree.root]
    return f"{found.worst} gets {said(lowest, 4)} V of {said(bank, 4)} V at the bank. {flow}"


def _steps(ladder: Ladder, found: Network | None, temperature: float) -> tuple[Step, ...]:
    """Return each run with its resistance, and what flows and is lost there."""
    steps = []
    for branch in ladder.tree.branches:
        size, run = ladder.runs[branch.ident]
        figure = f"{said(branch.resistance * 1000)} mΩ"
        if found:
            amps, lost = found.amps[branch.ident], found.lost[branch.ident]
            figure += f", {said(amps)} A, {said(amps * branch.resistance)} V and {said(lost)} W"
        what = f"{branch.source} to {branch.ident}"
        formula = f"{size}, {said(2 * run)} m there and back at {said(temperature)} °C, with joints"
        steps.append(Step(what, formula, figure, source_of(size)))
    end = "no operating point"
    if found:
        end = f"{said(found.supplied)} W = {said(found.taken)} W + {said(found.heat)} W"
    steps.append(Step("balance", "given by the bank = taken + lost as heat", end, METHOD))
    return tuple(steps)


FEEDER: Final = Sum(
    "feeder",
    "What volts reach the end of a ladder of runs?",
    "By physics, every load on at one time, each on the volts that are left where it is.",
    (LADDER, AT_REST, WITHIN, COPPER),
    answer,
)
