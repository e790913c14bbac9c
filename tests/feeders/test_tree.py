"""Trees and ladders that cannot be hung: every fault named, the rest still built."""

from math import inf, nan

import pytest

from engine.feeders.ladder import MOST, plain, read_ladder
from engine.feeders.parallel import TakeOff, shares
from engine.feeders.solve import solve
from engine.feeders.tree import Behaves, Branch, Draw, tree_of
from engine.problem import Problem
from engine.units import Celsius, Ohm, Volt

COLD = Celsius(20.0)


def solved(tree, volts, within, draws):
    """Return the operating point, which there must be."""
    found = solve(tree, Volt(volts), Ohm(within), draws)
    assert found is not None
    return found


def hung(*rows):
    """Return the nodes of a tree, and what is wrong with each branch."""
    tree, problems = tree_of("bank", [Branch(*row) for row in rows])
    assert all(problem.mend for problem in problems)
    return tree.nodes, {problem.where: problem.what for problem in problems}


def test_in_any_order_each_run_stands_after_the_one_that_feeds_it():
    nodes, problems = hung(("c", "b", 0.1), ("a", "bank", 0.1), ("b", "a", 0.1), ("d", "bank", 0))
    assert nodes == ("bank", "a", "d", "b", "c")
    assert problems == {}


def test_a_run_that_feeds_itself():
    nodes, problems = hung(("D03", "D03", 0.1), ("lamp", "D03", 0.1), ("main", "bank", 0.1))
    assert nodes == ("bank", "main")
    assert problems == {
        "D03": "“D03” feeds itself.",
        "lamp": "“lamp” hangs on “D03”, which is left out.",
    }


def test_a_loop_and_what_hangs_on_it():
    nodes, problems = hung(("a", "c", 1), ("b", "a", 1), ("c", "b", 1), ("d", "c", 1))
    assert nodes == ("bank",)
    assert problems == {
        "a": "“a” feeds itself: it is fed from “c”, which it feeds.",
        "b": "“b” feeds itself: it is fed from “a”, which it feeds.",
        "c": "“c” feeds itself: it is fed from “b”, which it feeds.",
        "d": "“d” hangs on “c”, which is left out.",
    }


def test_an_orphan_and_what_hangs_on_it():
    nodes, problems = hung(("a", "mast", 1), ("b", "a", 1), ("main", "bank", 1))
    assert nodes == ("bank", "main")
    assert problems == {
        "a": "“a” is fed from “mast”, which does not exist.",
        "b": "“b” hangs on “a”, which is left out.",
    }


def test_of_two_runs_with_one_name_the_first_is_kept():
    tree, problems = tree_of("bank", [Branch("a", "bank", Ohm(1)), Branch("a", "bank", Ohm(2))])
    assert [branch.resistance for branch in tree.branches] == [Ohm(1)]
    assert [problem.what for problem in problems] == ["Two runs are called “a”."]


def test_a_run_called_as_the_bank():
    assert hung(("bank", "a", 1), ("a", "bank", 1)) == (
        ("bank", "a"),
        {"bank": "“bank” is the name of the bank."},
    )


@pytest.mark.parametrize("ohms", [-0.001, nan, inf])
def test_a_resistance_that_is_none(ohms):
    nodes, problems = hung(("a", "bank", ohms))
    assert nodes == ("bank",)
    assert problems["a"].startswith("“a” has a resistance of ")


def test_no_branch_at_all():
    tree, problems = tree_of("bank", [])
    assert (tree.nodes, problems) == (("bank",), ())
    found = solved(tree, Volt(12.0), Ohm(0.01), [Draw("bank", 10.0, Behaves.CURRENT)])
    assert found.volts == pytest.approx({"bank": 11.9})


