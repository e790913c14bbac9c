"""The plan by month, how the bank takes its sources, and what stands beside a source.

The two-pole closed form of charging is checked against small steps of its own differential rule;
the sun by season against the sky itself: more in summer, other way round in the south.
"""

from dataclasses import replace
from math import exp, pi

import pytest

from engine.ahead.balance import balance_of
from engine.ahead.brought import brought_of
from engine.ahead.month import month_at
from engine.ahead.place import place, where_of
from engine.ahead.setup import house_in
from engine.ahead.source_facts import by_controller, dock_watts, drag_of, wind_facts, working
from engine.ahead.taking import ENDS, charging_of, curtailed_of, taking_of
from engine.ahead.year import year_of
from engine.loads.day_use import day_use
from engine.plan.document import new_document
from engine.plan.edit import with_row, with_value
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.plan.read import plan_of
from engine.solar.month import month_sun


def changed(**values):
    document = made_up_document()
    for path, text in values.items():
        document = with_value(document, path.replace("__", "."), text)
    return plan_of(document)


def added(**fields):
    """Return the made-up boat with one source more, and its brought figures under way."""
    document, ident = with_row(made_up_document(), "sources", fields)
    plan = plan_of(document)
    return plan, next(one for one in plan.sources if one.ident == ident)


def loose(function):
    """Return a function whose answer may be asked without ruling out that there is none."""
    return function


curtailed, wind, drag_at, month = map(loose, (curtailed_of, wind_facts, drag_of, month_at))
taking, times_of, place_of = map(loose, (taking_of, charging_of, where_of))
PLAN = changed()
BARE = plan_of(new_document())


def year(plan, condition="anchor"):
    return list(year_of(plan, condition))[-1][1].months


def told(plan, ident, condition="anchor"):
    return next(one for one in brought_of(plan, condition) if one.source.ident == ident)


def test_the_year_comes_month_by_month():
    steps = list(map(loose, year_of(PLAN, "anchor")))
    assert [round(37 * share) for share, _ in steps] == list(range(1, 38))
    assert [one.month for one in steps[-1][1].months] == list(range(1, 13))
    assert [len(year.months) for _, year in steps[:5]] == [0, 0, 0, 1, 1]
    assert steps[0][1].curtailed.brought > steps[0][1].curtailed.curtailed > 0
    assert [one.months for _, one in year_of(BARE, "anchor")] == [()]


def test_the_chosen_month_agrees_with_its_own_page():
    july = year(PLAN)[6]
    assert july.sun.likely == pytest.approx(balance_of(PLAN, "anchor").likely, rel=0.02)
    assert july.sun.low == pytest.approx(0.85 * july.sun.likely, rel=0.03)


def test_summer_lasts_longer_than_winter_and_the_south_turns_it_round():
    """Sun's height at 43° in June over December is 3.3 times on a level plane outside the air."""
    north, south = year(PLAN), year(changed(boat__latitude="43 S"))
    assert north[6].sun.likely > 3 * north[11].sun.likely
    assert south[0].sun.likely > 3 * south[5].sun.likely
    assert north[6].days.likely > north[11].days.likely
    assert north[6].engine.likely < north[11].engine.likely


@pytest.mark.parametrize("condition", ["anchor", "passage"])
def test_more_sun_never_brings_charging_sooner(condition):
    for one in year(PLAN, condition):
        assert one.days is None or one.days.low <= one.days.likely <= one.days.high
        assert one.engine.low <= one.engine.likely <= one.engine.high


def test_a_dark_month_has_no_sun_and_one_with_enough_has_no_need():
    polar = year(changed(boat__latitude="78 N"))
    assert polar[0].dark
    assert polar[0].sun.likely == 0
    assert not polar[5].dark
    plenty = year(changed(sources__S02__watts="2000 W"))
    assert plenty[6].days is None
    alone = year(changed(policy__never="yes"))
    assert alone[11].engine is None
    assert alone[11].days.likely < 3


