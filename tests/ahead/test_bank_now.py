"""One bank, told alike by Bank, Charging and the days ahead: what it holds, takes and wants."""

import pytest

from engine.ahead.bank_words import TOO_COLD
from engine.ahead.brought import brought_of
from engine.ahead.runs import ahead_of, chance_of, engine_runs, first_chance, sun_of_most_days
from engine.ahead.setup import house_in, outlook_of
from engine.ahead.taking import charging_of, curtailed_of, taking_of
from engine.ahead.told import answer, at_home
from engine.ahead.year import year_of
from engine.check.bank import figures_of
from engine.check.bank_now import health_of, held_now
from engine.check.doubts import alone
from engine.plan.edit import with_value
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.plan.read import plan_of
from engine.simulate.chance import chances


def changed(revision="planned", **values):
    document = made_up_document(revision)
    for path, text in values.items():
        document = with_value(document, path.replace("__", "."), text)
    return plan_of(document)


def known(found):
    assert found is not None
    return found


@pytest.mark.parametrize(
    "values",
    [{}, {"bank__most_charge": "22 A"}, {"bank__temperature": "5 degC"},
     {"bank__temperature": "-2 degC"}, {"bank__chemistry": "gel", "bank__temperature": "8 degC"}],
)  # fmt: skip
def test_bank_charging_and_days_take_the_same_ampere(values):
    plan = changed(**values)
    told, house = taking_of(plan.bank), house_in(plan.bank)
    assert known(figures_of(plan.bank)).most_charge.likely == pytest.approx(told.limit)
    assert house.intake.limit * house.intake.capacity == pytest.approx(told.limit)
    assert known(figures_of(plan.bank)).held == pytest.approx(house.capacity)
    days = known(alone(plan, "anchor")).likely
    assert known(figures_of(plan.bank)).usable / days == pytest.approx(
        known(figures_of(changed().bank)).usable / known(alone(changed(), "anchor")).likely
    )


def test_the_label_limits_and_the_cold_too():
    """280 Ah at 5 °C hold some 0.93 of it and take 0.2 A for each: about 52 A; a label, 22 A."""
    assert taking_of(changed(bank__most_charge="22 A").bank).limit == 22.0
    assert taking_of(changed(bank__most_charge="900 A").bank).stated is False
    cold = taking_of(changed(bank__temperature="5 degC").bank)
    assert cold.limit == pytest.approx(0.2 * cold.intake.capacity)
    assert taking_of(changed(AS_FOUND).bank).limit == 22.0
    warm = changed(bank__temperature="2.9 degC", bank__cold_stop="yes")
    assert not taking_of(warm.bank).limit
    assert "its sensor stops" in taking_of(warm.bank).cold[0].why
    assert taking_of(changed(bank__temperature="3 degC", bank__cold_stop="yes").bank).limit > 0


def test_a_small_label_slows_the_engine():
    slow, free = (
        known(charging_of(plan, "anchor", brought_of(plan, "anchor")))[0].times[0]
        for plan in (
            changed(bank__charge="40 %", bank__most_charge="22 A"), changed(bank__charge="40 %")
        )
    )  # fmt: skip
    assert known(slow) == pytest.approx(known(free) * 43.9 / 22, rel=0.01)


def test_capacity_is_that_of_twenty_hours():
    """220 Ah at 100 h and an exponent of 1.25: 220 × 0.2^0.2 = 159.4 Ah at 20 h, new and warm."""
    lead = {"bank__chemistry": "flooded", "bank__capacity": "220 Ah", "bank__exponent": "1.25",
            "bank__temperature": "25 degC", "bank__rated_hours": "100 h",
            "bank__age": "new", "bank__health": ""}  # fmt: skip
    assert known(held_now(changed(**lead).bank)) == pytest.approx(159.45, abs=0.05)
    assert house_in(changed(**lead).bank).capacity == pytest.approx(159.45, abs=0.05)


def test_a_bank_nobody_tested_counts_as_four_fifths_everywhere():
    plan = changed(bank__age="", bank__health="", bank__temperature="25 degC")
    assert health_of(plan.bank).likely == 0.8
    assert house_in(plan.bank).capacity == pytest.approx(224.0)
    days = known(alone(plan, "anchor"))
    assert known(figures_of(plan.bank)).usable == pytest.approx(0.8 * 224.0)
    assert days.low < 0.8 * days.likely
    assert days.high > 1.2 * days.likely


