"""Quick sums: one question each, answered without a plan. One small file per question.

Some come late: the registry knows their names and titles, and imports them when they are asked.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Final

from engine.sums.carrying import CARRYING
from engine.sums.conductor import CONDUCTOR
from engine.sums.cord import CORD
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
from engine.sums.titles import LATE_TITLES
from engine.sums.withstand import WITHSTAND

if TYPE_CHECKING:
    from collections.abc import Iterator

    from engine.sums.sum import Sum

_BEFORE: Final = (
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
)
_AFTER: Final = (
    SAG_SUM,
    SHORE_LOAD,
    CORD,
    MOTOR_START,
    GENERATOR_FUEL,
)
TITLES: Final = {
    **{one.name: one.title for one in _BEFORE},
    **LATE_TITLES,
    **{one.name: one.title for one in _AFTER},
}
"""What every quick sum asks, by name, in the order the page shows them."""


class _Sums(Mapping[str, "Sum"]):
    """Every quick sum by name, in that order; a late one is imported when it is asked for."""

    def __init__(self) -> None:
        self.early = {one.name: one for one in (*_BEFORE, *_AFTER)}

    def __getitem__(self, name: str) -> Sum:
        if name in LATE_TITLES:
            from engine.sums.late import LATE  # noqa: PLC0415 - comes with the late parcel

            return LATE[name]
        return self.early[name]

    def __contains__(self, name: object) -> bool:
        return name in TITLES

    def __iter__(self) -> Iterator[str]:
        return iter(TITLES)

    def __len__(self) -> int:
        return len(TITLES)


SUMS: Final[Mapping[str, Sum]] = _Sums()
"""Every quick sum by name, in the order the page shows them."""
