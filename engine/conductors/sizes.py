"""Three catalogues of sizes, never mixed: AWG, SAE and metric."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from math import pi
from typing import Final

from engine.conductors.tables import (
    ALL_GAUGES,
    GAUGES,
    RESISTANCE_CLASS_5,
    SAE_CIRCULAR_MILS,
)
from engine.problem import Problem, quoted
from engine.source import Source
from engine.units import SquareMm

AWG: Final = "awg"
SAE: Final = "sae"
METRIC: Final = "metric"
CATALOGUES: Final = (
    (SAE, "SAE: least copper of most boat cable, 3 to 11 % under AWG"),
    (AWG, "AWG: American wire gauge, full copper area"),
    (METRIC, "mm²: metric sizes after IEC 60228"),
)

MIL: Final = 0.0254
"""One thousandth of an inch, mm."""
MM2_PER_CIRCULAR_MIL: Final = pi / 4 * MIL**2

B258: Final = Source("ASTM B258", "2014", "diameters by the 39th root of 92")


def gauge_number(gauge: str) -> int:
    """Return the number of a gauge; 1/0 is 0 and each thicker one less.

    Parameters
    ----------
    gauge : str
        Such as ``10`` or ``2/0``.

    Examples
    --------
    >>> gauge_number("10"), gauge_number("4/0")
    (10, -3)
    """
    return 1 - int(gauge[0]) if gauge.endswith("/0") else int(gauge)


def area_of_awg(gauge: str) -> SquareMm:
    """Return the copper area of an AWG size.

    Parameters
    ----------
    gauge : str
        Such as ``10`` or ``2/0``.

    Returns
    -------
    SquareMm
        Of a solid wire of the gauge's diameter. [mm²]

    References
    ----------
    .. [1] ASTM B258-14: d = 0.005 in · 92^((36 − n)/39).

    Examples
    --------
    >>> area_of_awg("10")
    5.2612
    """
    diameter = 0.127 * 92 ** ((36 - gauge_number(gauge)) / 39)
    return SquareMm(pi / 4 * diameter**2)


@dataclass(frozen=True, slots=True)
class Size:
    """One conductor size of one catalogue; ``counts_as`` is its row in the carrying table."""

    catalogue: str
    name: str
    area: SquareMm
    counts_as: str

    @property
    def circular_mils(self) -> float:
        """Area in the US trade's unit, cmil."""
        return self.area / MM2_PER_CIRCULAR_MIL

    def __str__(self) -> str:
        return f"{self.name} {'mm2' if self.catalogue == METRIC else self.catalogue.upper()}"


def _metric(name: str) -> Size:
    """Return a metric size; it counts as the next gauge whose copper is not more."""
    area = SquareMm(float(name))
    below = [gauge for gauge in ALL_GAUGES if area_of_awg(gauge) <= area]
    return Size(METRIC, name, area, below[-1] if below else "")


KNOWN: Final = {
    AWG: {gauge: Size(AWG, gauge, area_of_awg(gauge), gauge) for gauge in ALL_GAUGES},
    SAE: {
        gauge: Size(SAE, gauge, SquareMm(mils * MM2_PER_CIRCULAR_MIL), gauge)
        for gauge, mils in SAE_CIRCULAR_MILS.rows.items()
    },
    METRIC: {name: _metric(name) for name in RESISTANCE_CLASS_5.rows},
}
"""Every size that can be read, by catalogue and name."""

STOCKED: Final = {
    AWG: tuple(KNOWN[AWG][gauge] for gauge in GAUGES),
    SAE: tuple(KNOWN[SAE][gauge] for gauge in GAUGES),
    METRIC: tuple(size for size in KNOWN[METRIC].values() if size.counts_as),
}
"""Sizes offered when choosing, thin to thick. Metric sizes below 18 AWG are not offered."""

_METRIC: Final = re.compile(r"(\d+(?:[.,]\d+)?)\s*(?:sq\.?\s*mm|mm\s*(?:2|²|\^2|\*\*2)|mm|qmm)")
_GAUGE: Final = re.compile(
    r"(?:(awg|sae)\s*)?#?\s*([1-4]/0|0{1,4}|\d{1,2})\s*(awg|sae|ga|gauge)?", re.IGNORECASE
)
_MEND: Final = "Enter a size with its catalogue, such as 10 AWG, 10 SAE or 6 mm2."


@lru_cache(maxsize=2048)
def read_size(text: str, catalogue: str = "") -> Size:
    """Return the size that was typed, in its own catalogue.

    Parameters
    ----------
    text : str
        Such as ``10 AWG``, ``#10``, ``2/0``, ``0000``, ``10 SAE`` or ``16mm2``.
    catalogue : str
        What a bare figure means; what is typed with its catalogue stays in that one.

    Raises
    ------
    Problem
        If it is no size, no size of that catalogue, or a bare figure with no catalogue.

    Examples
    --------
    >>> str(read_size("#10")), str(read_size("0000")), str(read_size("16mm2"))
    ('10 AWG', '4/0 AWG', '16 mm2')
    """
    plain = " ".join(text.lower().split())
    metric = _METRIC.fullmatch(plain)
    if metric or (catalogue == METRIC and re.fullmatch(r"\d+(?:[.,]\d+)?", plain)):
        figure = (metric[1] if metric else plain).replace(",", ".")
        return _known(METRIC, f"{float(figure):g}", text)
    gauge = _GAUGE.fullmatch(plain)
    if not gauge:
        raise Problem("", f"{quoted(text)} is not a conductor size.", _MEND)
    name = f"{len(gauge[2])}/0" if set(gauge[2]) == {"0"} else gauge[2]
    spoken = gauge[1] or (gauge[3] if gauge[3] in {AWG, SAE} else "")
    sure = spoken or (catalogue if catalogue in {AWG, SAE} else "")
    if not sure and ("#" in plain or "/0" in name or gauge[3]):
        sure = AWG
    if not sure:
        raise Problem("", f"{quoted(text)} may be a gauge or square millimetres.", _MEND)
    return _known(sure, name, text)


def _known(catalogue: str, name: str, text: str) -> Size:
    if name not in KNOWN[catalogue]:
        sizes = ", ".join(KNOWN[catalogue])
        word = "mm²" if catalogue == METRIC else catalogue.upper()
        raise Problem("", f"{quoted(text)} is not a trade size.", f"Sizes in {word} are {sizes}.")
    return KNOWN[catalogue][name]
