"""Printed and typical figures of fuses and breakers. A key is a series unless it says else."""

from __future__ import annotations

from typing import Final

from engine.source import Source
from engine.table import Table

_SHEETS: Final = Source("makers' data sheets", "common figures", "no document", typical=True)

INTERRUPTING: Final = Table(
    title="Interrupting rating of a protection at its marked volts",
    key="series",
    value="(V DC, A), volts rising",
    source=_SHEETS,
    rows={
        "blade": ((32.0, 1000.0),),
        "large blade": ((32.0, 1000.0),),
        "bolt-down small": ((32.0, 2000.0),),
        "bolt-down large": ((32.0, 2000.0),),
        "terminal-mount": ((14.0, 10000.0), (32.0, 5000.0), (58.0, 2000.0)),
        "plate": ((32.0, 6000.0),),
        "class T": ((125.0, 20000.0),),
        "thermal breaker": ((24.0, 2500.0),),
        "magnetic breaker": ((65.0, 5000.0),),
    },
)

MINIMUM_12_24: Final = Table(
    title="Least interrupting rating, 12 and 24 V DC",
    key="most cold-cranking amperes of the bank",
    value="main and branch, A",
    source=Source("ABYC E-11", "as reprinted", "table V.A, up to 2200 cold-cranking A or 500 Ah"),
    rows={650: (1500.0, 750.0), 1100: (3000.0, 1500.0), 2200: (5000.0, 2500.0)},
)

MINIMUM_32: Final = Table(
    title="Least interrupting rating, 32 V DC",
    key="most cold-cranking amperes of the bank",
    value="main and branch, A",
    source=Source("ABYC E-11", "older editions", "as commonly quoted", typical=True),
    rows={1250: (3000.0, 1500.0), 2200: (5000.0, 2500.0)},
)

Times = tuple[float, float | None]


def _band(name: str, source: Source, rows: dict[float, Times]) -> Table[float, Times]:
    return Table(
        f"Opening times, {name}", "times the rating", "least and most, s; none: never", source, rows
    )


BANDS: Final = {
    "blade": _band(
        "blade",
        Source("ISO 8820-3", "common figures", "blade fuse-links, 5 to 40 A", typical=True),
        {
            1.10: (360000.0, None), 1.35: (0.75, 600.0), 1.60: (0.25, 50.0), 2.00: (0.15, 5.0),
            3.50: (0.04, 0.5), 6.00: (0.02, 0.1),
        },
    ),
    "large blade": _band(
        "large blade",
        _SHEETS,
        {
            1.10: (360000.0, None), 1.35: (60.0, 1800.0), 2.00: (2.0, 60.0), 3.50: (0.2, 7.0),
            6.00: (0.04, 1.0),
        },
    ),
    "bolt-down small": _band(
        "bolt-down small",
        _SHEETS,
        {1.00: (14400.0, None), 1.35: (60.0, 1800.0), 2.00: (2.0, 15.0), 3.50: (0.2, 5.0)},
    ),
    "bolt-down large": _band(
        "bolt-down large",
        _SHEETS,
        {
            1.00: (14400.0, None), 1.35: (120.0, 1800.0), 2.00: (1.0, 15.0), 3.50: (0.3, 5.0),
            6.00: (0.1, 1.0),
        },
    ),
    "class T": _band(
        "class T",
        Source("UL 248-15", "common figures", "2 h at 135 %, 12 min at 200 %", typical=True),
        {1.35: (0.0, 7200.0), 2.00: (0.0, 720.0)},
    ),
}  # fmt: skip
"""Table of each series whose opening times are known, by its name."""