def test_a_chain_of_six_hundred():
    """600 runs of 0.1 mΩ carry 10 A to the last: 0.6 V lost."""
    rows = [Branch(f"n{n}", f"n{n - 1}" if n else "bank", Ohm(0.0001)) for n in range(600)]
    tree, problems = tree_of("bank", reversed(rows))
    assert problems == ()
    found = solved(tree, Volt(12.0), Ohm(0.0), [Draw("n599", 10.0, Behaves.CURRENT)])
    assert found.volts["n599"] == pytest.approx(11.4, rel=1e-12)
    _, problems = tree_of("bank", [*rows[1:], Branch("n0", "n599", Ohm(0.0))])
    assert len(problems) == 600
    _, problems = tree_of("bank", rows[1:])
    assert sum("does not exist" in problem.what for problem in problems) == 1


def test_runs_of_no_length_join_their_ends():
    """Zero ohm to a panel and on to two loads, with and without a bank that holds its volts."""
    tree, _ = tree_of("bank", [Branch("a", "bank", Ohm(0)), Branch("b", "a", Ohm(0))])
    draws = [Draw("a", 60.0, Behaves.POWER), Draw("b", 3.0, Behaves.RESISTANCE)]
    found = solved(tree, Volt(12.0), Ohm(0.0), draws)
    assert found.volts == {"bank": 12.0, "a": 12.0, "b": 12.0}
    assert (found.current, found.heat) == (pytest.approx(9.0), 0.0)
    sagging = solved(tree, Volt(12.0), Ohm(0.05), draws)
    assert len(set(sagging.volts.values())) == 1
    assert sagging.lost_in_bank == pytest.approx(sagging.current**2 * 0.05)


def test_the_worst_is_the_lowest_that_takes_anything():
    tree, _ = tree_of("bank", [Branch("a", "bank", Ohm(0.1)), Branch("b", "a", Ohm(0.1))])
    current = Behaves.CURRENT
    assert solved(tree, Volt(12.0), Ohm(0.0), [Draw("a", 5.0, current)]).worst == "a"
    both = [Draw("a", 5.0, current), Draw("b", 5.0, current)]
    assert solved(tree, Volt(12.0), Ohm(0.0), both).worst == "b"
    assert solved(tree, Volt(12.0), Ohm(0.0), [Draw("a", -5.0, current)]).worst is None


@pytest.mark.parametrize(
    "draw",
    [
        Draw("mast", 1.0, Behaves.CURRENT),
        Draw("a", nan, Behaves.CURRENT),
        Draw("a", inf, Behaves.POWER),
        Draw("a", 0.0, Behaves.RESISTANCE),
        Draw("a", -3.0, Behaves.RESISTANCE),
    ],
)
def test_a_draw_that_cannot_be_placed_is_named(draw):
    tree, _ = tree_of("bank", [Branch("a", "bank", Ohm(0.1))])
    with pytest.raises(Problem) as caught:
        solve(tree, Volt(12.0), Ohm(0.0), [draw])
    assert caught.value.where == draw.node
    assert caught.value.mend


@pytest.mark.parametrize(
    ("volts", "within", "where"),
    [(0.0, 0.0, "volts"), (nan, 0.0, "volts"), (12.0, -1.0, "bank_resistance"),
     (12.0, inf, "bank_resistance")],
)  # fmt: skip
def test_a_bank_that_is_none(volts, within, where):
    tree, _ = tree_of("bank", [])
    with pytest.raises(Problem) as caught:
        solve(tree, Volt(volts), Ohm(within), [])
    assert caught.value.where == where


@pytest.mark.parametrize(
    ("inner", "link", "where"),
    [
        ([], 0.0, "batteries"),
        ([0.003] * 25, 0.0, "batteries"),
        ([0.003, 0.0], 0.0, "resistance"),
        ([0.003, nan], 0.0, "resistance"),
        ([0.003] * 2, -0.001, "link"),
        ([0.003] * 2, inf, "link"),
    ],
)
def test_a_row_of_batteries_that_is_none(inner, link, where):
    with pytest.raises(Problem) as caught:
        shares(inner, link, TakeOff.DIAGONAL)
    assert caught.value.where == where


def test_one_battery_gives_all():
    assert [shares([Ohm(0.003)], Ohm(0.001), way) for way in TakeOff] == [(1.0,)] * 3


