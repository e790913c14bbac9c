"""What does a motor take to start?"""

from __future__ import annotations

from typing import Final

from engine.field import CHOICE, TEXT, Field
from engine.finding import Step
from engine.problem import Problem
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from engine.shore.starting import LOCKED_ROTOR, horsepower_of, line_current, locked_rotor
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import POWER, VOLTS, Volt, Watt, said

MOST_SHAFT: Final = 100000.0
HORSEPOWER: Final = Field(
    "horsepower", "Horsepower", POWER, "On the motor's plate: 0.5 or 0.5 hp.", above=True,
    least=0.0, most=MOST_SHAFT, bare="horsepower", needed=False,
)  # fmt: skip
WATTS: Final = Field(
    "watts", "Watts at the shaft", POWER, "Where the plate gives no horsepower.", above=True,
    least=0.0, most=MOST_SHAFT, needed=False,
)  # fmt: skip
CODE: Final = Field(
    "code", "Code letter", TEXT, "On the plate: small single-phase motors are mostly L or M."
)
MOTOR_VOLTS: Final = Field(
    "volts", "Volts", VOLTS, "On the plate; between lines where there are three.", "120 V", 90.0,
    500.0,
)  # fmt: skip
PHASES: Final = Field(
    "phases", "Phases", CHOICE, "", "1", choices=(("1", "one phase"), ("3", "three phases"))
)


def answer(inputs: Inputs) -> Outcome:
    """Return kVA and current of a motor that stands still, at the high end of its letter.

    Raises
    ------
    Problem
        If neither or both of horsepower and watts are given, or there is no such letter.
    """
    given = [inputs.numbers[name] for name in ("horsepower", "watts") if name in inputs.numbers]
    if len(given) != 1:
        raise Problem(
            "horsepower",
            f"{'Both' if given else 'Neither'} of horsepower and watts "
            f"{'are' if given else 'is'} given.",
            "Enter one of them, such as 0.5 hp.",
        )
    power = horsepower_of(Watt(given[0]))
    letter = inputs.texts["code"].strip().upper()
    still = locked_rotor(power, letter)
    kva = still.least if still.most is None else still.most
    volts, phases = Volt(inputs["volts"]), int(inputs.texts["phases"])
    current, least = line_current(kva, volts, phases), line_current(still.least, volts, phases)
    under = "volts" if phases == 1 else "(√3 × volts)"
    steps = (
        Step("horsepower", "watts / 745.7", f"{said(power)} hp"),
        Step("kVA standing still", f"horsepower × code {letter}, its high end", f"{said(kva)} kVA",
             LOCKED_ROTOR.source),
        Step("current", f"kVA × 1000 / {under}", f"{said(current)} A"),
    )  # fmt: skip
    found = (
        f"{said(power)} hp of code {letter} takes {said(kva)} kVA to start, {said(current)} A at "
        f"{said(volts)} V"
    )
    notes: tuple[str, ...] = ()
    if still.most is None:
        found, notes = (
            f"{found}, or more.",
            ("The last letter has no high end: this is its least.",),
        )
    else:
        found = f"{found}; {said(least)} A at the letter's low end."
    answers = {
        "kva": Value(kva, "kVA", "power to start"),
        "current": Value(current, "A", "current to start"),
    }
    return Outcome(answers, found, steps, LOCKED_ROTOR.name, notes)


MOTOR_START: Final = Sum(
    "motor-start",
    "What does a motor take to start?",
    "By the code letter on its plate; an inverter or generator must give it for a moment.",
    (HORSEPOWER, WATTS, CODE, MOTOR_VOLTS, PHASES),
    answer,
    CAUTION,
    SWIM_CAUTION,
)
