"""Carrying capacity: what a conductor may carry without spoiling its insulation."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import TYPE_CHECKING, Final

from engine.conductors.tables import BUNDLE, CARRYING, ENGINE_SPACE, INSULATIONS
from engine.finding import Rule, Step
from engine.problem import Problem
from engine.source import Source
from engine.units import Amp, Celsius, said

if TYPE_CHECKING:
    from engine.conductors.sizes import Size

BASE: Final = Celsius(30.0)
"""Ambient of the carrying table, °C."""
ENGINE_AMBIENT: Final = Celsius(50.0)
"""Ambient that the engine-space factors amount to, °C."""

HEAT: Final = Rule(
    "heat",
    "the conductor carries the current without passing its insulation's temperature",
    CARRYING.source,
)
AMBIENT_SOURCE: Final = Source(
    "heat balance", "own derivation", "√((Tmax − Ta)/(Tmax − 30)), the form of 33 CFR note 1"
)


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Where a conductor lives: insulation class and ambient in °C, engine space, bundle."""

    insulation: int = 105
    engine_space: bool = False
    bundle: int = 1
    ambient: Celsius = BASE

    def __post_init__(self) -> None:
        if self.insulation not in INSULATIONS:
            classes = ", ".join(str(one) for one in INSULATIONS)
            raise Problem(
                "insulation",
                f"No table gives insulation of {said(self.insulation)} °C.",
                f"Enter {classes} degC; the figure is printed on the jacket.",
            )


def bundle_factor(bundle: int) -> float:
    """Return the factor for conductors run together.

    Parameters
    ----------
    bundle : int
        Current-carrying conductors run together, from 1. [1]

    Returns
    -------
    float
        To multiply the printed amperes by. [1]

    Examples
    --------
    >>> [bundle_factor(n) for n in (1, 2, 3, 6, 7, 24, 25)]
    [1.0, 1.0, 0.7, 0.6, 0.5, 0.5, 0.4]
    """
    return BUNDLE[max(fewest for fewest in BUNDLE.rows if fewest <= bundle)]


def warmth_factor(around: Surroundings) -> float:
    """Return the factor for the air around the conductor.

    The printed engine-space factor, or the heat balance for another ambient; the smaller where
    both apply, since the first is the second at 50 °C.

    Parameters
    ----------
    around : Surroundings
        Where the conductor lives.

    Returns
    -------
    float
        To multiply the printed amperes by. [1]

    References
    ----------
    .. [1] 33 CFR 183.425, table 5, note 1.

    Examples
    --------
    >>> warmth_factor(Surroundings(engine_space=True))
    0.85
    """
    room = max(around.insulation - around.ambient, 0.0)
    by_ambient = sqrt(room / (around.insulation - BASE))
    if not around.engine_space:
        return by_ambient
    printed = ENGINE_SPACE[around.insulation]
    return min(printed, by_ambient) if around.ambient > BASE else printed


def printed_amperes(size: Size, insulation: int) -> Amp:
    """Return the printed amperes of the row a size counts as.

    Parameters
    ----------
    size : Size
        A metric size counts as the next gauge with no more copper.
    insulation : int
        Temperature class. [°C]

    Returns
    -------
    Amp
        At 30 °C, not bundled. [A]

    Raises
    ------
    Problem
        If the size is thinner than the table.
    """
    if not size.counts_as:
        raise Problem(
            "size", f"{size} is thinner than any row of the carrying table.", "Use 1 mm2 or more."
        )
    return Amp(float(CARRYING[size.counts_as][INSULATIONS.index(insulation)]))


def carries(size: Size, around: Surroundings) -> Amp:
    """Return the carrying capacity after every factor.

    Parameters
    ----------
    size : Size
        Of any catalogue.
    around : Surroundings
        Where it lives.

    Returns
    -------
    Amp
        Steady current it may carry. [A]

    References
    ----------
    .. [1] 33 CFR 183.425, table 5 with notes 1 and 2.

    Examples
    --------
    >>> from engine.conductors.sizes import read_size
    >>> carries(read_size("10 AWG"), Surroundings(engine_space=True))
    51.0
    """
    printed = printed_amperes(size, around.insulation)
    return Amp(printed * warmth_factor(around) * bundle_factor(around.bundle))


def working_temperature(size: Size, around: Surroundings, current: Amp) -> Celsius:
    """Return how warm the copper runs.

    Parameters
    ----------
    size : Size
        Of any catalogue.
    around : Surroundings
        Where it lives.
    current : Amp
        Steady. [A]

    Returns
    -------
    Celsius
        ``Ta + (Tmax − 30) (I / (I30 · bundle))²``. [°C]

    Notes
    -----
    Heat made grows with the square of the current and is lost in proportion to the rise; at the
    printed amperes the rise is Tmax − 30 by definition of the table.
    """
    air = max(around.ambient, ENGINE_AMBIENT) if around.engine_space else around.ambient
    full = printed_amperes(size, around.insulation) * bundle_factor(around.bundle)
    return Celsius(air + (around.insulation - BASE) * (current / full) ** 2)


def working_of_carries(size: Size, around: Surroundings) -> tuple[Step, ...]:
    """Return how the carrying capacity was reached.

    Parameters
    ----------
    size : Size
        Of any catalogue.
    around : Surroundings
        Where it lives.
    """
    printed = printed_amperes(size, around.insulation)
    row = f"{size.counts_as} AWG row, {around.insulation} °C insulation"
    if str(size) != f"{size.counts_as} AWG":
        row = f"{size} counts as the {row}"
    steps = [Step("printed amperes at 30 °C", row, f"{said(printed)} A", CARRYING.source)]
    if around.engine_space or around.ambient != BASE:
        space = "engine space" if around.engine_space else "air"
        why = f"{space}, {said(around.ambient)} °C stated"
        source = ENGINE_SPACE.source if around.engine_space else AMBIENT_SOURCE
        steps.append(Step("factor for warmth", why, said(warmth_factor(around)), source))
    factor = bundle_factor(around.bundle)
    if factor != 1:
        why = f"{around.bundle} current-carrying conductors together"
        steps.append(Step("factor for the bundle", why, said(factor), BUNDLE.source))
    steps.append(Step("carries", "amperes × factors", f"{said(carries(size, around), 4)} A"))
    return tuple(steps)
