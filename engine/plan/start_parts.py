"""What a plan says of the start bank and more of the house bank, once read; None where unknown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from engine.units import Amp, AmpHour, Share, Volt


@dataclass(frozen=True, slots=True)
class BankMore:
    """More of a bank: one battery's volts and how many stand in series, its limits, A, and kg."""

    battery_volts: Volt | None
    series: int
    alike: bool | None
    cold_stop: bool | None
    most_charge: Amp | None
    most_discharge: Amp | None
    mass: float | None
    cycles: float | None


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a bank is sized for: days alone (d), deepest in a day, what is left when old, margin."""

    days: float
    daily_depth: Share | None
    end_of_life: Share
    margin: float


@dataclass(frozen=True, slots=True)
class StartBank:
    """The start bank as stated; ``joined`` is one of the field's choices, empty where unknown.

    ``parts`` says whether the banks part when charging ends, ``converter`` what a DC-DC charger
    is marked, A.
    """

    joined: str
    parts: bool | None
    converter: Amp | None
    chemistry: str
    capacity: AmpHour | None

    @property
    def stated(self) -> bool:
        """True once anything of it was entered."""
        return bool(self.joined or self.chemistry or self.capacity or self.converter)
