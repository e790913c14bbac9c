"""Feeders against a general-purpose solver, a maker's drop figure, hand sums, and full networks.

Random trees: the node volts and branch currents as unknowns of one sparse matrix, Kirchhoff's and
Ohm's laws row by row, solved with ``scipy.sparse.linalg.spsolve`` and constant power by repeated
substitution. A maker's page: 40 mV per ampere and metre of a run. Four batteries of 20 mΩ with
links of 1.5 mΩ under 100 A: the worked example that goes round the trade (remembered).
Rows of batteries: the whole network of cells and links, solved with ``numpy.linalg.solve``.
"""

from math import inf, sqrt

import numpy as np
import pytest
from scipy.optimize import root
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import spsolve

from engine.conductors.resistance import resistance
from engine.conductors.sizes import read_size
from engine.feeders.ladder import read_ladder
from engine.feeders.parallel import TakeOff, shares, uneven
from engine.feeders.solve import solve
from engine.feeders.tree import Behaves, Branch, Draw, tree_of
from engine.finding import meets
from engine.units import Celsius, Ohm, Volt

E, R = Volt(12.8), Ohm(0.003)


def solved(tree, volts, within, draws):
    """Return the operating point, which there must be."""
    found = solve(tree, Volt(volts), Ohm(within), draws)
    assert found is not None
    return found


def made(seed, count, *, sources=False):
    """Return a random tree and its draws, together within what the bank can bring."""
    random = np.random.default_rng(seed)
    branches = [
        Branch(
            f"n{place}",
            f"n{random.integers(place)}" if place and random.random() < 0.9 else "bank",
            Ohm(random.uniform(0.0002, 0.3 / sqrt(count)) if random.random() < 0.8 else 0.0),
        )
        for place in range(count)
    ]
    least = -1.0 if sources else 0.0
    figures = {
        Behaves.CURRENT: lambda: random.uniform(least, 1.0) * 25 / count,
        Behaves.POWER: lambda: random.uniform(least, 1.0) * 300 / count,
        Behaves.RESISTANCE: lambda: random.uniform(0.5, 2.0) * count,
    }
    draws = [
        Draw(f"n{random.integers(count)}", figures[behaves](), behaves)
        for behaves in map(list(Behaves).__getitem__, random.integers(3, size=count))
    ]
    tree, problems = tree_of("bank", [branches[place] for place in random.permutation(count)])
    assert problems == ()
    return tree, draws


def by_sparse_matrix(tree, volts, within, draws):
    """Return node volts and branch currents, the bank's own resistance the first branch."""
    nodes = tree.nodes
    at = {node: place for place, node in enumerate(nodes)}
    count = len(nodes)
    runs = [(None, "bank", within), *((b.source, b.ident, b.resistance) for b in tree.branches)]
    entries, known = [], np.zeros(2 * count)
    for row, (source, ident, ohms) in enumerate(runs):
        # Ohm: V(source) − V(ident) − R I = 0. Kirchhoff: what comes in goes on, or is drawn.
        entries += [(row, at[ident], -1.0), (row, count + row, -ohms)]
        entries.append((count + at[ident], count + row, 1.0))
        if source is None:
            known[row] = -volts
        else:
            entries.append((row, at[source], 1.0))
            entries.append((count + at[source], count + row, -1.0))
    watts = np.zeros(count)
    for draw in draws:
        node = at[draw.node]
        if draw.behaves is Behaves.CURRENT:
            known[count + node] += draw.amount
        elif draw.behaves is Behaves.POWER:
            watts[node] += draw.amount
        else:
            entries.append((count + node, node, -1 / draw.amount))
    rows, columns, figures = zip(*entries, strict=True)
    matrix = coo_matrix((figures, (rows, columns)), shape=(2 * count, 2 * count)).tocsc()
    before, found = np.zeros(count), np.full(2 * count, float(volts))
    while np.max(np.abs(found[:count] - before)) > 1e-12 * volts:
        before = found[:count]
        found = spsolve(matrix, known + np.concatenate([np.zeros(count), watts / before]))
    return dict(zip(nodes, found[:count], strict=True)), dict(
        zip(nodes, found[count:], strict=True)
    )


@pytest.mark.parametrize("sources", [False, True])
@pytest.mark.parametrize(("count", "seeds"), [(2, 12), (7, 12), (40, 6), (150, 3), (500, 2)])
def test_random_trees_as_a_sparse_solver_has_them(count, seeds, sources):
    for seed in range(seeds):
        tree, draws = made(seed, count, sources=sources)
        found = solved(tree, E, R, draws)
        volts, amps = by_sparse_matrix(tree, E, R, draws)
        assert found.volts == pytest.approx(volts, rel=1e-9)
        assert found.current == pytest.approx(amps.pop("bank"), rel=1e-9, abs=1e-9)
        assert found.amps == pytest.approx(amps, rel=1e-9, abs=1e-9)
        assert found.supplied == pytest.approx(found.taken + found.heat, rel=1e-9, abs=1e-7)


