"""What an engine's alternator gives: less than it is marked, with a reason for each part of it."""

from __future__ import annotations

from dataclasses import dataclass
from math import exp
from typing import Final

from engine.derate import Derate, derated
from engine.problem import Problem
from engine.source import Source, common_practice
from engine.units import Amp, Share, Volt, Watt, said

CUT_IN: Final = 1100.0
"""Revolutions a minute of the alternator below which it gives nothing."""
RISE: Final = 1500.0
"""Further revolutions a minute in which it comes to 63 % of what it is marked."""
FASTEST: Final = 18000.0
"""Revolutions a minute that no alternator's bearings are made for."""
HOT: Final = Share(0.75)
"""What is left after half an hour at full output: 0.60 to 0.85, as the engine space is cooled."""
EFFICIENCY: Final = Share(0.55)
"""Electrical over mechanical power: 0.50 to 0.70."""
BELT: Final = Share(0.95)

SPEED: Final = Source(
    "ISO 8854", "convention", "marked at 6000 rpm; curve fitted to its points", typical=True
)
HEAT: Final = common_practice("hot after 20 to 30 minutes, copper and regulator together")
SET: Final = Source("owner", "as set", "regulator")


@dataclass(frozen=True, slots=True)
class Alternator:
    """An alternator as fitted.

    ``marked`` is its cold, fast current (A); ``ratio`` its pulley's, revolutions for each of the
    engine's, and ``hot`` the share left when warm (both 1); ``limit`` is what its regulator or a
    setting holds it to (A).
    """

    marked: Amp
    ratio: float = 2.2
    hot: Share = HOT
    limit: Amp | None = None

    def __post_init__(self) -> None:
        for name, value, example in (
            ("marked", self.marked, "90 A"),
            ("ratio", self.ratio, "2.2"),
            ("hot", self.hot, "0.75"),
        ):
            if not value > 0:
                what = f"{said(value)} cannot be what an alternator has."
                raise Problem(name, what, f"Enter {example}.")
        if self.limit is not None and not self.limit >= 0:
            raise Problem("limit", f"A limit of {said(self.limit)} A is below zero.", "Enter 50 A.")


@dataclass(frozen=True, slots=True)
class Output:
    """What an alternator gives (A), and each reason why it is not what it is marked."""

    current: Amp
    derates: tuple[Derate, ...]


def output(alternator: Alternator, engine_speed: float) -> Output:
    """Return what an alternator gives at a speed of the engine, once hot.

    Parameters
    ----------
    alternator : Alternator
        As fitted.
    engine_speed : float
        Of the crankshaft. [1/min]

    Raises
    ------
    Problem
        If the pulleys would turn it faster than any alternator is made for.

    Examples
    --------
    >>> fitted = Alternator(Amp(90.0), 2.2, limit=Amp(50.0))
    >>> [round(output(fitted, rpm).current) for rpm in (0.0, 800.0, 1800.0)]
    [0, 24, 50]
    """
    if not engine_speed >= 0:
        raise Problem(
            "engine_speed", f"{said(engine_speed)} revolutions a minute is no speed.", "Enter 1500."
        )
    speed = engine_speed * alternator.ratio
    if speed > FASTEST:
        raise Problem(
            "ratio",
            f"{said(engine_speed)} × {said(alternator.ratio)} turns it at {said(speed)} rpm, "
            f"faster than the {said(FASTEST, 5)} any is made for.",
            "Enter a smaller pulley ratio, 2 to 3.",
        )
    lines: tuple[Derate, ...] = (
        Derate("speed", share_at(speed), f"{said(speed)} rpm at the alternator", SPEED),
        Derate("heat", alternator.hot, "hot after half an hour", HEAT),
    )
    current = derated(alternator.marked, lines)
    if alternator.limit is not None and alternator.limit < current:
        why = f"set to {said(alternator.limit)} A"
        lines = (*lines, Derate("limit", alternator.limit / current, why, SET))
        current = alternator.limit
    return Output(Amp(current), lines)


def share_at(speed: float) -> Share:
    """Return the share of its marked current a cold alternator gives.

    Parameters
    ----------
    speed : float
        Of the alternator's own shaft. [1/min]

    Returns
    -------
    Share
        ``1 − exp(−(n − 1100) / 1500)``, from 0 at 1100. [1]

    References
    ----------
    .. [1] ISO 8854, as the trade uses it: the marked current is at 6000, the low one near 1800.

    Examples
    --------
    >>> [round(share_at(n), 2) for n in (1000.0, 1800.0, 3000.0, 6000.0)]
    [0.0, 0.37, 0.72, 0.96]
    """
    return Share(1 - exp(-max(speed - CUT_IN, 0.0) / RISE))


def engine_power(current: Amp, volts: Volt, efficiency: Share = EFFICIENCY) -> Watt:
    """Return what the alternator takes from the engine.

    Parameters
    ----------
    current : Amp
        Given. [A]
    volts : Volt
        At its terminals. [V]
    efficiency : Share
        Of the alternator, above zero. [1]

    Returns
    -------
    Watt
        At the crankshaft, belt included. [W]

    Examples
    --------
    >>> round(engine_power(Amp(50.0), Volt(14.2)))
    1359
    """
    return Watt(current * volts / (efficiency * BELT))
