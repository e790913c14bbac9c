"""Eighty generic loads to pick from; every value is typical and tagged default."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from importlib.resources import files
from typing import Final

from engine.estimate import Estimate
from engine.loads.load import ALWAYS, CONDITIONS
from engine.source import Source
from engine.table import Table
from engine.units import said

SOURCE: Final = Source(
    "generic ranges", "2026", "lights after COLREG annex I, kitchen gear after a US Department of "
    "Energy list, the rest common practice", typical=True,
)  # fmt: skip


HOURS_GUESS: Final = (0.6, 1.5)
"""How far habits may take the typical hours, as factors: common practice."""
DUTY_GUESS: Final = (0.7, 1.4)
"""The same for duty: a warm sea takes a fridge from 0.45 to 0.6."""


@dataclass(frozen=True, slots=True)
class Generic:
    """One generic load: running watts, duty, hours by condition, when, and surge over running.

    What is essential and runs with nobody aboard is always live.
    """

    name: str
    watts: Estimate
    duty: float
    hours: tuple[float, float, float, float]
    window: str
    surge: float
    supply: str
    essential: bool = False

    @property
    def always_live(self) -> bool:
        """True where no switch stops it."""
        return self.hours[3] == ALWAYS or (self.essential and self.hours[3] > 0)

    def as_row(self, name: str = "", count: int = 1) -> dict[str, str]:
        """Return the load as the plan would state it, with ranges as wide as the guess.

        Parameters
        ----------
        name : str
            What the owner calls it; its own name where empty.
        count : int
            How many of it. [1]
        """
        low, likely, high = (
            said(watts * count) for watts in (self.watts.low, self.watts.likely, self.watts.high)
        )
        surge = f"{said(self.watts.likely * self.surge * count)} W" if self.surge > 1 else ""
        return {
            "name": name or self.name,
            "supply": self.supply,
            "draw": f"{likely} W ({low} to {high})",
            "draw_by": "default",
            "surge": surge,
            **{
                f"hours_{condition}": _guess(hours, HOURS_GUESS, ALWAYS, " h")
                for condition, hours in zip(CONDITIONS, self.hours, strict=True)
            },
            "duty": "" if self.duty == 1 else _guess(self.duty, DUTY_GUESS, 1.0),
            "window": "" if self.window == "any" else self.window,
            "essential": "yes" if self.essential else "",
            "always_live": "yes" if self.always_live else "",
        }


def _guess(likely: float, factors: tuple[float, float], most: float, unit: str = "") -> str:
    """Return a typical figure with the range a guess of it deserves; nothing or all is sure."""
    if likely in {0.0, most}:
        return said(likely) + unit
    low, high = said(likely * factors[0], 2), said(min(likely * factors[1], most), 2)
    return f"{said(likely)}{unit} ({low} to {high})"


def _read() -> dict[str, Generic]:
    """Return the loads in the file beside this module, read once."""
    text = files("engine.loads").joinpath("generic.csv").read_text(encoding="utf-8")
    found = {}
    for row in csv.DictReader(text.splitlines()):
        low, likely, high = float(row["low"]), float(row["likely"]), float(row["high"])
        found[row["load"]] = Generic(
            row["load"],
            Estimate(low, likely, high, "default"),
            float(row["duty"]),
            (
                float(row["anchor"]),
                float(row["passage"]),
                float(row["dock"]),
                float(row["unattended"]),
            ),
            row["window"],
            float(row["surge"]),
            row["supply"],
            row["essential"] == "yes",
        )
    return found


GENERIC: Final = _read()
"""Every generic load by its name."""

GENERIC_TABLE: Final = Table(
    title="Generic loads",
    key="load",
    value="running W, low, likely and high",
    source=SOURCE,
    rows={one.name: (one.watts.low, one.watts.likely, one.watts.high) for one in GENERIC.values()},
)
