"""What a bank lives and weighs. Typical figures of the laboratory: a boat's bank may do worse."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.batteries.tables import CYCLES_AT_HALF, CYCLES_LEAD, CYCLES_LITHIUM, MASS
from engine.batteries.temperature import between
from engine.batteries.voltage import HALF, blocks
from engine.estimate import Estimate
from engine.problem import Problem
from engine.units import AmpHour, Share, Volt, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry


def cycle_life(chemistry: Chemistry, depth: Share) -> float:
    """Return the cycles until a bank has 80 % of its capacity.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    depth : Share
        Of every cycle, above 0 and at most 1. [1]

    Returns
    -------
    float
        Typical. [1]

    Raises
    ------
    Problem
        If the depth is no share of the bank.

    Notes
    -----
    How the cycles fall with depth is the cycling table's; how many there are is scaled to the
    typical number at half depth. Shallower than the table, cycles times depth stay the same.

    References
    ----------
    .. [1] NREL System Advisor Model, default cycling tables.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> [round(cycle_life(CHEMISTRIES["flooded"], Share(d)), -1) for d in (0.3, 0.5, 1.0)]
    [1270.0, 800.0, 250.0]
    """
    if not 0 < depth <= 1:
        raise Problem(
            "depth", f"{said(depth * 100)} % is no depth of a cycle.", "Enter 1 to 100 %."
        )
    rows = (CYCLES_LEAD if chemistry.lead else CYCLES_LITHIUM).rows
    shallowest = min(rows)
    cycles = between(rows, max(depth, shallowest)) * max(shallowest / depth, 1.0)
    return cycles / between(rows, HALF) * CYCLES_AT_HALF[chemistry.name]


def lifetime_charge(chemistry: Chemistry, capacity: AmpHour, depth: Share) -> AmpHour:
    """Return the ampere-hours a bank gives in its life.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    capacity : AmpHour
        When new. [Ah]
    depth : Share
        Of every cycle, above 0 and at most 1. [1]

    Returns
    -------
    AmpHour
        ``cycles × depth × capacity``. [Ah]
    """
    return AmpHour(cycle_life(chemistry, depth) * depth * capacity)


def mass(chemistry: Chemistry, capacity: AmpHour, nominal_volts: Volt) -> Estimate:
    """Return what a bank weighs.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    capacity : AmpHour
        At the system's volts. [Ah]
    nominal_volts : Volt
        Of the system: 12, 24 or 48; a lithium pack's label does as well. [V]

    Returns
    -------
    Estimate
        Typical. [kg]

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> round(mass(CHEMISTRIES["lithium"], AmpHour(280.0), Volt(12.8)).likely)
    34
    """
    energy = capacity * blocks(chemistry, nominal_volts) * chemistry.block_volts / 1000
    return Estimate(*MASS[chemistry.name], "default").scaled(energy)
