"""Engine hours that last: with what the bank lost or gained on the way made good."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.units import Hour

if TYPE_CHECKING:
    from engine.simulate.march import March


def lasting_hours(march: March) -> Hour:
    """Return the engine hours that would leave the bank as charged as it began.

    Parameters
    ----------
    march : March
        Gone through.

    Returns
    -------
    Hour
        Its engine hours, and those that its loss of charge still asks for at what the engine gave
        on average; less where it gained. Never below 0. [h]

    Notes
    -----
    ``hours + (start − end) / (efficiency × current)``. A bank that was full within the last day
    fills by itself and has lost nothing that lasts.
    """
    engine, bank, ran = march.switches.engine, march.bank, march.engine_hours
    lost = march.totals[0] - march.totals[-1]
    if engine is None or not march.switches.may_run:
        return Hour(ran)
    full = max(march.totals[-march.a_day - 1 :]) >= march.switches.lines.full
    current = march.engine / ran if ran > 0 else min(engine.current, bank.limit)
    if current <= 0 or (full and lost > 0):
        return Hour(ran)
    return Hour(max(ran + lost / (bank.efficiency * current), 0.0))
