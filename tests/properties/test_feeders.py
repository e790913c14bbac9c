"""What must always hold of feeders: energy, and that a load lowers and a source lifts."""

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from engine.feeders.parallel import TakeOff, shares, uneven
from engine.feeders.solve import solve
from engine.feeders.tree import Behaves, Branch, Draw, tree_of
from engine.finding import meets
from engine.units import Ohm, Volt

MOST = 8
ohms = st.integers(0, 300).map(lambda tenths: Ohm(tenths / 10_000))
volts = st.floats(10.0, 60.0).map(Volt)
trees = st.lists(st.tuples(st.integers(0, MOST), ohms), min_size=1, max_size=MOST).map(
    lambda rows: tree_of(
        "bank",
        [
            Branch(f"n{place}", f"n{feeds % place}" if place else "bank", resistance)
            for place, (feeds, resistance) in enumerate(rows)
        ],
    )[0]
)
nodes = st.integers(0, MOST)
loads = st.one_of(
    st.tuples(nodes, st.floats(0.0, 50.0), st.just(Behaves.CURRENT)),
    st.tuples(nodes, st.floats(0.0, 600.0), st.just(Behaves.POWER)),
    st.tuples(nodes, st.floats(0.5, 100.0), st.just(Behaves.RESISTANCE)),
)
sources = st.one_of(
    st.tuples(nodes, st.floats(-50.0, 0.0), st.just(Behaves.CURRENT)),
    st.tuples(nodes, st.floats(-600.0, 0.0), st.just(Behaves.POWER)),
)


def placed(tree, figures):
    """Return draws on the tree's own nodes."""
    return [
        Draw(tree.nodes[node % len(tree.nodes)], amount, behaves)
        for node, amount, behaves in figures
    ]


def settled(tree, volts, within, figures):
    """Return the operating point; an example that has none says nothing."""
    found = solve(tree, volts, within, placed(tree, figures))
    assume(found is not None)
    assert found is not None
    return found


def never_above(one, other):
    return all(meets(one.volts[node], other.volts[node]) for node in one.volts)


@given(trees, volts, ohms, st.lists(loads | sources, max_size=8))
def test_what_the_bank_gives_is_taken_or_lost(tree, volts, within, figures):
    found = settled(tree, volts, within, figures)
    size = sum(abs(found.volts[node] * amps) for node, amps in found.amps.items())
    size += abs(found.supplied) + abs(found.taken)
    assert abs(found.supplied - found.taken - found.heat) <= 1e-9 * size + 1e-12
    assert found.heat >= 0


@given(trees, volts, ohms, st.lists(loads | sources, max_size=6), loads)
def test_a_load_more_never_raises_any_volts(tree, volts, within, figures, load):
    before = solve(tree, volts, within, placed(tree, figures))
    after = solve(tree, volts, within, placed(tree, [*figures, load]))
    if before is None:
        assert after is None
    elif after is not None:
        assert never_above(after, before)


@given(trees, volts, ohms, st.lists(loads | sources, max_size=6), sources)
def test_a_charging_source_never_lowers_any_volts(tree, volts, within, figures, source):
    before = settled(tree, volts, within, figures)
    after = solve(tree, volts, within, placed(tree, [*figures, source]))
    assert after is not None
    assert never_above(before, after)


@given(trees, volts, ohms, st.lists(loads | sources, max_size=6), nodes)
def test_a_load_of_nothing_changes_nothing(tree, volts, within, figures, node):
    before = solve(tree, volts, within, placed(tree, figures))
    for behaves in (Behaves.CURRENT, Behaves.POWER):
        assert solve(tree, volts, within, placed(tree, [*figures, (node, 0.0, behaves)])) == before


@given(trees, volts, ohms, st.lists(loads, max_size=6))
def test_volts_fall_from_the_bank_outwards(tree, volts, within, figures):
    found = settled(tree, volts, within, figures)
    assert meets(found.volts["bank"], volts)
    for branch in tree.branches:
        assert meets(found.volts[branch.ident], found.volts[branch.source])


@given(trees, volts, ohms, st.lists(loads | sources, max_size=6), st.floats(0.1, 10.0))
def test_scaling_volts_and_draws_together_scales_everything(tree, volts, within, figures, factor):
    powers = {Behaves.CURRENT: factor, Behaves.POWER: factor**2, Behaves.RESISTANCE: 1.0}
    more = [(node, amount * powers[behaves], behaves) for node, amount, behaves in figures]
    found = settled(tree, volts, within, figures)
    scaled = settled(tree, Volt(volts * factor), within, more)
    expected = {node: at * factor for node, at in found.volts.items()}
    assert scaled.volts == pytest.approx(expected, rel=1e-6)


inner = st.lists(st.floats(0.0005, 0.1).map(Ohm), min_size=1, max_size=24)
links = st.floats(0.0, 0.02).map(Ohm)


@given(inner, links, st.sampled_from(TakeOff))
def test_shares_are_a_whole_and_no_battery_is_fed_by_another(resistances, link, take_off):
    found = shares(resistances, link, take_off)
    assert sum(found) == pytest.approx(1.0, rel=1e-9)
    assert all(share >= 0 for share in found)
    assert uneven(found) >= 1 - 1e-9


@given(st.integers(2, 24), st.floats(0.0005, 0.1), links)
def test_alike_batteries_share_most_evenly_with_equal_leads_and_least_with_one_end(
    count, resistance, link
):
    row = [Ohm(resistance)] * count
    one_end, diagonal, equal = (uneven(shares(row, link, take_off)) for take_off in TakeOff)
    assert meets(equal, diagonal)
    assert meets(diagonal, one_end)


@given(st.integers(2, 24), st.floats(0.0005, 0.1), links)
def test_with_both_leads_at_one_end_each_battery_gives_less_than_the_one_before(
    count, resistance, link
):
    found = shares([Ohm(resistance)] * count, link, TakeOff.ONE_END)
    assert all(meets(later, before) for before, later in pairwise(found))
