"""What a quick sum declares, and what it answers."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from engine.field import CHOICE, SIZE, TEXT, YES_NO, Field, chosen, value_of, yes
from engine.problem import Problem, quoted
from engine.units import fixed, said, words

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from engine.finding import Step


@dataclass(frozen=True, slots=True)
class Value:
    """One figure of an answer: a number with its unit, a word, or None for “cannot say”."""

    value: float | str | None
    unit: str = ""
    label: str = ""

    def __str__(self) -> str:
        if self.value is None:
            return "cannot say"
        if isinstance(self.value, str):
            return self.value
        if self.unit == "share":
            return f"{said(self.value * 100)} %"
        if self.unit == "V" and abs(self.value) >= 0.1:
            return f"{fixed(self.value, 2)} V"
        return f"{said(self.value)} {self.unit}".strip()


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a sum found: answers by key, the rule that governs, the working, the cautions."""

    answers: dict[str, Value]
    words: str
    working: tuple[Step, ...]
    governing: str | None = None
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Inputs:
    """The inputs of one question, read: numbers in their kind's unit, words as typed."""

    numbers: dict[str, float] = field(default_factory=dict)
    texts: dict[str, str] = field(default_factory=dict)
    flags: dict[str, bool] = field(default_factory=dict)

    def __getitem__(self, name: str) -> float:
        return self.numbers[name]


@dataclass(frozen=True, slots=True)
class Sum:
    """One question: its name, what it asks, its inputs, and the function that answers."""

    name: str
    title: str
    asks: str
    fields: tuple[Field, ...]
    answer: Callable[[Inputs], Outcome]
    caution: str = ""
    swim: str = ""
    exhaust: str = ""

    @property
    def dangers(self) -> tuple[str, ...]:
        """What stands above the answer and before there is one: shape ``(n,)``, n from 0 to 3."""
        return tuple(one for one in (self.caution, self.swim, self.exhaust) if one)


def inputs_of(one: Sum, given: Mapping[str, str]) -> tuple[Inputs, list[Problem]]:
    """Return the inputs, read, and every problem with its place."""
    names = [declared.name for declared in one.fields]
    problems = [
        Problem(name, f"{quoted(name)} is no input of {one.name}.", f"It takes {words(names)}.")
        for name in given
        if name not in names
    ]
    inputs = Inputs()
    for declared in one.fields:
        text = given.get(declared.name, "").strip() or declared.default
        try:
            _read(declared, text, inputs)
        except Problem as problem:
            problems.append(problem.at(declared.name))
    return inputs, problems


def _read(declared: Field, text: str, inputs: Inputs) -> None:
    if not text and not declared.needed:
        inputs.texts[declared.name] = ""
        return
    if declared.kind is CHOICE:
        inputs.texts[declared.name] = chosen(declared, text)
    elif declared.kind is YES_NO:
        inputs.flags[declared.name] = yes(text)
    elif declared.kind is TEXT:
        inputs.texts[declared.name] = text
    elif declared.kind is SIZE:
        if not text:
            raise Problem("", f"{declared.label} is not given.", "Enter 10 AWG, 10 SAE or 6 mm2.")
        inputs.texts[declared.name] = text
    else:
        typed = value_of(declared, text)
        if typed.likely is None and not declared.needed:
            return
        if typed.likely is None:
            raise Problem(
                "",
                f"{declared.label} is not given.",
                f"Enter {declared.kind.a_word}, such as {declared.example}.",
            )
        inputs.numbers[declared.name] = typed.likely
        if typed.bare:
            inputs.texts[declared.name] = text


def outcome_of(one: Sum, given: Mapping[str, str]) -> tuple[Outcome | None, list[Problem]]:
    """Return what a sum found, None where it has problems, and every problem."""
    inputs, problems = inputs_of(one, given)
    if problems:
        return None, problems
    try:
        return one.answer(inputs), []
    except Problem as problem:
        return None, [problem]


def answered(one: Sum, given: Mapping[str, str]) -> dict[str, Any]:
    """Return the whole answer as plain data: the contract of command line and page.

    Shape ``{"sum", "answers", "governing", "problems", "working", "cautions"}``; with problems
    there are no answers.
    """
    outcome, problems = outcome_of(one, given)
    if outcome is None:
        return {
            "sum": one.name,
            "answers": {},
            "governing": None,
            "problems": [problem.as_row() for problem in problems],
            "working": [],
            "cautions": [*one.dangers],
        }
    return {
        "sum": one.name,
        "answers": {
            key: {"value": value.value, "unit": "" if value.unit == "share" else value.unit}
            for key, value in outcome.answers.items()
        },
        "governing": outcome.governing,
        "problems": [],
        "working": [str(step) for step in outcome.working],
        "cautions": [*one.dangers, *outcome.cautions],
    }
