"""What a rested bank's volts say of its charge."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.voltage import open_circuit
from engine.units import Share

if TYPE_CHECKING:
    from engine.plan.parts import Bank
    from engine.units import Volt

STEPS: Final = 36
LEAST: Final = Share(0.1)
"""Charge from which the curve is shown: below it no bank should be."""


def resting_curve(bank: Bank, steps: int = STEPS) -> tuple[tuple[Share, Volt], ...]:
    """Return charge and volts at rest, from a tenth to full.

    Parameters
    ----------
    bank : Bank
        As stated.
    steps : int
        How many between the ends. [1]

    Returns
    -------
    tuple
        Shape ``(steps + 1, 2)``: charge, rising, and volts. [1, V]
    """
    kind = CHEMISTRIES[bank.chemistry]
    charges = (Share(LEAST + (1 - LEAST) * n / steps) for n in range(steps + 1))
    return tuple((one, open_circuit(kind, one, bank.volts)) for one in charges)
