"""A mains charger: what it asks of the inlet, and how large it should be."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.charging.tables import CHARGER_SHARE
from engine.derate import Derate, derated
from engine.estimate import Estimate
from engine.problem import Problem
from engine.source import common_practice
from engine.units import Amp, AmpHour, Share, Volt, Watt, said

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry

EFFICIENCY: Final = Share(0.85)
"""DC over AC power: 0.80 to 0.94."""
CORRECTED: Final = Share(1.0)
"""Power factor of a charger that corrects it."""
INLET: Final = common_practice("a charger gives way to what else runs on the inlet")


@dataclass(frozen=True, slots=True)
class Charger:
    """A charger: ``marked`` current (A), ``efficiency`` and ``power_factor`` (1).

    A charger that does not correct its power factor has 0.65 to 0.8.
    """

    marked: Amp
    efficiency: Share = EFFICIENCY
    power_factor: Share = CORRECTED

    def __post_init__(self) -> None:
        if not self.marked > 0:
            raise Problem(
                "marked", f"A charger of {said(self.marked)} A gives nothing.", "Enter 40 A."
            )
        for name in ("efficiency", "power_factor"):
            value = getattr(self, name)
            if not 0 < value <= 1:
                raise Problem(
                    name, f"{said(value)} is not a share.", "Enter more than 0 and at most 1."
                )


def ac_watts(charger: Charger, current: Amp, volts: Volt) -> Watt:
    """Return the power a charger takes from the dock.

    Parameters
    ----------
    charger : Charger
        As fitted.
    current : Amp
        Given to the bank and the loads. [A]
    volts : Volt
        Of the bank while it charges. [V]

    Returns
    -------
    Watt
        Taken from the inlet. [W]

    Examples
    --------
    >>> round(ac_watts(Charger(Amp(40.0)), Amp(40.0), Volt(14.4)))
    678
    """
    return Watt(current * volts / charger.efficiency)


def ac_current(charger: Charger, current: Amp, volts: Volt, mains: Volt) -> Amp:
    """Return the current a charger takes from the dock.

    Parameters
    ----------
    charger : Charger
        As fitted.
    current : Amp
        Given to the bank and the loads. [A]
    volts : Volt
        Of the bank while it charges. [V]
    mains : Volt
        Of the dock. [V]

    Returns
    -------
    Amp
        Of the inlet. [A]

    Examples
    --------
    >>> round(ac_current(Charger(Amp(40.0)), Amp(40.0), Volt(14.4), Volt(120.0)), 1)
    5.6
    """
    return Amp(ac_watts(charger, current, volts) / (charger.power_factor * mains))


def output(
    charger: Charger, volts: Volt, mains: Volt, inlet: Amp
) -> tuple[Amp, tuple[Derate, ...]]:
    """Return what a charger gives behind an inlet, and why it is less than marked.

    Parameters
    ----------
    charger : Charger
        As fitted.
    volts : Volt
        Of the bank while it charges. [V]
    mains : Volt
        Of the dock. [V]
    inlet : Amp
        What the inlet has over, after the other AC loads. [A]

    Returns
    -------
    tuple of Amp and tuple of Derate
        Given to the bank and the loads. [A]

    Examples
    --------
    >>> output(Charger(Amp(40.0)), Volt(14.4), Volt(120.0), Amp(30.0))
    (40.0, ())
    """
    asked = ac_current(charger, charger.marked, volts, mains)
    if inlet >= asked:
        return charger.marked, ()
    why = f"the inlet has {said(max(inlet, 0.0))} A over and {said(asked)} A are asked"
    lines = (Derate("inlet", max(inlet, 0.0) / asked, why, INLET),)
    return Amp(derated(charger.marked, lines)), lines


def size_for(chemistry: Chemistry, capacity: AmpHour, load: Amp) -> Estimate:
    """Return how large a charger a bank asks for.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    capacity : AmpHour
        Of the bank. [Ah]
    load : Amp
        What runs while it charges. [A]

    Returns
    -------
    Estimate
        A share of the capacity, and the load beside it. [A]

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> size_for(CHEMISTRIES["agm"], AmpHour(440.0), Amp(6.0)).likely
    138.0
    """
    low, likely, high = CHARGER_SHARE[chemistry.name]
    return Estimate(
        low * capacity + load, likely * capacity + load, high * capacity + load, "default"
    )
