"""Volts at rest and internal resistance: what a bank shows, and how far it sags."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.batteries.tables import (
    RESISTANCE_GROWS,
    RESTING_ABOVE,
    RESTING_FLOODED,
    RESTING_LITHIUM,
)
from engine.batteries.temperature import RATED, between
from engine.units import AmpHour, Celsius, Ohm, Share, Volt, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry

BLOCK: Final = Volt(12.0)
"""Volts of the system that one tabled block serves, V."""
SURFACE: Final = Share(0.95)
"""Charge above which a lithium cell shows what the charger left on it; gone in minutes of load."""
HALF: Final = Share(0.5)
LOW: Final = Share(0.2)
FLAT: Final = (Share(0.3), Share(0.9))
"""Charge between which a lithium bank's volts hardly change."""
WHOLE: Final = 0.01
"""How near a whole number of blocks a labelled voltage must come."""


def blocks(chemistry: Chemistry, nominal_volts: Volt) -> float:
    """Return how many tabled blocks stand in series.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    nominal_volts : Volt
        Of the system, such as 24, or of the pack as labelled, such as 25.6. [V]

    Returns
    -------
    float
        Not whole where the bank has other blocks. [1]

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> [blocks(CHEMISTRIES["lithium"], Volt(v)) for v in (12.0, 12.8, 48.0, 51.2)]
    [1.0, 1.0, 4.0, 4.0]
    """
    own = nominal_volts / chemistry.block_volts
    return own if abs(own - round(own)) < WHOLE else nominal_volts / BLOCK


def open_circuit(chemistry: Chemistry, charge: Share, nominal_volts: Volt) -> Volt:
    """Return the volts of a rested bank.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    charge : Share
        State of charge, 0 to 1. [1]
    nominal_volts : Volt
        Of the system: 12, 24 or 48; a lithium pack's label does as well. [V]

    Returns
    -------
    Volt
        After hours of rest, near 25 °C. [V]

    Notes
    -----
    Straight between the rows. Lithium volts were taken at a 20-hour discharge, so a rested pack
    shows 0.05 to 0.1 V more; above 95 % its row at 95 % counts. Between 30 and 90 % they say
    nothing of a lithium bank's charge.

    References
    ----------
    .. [1] BCI, open-circuit volts of a flooded battery, as reprinted.
    .. [2] PyBaMM, Prada 2013 parameters, C/20.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> open_circuit(CHEMISTRIES["flooded"], Share(0.5), Volt(24.0))
    24.48
    """
    if chemistry.lead:
        block = between(RESTING_FLOODED.rows, charge) + RESTING_ABOVE[chemistry.name]
    else:
        block = between(RESTING_LITHIUM.rows, min(charge, SURFACE))
    return Volt(block * blocks(chemistry, nominal_volts))


def resting_caution(chemistry: Chemistry, charge: Share) -> str | None:
    """Return the warning where volts at rest cannot tell the charge.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    charge : Share
        State of charge, 0 to 1. [1]

    Returns
    -------
    str or None
        A sentence for lithium from 30 to 90 %; None where the volts do tell.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> resting_caution(CHEMISTRIES["flooded"], Share(0.5)) is None
    True
    """
    if chemistry.lead or not FLAT[0] <= charge <= FLAT[1]:
        return None
    low, high = (between(RESTING_LITHIUM.rows, end) for end in FLAT)
    return (
        f"From 30 to 90 % a lithium bank's volts move by less than {said(high - low, 2)} V on a "
        "12 V system: count ampere-hours, never read its charge from the volts."
    )


def resistance(
    chemistry: Chemistry,
    capacity: AmpHour,
    nominal_volts: Volt,
    charge: Share = HALF,
    temperature: Celsius = RATED,
) -> Ohm:
    """Return the internal resistance of a bank.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    capacity : AmpHour
        Of the whole bank at the system's volts. [Ah]
    nominal_volts : Volt
        Of the system: 12, 24 or 48; a lithium pack's label does as well. [V]
    charge : Share
        State of charge, 0 to 1. [1]
    temperature : Celsius
        Of the cells. [°C]

    Returns
    -------
    Ohm
        Typical, of a bank in health. [Ω]

    Notes
    -----
    Falls as the capacity grows, rises with the blocks in series. Lead rises in a straight line
    from half charge to 1.5 times at 20 % and on below; every chemistry from 25 °C to 1.75 times
    at 0 °C and on below.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> resistance(CHEMISTRIES["flooded"], AmpHour(400.0), Volt(12.0))
    0.0015
    """
    base = chemistry.milliohms.likely / 1000 * 100 / capacity * blocks(chemistry, nominal_volts)
    low = RESISTANCE_GROWS["lead at 20 % charge"] - 1
    emptied = low * max(HALF - charge, 0.0) / (HALF - LOW) if chemistry.lead else 0.0
    cold = (RESISTANCE_GROWS["at 0 °C"] - 1) * max(RATED - temperature, 0.0) / RATED
    return Ohm(base * (1 + emptied) * (1 + cold))