def test_a_month_is_that_of_the_quick_sum():
    found, sun = month(place(43.0, -47.0, 7)), month_sun(43.0, -47.0, 7)
    assert found.likely.likely == pytest.approx(sun.irradiation.likely)
    assert (found.likely.low, found.likely.high) == pytest.approx(
        (sun.irradiation.low, sun.irradiation.high)
    )
    assert found.clear == pytest.approx(sun.clear)
    assert found.tenth == pytest.approx(sun.dull)
    assert found.dull == pytest.approx(0.25 * sun.clear)
    dark = month(place(80.0, 0.0, 12))
    assert dark.dark
    assert dark.night == 24


def test_the_balance_is_the_sentence_of_the_page():
    """Demo plan: 79 to 120 Ah on most days against a median of 146."""
    found = balance_of(PLAN, "anchor")
    clear, likely, dull = found.sun()
    assert clear > likely > 79 > dull > 31
    assert found.used == pytest.approx(146, abs=1)
    assert found.over == pytest.approx(likely - found.used)
    assert [one.source.ident for one in found.free] == ["S02"]
    assert [one.source.ident for one in balance_of(PLAN, "dock").free] == ["S02"]
    assert told(PLAN, "S03", "dock").words == "Up to 39.5 A, as much as bank and loads ask."


def stepped(intake, start, end, over):
    """Return the time of small steps, each taking the least of source, limit and taper."""
    charge, time, step = start, 0.0, 1e-3
    while charge < end:
        current = min(over, intake.limit * intake.capacity,
                      intake.taper * intake.capacity * (1 - charge))  # fmt: skip
        charge += intake.efficiency * current * step / intake.capacity
        time += step
    return time


@pytest.mark.parametrize("plan", [PLAN, plan_of(made_up_document(AS_FOUND))])
def test_times_to_charge_are_those_of_small_steps(plan):
    found = times_of(plan, "anchor", brought_of(plan, "anchor"))
    assert {one.brought.source.ident for one in found} == {"S01", "S03"}
    intake = house_in(plan.bank).filling
    for one in found:
        loads = day_use(plan.loads, "anchor", plan.supply).band.median / 24
        assert one.over == pytest.approx(one.brought.current - loads)
        for end, time in zip(ENDS, one.times, strict=True):
            if end <= one.start:
                assert time == 0
            else:
                assert time == pytest.approx(stepped(intake, one.start, end, one.over), abs=5e-3)


def test_nothing_flows_into_a_frozen_bank_or_from_a_small_source():
    frozen = changed(bank__temperature="-5 degC", bank__charge="50 %")
    assert taking(frozen.bank).limit == 0
    assert taking(frozen.bank).cold
    small = changed(sources__S03__current="2 A", bank__charge="50 %")
    for plan, ident in ((frozen, "S01"), (small, "S03")):
        found = times_of(plan, "anchor", brought_of(plan, "anchor"))
        assert all(one.times == (None,) * 3 for one in found if one.brought.source.ident == ident)
    assert times_of(BARE, "anchor", ()) == ()


def test_what_is_curtailed_is_what_the_day_brings_too_much():
    """With a full bank and far more sun than use, all beyond use and loss is curtailed."""
    assert curtailed(BARE, "anchor") is None
    found = curtailed(changed(sources__S02__watts="2000 W"), "anchor")
    used = day_use(PLAN.loads, "anchor", PLAN.supply).band.median
    assert found.brought - found.curtailed == pytest.approx(used, rel=0.03)
    dull = curtailed(changed(sources__S02__watts="50 W"), "anchor")
    assert dull.curtailed == 0
    assert dull.full_at is None


def last(steps):
    """Return the figure of the last line."""
    return float(steps[-1].value.split()[0])