@pytest.mark.parametrize("seed", range(12))
def test_near_the_collapse_as_scipy_s_root_has_it(seed):
    """Loads grown until nothing can carry them; just before, SciPy finds the same upper root."""
    tree, draws = made(seed, 6)

    def grown(factor):
        return [Draw(draw.node, draw.amount * factor, Behaves.POWER) for draw in draws]

    low, high = 0.0, 1e4
    while high - low > 1e-6 * high:
        middle = (low + high) / 2
        low, high = (low, middle) if solve(tree, E, R, grown(middle)) is None else (middle, high)
    found = solved(tree, E, R, grown(low * 0.999))
    nodes = tree.nodes
    runs = [(0, Ohm(R)), *((nodes.index(b.source), b.resistance) for b in tree.branches)]

    def unmet(volts):
        watts = np.zeros(len(nodes))
        for draw in grown(low * 0.999):
            watts[nodes.index(draw.node)] += draw.amount
        through = watts / volts
        for place in range(len(nodes) - 1, 0, -1):
            through[runs[place][0]] += through[place]
        above = [E, *(volts[source] for source, _ in runs[1:])]
        return [
            above[place] - ohms * through[place] - volts[place]
            for place, (_, ohms) in enumerate(runs)
        ]

    start = [found.volts[node] * 1.02 for node in nodes]
    other = root(unmet, start, tol=1e-13)
    assert other.success
    assert [found.volts[node] for node in nodes] == pytest.approx(list(other.x), rel=1e-8)


def test_a_maker_s_page_ten_watts_over_twelve_metres():
    """40 mV/A/m over 12 m is 0.48 Ω; I = (12 − √(144 − 4 × 0.48 × 10)) / 0.96 = 0.8631 A."""
    tree, _ = tree_of("bank", [Branch("lamp", "bank", Ohm(0.48))])
    found = solved(tree, Volt(12.0), Ohm(0.0), [Draw("lamp", 10.0, Behaves.POWER)])
    assert found.amps["lamp"] == pytest.approx(0.8631, abs=0.00005)
    assert found.amps["lamp"] == pytest.approx((12 - sqrt(144 - 4 * 0.48 * 10)) / 0.96, rel=1e-12)
    assert 12.0 - found.volts["lamp"] == pytest.approx(0.4143, abs=0.00005)


def test_a_ladder_of_two_resistors_by_hand():
    """12 V; 1 Ω; 6 Ω to ground beside 1 Ω and 2 Ω: 6 ∥ 3 = 2 Ω, so 4 A, 8 V, 2.667 A, 5.333 V."""
    tree, _ = tree_of("bank", [Branch("a", "bank", Ohm(1.0)), Branch("b", "a", Ohm(1.0))])
    draws = [Draw("a", 6.0, Behaves.RESISTANCE), Draw("b", 2.0, Behaves.RESISTANCE)]
    found = solved(tree, Volt(12.0), Ohm(0.0), draws)
    assert found.volts == pytest.approx({"bank": 12.0, "a": 8.0, "b": 16 / 3})
    assert found.amps == pytest.approx({"a": 4.0, "b": 8 / 3})
    assert (found.worst, found.supplied, found.heat) == (
        "b", pytest.approx(48.0), pytest.approx(16 + 64 / 9),
    )  # fmt: skip


def test_a_charging_source_lifts_the_bank_by_hand():
    """20 A in, 5 A out: 15 A through 10 mΩ lift 12 V to 12.15; 20 A over 50 mΩ add a volt."""
    tree, _ = tree_of("bank", [Branch("sun", "bank", Ohm(0.05)), Branch("fridge", "bank", Ohm(0))])
    draws = [Draw("sun", -20.0, Behaves.CURRENT), Draw("fridge", 5.0, Behaves.CURRENT)]
    found = solved(tree, Volt(12.0), Ohm(0.01), draws)
    assert found.volts == pytest.approx({"bank": 12.15, "sun": 13.15, "fridge": 12.15})
    assert (found.current, found.worst) == (pytest.approx(-15.0), "fridge")
    assert found.supplied == pytest.approx(found.taken + found.heat)


@pytest.mark.parametrize("ohms", [0.01, 0.48, 3.0])
def test_no_operating_point_beyond_a_quarter_of_the_short_circuit_s_watts(ohms):
    """P > E² / (4 R); at the very edge half the volts are left."""
    tree, _ = tree_of("bank", [Branch("load", "bank", Ohm(ohms))])
    edge = 12.0**2 / (4 * ohms)

    def at(watts):
        return solved(tree, 12.0, 0.0, [Draw("load", watts, Behaves.POWER)])

    beyond = [Draw("load", edge * (1 + 1e-9), Behaves.POWER)]
    assert solve(tree, Volt(12.0), Ohm(0.0), beyond) is None
    assert at(edge).volts["load"] == pytest.approx(6.0, rel=1e-6)
    below = at(edge * (1 - 1e-6)).volts["load"]
    assert below == pytest.approx(6 * (1 + sqrt(1e-6)), rel=1e-9)


