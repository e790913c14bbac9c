"""The runs of the days ahead, and what they come to in words."""

from dataclasses import replace

import pytest

from engine.ahead.bank_words import alone_words
from engine.ahead.brought import brought_of
from engine.ahead.runs import (
    FIRST,
    LONGEST,
    ahead_of,
    alone_days,
    chance_of,
    engine_runs,
    first_chance,
    mixed_days,
    slices,
    sun_of_most_days,
    three_skies,
)
from engine.ahead.setup import house_in, outlook_of
from engine.ahead.told import answer, at_home, half_by, odds, so_far, working
from engine.loads.day_use import day_use
from engine.plan.edit import with_value
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.problem import Problem


def changed(**values):
    document = made_up_document()
    for path, text in values.items():
        document = with_value(document, path.replace("__", "."), text)
    return plan_of(document)


def sure(found):
    """Return what must be there."""
    assert found is not None
    return found


PLAN = changed()
EMPTY = plan_of({"format": 1, "boat": {}})


def told_of(plan, condition="anchor", runs=60):
    chance = sure(chance_of(plan, condition, runs))
    return answer(chance, engine=engine_runs(sure(ahead_of(plan, condition))))


def test_three_skies_are_ordered_and_their_sun_is_that_of_the_sources():
    """Part cloud and dull are 0.65 and 0.25 of the clear day's irradiation, by the table."""
    clear, part, dull = three_skies(PLAN, "anchor").values()
    assert clear.lowest >= part.lowest >= dull.lowest
    assert clear.engine_hours <= part.engine_hours <= dull.engine_hours
    assert part.days[0].sun == pytest.approx(0.65 * clear.days[0].sun, rel=0.06)
    assert dull.days[0].sun == pytest.approx(0.25 * clear.days[0].sun, rel=0.12)
    panels = next(one for one in brought_of(PLAN, "anchor") if one.source.kind == "solar")
    told = (panels.clear, panels.dull)
    assert told == pytest.approx((clear.days[0].sun, dull.days[0].sun), rel=1e-3)
    assert len(three_skies(PLAN, "anchor", 7)["clear"].days) == 7


def test_the_bank_alone_lasts_what_is_above_the_reserve_over_the_median_day():
    """By hand: lithium is counted in ampere-hours; the night's loads shift it by hours."""
    house = house_in(PLAN.bank)
    median = day_use(PLAN.loads, "anchor", PLAN.supply).band.median
    by_hand = (house.start - house.reserve) * house.full / median
    assert alone_days(PLAN, "anchor") == pytest.approx(by_hand, abs=0.15)
    light = changed(bank__capacity="5000 Ah", bank__charge="100 %")
    assert alone_days(light, "unattended") is None
    assert str(LONGEST) in alone_words(None, LONGEST)


def test_mixed_days_are_the_same_each_time_and_unlike_each_other():
    one = sure(mixed_days(PLAN, "anchor"))
    mixed_days.cache_clear()
    assert sure(mixed_days(PLAN, "anchor")).charges == one.charges
    assert len({round(day.sun) for day in one.days}) > 7
    assert any("less sun than on the mean day" in drove for drove in one.drove)
    assert mixed_days(EMPTY, "anchor") is None


def test_a_drawn_run_is_the_run_of_the_chance():
    outlook = sure(outlook_of(PLAN, "anchor"))
    loads, essential, free = outlook.drawn(3, 11)
    days = outlook.drawn_days(3, 11)
    assert (list(days.loads), list(days.essential)) == (loads, essential)
    assert days.free == pytest.approx(free)


def test_slices_end_in_the_whole_and_begin_with_a_first_estimate():
    found = list(slices(PLAN, "anchor"))
    shares = [share for share, _ in found]
    assert shares == sorted(shares)
    assert shares[-1] == 1.0
    last = found[-1][1]
    assert last.done
    assert last == sure(chance_of(PLAN, "anchor"))
    first = sure(first_chance(PLAN, "anchor"))
    assert (first.runs, first.asked) == (FIRST, last.asked)
    assert first.needed == next(one for _, one in found if one.runs == FIRST).needed
    assert list(slices(EMPTY, "anchor")) == []


