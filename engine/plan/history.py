"""Undo and redo: each step keeps only what changed, so that a hundred survive a reload."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

DEEPEST: Final = 200
"""Steps kept."""


@dataclass(frozen=True, slots=True)
class Change:
    """One place that changed: a list's splice, or a value (None: not there)."""

    path: tuple[str, ...]
    at: int
    old: Any
    new: Any


@dataclass(frozen=True, slots=True)
class Step:
    """A named edit."""

    name: str
    changes: tuple[Change, ...]


def changes_between(old: Any, new: Any, path: tuple[str, ...] = ()) -> tuple[Change, ...]:  # noqa: ANN401
    """Return what turns one document into another.

    Shared parts are recognised by identity, so the cost is that of the edit, not of the plan.
    """
    if old is new:
        return ()
    if isinstance(old, dict) and isinstance(new, dict):
        keys = [*old, *(key for key in new if key not in old)]
        return tuple(
            change
            for key in keys
            for change in changes_between(old.get(key), new.get(key), (*path, key))
        )
    if isinstance(old, list) and isinstance(new, list):
        start = 0
        while start < min(len(old), len(new)) and old[start] == new[start]:
            start += 1
        end = 0
        while end < min(len(old), len(new)) - start and old[-1 - end] == new[-1 - end]:
            end += 1
        gone, come = old[start : len(old) - end], new[start : len(new) - end]
        return (Change(path, start, gone, come),) if gone or come else ()
    return () if old == new else (Change(path, -1, old, new),)


def applied(document: Any, changes: tuple[Change, ...]) -> Any:  # noqa: ANN401
    """Return the document after the changes."""
    for change in changes:
        document = _applied(document, change.path, change)
    return document


def _applied(part: Any, path: tuple[str, ...], change: Change) -> Any:  # noqa: ANN401
    if path:
        inner = _applied(part.get(path[0]), path[1:], change)
        rest = {key: value for key, value in part.items() if key != path[0] or inner is not None}
        return rest if inner is None else {**rest, path[0]: inner}
    if change.at < 0:
        return change.new
    return [*part[: change.at], *change.new, *part[change.at + len(change.old) :]]


def reversed_step(step: Step) -> Step:
    """Return the step that takes another back."""
    return Step(
        step.name,
        tuple(
            Change(change.path, change.at, change.new, change.old)
            for change in reversed(step.changes)
        ),
    )


def as_json(steps: tuple[Step, ...]) -> list[Any]:
    """Return steps as plain lists, for keeping."""
    return [
        [step.name, [[list(c.path), c.at, c.old, c.new] for c in step.changes]] for step in steps
    ]


def from_json(raw: list[Any]) -> tuple[Step, ...]:
    """Return steps that were kept by this page itself."""
    return tuple(
        Step(str(name), tuple(Change(tuple(path), at, old, new) for path, at, old, new in changes))
        for name, changes in raw
    )
