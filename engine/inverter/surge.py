"""Surge: what an appliance takes for a moment when it starts."""

from __future__ import annotations

from typing import Final

from engine.finding import Rule, meets
from engine.source import Source
from engine.table import Table
from engine.units import Watt

SURGE: Final = Table(
    title="Surge of an appliance over its running watts",
    key="class of appliance",
    value="low and high multiple",
    source=Source("handbook range", "no document", "milliseconds to a second", typical=True),
    rows={
        "heater": (1.0, 1.0),
        "filament lamp": (8.0, 12.0),
        "electronics": (1.0, 1.3),
        "brush motor": (2.0, 3.0),
        "induction motor": (3.0, 5.0),
        "mains compressor": (5.0, 7.0),
        "soft-start compressor": (2.0, 3.0),
        "electronic compressor": (1.0, 2.0),
        "microwave": (1.5, 2.0),
        "air conditioner": (4.0, 6.0),
    },
)

CARRIES_SURGE: Final = Rule(
    "surge",
    "the inverter's surge rating covers what starts while the rest runs",
    Source("inverter makers' sheets", "common", "surge rating", typical=True),
)


def surge_of(kind: str, running: Watt) -> Watt:
    """Return the typical surge of an appliance, at the high end of its class.

    Parameters
    ----------
    kind : str
        A class of the surge table.
    running : Watt
        What it takes once it runs. [W]

    Returns
    -------
    Watt
        For a moment. [W]

    Examples
    --------
    >>> surge_of("microwave", Watt(1050.0))
    2100.0
    """
    return Watt(running * SURGE[kind][1])


def carries_surge(surge_watts: Watt, surge_rating: Watt) -> bool:
    """Return whether an inverter can start a load.

    Parameters
    ----------
    surge_watts : Watt
        What starts, with all that already runs. [W]
    surge_rating : Watt
        Of the inverter, for at least as long as the start takes. [W]

    Examples
    --------
    >>> carries_surge(Watt(2100.0), Watt(4000.0)), carries_surge(Watt(4200.0), Watt(4000.0))
    (True, False)
    """
    return meets(surge_watts, surge_rating)
