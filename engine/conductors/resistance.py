"""Resistance of real conductors: stranded and coated, at their working temperature."""

from __future__ import annotations

from typing import Final

from engine.conductors.sizes import METRIC, Size, area_of_awg
from engine.conductors.tables import RESISTANCE_CLASS_5, RESISTANCE_STRANDED_75
from engine.source import Source
from engine.units import Celsius, OhmPerKm

KFT_PER_KM: Final = 1000 / 304.8
COPPER_AT_75: Final = 0.00323
"""Change of resistance per degree, referred to 75 °C (NEC chapter 9, table 8, note 2)."""
COPPER_AT_20: Final = 0.00393
"""The same referred to 20 °C (IEC 60028, 1925)."""
IACS: Final = Source("IEC 60028", "1925", "1/58 Ω·mm²/m and 0.00393 per degree, at 20 °C")


def source_of(size: Size) -> Source:
    """Return where a size's resistance comes from."""
    return (RESISTANCE_CLASS_5 if size.catalogue == METRIC else RESISTANCE_STRANDED_75).source


def resistance(size: Size, temperature: Celsius) -> OhmPerKm:
    """Return the resistance of one conductor.

    Parameters
    ----------
    size : Size
        Of any catalogue.
    temperature : Celsius
        Of the copper. [°C]

    Returns
    -------
    OhmPerKm
        Stranded, metal-coated copper. [Ω/km]

    Notes
    -----
    An SAE size has less copper than the AWG size of its name; its resistance is that of the AWG
    size times the ratio of the areas.

    References
    ----------
    .. [1] NFPA 70 (NEC), chapter 9, table 8, coated, R2 = R75 (1 + 0.00323 (T − 75)).
    .. [2] IEC 60228:2004, table 3, class 5, metal-coated.

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> resistance(read_size("6 mm2"), Celsius(20.0))
    3.39
    """
    if size.catalogue == METRIC:
        return OhmPerKm(RESISTANCE_CLASS_5[size.name] * (1 + COPPER_AT_20 * (temperature - 20)))
    warm = RESISTANCE_STRANDED_75[size.name] * KFT_PER_KM * (1 + COPPER_AT_75 * (temperature - 75))
    return OhmPerKm(warm * area_of_awg(size.name) / size.area)
