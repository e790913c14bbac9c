"""What a plan says once read: frozen values in the engine's units, None where not known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from engine.conductors.carrying import Surroundings
    from engine.conductors.sizes import Size
    from engine.estimate import Estimate
    from engine.inverter.efficiency import Curve
    from engine.loads.load import Load, Supply
    from engine.problem import Problem
    from engine.units import Amp, AmpHour, Celsius, Hour, Metre, Ohm, Share, Volt, Watt


@dataclass(frozen=True, slots=True)
class Boat:
    """The boat: name, nominal volts, tape accuracy in metres, and the words around them."""

    name: str
    volts: Volt
    tape: Metre
    catalogue: str
    month: str = ""
    place: str = ""
    revision: str = ""


@dataclass(frozen=True, slots=True)
class Circuit:
    """One DC circuit as stated; run in metres one way, currents in amperes."""

    ident: str
    name: str
    run: Estimate | None
    current: Estimate | None
    size: Size | None
    around: Surroundings | None
    allowed: str
    volts: Volt
    rating: Amp | None
    abreast: int
    protection: str
    continuous: bool


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
    bank: Bank | None
    inverter: InverterPlan | None
    supply: Supply
    looks: tuple[tuple[str, str], ...]
    problems: tuple[Problem, ...]

    def problem_at(self, path: str) -> Problem | None:
        """Return the problem of one field, if it has one."""
        return next((problem for problem in self.problems if problem.where == path), None)
