"""What is worth knowing of a source beside what it brings: its working, and what it costs."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import prod
from typing import TYPE_CHECKING, Final

from engine.ahead.brought import Brought, absorbing_volts, brought_of
from engine.ahead.panels import QUARTER, charging_volts
from engine.ahead.place import where_of
from engine.ahead.winds import turbine_of, wind_at
from engine.charging.mains import Charger, ac_watts
from engine.charging.water import Rotor, drag
from engine.charging.wind import RAYLEIGH, mean_power, power_at
from engine.derate import working_of
from engine.finding import Step
from engine.plan.source_fields import CONTROLLERS
from engine.simulate.use import STEP
from engine.solar.plane import Plane, day_profile
from engine.units import MetrePerSecond, Watt, said

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.plan.parts import Plan
    from engine.plan.source_parts import SourcePlan

GRAVITY: Final = 9.80665
"""Newtons of a kilogram-force, by definition."""
KILO: Final = 1000.0


@dataclass(frozen=True, slots=True)
class WindFacts:
    """Winds (m/s) in the open and at the hub, and powers (W) in all winds and in the mean one."""

    open_wind: MetrePerSecond
    hub: MetrePerSecond
    mean: Watt
    at_mean: Watt


@dataclass(frozen=True, slots=True)
class Drag:
    """What a towed rotor holds the boat back with, in newtons and in kilograms of force."""

    newtons: float
    kilograms: float


def working(one: Brought, plan: Plan, condition: str) -> tuple[Step, ...]:
    """Return what is marked, every derate with what is left after it, and what it comes to.

    Parameters
    ----------
    one : Brought
        A source of the plan.
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    tuple of Step
        Shape ``(n,)``; empty where something must be entered first.
    """
    kinds: dict[str, Callable[[Brought, Plan, str], tuple[Step, ...]]] = {
        "solar": _solar,
        "alternator": _alternator,
        "wind": _wind,
        "generator": _charger,
        "shore": _charger,
    }
    told = kinds.get(one.source.kind)
    return told(one, plan, condition) if told and one.lines and not one.missing else ()


def _alternator(one: Brought, _plan: Plan, _condition: str) -> tuple[Step, ...]:
    read = one.source.turning.read
    if read is not None:
        return (Step("read", one.lines[0].why, f"{said(read)} A", one.lines[0].source),)
    return _from("marked", "cold and fast", one.source.current or 0.0, one)


def _charger(one: Brought, _plan: Plan, _condition: str) -> tuple[Step, ...]:
    marked = (one.current or 0.0) / prod(line.factor for line in one.lines)
    return _from("charger", "as marked", marked, one)


def _from(what: str, why: str, marked: float, one: Brought) -> tuple[Step, ...]:
    return (Step(what, why, f"{said(marked)} A"), *working_of(marked, "A", one.lines))


def _solar(one: Brought, plan: Plan, _condition: str) -> tuple[Step, ...]:
    where, panels = where_of(plan), one.source.panels
    if where is None or where.days is None or one.source.watts is None:
        return ()
    plane = Plane(panels.tilt, panels.facing)
    profile = day_profile(
        where.latitude, where.day_of_year, where.days.mean, QUARTER.step, plane
    )  # fmt: skip
    hours = sum(profile) * STEP / KILO
    volts = plan.boat.volts if panels.overall is not None else charging_volts(plan.boat.volts)
    marked = one.source.watts * hours / volts
    words = f"{said(one.source.watts)} W × {said(hours)} h of full sun / {said(volts)} V"
    return (
        Step("marked", words, f"{said(marked)} Ah"),
        *working_of(marked, "Ah", one.lines),
    )


def _wind(one: Brought, plan: Plan, condition: str) -> tuple[Step, ...]:
    facts = wind_facts(one.source, plan, condition)
    if facts is None:
        return ()
    known = "as stated" if one.source.rotor.wind_speed else "mean of the month"
    steps = [
        Step("wind", f"{known}, 10 m above open water", f"{said(facts.open_wind)} m/s"),
        *working_of(facts.open_wind, "m/s", one.lines),
    ]
    if condition == "passage":
        words = f"wind abeam and {said(one.source.rotor.boat_speed)} m/s of the boat's own"
        steps.append(Step("under way", words, f"{said(facts.hub)} m/s"))
    steps.append(
        Step("power", "mean of all winds about that mean", f"{said(facts.mean)} W", RAYLEIGH)
    )
    return tuple(steps)


def by_controller(source: SourcePlan, plan: Plan, condition: str) -> tuple[Brought, ...]:
    """Return what the same panels bring with each kind of controller.

    Parameters
    ----------
    source : SourcePlan
        Of kind solar.
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    tuple of Brought
        Shape ``(2,)``, in the order of CONTROLLERS; a whole measured with one is left out of both.
    """
    both = tuple(
        replace(source, panels=replace(source.panels, controller=name, overall=None))
        for name, _ in CONTROLLERS
    )
    return brought_of(replace(plan, sources=both), condition)


def wind_facts(source: SourcePlan, plan: Plan, condition: str) -> WindFacts | None:
    """Return what a turbine feels and makes of it.

    Parameters
    ----------
    source : SourcePlan
        Of kind wind.
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Returns
    -------
    WindFacts or None
        None where its size or the wind is not known.
    """
    where, turbine = where_of(plan), turbine_of(source)
    hub = wind_at(source, where, condition)
    open_wind = source.rotor.wind_speed or (where.wind if where else None)
    if turbine is None or hub is None or open_wind is None:
        return None
    return WindFacts(open_wind, hub, mean_power(turbine, hub), power_at(turbine, hub))


def drag_of(source: SourcePlan) -> Drag | None:
    """Return what a towed generator holds the boat back with at its speed.

    Parameters
    ----------
    source : SourcePlan
        Of kind water.

    Returns
    -------
    Drag or None
        None where its rotor is not known.
    """
    across = source.rotor.diameter
    if across is None:
        return None
    rotor = Rotor(across, source.rotor.coefficient)
    if source.watts is not None:
        rotor = Rotor(across, source.rotor.coefficient, source.watts)
    force = drag(rotor, source.rotor.boat_speed)
    return Drag(force, force / GRAVITY)


def dock_watts(source: SourcePlan, plan: Plan) -> Watt | None:
    """Return what a shore charger asks of the dock at its full current.

    Parameters
    ----------
    source : SourcePlan
        Of kind shore.
    plan : Plan
        As read.

    Returns
    -------
    Watt or None
        None where its current is not known. [W]
    """
    if source.current is None:
        return None
    return ac_watts(Charger(source.current), source.current, absorbing_volts(plan))
