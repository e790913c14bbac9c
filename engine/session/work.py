"""Work too long for one answer: taken in slices, so that an edit or a tap comes in between.

The engine reads no clock: the page asks for ``more`` and says of how many steps.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.late import here
from engine.plan.read import plan_of
from engine.problem import Problem
from engine.views.parts.scene import Progress

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from engine.session.state import State

MOST_STEPS: Final = 1000
"""Of one slice, whatever is asked."""
FORTNIGHT: Final = 14
"""Days no chance looks at fewer of."""


@dataclass(frozen=True, slots=True)
class Job:
    """What a page wants worked out: ``start`` yields the share done (1) and the result so far.

    Two jobs of one name whose keys are equal would come to the same.
    """

    name: str
    key: object
    start: Callable[[], Iterator[tuple[float, object]]]


@dataclass(slots=True)
class Work:
    """A job under way."""

    job: Job
    steps: Iterator[tuple[float, object]]
    progress: Progress

    def say(self, *, running: bool, done: float | None = None, trouble: str = "") -> None:
        """Note how far it has come (1)."""
        before = self.progress
        share = before.done if done is None else done
        self.progress = Progress(self.job.name, share, before.result, running, trouble)

    def advance(self, count: int) -> None:
        """Take so many steps, or those that are left."""
        for _ in range(count):
            try:
                done, result = next(self.steps, (1.0, self.progress.result))
            except Problem as problem:
                self.say(running=False, trouble=str(problem.at("")))
                return
            self.progress = Progress(self.job.name, done, result, running=done < 1)
            if not self.progress.running:
                return


def begun(job: Job) -> Work:
    """Return a job's work before its first step."""
    return Work(job, job.start(), Progress(job.name, 0.0, None, running=True))


def tend(state: State) -> None:
    """Start, keep or drop the work of the page that is shown, and tell the page of it.

    Work is dropped when its page is left or what it belongs to has changed; what was finished is
    kept until then.
    """
    find = JOBS.get(state.route[:2])
    job = find(state) if find else None
    work = state.work
    state.progress = None
    if job is None:
        if work and work.progress.done < 1:
            state.work = None
        return
    if work is None or (work.job.name, work.job.key) != (job.name, job.key):
        work = state.work = begun(job)
    state.progress = work.progress
    if work.progress.running:
        state.reply["more"] = True


def advance(state: State, count: int) -> None:
    """Take one slice of the work under way.

    Parameters
    ----------
    state : State
        With its work, if there is any.
    count : int
        Steps of the slice. [1]
    """
    if state.work and state.work.progress.running:
        state.work.advance(max(1, min(count, MOST_STEPS)))


def hold(state: State) -> None:
    """Stop the work under way; the result so far is kept, and marked as such."""
    if state.work and state.work.progress.running:
        state.work.say(running=False)


def resume(state: State) -> None:
    """Go on with work that was stopped."""
    if state.work and state.work.progress.stopped:
        state.work.say(running=True)


def _late_job(
    name: str, key: tuple[object, ...], steps: Callable[[], Iterator[tuple[float, object]]]
) -> Job | None:
    """Return a job whose steps ask for late rooms; None while these are not here."""

    def start() -> Iterator[tuple[float, object]]:
        yield 0.0, None  # the page is drawn before anything is imported
        yield from steps()

    return Job(name, key, start) if here() else None


def chance_of_the_days(state: State) -> Job | None:
    """Return the chance runs of the days ahead."""
    document, condition, days = state.document, state.condition, int(state.days)

    def steps() -> Iterator[tuple[float, object]]:
        from engine.ahead.runs import slices  # noqa: PLC0415 - comes with the late parcel

        yield from slices(plan_of(document), condition, days)

    return _late_job("chances", (document, condition, max(days, FORTNIGHT)), steps)


def year_of_the_plan(state: State) -> Job | None:
    """Return the plan in every month."""
    document, condition = state.document, state.condition

    def steps() -> Iterator[tuple[float, object]]:
        from engine.ahead.year import year_of  # noqa: PLC0415 - comes with the late parcel

        yield from year_of(plan_of(document), condition)

    return _late_job("year", (document, condition), steps)


def compared(state: State) -> Job | None:
    """Return the chances and the ranking behind What if."""
    document, condition = state.document, state.condition

    def steps() -> Iterator[tuple[float, object]]:
        from engine.ahead.what_if import reckoned  # noqa: PLC0415 - comes with the late parcel

        yield from ((one.share, one) for one in reckoned(document, condition))

    return _late_job("what-if", (document, condition), steps)


JOBS: Final[dict[tuple[str, ...], Callable[[State], Job | None]]] = {
    ("energy", "ahead"): chance_of_the_days,
    ("energy", "charging"): year_of_the_plan,
    ("energy", "what-if"): compared,
}
"""The long work of a page, by section and name."""
