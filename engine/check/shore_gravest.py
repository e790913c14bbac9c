"""What is gravest on the AC side, and does it forbid plugging in?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from engine.check.looked import looked
from engine.check.shore import shore_findings
from engine.finding import Severity, Verdict
from engine.plan.look_fields import SHORE
from engine.shore.legs import NEUTRAL
from engine.shore.together import TRIPS
from engine.shore.wave import WAVE

if TYPE_CHECKING:
    from engine.finding import Finding
    from engine.plan.parts import Plan

LOOKS: Final = frozenset({"looks.inlet", *(f"looks.{one.name}" for one in SHORE)})
"""Places of the looks that are about the AC side."""
GRAVE: Final = (Severity.STOP_NOW, Severity.BEFORE_LEAVING)
ORDER: Final = list(Severity)
BY_HAND: Final = frozenset({TRIPS.name, NEUTRAL.name, WAVE.name})
"""Rules that switching an appliance off meets: they forbid no plug."""
NO_PLUG: Final = "Do not plug in."


@dataclass(frozen=True, slots=True)
class Gravest:
    """The gravest findings of the AC side, stop now first, and those that forbid plugging in."""

    findings: tuple[Finding, ...]
    because: tuple[Finding, ...]

    @property
    def unplug(self) -> bool:
        """True where nobody ought to plug in as things are."""
        return bool(self.because)

    @property
    def headline(self) -> str:
        """What to say above all else; empty where nothing forbids plugging in."""
        return NO_PLUG if self.because else ""


@lru_cache(maxsize=16)
def gravest(plan: Plan) -> Gravest:
    """Return the findings of the AC side that share the gravest severity, and what forbids a plug.

    Parameters
    ----------
    plan : Plan
        With its looks, its AC side, and a licensed person's results.
    """
    found = [one for one in looked(plan) if one.where in LOOKS] + shore_findings(plan)
    found.sort(key=lambda one: (ORDER.index(one.severity), one.verdict is not Verdict.STOP))
    worst = tuple(
        one for one in found
        if one.severity is found[0].severity and one.verdict is found[0].verdict
    )  # fmt: skip
    return Gravest(worst, tuple(one for one in found if _forbids(one)))


def _forbids(one: Finding) -> bool:
    """Return whether a finding lies on the way in, so that leaving a branch off is not enough."""
    return (
        one.verdict is Verdict.STOP
        and one.severity in GRAVE
        and one.rule.name not in BY_HAND
        and not one.where.startswith("ac.")
        and one.where != "looks.polarity"
    )
