"""Do the batteries of a bank share its current evenly?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.check.path import bank_ohms
from engine.conductors.drop import loop_drop
from engine.conductors.resistance import resistance
from engine.feeders.parallel import EVEN, LIMIT, TakeOff, shares, uneven
from engine.finding import Finding, Severity, Verdict, meets
from engine.units import Amp, Celsius, Metre, Ohm, Share, said

if TYPE_CHECKING:
    from engine.plan.parts import Bank, Plan

LUG: Final = Ohm(0.0001)
"""One bolted lug, a typical figure within 0.05 to 0.3 mΩ."""
COPPER: Final = Celsius(20.0)
MENDS: Final = {
    TakeOff.ONE_END: "Take positive from the first battery and negative from the last.",
    TakeOff.DIAGONAL: "Use thicker links, or equal leads to common posts.",
    TakeOff.EQUAL_LEADS: "Make all leads alike, and replace the battery that differs.",
}


@dataclass(frozen=True, slots=True)
class BatteryShare:
    """Each battery's share, first to last; the link's resistance, Ω; the largest over even."""

    shares: tuple[Share, ...]
    link: Ohm
    each: Ohm
    uneven: float

    @property
    def even(self) -> bool:
        """True where no battery works much more than the others."""
        return meets(self.uneven, LIMIT)


@lru_cache(maxsize=64)
def shares_of(bank: Bank) -> BatteryShare | None:
    """Return how a bank's batteries share its current.

    Parameters
    ----------
    bank : Bank
        As stated; None comes back for a single string, or where links or take-off are not known.
    """
    whole = bank_ohms(bank, bank.charge)
    size, run = bank.link.size, bank.link.run
    if bank.strings < 2 or not bank.take_off or whole is None:
        return None
    if size is None or run is None:
        return None
    one_way = loop_drop(Amp(1.0), Metre(run.likely / 2), resistance(size, COPPER))
    link = Ohm(one_way + 2 * LUG)
    each = Ohm(whole * bank.strings)
    found = shares([each] * bank.strings, link, TakeOff(bank.take_off))
    return BatteryShare(found, link, each, uneven(found))


def battery_share(plan: Plan) -> list[Finding]:
    """Return the finding that one battery works more than the others, if so.

    Parameters
    ----------
    plan : Plan
        With its bank.
    """
    answer = shares_of(plan.bank) if plan.bank else None
    if answer is None or answer.even:
        return []
    most = max(answer.shares)
    place = answer.shares.index(most) + 1
    said_of = (
        f"Battery {place} of {len(answer.shares)} gives {said(most * 100, 2)} % of the current, "
        f"{said((answer.uneven - 1) * 100, 2)} % more than an even share: it wears out first."
    )
    mend = MENDS[TakeOff(plan.bank.take_off)] if plan.bank else ""
    return [Finding("bank.take_off", Verdict.SHOULD, Severity.SHOULD, said_of, mend, EVEN)]
