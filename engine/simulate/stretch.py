"""A stretch of a run in which nothing changed, and the charges that flowed in it."""

from __future__ import annotations

from typing import NamedTuple


class Stretch(NamedTuple):
    """A stretch of a run in which nothing changed.

    ``time`` it lasts (h); both wells before and after (Ah); what all loads ``asked``, the ``load``
    still connected, what sources without an engine had ``free``, and the engine's (A); ``short``
    where the bank could not give what was wanted of it.
    """

    time: float
    before: float
    after: float
    asked: float
    load: float
    free: float
    engine: float
    short: bool = False


class Flows(NamedTuple):
    """The charges of a stretch, Ah.

    ``put`` into the bank at its terminals, taken ``out`` of it, given by the ``engine``, what other
    sources had over, and what the loads lacked.
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
