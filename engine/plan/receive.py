"""A plan that came from elsewhere, looked at before anything opens."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.plan.document import parsed
from engine.plan.link import is_link, unpacked
from engine.plan.read import plan_of

if TYPE_CHECKING:
    from engine.plan.document import Document
    from engine.problem import Problem


@dataclass(frozen=True, slots=True)
class Received:
    """What a preview says of a plan that came in."""

    document: Document
    name: str
    revision: str
    made_up: bool
    loads: int
    circuits: int
    problems: tuple[Problem, ...]


def received(text: str) -> Received:
    """Return the plan in a link, a fragment or the text of a file.

    Raises
    ------
    Problem
        If it holds no whole plan.
    """
    plain = text.strip()
    fragment = plain.rpartition("#")[2]
    document = unpacked(fragment) if is_link(fragment) and "{" not in plain[:1] else parsed(plain)
    plan = plan_of(document)
    return Received(
        document,
        plan.boat.name,
        plan.boat.revision,
        plan.made_up,
        len(plan.loads),
        len(plan.circuits),
        plan.problems,
    )
