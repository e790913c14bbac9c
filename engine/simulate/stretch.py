"""A stretch of a run in which nothing changed, and the charges that flowed in it."""

from __future__ import annotations

from typing import Final, NamedTuple

LEAST: Final = 0.05
"""Ampere-hours below which what was curtailed or lacking is only noise of the arithmetic."""


def heard(charge: float) -> float:
    """Return a charge, or 0 where it is too small to be told.

    Parameters
    ----------
    charge : float
        Curtailed or lacking. [Ah]

    Returns
    -------
    float
        As it is from 0.05 Ah on. [Ah]

    Examples
    --------
    >>> heard(6.3e-17), heard(0.4)
    (0.0, 0.4)
    """
    return charge if charge >= LEAST else 0.0


class Stretch(NamedTuple):
    """A stretch of a run in which nothing changed.

    ``time`` it lasts (h); both wells before and after (Ah); what all loads ``asked``, the ``load``
    still connected, what sources without an engine had ``free``, and the engine's (A); ``short``
    where the bank could not give what was wanted of it; ``dock``, what of the free gives no more
    than is asked (A).
    """

    time: float
    before: float
    after: float
    asked: float
    load: float
    free: float
    engine: float
    short: bool = False
    dock: float = 0.0


class Flows(NamedTuple):
    """The charges of a stretch, Ah.

    ``put`` into the bank at its terminals, taken ``out`` of it, given by the ``engine``, what all
    other sources had over, and what the loads lacked.
    """

    put: float
    out: float
    engine: float
    curtailed: float
    unmet: float


def flows(one: Stretch, efficiency: float) -> Flows:
    """Return the charges of a stretch.

    Parameters
    ----------
    one : Stretch
        In which nothing changed.
    efficiency : float
        Ampere-hours kept of those put in. [1]

    Notes
    -----
    The sources without an engine come first; the engine gives what is still wanted.
    """
    time, change, load, free = one.time, one.after - one.before, one.load, one.free
    unmet = (one.asked - load) * time
    if free + one.engine >= load:
        put = change / efficiency
        used = load * time + put
        engine = max(used - free * time, 0.0) if one.engine else 0.0
        return Flows(put, 0.0, engine, max(free * time + engine - used, 0.0), unmet)
    if one.short:
        unmet += max((load - free - one.engine) * time + change, 0.0)
    return Flows(0.0, -change, one.engine * time, 0.0, unmet)
