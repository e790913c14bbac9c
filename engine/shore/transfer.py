"""Changing from one source to another, and what is asked of the polarity indicator."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.finding import Finding, Rule, Severity, Verdict, Who
from engine.problem import Problem
from engine.source import Source
from engine.units import words

if TYPE_CHECKING:
    from engine.shore.earthing import Supply

INTERLOCK: Final = Rule(
    "interlock",
    "two sources can never feed the same conductors at one time",
    Source("46 CFR", "in force", "183.390(d)"),
)
ALL_LIVE: Final = Rule(
    "all live conductors",
    "a transfer breaks every live conductor and the neutral before it makes the next source",
    Source("ISO 13297 and ABYC E-11", "as commonly read", "transfer switch", typical=True),
)
POLARITY: Final = Rule(
    "polarity indicator",
    "reversed polarity is shown where it matters: not with double-pole branch breakers, nor "
    "behind a polarising or isolation transformer",
    Source("ISO 13297", "2020", "6.10"),
)


@dataclass(frozen=True, slots=True)
class Transfer:
    """A source selector: what it chooses from, and how it changes over."""

    sources: tuple[Supply | str, ...]
    interlocked: bool = True
    breaks_first: bool = True
    switches_neutral: bool = True

    def __post_init__(self) -> None:
        if not self.sources:
            raise Problem(
                "transfer.sources",
                "A transfer with no source has nothing to choose.",
                "State its sources, such as shore and inverter.",
            )
        if len(set(self.sources)) < len(self.sources):
            raise Problem(
                "transfer.sources",
                f"A source is stated twice: {words(map(str, self.sources))}.",
                "Name two inlets apart, such as shore 1 and shore 2.",
            )


def judge_transfer(transfer: Transfer) -> tuple[Finding, ...]:
    """Return what is wrong with a transfer, gravest first; nothing where there is one source.

    Parameters
    ----------
    transfer : Transfer
        As it is; two inlets on one panel are two sources.
    """
    if len(transfer.sources) == 1:
        return ()
    named = words(map(str, transfer.sources))
    found = []
    if not transfer.interlocked:
        found.append(_stop(f"Nothing keeps {named} from feeding the panel at one time.", INTERLOCK))
    if not transfer.breaks_first:
        found.append(_stop(f"The change between {named} makes before it breaks.", ALL_LIVE))
    if not transfer.switches_neutral:
        found.append(_stop(f"The neutrals of {named} stay joined.", ALL_LIVE))
    return tuple(found)


def _stop(text: str, rule: Rule) -> Finding:
    return Finding(
        "shore.transfer",
        Verdict.STOP,
        Severity.STOP_NOW,
        text,
        "A transfer switch that breaks every live conductor and the neutral before it makes.",
        rule,
        Who.LICENSED,
    )


def polarity_needed(*, double_pole_branches: bool, transformer: bool) -> bool:
    """Return whether an indicator of reversed polarity is asked for.

    Parameters
    ----------
    double_pole_branches : bool
        Whether every branch breaker opens live conductor and neutral.
    transformer : bool
        Whether a polarising or isolation transformer feeds the boat.

    References
    ----------
    .. [1] ISO 13297:2020, 6.10.

    Examples
    --------
    >>> polarity_needed(double_pole_branches=False, transformer=False)
    True
    """
    return not (double_pole_branches or transformer)


def judge_polarity(*, needed: bool, fitted: bool, reversed_now: bool = False) -> Finding | None:
    """Return what is wrong with polarity, or None.

    Parameters
    ----------
    needed : bool
        Whether an indicator is asked for.
    fitted : bool
        Whether there is one.
    reversed_now : bool
        Whether it shows reversed polarity.
    """
    if reversed_now:
        return Finding(
            "shore.polarity",
            Verdict.STOP,
            Severity.STOP_NOW,
            "The polarity indicator shows live conductor and neutral crossed.",
            "Unplug at the dock. Switch nothing on to try it; the dock or cord is at fault.",
            POLARITY,
            Who.LICENSED,
        )
    if fitted or not needed:
        return None
    return Finding(
        "shore.polarity",
        Verdict.SHOULD,
        Severity.BEFORE_LEAVING,
        "Single-pole branch breakers, and nothing shows crossed polarity.",
        "A polarity indicator that can be seen or heard at the panel.",
        POLARITY,
        Who.LICENSED,
    )
