"""Variants side by side, by hand where a plan is small enough for it."""

import pytest

from engine.ahead.changes import changed
from engine.ahead.compare import MOST_BESIDE, columns_of, figures_of
from engine.plan.edit import with_row, with_value
from engine.plan.made_up import made_up_document
from engine.simulate.run import days_alone, run
from tests.ahead.plans import ahead, median, read, small

BOAT = made_up_document()


def figures(document):
    return figures_of(read(document), "anchor")


def test_days_to_the_reserve_are_usable_charge_over_the_days_use():
    """By hand: 240 Ah × (1 − 0.2) = 192 Ah, and nothing comes in under any sky."""
    found = figures(small())
    assert found.part == pytest.approx(192 / median(small()), rel=1e-9)
    assert found.dull == found.part
    assert (found.engine, found.fuel, found.has_engine) == (0, 0, False)


def test_a_bank_larger_by_a_quarter_lasts_longer_by_a_quarter():
    larger = with_value(small(), "bank.capacity", "300 Ah")
    assert figures(larger).part == pytest.approx(1.25 * figures(small()).part, rel=1e-9)


def test_figures_are_those_of_the_whole_run():
    """The run told whole, another way through the same days, comes to the same."""
    plan = read(BOAT)
    outlook = ahead(plan)
    series = run(outlook.setup, outlook.under("part"))
    found = figures(BOAT)
    assert found.engine == pytest.approx(series.engine_hours_a_week, rel=1e-9)
    assert found.fuel == pytest.approx(series.fuel_a_week, rel=1e-9)
    assert found.lowest == pytest.approx(series.lowest, rel=1e-9)
    bare = ahead(read(small()))
    alone = days_alone(bare.setup, bare.under("part"))
    assert figures(small()).part == pytest.approx(alone, rel=1e-9)


def test_a_dull_sky_never_lasts_longer():
    found = figures(BOAT)
    assert found.dull < found.part


def test_columns_are_the_plan_and_those_shown_beside_it():
    columns = columns_of(BOAT, "anchor")
    assert [one.ident for one in columns] == ["", "V01", "V02", "V03"]
    assert columns[0].told == ()
    assert all(one.figures for one in columns)
    every = with_value(BOAT, "variants.V04.shown", "yes")
    assert len(columns_of(every, "anchor")) == 1 + MOST_BESIDE
    bank = with_value(every, "variants.V01.shown", "no")
    assert [one.ident for one in columns_of(bank, "anchor")] == ["", "V02", "V03", "V04"]


def columns(document):
    return columns_of(document, "anchor")


def test_a_variant_that_does_not_hold_says_why_and_the_others_go_on():
    document = with_value(BOAT, "variants.V01.changes", "loads.L99.draw = 4 A")
    document = with_value(document, "variants.V02.changes", "bank.capacity = 3 kg")
    plan, gone, kilos, panel = columns(document)
    assert gone.figures is None
    assert "L99" in str(gone.problem)
    assert kilos.problem.where == "bank.capacity"
    assert plan.figures
    assert panel.figures


def test_what_is_lacking_is_told_and_nothing_is_guessed():
    document, _ = with_row({"format": 1, "boat": {}}, "variants", {"name": "x"})
    for one in columns_of(document, "anchor"):
        assert one.figures is None
        assert "the month" in one.missing


def test_more_panel_and_less_load_never_shorten_the_days():
    now = figures(BOAT).part
    for path, text in (("sources.S02.watts", "430 W"), ("loads.L37.hours_anchor", "1.2 h")):
        longer = figures(changed(BOAT, ((path, text),))).part
        assert longer is None or longer > now
