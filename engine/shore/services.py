"""What docks offer, and which plugs go together."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.finding import Rule, Verdict, meets
from engine.problem import Problem, quoted
from engine.source import Source, common_practice
from engine.units import Amp, Share, Volt, said, words

WEAK: Final = Share(0.9)
"""Share of the nominal volts that a weak dock still gives."""
AMERICAN: Final = Volt(150.0)
"""Volts of a leg below which a service is North American."""
WEAK_DOCK: Final = Rule(
    "weak dock",
    "a supply may sink to nine tenths of its nominal volts and still count as usual",
    Source("EN 50160", "as commonly read", "plus or minus 10 %", typical=True),
)
PLUGS: Final = Rule(
    "plugs",
    "a plug, its volts and its hertz belong together, and no adaptor makes them so",
    Source(
        "IEC 60309 and NEMA locking forms", "common", "shape by volts and amperes", typical=True
    ),
)
CORD_GUARDED: Final = Rule(
    "cord guarded",
    "the dock's breaker is no larger than the cord and inlet it feeds",
    common_practice("a thin cord behind a large breaker burns first"),
)


@dataclass(frozen=True, slots=True)
class Service:
    """A dock's offer: nominal V, Hz, A on each live conductor, live legs, and the plug's form."""

    name: str
    volts: Volt
    hertz: float
    rating: Amp
    legs: int
    plug: str

    def __post_init__(self) -> None:
        if not 100 <= self.volts <= 250:
            raise Problem(
                "service.volts",
                f"No dock service for small craft has {said(self.volts)} V.",
                "Enter 120 or 230 V.",
            )
        if not 0 < self.rating <= 200:
            raise Problem(
                "service.rating",
                f"{said(self.rating)} A is no rating of a dock service.",
                "Enter what the dock breaker is marked, such as 30 A.",
            )

    @property
    def american(self) -> bool:
        """True where North American rules are asked of it: 120 V a leg."""
        return self.volts < AMERICAN

    @property
    def weak_volts(self) -> Volt:
        """What a weak dock still gives, V."""
        return Volt(self.volts * WEAK)


_LOCKING: Final = "locking, {} pins"
_SLEEVE: Final = "pin and sleeve, {} pins"

SERVICES: Final = {
    one.name: one
    for one in (
        Service("30 A 120 V", Volt(120.0), 60, Amp(30.0), 1, _LOCKING.format(3)),
        Service("50 A 120 V", Volt(120.0), 60, Amp(50.0), 1, _LOCKING.format(3)),
        Service("50 A 125/250 V", Volt(120.0), 60, Amp(50.0), 2, _LOCKING.format(4)),
        Service("100 A 125/250 V", Volt(120.0), 60, Amp(100.0), 2, _SLEEVE.format(4)),
        Service("16 A 230 V", Volt(230.0), 50, Amp(16.0), 1, _SLEEVE.format(3)),
        Service("32 A 230 V", Volt(230.0), 50, Amp(32.0), 1, _SLEEVE.format(3)),
        Service("63 A 230 V", Volt(230.0), 50, Amp(63.0), 1, _SLEEVE.format(3)),
    )
}
"""The usual services by name. Volts are those of one leg to neutral."""


def service(name: str) -> Service:
    """Return a usual service.

    Parameters
    ----------
    name : str
        Such as ``30 A 120 V``.

    Raises
    ------
    Problem
        If no dock offers it.

    Examples
    --------
    >>> service("50 A 125/250 V").legs
    2
    """
    if name not in SERVICES:
        raise Problem(
            "service", f"{quoted(name)} is no dock service.", f"Choose {words(SERVICES, 'or')}."
        )
    return SERVICES[name]


@dataclass(frozen=True, slots=True)
class Crossing:
    """Whether a dock's outlet may feed an inlet, why, and the rule."""

    verdict: Verdict
    words: str
    rule: Rule = PLUGS


def crossing(dock: Service, inlet: Service) -> Crossing:
    """Return whether a dock's outlet may feed an inlet at all.

    Parameters
    ----------
    dock : Service
        What the dock offers.
    inlet : Service
        What the boat has.

    Returns
    -------
    Crossing
        Stop where it cannot be crossed, should where a listed adaptor is needed.

    Examples
    --------
    >>> crossing(service("16 A 230 V"), service("30 A 120 V")).verdict.value
    'stop'
    >>> crossing(service("30 A 120 V"), service("50 A 125/250 V")).verdict.value
    'should'
    """
    if (dock.volts, dock.hertz) != (inlet.volts, inlet.hertz):
        return Crossing(
            Verdict.STOP,
            f"The dock gives {said(dock.volts)} V at {said(dock.hertz)} Hz, the inlet is for "
            f"{said(inlet.volts)} V at {said(inlet.hertz)} Hz: no plug crosses them.",
        )
    if not meets(dock.rating, inlet.rating):
        return Crossing(
            Verdict.SHOULD,
            f"The dock's {said(dock.rating)} A breaker does not guard a cord and inlet of "
            f"{said(inlet.rating)} A; only a listed adaptor with a breaker of its own does.",
            CORD_GUARDED,
        )
    if dock.name == inlet.name:
        return Crossing(Verdict.FINE, f"{dock.name} fits {inlet.name}.")
    if dock.plug == inlet.plug and dock.rating == inlet.rating:
        return Crossing(Verdict.FINE, "Both have one form, volts and amperes.")
    one_phase = " Both legs are then one phase and 240 V loads do not run."
    return Crossing(
        Verdict.SHOULD,
        f"Only by a listed one-piece adaptor; the whole boat then lives on "
        f"{said(dock.rating)} A{' a leg' if dock.legs == 2 else ''}."
        f"{one_phase if dock.legs < inlet.legs else ''}",
    )


@dataclass(frozen=True, slots=True)
class Split:
    """Most that each inlet behind a splitter may take, and all of them together, A."""

    each: tuple[Amp, ...]
    together: Amp


def split(dock: Service, inlets: tuple[Service, ...]) -> Split:
    """Return what the inlets behind one splitter may take.

    Parameters
    ----------
    dock : Service
        One outlet; with two legs, inlets take turns on them.
    inlets : tuple of Service
        One or two, shape ``(n,)``.

    Raises
    ------
    Problem
        If there is no inlet, or more than two.

    Examples
    --------
    >>> split(service("50 A 125/250 V"), (service("30 A 120 V"), service("30 A 120 V")))
    Split(each=(30.0, 30.0), together=60.0)
    >>> split(service("50 A 120 V"), (service("30 A 120 V"), service("30 A 120 V"))).together
    50.0
    """
    if not 1 <= len(inlets) <= 2:
        raise Problem(
            "inlets", f"A splitter feeds one or two inlets, not {len(inlets)}.", "State each inlet."
        )
    each = tuple(Amp(min(dock.rating, inlet.rating)) for inlet in inlets)
    legs_used = min(dock.legs, len(inlets))
    return Split(each, Amp(min(sum(each), dock.rating * legs_used)))
