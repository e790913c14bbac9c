"""What changes at a moment: engine, disconnect, reserve and full, and the charge that does it."""

from __future__ import annotations

from dataclasses import dataclass, field
from math import inf
from typing import TYPE_CHECKING, Final

from engine.simulate.house import FULL
from engine.simulate.policy import INSTANT
from engine.units import said

if TYPE_CHECKING:
    from engine.simulate.course import Bank
    from engine.simulate.house import House
    from engine.simulate.policy import Engine, Policy

BAND: Final = 0.02
"""How far charge must leave a line again before crossing it is told anew."""
DAY: Final = 24.0


@dataclass(frozen=True, slots=True)
class Event:
    """Something that happened: ``time`` since the first midnight (h), its kind, and words."""

    time: float
    kind: str
    words: str

    @property
    def day(self) -> int:
        """Day of the run, from 1."""
        return int(self.time // DAY) + 1


@dataclass(frozen=True, slots=True)
class Lines:
    """The charges at which something happens, Ah; ``needs`` is where charging is called for."""

    reserve: float
    disconnect: float
    reconnect: float
    reconnect_hand: float
    on: float
    off: float
    full: float
    band: float
    needs: float


def lines_of(house: House, bank: Bank, policy: Policy) -> Lines:
    """Return the charges at which something happens.

    Parameters
    ----------
    house : House
        The house bank.
    bank : Bank
        Its numbers.
    policy : Policy
        Of the engine; one that never runs is needed at the reserve.
    """
    called = house.reserve if policy.never else policy.engine_on_at
    return Lines(
        reserve=house.reserve * bank.full,
        disconnect=house.disconnect * bank.full,
        reconnect=house.reconnect * bank.full,
        reconnect_hand=house.reconnect * bank.top if bank.two_wells else 0.0,
        on=policy.engine_on_at * bank.full,
        off=policy.engine_off_at * bank.full,
        full=FULL * bank.full,
        band=BAND * bank.full,
        needs=called * bank.full,
    )


@dataclass(slots=True)
class Switches:
    """How everything stands at a moment of a run; changed by ``settle`` alone.

    ``wait`` is when the engine, though called for, may start; ``stop_by`` and ``least_until`` are
    its latest and earliest end (h). ``needed_at`` is when it was first called for, None if never.
    """

    lines: Lines
    policy: Policy
    engine: Engine | None
    two_wells: bool
    connected: bool = True
    running: bool = False
    short: bool = False
    above_reserve: bool = True
    below_full: bool = True
    wait: float = inf
    stop_by: float = inf
    least_until: float = inf
    needed_at: float | None = None
    events: list[Event] = field(default_factory=list)

    @property
    def current(self) -> float:
        """What the engine brings now, A."""
        return self.engine.current if self.running and self.engine else 0.0

    def low(self) -> float:
        """Return the next charge below at which something happens.

        Returns
        -------
        float
            Minus infinite where nothing does; a bank without wells is empty at 0. [Ah]
        """
        lines, found = self.lines, -inf if self.two_wells else 0.0
        if self.above_reserve:
            found = max(found, lines.reserve)
        if self.needed_at is None:
            found = max(found, lines.needs)
        if self.connected:
            found = max(found, lines.disconnect)
        if not self.below_full:
            found = max(found, lines.full - lines.band)
        if self.may_run and not self.running and self.wait == inf:
            found = max(found, lines.on)
        return found

    def high(self, time: float, total: float) -> float:
        """Return the next charge above at which something happens.

        Parameters
        ----------
        time : float
            Since the first midnight. [h]
        total : float
            In both wells. [Ah]

        Returns
        -------
        float
            Infinite where nothing does. [Ah]
        """
        lines, found = self.lines, inf
        if self.below_full:
            found = lines.full
        if not self.above_reserve:
            found = min(found, lines.reserve + lines.band)
        if not self.connected and total < lines.reconnect:
            found = min(found, lines.reconnect)
        if self.running and time >= self.least_until - INSTANT:
            found = min(found, lines.off)
        return found

    @property
    def may_run(self) -> bool:
        """True where there is an engine, and a policy that uses it."""
        return self.engine is not None and not self.policy.never

    def deadline(self, time: float) -> float:
        """Return the next moment of the clock at which something happens.

        Parameters
        ----------
        time : float
            Since the first midnight. [h]

        Returns
        -------
        float
            Infinite where nothing does. [h]
        """
        if not self.running:
            return self.wait
        return self.stop_by if time >= self.least_until - INSTANT else self.least_until

    def settle(self, time: float, total: float, hand: float) -> None:
        """Change what has to change at this moment.

        Parameters
        ----------
        time : float
            Since the first midnight. [h]
        total : float
            In both wells. [Ah]
        hand : float
            In the well at hand. [Ah]
        """
        lines = self.lines
        if self.needed_at is None and total <= lines.needs:
            self.needed_at = time
        if self.above_reserve and total <= lines.reserve:
            self.above_reserve = False
            self._say(time, "reserve", "The charge is down to the reserve.")
        elif not self.above_reserve and total >= lines.reserve + lines.band:
            self.above_reserve = True
        if self.below_full and total >= lines.full:
            self.below_full = False
            self._say(time, "full", "The bank is full.")
        elif not self.below_full and total <= lines.full - lines.band:
            self.below_full = True
        empty = hand <= 0 if self.two_wells else total <= 0
        if self.connected and (total <= lines.disconnect or empty):
            self.connected = False
            if self.needed_at is None:
                self.needed_at = time
            self._say(time, "disconnect", "Low volts take off every load that is not essential.")
        elif not self.connected and total >= lines.reconnect and hand >= lines.reconnect_hand:
            self.connected = True
            self._say(time, "reconnect", "The loads are back.")
        if self.may_run:
            self._settle_engine(time, total)

    def _settle_engine(self, time: float, total: float) -> None:
        if self.running:
            enough = time >= self.least_until - INSTANT and total >= self.lines.off
            if not enough and time < self.stop_by - INSTANT:
                return
            self.running = False
            why = "has charged enough" if enough else "stops for the quiet hours"
            self._say(time, "engine stop", f"The engine {why}.")
        self.wait = inf
        dropped = not self.connected and total < self.lines.off
        if total > self.lines.on and not dropped:
            return
        start = self.policy.may_start(time)
        if start > time + INSTANT:
            self.wait = start
            return
        self.running = True
        self.least_until = time + self.policy.least_run
        self.stop_by = time + self.policy.until_quiet(time)
        why = f"the charge is at {said(self.policy.engine_on_at * 100)} % or less"
        if total > self.lines.on:
            why = "low volts have taken loads off"
        self._say(time, "engine start", f"The engine starts: {why}.")

    def lack(self, time: float, short: bool) -> None:  # noqa: FBT001 - a state, not an option
        """Tell when loads begin or cease to go without.

        Parameters
        ----------
        time : float
            Since the first midnight. [h]
        short : bool
            Whether they do.
        """
        if short != self.short:
            self.short = short
            kind, words = (
                ("unmet", "Some loads go without.")
                if short
                else ("met", "Every load is served again.")
            )
            self._say(time, kind, words)

    def _say(self, time: float, kind: str, words: str) -> None:
        self.events.append(Event(time, kind, words))
