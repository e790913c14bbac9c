"""A plan as the days ahead see it: place, sources, loads by the clock, bank and policy."""

from math import pi

import pytest

from engine.ahead.brought import brought_of
from engine.ahead.by_clock import lacking, uses_of
from engine.ahead.place import place, where_of
from engine.ahead.setup import outlook_of, policy_in
from engine.ahead.winds import Winds, wind_at
from engine.charging.wind import Turbine, mean_power
from engine.loads.day_use import day_use
from engine.plan.edit import with_row, with_value
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.plan.source_fields import MOUNTINGS, SHADES
from engine.simulate.run import run
from engine.solar.month import month_sun
from engine.solar.tables import MOUNTS, SHADE
from engine.units import MetrePerSecond, Share, SquareMetre, Volt


def changed(**values):
    document = made_up_document()
    for path, text in values.items():
        document = with_value(document, path.replace("__", "."), text)
    return plan_of(document)


def ahead(plan):
    """Return what lies ahead at anchor."""
    return outlook_of(plan, "anchor")


def spot(plan):
    """Return where a plan lies."""
    return where_of(plan)


PLAN = changed()


def named(plan, ident, condition="anchor"):
    return next(one for one in brought_of(plan, condition) if one.source.ident == ident)


def test_choices_of_a_source_are_the_rows_of_the_tables():
    assert [name for name, _ in MOUNTINGS] == list(MOUNTS.rows)
    assert {name for name, _ in SHADES} == set(SHADE.rows) - {"heeling on passage"}


def test_the_made_up_boat_lacks_nothing_and_an_empty_plan_says_what():
    assert lacking(PLAN, "anchor") == {}
    assert tuple(lacking(plan_of({"format": 1, "boat": {}}), "anchor").values()) == (
        "the bank's chemistry", "a load that runs at anchor", "the boat's latitude", "the month",
    )  # fmt: skip
    assert ahead(plan_of({"format": 1, "boat": {}})) is None


def test_the_clock_holds_the_median_of_the_day():
    outlook = ahead(PLAN)
    median = day_use(PLAN.loads, "anchor", PLAN.supply).band.median
    assert sum(outlook.loads) * outlook.step == pytest.approx(median, abs=1e-6)
    assert sum(one.current * one.hours * one.duty for one in uses_of(PLAN, "anchor")) == (
        pytest.approx(median, abs=1e-6)
    )


def test_an_anchor_light_burns_through_the_true_night():
    north = ahead(changed(boat__latitude="60 N"))
    south = ahead(changed(boat__latitude="60 S"))
    dark = [sum(one > min(day) + 1e-9 for one in day) for day in (north.loads, south.loads)]
    assert dark[0] < dark[1]


def test_panels_bring_watts_times_sun_times_every_line():
    """By hand: 420 W, level plane, the month's mean sun, all lines, 13.2 V."""
    made = named(PLAN, "S02")
    where = spot(PLAN)
    sun = month_sun(43.0, -47.0, 7).irradiation.likely
    factor = 1.0
    for line in made.lines:
        factor *= line.factor
    assert made.likely == pytest.approx(420 * sun * factor / 13.2, rel=2e-3)
    assert made.dull < made.likely < made.clear
    assert where.doubt == 0.15


def test_a_measured_whole_counts_in_place_of_every_loss():
    """Demo plan, section 4: 0.62 of the rating; in ampere-hours at nominal volts."""
    made = named(changed(sources__S02__overall="62 %"), "S02")
    assert [line.name for line in made.lines] == ["measured"]
    plain = named(PLAN, "S02")
    lost = 1.0
    for line in plain.lines:
        lost *= line.factor
    assert made.likely == pytest.approx(plain.likely / lost * 0.62 * 1.1, rel=2e-3)


def test_heel_and_wind_abeam_on_passage():
    at_anchor, under_way = named(PLAN, "S02"), named(PLAN, "S02", "passage")
    assert under_way.likely == pytest.approx(0.95 * at_anchor.likely)
    source = next(one for one in PLAN.sources if one.ident == "S04")
    where = spot(PLAN)
    assert wind_at(source, where, "passage") > where.wind * 0.8 > wind_at(source, where, "anchor")


