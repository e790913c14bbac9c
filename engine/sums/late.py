"""The quick sums that come late, each by its name."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.sums.bank import BANK
from engine.sums.charge_time import CHARGE_TIME
from engine.sums.days_alone import DAYS_ALONE
from engine.sums.sun_day import SUN_DAY
from engine.sums.two_well import TWO_WELL
from engine.sums.wind_day import WIND_DAY

if TYPE_CHECKING:
    from engine.sums.sum import Sum

LATE: Final[dict[str, Sum]] = {
    one.name: one for one in (BANK, DAYS_ALONE, CHARGE_TIME, TWO_WELL, SUN_DAY, WIND_DAY)
}
"""Imported only when one of them is asked for."""
