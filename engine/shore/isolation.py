"""Galvanic isolation: none, isolator or transformer, and what the green wire costs without."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from engine.finding import Finding, Rule, Severity, Verdict, Who, meets
from engine.problem import Problem
from engine.shore.leakage import EXEMPT
from engine.shore.panel import NEAR
from engine.shore.tables import ISOLATION_TRANSFORMER, ISOLATOR_BLOCKS
from engine.source import Source
from engine.units import Amp, Metre, Ohm, Volt, Watt, said

HOURS_A_YEAR: Final = 8760
ZINC: Final = 780.0
"""Charge a kilogram of zinc anode gives, Ah."""
ZINC_SOURCE: Final = Source("MIL-A-18001K", "as reprinted", "zinc, 780 Ah/kg")
OHM_FARADAY: Final = Source("Ohm's and Faraday's laws", "direct current", "I = U / R, m = I t / q")

CARRIES_FAULT: Final = Rule(
    "isolator rating",
    "an isolator is rated at least for the inlet, and carries its whole fault current",
    Source("ABYC A-28", "2008, as reprinted", "rating", typical=True),
)
STAYS_CLOSED: Final = Rule(
    "isolator fails closed",
    "an isolator is of the type that fails closed, or a monitor tells when it is open",
    Source("ABYC A-28", "2008, as reprinted", "fails closed, or status monitor"),
)
NEVER_OPENS: Final = Rule(
    "isolator never opens",
    "a failed isolator still carries fault current",
    Source("ISO 13297", "2020", "6.9"),
)
DEFEATED_BY: Final = (
    "leakage of alternating current in the safety ground, which holds its diodes open to "
    "galvanic current",
    "metal of a telephone, television or network cable to shore",
    "a second inlet without an isolator of its own",
    "a couple above what it blocks, such as magnesium with passive stainless, about 1.6 V",
)
"""What lets galvanic current past an isolator."""


class Isolation(StrEnum):
    """How the safety ground is kept from carrying galvanic current. It is never cut."""

    NONE = "none"
    ISOLATOR = "galvanic isolator"
    TRANSFORMER = "isolation transformer"


@dataclass(frozen=True, slots=True)
class GreenWire:
    """Galvanic current by the safety ground in A, and zinc it eats in a year, kg."""

    current: Amp
    zinc: float


def green_wire(drive: Volt, resistance: Ohm) -> GreenWire:
    """Return what the safety ground costs in zinc where nothing isolates it.

    Parameters
    ----------
    drive : Volt
        Between the boat's metal and its neighbours', by the safety ground. [V]
    resistance : Ohm
        Of the whole path, water included. [Ω]

    Returns
    -------
    GreenWire
        Current, and zinc for a whole year plugged in.

    Raises
    ------
    Problem
        If the resistance is not above zero or the volts are negative.

    References
    ----------
    .. [1] MIL-A-18001K: 780 Ah a kilogram.

    Examples
    --------
    >>> green_wire(Volt(0.35), Ohm(0.5))
    GreenWire(current=0.7, zinc=7.862)
    """
    if resistance <= 0:
        raise Problem(
            "resistance",
            f"{said(resistance)} Ω is no path through water.",
            "Enter such as 0.5 ohm.",
        )
    if drive < 0:
        raise Problem("drive", f"{said(drive)} V drives nothing.", "Enter such as 0.35 V.")
    current = Amp(drive / resistance)
    return GreenWire(current, current * HOURS_A_YEAR / ZINC)


def blocks(drive: Volt) -> bool | None:
    """Return whether an isolator blocks a galvanic voltage; None between low and high of a pair.

    Parameters
    ----------
    drive : Volt
        Between the boat's metal and its neighbours'. [V]

    Examples
    --------
    >>> [blocks(Volt(drive)) for drive in (0.35, 1.3, 1.6)]
    [True, None, False]
    """
    low, high = ISOLATOR_BLOCKS["two diodes in series"]
    if meets(drive, low):
        return True
    return False if drive > high else None


@dataclass(frozen=True, slots=True)
class Isolator:
    """A galvanic isolator: rating in A, whether it fails closed, whether it is watched."""

    rating: Amp
    fails_closed: bool
    monitored: bool = False

    def __post_init__(self) -> None:
        if self.rating <= 0:
            raise Problem(
                "isolator.rating",
                f"An isolator of {said(self.rating)} A is none.",
                "Enter what is marked on it, such as 30 A.",
            )


def judge_isolator(isolator: Isolator, inlet: Amp) -> tuple[Finding, ...]:
    """Return what is wrong with a galvanic isolator, gravest first.

    Parameters
    ----------
    isolator : Isolator
        As it is.
    inlet : Amp
        Rating of the inlet it belongs to. [A]
    """
    found = []
    if not meets(inlet, isolator.rating):
        found.append(
            _finding(
                Verdict.STOP,
                f"The isolator is rated {said(isolator.rating)} A, the inlet {said(inlet)} A.",
                f"An isolator for {said(inlet)} A or more, that carries the whole fault current.",
                CARRIES_FAULT,
            )
        )
    if not (isolator.fails_closed or isolator.monitored):
        found.append(
            _finding(
                Verdict.STOP,
                "The isolator may fail open unseen: then nothing carries a fault away.",
                "An isolator of the type that fails closed. Never a gap in the safety ground.",
                STAYS_CLOSED,
            )
        )
    return tuple(found)


def _finding(verdict: Verdict, text: str, mend: str, rule: Rule) -> Finding:
    return Finding(
        "shore.isolation", verdict, Severity.BEFORE_LEAVING, text, mend, rule, Who.LICENSED
    )


@dataclass(frozen=True, slots=True)
class Transformer:
    """What an isolation transformer brings aboard: each from low to high."""

    weight: tuple[float, float]
    no_load: tuple[Watt, Watt]
    inrush: tuple[Amp, Amp]
    exempts: bool
    rule: Rule = EXEMPT


def transformer(rating: Watt, volts: Volt, distance: Metre) -> Transformer:
    """Return the typical weight, loss and inrush of an isolation transformer.

    Parameters
    ----------
    rating : Watt
        Its VA, above zero. [W]
    volts : Volt
        Of its primary, above zero. [V]
    distance : Metre
        From the inlet, along the conductor. [m]

    Returns
    -------
    Transformer
        Weight in kg, no-load loss in W, inrush in A; whether it is near enough to stand in for
        leakage protection at the main.

    Raises
    ------
    Problem
        If rating or volts are not above zero.

    Examples
    --------
    >>> found = transformer(Watt(3600.0), Volt(120.0), Metre(2.0))
    >>> found.inrush, found.exempts
    ((240.0, 360.0), True)
    """
    if rating <= 0 or volts <= 0:
        raise Problem(
            "transformer",
            f"A transformer of {said(rating)} VA at {said(volts)} V is none.",
            "Enter such as 3600 VA at 120 V.",
        )
    current = rating / volts
    weight = ISOLATION_TRANSFORMER["weight, kg per kVA"]
    loss = ISOLATION_TRANSFORMER["no-load loss, W"]
    inrush = ISOLATION_TRANSFORMER["inrush, times its rated current"]
    return Transformer(
        (weight[0] * rating / 1000, weight[1] * rating / 1000),
        (Watt(loss[0]), Watt(loss[1])),
        (Amp(inrush[0] * current), Amp(inrush[1] * current)),
        meets(distance, NEAR),
    )
