"""The shore cord and the feed behind the inlet: volts lost with the conductor hot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.conductors.drop import loop_drop
from engine.conductors.resistance import COPPER_AT_20, resistance, source_of
from engine.conductors.sizes import METRIC, read_size
from engine.finding import Rule
from engine.problem import Problem
from engine.shore.tables import LEAST_CORD, RESISTANCE_PLAIN
from engine.source import common_practice
from engine.units import Amp, Celsius, Metre, OhmPerKm, Share, Volt, said

if TYPE_CHECKING:
    from engine.conductors.sizes import Size
    from engine.source import Source

HOT: Final = Celsius(75.0)
"""A cord's copper at full load, °C."""
ALLOWED: Final = Share(0.05)
"""Share of the nominal volts that cord and feed may lose together."""
FEED_DROP: Final = Rule(
    "cord drop",
    "cord and feed together lose no more than 5 % of the nominal volts",
    common_practice("3 % for the cord, 5 % to the farthest outlet"),
)
CORD_SIZE: Final = Rule(
    "cord size", "a shore cord is no thinner than its service asks", LEAST_CORD.source
)


@dataclass(frozen=True, slots=True)
class Cord:
    """One part of the way from the dock: m one way, size, and copper's temperature in °C."""

    run: Metre
    size: Size
    temperature: Celsius = HOT

    def __post_init__(self) -> None:
        if self.run <= 0:
            raise Problem("length", f"{said(self.run)} m is no cord.", "Enter such as 15 m.")


def source_of_cord(size: Size) -> Source:
    """Return where a cord's resistance comes from."""
    return RESISTANCE_PLAIN.source if size.catalogue == METRIC else source_of(size)


def cord_resistance(size: Size, temperature: Celsius) -> OhmPerKm:
    """Return the resistance of one conductor of a cord.

    Parameters
    ----------
    size : Size
        A metric cord is plain copper; an AWG or SAE cord is taken as coated.
    temperature : Celsius
        Of the copper. [°C]

    Returns
    -------
    OhmPerKm
        At that temperature. [Ω/km]

    References
    ----------
    .. [1] IEC 60228:2004, table 3, class 5, plain; 0.00393 per degree at 20 °C.
    .. [2] NFPA 70 (NEC), chapter 9, table 8, coated.

    Examples
    --------
    >>> cord_resistance(read_size("2.5 mm2"), Celsius(20.0))
    7.98
    """
    if size.catalogue != METRIC:
        return resistance(size, temperature)
    return OhmPerKm(RESISTANCE_PLAIN[size.name] * (1 + COPPER_AT_20 * (temperature - 20)))


def cord_drop(current: Amp, cord: Cord) -> Volt:
    """Return the volts a cord loses, out by the live conductor and back by the neutral.

    Parameters
    ----------
    current : Amp
        Of one live conductor, the neutral carrying the same. [A]
    cord : Cord
        Its length, size and temperature.

    Returns
    -------
    Volt
        ``2 L R I``. [V]

    Examples
    --------
    >>> cord_drop(Amp(30.0), Cord(Metre(15.24), read_size("10 AWG")))
    3.87
    """
    return loop_drop(current, cord.run, cord_resistance(cord.size, cord.temperature))


def feed_drop(current: Amp, parts: tuple[Cord, ...]) -> Volt:
    """Return the volts lost from the dock to the panel.

    Parameters
    ----------
    current : Amp
        The same in every part. [A]
    parts : tuple of Cord
        Dock to inlet, inlet to panel, shape ``(n,)``.

    Returns
    -------
    Volt
        Of all the parts. [V]
    """
    return Volt(sum(cord_drop(current, part) for part in parts))


def thick_enough(size: Size, rating: Amp) -> bool | None:
    """Return whether a cord is no thinner than its service asks, or None where no row says.

    Parameters
    ----------
    size : Size
        Of its live conductors.
    rating : Amp
        Of the service. [A]

    Examples
    --------
    >>> thick_enough(read_size("12 AWG"), Amp(30.0)), thick_enough(read_size("10 AWG"), Amp(30.0))
    (False, True)
    """
    if round(rating) not in LEAST_CORD:
        return None
    return size.area >= read_size(LEAST_CORD[round(rating)]).area
