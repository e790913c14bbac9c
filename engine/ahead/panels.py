"""What the plan's panels bring, by the clearness of a day, with every loss and its reason."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.derate import Derate
from engine.simulate.use import STEP, intervals
from engine.simulate.weather import Sun
from engine.solar.clouded import clouded_light
from engine.solar.panel import CHARGING, Panel, losses, panel_day, plain, shaded, tracking
from engine.solar.plane import Plane, day_profile
from engine.solar.sky import Frame
from engine.solar.tables import BOAT_LOSSES, SHADE
from engine.source import Source
from engine.units import Amp, AmpHour, Share, Volt, Watt

if TYPE_CHECKING:
    from engine.ahead.place import Where
    from engine.plan.source_parts import Panels, SourcePlan

QUARTER: Final = Frame(step=15)
NOMINAL: Final = Volt(12.0)
HEELED: Final = "heeling on passage"
DIRT: Final = "dirt and salt"
TYPICAL: Final = "typical aboard"
SAME: Final = 1e-6
ROWS: Final = 8
"""Clearnesses for which a day is reckoned; between them, straight."""
MEASURED: Final = Source("owner", "as measured", "whole of the rating")


@dataclass(frozen=True, slots=True)
class Array:
    """Panels under a sky: what a day brings (Ah), every factor, and the day's course (A)."""

    charge: AmpHour
    lines: tuple[Derate, ...]
    profile: tuple[Amp, ...]


@dataclass(frozen=True, slots=True)
class Under:
    """The sky a day is spent under: place and month, clearness (1), and the living condition."""

    where: Where
    clearness: Share
    condition: str


def charging_volts(volts: Volt) -> Volt:
    """Return the volts of a bank while the sun charges it.

    Parameters
    ----------
    volts : Volt
        Nominal, of the system. [V]

    Examples
    --------
    >>> charging_volts(Volt(24.0))
    26.4
    """
    return Volt(CHARGING * volts / NOMINAL)


@lru_cache(maxsize=256)
def array_day(panels: Panels, watts: Watt, under: Under, volts: Volt) -> Array:
    """Return what panels bring in a day.

    Parameters
    ----------
    panels : Panels
        As stated.
    watts : Watt
        All together. [W]
    under : Under
        The sky; on passage the boat heels.
    volts : Volt
        Nominal, of the system. [V]
    """
    where, clearness = under.where, under.clearness
    plane = Plane(panels.tilt, panels.facing)
    profile = day_profile(where.latitude, where.day_of_year, clearness, QUARTER.step, plane)
    fell = sum(profile) * STEP
    bank = charging_volts(volts)
    if fell <= 0:
        return Array(AmpHour(0.0), (), tuple(Amp(0.0) for _ in profile))
    light = clouded_light(where.latitude, where.day_of_year, clearness, QUARTER)
    controller = plain(panels.string_volts, bank) if panels.controller == "plain" else tracking()
    harvest = panel_day(
        light, plane, Panel(watts, mount=panels.mount), controller, _losses(panels, under.condition)
    )
    lines, energy = harvest.lines, harvest.watt_hours
    if panels.overall is not None:
        why = "of watts × hours of full sun, as measured; in place of every loss"
        lines = (Derate("measured", panels.overall, why, MEASURED),)
        energy = watts * fell / 1000 * panels.overall * bank / volts
    charge = AmpHour(energy / bank)
    return Array(charge, lines, tuple(Amp(one / fell * charge) for one in profile))


def _losses(panels: Panels, condition: str) -> tuple[Derate, ...]:
    """Return shade, heel, dirt and the rest."""
    others = {name: lost for name, lost in BOAT_LOSSES.rows.items() if name != DIRT}
    heel = (Derate("heel", SHADE[HEELED][1], HEELED),) if condition == "passage" else ()
    usual = abs(panels.dirt * 100 - BOAT_LOSSES[DIRT]) < SAME
    dirt = (Derate(DIRT, 1 - panels.dirt, TYPICAL if usual else "as stated"),)
    return (shaded(panels.shade), *heel, *dirt, *losses(others, TYPICAL))


def sun_of(
    sources: tuple[SourcePlan, ...], where: Where, volts: Volt, condition: str, step_count: int = 0
) -> Sun:
    """Return what all panels of a plan bring, by the clearness of the day.

    Parameters
    ----------
    sources : tuple of SourcePlan
        Shape ``(n,)``; those that are no panels, or have no watts, bring nothing.
    where : Where
        Place and month.
    volts : Volt
        Nominal, of the system. [V]
    condition : str
        One of CONDITIONS.
    step_count : int
        Steps of a day; left out, of a quarter of an hour. [1]
    """
    count = step_count or intervals(STEP)
    none = tuple(Amp(0.0) for _ in range(count))
    fitted = [one for one in sources if one.kind == "solar" and one.watts]
    if not fitted or where.days is None:
        return Sun((Share(1.0),), (none,))
    clear = max(where.days.clearest, where.clear)
    rows = tuple(Share(clear * (n + 1) / ROWS) for n in range(ROWS))
    profiles = []
    for clearness in rows:
        arrays = [
            array_day(one.panels, one.watts, Under(where, clearness, condition), volts)
            for one in fitted
            if one.watts
        ]
        profiles.append(
            tuple(Amp(sum(step)) for step in zip(*(one.profile for one in arrays), strict=True))
        )
    return Sun(rows, tuple(profiles))
