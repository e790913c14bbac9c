"""How quickly days are run, measured where this runs: natively, or in the browser as text.

The made-up boat at anchor. It needs nothing but the engine.
"""

import time
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Final

from engine.ahead.setup import outlook_of
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.simulate.chance import chances
from engine.simulate.days import PROFILES, Days
from engine.simulate.run import run
from engine.simulate.weather import Outlook

if TYPE_CHECKING:
    from collections.abc import Callable

LENGTHS: Final = (14, 90, 365)
RUNS: Final = 500


def ahead(days: int) -> Outlook:
    """Return the days that lie ahead of the made-up boat."""
    found = outlook_of(plan_of(made_up_document()), "anchor", days)
    if found is None:
        raise SystemExit("bench: the made-up boat has no days ahead")
    return found


def repeated(one: Days, count: int) -> Days:
    """Return a day over and over."""
    return replace(one, **{name: getattr(one, name) * count for name in PROFILES})


def milliseconds(work: "Callable[[], object]", times: int) -> float:
    """Return the quickest: what else the machine does only ever adds to it."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append((time.perf_counter() - start) * 1000)
    return min(taken)


def figures() -> dict[str, float]:
    """Return milliseconds by what was run."""
    whole, one = ahead(LENGTHS[0]), ahead(1)
    found = {}
    for days in LENGTHS:
        inputs = repeated(one.under("part"), days)
        found[f"run {days}"] = milliseconds(partial(run, one.setup, inputs), 5)
    found["chances"] = milliseconds(lambda: list(chances(whole, RUNS)), 1)
    return found
