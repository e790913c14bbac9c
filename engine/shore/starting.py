"""What motors take to start: by code letter, by class, and two at one time."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Final

from engine.finding import Rule, meets
from engine.inverter.surge import surge_of
from engine.problem import Problem, quoted
from engine.shore.tables import CODE_LETTERS
from engine.source import Source
from engine.units import Amp, Volt, Watt, said, words

HORSEPOWER: Final = 745.69987158227022
"""W."""
LOCKED_ROTOR: Final = Rule(
    "locked rotor",
    "a motor standing still takes its code letter's kVA for each horsepower",
    CODE_LETTERS.source,
)
IN_TURN: Final = Rule(
    "start in turn",
    "what starts, with all that runs already, is within the surge rating",
    Source("inverter makers' sheets", "common", "surge rating", typical=True),
)


@dataclass(frozen=True, slots=True)
class LockedRotor:
    """kVA of a motor that stands still, least and most; ``most`` is None for the last letter."""

    least: float
    most: float | None


def horsepower_of(shaft: Watt) -> float:
    """Return a motor's horsepower.

    Parameters
    ----------
    shaft : Watt
        At its shaft. [W]

    Returns
    -------
    float
        Horsepower. [hp]

    Examples
    --------
    >>> horsepower_of(Watt(745.7))
    1.000
    """
    return shaft / HORSEPOWER


def locked_rotor(horsepower: float, code: str) -> LockedRotor:
    """Return the kVA a motor takes while it stands still.

    Parameters
    ----------
    horsepower : float
        On its plate. [hp]
    code : str
        Code letter on its plate.

    Returns
    -------
    LockedRotor
        Least and most of its letter. [kVA]

    Raises
    ------
    Problem
        If there is no such letter, or the horsepower is not above zero.

    References
    ----------
    .. [1] NFPA 70 (NEC), table 430.7(B).

    Examples
    --------
    >>> locked_rotor(0.5, "L")
    LockedRotor(least=4.5, most=4.995)
    """
    letter = code.strip().upper()
    if letter not in CODE_LETTERS:
        raise Problem(
            "code",
            f"{quoted(code)} is no code letter.",
            f"Enter {words(CODE_LETTERS.rows, 'or')}.",
        )
    if horsepower <= 0:
        raise Problem(
            "horsepower", f"A motor of {said(horsepower)} hp is none.", "Enter such as 0.5 hp."
        )
    least, *more = CODE_LETTERS[letter]
    return LockedRotor(least * horsepower, more[0] * horsepower if more else None)


def line_current(kva: float, volts: Volt, phases: int) -> Amp:
    """Return the current of so many kVA.

    Parameters
    ----------
    kva : float
        Apparent power. [kVA]
    volts : Volt
        Between lines, above zero. [V]
    phases : int
        1 or 3. [1]

    Returns
    -------
    Amp
        In each line. [A]

    Raises
    ------
    Problem
        If phases are neither one nor three, or the volts not above zero.

    Examples
    --------
    >>> line_current(10.0, Volt(230.0), 1), line_current(10.0, Volt(230.0), 3)
    (43.48, 25.10)
    """
    if phases not in {1, 3}:
        raise Problem("phases", f"{phases} phases feed no motor.", "Enter 1 or 3.")
    if volts <= 0:
        raise Problem("volts", f"{said(volts)} V is no supply.", "Enter such as 120 V.")
    return Amp(kva * 1000 / (volts * (sqrt(3) if phases == 3 else 1.0)))


@dataclass(frozen=True, slots=True)
class Starter:
    """Something that starts: running W, and its class in the surge table."""

    name: str
    running: Watt
    kind: str

    @property
    def surge(self) -> Watt:
        """What it takes to start, W."""
        return surge_of(self.kind, self.running)


def start_together(starters: tuple[Starter, ...], running: Watt) -> Watt:
    """Return the watts when all start at one moment, as after a power cut.

    Parameters
    ----------
    starters : tuple of Starter
        Shape ``(n,)``.
    running : Watt
        Of what runs already and does not start. [W]

    Returns
    -------
    Watt
        Sum of every surge. [W]

    Examples
    --------
    >>> two = (Starter("fridge", Watt(100.0), "mains compressor"),
    ...        Starter("pump", Watt(400.0), "induction motor"))
    >>> start_together(two, Watt(50.0)), start_in_turn(two, Watt(50.0))
    (2750.0, 2150.0)
    """
    return Watt(running + sum(one.surge for one in starters))


def start_in_turn(starters: tuple[Starter, ...], running: Watt) -> Watt:
    """Return the watts of the worst start when each waits until the others run.

    Parameters
    ----------
    starters : tuple of Starter
        Shape ``(n,)``.
    running : Watt
        Of what runs already and does not start. [W]

    Returns
    -------
    Watt
        One surge on top of all that runs. [W]
    """
    whole = running + sum(one.running for one in starters)
    return Watt(max((whole - one.running + one.surge for one in starters), default=whole))


def starts(starters: tuple[Starter, ...], running: Watt, surge_rating: Watt) -> str:
    """Return in a sentence whether a source starts them, at once or in turn.

    Parameters
    ----------
    starters : tuple of Starter
        Shape ``(n,)``, at least one.
    running : Watt
        Of what runs already. [W]
    surge_rating : Watt
        Of the inverter or generator, for as long as a start takes. [W]

    Raises
    ------
    Problem
        If nothing starts.
    """
    if not starters:
        raise Problem("starters", "Nothing starts.", "State an appliance that does.")
    names = words(one.name for one in starters)
    at_once, in_turn = start_together(starters, running), start_in_turn(starters, running)
    rating = f"{said(surge_rating)} W"
    if meets(at_once, surge_rating):
        return f"{names} may start at one moment: {said(at_once)} W of {rating}."
    if meets(in_turn, surge_rating):
        return (
            f"{names} start one after another, {said(in_turn)} W of {rating}; at one moment they "
            f"ask {said(at_once)} W and it trips."
        )
    return f"{names} do not start even one after another: {said(in_turn)} W is over {rating}."
