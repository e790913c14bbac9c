"""All a page may know when it is drawn."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from engine.units import CHARGE, LENGTH, TEMPERATURE, Kind

if TYPE_CHECKING:
    from engine.plan.document import Document
    from engine.plan.parts import Plan
    from engine.problem import Problem


DAYS: Final = ("7", "14", "30")
"""How many days ahead a page may show."""
SKIES_SHOWN: Final = {"part": "part cloud", "clear": "clear", "dull": "dull", "mixed": "changing"}
"""Under what sky a page may show them, and how it says that."""


@dataclass(frozen=True, slots=True)
class Units:
    """How figures are shown; what is stored never changes with it."""

    length: str = "m"
    temperature: str = "degC"
    charge: str = "Ah"

    def of(self, kind: Kind) -> str:
        """Return the unit a bare figure of this kind means, as the registry names it."""
        if kind is LENGTH:
            return self.length
        if kind is TEMPERATURE:
            return self.temperature
        if kind is CHARGE:
            return "Ah"
        return kind.shown


@dataclass(frozen=True, slots=True)
class Kept:
    """One plan on this device."""

    ident: str
    name: str
    saved: str


@dataclass(frozen=True, slots=True)
class Progress:
    """How far the work of this page has come: the share done (1), and its result so far.

    ``trouble`` says why it ended without one.
    """

    name: str
    done: float
    result: object | None
    running: bool
    trouble: str = ""

    @property
    def stopped(self) -> bool:
        """True where the person stopped it before its end."""
        return not self.running and not self.trouble and self.done < 1


@dataclass(frozen=True, slots=True)
class Scene:
    """The plan and its document, what the person chose to see, and what the device says.

    ``running`` are the ids switched on in the DC network, None where the way of living decides;
    ``before`` those before the last change; ``plugged`` those switched on at the dock, None where
    the plan decides; ``progress`` is None where the page needs no long work;
    ``tonight`` is what the crew stated of this evening; ``days`` and ``sky`` are how many days
    ahead are shown, and under what.
    """

    document: Document
    plan: Plan
    mine: bool
    route: tuple[str, ...]
    query: dict[str, str]
    units: Units
    settings: dict[str, str]
    device: dict[str, str]
    plans: tuple[Kept, ...] = ()
    plan_id: str = ""
    undo: str = ""
    redo: str = ""
    condition: str = "anchor"
    group: str = ""
    chosen: frozenset[str] = frozenset()
    running: frozenset[str] | None = None
    before: frozenset[str] | None = None
    level: str = "now"
    sum_inputs: dict[str, str] = field(default_factory=dict)
    quiet_field: str = ""
    typed: dict[str, str] = field(default_factory=dict)
    refused: dict[str, Problem] = field(default_factory=dict)
    notice: tuple[str, ...] = ()
    incoming: object | None = None
    pasted: object | None = None
    link: str = ""
    asked: str = ""
    plugged: frozenset[str] | None = None
    progress: Progress | None = None
    tonight: dict[str, str] = field(default_factory=dict)
    days: int = 14
    sky: str = "part"
