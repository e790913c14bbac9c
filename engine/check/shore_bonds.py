"""Is neutral joined to safety ground once, at the source in use, and do sources change rightly?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from engine.check.asked import Asked, fine, part_of
from engine.check.part import Part, open_question
from engine.check.shore_records import found_with
from engine.shore.earthing import (
    ONE_BOND,
    STATES,
    State,
    Supply,
    in_use,
    judge_bonds,
    permanent_bond,
)
from engine.shore.isolation import Isolation
from engine.shore.transfer import (
    ALL_LIVE,
    INTERLOCK,
    POLARITY,
    judge_polarity,
    judge_transfer,
    polarity_needed,
)
from engine.units import words

if TYPE_CHECKING:
    from engine.plan.shore_parts import ShorePlan

CLOSED: dict[str, str] = {
    "own": "Joined at it, only while it is the source.",
    "always": "Joined at it, for good.",
    "never": "Joined nowhere.",
    "": "Not known.",
}


@dataclass(frozen=True, slots=True)
class SourceState:
    """One source in use: how it ought to be, how the plan says it is, and the verdict.

    ``found`` is what a licensed person found with it, empty where no result names it.
    """

    state: State
    stated: str
    part: Part
    found: str


def supplies(shore: ShorePlan) -> tuple[Supply, ...]:
    """Return every source the plan states.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    chooses = shore.changeover.chooses
    found: list[Supply] = []
    if shore.service is not None:
        isolated = shore.isolated.kind is Isolation.TRANSFORMER
        found.append(Supply.TRANSFORMER if isolated else Supply.SHORE)
    if chooses is not None:
        found += [one for one in (Supply.INVERTER, Supply.GENERATOR) if one in chooses.sources]
    return tuple(found)


def source_states(shore: ShorePlan) -> tuple[SourceState, ...]:
    """Return, for each source in use, where neutral meets safety ground.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    return tuple(_state(shore, supply) for supply in supplies(shore))


def _state(shore: ShorePlan, supply: Supply) -> SourceState:
    bonds, state = shore.bonds, STATES[supply]
    others = {"inverter": bonds.inverter, "generator": bonds.generator}
    closed = {name for name, word in others.items() if word == "always"}
    if bonds.panel:
        closed.add("panel")
    own = others.get(str(supply))
    if own is None:
        closed.add("shore" if supply is Supply.SHORE else "transformer")
        joined = sorted(closed - {"shore", "transformer"})
        stated = f"On board also at the {words(joined)}." if joined else "None on board stated."
    else:
        stated = CLOSED.get(own, "")
        if own == "own":
            closed.add(str(supply))
    unknown = _unknown(shore, supply, own)
    wrong = None if own == "" and not bonds.panel else judge_bonds(supply, frozenset(closed))
    if wrong is not None:
        part = part_of(wrong)
    elif unknown:
        part = open_question(ONE_BOND, f"With {in_use(supply)}: not known {words(unknown)}.")
    else:
        text = f"With {in_use(supply)}, joined once: {_lower(state.bond)}"
        part = fine(ONE_BOND, text)
    return SourceState(state, stated, part, found_with(shore, supply))


def _lower(text: str) -> str:
    return text[0].lower() + text[1:]


def _unknown(shore: ShorePlan, supply: Supply, own: str | None) -> list[str]:
    """Return what nobody has said yet and would change the answer."""
    found = []
    aboard = supplies(shore)
    if len(aboard) > 1:
        found += _transfer_unknown(shore)
    if shore.bonds.panel is None:
        found.append("whether the AC panel joins them")
    if own == "":
        found.append(f"where the {supply} joins them")
    for name, word in ((Supply.INVERTER, shore.bonds.inverter),
                       (Supply.GENERATOR, shore.bonds.generator)):  # fmt: skip
        if word == "" and name in aboard and name is not supply:
            found.append(f"whether the {name} joins them for good")
    return found


def _transfer_unknown(shore: ShorePlan) -> list[str]:
    """Return what of the change between sources leaves open where the neutral then is."""
    change = shore.changeover
    if change.kind == "none":
        return ["where the neutral is joined, as nothing changes between sources"]
    if not change.kind or change.neutral is None:
        return ["whether the change between sources switches the neutral"]
    return [] if change.neutral else ["where the neutral is joined, as it is not switched"]


def bonds_asked(shore: ShorePlan) -> Asked:
    """Return what is found of the joins of neutral and safety ground, each said once.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    states = source_states(shore)
    if not states:
        part = open_question(ONE_BOND, "State the sources of alternating current first.")
        return Asked("neutral and safety ground", "shore.panel_bond", (part,))
    parts = tuple(one.part for one in states)
    if shore.bonds.panel:
        parts = (part_of(permanent_bond()),)
    return Asked("neutral and safety ground", "shore.panel_bond", parts)


def transfer_asked(shore: ShorePlan) -> Asked:
    """Return what is found of the change between sources.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    change, where = shore.changeover, "shore.transfer"
    if change.chooses is None:
        part = open_question(INTERLOCK, "State the sources of alternating current first.")
        return Asked("change between sources", where, (part,))
    sources = [str(one) for one in change.chooses.sources]
    if len(sources) == 1:
        text = f"One source, {words(sources)}: nothing to change."
        return Asked("change between sources", where, (fine(INTERLOCK, text),))
    if not change.kind:
        text = f"Say what changes between {words(sources)}."
        return Asked("change between sources", where, (open_question(INTERLOCK, text),))
    parts = [part_of(one) for one in judge_transfer(change.chooses)]
    unknown = [
        name
        for name, known in (
            ("whether two can feed at one time", change.interlocked),
            ("whether it breaks before it makes", change.breaks_first),
            ("whether it switches the neutral", change.neutral),
        )
        if known is None
    ]
    if change.kind != "none" and unknown:
        parts.append(open_question(ALL_LIVE, f"Not known: {words(unknown)}."))
    elif not parts:
        text = f"{words(sources).capitalize()}: interlocked, and every conductor breaks first."
        parts.append(fine(ALL_LIVE, text))
    return Asked("change between sources", where, tuple(parts))


def polarity_asked(shore: ShorePlan) -> Asked:
    """Return whether an indicator of crossed polarity is asked for, and is there.

    Parameters
    ----------
    shore : ShorePlan
        As read.
    """
    poles = [one.poles for one in shore.branches]
    double = bool(poles) and all(one == 2 for one in poles)
    needed = polarity_needed(
        double_pole_branches=double, transformer=shore.isolated.kind is Isolation.TRANSFORMER
    )
    where = "shore.polarity"
    if shore.service is None:
        return Asked(POLARITY.name, where, (open_question(POLARITY, "Choose the service first."),))
    if not needed:
        why = "every branch has two poles" if double else "a transformer feeds the boat"
        return Asked(POLARITY.name, where, (fine(POLARITY, f"None is asked for: {why}."),))
    if shore.polarity is None:
        part = open_question(POLARITY, "Say whether a light or buzzer shows crossed wires.")
        return Asked(POLARITY.name, where, (part,))
    if shore.polarity:
        return Asked(POLARITY.name, where, (fine(POLARITY, "An indicator is fitted."),))
    if None in poles:
        part = open_question(POLARITY, "No indicator. Enter how many poles each branch has.")
        return Asked(POLARITY.name, where, (part,))
    found = judge_polarity(needed=True, fitted=False)
    return Asked(POLARITY.name, where, (part_of(found),) if found else ())
