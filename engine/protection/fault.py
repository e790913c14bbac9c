"""Prospective short-circuit current: what a bank can drive through a fault."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.conductors.resistance import COPPER_AT_20
from engine.conductors.sizes import SAE, area_of_awg
from engine.problem import Problem
from engine.source import Source
from engine.units import Amp, Celsius, Metre, Ohm, Volt, said

if TYPE_CHECKING:
    from engine.conductors.sizes import Size

COPPER: Final = 1 / 58
"""Resistivity of annealed copper at 20 °C, Ω·mm²/m (IEC 60028)."""
COLD: Final = Celsius(20.0)
COLDEST: Final = Celsius(-100.0)
"""Below it the straight line of copper's resistance is not meant, °C."""

FAULT: Final = Source("Ohm's law", "direct current", "volts at rest / (bank + cable + joints)")


def cold_cable(run: Metre, size: Size, temperature: Celsius = COLD) -> Ohm:
    """Return the least resistance of a run, there and back.

    Parameters
    ----------
    run : Metre
        One way. [m]
    size : Size
        Of any catalogue.
    temperature : Celsius
        Of the copper. [°C]

    Returns
    -------
    Ohm
        Of the loop. [Ω]

    Raises
    ------
    Problem
        If the run is negative or the copper colder than the formula is meant for.

    Notes
    -----
    Plain copper of the size's area, without the 2 to 19 % that strands and tin add: the least a
    real conductor of that area has, so that a fault is never understated. Metric sizes too are
    taken by area here, and an SAE size at the full area of its gauge, which it may have.

    References
    ----------
    .. [1] IEC 60028 (1925): 1/58 Ω·mm²/m and 0.00393 per degree, at 20 °C.

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> cold_cable(Metre(5.0), read_size("14 AWG"))
    0.08286
    """
    if run < 0:
        raise Problem("run", f"A run of {said(run)} m is less than none.", "Enter 0 m or more.")
    if temperature < COLDEST:
        raise Problem(
            "temperature",
            f"Copper at {said(temperature)} °C is colder than the formula is meant for.",
            f"Enter {said(COLDEST)} °C or more.",
        )
    warmth = 1 + COPPER_AT_20 * (temperature - COLD)
    area = area_of_awg(size.name) if size.catalogue == SAE else size.area
    return Ohm(2 * run * COPPER / area * warmth)


def strings(each: Ohm, series: int, parallel: int) -> Ohm:
    """Return the resistance of a bank of equal batteries.

    Parameters
    ----------
    each : Ohm
        Of one battery. [Ω]
    series : int
        Batteries in each string. [1]
    parallel : int
        Strings abreast. [1]

    Returns
    -------
    Ohm
        Of the bank: series adds, parallel divides. [Ω]

    Raises
    ------
    Problem
        If there is not at least one of each.

    Examples
    --------
    >>> strings(Ohm(6 / 2400), 2, 3)
    0.0016667
    """
    if series < 1 or parallel < 1:
        raise Problem(
            "", f"A bank of {parallel} strings of {series} has no battery.", "Enter 1 or more."
        )
    return Ohm(each * series / parallel)


def fault_current(volts: Volt, bank: Ohm, cable: Ohm, joints: Ohm) -> Amp:
    """Return the current into a dead short at the end of a cable.

    Parameters
    ----------
    volts : Volt
        At rest: a full 12 V lead bank has about 12.8, not 12. [V]
    bank : Ohm
        Internal resistance of the bank. [Ω]
    cable : Ohm
        Of the loop, cold. [Ω]
    joints : Ohm
        Of every joint, switch and protection on the way. [Ω]

    Returns
    -------
    Amp
        Prospective; what interrupts it must be rated for at least this. [A]

    Raises
    ------
    Problem
        If volts or a resistance are negative, or nothing resists.

    Examples
    --------
    >>> fault_current(Volt(12.0), Ohm(0.001667), Ohm(0.0), Ohm(0.0))
    7199.
    """
    if volts < 0:
        raise Problem("volts", f"{said(volts)} V is less than none.", "Enter 0 V or more.")
    least = min(bank, cable, joints)
    if least < 0:
        raise Problem("", f"A resistance of {said(least)} Ω is less than none.", "Enter 0 or more.")
    whole = bank + cable + joints
    if whole <= 0:
        raise Problem(
            "bank_resistance",
            "Nothing resists: bank, cable and joints have 0 Ω together.",
            "Enter the bank's internal resistance, such as 3 mohm.",
        )
    return Amp(volts / whole)
