"""What runs in a day, laid into the hours in which it runs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from engine.problem import Problem
from engine.units import Amp, Hour, Share, said

WINDOWS: Final = ("any", "day", "night")
DAY: Final = 24.0
STEP: Final = Hour(0.25)
"""A quarter of an hour."""


@dataclass(frozen=True, slots=True)
class Use:
    """One load in a day: running ``current`` (A), ``hours`` (h), ``duty`` (1), and its window."""

    name: str
    current: Amp
    hours: Hour
    duty: Share = Share(1.0)  # noqa: RUF009 - a NewType is a float
    window: str = "any"
    essential: bool = False

    def __post_init__(self) -> None:
        if not self.current >= 0:
            raise Problem(
                "current", f"{self.name} cannot draw {said(self.current)} A.", "Enter 4.6 A."
            )
        if not 0 <= self.hours <= DAY:
            raise Problem(
                "hours",
                f"{self.name} cannot run {said(self.hours)} h in a day.",
                "Enter 0 to 24 h.",
            )
        if not 0 <= self.duty <= 1:
            raise Problem(
                "duty", f"{said(self.duty * 100)} % is no duty of {self.name}.", "Enter 0 to 100 %."
            )
        if self.window not in WINDOWS:
            raise Problem(
                "window",
                f"{self.name} cannot run in “{self.window}”.",
                "Choose any, day or night.",
            )


@dataclass(frozen=True, slots=True)
class Daylight:
    """Sunrise and sunset by the boat's clock (h); equal in polar night, 0 and 24 with no night."""

    sunrise: Hour
    sunset: Hour

    def __post_init__(self) -> None:
        if not 0 <= self.sunrise <= self.sunset <= DAY:
            raise Problem(
                "sunrise",
                f"The sun cannot rise at {said(self.sunrise)} and set at {said(self.sunset)}.",
                "Enter hours of the boat's own clock, such as 5.5 and 20.25.",
            )

    def hours(self, window: str) -> Hour:
        """Return how long a window lasts.

        Parameters
        ----------
        window : str
            One of WINDOWS.

        Returns
        -------
        Hour
            By the true length of the night. [h]
        """
        day = self.sunset - self.sunrise
        return Hour({"any": DAY, "day": day, "night": DAY - day}[window])


def intervals(step: Hour) -> int:
    """Return how many steps make a day.

    Parameters
    ----------
    step : Hour
        Above zero, and a whole part of a day. [h]

    Returns
    -------
    int
        Such as 96. [1]
    """
    count = round(DAY / step) if step > 0 else 0
    if not count or abs(count * step - DAY) > 1e-9:
        raise Problem("step", f"Steps of {said(step)} h do not make up a day.", "Enter 0.25 h.")
    return count


def profile(uses: tuple[Use, ...], daylight: Daylight, step: Hour = STEP) -> tuple[Amp, ...]:
    """Return the mean current of each step of a day.

    Parameters
    ----------
    uses : tuple of Use
        Shape ``(n,)``.
    daylight : Daylight
        Of that day.
    step : Hour
        A whole part of a day. [h]

    Returns
    -------
    tuple of Amp
        Shape ``(96,)`` for a quarter of an hour, from midnight. [A]

    Notes
    -----
    The hours of a load lie evenly in its window; what does not fit there lies evenly in the rest
    of the day. The steps times their currents sum to current × hours × duty.

    Examples
    --------
    >>> lamp = Use("anchor light", Amp(0.5), Hour(8.0), window="night")
    >>> day = profile((lamp,), Daylight(Hour(6.0), Hour(18.0)), Hour(6.0))
    >>> day, sum(day) * 6
    ((0.333, 0.0, 0.0, 0.333), 4.0)
    """
    count = intervals(step)
    by_day = by_night = 0.0
    day, night = daylight.hours("day"), daylight.hours("night")
    for use in uses:
        inside, rest = _laid(use, daylight)
        current = use.current * use.duty
        if use.window == "any":
            by_day += current * inside / DAY
            by_night += current * inside / DAY
        elif use.window == "day":
            by_day += current * inside / day if day > 0 else 0.0
            by_night += current * rest / night if night > 0 else 0.0
        else:
            by_night += current * inside / night if night > 0 else 0.0
            by_day += current * rest / day if day > 0 else 0.0
    light = (
        max(min((n + 1) * step, daylight.sunset) - max(n * step, daylight.sunrise), 0.0) / step
        for n in range(count)
    )
    return tuple(Amp(by_day * share + by_night * (1 - share)) for share in light)


def _laid(use: Use, daylight: Daylight) -> tuple[float, float]:
    """Return the hours that fit a window, and the rest."""
    inside = min(use.hours, daylight.hours(use.window))
    return inside, use.hours - inside


def spilt(uses: tuple[Use, ...], daylight: Daylight) -> tuple[str, ...]:
    """Return a sentence for each use whose hours do not fit its window.

    Parameters
    ----------
    uses : tuple of Use
        Shape ``(n,)``.
    daylight : Daylight
        Of that day.

    Examples
    --------
    >>> lamp = Use("Anchor light", Amp(0.5), Hour(12.0), window="night")
    >>> spilt((lamp,), Daylight(Hour(5.0), Hour(20.0)))
    ('Anchor light runs 12 h, but the night lasts 9 h: 3 h lie by day.',)
    """
    found = []
    for use in uses:
        inside, rest = _laid(use, daylight)
        if rest > 0:
            other = "by day" if use.window == "night" else "by night"
            found.append(
                f"{use.name} runs {said(use.hours)} h, but the {use.window} lasts "
                f"{said(inside)} h: {said(rest)} h lie {other}."
            )
    return tuple(found)
