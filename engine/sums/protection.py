"""What may a protection be marked?"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from engine.conductors.carrying import carries as carries_of
from engine.conductors.carrying import printed_amperes, working_of_carries
from engine.conductors.sizes import Size, read_size
from engine.field import CHOICE, YES_NO, Field
from engine.finding import Step, Verdict, meets
from engine.problem import Problem
from engine.protection.kinds import VOLTS_RATED, judge_volts, most_volts
from engine.protection.series import SERIES, ratings_of, smallest_in
from engine.protection.window import (
    HOLDS,
    LAW,
    NEXT_SIZE,
    PROTECTS,
    limit_by_law,
    next_size,
    window,
)
from engine.sums.inputs import (
    AMBIENT,
    BUNDLE,
    CURRENT_FIELD,
    ENGINE,
    INSULATION,
    SIZE_FIELD,
    VOLTS_FIELD,
    surroundings_of,
)
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.units import CURRENT, Amp, Volt, said


def _choice(series: str) -> tuple[str, str]:
    ratings = ratings_of(series)
    span = f"{said(ratings[0])} to {said(ratings[-1])} A"
    return series, f"{series}, {span}, to {said(most_volts(series))} V"


CARRIES: Final = Field(
    "carries", "Conductor carries", CURRENT,
    "After every factor, if you know it; else the conductor below.", above=True, least=0.0,
    most=5000.0, needed=False,
)  # fmt: skip
CONDUCTOR: Final = replace(SIZE_FIELD, needed=False)
CONTINUOUS: Final = Field("continuous", "May run for hours", YES_NO, default="yes")
KIND: Final = Field(
    "series", "Kind of protection", CHOICE, "Ratings and volts are typical; a shop has fewer.",
    "blade", choices=tuple(_choice(series) for series in SERIES),
)  # fmt: skip


def answer(inputs: Inputs) -> Outcome:
    """Return the window, the smallest standard rating in it, and what two looser rules allow.

    Raises
    ------
    Problem
        If neither a size nor what it carries is given, or the size cannot be read.
    """
    series, volts = inputs.texts["series"], Volt(inputs["volts"])
    carries, printed, steps = _conductor(inputs)
    fits = window(Amp(inputs["current"]), carries, continuous=inputs.flags["continuous"])
    rating = smallest_in(fits, series)
    above = next_size(carries, series)
    next_allowed = rating is None and above is not None and meets(fits.least, above)
    law = limit_by_law(printed, volts)
    answers = {
        "least": Value(fits.least, "A", "at least"),
        "most": Value(fits.most, "A", "at most"),
        "rating": Value("none") if rating is None else Value(rating, "A", "smallest that fits"),
        "next_size_allowed": Value("yes" if next_allowed else "no", "", "next standard size"),
        "cfr_limit": Value(law, "A", "most by US law"),
    }
    share = "current / 0.8" if inputs.flags["continuous"] else "current"
    steps += (
        Step("at least", share, f"{said(fits.least)} A", HOLDS.source),
        Step("at most", "what the conductor carries", f"{said(fits.most)} A", PROTECTS.source),
        Step("standard rating", f"smallest of {series} within", str(answers["rating"]),
             SERIES[series].source),
        Step("most by US law", f"{said(law / printed * 100)} % of {said(printed)} A",
             f"{said(law)} A", LAW.source),
    )  # fmt: skip
    marked = f"{said(fits.least)} to {said(fits.most)} A"
    if rating is not None:
        found = f"{said(rating)} A is the smallest {series} within {marked}."
        return Outcome(answers, found, steps, HOLDS.name, _volts_caution(series, volts))
    found = f"No standard rating of {series} lies within {marked}."
    if fits.empty:
        found = (
            f"The load asks for {said(fits.least)} A and the conductor carries "
            f"{said(fits.most)} A: it is too thin."
        )
    if next_allowed and above is not None:
        found += (
            f" On a branch, not a main, the next standard size of {said(above)} A is allowed by "
            "46 CFR 183.380(d); the stricter habit keeps to what the conductor carries."
        )
    governing = NEXT_SIZE.name if next_allowed else PROTECTS.name
    return Outcome(answers, found, steps, governing, _volts_caution(series, volts))


def _conductor(inputs: Inputs) -> tuple[Amp, Amp, tuple[Step, ...]]:
    """Return what the conductor carries, its printed amperes, and how they were reached."""
    stated = inputs.numbers.get("carries")
    if stated is not None and not inputs.texts["size"]:
        step = Step("printed amperes", "not known without a size: as what it carries",
                    f"{said(stated)} A")  # fmt: skip
        return Amp(stated), Amp(stated), (step,)
    if not inputs.texts["size"]:
        raise Problem(
            "size",
            "Neither the conductor nor what it carries is given.",
            "Enter a size such as 10 AWG, or the amperes it carries.",
        )
    size: Size
    try:
        size = read_size(inputs.texts["size"], "awg")
        around = surroundings_of(inputs)
        printed = printed_amperes(size, around.insulation)
    except Problem as problem:
        raise problem.at(problem.where or "size") from None
    if stated is None:
        return carries_of(size, around), printed, working_of_carries(size, around)
    step = Step("printed amperes at 30 °C", str(size), f"{said(printed)} A")
    return Amp(stated), printed, (step,)


def _volts_caution(series: str, volts: Volt) -> tuple[str, ...]:
    judged = judge_volts(series, volts)
    if judged.verdict == Verdict.FINE:
        return ()
    return (f"{judged.words} {judged.mend} [{VOLTS_RATED.source}]",)


PROTECTION: Final = Sum(
    "protection",
    "What fuse or breaker?",
    "Least and most it may be marked, the standard rating between, and what the law allows.",
    (
        CURRENT_FIELD, CARRIES, CONDUCTOR, KIND, CONTINUOUS, VOLTS_FIELD, INSULATION, ENGINE,
        BUNDLE, AMBIENT,
    ),
    answer,
)  # fmt: skip
