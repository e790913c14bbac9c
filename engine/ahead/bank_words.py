"""What is said of the bank itself beside the days ahead."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.units import fixed, said

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


def alone_words(days: float | None, longest: int) -> str:
    """Return how long the bank lasts without any charging, as a sentence.

    Parameters
    ----------
    days : float or None
        None where it lasts longer than that. [d]
    longest : int
        How many days were looked at. [d]

    Examples
    --------
    >>> alone_words(1.44, 60)
    'Without any charging the reserve is reached after 1.4 days.'
    >>> alone_words(0.0, 60)
    'The charge is at or below the reserve.'
    """
    if days is None:
        return f"Without any charging the reserve is not reached in {longest} days."
    if days <= 0:
        return "The charge is at or below the reserve."
    count = said(days, 2)
    return f"Without any charging the reserve is reached after {count} day{'s' * (count != '1')}."
