"""At which volts ampere-hours are meant, said once on a page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.ahead.panels import charging_volts
from engine.units import said
from engine.views.parts.html import Html, tag

if TYPE_CHECKING:
    from engine.views.parts.scene import Scene


def volts_note(scene: Scene, *, sun: bool = False, stays: bool = False) -> Html:
    """Return at which volts ampere-hours are meant.

    Parameters
    ----------
    scene : Scene
        The choice of showing.
    sun : bool
        Whether the page shows what the sun brings, which comes at more volts.
    stays : bool
        Whether the page shows charge in ampere-hours whatever is chosen.
    """
    volts = scene.plan.boat.volts
    loads = f"Ampere-hours of loads are at the system's {said(volts)} V"
    if sun:
        loads += f", those of the sun at the {said(charging_volts(volts))} V of a bank it charges"
    chosen = ""
    if scene.units.charge == "Wh":
        chosen = f" Watt-hours here are ampere-hours × {said(volts)} V."
        if stays:
            chosen = " Charge stays in ampere-hours on this page."
    return tag("p", f"{loads}.{chosen}", class_="note")
