"""Can a protection interrupt the fault: the computed current and the published minimum."""

from __future__ import annotations

from typing import Final

from engine.finding import Demand, Judgement, Rule, Verdict, governing, meets
from engine.protection.fault import FAULT
from engine.protection.kinds import VOLTS_RATED
from engine.protection.tables import MINIMUM_12_24, MINIMUM_32
from engine.source import Source
from engine.units import Amp, AmpHour, Volt, said

LIKE_24: Final = Volt(30.0)
LIKE_32: Final = Volt(35.0)
"""Most volts, nominal or at rest, that count as a system of 24 or 32 V, V."""
LARGEST_BANK: Final = AmpHour(500.0)
"""Capacity above which the published minimum no longer holds, Ah."""
LARGEST_CRANKING: Final = Amp(2200.0)
"""The same in cold-cranking amperes, A."""
LARGE: Final = Amp(10_000.0)
LARGEST_ASKED: Final = Amp(20_000.0)
"""What serves a bank whose maker states more than 10 kA, if rated so at 125 V DC, A."""

INTERRUPTS: Final = Rule(
    "interrupting rating",
    "a protection can interrupt the fault current that may reach it",
    FAULT,
)
MINIMUM: Final = Rule(
    "published minimum",
    "the interrupting rating is at least the published figure for the bank",
    MINIMUM_12_24.source,
)
MAKER: Final = Source(
    "ABYC E-11", "later edition, as quoted", "above 2200 cold-cranking A or 500 Ah"
)


def published_minimum(
    volts: Volt, cca: Amp | None, *, main: bool, capacity: AmpHour | None = None
) -> Amp | None:
    """Return the least interrupting rating a published table asks for.

    Parameters
    ----------
    volts : Volt
        Nominal volts of the system, or its volts at rest. [V]
    cca : Amp or None
        Cold-cranking amperes of all batteries together; unknown counts as the least row. [A]
    main : bool
        Whether the protection is a main or a branch.
    capacity : AmpHour, optional
        Of the bank. [Ah]

    Returns
    -------
    Amp or None
        Above 2200 cold-cranking A or 500 Ah the last row is the floor, and the battery maker's
        figure is asked for besides (``maker_minimum``). None above 32 V, where no row is. [A]

    References
    ----------
    .. [1] ABYC E-11, table V.A, as reprinted; the 32 V rows are typical.

    Examples
    --------
    >>> published_minimum(Volt(12.0), Amp(800.0), main=True)
    3000.0
    >>> published_minimum(Volt(48.0), Amp(800.0), main=True) is None
    True
    """
    if not meets(volts, LIKE_32):
        return None
    table = MINIMUM_12_24 if meets(volts, LIKE_24) else MINIMUM_32
    rows = tuple(table.rows.items())
    cranking = 0.0 if cca is None else cca
    row = next((cell for most, cell in rows if meets(cranking, most)), rows[-1][1])
    if is_large(cca, capacity):
        row = rows[-1][1]
    return Amp(row[0] if main else row[1])


def is_large(cca: Amp | None, capacity: AmpHour | None) -> bool:
    """Return whether a bank is beyond the published table, so that its maker is asked.

    Parameters
    ----------
    cca : Amp or None
        Cold-cranking amperes of all batteries together. [A]
    capacity : AmpHour or None
        Of the bank. [Ah]

    Examples
    --------
    >>> is_large(None, AmpHour(600.0)), is_large(Amp(800.0), None)
    (True, False)
    """
    strong = cca is not None and not meets(cca, LARGEST_CRANKING)
    return strong or (capacity is not None and not meets(capacity, LARGEST_BANK))


def maker_minimum(short_circuit: Amp) -> Amp:
    """Return what a large bank asks for, by the short-circuit current its maker states.

    Parameters
    ----------
    short_circuit : Amp
        As the battery's maker states it, of the whole bank. [A]

    Returns
    -------
    Amp
        That figure; above 10 kA a rating of 20 kA at 125 V DC serves. [A]

    References
    ----------
    .. [1] ABYC E-11, later edition, as quoted.

    Examples
    --------
    >>> maker_minimum(Amp(8000.0)), maker_minimum(Amp(14000.0))
    (8000.0, 20000.0)
    """
    return short_circuit if meets(short_circuit, LARGE) else LARGEST_ASKED


def asked(fault: Amp | None, minimum: Amp | None) -> Demand | None:
    """Return the greater of the computed fault current and the published minimum.

    Parameters
    ----------
    fault : Amp or None
        Computed. [A]
    minimum : Amp or None
        Published for the bank. [A]

    Returns
    -------
    Demand or None
        None where neither is known; its ``least`` is in amperes.

    Examples
    --------
    >>> asked(Amp(2400.0), Amp(3000.0)).rule.name
    'published minimum'
    """
    demands = []
    if fault is not None:
        words = f"the computed fault current of {said(fault, 4)} A"
        demands.append(Demand(INTERRUPTS, fault, words))
    if minimum is not None:
        words = f"the published minimum of {said(minimum, 4)} A"
        demands.append(Demand(MINIMUM, minimum, words))
    return governing(tuple(demands)) if demands else None


def enough(
    rating: Amp | None, fault: Amp | None, minimum: Amp | None, *, lithium: bool = False
) -> Judgement:
    """Return whether an interrupting rating is enough, and which figure governs.

    Parameters
    ----------
    rating : Amp or None
        Interrupting rating at the system's volts; None where not rated at them. [A]
    fault : Amp or None
        Computed fault current at the protection. [A]
    minimum : Amp or None
        Published for the bank. [A]
    lithium : bool
        Whether the bank is lithium: then the published minimum alone is no answer, since it
        goes by cranking amperes.

    Examples
    --------
    >>> enough(Amp(1000.0), Amp(2400.0), Amp(1500.0)).words
    'It interrupts 1000 A; the computed fault current of 2400 A governs.'
    """
    governs = asked(fault, minimum)
    if rating is None:
        words = "The protection is not rated to interrupt anything at these volts."
        return Judgement(Verdict.STOP, words, "Use one rated for the system's volts.", VOLTS_RATED)
    marked = f"It interrupts {said(rating, 4)} A"
    if governs is None or (lithium and fault is None and meets(governs.least, rating)):
        words = f"{marked}; the fault current is not known."
        mend = "State the bank's internal resistance, or the short-circuit current on its papers."
        return Judgement(Verdict.CANNOT_SAY, words, mend, INTERRUPTS)
    words = f"{marked}; {governs.words} governs."
    if meets(governs.least, rating):
        return Judgement(Verdict.FINE, words, "", governs.rule)
    mend = f"Use a protection that interrupts at least {said(governs.least, 4)} A."
    held = fault is not None and meets(fault, rating)
    return Judgement(Verdict.SHOULD if held else Verdict.STOP, words, mend, governs.rule)