def test_a_source_on_a_thin_run_carries_what_the_bank_alone_could_not():
    """12 V, 1 Ω, 20 A pushed in: V = 32 − 200 / V, 23.80 V; without it 200 W are beyond 36 W."""
    tree, _ = tree_of("bank", [Branch("far", "bank", Ohm(1.0))])
    load, sun = Draw("far", 200.0, Behaves.POWER), Draw("far", -20.0, Behaves.CURRENT)
    assert solve(tree, Volt(12.0), Ohm(0.0), [load]) is None
    found = solved(tree, Volt(12.0), Ohm(0.0), [load, sun])
    assert found.volts["far"] == pytest.approx(16 + sqrt(56), rel=1e-12)


def test_a_current_that_takes_all_the_volts():
    tree, _ = tree_of("bank", [Branch("load", "bank", Ohm(1.0))])
    assert solve(tree, Volt(12.0), Ohm(0.0), [Draw("load", 12.0, Behaves.CURRENT)]) is None


def test_a_typed_ladder_is_its_conductors():
    """Two conductors of 10 AWG over 5.6 m and 0.5 mΩ of joints, 4.6 A: R by the handbook's row."""
    ladder, _ = read_ladder("fridge, 10 AWG, 5.6 m, 0.5 mohm, 4.6 A", Celsius(75.0))
    ohms = 2 * 5.6 / 304.8 * 1.29 + 0.0005
    found = solved(ladder.tree, Volt(12.0), Ohm(0.0), ladder.draws)
    assert found.volts["fridge"] == pytest.approx(12 - 4.6 * ohms, rel=1e-12)
    warm = resistance(read_size("10 AWG"), Celsius(75.0))
    assert ladder.tree.branches[0].resistance == pytest.approx(2 * 5.6 / 1000 * warm + 0.0005)


@pytest.mark.parametrize("take_off", [TakeOff.ONE_END, TakeOff.DIAGONAL])
@pytest.mark.parametrize("count", range(2, 9))
def test_a_row_of_batteries_as_the_whole_network_has_it(count, take_off):
    """Every post a node, every cell a source of 12.8 V behind its resistance, 100 A taken off."""
    random = np.random.default_rng(count)
    for link in (0.0001, 0.0005, 0.004):
        inner = random.uniform(0.002, 0.02, count)
        matrix, known = np.zeros((2 * count, 2 * count)), np.zeros(2 * count)

        def join(one, other, ohms, matrix=matrix):
            for first, second in ((one, other), (other, one)):
                matrix[first, first] += 1 / ohms
                matrix[first, second] -= 1 / ohms

        for place, ohms in enumerate(inner):
            join(place, count + place, ohms)
            known[place] += 12.8 / ohms
            known[count + place] -= 12.8 / ohms
        for place in range(count - 1):
            join(place, place + 1, link)
            join(count + place, count + place + 1, link)
        known[0] -= 100.0
        known[count if take_off is TakeOff.ONE_END else -1] += 100.0
        # The last negative post is the zero of the volts.
        volts = np.append(np.linalg.solve(matrix[:-1, :-1], known[:-1]), 0.0)
        amps = [
            (12.8 - volts[place] + volts[count + place]) / ohms for place, ohms in enumerate(inner)
        ]
        found = shares([Ohm(ohms) for ohms in inner], Ohm(link), take_off)
        assert [100 * share for share in found] == pytest.approx(amps, rel=1e-9)


def test_the_trade_s_worked_example_of_four_batteries():
    """Printed 35.9, 26.2, 20.4, 17.8 A at one end, 26.7, 23.2, 23.2, 26.7 A diagonal."""
    row = [Ohm(0.02)] * 4
    for take_off, amps in (
        (TakeOff.ONE_END, [35.9, 26.2, 20.4, 17.8]),
        (TakeOff.DIAGONAL, [26.7, 23.2, 23.2, 26.7]),
    ):
        found = shares(row, Ohm(0.0015), take_off)
        assert [100 * share for share in found] == pytest.approx(amps, abs=0.15)


@pytest.mark.parametrize(("inner", "link"), [(0.003, 0.0005), (0.02, 0.0015), (0.005, 0.0)])
def test_two_batteries_by_hand(inner, link):
    """One end: (r + 2 l) / (2 r + 2 l). Diagonal and equal leads: half each."""
    row = [Ohm(inner)] * 2
    first, second = shares(row, Ohm(link), TakeOff.ONE_END)
    assert first == pytest.approx((inner + 2 * link) / (2 * inner + 2 * link), rel=1e-12)
    assert first + second == pytest.approx(1.0, rel=1e-12)
    for take_off in (TakeOff.DIAGONAL, TakeOff.EQUAL_LEADS):
        found = shares(row, Ohm(link), take_off)
        assert found == pytest.approx((0.5, 0.5))
        assert uneven(found) == pytest.approx(1.0)


def test_equal_leads_share_by_what_each_way_conducts():
    """3 mΩ and 6 mΩ behind two leads of 0.5 mΩ each: 1/4 to 1/7, so 7/11 and 4/11."""
    found = shares([Ohm(0.003), Ohm(0.006)], Ohm(0.0005), TakeOff.EQUAL_LEADS)
    assert found == pytest.approx((7 / 11, 4 / 11))
    assert not meets(uneven(found), 1.1)
    assert uneven(found) < inf
