"""One load, and the current it takes from the bank."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.estimate import Estimate
from engine.inverter.efficiency import ac_watts_of, dc_watts
from engine.units import Amp, Volt, Watt

if TYPE_CHECKING:
    from engine.inverter.efficiency import Curve

CONDITIONS: Final = {
    "anchor": "at anchor",
    "passage": "on passage",
    "dock": "at the dock",
    "unattended": "nobody aboard",
}
"""The four living conditions and how a sentence says them."""

SUPPLIES: Final = (
    ("dc", "DC: straight from the bank"),
    ("inverter", "AC through the inverter"),
    ("shore", "AC from shore only"),
    ("idle", "the inverter itself, on with nothing running"),
)

WINDOWS: Final = (
    ("any", "any time"),
    ("day", "by day"),
    ("night", "by night"),
)

BEHAVIOURS: Final = (
    ("current", "its current stays"),
    ("power", "its power stays: regulated gear takes more as volts fall"),
    ("resistance", "its resistance stays: heaters and lamps take less"),
)
"""What a load does when its volts fall."""

ALWAYS: Final = 24.0
"""Hours of a load that never rests."""


@dataclass(frozen=True, slots=True)
class Load:
    """One load as the plan states it.

    ``draw`` is the running current on the DC side, A, and ``watts`` the running power on the AC
    side, W; one of them is stated. ``hours`` and ``duty`` follow the order of CONDITIONS, and
    ``behaves`` is one of BEHAVIOURS or empty.
    """

    ident: str
    name: str
    supply: str = "dc"
    draw: Estimate | None = None
    watts: Estimate | None = None
    surge: float | None = None
    hours: tuple[Estimate | None, ...] = (None, None, None, None)
    duty: Estimate | None = None
    window: str = "any"
    essential: bool = False
    always_live: bool = False
    zone: str = ""
    circuit: str = ""
    behaves: str = ""

    @property
    def known_by(self) -> str:
        """How the draw is known."""
        stated = self.draw or self.watts
        return stated.known_by if stated else "unknown"

    def hours_in(self, condition: str) -> Estimate | None:
        """Return the hours a day in a condition, h; None where not known."""
        return self.hours[list(CONDITIONS).index(condition)]


@dataclass(frozen=True, slots=True)
class Supply:
    """What the bank side offers: nominal volts, and the inverter's curve where there is one."""

    volts: Volt
    curve: Curve | None = None


def bank_current(load: Load, supply: Supply) -> Estimate | None:
    """Return the current a running load takes from the bank.

    Parameters
    ----------
    load : Load
        Any supply; from shore only it takes none.
    supply : Supply
        Nominal volts and the inverter.

    Returns
    -------
    Estimate or None
        At nominal volts, with the inverter's loss at this very load. [A]

    Examples
    --------
    >>> lamp = Load("L01", "lamp", draw=Estimate.exact(0.5))
    >>> bank_current(lamp, Supply(Volt(12.0))).likely
    0.5
    """
    if load.supply == "shore":
        return Estimate.exact(0.0, load.known_by)
    if load.draw:
        return load.draw
    if load.watts is None:
        return None
    if load.supply in {"dc", "idle"}:
        return load.watts.scaled(1 / supply.volts)
    if supply.curve is None:
        return None
    low, likely, high = (
        dc_watts(supply.curve, Watt(watts)) / supply.volts
        for watts in (load.watts.low, load.watts.likely, load.watts.high)
    )
    return Estimate(low, likely, high, load.watts.known_by)


def ac_power(load: Load, supply: Supply) -> Watt | None:
    """Return the likely power of an AC load at its plug.

    Parameters
    ----------
    load : Load
        Through the inverter; one stated in amperes was read on the DC side.
    supply : Supply
        Nominal volts and the inverter.

    Returns
    -------
    Watt or None
        None for other loads, or where it cannot be said. [W]
    """
    if load.supply != "inverter":
        return None
    if load.watts:
        return Watt(load.watts.likely)
    if load.draw is None or supply.curve is None:
        return None
    return ac_watts_of(supply.curve, Watt(load.draw.likely * supply.volts))


def surge_current(load: Load, supply: Supply) -> Amp | None:
    """Return the greatest current while starting, on the DC side.

    Parameters
    ----------
    load : Load
        Its surge is stated in the unit of its draw.
    supply : Supply
        Nominal volts and the inverter.

    Returns
    -------
    Amp or None
        None where no surge is stated. [A]
    """
    if load.surge is None or load.supply == "shore":
        return None
    if load.draw or load.supply != "inverter":
        return Amp(load.surge if load.draw else load.surge / supply.volts)
    if supply.curve is None:
        return None
    return Amp(dc_watts(supply.curve, Watt(load.surge)) / supply.volts)


def running_hours(load: Load, condition: str) -> float | None:
    """Return how long a load really runs in a day: hours times duty.

    Parameters
    ----------
    load : Load
        Any supply.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    float or None
        None where the hours are not known. [h]
    """
    hours = load.hours_in(condition)
    if hours is None:
        return None
    return hours.likely * (load.duty.likely if load.duty else 1.0)
