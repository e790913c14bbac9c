"""When the engine charges: at what charge it starts and stops, for how long, and never by night."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import Final

from engine.problem import Problem
from engine.simulate.house import FULL, House
from engine.units import Amp, Hour, Share, said

DAY: Final = 24.0
LEAST_RUN: Final = Hour(0.5)
INSTANT: Final = 1e-9
"""Hours that count as no time, so that the last bits of a clock decide nothing."""


@dataclass(frozen=True, slots=True)
class Engine:
    """What an engine brings: ``current`` at the bank (A) and ``fuel`` burnt (L/h)."""

    current: Amp
    fuel: float = 0.0

    def __post_init__(self) -> None:
        if not self.current > 0:
            raise Problem(
                "current",
                f"An engine that brings {said(self.current)} A charges nothing.",
                "Enter 50 A; or say that the engine never charges.",
            )
        if not self.fuel >= 0:
            raise Problem("fuel", f"{said(self.fuel)} L/h is below zero.", "Enter 1 L/h.")


@dataclass(frozen=True, slots=True)
class Policy:
    """When the engine runs to charge.

    It starts at ``engine_on_at`` and stops at ``engine_off_at`` (1) but never before ``least_run``
    (h); it is still from ``quiet_from`` to ``quiet_to``, hours of the clock, and does not start
    where it would have to stop too soon. Equal hours mean no quiet. ``never`` leaves it off.
    """

    engine_on_at: Share = Share(0.3)  # noqa: RUF009 - a NewType is a float
    engine_off_at: Share = Share(0.7)  # noqa: RUF009
    least_run: Hour = LEAST_RUN
    quiet_from: Hour = Hour(0.0)  # noqa: RUF009
    quiet_to: Hour = Hour(0.0)  # noqa: RUF009
    never: bool = False

    def __post_init__(self) -> None:
        if not 0 <= self.engine_on_at < self.engine_off_at:
            raise Problem(
                "engine_on_at",
                f"On at {said(self.engine_on_at * 100)} % and off at "
                f"{said(self.engine_off_at * 100)} % does not rise.",
                "Enter the lower first, such as 30 % and 70 %.",
            )
        if self.engine_off_at > FULL:
            raise Problem(
                "engine_off_at",
                f"A tapering current may never come to {said(self.engine_off_at * 100)} %.",
                f"Enter at most {said(FULL * 100)} %, which most call full.",
            )
        for name in ("quiet_from", "quiet_to"):
            if not 0 <= getattr(self, name) < DAY:
                raise Problem(
                    name,
                    f"{said(getattr(self, name))} is no hour of the clock.",
                    "Enter 0 to 23.9.",
                )
        if not 0 <= self.least_run <= DAY - self.quiet:
            raise Problem(
                "least_run",
                f"A run of {said(self.least_run)} h does not fit between quiet hours that last "
                f"{said(self.quiet)} h.",
                f"Enter at most {said(DAY - self.quiet)} h, or shorten the quiet hours.",
            )

    @property
    def words(self) -> str:
        """The policy as a sentence."""
        if self.never:
            return "The engine is never run to charge."
        quiet = (
            f", and is still for {said(self.quiet)} h from {said(self.quiet_from)} h"
            if self.quiet
            else ""
        )
        return (
            f"The engine starts at {said(self.engine_on_at * 100)} %, stops at "
            f"{said(self.engine_off_at * 100)} %, runs at least {said(self.least_run)} h{quiet}."
        )

    @property
    def quiet(self) -> Hour:
        """How long it is quiet in a day, h."""
        return Hour((self.quiet_to - self.quiet_from) % DAY)

    def until_quiet(self, time: float) -> float:
        """Return how long the engine may run from now.

        Parameters
        ----------
        time : float
            Since the first midnight. [h]

        Returns
        -------
        float
            0 in quiet hours, infinite where there are none. [h]

        Examples
        --------
        >>> night = Policy(quiet_from=Hour(21.0), quiet_to=Hour(7.0))
        >>> [night.until_quiet(time) for time in (6.0, 7.0, 20.0, 21.0, 44.0)]
        [0.0, 14.0, 1.0, 0.0, 1.0]
        """
        if self.quiet <= 0:
            return inf
        since = (time - self.quiet_from) % DAY
        return 0.0 if since < self.quiet - INSTANT else DAY - since

    def may_start(self, time: float) -> float:
        """Return the first moment from now at which a whole least run fits.

        Parameters
        ----------
        time : float
            Since the first midnight. [h]

        Returns
        -------
        float
            Now, or the end of quiet hours. [h]

        Examples
        --------
        >>> night = Policy(quiet_from=Hour(21.0), quiet_to=Hour(7.0))
        >>> [night.may_start(time) for time in (12.0, 20.75, 30.0)]
        [12.0, 31.0, 31.0]
        """
        if self.quiet <= 0:
            return time
        since = (time - self.quiet_from) % DAY
        quiet_now = since < self.quiet - INSTANT
        if not quiet_now and DAY - since >= max(self.least_run, INSTANT):
            return time
        return time - since + self.quiet + (0.0 if quiet_now else DAY)


NEVER: Final = Policy(never=True)
"""The engine is not run to charge."""


@dataclass(frozen=True, slots=True)
class Setup:
    """A bank, when its engine charges, and what that engine brings; None where there is none."""

    house: House
    policy: Policy
    engine: Engine | None = None
