"""Does a conductor on alternating current carry what the breaker before it lets through?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.check.asked import fine, part_of, wrong
from engine.check.part import Part, open_question
from engine.conductors.carrying import Surroundings, carries
from engine.finding import Severity, Verdict, meets
from engine.problem import Problem
from engine.shore.panel import BRANCH_PROTECTS, judge_branch
from engine.shore.together import Branch
from engine.units import said, words

if TYPE_CHECKING:
    from engine.conductors.sizes import Size
    from engine.plan.shore_parts import AcCircuit
    from engine.units import Amp

CAUTIOUS: Final = (60, 4)
"""Insulation in °C and conductors together where nobody has said: the least row, two cables."""
KINDEST: Final = (105, 2)
"""What boat cable may have at most, alone: a breaker above that never fits."""


@dataclass(frozen=True, slots=True)
class Run:
    """A conductor as stated: insulation in °C and how many run together, None where not said."""

    size: Size
    insulation: int | None = None
    bundle: int | None = None
    engine_space: bool = False

    def around(self, insulation: int, bundle: int) -> Surroundings:
        """Return where it lives, with these two where the plan does not say.

        Parameters
        ----------
        insulation : int
            Temperature class. [°C]
        bundle : int
            Conductors that carry, run together. [1]
        """
        return Surroundings(self.insulation or insulation, self.engine_space, self.bundle or bundle)

    @property
    def unsaid(self) -> tuple[str, ...]:
        """What was not said and had to be assumed."""
        asked = (("its insulation", self.insulation),
                 ("how many conductors run together", self.bundle))  # fmt: skip
        return tuple(word for word, stated in asked if stated is None)

    @property
    def reckoned(self) -> str:
        """The insulation and bundle a carrying capacity rests on, and which were assumed."""
        around = self.around(*CAUTIOUS)
        told = [f"insulation of {around.insulation} °C", f"{around.bundle} conductors together"]
        assumed = [self.insulation is None, self.bundle is None]
        tail = ", both assumed" if all(assumed) else ""
        if any(assumed) and not tail:
            told = [
                f"{one} (assumed)" if guess else one
                for one, guess in zip(told, assumed, strict=True)
            ]
        return f" with {words(told)}{tail}{', in the engine space' if self.engine_space else ''}"


def run_of(circuit: AcCircuit, size: Size) -> Run:
    """Return the conductor of a circuit, as it lives.

    Parameters
    ----------
    circuit : AcCircuit
        Says where.
    size : Size
        Of the conductor.
    """
    return Run(size, circuit.insulation, circuit.bundle, circuit.engine_space)


def protects(name: str, breaker: Amp, run: Run) -> Part:
    """Return whether a breaker protects a conductor: yes, not known on what it lies, or no.

    Parameters
    ----------
    name : str
        Of the circuit or run.
    breaker : Amp
        Rating. [A]
    run : Run
        The conductor behind it.
    """
    try:
        found = judge_branch(Branch(name, breaker), run.size, run.around(*KINDEST))
        most = carries(run.size, run.around(*CAUTIOUS))
    except Problem as problem:
        return wrong(
            BRANCH_PROTECTS, Verdict.STOP, f"{name}: {problem.what}", problem.mend,
            Severity.BEFORE_LEAVING,
        )  # fmt: skip
    if found is not None:
        return part_of(found)
    if meets(breaker, most):
        text = f"{name}: {said(breaker)} A protects {run.size}, which carries {said(most)} A"
        return fine(BRANCH_PROTECTS, f"{text} here{run.reckoned}.")
    text = f"{name}: {run.size} carries {said(most)} A here{run.reckoned}, less than its breaker"
    return open_question(
        BRANCH_PROTECTS, f"{text} of {said(breaker)} A. Enter {words(run.unsaid)}."
    )
