"""What a panel makes of a day's light, each loss a line of its own with its reason."""

from __future__ import annotations

from dataclasses import dataclass
from math import exp
from typing import TYPE_CHECKING, Final

from engine.derate import Derate
from engine.problem import Problem
from engine.solar.plane import fallen, through_glass
from engine.solar.tables import BOAT_LOSSES, LOSSES, MOUNTS, SHADE
from engine.source import Source, common_practice
from engine.units import Celsius, Share, Volt, Watt, said

if TYPE_CHECKING:
    from collections.abc import Mapping

    from engine.solar.plane import Plane
    from engine.solar.sky import Light

FULL_SUN: Final = 1000.0
"""Light under which a panel's watts are stated, W/m²."""
RATED: Final = Celsius(25.0)
"""Temperature of the cells under which a panel's watts are stated, °C."""
PER_DEGREE: Final = -0.004
"""Change of a silicon panel's power for each degree of its cells, 1/K; −0.0035 to −0.0047."""
AIR: Final = Celsius(25.0)
WIND: Final = 4.0
"""Wind over the panel, m/s."""
MOUNT: Final = "close to a roof"
MPPT: Final = Share(0.96)
"""What a tracking controller passes on; 0.94 to 0.98 is usual."""
SHORT_OVER_BEST: Final = 1.06
"""Short-circuit current over current at the best point."""
CHARGING: Final = Volt(13.2)
"""Volts of a 12 V bank while the sun charges it."""

MODEL: Final = Source("PVWatts version 5 manual", "NREL/TP-6A20-62641, 2014", "direct current")
CONTROLLER: Final = common_practice("tracking controller 96 %; plain one by volts of the bank")


@dataclass(frozen=True, slots=True)
class Panel:
    """Rated watts, change of power per degree (1/K), mount, air in °C and wind in m/s."""

    watts: Watt
    per_degree: float = PER_DEGREE
    mount: str = MOUNT
    air: Celsius = AIR
    wind: float = WIND

    def __post_init__(self) -> None:
        if not self.watts > 0:
            raise Problem(
                "watts", f"A panel of {said(self.watts)} W makes nothing.", "Enter 100 W."
            )


@dataclass(frozen=True, slots=True)
class Harvest:
    """What a day brings, Wh, and every factor between full sun and there."""

    watt_hours: float
    lines: tuple[Derate, ...]


def losses(rows: Mapping[str, float], why: str) -> tuple[Derate, ...]:
    """Return the losses of a table as lines; those of nothing are left out.

    Parameters
    ----------
    rows : Mapping of str to float
        Loss by name. [%]
    why : str
        The reason of each.

    Examples
    --------
    >>> for line in losses({"wiring": 2.0, "snow": 0.0}, "PVWatts"): print(line)
    wiring × 0.98: PVWatts
    """
    return tuple(Derate(name, 1 - lost / 100, why) for name, lost in rows.items() if lost)


PVWATTS: Final = losses(LOSSES.rows, "default of the PVWatts manual")
ABOARD: Final = losses(BOAT_LOSSES.rows, "typical aboard, shade apart")


def shaded(where: str) -> Derate:
    """Return the likely loss to rig and motion.

    Parameters
    ----------
    where : str
        A row of the table of shade.

    Raises
    ------
    Problem
        If the table has no such row.

    Examples
    --------
    >>> str(shaded("bimini under boom or backstay"))
    'shade × 0.8: bimini under boom or backstay, 0.65 to 0.9'
    """
    low, likely, high = SHADE[where]
    span = f", {said(low)} to {said(high)}" if low < high else ""
    return Derate("shade", likely, where + span)


def tracking(efficiency: Share = MPPT) -> Derate:
    """Return what a controller that tracks the best point passes on.

    Parameters
    ----------
    efficiency : Share
        Of the controller. [1]
    """
    return Derate("tracking controller", efficiency, "passes on what the panel makes")


def plain(panel_volts: Volt, bank_volts: Volt = CHARGING) -> Derate:
    """Return what a plain (PWM) controller passes on: the panel's current at the bank's volts.

    Parameters
    ----------
    panel_volts : Volt
        At the best point of a cool panel, as labelled. [V]
    bank_volts : Volt
        While charging. [V]

    Returns
    -------
    Derate
        Against the rated watts; warmth takes volts that the bank would not have used, so no other
        line is due to it.

    Examples
    --------
    >>> plain(Volt(18.0)).factor, plain(Volt(31.1)).factor, plain(Volt(12.0)).factor
    (0.777, 0.450, 0.0)
    """
    if panel_volts <= bank_volts:
        words = f"{said(panel_volts)} V cannot charge a bank at {said(bank_volts)} V"
        return Derate("plain controller", 0.0, words)
    words = f"the panel's {said(panel_volts)} V are pulled down to the bank's {said(bank_volts)} V"
    factor = min(bank_volts * SHORT_OVER_BEST / panel_volts, 1.0)
    return Derate("plain controller", factor, words)


def cell_temperature(light: float, panel: Panel) -> Celsius:
    """Return how warm the cells run.

    Parameters
    ----------
    light : float
        On the panel. [W/m²]
    panel : Panel
        With its mount, air and wind.

    Returns
    -------
    Celsius
        Of the cells. [°C]

    Raises
    ------
    Problem
        If no table knows the mount.

    References
    ----------
    .. [1] King and others, SAND2004-3535, 2004.
    """
    a, b, over = MOUNTS[panel.mount]
    back = light * exp(a + b * panel.wind) + panel.air
    return Celsius(back + light / FULL_SUN * over)


def panel_day(
    light: Light,
    plane: Plane,
    panel: Panel,
    controller: Derate | None = None,
    derates: tuple[Derate, ...] = PVWATTS,
) -> Harvest:
    """Return what a panel makes of a day.

    Parameters
    ----------
    light : Light
        Of the day.
    plane : Plane
        How the panel lies.
    panel : Panel
        Its watts and how it warms.
    controller : Derate, optional
        Tracking or plain; left out, the panel's own output is the answer.
    derates : tuple of Derate
        Shape ``(n,)``. Losses besides glass, warmth and controller.

    Returns
    -------
    Harvest
        Rated watts, times hours of full sun on the plane, times every line.

    Examples
    --------
    >>> from engine.solar.plane import FLAT
    >>> from engine.solar.sky import clear_light
    >>> [line.name for line in panel_day(clear_light(0.0, 80), FLAT, Panel(Watt(100.0))).lines][:3]
    ['glass', 'warm cells', 'dirt']
    """
    fell = let_in = made = 0.0
    for moment in light.moments:
        on = fallen(moment, plane)
        inside = on.straight * through_glass(on.incidence) + on.scattered
        warm = cell_temperature(on.total, panel)
        fell += on.total
        let_in += inside
        made += inside * (1 + panel.per_degree * (warm - RATED))
    lines = [Derate("glass", let_in / fell if fell else 1.0, "slanting light is thrown back")]
    if controller is None or controller.name != "plain controller":
        words = f"{said(panel.per_degree * 100)} % a degree over 25 °C, {panel.mount}"
        lines.append(Derate("warm cells", made / let_in if let_in else 1.0, words))
    lines += [*derates, *([controller] if controller else [])]
    energy = panel.watts * fell * light.hours / FULL_SUN
    for line in lines:
        energy *= line.factor
    return Harvest(energy, tuple(lines))
