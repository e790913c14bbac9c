"""What each source of the plan brings, with every derate and its reason."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.ahead.panels import Under, array_day, charging_volts
from engine.ahead.place import place_lacking, where_of
from engine.ahead.winds import turbine_of, wind_at
from engine.batteries.charging_volts import charging_volts as stage_volts
from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.tables import FLOODED
from engine.charging.alternator import Alternator, output
from engine.charging.generator import Generator, engine_fuel, generator_fuel
from engine.charging.mains import Charger, ac_watts
from engine.charging.mains import output as mains_output
from engine.charging.site import OPEN, site_derates
from engine.charging.water import Rotor, power
from engine.charging.wind import mean_power
from engine.check.shore_ways import in_force
from engine.derate import Derate
from engine.problem import Problem
from engine.simulate.policy import DAY
from engine.simulate.weather import SKIES
from engine.source import Source
from engine.units import Amp, AmpHour, Share, Volt, Watt, said, words

if TYPE_CHECKING:
    from collections.abc import Callable

    from engine.plan.parts import Plan
    from engine.plan.source_parts import SourcePlan

READ: Final = Source("owner", "as read", "by the meter, hot")


@dataclass(frozen=True, slots=True)
class Brought:
    """What a source brings in a day (Ah) under a clear, a likely and a dull sky; or by the hour.

    ``current`` is what it gives while it runs (A), ``fuel`` what it burns then (L/h). A shore
    charger gives up to that, as much as is asked, and has no charge of a day. ``started`` is true
    where somebody starts it, so that it brings nothing by itself; ``docked`` where it is such a
    charger, plugged in. ``missing`` names what must be entered before it counts.
    """

    source: SourcePlan
    clear: AmpHour = AmpHour(0.0)  # noqa: RUF009 - a NewType is a float
    likely: AmpHour = AmpHour(0.0)  # noqa: RUF009
    dull: AmpHour = AmpHour(0.0)  # noqa: RUF009
    current: Amp | None = None
    fuel: float | None = None
    lines: tuple[Derate, ...] = ()
    started: bool = False
    missing: tuple[str, ...] = ()
    words: str = ""
    docked: bool = False


def brought_of(plan: Plan, condition: str) -> tuple[Brought, ...]:
    """Return what each source brings; one with a problem says so and brings nothing.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    """
    return tuple(_one(source, plan, condition) for source in plan.sources)


def _one(source: SourcePlan, plan: Plan, condition: str) -> Brought:
    kinds: dict[str, Callable[[SourcePlan, Plan, str], Brought]] = {
        "solar": _solar,
        "alternator": _alternator,
        "wind": _wind,
        "water": _water,
        "shore": _shore,
        "generator": _generator,
    }
    if source.kind not in kinds:
        return Brought(source, missing=("what kind of source it is",))
    try:
        return kinds[source.kind](source, plan, condition)
    except Problem as problem:
        return Brought(source, missing=(str(problem.at("")),))


def _solar(source: SourcePlan, plan: Plan, condition: str) -> Brought:
    where = where_of(plan)
    missing = (() if source.watts else ("its watts",)) + (() if where else place_lacking(plan))
    if missing or where is None or source.watts is None:
        return Brought(source, missing=missing)
    if where.days is None:
        return Brought(source, words="There is no sun in that month.")
    volts = plan.boat.volts

    def under(clearness: float) -> tuple[AmpHour, tuple[Derate, ...]]:
        sky = Under(where, Share(clearness), condition)
        made = array_day(source.panels, source.watts or Watt(0.0), sky, volts)
        return made.charge, made.lines

    clear, _ = under(where.clear)
    likely, lines = under(where.days.mean)
    dull, _ = under(where.clear * SKIES["dull"])
    return Brought(source, clear, likely, dull, lines=lines)


def _alternator(source: SourcePlan, plan: Plan, _condition: str) -> Brought:
    turning = source.turning
    if turning.read is not None:
        line = Derate("read", 1.0, "read by the meter when hot", READ)
        return _engine(source, plan, turning.read, (line,))
    if source.current is None:
        return Brought(source, missing=("its amperes",), started=True)
    fitted = Alternator(source.current, turning.ratio, turning.hot, turning.limit)
    made = output(fitted, turning.speed)
    return _engine(source, plan, made.current, made.derates)


def _engine(
    source: SourcePlan, plan: Plan, current: Amp, lines: tuple[Derate, ...]
) -> Brought:  # fmt: skip
    made = Watt(current * charging_volts(plan.boat.volts))
    fuel = engine_fuel(made).likely if source.fuel is None else source.fuel
    return Brought(source, current=current, fuel=fuel, lines=lines, started=True)


def _wind(source: SourcePlan, plan: Plan, condition: str) -> Brought:
    turbine, speed = turbine_of(source), wind_at(source, where_of(plan), condition)
    missing = (() if turbine else ("how far its rotor is across",)) + (
        () if speed else (f"the mean wind, or {words(place_lacking(plan)) or 'another month'}",)
    )
    if turbine is None or speed is None:
        return Brought(source, missing=missing)
    charge = AmpHour(mean_power(turbine, speed) * DAY / charging_volts(plan.boat.volts))
    under_way = condition == "passage"
    lines = site_derates(source.rotor.height, OPEN if under_way else source.rotor.shelter)
    told = f"mean of many days, {said(speed)} m/s at the hub"
    return Brought(
        source, charge, charge, charge, lines=lines,
        words=f"{told}, wind abeam" if under_way else told,
    )  # fmt: skip


def _water(source: SourcePlan, plan: Plan, condition: str) -> Brought:
    across = source.rotor.diameter
    if across is None:
        return Brought(source, missing=("how far its rotor is across",))
    if condition != "passage":
        return Brought(source, words="It brings nothing while the boat lies still.")
    rotor = Rotor(across, source.rotor.coefficient)
    if source.watts is not None:
        rotor = Rotor(across, source.rotor.coefficient, source.watts)
    made = power(rotor, source.rotor.boat_speed)
    current = Amp(made / charging_volts(plan.boat.volts))
    charge = AmpHour(current * source.hours)
    return Brought(source, charge, charge, charge, current=current)


def _shore(source: SourcePlan, plan: Plan, condition: str) -> Brought:
    """Return what a charger gives; it gives what is asked, so a day of it is no fixed charge."""
    if source.current is None:
        return Brought(source, missing=("its amperes",))
    if condition != "dock":
        return Brought(source, current=source.current, words="It brings nothing off the dock.")
    current = source.current
    lines: tuple[Derate, ...] = ()
    service = in_force(plan.shore)
    if service is not None:
        charger, limit = Charger(source.current), plan.shore.on_inverter.limit
        inlet = min(service.rating, limit or service.rating)
        current, lines = mains_output(charger, absorbing_volts(plan), service.volts, inlet)
    words = f"Up to {said(current)} A, as much as bank and loads ask."
    return Brought(source, current=current, lines=lines, words=words, docked=True)


def absorbing_volts(plan: Plan) -> Volt:
    """Return the volts a charger gives while it asks most of its inlet.

    Parameters
    ----------
    plan : Plan
        As read; without a bank, flooded lead.
    """
    kind = CHEMISTRIES[plan.bank.chemistry if plan.bank else FLOODED]
    at = stage_volts(kind, "absorb", plan.boat.volts)
    return Volt(at.likely) if at else charging_volts(plan.boat.volts)


def _generator(source: SourcePlan, plan: Plan, _condition: str) -> Brought:
    """Return what a generator gives through the shore charger, or by its own amperes."""
    current = source.current or next(
        (one.current for one in plan.sources if one.kind == "shore" and one.current), None
    )
    missing = (() if source.watts else ("its watts",)) + (
        () if current else ("the charger it feeds, in amperes",)
    )
    if source.watts is None or current is None:
        return Brought(source, missing=missing, started=True)
    asked = ac_watts(Charger(current), current, absorbing_volts(plan))
    line: tuple[Derate, ...] = ()
    if asked > source.watts:
        share = source.watts / asked
        line = (Derate("rating", share, "the charger asks for more than it is rated"),)
        current, asked = Amp(current * share), source.watts
    fuel = source.fuel
    if fuel is None:
        fuel = generator_fuel(Generator(source.watts), asked)
    return Brought(source, current=current, fuel=fuel, lines=line, started=True)
