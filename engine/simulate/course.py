"""Where a bank goes under one steady current, in closed form: three ways, and when each one ends.

Charging is steady until the taper line, then the lack falls away exponentially. In a bank with two
wells the well at hand may fill first: then what overfills it goes to the bound one, so that limit
and taper alone say what flows in. Run dry, no more flows out than seeps back. Units: Ah, h, A into
the bank.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from math import exp, expm1, inf, log
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from engine.simulate.house import House

EDGE: Final = 1e-12
"""Relative distance at which a bank stands on an edge."""
HALVINGS: Final = 60


class Way(IntEnum):
    """How the charge goes: steadily, along the taper, or dry."""

    STEADY = 0
    TAPER = 1
    DRY = 2


@dataclass(frozen=True, slots=True)
class Bank:
    """The numbers of a bank that a step needs.

    ``full`` and ``top``, what both wells and the one at hand hold (Ah); ``limit``, the most charge,
    and ``largest``, the most discharge (A); ``efficiency`` (1); ``taper``, how fast the lack falls
    when tapering, ``rate`` of seeping, and ``seep``, how much seeps of a lack with the well at hand
    full (1/h); ``share`` at hand (1). Without wells, rate, seep and share are 0 and the top is 1.
    """

    full: float
    top: float
    limit: float
    largest: float
    efficiency: float
    taper: float
    rate: float
    share: float

    @property
    def two_wells(self) -> bool:
        """True where charge must seep."""
        return self.rate > 0

    @property
    def seep(self) -> float:
        """How much seeps of each ampere-hour of lack with the well at hand full, 1/h."""
        return self.rate * self.share


def bank_of(house: House) -> Bank:
    """Return the numbers a step needs.

    Parameters
    ----------
    house : House
        The house bank.
    """
    intake, wells = house.intake, house.wells
    return Bank(
        full=house.full,
        top=wells.most_available if wells else 1.0,
        limit=intake.limit * intake.capacity,
        largest=inf if house.largest is None else house.largest,
        efficiency=intake.efficiency,
        taper=intake.efficiency * intake.taper * intake.capacity / house.full,
        rate=wells.rate if wells else 0.0,
        share=wells.share if wells else 0.0,
    )


@dataclass(frozen=True, slots=True)
class Course:
    """A bank under one steady current: from ``total`` and ``hand`` (Ah), a way and its ``speed``.

    The speed of the steady way is in ampere-hours an hour into the store, of the others the rate of
    their exponential (1/h). ``brimming`` where the well at hand stays full meanwhile.
    """

    bank: Bank
    way: Way
    speed: float
    total: float
    hand: float
    brimming: bool = False

    def total_after(self, time: float) -> float:
        """Return what both wells hold.

        Parameters
        ----------
        time : float
            From the start. [h]

        Returns
        -------
        float
            Together. [Ah]
        """
        if self.way == Way.STEADY:
            return self.total + self.speed * time
        if self.way == Way.DRY:
            return self.total * exp(-self.speed * time)
        return self.bank.full - (self.bank.full - self.total) * exp(-self.speed * time)

    def hand_after(self, time: float) -> float:
        """Return what the well at hand holds, if no bound stops it.

        Parameters
        ----------
        time : float
            From the start. [h]

        Returns
        -------
        float
            As it was where there are no wells. [Ah]
        """
        bank = self.bank
        if not bank.two_wells or self.brimming or self.way == Way.DRY:
            return self.hand
        kept, seeped = exp(-bank.rate * time), -expm1(-bank.rate * time)
        if self.way == Way.STEADY:
            per_ampere = (seeped + bank.share * (bank.rate * time - seeped)) / bank.rate
            return self.hand * kept + self.total * bank.share * seeped + self.speed * per_ampere
        lack = bank.full - self.total
        return bank.top - (bank.top - self.hand) * kept - lack * tapering(bank, time)

    def time_to(self, level: float) -> float:
        """Return when both wells together hold so much.

        Parameters
        ----------
        level : float
            Together. [Ah]

        Returns
        -------
        float
            Infinite where they never do from now on. [h]
        """
        if self.way == Way.STEADY:
            ahead = (level - self.total) / self.speed if self.speed else inf
            return ahead if ahead >= 0 else inf
        if self.way == Way.DRY:
            start, end = self.total, level
        else:
            start, end = self.bank.full - self.total, self.bank.full - level
        return log(start / end) / self.speed if 0 < end <= start else inf

    def time_to_hand(self, level: float, most: float) -> float:
        """Return when the well at hand passes a level.

        Parameters
        ----------
        level : float
            In that well. [Ah]
        most : float
            How far to look. [h]

        Returns
        -------
        float
            Infinite where it stands on the same side at the end. [h]
        """
        above = self.hand_after(most) > level
        if above == (self.hand > level):
            return inf
        early, late = 0.0, most
        for _ in range(HALVINGS):
            middle = (early + late) / 2
            if (self.hand_after(middle) > level) == above:
                late = middle
            else:
                early = middle
        return late

    @property
    def taper_line(self) -> float:
        """What both wells hold where a steady charge begins to taper, Ah; infinite elsewhere."""
        if self.way != Way.STEADY:
            return inf
        return self.bank.full - self.speed / self.bank.taper


def tapering(bank: Bank, time: float) -> float:
    """Return how much less is at hand after a time of taper, for each ampere-hour of lack.

    Parameters
    ----------
    bank : Bank
        With two wells.
    time : float
        Of the step. [h]

    Returns
    -------
    float
        ``(seep − taper) (e^(−taper t) − e^(−rate t)) / (rate − taper)``. [1]
    """
    apart = (bank.rate - bank.taper) * time
    mean = time if abs(apart) < EDGE else time * -expm1(-apart) / apart
    return (bank.seep - bank.taper) * exp(-bank.taper * time) * mean


def course(bank: Bank, total: float, hand: float, net: float) -> Course:
    """Return the way a bank takes under a steady current.

    Parameters
    ----------
    bank : Bank
        Its numbers.
    total : float
        In both wells. [Ah]
    hand : float
        In the well at hand. [Ah]
    net : float
        What sources have over the loads, negative where loads take more. [A]

    References
    ----------
    .. [1] Manwell and McGowan, Solar Energy 50 (1993) 399.
    .. [2] Mas' law of acceptance, own closed form.
    """
    if net < 0:
        taken = min(-net, bank.largest)
        if bank.two_wells:
            if hand <= 0 and taken >= bank.seep * total:
                return Course(bank, Way.DRY, bank.seep, total, 0.0)
        elif total <= 0:
            taken = 0.0
        return Course(bank, Way.STEADY, -taken, total, hand)
    steady = bank.efficiency * min(net, bank.limit)
    lack = bank.full - total
    flowing = min(steady, bank.taper * lack)
    # Once full it stays so: a steady flow meets an ever smaller lack, a tapering one falls with it.
    brimming = bank.two_wells and hand >= bank.top * (1 - EDGE) and flowing >= bank.seep * lack
    if brimming:
        hand = bank.top
    if steady >= bank.taper * (lack - EDGE * bank.full) and steady > 0:
        return Course(bank, Way.TAPER, bank.taper, total, hand, brimming)
    return Course(bank, Way.STEADY, steady, total, hand, brimming)
