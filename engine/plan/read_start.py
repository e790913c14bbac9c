"""Reads the start bank, and what more is stated of the house bank."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.plan.reader import Reader
from engine.plan.start_fields import START
from engine.plan.start_parts import BankMore, StartBank, Wanted
from engine.problem import Problem
from engine.units import Amp, AmpHour, Share, Volt, said

if TYPE_CHECKING:
    from engine.plan.document import Row

OFF: Final = 0.08
"""How far labels in series may be off the system's volts: four cells of 3.2 V serve 12 V."""
YES_OR_NO: Final = {"yes": True, "no": False}


def _amp(reader: Reader, name: str) -> Amp | None:
    value = reader.value(name)
    return None if value is None else Amp(value)


def _series(reader: Reader, battery: float | None, system: Volt) -> int:
    """Return how many batteries stand in series; 1 where their volts do not add up."""
    if battery is None:
        return 1
    count = max(round(system / battery), 1)
    if abs(count * battery - system) > OFF * system:
        what = f"Batteries of {said(battery)} V in series do not make {said(system)} V."
        mend = "Enter the volts on one battery's label, such as 6 V, or the boat's system volts."
        reader.problems.append(Problem(f"{reader.where}.battery_volts", what, mend))
        return 1
    return count


def more_of(reader: Reader, system: Volt) -> BankMore:
    """Return what more is stated of a bank.

    Parameters
    ----------
    reader : Reader
        Of the bank's row.
    system : Volt
        Of the boat. [V]
    """
    battery = reader.value("battery_volts")
    return BankMore(
        None if battery is None else Volt(battery),
        _series(reader, battery, system),
        YES_OR_NO.get(reader.choice("alike")),
        YES_OR_NO.get(reader.choice("cold_stop")),
        _amp(reader, "most_charge"),
        _amp(reader, "most_discharge"),
        reader.value("mass"),
        reader.value("cycles"),
    )


def wanted_of(reader: Reader) -> Wanted:
    """Return what a bank is sized for."""
    deepest = reader.value("daily_depth")
    return Wanted(
        reader.sure("days_wanted"),
        None if deepest is None else Share(deepest),
        Share(reader.sure("end_of_life")),
        reader.sure("margin"),
    )


def start_of(row: Row) -> tuple[StartBank, tuple[Problem, ...]]:
    """Return the start bank a row states, and what cannot be read of it."""
    reader = Reader("start", row, START)
    capacity = reader.value("capacity")
    bank = StartBank(
        reader.choice("joined"),
        YES_OR_NO.get(reader.choice("parts")),
        _amp(reader, "converter"),
        reader.choice("chemistry"),
        None if capacity is None else AmpHour(capacity),
    )
    return bank, tuple(reader.problems)
