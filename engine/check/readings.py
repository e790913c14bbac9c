"""Does a drop read by meter agree with the sums, and does it meet the class?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.check.part import Part
from engine.check.wire import percent
from engine.conductors.carrying import working_temperature
from engine.conductors.drop import loop_drop
from engine.conductors.resistance import resistance
from engine.finding import Rule, Severity, Verdict, Who, meets
from engine.source import common_practice
from engine.units import Amp, Metre, Volt, Watt, said

if TYPE_CHECKING:
    from engine.check.wire import Wire
    from engine.conductors.sizes import Size
    from engine.plan.parts import Circuit

WORTH: Final = 0.01
"""Share of the volts below which a missing drop is not worth a search."""
WARM: Final = Watt(0.25)
"""Heat below which a joint is cold to the hand, W."""
LOSE: Final = 0.01
BURN: Final = 0.03
"""Shares of the volts that joints may lose: beyond the first they should be remade, beyond the
second they are a fire in waiting."""
SOUND_JOINTS: Final = Rule(
    "sound joints",
    "the joints of a circuit lose no more than 1 % of its volts",
    common_practice("a third of the drop that a critical circuit may have"),
)
READ: Final = Rule(
    "drop as read",
    "what the meter reads loses no more than the class allows",
    common_practice("reading under load, meter accuracy counted"),
)
AGREES: Final = Rule(
    "joints",
    "what the meter reads is what copper and joints should lose",
    common_practice("the difference sits in joints, switches and contacts"),
)


def ohms_said(ohms: float) -> str:
    """Return a resistance in the unit that suits it.

    Parameters
    ----------
    ohms : float
        Any. [Ω]

    Examples
    --------
    >>> ohms_said(0.0742), ohms_said(2.09)
    ('74 mΩ', '2.1 Ω')
    """
    return f"{said(ohms, 2)} Ω" if ohms >= 1 else f"{said(ohms * 1000, 2)} mΩ"


def readings(circuit: Circuit, wire: Wire, size: Size, by_rule: Part) -> list[Part]:
    """Return what the reading says, if there is one.

    Parameters
    ----------
    circuit : Circuit
        With run, current and surroundings.
    wire : Wire
        Its figures.
    size : Size
        Its conductor.
    by_rule : Part
        The verdict on the drop by the rule; where it fails the reading need not fail again.
    """
    reading = circuit.read_drop
    if reading is None:
        return []
    low, high = reading.volts - reading.accuracy, reading.volts + reading.accuracy
    parts = [_agrees(circuit, wire, size, low, high)]
    if by_rule.verdict == Verdict.FINE:
        parts.append(_within(wire, circuit.volts, low, high))
    return parts


def joints(circuit: Circuit, wire: Wire) -> list[Part]:
    """Return the finding that a circuit's joints lose too much, if so.

    Parameters
    ----------
    circuit : Circuit
        With its joints as entered.
    wire : Wire
        Its figures.
    """
    share = wire.joints / circuit.volts
    if not circuit.joints or circuit.current is None or meets(share, LOSE):
        return []
    heat = wire.joints * circuit.current.likely
    words = (
        f"Its joints of {ohms_said(circuit.joints)} lose {said(wire.joints, 2)} V, "
        f"{percent(share)}, and make {said(heat, 2)} W of heat at {said(circuit.current.likely)} A."
    )
    mend = "Find the warm joint, clean and remake it; fewer terminals on one stud."
    if meets(share, BURN):
        return [Part(SOUND_JOINTS, Verdict.SHOULD, words, mend)]
    return [Part(SOUND_JOINTS, Verdict.STOP, words, mend, Severity.BEFORE_LEAVING, Who.TWO)]


def _within(wire: Wire, volts: Volt, low: float, high: float) -> Part:
    allowed = wire.allowed * volts
    middle = (low + high) / 2
    words = f"{said(middle)} V read, {percent(middle / volts, 3)} of {percent(wire.allowed)}"
    if meets(high, allowed):
        return Part(READ, Verdict.FINE, f"{words}.")
    if not meets(low, allowed):
        mend = "Clean and remake its joints, then read again."
        return Part(READ, Verdict.SHOULD, f"{words}.", mend)
    words += f"; the meter is good to ± {said((high - low) / 2, 2)} V, so it may be either side."
    return Part(READ, Verdict.CANNOT_SAY, words, "Read it with a better meter.")


def _agrees(circuit: Circuit, wire: Wire, size: Size, low: float, high: float) -> Part:
    run, current, around = circuit.run, circuit.current, circuit.around
    assert run is not None  # noqa: S101 - there is a wire
    assert current is not None  # noqa: S101
    assert around is not None  # noqa: S101
    ends = []
    for amperes, metres in ((current.low, run.low), (current.high, run.high)):
        each = Amp(amperes / circuit.parallel)
        warm = working_temperature(size, around, each)
        copper = loop_drop(each, Metre(metres), resistance(size, warm))
        ends.append(copper + (circuit.joints or 0.0) * amperes)
    least, most = ends
    read = (low + high) / 2
    both = f"{said(read)} V read, {said(wire.physical)} V by the sums"
    lost = read - wire.physical
    small = lost < WORTH * circuit.volts and lost * current.likely < WARM
    if low > most and not small:
        ohms = lost / current.likely
        words = (
            f"{both}: {said(lost, 2)} V is missing, {ohms_said(ohms)} in joints, and "
            f"{said(lost * current.likely, 2)} W of heat there."
        )
        mend = "Find the warm joint and remake it; a reading from before a change, take again."
        return Part(AGREES, Verdict.SHOULD, words, mend)
    if high < least:
        words = f"{both}: less than there should be. Run, conductor or current is not as entered."
        mend = "Check the entries, and that the load was running."
        return Part(AGREES, Verdict.SHOULD, words, mend, Severity.NOTE)
    return Part(AGREES, Verdict.FINE, f"{both}: the same, within what tape and meter can tell.")
