"""What the days ahead come to, in sentences that page, Home and paper share."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from engine.ahead.bank_words import TOO_COLD, both_figures, too_cold
from engine.ahead.runs import ahead_of, chance_of, engine_runs, sun_of_most_days
from engine.finding import Step
from engine.loads.draws import HABITS_SOURCE, SEED
from engine.simulate.weather import WIND_SOURCE
from engine.solar.cloud import SPELLS
from engine.units import fixed, said

if TYPE_CHECKING:
    from engine.plan.parts import Plan
    from engine.simulate.chance import Chance

SOON: Final = 3
"""Days within which a chance is told in the answer."""
HOME_RUNS: Final = 100
"""Runs of the chance that Home tells."""
TEN: Final = 10
"""Of which a chance is told."""
SELDOM: Final = 0.2
"""Chance within all days below which the engine is called seldom needed."""
DAYTIME: Final = 1.5
"""Days between two engine runs below which they count as runs a day."""


def times_in_ten(share: float) -> str:
    """Return a chance as times in 10; what is rare is not called never.

    Parameters
    ----------
    share : float
        From 0 to 1. [1]

    Examples
    --------
    >>> [times_in_ten(one) for one in (0.0, 0.02, 0.05, 0.43, 0.97, 1.0)]
    ['0', 'under 1', 'under 1', '4', 'over 9', '10']
    """
    tenths = round(share * TEN)
    if tenths == 0 < share:
        return "under 1"
    if tenths == TEN and share < 1:
        return "over 9"
    return str(tenths)


def odds(share: float, runs: int, *, bare: bool = False) -> str:
    """Return a chance in words.

    Parameters
    ----------
    share : float
        Of the runs. [1]
    runs : int
        How many. [1]
    bare : bool
        Without the figure, which few runs do not tell so finely.

    Examples
    --------
    >>> odds(0.43, 500), odds(0.104, 100, bare=True)
    ('about 4 times in 10 (43 %)', 'about 1 time in 10')
    >>> odds(0.004, 500), odds(0.0, 500), odds(0.98, 500)
    ('under 1 time in 10 (0.4 %)', 'in none of 500 runs', 'over 9 times in 10 (98 %)')
    """
    if share <= 0:
        return f"in none of {runs} runs"
    if share >= 1:
        return f"in every one of {runs} runs"
    count = times_in_ten(share)
    about = "about " if count.isdigit() else ""
    told = f"{about}{count} time{'s' * (not count.endswith('1'))} in 10"
    return told if bare else f"{told} ({said(share * 100, 2)} %)"


def answer(chance: Chance, *, engine: bool) -> tuple[str, ...]:
    """Return the answer in sentences, the first of them what matters most.

    Parameters
    ----------
    chance : Chance
        Of all runs, or of those so far.
    engine : bool
        Whether one may be run to charge.
    """
    told = [TOO_COLD] if too_cold(chance.house) else []
    told.append(_first(chance, engine=engine))
    if chance.needed[-1]:
        what = "needed" if engine else "called for"
        share = odds(chance.needed_by(SOON), chance.runs)
        told.append(f"It is {what} within three days {share}.")
    if engine and chance.engine_hours_a_week > 0:
        told.append(_hours(chance))
    if chance.unmet:
        told.append(f"Some loads go without in {chance.unmet} of {chance.runs} runs.")
    if chance.house.chemistry.lead:
        told.append(both_figures(chance.house))
    return tuple(told)


def _first(chance: Chance, *, engine: bool) -> str:
    span, ever = f"{chance.days} days", chance.needed_by(chance.days)
    if not engine:
        return _without_engine(chance, span, ever)
    if not ever:
        return f"The engine is not needed for charging in {span}."
    if ever < SELDOM or chance.starts < 1:
        return f"The engine is seldom needed for charging: in {span} {odds(ever, chance.runs)}."
    apart = chance.days / chance.starts
    often = f"once in {round(apart)} days"
    if apart < DAYTIME:
        a_day = round(1 / apart)
        often = {1: "once a day", 2: "twice a day"}.get(a_day, f"{a_day} times a day")
    return f"The engine is likely needed for charging about {often}."


def _without_engine(chance: Chance, span: str, ever: float) -> str:
    half = half_by(chance)
    if not ever:
        return f"No charging beyond what comes by itself is called for in {span}."
    if half is None:
        return f"Any charging is called for within {span} {odds(ever, chance.runs)}."
    return f"Any charging is first called for {_about(half)}, in the middle run."


def _about(day: int) -> str:
    return "within the first day" if day == 1 else f"after about {day} days"


def _hours(chance: Chance) -> str:
    hours = said(chance.engine_hours_a_week, 1 if chance.engine_hours_a_week < 10 else 2)
    unit = "hour" if hours == "1" else "hours"
    fuel = f" and {fixed(chance.fuel_a_week, 0)} L" if chance.fuel_a_week >= 0.5 else ""
    if not chance.needed[-1]:
        return f"In the long run, to keep the charge, about {hours} engine {unit}{fuel} a week."
    return f"About {hours} engine {unit}{fuel} a week."


def half_by(chance: Chance) -> int | None:
    """Return the day by which half of the runs have called for charging.

    Parameters
    ----------
    chance : Chance
        Of some runs.

    Returns
    -------
    int or None
        From 1; None where they never do. [1]
    """
    days = range(1, chance.days + 1)
    return next((day for day in days if chance.needed_by(day) >= 0.5), None)


def so_far(chance: Chance) -> str:
    """Return of how many runs an estimate is.

    Parameters
    ----------
    chance : Chance
        Of some runs.
    """
    return f"A first estimate, of {chance.runs} runs out of {chance.asked}."


def working(chance: Chance) -> tuple[Step, ...]:
    """Return how the chances were reached, and how sure they are.

    Parameters
    ----------
    chance : Chance
        Of some runs.
    """
    count, day = chance.runs, SOON
    met = chance.needed[day - 1]
    spread, low = chance.engine_hours, chance.lowest
    return (
        Step("runs", f"weathers and habits drawn from the seed {SEED}", f"{count}"),
        Step("sun", "a clearness a day, each much like the day before", "one a day", SPELLS),
        Step("wind", "a mean wind a day", "one a day", WIND_SOURCE),
        Step("use", "the day's median × one factor a run", "0.84 to 1.18", HABITS_SOURCE),
        Step(f"chance within {day} days", f"runs that called for it / runs, {met} / {count}",
             f"{said(chance.needed_by(day) * 100)} %"),
        Step("standard error", "√(p (1 − p) / n)", f"± {said(chance.error_by(day) * 100, 2)} %"),
        Step("engine hours a week", "mean of all runs, the charge lost or gained made good; "
             f"8 runs in 10 between {said(spread.p10, 2)} and {said(spread.p90, 2)} h",
             f"{said(chance.engine_hours_a_week, 2)} h"),
        Step("lowest charge", "middle run; 8 runs in 10 between "
             f"{said(low.p10 * 100)} and {said(low.p90 * 100)} %", f"{said(low.median * 100)} %"),
        Step("cannot be taken", "mean of all runs", f"{said(chance.curtailed, 2)} Ah a day"),
    )  # fmt: skip


def likely_soon(plan: Plan, condition: str) -> bool:
    """Return whether charging is called for soon in half of Home's runs or more.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.
    """
    chance = chance_of(plan, condition, HOME_RUNS)
    return chance is not None and chance.needed_by(SOON) >= 0.5


def at_home(plan: Plan, condition: str) -> str:
    """Return the sentence Home gives to the days ahead; empty where nothing can be said.

    Parameters
    ----------
    plan : Plan
        As read.
    condition : str
        One of CONDITIONS.

    Raises
    ------
    Problem
        If bank or policy cannot be run through days.
    """
    outlook, chance = ahead_of(plan, condition), chance_of(plan, condition, HOME_RUNS)
    if outlook is None or chance is None:
        return ""
    sun = sun_of_most_days(plan, condition)
    brings = f"Sun brings {fixed(sun[0], 0)} to {fixed(sun[1], 0)} Ah on most days. " if sun else ""
    what = "Engine" if engine_runs(outlook) else "Charging"
    if too_cold(chance.house):
        return f"{TOO_COLD} {brings.strip()}".strip()
    share = odds(chance.needed_by(SOON), chance.runs, bare=True)
    return f"{brings}{what} needed within three days {share}."