def test_every_working_ends_in_what_is_brought():
    """Lines of a source, multiplied by hand, come to its figure."""
    assert last(working(told(PLAN, "S01"), PLAN, "anchor")) == pytest.approx(50)
    assert last(working(told(PLAN, "S02"), PLAN, "anchor")) == pytest.approx(
        told(PLAN, "S02").likely, rel=5e-3
    )
    whole = changed(sources__S02__overall="62 %")
    assert last(working(told(whole, "S02"), whole, "anchor")) == pytest.approx(
        told(whole, "S02").likely, rel=5e-3
    )
    for condition in ("anchor", "passage"):
        turbine = told(PLAN, "S04", condition)
        assert last(working(turbine, PLAN, condition)) * 24 / 13.2 == pytest.approx(
            turbine.likely, rel=5e-3
        )
    read = changed(sources__S01__read="47 A")
    assert [step.value for step in working(told(read, "S01"), read, "anchor")] == ["47 A"]
    assert working(told(PLAN, "S03"), PLAN, "anchor") == ()
    plan, small = added(kind="generator", watts="300 W")
    steps = working(told(plan, small.ident), plan, "anchor")
    assert steps[0].value == "40 A"
    assert last(steps) == pytest.approx(told(plan, small.ident).current, rel=5e-3)


def test_panels_behind_either_controller():
    """A plain controller holds 21 V panels at 13.2 V: 13.2 × 1.06 / 21, against 0.96 and warmth."""
    tracked, plain = by_controller(PLAN.sources[1], PLAN, "anchor")
    assert tracked.likely == told(PLAN, "S02").likely
    warm = next(line.factor for line in tracked.lines if line.name == "warm cells")
    assert plain.likely / tracked.likely == pytest.approx(
        13.2 * 1.06 / 21 / (0.96 * warm), rel=1e-3
    )


def test_power_in_all_winds_is_more_than_in_their_mean():
    """Rayleigh: the mean of the cube is 6/π times the cube of the mean, while nothing furls."""
    source = replace(PLAN.sources[3], watts=None)
    facts = wind(source, PLAN, "passage")
    assert facts.mean > facts.at_mean > 0
    assert facts.mean / facts.at_mean < 6 / pi
    still = wind(source, PLAN, "anchor")
    assert still.hub == pytest.approx(0.5 * (4 / 10) ** (1 / 7) * still.open_wind)
    assert wind(PLAN.sources[0], PLAN, "anchor") is None


def test_a_towed_rotor_holds_the_boat_back():
    """Rotor 0.24 m, 0.30: 102 N at 5 kn (worked out apart); a kilogram-force is 9.80665 N."""
    _, rotor = added(kind="water", diameter="0.24 m", coefficient="30 %", boat_speed="5 kn")
    drag = drag_at(rotor)
    assert drag.newtons == pytest.approx(102, abs=1)
    assert drag.kilograms == pytest.approx(drag.newtons / 9.80665)
    assert drag_at(PLAN.sources[0]) is None
    assert drag_at(replace(rotor, watts=30.0)).newtons < drag.newtons


def test_a_charger_asks_the_dock_for_more_than_it_gives():
    """40 A × 14.2 V / 0.85, as lithium is absorbed at."""
    assert dock_watts(PLAN.sources[2], PLAN) == pytest.approx(40 * 14.2 / 0.85)
    assert dock_watts(PLAN.sources[1], PLAN) is None


def test_the_taper_is_exponential():
    """From the taper line on, the lack falls as exp(−k t)."""
    lead = plan_of(with_value(made_up_document(AS_FOUND), "bank.charge", "90 %"))
    found = times_of(lead, "anchor", brought_of(lead, "anchor"))[0]
    assert lead.bank is not None
    intake = house_in(lead.bank).filling
    assert found.line < 0.9
    lack = 0.1 * exp(-intake.efficiency * intake.taper * found.times[2])
    assert lack == pytest.approx(1 - ENDS[2])


def test_a_place_without_longitude_speaks_for_its_latitude():
    where = place_of(changed(boat__longitude=""))
    assert month(where).doubt == 0.3
