"""Tables as printed, each with its source."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Generic, TypeVar

from engine.problem import Problem, quoted

if TYPE_CHECKING:
    from collections.abc import Mapping

    from engine.source import Source

Key = TypeVar("Key")
Cell = TypeVar("Cell")

ALL: list[Table[object, object]] = []
"""Every table of the program, in the order it was declared."""


@dataclass(frozen=True, eq=False)
class Table(Generic[Key, Cell]):
    """Rows as printed. Looked up exactly; any step or interpolation is said where it is used."""

    title: str
    key: str
    value: str
    source: Source
    rows: Mapping[Key, Cell] = field(repr=False)

    def __post_init__(self) -> None:
        ALL.append(self)  # type: ignore[arg-type]

    def __getitem__(self, key: Key) -> Cell:
        """Return the printed cell.

        Raises
        ------
        Problem
            If the table has no such row.
        """
        try:
            return self.rows[key]
        except KeyError:
            rows = ", ".join(str(row) for row in self.rows)
            raise Problem(
                "", f"{quoted(str(key))} is not in the table “{self.title}”.", f"It has {rows}."
            ) from None

    def __contains__(self, key: Key) -> bool:
        return key in self.rows