def test_the_alternator_is_held_to_its_limit_or_to_what_was_read():
    assert named(PLAN, "S01").current == pytest.approx(50.0)
    read = changed(sources__S01__read="47 A")
    assert named(read, "S01").current == 47.0
    slow = changed(sources__S01__speed="400")
    assert named(slow, "S01").current == 0.0
    assert ahead(slow).setup.engine is None


def test_winds_keep_the_mean_of_many_days():
    """Rayleigh in closed form against a thousand drawn days' steady equivalent."""
    turbine = Turbine(SquareMetre(pi / 4 * 1.15**2))
    winds = Winds(((turbine, MetrePerSecond(6.0)),), Volt(12.0))
    assert winds(winds.steady) == pytest.approx(winds.mean, rel=1e-3)
    assert winds.mean == pytest.approx(mean_power(turbine, MetrePerSecond(6.0)) / 13.2)


def test_only_counted_sources_count():
    without, counted = ahead(PLAN), None
    counted = ahead(changed(sources__S04__counted="yes"))
    assert without.wind is None
    assert counted.wind is not None
    less, more = (run(one.setup, one.under("part")) for one in (without, counted))
    assert more.lowest >= less.lowest


def test_policy_is_filled_in_from_the_bank():
    house = ahead(PLAN).setup.house
    assert policy_in(PLAN, house).engine_on_at == pytest.approx(0.2)
    assert policy_in(PLAN, house).engine_off_at == pytest.approx(0.6)
    agm = changed(bank__chemistry="agm", bank__reserve="50 %")
    assert ahead(agm).setup.policy.engine_off_at == pytest.approx(0.85)
    assert ahead(changed(policy__never="yes")).setup.policy.never


@pytest.mark.parametrize(
    ("path", "text", "where"),
    [
        ("boat.latitude", "95 N", "boat.latitude"),
        ("sources.S02.watts", "0 W", "sources.S02.watts"),
        ("policy.engine_off_at", "10 %", "policy.engine_off_at"),
    ],
)
def test_what_cannot_be_is_named_at_its_field(path, text, where):
    document = with_value(made_up_document(), path, text)
    if path == "policy.engine_off_at":
        document = with_value(document, "policy.engine_on_at", "30 %")
    assert plan_of(document).problem_at(where)


def test_panels_with_no_watts_and_a_rotor_of_no_size_say_so():
    bare = changed(sources__S02__watts="", sources__S02__marked="")
    assert named(bare, "S02").missing == ("its watts",)
    blind = changed(sources__S04__diameter="")
    assert named(blind, "S04").missing == ("how far its rotor is across",)


def test_a_month_without_sun_brings_none():
    polar = changed(boat__latitude="80 N", boat__month="december")
    assert named(polar, "S02").words == "There is no sun in that month."
    outlook = ahead(polar)
    assert max(outlook.under("clear").sun) == 0


def test_without_a_longitude_the_sea_at_that_latitude_speaks():
    wide = spot(changed(boat__longitude=""))
    assert wide.longitude is None
    assert wide.doubt == 0.30
    assert 0.3 < wide.days.mean < 0.6


def test_beyond_all_cells_the_last_row_speaks_with_more_doubt():
    assert place(-85.0, None, 1).doubt == place(-85.0, 30.0, 1).doubt == 0.30


def test_a_generator_gives_what_its_charger_asks():
    document, _ = with_row(made_up_document(), "sources", {"kind": "generator", "watts": "400 W"})
    made = brought_of(plan_of(document), "anchor")[-1]
    assert made.started
    assert made.current == pytest.approx(40 * 400 / (40 * 14.2 / 0.85), rel=1e-6)


def test_the_same_plan_and_seed_give_the_same_days():
    spells = ahead(PLAN).spells
    assert spells(14, 7) == spells(14, 7) != spells(14, 8)
    assert all(0 < one <= Share(0.85) for one in spells(14, 7))
