"""Which two may not run together, and which one left off is enough."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

from engine.finding import meets
from engine.shore.appliances import current_at
from engine.shore.together import CONTINUOUS, check_rating, total
from engine.units import words

if TYPE_CHECKING:
    from engine.shore.appliances import Appliance
    from engine.units import Amp, Volt


def mends(
    loads: tuple[Appliance, ...], rating: Amp, volts: Volt, rated: Volt
) -> tuple[Appliance, ...]:
    """Return the appliances any one of which, left off, keeps the rest within a rating.

    Parameters
    ----------
    loads : tuple of Appliance
        All that may be on, shape ``(n,)``.
    rating : Amp
        Of the breaker or inlet. [A]
    volts : Volt
        At their plugs. [V]
    rated : Volt
        What their plates say. [V]

    Returns
    -------
    tuple of Appliance
        The largest first; none where all may run, or where one is not enough.

    Raises
    ------
    Problem
        If the rating is not above zero.
    """
    check_rating(rating, "rating")
    whole = total(loads, volts, rated)
    if meets(whole, rating):
        return ()
    found = [one for one in loads if meets(whole - current_at(one, volts, rated), rating)]
    return tuple(sorted(found, key=lambda one: one.watts, reverse=True))


def pairs_apart(
    loads: tuple[Appliance, ...], rating: Amp, volts: Volt, rated: Volt
) -> tuple[tuple[Appliance, Appliance], ...]:
    """Return the pairs that should not run at one time.

    With everything on, the rating is passed; with either of a pair off, it is not. Pairs that a
    person starts by hand and waits for go first, for those are easy to keep apart; without such,
    the two largest.

    Parameters
    ----------
    loads : tuple of Appliance
        All that may be on, shape ``(n,)``.
    rating : Amp
        Of the breaker or inlet. [A]
    volts : Volt
        At their plugs. [V]
    rated : Volt
        What their plates say. [V]

    Returns
    -------
    tuple of pairs
        None where all may run, or where no two answer to this.

    Examples
    --------
    >>> from engine.shore.appliances import read_appliances
    >>> from engine.units import Amp, Volt
    >>> loads = read_appliances("kettle 1000 W, charger 680 W, heater 750 W, microwave 1050 W")
    >>> pairs = pairs_apart(loads, Amp(25.0), Volt(120.0), Volt(120.0))
    >>> [(one.name, other.name) for one, other in pairs]
    [('microwave', 'kettle')]
    """
    found = mends(loads, rating, volts, rated)
    by_hand = [one for one in found if one.short]
    return tuple(combinations(by_hand if len(by_hand) > 1 else found[:2], 2))


def relief(loads: tuple[Appliance, ...], rating: Amp, volts: Volt, rated: Volt) -> str:
    """Return in one sentence what to leave off, and for how long that is enough.

    Parameters
    ----------
    loads : tuple of Appliance
        All that is on, shape ``(n,)``.
    rating : Amp
        Of the breaker or inlet. [A]
    volts : Volt
        At their plugs. [V]
    rated : Volt
        What their plates say. [V]

    Returns
    -------
    str
        Empty where all may run for hours.

    Examples
    --------
    >>> from engine.shore.appliances import read_appliances
    >>> from engine.units import Amp, Volt
    >>> loads = read_appliances("kettle 1000 W, charger 680 W, heater 750 W, microwave 1050 W")
    >>> relief(loads, Amp(25.0), Volt(120.0), Volt(120.0))
    'For minutes only, leave off the microwave, kettle, heater or charger; for hours, more.'
    >>> relief(loads, Amp(30.0), Volt(120.0), Volt(120.0))
    'For hours, leave off the microwave, kettle, heater or charger.'
    """
    check_rating(rating, "rating")
    whole = total(loads, volts, rated)
    if meets(whole, CONTINUOUS * rating):
        return ""
    order = sorted(loads, key=lambda one: one.watts, reverse=True)
    left = [(one.name, whole - current_at(one, volts, rated)) for one in order]
    hours = [name for name, rest in left if meets(rest, CONTINUOUS * rating)]
    more = f"leave off the {words(hours, 'or')}" if hours else "leave off more than one"
    if meets(whole, rating):
        return f"For hours, {more}."
    minutes = [
        name for name, rest in left
        if meets(rest, rating) and not meets(rest, CONTINUOUS * rating)
    ]  # fmt: skip
    if hours and minutes:
        return (
            f"Leave off the {words(hours, 'or')}; or, for minutes only, the {words(minutes, 'or')}."
        )
    if minutes:
        short = f"For minutes only, leave off the {words(minutes, 'or')}"
        return f"{short}; for hours, more."
    return f"{more[0].upper()}{more[1:]}."