def test_a_ladder_with_every_kind_of_entry():
    text = """Main, 2/0 AWG,1,4 m, 0.5 mohm; panel from MAIN, 4 AWG, 10 ft
        fridge , 10 AWG, 5,6 m, 4,6 A ;; lamp from Panel, 2,5 mm2, 3 m, 8 ohm, 1 W;
        sun from bank, 6 mm2, 0 m, 2 mΩ, -20 A; anchor light from panel, 14 SAE, 12 m, 0,2 A"""
    ladder, problems = read_ladder(text, COLD)
    assert problems == ()
    assert [(b.ident, b.source) for b in ladder.tree.branches] == [
        ("Main", "bank"), ("sun", "bank"), ("panel", "Main"), ("fridge", "panel"),
        ("lamp", "panel"), ("anchor light", "panel"),
    ]  # fmt: skip
    assert ladder.draws == (
        Draw("fridge", 4.6, Behaves.CURRENT),
        Draw("lamp", 8.0, Behaves.RESISTANCE),
        Draw("lamp", 1.0, Behaves.POWER),
        Draw("sun", -20.0, Behaves.CURRENT),
        Draw("anchor light", 0.2, Behaves.CURRENT),
    )
    assert ladder.runs["Main"][1] == 1.4
    assert ladder.tree.branches[1].resistance == pytest.approx(0.002)


def test_names_become_keys():
    assert [plain(name) for name in ("Bow  light", "nav-2", "?", "Kühl")] == [
        "bow_light", "nav_2", "", "kühl",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("", "The ladder has no entry."),
        (" ; \n;", "The ladder has no entry."),
        ("?", "“?” begins with no name."),
        ("from panel, 10 AWG, 3 m", "“from panel, 10 AWG, 3 m” begins with no name."),
        ("a", "“a”: a size and a run one way are needed."),
        ("a, 10 AWG", "“a”: a size and a run one way are needed."),
        ("a, 10, 3 m", "“a”: “10” may be a gauge or square millimetres."),
        ("a, 10 AWG, 3", "“a”: “3” has no unit."),
        ("a, 10 AWG, ?", "“a”: “?” has no unit."),
        ("a, 10 AWG, four m", "“a”: “four m” is not a length."),
        ("a, 10 AWG, -3 m", "“a”: “-3 m”: run, one way must be at least 0 m."),
        ("a, 10 AWG, 3 m, 4.6", "“a”: “4.6” has no unit."),
        ("a, 10 AWG, 3 m, 4 kg", "“a”: “4 kg” is no draw."),
        ("a, 10 AWG, 3 m, ?", "“a”: “?” is no draw."),
        ("a, 10 AWG, 3 m, 0 ohm", "“a”: “0 ohm”: load must be at least 0.001 Ω."),
        ("a, 10 AWG, 3 m, -2 mohm", "“a”: “-2 mohm”: joints must be at least 0 Ω."),
        ("a from b, 10 AWG, 3 m", "“a” is fed from “b”, which does not exist."),
        ("A from a, 10 AWG, 3 m", "“A” feeds itself."),
        ("a, 10 AWG, 3 m; A, 10 AWG, 3 m", "Two runs are called “a”."),
        ("Bank, 10 AWG, 3 m", "“bank” is the name of the bank."),
    ],
)
def test_an_entry_that_cannot_be_read_is_named(text, what):
    _, problems = read_ladder(text, COLD)
    assert [(problem.where, problem.what) for problem in problems] == [("ladder", what)]
    assert problems[0].mend


def test_every_problem_of_a_ladder_and_only_those():
    text = "a, 10, 3 m; b, 10 AWG, x m; c from b, 10 AWG, 3 m, 4 kg; d from c, 10 AWG, 3 m, 1 A"
    _, problems = read_ladder(text, COLD)
    assert [problem.what[:3] for problem in problems] == ["“a”", "“b”", "“c”"]


def test_a_ladder_too_long():
    _, problems = read_ladder("a, 10 AWG, 3 m;" * (MOST + 1), COLD)
    assert problems[0].what == f"The ladder has {MOST + 1} entries."
