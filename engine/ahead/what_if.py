"""All that takes its time on a comparison of variants, in slices that a page can show."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.ahead.changes import changed
from engine.ahead.compare import columns_of
from engine.ahead.next_guess import guesses_of, next_guess
from engine.ahead.rank import ranking, singles_of
from engine.ahead.setup import outlook_of
from engine.plan.read import plan_of
from engine.problem import Problem
from engine.simulate.chance import Chance, chances

if TYPE_CHECKING:
    from collections.abc import Iterator

    from engine.ahead.next_guess import NextGuess
    from engine.ahead.rank import Single
    from engine.plan.document import Document
    from engine.plan.parts import Plan
    from engine.simulate.gain import Gain
    from engine.simulate.weather import Outlook

COLUMN_RUNS: Final = 200
"""Runs behind the chances of each variant."""
CHANGE_RUNS: Final = 50
"""Runs behind the gain of each single change; all under the same weathers."""
NEARLY: Final = 0.95
"""Share done when the runs are, and only the guesses are left."""
SLICE_RUNS: Final = 10
"""Runs between two estimates, so that a slow machine answers in between."""


@dataclass(frozen=True, slots=True)
class Reckoned:
    """What is reckoned so far: chances of the columns by their ids, and single changes.

    ``runs`` are done, of ``asked``; guesses come after the last run.
    """

    runs: int
    asked: int
    chances: tuple[tuple[str, Chance], ...] = ()
    gains: tuple[tuple[Single, Gain], ...] = ()
    next_guess: NextGuess | None = None
    done: bool = False

    @property
    def share(self) -> float:
        """How much of it is done, 1."""
        return 1.0 if self.done else min(self.runs / max(self.asked, 1), 1.0) * NEARLY

    def chance_of(self, ident: str) -> Chance | None:
        """Return the chances of a column, if they are reckoned."""
        return dict(self.chances).get(ident)


def reckoned(document: Document, condition: str, every: int = SLICE_RUNS) -> Iterator[Reckoned]:
    """Yield chances of the columns and gains of the single changes, slice by slice.

    Parameters
    ----------
    document : Document
        With its variants.
    condition : str
        One of CONDITIONS.
    every : int
        Runs in a slice. [1]

    Yields
    ------
    Reckoned
        So far; the last one holds all. Nothing where the days ahead cannot be reckoned.
    """
    columns = [one for one in columns_of(document, condition) if one.figures]
    plan = plan_of(document)
    singles, ahead = singles_of(plan, condition), _ahead(plan, condition)
    if ahead is None:
        return
    asked = len(columns) * COLUMN_RUNS + (len(singles) + 1) * CHANGE_RUNS
    known: dict[str, Chance] = {}
    runs = 0
    for column in columns:
        outlook = _ahead(column.plan, condition)
        for chance in chances(outlook, COLUMN_RUNS, every=every) if outlook else ():
            known[column.ident] = chance
            yield Reckoned(runs + chance.runs, asked, tuple(known.items()), ())
        runs += COLUMN_RUNS
    before: Chance | None = None
    for before in chances(ahead, CHANGE_RUNS, every=every):
        yield Reckoned(runs + before.runs, asked, tuple(known.items()), ())
    runs += CHANGE_RUNS
    after: dict[int, Chance] = {}
    gains: tuple[tuple[Single, Gain], ...] = ()
    for place, single in enumerate(singles):
        outlook = _ahead_of(document, single, condition)
        for chance in chances(outlook, CHANGE_RUNS, every=every) if outlook else ():
            after[place] = chance
            yield Reckoned(runs + chance.runs, asked, tuple(known.items()), gains)
        runs += CHANGE_RUNS
        gains = ranking(singles, before, after) if before else ()
        yield Reckoned(runs, asked, tuple(known.items()), gains)
    guesses = []
    for guess in guesses_of(plan, condition):
        guesses.append(guess)
        found = next_guess(guesses)
        yield Reckoned(runs, asked, tuple(known.items()), gains, found)
    yield Reckoned(asked, asked, tuple(known.items()), gains, next_guess(guesses), done=True)


def _ahead_of(document: Document, single: Single, condition: str) -> Outlook | None:
    try:
        return _ahead(plan_of(changed(document, single.changes)), condition)
    except Problem:
        return None


def _ahead(plan: Plan, condition: str) -> Outlook | None:
    try:
        return outlook_of(plan, condition)
    except Problem:
        return None
