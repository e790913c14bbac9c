"""The volts a bank is charged to, by stage and temperature. Typical: the maker's sheet decides."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.batteries.tables import ABSORB, COMPENSATION, EQUALISE, FLOAT
from engine.batteries.temperature import RATED
from engine.batteries.voltage import blocks
from engine.estimate import Estimate

if TYPE_CHECKING:
    from engine.batteries.chemistry import Chemistry
    from engine.table import Table
    from engine.units import Celsius, Volt

STAGES: Final[dict[str, Table[str, tuple[float, float, float]]]] = {
    "absorb": ABSORB,
    "float": FLOAT,
    "equalise": EQUALISE,
}
"""The tables of the three stages a charger goes through."""
CELLS: Final = 6
"""Lead cells in a block of 12 V."""


def charging_volts(
    chemistry: Chemistry, stage: str, nominal_volts: Volt, temperature: Celsius = RATED
) -> Estimate | None:
    """Return the typical volts of a charging stage.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    stage : str
        One of STAGES.
    nominal_volts : Volt
        Of the system: 12, 24 or 48; a lithium pack's label does as well. [V]
    temperature : Celsius
        Of the cells. [°C]

    Returns
    -------
    Estimate or None
        None for a stage this chemistry must not have. [V]

    Notes
    -----
    ``V25 + 6 × compensation × (T − 25)`` for each block. Lithium is not compensated.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> from engine.units import Celsius, Volt
    >>> charging_volts(CHEMISTRIES["flooded"], "absorb", Volt(12.0), Celsius(5.0)).likely
    15.2
    """
    if chemistry.name not in STAGES[stage]:
        return None
    warmer = CELLS * COMPENSATION[chemistry.name] / 1000 * (temperature - RATED)
    low, likely, high = STAGES[stage][chemistry.name]
    size = blocks(chemistry, nominal_volts)
    return Estimate(
        (low + warmer) * size, (likely + warmer) * size, (high + warmer) * size, "default"
    )
