"""Quick sums: one question each, answered without a plan. One small file per question."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.sums.bank import BANK
from engine.sums.carrying import CARRYING
from engine.sums.charge_time import CHARGE_TIME
from engine.sums.conductor import CONDUCTOR
from engine.sums.cord import CORD
from engine.sums.days_alone import DAYS_ALONE
from engine.sums.discharge import DISCHARGE
from engine.sums.drop import DROP
from engine.sums.fault import FAULT
from engine.sums.feeder import FEEDER
from engine.sums.generator_fuel import GENERATOR_FUEL
from engine.sums.inverter_loss import INVERTER_LOSS
from engine.sums.locked_rotor import LOCKED_ROTOR
from engine.sums.motor_start import MOTOR_START
from engine.sums.protection import PROTECTION
from engine.sums.runtime import RUNTIME
from engine.sums.sag import SAG_SUM
from engine.sums.share import SHARE
from engine.sums.shore_load import SHORE_LOAD
from engine.sums.two_well import TWO_WELL
from engine.sums.wind_day import WIND_DAY
from engine.sums.withstand import WITHSTAND

if TYPE_CHECKING:
    from engine.sums.sum import Sum

SUMS: Final[dict[str, Sum]] = {
    one.name: one
    for one in (
        CONDUCTOR,
        DROP,
        CARRYING,
        RUNTIME,
        DISCHARGE,
        INVERTER_LOSS,
        PROTECTION,
        FAULT,
        WITHSTAND,
        LOCKED_ROTOR,
        FEEDER,
        SHARE,
        BANK,
        DAYS_ALONE,
        CHARGE_TIME,
        TWO_WELL,
        WIND_DAY,
        SAG_SUM,
        SHORE_LOAD,
        CORD,
        MOTOR_START,
        GENERATOR_FUEL,
    )
}
"""Every quick sum by name, in the order the page shows them."""