def test_where_the_cold_forbids_charging_it_is_said_first_and_no_engine_runs():
    plan = changed(bank__temperature="-2 degC")
    outlook, chance = known(ahead_of(plan, "anchor")), known(first_chance(plan, "anchor"))
    assert not engine_runs(outlook)
    told = answer(chance, engine=engine_runs(outlook))
    assert told[0] == TOO_COLD
    assert not any("engine" in one.lower() for one in told)
    assert at_home(plan, "anchor").startswith(TOO_COLD)


def test_a_reserve_below_the_usual_disconnect_leaves_no_load_dark():
    for chemistry, reserve in (("agm", "15 %"), ("agm", "20 %"), ("lithium", "8 %")):
        plan = changed(bank__chemistry=chemistry, bank__reserve=reserve)
        chance = known(first_chance(plan, "anchor"))
        assert chance.house.disconnect == pytest.approx(chance.house.reserve - 0.02)
        assert chance.needed[-1] or not chance.unmet


def test_engine_hours_of_the_year_go_with_the_sun():
    months = list(year_of(changed(), "anchor"))[-1][1].months
    summer = sorted(months[5:8], key=lambda one: one.sun.likely)
    hours = [known(one.engine).likely for one in summer]
    assert hours == sorted(hours, reverse=True)


def test_what_a_dock_gives_is_neither_over_nor_curtailed():
    dock, sun = changed(), changed(sources__S03__counted="no")
    plugged, bare = (known(curtailed_of(plan, "dock")) for plan in (dock, sun))
    assert plugged.brought == pytest.approx(bare.brought)
    assert plugged.curtailed < plugged.brought
    chance = known(first_chance(dock, "dock"))
    assert chance.curtailed < known(outlook_of(dock, "dock")).days * plugged.brought
    assert chance.curtailed < plugged.brought
    assert chance.needed[-1] == 0


def test_a_small_inlet_holds_a_large_charger_back():
    """100 A at 14.2 V / 0.85 ask 1671 W, 13.9 A at 120 V, of an inlet of 10 A: 71.8 A."""
    plan = changed(sources__S03__current="100 A", shore__main_rating="10 A", shore__limit="")
    found = next(one for one in brought_of(plan, "dock") if one.source.ident == "S03")
    assert known(found.current) == pytest.approx(100 * 10 * 120 * 0.85 / (100 * 14.2), rel=1e-3)
    assert found.lines[0].name == "inlet"
    assert "Up to 71.8 A" in found.words
    limit = changed(sources__S03__current="100 A", shore__limit="5 A")
    held = next(one for one in brought_of(limit, "dock") if one.source.ident == "S03")
    assert known(held.current) == pytest.approx(known(found.current) / 2)
    wide = changed(shore__limit="")
    assert not next(one for one in brought_of(wide, "dock") if one.source.ident == "S03").lines


def test_usual_dirt_is_not_called_stated():
    def why(plan):
        sun = next(one for one in brought_of(plan, "anchor") if one.source.ident == "S02")
        return next(one.why for one in sun.lines if "dirt" in one.name)

    assert why(changed()) == "typical aboard"
    assert why(changed(sources__S02__dirt="9 %")) == "as stated"


def test_home_tells_the_first_runs_of_the_same_chance_and_the_sun_of_the_month():
    plan = changed()
    outlook, few = known(ahead_of(plan, "anchor")), known(chance_of(plan, "anchor", 100))
    many = [one for one in chances(outlook, 200, every=100) if one.runs == 100]
    assert few.needed == many[0].needed
    low, high = known(sun_of_most_days(plan, "anchor"))
    days = sorted(
        sum(outlook.sun.at(one)) * outlook.step
        for seed in range(40) for one in outlook.spells(100, seed)
    )  # fmt: skip
    assert sum(low <= one <= high for one in days) / len(days) == pytest.approx(0.8, abs=0.02)
    assert "%" not in at_home(plan, "anchor")


def test_lead_tells_both_its_figures():
    plan = changed(AS_FOUND)
    told = answer(known(first_chance(plan, "anchor")), engine=True)
    assert "to the reserve at this slow use" in told[-1]
    assert "by the 20-hour figure on Bank" in told[-1]
