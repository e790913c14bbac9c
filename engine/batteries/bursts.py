"""How large a bank must be for short heavy loads, such as a windlass: the section method."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Step
from engine.source import Source
from engine.units import Amp, AmpHour, Hour, Share, said

if TYPE_CHECKING:
    from collections.abc import Callable

SECTIONS: Final = Source("IEEE 485", "as taught in lecture notes", "section method")


@dataclass(frozen=True, slots=True)
class Period:
    """A spell of one current: A and h."""

    current: Amp
    time: Hour


def factor_of_rate(capacity: AmpHour, current: Amp) -> Hour:
    """Return the printed capacity over the current a cell carries for a time.

    Parameters
    ----------
    capacity : AmpHour
        As the cell's sheet states it. [Ah]
    current : Amp
        What the sheet says it carries for that time, above zero. [A]

    Returns
    -------
    Hour
        Ampere-hours to buy for each ampere carried. [h]

    Examples
    --------
    >>> factor_of_rate(AmpHour(104.0), Amp(58.0))
    1.793
    """
    return Hour(capacity / current)


def factor_by_exponent(time: Hour, rated_hours: Hour, exponent: float) -> Hour:
    """Return the same factor by Peukert's law, for a cell without a printed table.

    Parameters
    ----------
    time : Hour
        The current is carried for. [h]
    rated_hours : Hour
        The capacity is stated for. [h]
    exponent : float
        Peukert's; 1 gives the time itself. [1]

    Returns
    -------
    Hour
        ``H (t / H)^(1 / k)``. [h]

    Examples
    --------
    >>> [factor_by_exponent(Hour(time), Hour(20.0), 1.2) for time in (20.0, 1.0)]
    [20.0, 1.6475]
    """
    return Hour(rated_hours * (time / rated_hours) ** (1 / exponent))


def section_capacity(periods: tuple[Period, ...], factor: Callable[[Hour], Hour]) -> AmpHour:
    """Return the capacity the worst section asks for, before temperature, margin and age.

    Parameters
    ----------
    periods : tuple of Period
        Shape ``(n,)``, in the order they come.
    factor : callable
        Of a time, the ampere-hours for each ampere carried so long. [h]

    Returns
    -------
    AmpHour
        The greatest over the sections that end with each period. [Ah]

    Notes
    -----
    In a section each rise of the current counts until the section ends, and each fall is given
    back: ``Σ (A_p − A_(p−1)) k(time left)``.

    References
    ----------
    .. [1] IEEE 485, section method, as taught in lecture notes.

    Examples
    --------
    >>> windlass = (Period(Amp(5.0), Hour(1.0)), Period(Amp(80.0), Hour(0.25)))
    >>> section_capacity(windlass, lambda time: time)
    25.0
    """
    return AmpHour(
        max((_section(periods[: n + 1], factor) for n in range(len(periods))), default=0)
    )


def _section(periods: tuple[Period, ...], factor: Callable[[Hour], Hour]) -> float:
    left: float = sum(one.time for one in periods)
    asked = before = 0.0
    for one in periods:
        asked += (one.current - before) * factor(Hour(left))
        left -= one.time
        before = one.current
    return asked


def corrected_capacity(
    section: AmpHour, temperature_factor: float, margin: float, end_of_life: Share
) -> AmpHour:
    """Return the capacity to buy for bursts.

    Parameters
    ----------
    section : AmpHour
        What the worst section asks for. [Ah]
    temperature_factor : float
        Cell-size multiplier. [1]
    margin : float
        For what is not yet known, such as 1.15. [1]
    end_of_life : Share
        Of its capacity an old bank still has, above zero. [1]

    Returns
    -------
    AmpHour
        The product of the first three over the last. [Ah]

    References
    ----------
    .. [1] IEEE 485, as taught in lecture notes.

    Examples
    --------
    >>> corrected_capacity(AmpHour(100.0), 1.19, 1.15, Share(0.8))
    171.06
    """
    return AmpHour(section * temperature_factor * margin / end_of_life)


def working_of_bursts(
    section: AmpHour, temperature_factor: float, margin: float, end_of_life: Share
) -> tuple[Step, ...]:
    """Return how the capacity for bursts was reached.

    Parameters
    ----------
    section : AmpHour
        What the worst section asks for. [Ah]
    temperature_factor : float
        Cell-size multiplier. [1]
    margin : float
        For what is not yet known, such as 1.15. [1]
    end_of_life : Share
        Of its capacity an old bank still has, above zero. [1]
    """
    whole = Share(1.0)
    warmed = corrected_capacity(section, temperature_factor, 1.0, whole)
    wider = corrected_capacity(section, temperature_factor, margin, whole)
    bought = corrected_capacity(section, temperature_factor, margin, end_of_life)
    return (
        Step("worst section", "Σ rise of current × factor of the time left",
             f"{said(section, 4)} Ah", SECTIONS),
        Step("for temperature", f"× {said(temperature_factor)}", f"{said(warmed, 4)} Ah"),
        Step("for margin", f"× {said(margin)}", f"{said(wider, 4)} Ah"),
        Step("for age", f"/ {said(end_of_life * 100)} %", f"{said(bought, 4)} Ah", SECTIONS),
    )  # fmt: skip
