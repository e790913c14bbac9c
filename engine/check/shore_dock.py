"""Does the dock give what the boat's fixed installation is made for, and what else is missing?"""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.finding import Verdict
from engine.shore.abroad import Abroad, abroad, differs, fixed_abroad, passes_abroad
from engine.shore.appliances import Nature, nature_of

if TYPE_CHECKING:
    from engine.plan.shore_parts import Item, ShorePlan
    from engine.shore.appliances import Appliance
    from engine.shore.services import Service


def wrong_dock(shore: ShorePlan) -> bool:
    """Return whether the dock's volts or hertz are not those of the inlet.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    return bool(shore.dock and shore.service and differs(shore.dock, shore.service))


def no_load_words(shore: ShorePlan) -> str:
    """Return why no load is reckoned; empty where it can be.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    if shore.service is None:
        return (
            "Choose the shore service your inlet is made for, and add AC circuits with their "
            "appliances, to see what may run together."
        )
    if wrong_dock(shore):
        return "No load is reckoned: this dock's volts or hertz are not the boat's."
    return ""


def elsewhere(shore: ShorePlan) -> Service | None:
    """Return the service to compare appliances with: the one abroad, or a dock of other volts.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    return shore.abroad or (shore.dock if wrong_dock(shore) else None)


def abroad_of(shore: ShorePlan) -> tuple[tuple[Item, Abroad], ...]:
    """Return whether each appliance may be used on the service abroad; none where none is chosen.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    there = elsewhere(shore)
    if there is None:
        return ()
    return tuple((one, _abroad(shore, one, there)) for one in shore.items)


def fixed_installation(shore: ShorePlan) -> Abroad | None:
    """Return what the service abroad means for all that is wired in; None where it is the same.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    there, home = elsewhere(shore), shore.service
    if there is None or home is None or not differs(there, home):
        return None
    return fixed_abroad(home, there)


def _abroad(shore: ShorePlan, one: Item, there: Service) -> Abroad:
    """Return one appliance's answer; an inverter-charger answers for what it passes on as well."""
    found = abroad(one.appliance, one.plate, there)
    home = shore.service
    if found.verdict is Verdict.STOP or (home is not None and not differs(there, home)):
        return found
    behind = tuple(circuit.ident for circuit in shore.circuits if circuit.supply == "inverter")
    named = shore.on_inverter.circuit
    if named and one.circuit == named:
        return passes_abroad(one.appliance.name, behind, there, home, sure=bool(behind))
    wide = found.verdict is not Verdict.NOT_KNOWN and not one.inverter
    passes = behind or shore.changeover.kind == "relay"
    if wide and passes and _may_pass_on(one.appliance):
        return passes_abroad(one.appliance.name, behind, there, home, sure=False)
    return found


def _may_pass_on(appliance: Appliance) -> bool:
    """Return whether an appliance may be an inverter-charger, whatever circuit is named for one.

    A charger may, and so may whatever has a name of no known class: units have many names.
    """
    name = appliance.name.lower()
    told = Nature.CONSTANT_POWER if "invert" in name else nature_of(name)
    return told in {None, Nature.CONSTANT_POWER}
