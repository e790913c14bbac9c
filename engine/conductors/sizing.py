"""The least size that will do: for the drop, for heat, and which of the two governs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.conductors.carrying import HEAT, carries
from engine.conductors.drop import DROP, circular_mils_needed
from engine.conductors.sizes import STOCKED
from engine.finding import Rule, meets

if TYPE_CHECKING:
    from engine.conductors.carrying import Surroundings
    from engine.conductors.drop import Task
    from engine.conductors.sizes import Size


@dataclass(frozen=True, slots=True)
class Choice:
    """The sizes each rule asks for; None where the catalogue has none so thick."""

    for_drop: Size | None
    for_heat: Size | None
    circular_mils: float

    @property
    def size(self) -> Size | None:
        """The thicker of the two: the size to buy."""
        if self.for_drop is None or self.for_heat is None:
            return None
        return max(self.for_drop, self.for_heat, key=lambda size: size.area)

    @property
    def governing(self) -> Rule:
        """The rule that asks for more; drop where they agree."""
        if self.for_drop is None:
            return DROP
        if self.for_heat is None or self.for_heat.area > self.for_drop.area:
            return HEAT
        return DROP


def least_size(catalogue: str, task: Task, around: Surroundings) -> Choice:
    """Return the least sizes of a catalogue for the drop and for heat.

    Parameters
    ----------
    catalogue : str
        ``awg``, ``sae`` or ``metric``.
    task : Task
        What the run must do.
    around : Surroundings
        Where the conductor lives.

    Examples
    --------
    >>> from engine.conductors.carrying import Surroundings
    >>> from engine.conductors.drop import Task
    >>> found = least_size("sae", Task(12.0, 10.0, 3.2004, 0.03), Surroundings())
    >>> str(found.size), found.governing.name
    ('10 SAE', 'drop')
    """
    needed = circular_mils_needed(task)
    sizes = STOCKED[catalogue]
    for_drop = next((size for size in sizes if meets(needed, size.circular_mils)), None)
    for_heat = next((size for size in sizes if meets(task.current, carries(size, around))), None)
    return Choice(for_drop, for_heat, needed)