def test_a_week_is_looked_at_through_a_fortnight():
    assert sure(ahead_of(PLAN, "anchor", 7)).days == 14
    assert sure(ahead_of(PLAN, "anchor", 30)).days == 30


def test_nobody_aboard_starts_no_engine():
    assert engine_runs(sure(ahead_of(PLAN, "anchor")))
    assert not engine_runs(sure(ahead_of(PLAN, "unattended")))
    assert not engine_runs(sure(ahead_of(changed(policy__never="yes"), "anchor")))


def test_the_answer_of_the_made_up_boat():
    first, soon, hours = told_of(PLAN)
    assert first.startswith("The engine is likely needed for charging about once in ")
    assert soon.startswith("It is needed within three days ")
    assert hours.endswith(" L a week.")


def test_the_answer_without_an_engine_and_without_need():
    never = told_of(changed(policy__never="yes"))
    assert never[0].startswith("Any charging is first called for after about ")
    assert not any("engine" in one for one in never)
    assert never[-1].startswith("Some loads go without in ")
    assert told_of(PLAN, "dock") == ("The engine is not needed for charging in 14 days.",)
    assert told_of(PLAN, "unattended") == (
        "No charging beyond what comes by itself is called for in 14 days.",
    )
    third = changed(sources__S02__watts="3 x 210 W")
    assert told_of(third)[0].startswith("The engine is seldom needed for charging: in 14 days ")
    flat = told_of(changed(policy__never="yes", bank__charge="5 %"))
    assert flat[0].startswith("Any charging is first called for within the first day")


def test_a_heavy_day_needs_the_engine_daily():
    dark = changed(boat__month="december", boat__latitude="60 N")
    assert told_of(dark)[0].endswith("about once a day.")


@pytest.mark.parametrize(
    ("needed", "word"), [((0, 5, 9), 2), ((5, 5, 5), 1), ((0, 0, 4), None)]
)  # fmt: skip
def test_the_day_by_which_half_of_the_runs_called(needed, word):
    chance = replace(sure(chance_of(PLAN, "anchor", 60)), runs=10, needed=needed, days=3)
    assert half_by(chance) == word


def test_chances_are_said_as_times_in_ten_and_percent():
    assert odds(0.43, 500) == "about 4 times in 10 (43 %)"
    assert odds(1.0, 500) == "in every one of 500 runs"


def test_the_working_shows_seed_and_standard_error():
    """By hand: √(0.1 × 0.9 / 100) is 3 %."""
    chance = replace(sure(chance_of(PLAN, "anchor", 60)), runs=100, needed=(0, 2, 10) + (10,) * 11)
    steps = {one.what: one for one in working(chance)}
    assert steps["standard error"].value == "± 3 %"
    assert "20270515" in steps["runs"].formula
    assert so_far(chance).startswith("A first estimate, of 100 runs")


def test_home_gets_one_sentence_or_none():
    """Between what 8 days in 10 lie is between a dull and a clear day."""
    low, high = sure(sun_of_most_days(PLAN, "anchor"))
    clear, _, dull = (one.days[0].sun for one in three_skies(PLAN, "anchor").values())
    assert dull < low < high < clear
    assert at_home(PLAN, "anchor").startswith(f"Sun brings {low:.0f} to {high:.0f} Ah on most days")
    assert at_home(EMPTY, "anchor") == ""
    polar = changed(boat__latitude="80 N", boat__month="december")
    assert at_home(polar, "anchor").startswith("Engine needed within three days ")


def test_what_does_not_fit_is_a_problem_with_a_mend():
    odd = changed(policy__quiet_from="1", policy__quiet_to="0.5", policy__least_run="5 h")
    with pytest.raises(Problem, match="does not fit"):
        three_skies(odd, "anchor")
