"""What is said of the bank itself beside the days ahead."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.units import fixed

if TYPE_CHECKING:
    from engine.simulate.house import House

TOO_COLD: Final = "The cold forbids charging: this bank takes none until it is warmer."


def too_cold(house: House) -> bool:
    """Return whether a bank must not be charged as cold as it is.

    Parameters
    ----------
    house : House
        The bank.
    """
    return house.intake.limit <= 0


def both_figures(house: House) -> str:
    """Return what lead gives to the reserve, slowly and by the 20-hour figure.

    Parameters
    ----------
    house : House
        A lead bank.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> from engine.simulate.house import house_of
    >>> from engine.units import AmpHour, Share, Volt
    >>> flooded = CHEMISTRIES["flooded"]
    >>> both_figures(house_of(flooded, AmpHour(134.0), Volt(12.0), Share(1.0), Share(0.5)))
    'From full, 79 Ah to the reserve at this slow use; 67 Ah by the 20-hour figure on Bank.'
    """
    slow, rated = (one * (1 - house.reserve) for one in (house.full, house.capacity))
    return (
        f"From full, {fixed(slow, 0)} Ah to the reserve at this slow use; "
        f"{fixed(rated, 0)} Ah by the 20-hour figure on Bank."
    )
