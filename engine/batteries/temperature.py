"""What a cold bank still gives."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.batteries.tables import LITHIUM_CAPACITY, SIZE_MULTIPLIER
from engine.source import Source
from engine.units import Celsius

if TYPE_CHECKING:
    from collections.abc import Mapping

    from engine.batteries.chemistry import Chemistry

RATED: Final = Celsius(25.0)
"""Temperature a capacity is stated for, °C."""
LEAD_SLOPE: Final = 0.009
"""Share of the rated capacity that lead loses per degree below the coldest row."""
LEAD_SLOPE_SOURCE: Final = Source("IEEE 485", "as read in lecture notes", "0.9 % per degree")


def capacity_factor(chemistry: Chemistry, temperature: Celsius) -> float:
    """Return the share of its rated capacity a bank gives at a temperature.

    Parameters
    ----------
    chemistry : Chemistry
        Of the bank.
    temperature : Celsius
        Of the cells, not of the air. [°C]

    Returns
    -------
    float
        1 at 25 °C and above: no credit is given for warmth. [1]

    Notes
    -----
    Lead: one over the cell-size multiplier, straight between the rows; below the coldest row it
    falls by 0.9 % of the rated capacity per degree. Lithium: straight between the rows, over the
    table's own value at 25 °C; below the coldest row it falls on as between the last two.

    References
    ----------
    .. [1] IEEE 485, table 1, as reprinted.
    .. [2] NREL System Advisor Model, default table for lithium iron phosphate.

    Examples
    --------
    >>> from engine.batteries.chemistry import CHEMISTRIES
    >>> [round(capacity_factor(CHEMISTRIES[n], Celsius(10.0)), 3) for n in ("agm", "lithium")]
    [0.84, 0.958]
    """
    if temperature >= RATED:
        return 1.0
    if chemistry.lead:
        coldest = min(SIZE_MULTIPLIER.rows)
        if temperature < coldest:
            lost = LEAD_SLOPE * (coldest - temperature)
            return max(1 / SIZE_MULTIPLIER[coldest] - lost, 0.0)
        return 1 / between(SIZE_MULTIPLIER.rows, temperature)
    rows = LITHIUM_CAPACITY.rows
    return max(between(rows, temperature) / between(rows, RATED), 0.0)


def between(rows: Mapping[float, float], at: float) -> float:
    """Return a value straight between two rows, or on along the line of the outermost two.

    Parameters
    ----------
    rows : mapping of float to float
        At least two, in rising order of the key. [1]
    at : float
        In the unit of the keys. [1]

    Returns
    -------
    float
        In the unit of the values. [1]

    Examples
    --------
    >>> between({0.0: 10.0, 1.0: 20.0, 2.0: 40.0}, 1.5), between({0.0: 10.0, 1.0: 20.0}, -1.0)
    (30.0, 0.0)
    """
    keys = list(rows)
    above = next((n for n, key in enumerate(keys) if key >= at), len(keys) - 1)
    right = max(above, 1)
    low, high = keys[right - 1], keys[right]
    return rows[low] + (rows[high] - rows[low]) * (at - low) / (high - low)
