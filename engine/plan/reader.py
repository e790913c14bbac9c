"""Reads one row of a document field by field, keeping every problem with its path."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.conductors.sizes import read_size
from engine.field import chosen, estimate_of, value_of, yes
from engine.problem import Problem

if TYPE_CHECKING:
    from engine.conductors.sizes import Size
    from engine.estimate import Estimate
    from engine.field import Field
    from engine.plan.document import Row


class Reader:
    """Reads the fields of one row, keeping every problem."""

    def __init__(self, where: str, row: Row, fields: dict[str, Field]) -> None:
        self.where = where
        self.row = row
        self.fields = fields
        self.problems: list[Problem] = []

    def text(self, name: str) -> str:
        """Return what was typed, or the field's default."""
        return self.row.get(name, "") or self.fields[name].default

    def value(self, name: str) -> float | None:
        """Return the likely value, or None where it is unknown or cannot be read."""
        try:
            return value_of(self.fields[name], self.text(name)).likely
        except Problem as problem:
            self.problems.append(problem.at(f"{self.where}.{name}"))
            return None

    def sure(self, name: str) -> float:
        """Return the value, or the field's default where it is unknown or cannot be read."""
        value = self.value(name)
        if value is None:
            value = value_of(self.fields[name], self.fields[name].default).likely
        return value or 0.0

    def estimate(self, name: str, by: str = "") -> Estimate | None:
        """Return an estimate, or None where it is unknown or cannot be read."""
        try:
            return estimate_of(self.fields[name], self.text(name), by=by)
        except Problem as problem:
            self.problems.append(problem.at(f"{self.where}.{name}"))
            return None

    def choice(self, name: str) -> str:
        """Return what was chosen."""
        return chosen(self.fields[name], self.text(name))

    def yes(self, name: str) -> bool:
        """Return a yes-or-no; what cannot be read counts as no."""
        try:
            return yes(self.text(name))
        except Problem as problem:
            self.problems.append(problem.at(f"{self.where}.{name}"))
            return False

    def size(self, name: str, catalogue: str) -> Size | None:
        """Return a conductor's size, or None where it is unknown or cannot be read."""
        text = self.text(name)
        if text.strip() in {"", "?"}:
            return None
        try:
            return read_size(text, catalogue if catalogue == "metric" else "")
        except Problem as problem:
            self.problems.append(problem.at(f"{self.where}.{name}"))
            return None
