"""A whole run: most steps in one stride, and any in which something happens split at that moment.

The same march serves one run, recorded, and the many of a chance; it builds nothing for a step.
Order in a step: loads, sources, what the bank takes, store, curtail, unmet.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from math import exp, expm1, inf
from typing import TYPE_CHECKING, Final

from engine.simulate.course import EDGE, Bank, Course, Way, bank_of, course, tapering
from engine.simulate.policy import DAY, INSTANT
from engine.simulate.stretch import Stretch, flows
from engine.simulate.switches import Switches, lines_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from engine.simulate.policy import Setup

MOST_SPLITS: Final = 1000
"""Splits of one step after which the march itself must be at fault."""


class StuckError(ArithmeticError):
    """A step that does not end: a fault of the program, not of an entry."""


@dataclass(slots=True)
class March:
    """A run under way; charges in Ah, times in h.

    ``totals`` holds both wells at the start and after each step; ``put``, ``out``, ``engine``,
    ``curtailed`` and ``unmet`` grow as the flows of every stretch do.
    """

    bank: Bank
    switches: Switches
    total: float
    hand: float
    record: list[list[Stretch]] | None = None
    put: float = 0.0
    out: float = 0.0
    engine: float = 0.0
    engine_hours: float = 0.0
    curtailed: float = 0.0
    unmet: float = 0.0
    lowest: float = inf
    lowest_at: float = 0.0
    dock: float = 0.0
    a_day: int = 1
    totals: list[float] = field(default_factory=list)

    def go(  # noqa: C901, PLR0912, PLR0915 - one tight loop, a million strides a chance
        self,
        asked: Sequence[float],
        essential: Sequence[float],
        free: Sequence[float],
        step: float,
        dock: Sequence[float] = (),
    ) -> None:
        """Go through every step.

        Parameters
        ----------
        asked, essential, free, dock : sequence of float
            Shape ``(n,)``: what all loads ask, the essential ones alone, what sources other than
            the engine have, and what of that gives only what is asked, or nothing. [A]
        step : float
            Of each. [h]
        """
        self.a_day = round(DAY / step)
        bank, switches = self.bank, self.switches
        full, limit, largest, efficiency = bank.full, bank.limit, bank.largest, bank.efficiency
        taper, seep, top = bank.taper, bank.seep, bank.top
        brim, above = (top * (1 - EDGE), top * (1 + EDGE)) if bank.two_wells else (inf, inf)
        kept = exp(-bank.rate * step)
        seeped = bank.share * -expm1(-bank.rate * step)
        per_ampere = Course(bank, Way.STEADY, 1.0, 0.0, 0.0).hand_after(step)
        tapered = exp(-taper * step)
        sinking = tapering(bank, step) if bank.two_wells else 0.0
        record, totals = self.record, self.totals
        total, hand = self.total, self.hand
        put = out = driven = hours = curtailed = unmet = 0.0
        lowest, lowest_at = self.lowest, self.lowest_at
        low, high, until, running, connected, short = inf, -inf, -1, 0.0, True, False
        after, hand_after = total, hand
        totals.append(total)
        for n, wants in enumerate(asked):
            load = wants if connected else essential[n]
            source = free[n]
            net = source + running - load
            whole = n < until and short is (wants > load)
            if whole and net < 0:
                after = total + net * step
                hand_after = hand * kept + total * seeped + net * per_ampere
                whole = after > low and hand_after > 0 and -net <= largest
                if whole:
                    out -= net * step
                    driven += running * step
            elif whole:
                lack = full - total
                speed = efficiency * (net if net < limit else limit)  # noqa: FURB136 - no call
                if speed <= taper * (lack - speed * step):
                    after = total + speed * step
                    if hand >= brim and speed >= seep * lack:
                        hand_after = top
                    else:
                        hand_after = hand * kept + total * seeped + speed * per_ampere
                elif speed >= taper * lack:
                    after = full - lack * tapered
                    if hand >= brim and taper >= seep:
                        hand_after = top
                    else:
                        hand_after = top - (top - hand) * kept - lack * sinking
                else:
                    after = hand_after = inf
                whole = after < high and hand_after <= above
                if whole:
                    taken = (after - total) / efficiency
                    put += taken
                    over = net * step - taken
                    if running:
                        drove = running * step - over
                        driven += drove if drove > 0 else 0.0
                        over = -drove
                    if dock:
                        over -= dock[n] * step
                    curtailed += over if over > 0 else 0.0
            if not whole:
                self.total, self.hand = total, hand
                self.lowest, self.lowest_at = lowest, lowest_at
                self.dock = dock[n] if dock else 0.0
                self._split(n * step, step, wants, essential[n], source)
                total, hand = self.total, self.hand
                lowest, lowest_at = self.lowest, self.lowest_at
                end = (n + 1) * step
                low, high = switches.low(), switches.high(end, total)
                running, connected, short = switches.current, switches.connected, switches.short
                until = _whole_steps(switches.deadline(end), step)
                if not connected and total >= switches.lines.reconnect:
                    until = -1
            else:
                if record is not None:
                    held = (wants, load, source, running, False, dock[n] if dock else 0.0)
                    record.append([Stretch(step, total, after, *held)])
                if running:
                    hours += step
                if short:
                    unmet += (wants - load) * step
                total, hand = after, hand_after
                if total < lowest:
                    lowest, lowest_at = total, (n + 1) * step
            totals.append(total)
        self.total, self.hand, self.lowest, self.lowest_at = total, hand, lowest, lowest_at
        self.put, self.out = self.put + put, self.out + out
        self.engine += driven
        self.engine_hours += hours
        self.curtailed += curtailed
        self.unmet += unmet
        switches.settle(len(asked) * step, total, hand)

    def _split(
        self, start: float, step: float, wants: float, essential: float, free: float
    ) -> None:
        """Go through one step moment by moment."""
        switches, parts, done = self.switches, [], 0.0
        if self.total < self.lowest:
            self.lowest, self.lowest_at = self.total, start
        for _ in range(MOST_SPLITS):
            now = start + done
            switches.settle(now, self.total, self.hand)
            load = wants if switches.connected else essential
            net = free + switches.current - load
            way = course(self.bank, self.total, self.hand, net)
            most = min(step - done, max(switches.deadline(now) - now, 0.0))
            time, level, hand = self._next(way, most, now, net)
            after = way.total_after(time) if level is None else level
            self.hand = way.hand_after(time) if hand is None else hand
            self.hand = min(max(self.hand, 0.0), self.bank.top)
            short = net < 0 and (way.way == Way.DRY or way.speed > net)
            held = (wants, load, free, switches.current, short, self.dock)
            part = Stretch(time, self.total, after, *held)
            self._count(part, now)
            parts.append(part)
            self.total = after
            done += time
            if after < self.lowest:
                self.lowest, self.lowest_at = after, start + done
            if done >= step * (1 - EDGE):
                break
        else:
            raise StuckError(f"{MOST_SPLITS} splits in one step at {start} h")
        if self.record is not None:
            self.record.append(parts)

    def _next(
        self, way: Course, most: float, now: float, net: float
    ) -> tuple[float, float | None, float | None]:
        """Return how long the way lasts, and both wells, and the one at hand, where it ends."""
        switches, bank = self.switches, self.bank
        time: float = most
        level: float | None = None
        rising = [switches.high(now, self.total), way.taper_line]
        for line in rising if net >= 0 else [switches.low()]:
            if abs(line) < inf and (ahead := way.time_to(line)) < time:
                time, level = ahead, line
        if not bank.two_wells:
            return time, level, None
        hands = [bank.top * (1 + EDGE), -bank.top * EDGE]
        if not switches.connected and self.hand < switches.lines.reconnect_hand:
            hands.append(switches.lines.reconnect_hand)
        found = None
        for line in hands:
            ahead = way.time_to_hand(line, time)
            if ahead < time:
                time, level, found = ahead, None, line
        return time, level, found

    def _count(self, part: Stretch, now: float) -> None:
        found = flows(part, self.bank.efficiency)
        self.put += found.put
        self.out += found.out
        self.engine += found.engine
        self.curtailed += max(found.curtailed - self.dock * part.time, 0.0)
        self.unmet += found.unmet
        if part.engine:
            self.engine_hours += part.time
        if part.time > 0:
            self.switches.lack(now, found.unmet > INSTANT)


def _whole_steps(deadline: float, step: float) -> int:
    """Return how many whole steps end by a moment."""
    return 1 << 62 if deadline == inf else int((deadline + INSTANT) / step)


def march_of(setup: Setup, *, record: bool = False) -> March:
    """Return a run about to start.

    Parameters
    ----------
    setup : Setup
        Bank, policy and engine.
    record : bool
        Whether every stretch is kept.
    """
    bank = bank_of(setup.house)
    lines = lines_of(setup.house, bank, setup.policy)
    switches = Switches(lines, setup.policy, setup.engine, bank.two_wells)
    charge = setup.house.start
    return March(
        bank=bank,
        switches=switches,
        total=bank.full * charge,
        hand=bank.top * charge if bank.two_wells else 1.0,
        record=[] if record else None,
    )
