"""What a plan says of charging, once read; None where not known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from engine.units import Amp, Hour, Metre, MetrePerSecond, Share, Volt, Watt


@dataclass(frozen=True, slots=True)
class Panels:
    """Solar panels: how wired, how they lie (°), what is lost, and volts of one (V)."""

    controller: str
    panels: int
    strings: int
    volts: Volt
    tilt: float
    facing: float
    shade: str
    mount: str
    dirt: Share
    overall: Share | None

    @property
    def string_volts(self) -> Volt:
        """Volts of one string at its best point, V."""
        return type(self.volts)(self.volts * max(self.panels // self.strings, 1))


@dataclass(frozen=True, slots=True)
class Turning:
    """An alternator's side: pulley ratio, engine speed (1/min), share when hot, limit and read."""

    ratio: float
    speed: float
    hot: Share
    limit: Amp | None
    read: Amp | None


@dataclass(frozen=True, slots=True)
class Rotating:
    """A rotor in wind or water: metres, metres a second and shares."""

    diameter: Metre | None
    coefficient: Share
    height: Metre
    shelter: Share
    wind_speed: MetrePerSecond | None
    boat_speed: MetrePerSecond


@dataclass(frozen=True, slots=True)
class SourcePlan:
    """One source as stated: what it is marked (W, A), hours a day (h) and fuel (L/h)."""

    ident: str
    kind: str
    name: str
    counted: bool
    watts: Watt | None
    current: Amp | None
    panels: Panels
    turning: Turning
    rotor: Rotating
    hours: Hour
    fuel: float | None

    @property
    def called(self) -> str:
        """Its id and name within a sentence, as “S01 engine alternator”."""
        plain = self.name if self.name[:2].isupper() else f"{self.name[:1].lower()}{self.name[1:]}"
        return f"{self.ident} {plain}"


@dataclass(frozen=True, slots=True)
class PolicyPlan:
    """When the engine charges: shares of charge, hours, and the id of the source it starts."""

    source: str
    engine_on_at: Share | None
    engine_off_at: Share | None
    least_run: Hour
    quiet_from: Hour
    quiet_to: Hour
    never: bool
