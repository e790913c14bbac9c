"""The same boat at 12, 24 and 48 V: currents, conductors by the same rules, and their copper."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.conductors.drop import ALLOWED, Task, rule_drop
from engine.conductors.mechanics import smallest_judgement
from engine.conductors.sizes import STOCKED
from engine.conductors.sizing import least_size
from engine.finding import Verdict
from engine.loads.load import CONDITIONS, bank_current
from engine.source import Source, common_practice
from engine.units import Amp, Metre, Share, Volt, Watt

if TYPE_CHECKING:
    from engine.conductors.sizes import Size
    from engine.plan.parts import Circuit, Plan

SYSTEMS: Final = (Volt(12.0), Volt(24.0), Volt(48.0))
DENSITY: Final = 0.00889
"""Copper, kg for each mm² and metre."""
DENSITY_SOURCE: Final = Source("IEC 60028", "1925", "8.89 g/cm³ at 20 °C")
MOST_ABREAST: Final = 4
"""Conductors side by side beyond which nothing is offered."""
LARGE: Final = Amp(20.0)
"""Draw beyond which gear is bought for the bank's own volts, not fed by a converter."""
LARGE_SOURCE: Final = common_practice("gear above about 20 A is bought for the system's volts")


@dataclass(frozen=True, slots=True)
class Fitted:
    """A circuit at one system's volts: its current (A), its conductors, and their copper (kg).

    ``size`` is None where even MOST_ABREAST conductors side by side do not do; ``share`` is what
    the conductor fitted now would lose there (1), None where none is stated.
    """

    current: Amp
    size: Size | None
    abreast: int
    mass: float
    share: Share | None


@dataclass(frozen=True, slots=True)
class Row:
    """One circuit at each of SYSTEMS, shape ``(3,)``.

    ``aboard`` is the copper of the conductors fitted now (kg), None where none are stated.
    """

    circuit: Circuit
    fitted: tuple[Fitted, ...]
    aboard: float | None


@dataclass(frozen=True, slots=True)
class Volts:
    """Circuits, the largest current first; least copper at each of SYSTEMS (kg), and what is open.

    ``aboard`` is the copper fitted now (kg), of the circuits that state their conductors.
    ``large`` are loads bought for the bank's volts; ``small`` may have to be fed by a converter,
    all together ``converter`` (W). ``unknown`` are circuits without run, current or insulation;
    ``unsuited`` counts those that no conductor suits, at each system.
    """

    rows: tuple[Row, ...]
    mass: tuple[float, ...]
    aboard: float
    unsuited: tuple[int, ...]
    unknown: tuple[str, ...]
    large: tuple[str, ...]
    small: tuple[str, ...]
    converter: Watt


def fitted_at(circuit: Circuit, system: Volt, now: Volt, catalogue: str) -> Fitted | None:
    """Return a circuit as it would be at other volts, its watts unchanged.

    Parameters
    ----------
    circuit : Circuit
        As stated.
    system : Volt
        Nominal, to try. [V]
    now : Volt
        Nominal, as the plan is. [V]
    catalogue : str
        Sizes to choose from where the circuit has none.

    Returns
    -------
    Fitted or None
        None where run, current or insulation is not known.
    """
    run, stated, around = circuit.run, circuit.current, circuit.around
    if run is None or stated is None or around is None:
        return None
    current = Amp(stated.likely * now / system)
    share = None
    allowed = Share(ALLOWED[circuit.allowed])
    metres = Metre(run.likely)
    if circuit.size:
        task = Task(system, Amp(current / circuit.parallel), metres, allowed)
        share = share_lost(task, circuit.size)
        catalogue = circuit.size.catalogue
    for abreast in range(1, MOST_ABREAST + 1):
        task = Task(system, Amp(current / abreast), metres, allowed)
        size = _sturdy(least_size(catalogue, task, around).size, circuit)
        if size:
            mass = copper(size, metres) * abreast
            return Fitted(current, size, abreast, mass, share)
    return Fitted(current, None, MOST_ABREAST, 0.0, share)


def _sturdy(size: Size | None, circuit: Circuit) -> Size | None:
    """Return the size, or the next that is thick enough to bear handling."""
    if size is None:
        return None
    thicker = (one for one in STOCKED[size.catalogue] if one.area >= size.area)
    return next(
        one
        for one in thicker
        if smallest_judgement(one, sheathed=circuit.in_sheath).verdict == Verdict.FINE
    )


def share_lost(task: Task, size: Size) -> Share:
    """Return the share of the nominal volts a conductor loses, by the rule.

    Parameters
    ----------
    task : Task
        What the run must do.
    size : Size
        Of any catalogue.

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> size = read_size("10 AWG")
    >>> at = [share_lost(Task(Volt(v), Amp(120 / v), Metre(5.0), Share(0.03)), size)
    ...       for v in (12.0, 24.0)]
    >>> round(at[0] / at[1], 9)
    4.0
    """
    return Share(rule_drop(task.current, task.run, size) / task.volts)


def copper(size: Size, run: Metre) -> float:
    """Return the copper of a loop.

    Parameters
    ----------
    size : Size
        Of both conductors.
    run : Metre
        One way. [m]

    Returns
    -------
    float
        There and back, without insulation. [kg]

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> copper(read_size("50 mm2"), Metre(10.0))
    8.89
    """
    return size.area * 2 * run * DENSITY


def copper_aboard(circuit: Circuit) -> float | None:
    """Return the copper of the conductors a circuit has.

    Parameters
    ----------
    circuit : Circuit
        As stated.

    Returns
    -------
    float or None
        None where run or conductor is not stated. [kg]
    """
    if circuit.run is None or circuit.size is None:
        return None
    return copper(circuit.size, Metre(circuit.run.likely)) * circuit.parallel


@lru_cache(maxsize=4)
def volts_of(plan: Plan, condition: str) -> Volts:
    """Return the same boat at each of SYSTEMS.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS; what runs in it counts for a converter.
    """
    now = plan.boat.volts
    rows, unknown = [], []
    for circuit in plan.circuits:
        if not circuit.on_bank:
            continue
        tried = [fitted_at(circuit, one, now, plan.boat.catalogue) for one in SYSTEMS]
        known = tuple(one for one in tried if one)
        if known:
            rows.append(Row(circuit, known, copper_aboard(circuit)))
        else:
            unknown.append(circuit.name)
    rows.sort(key=lambda row: -row.fitted[0].current)
    places = range(len(SYSTEMS))
    large, small, watts = _converted(plan, condition)
    return Volts(
        tuple(rows),
        tuple(sum(row.fitted[place].mass for row in rows) for place in places),
        sum(row.aboard or 0.0 for row in rows),
        tuple(sum(row.fitted[place].size is None for row in rows) for place in places),
        tuple(unknown),
        large,
        small,
        watts,
    )


def _converted(plan: Plan, condition: str) -> tuple[tuple[str, ...], tuple[str, ...], Watt]:
    """Return large loads, small ones, and the watts of the small ones if all ran at once."""
    place = list(CONDITIONS).index(condition)
    large, small, watts = [], [], 0.0
    for load in plan.loads:
        current = bank_current(load, plan.supply)
        if load.supply != "dc" or current is None:
            continue
        if current.likely > LARGE * 12 / plan.boat.volts:
            large.append(load.name)
            continue
        small.append(load.name)
        hours = load.hours[place]
        if hours is None or hours.likely > 0:
            watts += current.likely * plan.boat.volts
    return tuple(large), tuple(small), Watt(watts)
