"""What a plan says of alternating current, once read; None where not known."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from engine.problem import quoted
from engine.units import Watt, words

if TYPE_CHECKING:
    from engine.conductors.sizes import Size
    from engine.shore.abroad import Plate
    from engine.shore.appliances import Appliance
    from engine.shore.isolation import Isolation
    from engine.shore.services import Service
    from engine.shore.transfer import Transfer
    from engine.units import Amp, Celsius, Metre

BOTH: Final = "both"
"""The leg of an appliance that stands across two."""


@dataclass(frozen=True, slots=True)
class Feed:
    """The way in: cord and the run from inlet to main, in metres one way, with their sizes."""

    cord_length: Metre | None
    cord_size: Size | None
    length: Metre | None
    size: Size | None
    guarded: bool


@dataclass(frozen=True, slots=True)
class MainBreaker:
    """The main as stated: rating and what it and its branches interrupt, A; poles.

    Where its own field is empty the circuit of the inlet speaks; ``other`` is what that circuit
    says of rating in A and poles where it says something else.
    """

    rating: Amp | None
    poles: int | None
    interrupts: Amp | None
    branches_interrupt: Amp | None
    other: tuple[Amp | None, int | None] = (None, None)
    ident: str = ""

    @property
    def largest(self) -> Amp | None:
        """The largest rating stated of it, A."""
        stated = [one for one in (self.rating, self.other[0]) if one is not None]
        return max(stated, default=None)

    @property
    def least(self) -> Amp | None:
        """The least rating stated of it, A."""
        stated = [one for one in (self.rating, self.other[0]) if one is not None]
        return min(stated, default=None)


@dataclass(frozen=True, slots=True)
class Leakage:
    """Leakage protection at the main: fitted or not, the leakage it opens at in A, and in s."""

    fitted: bool | None
    trip: Amp | None
    time: float | None


@dataclass(frozen=True, slots=True)
class Isolated:
    """What stands in the safety ground: its kind, and what is known of it."""

    kind: Isolation | None
    rating: Amp | None
    closes: bool | None
    watched: bool | None
    transformer: Watt | None
    distance: Metre | None


@dataclass(frozen=True, slots=True)
class Changeover:
    """How sources change: its kind, what it does, and the sources it chooses from."""

    kind: str
    interlocked: bool | None
    breaks_first: bool | None
    neutral: bool | None
    chooses: Transfer | None


@dataclass(frozen=True, slots=True)
class Bonds:
    """Where neutral meets safety ground aboard; words of the fields, empty where not known."""

    panel: bool | None
    inverter: str
    generator: str


@dataclass(frozen=True, slots=True)
class OnInverter:
    """What the AC side says of the inverter: wave, warmest air in °C, input limit in A, circuit."""

    wave: str
    air: Celsius | None
    limit: Amp | None
    circuit: str


@dataclass(frozen=True, slots=True)
class Item:
    """One appliance of a circuit, with its own id, its plate, and whether it is planned to run."""

    ident: str
    appliance: Appliance
    circuit: str
    leg: str
    plate: Plate | None
    planned: bool
    inverter: bool

    @property
    def on_leg(self) -> Appliance:
        """What one leg carries of it: half its watts where it stands across two."""
        if self.leg != BOTH:
            return self.appliance
        return replace(self.appliance, watts=Watt(self.appliance.watts / 2))


@dataclass(frozen=True, slots=True)
class AcCircuit:
    """One AC circuit as stated; ``outlets_open`` is None where not known and 0 where never, A.

    ``unknown`` are its entries whose watts are not known, and ``planned`` whether it runs with the
    rest. ``insulation`` is in °C, ``bundle`` and ``outlets`` are counts, ``outlet_rating`` is in A.
    """

    ident: str
    name: str
    supply: str
    breaker: Amp | None
    poles: int | None
    size: Size | None
    insulation: int | None
    bundle: int | None
    engine_space: bool
    place: str
    outlets: int | None
    outlet_rating: Amp | None
    outlets_open: Amp | None
    leg: str
    items: tuple[Item, ...]
    unknown: tuple[str, ...] = ()
    planned: bool = True

    @property
    def unknown_words(self) -> str:
        """Its entries whose watts are not known, with its id; empty where all are."""
        return (
            f"{words(quoted(one) for one in self.unknown)} of {self.ident}" if self.unknown else ""
        )


@dataclass(frozen=True, slots=True)
class Record:
    """A result as a licensed person gave it."""

    ident: str
    name: str
    found: str
    result: str
    person: str
    date: str
    note: str


@dataclass(frozen=True, slots=True)
class ShorePlan:
    """The alternating-current side of a plan."""

    service: Service | None
    dock: Service | None
    inlets: int
    feeding: str
    one_phase: bool
    feed: Feed
    main: MainBreaker
    leakage: Leakage
    changeover: Changeover
    polarity: bool | None
    isolated: Isolated
    bonds: Bonds
    on_inverter: OnInverter
    generator: Watt | None
    abroad: Service | None
    circuits: tuple[AcCircuit, ...]
    records: tuple[Record, ...]

    @property
    def items(self) -> tuple[Item, ...]:
        """Every appliance, in the order of the circuits."""
        return tuple(item for circuit in self.circuits for item in circuit.items)

    @property
    def branches(self) -> tuple[AcCircuit, ...]:
        """Every circuit but the one that is the main itself."""
        return tuple(one for one in self.circuits if one.supply != "inlet")

    @property
    def inlet(self) -> AcCircuit | None:
        """The circuit from inlet to main, None where none is listed."""
        return next((one for one in self.circuits if one.supply == "inlet"), None)

    @property
    def planned(self) -> frozenset[str]:
        """Ids of the appliances planned to run together."""
        return frozenset(item.ident for item in self.items if item.planned)

    @property
    def stated(self) -> bool:
        """True once anything of it was entered."""
        return self.service is not None or bool(self.circuits)
