"""What a plan says once read: frozen values in the engine's units, None where not known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from engine.conductors.carrying import Surroundings
    from engine.conductors.sizes import Size
    from engine.estimate import Estimate
    from engine.inverter.efficiency import Curve
    from engine.loads.load import Load, Supply
    from engine.plan.shore_parts import ShorePlan
    from engine.plan.source_parts import PolicyPlan, SourcePlan
    from engine.plan.start_parts import BankMore, StartBank, Wanted
    from engine.problem import Problem
    from engine.units import Amp, AmpHour, Celsius, Hour, Metre, Ohm, Share, Volt, Watt

NONE_FITTED: Final = "none"
"""The type of a protection that is known not to be there."""


@dataclass(frozen=True, slots=True)
class Boat:
    """The boat: name, nominal volts, how far tape (m), meter (V) may be off, words, place (°)."""

    name: str
    volts: Volt
    tape: Metre
    meter: Volt
    catalogue: str
    month: str = ""
    place: str = ""
    revision: str = ""
    latitude: float | None = None
    longitude: float | None = None


@dataclass(frozen=True, slots=True)
class Leg:
    """One stretch between two places; its length in metres, one way."""

    ident: str
    name: str
    length: Estimate | None


@dataclass(frozen=True, slots=True)
class Guard:
    """A circuit's protection as stated: what it is marked, what it is, and where it sits.

    ``series`` is empty where the type is not known and ``none`` where none is fitted;
    ``distance`` runs from the source of power to it, in metres; ``far_end`` is yes, no or empty.
    """

    rating: Amp | None
    series: str
    words: str
    interrupting: Amp | None
    distance: Estimate | None
    sheathed: bool
    abreast: int
    far_end: str
    self_limiting: bool
    label_most: Amp | None

    @property
    def fitted(self) -> bool:
        """False where it is known that there is none."""
        return self.series != NONE_FITTED


@dataclass(frozen=True, slots=True)
class Reading:
    """Volts read by a meter that may be off by so many, either way."""

    volts: Volt
    accuracy: Volt


@dataclass(frozen=True, slots=True)
class Circuit:
    """One DC circuit as stated; run in metres one way, currents in amperes.

    ``on_bank`` is false where it has volts of its own, such as panels before their controller.
    """

    ident: str
    name: str
    run: Estimate | None
    current: Estimate | None
    size: Size | None
    around: Surroundings | None
    allowed: str
    volts: Volt
    guard: Guard
    continuous: bool
    fed_from: str
    feeds: str
    parallel: int
    joints: Ohm | None
    in_sheath: bool
    function: str
    stall: Amp | None
    read_drop: Reading | None
    on_bank: bool

    @property
    def rating(self) -> Amp | None:
        """What its protection is marked, A."""
        return self.guard.rating


@dataclass(frozen=True, slots=True)
class Bank:
    """The house bank as stated, with the chemistry's typical values where nothing is."""

    chemistry: str
    capacity: AmpHour | None
    rated_hours: Hour
    health: Estimate | None
    new: bool
    charge: Share
    reserve: Share
    temperature: Celsius
    exponent: float
    resistance: Ohm | None
    volts: Volt
    cranking: Amp | None
    strings: int
    take_off: str
    link: Link
    more: BankMore
    wanted: Wanted


@dataclass(frozen=True, slots=True)
class Link:
    """One link between two batteries side by side: its length in metres and its conductor."""

    run: Estimate | None
    size: Size | None


@dataclass(frozen=True, slots=True)
class InverterPlan:
    """The inverter as stated; the feed circuit by its id."""

    rating: Watt
    surge: Watt | None
    curve: Curve
    cutoff: Volt
    circuit: str


@dataclass(frozen=True, slots=True)
class Plan:
    """One plan, read; what could not be read is in ``problems`` and counts as not known."""

    made_up: bool
    boat: Boat
    loads: tuple[Load, ...]
    circuits: tuple[Circuit, ...]
    legs: tuple[Leg, ...]
    bank: Bank | None
    start: StartBank
    inverter: InverterPlan | None
    supply: Supply
    looks: tuple[tuple[str, str], ...]
    stack: float | None
    standing: Estimate | None
    shore: ShorePlan
    sources: tuple[SourcePlan, ...]
    policy: PolicyPlan
    problems: tuple[Problem, ...]

    def problem_at(self, path: str) -> Problem | None:
        """Return the problem of one field, if it has one."""
        return next((problem for problem in self.problems if problem.where == path), None)
