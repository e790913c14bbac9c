"""What runs together on shore power, said in one sentence."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from engine.finding import Verdict
from engine.shore.legs import NOT_WATCHED
from engine.shore.together import Together, add_words, sentence, trips_words
from engine.units import Amp, said, words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from engine.plan.shore_parts import AcCircuit, Item
    from engine.shore.services import Service


@dataclass(frozen=True, slots=True)
class Side:
    """One leg, inlet or neutral: its name, what it may carry in A, and what it carries."""

    name: str
    rating: Amp
    now: Together
    weak: Together
    neutral: bool = False


@dataclass(frozen=True, slots=True)
class More:
    """One more appliance that is too much: all with it in A; None where only the neutral minds."""

    name: str
    current: Amp | None


def unread_words(circuits: Sequence[AcCircuit]) -> str:
    """Return which entries of circuits have watts that are not known; empty without any.

    Parameters
    ----------
    circuits : sequence of AcCircuit
        Shape ``(n,)``.
    """
    told = [one.unknown_words for one in circuits if one.unknown]
    return f"the watts of {words(told)} are not known" if told else ""


def gravity(side: Side) -> tuple[int, float]:
    """Return what to compare sides by: stop before not known before the rest, then the share.

    Parameters
    ----------
    side : Side
        With what it carries.
    """
    order = (Verdict.NOT_KNOWN, Verdict.STOP)
    now = side.now
    return (order.index(now.verdict) + 1 if now.verdict in order else 0, now.share)


def sentence_of(  # noqa: PLR0913, PLR0917 - all that the one sentence rests on
    on: tuple[Item, ...],
    off: tuple[Item, ...],
    sides: tuple[Side, ...],
    service: Service,
    more: tuple[More, ...],
    unread: tuple[AcCircuit, ...],
) -> str:
    """Return in one sentence what runs together, what would be too much, or what is not known.

    Parameters
    ----------
    on, off : tuple of Item
        That run, and that do not.
    sides : tuple of Side
        Shape ``(n,)``.
    service : Service
        In force.
    more : tuple of More
        What one more would do.
    unread : tuple of AcCircuit
        With entries of unknown watts.
    """
    untold = unread_words(unread)
    if not on:
        return f"Nothing is switched on{f'; {untold}' if untold else ''}."
    worst = max(sides, key=gravity)
    if len(sides) == 1 and worst.now.verdict is not Verdict.NOT_KNOWN:
        return sentence(
            tuple(one.appliance for one in on), service, tuple(one.appliance for one in off)
        )
    shares = words(
        f"{round(side.now.share * 100)} % of {said(side.rating)} A"
        f"{f' on {side.name}' if side.name else ''}"
        for side in sides
    )
    names = words(one.appliance.name for one in on)
    what = f"the {names}{' together' if len(on) > 1 else ''} ({shares})"
    if worst.now.verdict is Verdict.STOP:
        return f"Shore power does not carry {what}: {_over(sides, service)}."
    if worst.now.verdict is Verdict.NOT_KNOWN:
        untold = untold or "say how the two inlets are fed and what the dock offers"
        return f"Not known whether shore power carries {what}: {untold}."
    hours = ", for minutes rather than hours" if worst.now.verdict is Verdict.SHOULD else ""
    tail = add_words([(one.name, one.current) for one in more if one.current is not None], service)
    silent = [one.name for one in more if one.current is None]
    tail += f"; add the {words(silent, 'or')} and {NOT_WATCHED}" if silent else ""
    return f"Shore power carries {what}{hours}{tail}."


def _over(sides: tuple[Side, ...], service: Service) -> str:
    """Return how each side that is overloaded takes it."""
    over = [side for side in sides if side.now.verdict is Verdict.STOP]
    told = [
        f"{side.name}, {trips_words(side.now.current, replace(service, rating=side.rating))}"
        for side in over
        if not side.neutral
    ]
    return "; ".join((*told, *(NOT_WATCHED for side in over if side.neutral)))
