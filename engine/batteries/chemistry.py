"""The four chemistries a boat meets, with what each is taken to do until something is measured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.batteries import tables
from engine.estimate import Estimate
from engine.units import Celsius, Share, Volt


@dataclass(frozen=True, slots=True)
class Chemistry:
    """Defaults of one chemistry; each stands in a table of this room, with its source.

    ``exponent`` is Peukert's, ``low_rate_gain`` bounds what a slow discharge may give (both 1),
    ``usable`` is a share, ``milliohms`` is for 100 Ah at 12 V (mΩ), ``coldest_charge`` is in °C,
    ``cut_off`` is under load per 12 V of the system and ``block_volts`` nominal (both V).
    """

    name: str
    label: str
    exponent: Estimate
    low_rate_gain: float
    usable: Share
    milliohms: Estimate
    coldest_charge: Celsius
    cut_off: Volt
    block_volts: Volt

    @property
    def lead(self) -> bool:
        """True for every lead-acid chemistry."""
        return self.name != tables.LITHIUM


LABELS: Final = {
    tables.FLOODED: "flooded lead-acid, deep-cycle",
    tables.AGM: "AGM lead-acid",
    tables.GEL: "gel lead-acid",
    tables.LITHIUM: "lithium iron phosphate",
}


def _chemistry(name: str) -> Chemistry:
    return Chemistry(
        name=name,
        label=LABELS[name],
        exponent=Estimate(*tables.EXPONENT[name], "default"),
        low_rate_gain=tables.LOW_RATE_GAIN[name],
        usable=Share(tables.USABLE[name]),
        milliohms=Estimate(*tables.RESISTANCE_100_AH[name], "default"),
        coldest_charge=Celsius(tables.COLDEST_CHARGE[name]),
        cut_off=Volt(tables.CUT_OFF[name]),
        block_volts=Volt(tables.BLOCK_VOLTS[name]),
    )


CHEMISTRIES: Final = {name: _chemistry(name) for name in LABELS}
"""By name: flooded, agm, gel, lithium."""
