"""Least sizes, support, pull and the other catalogue, by law, reprints and hand sums."""

import pytest

from engine.conductors.mechanics import (
    FRICTION_LIMIT,
    LEAST_SIZE,
    LEAST_SIZE_ISO,
    MOST_ON_STUD,
    SUPPORT_ISO,
    SUPPORT_ISO_BATTERY,
    SUPPORT_LAW,
    SUPPORT_USUAL,
    insulation_judgement,
    nearest,
    parallel_allowed,
    pull_newton,
    smallest_judgement,
    swap_note,
)
from engine.conductors.sizes import KNOWN, read_size
from engine.conductors.tables import STRANDS
from engine.conductors.withstand import energy, k_of, limit
from engine.finding import Verdict
from engine.problem import Problem
from engine.units import Amp, Celsius


@pytest.mark.parametrize(
    ("size", "sheathed", "verdict", "rule"),
    [
        ("16 AWG", False, Verdict.FINE, LEAST_SIZE),
        ("16 SAE", False, Verdict.FINE, LEAST_SIZE),
        ("18 AWG", False, Verdict.SHOULD, LEAST_SIZE),
        ("18 AWG", True, Verdict.FINE, LEAST_SIZE),
        ("2/0 AWG", False, Verdict.FINE, LEAST_SIZE),
        ("1 mm2", False, Verdict.FINE, LEAST_SIZE_ISO),
        ("0.75 mm2", False, Verdict.SHOULD, LEAST_SIZE_ISO),
        ("0.75 mm2", True, Verdict.FINE, LEAST_SIZE_ISO),
    ],
)
def test_least_sizes(size, sheathed, verdict, rule):
    """33 CFR 183.425(d) to (f): 16 AWG alone, 18 in a sheath. ISO 10133, 7.7: 1 and 0.75 mm²."""
    found = smallest_judgement(read_size(size), sheathed=sheathed)
    assert (found.verdict, found.rule) == (verdict, rule)
    assert bool(found.mend) == (verdict is Verdict.SHOULD)


def test_a_sheath_ends_close_by():
    """30 in by law, 800 mm by ISO."""
    assert "0.76 m" in smallest_judgement(read_size("18 AWG"), sheathed=True).words
    assert "0.80 m" in smallest_judgement(read_size("1 mm2"), sheathed=True).words


def test_support_and_terminals():
    """46 CFR 183.340(b)(4): 24 in, 610 mm. ISO 10133: 450 and 300 mm. 50 mV / 20 A = 2.5 mΩ."""
    assert pytest.approx(0.610, abs=0.001) == SUPPORT_LAW
    assert pytest.approx(0.457, abs=0.001) == SUPPORT_USUAL
    assert (SUPPORT_ISO, SUPPORT_ISO_BATTERY, MOST_ON_STUD) == (0.45, 0.3, 4)
    assert pytest.approx(0.0025) == FRICTION_LIMIT


@pytest.mark.parametrize(
    ("insulation", "engine_space", "verdict"),
    [(60, True, "should"), (75, True, "within limit"), (60, False, "within limit")],
)
def test_insulation_in_an_engine_space(insulation, engine_space, verdict):
    """ABYC E-11, 11.16.1, as reprinted: 75 °C and oil-resistant."""
    assert insulation_judgement(insulation, engine_space=engine_space).verdict == verdict


def test_a_pull_in_newtons():
    """225 lbf × 4.448 = 1001 N; 10 lbf = 44.5 N."""
    assert pull_newton("4/0") == pytest.approx(1001, abs=0.5)
    assert pull_newton("18") == pytest.approx(44.5, abs=0.05)
    with pytest.raises(Problem, match="“22”"):
        pull_newton("22")


@pytest.mark.parametrize("gauge", STRANDS.rows)
def test_strands_are_as_fine_as_their_kind(gauge):
    """Type 3 strands are of 30 AWG, 0.0507 mm²; copper over strands lies within a tenth of it."""
    strand = KNOWN["awg"][gauge].area / STRANDS[gauge]
    assert strand == pytest.approx(0.0507, rel=0.1)


@pytest.mark.parametrize(
    ("size", "allowed"),
    [("1/0 AWG", True), ("1 AWG", False), ("4/0 SAE", True), ("50 mm2", False), ("70 mm2", True),
     ("0.75 mm2", False)],
)  # fmt: skip
def test_conductors_in_parallel(size, allowed):
    """NEC 310.10, as commonly read: 1/0 (53.5 mm²) and thicker."""
    assert parallel_allowed(read_size(size)) is allowed


@pytest.mark.parametrize(
    ("size", "other", "words"),
    [
        ("1/0 AWG", "50 mm2", "smaller and has 6 % less"),
        ("8 AWG", "10 mm2", "larger and has 20 % more"),
        ("6 mm2", "10 AWG", "smaller and has 12 % less"),
        ("35 mm2", "2 AWG", "smaller and has 4 % less"),
    ],
)
def test_the_nearest_size_of_the_other_catalogue(size, other, words):
    """By area: 53.48 and 50; 8.366 and 10; 6 and 5.261; 35 and 33.63 mm²."""
    assert str(nearest(read_size(size))) == other
    assert words in swap_note(read_size(size))


@pytest.mark.parametrize(("initial", "final"), [(160, 105), (105, 105), (-300, 100)])
def test_copper_that_does_not_warm(initial, final):
    with pytest.raises(Problem, match="cannot warm"):
        k_of(Celsius(initial), Celsius(final))


def test_heat_by_hand():
    """2000 A for 0.05 s: 200 000 A²s; XLPE 105 to 250 °C, 10 mm²: (134.8 × 10)²."""
    assert energy(Amp(2000.0), 0.05) == pytest.approx(200_000)
    found = limit(read_size("10 mm2"), Celsius(105.0), Celsius(250.0))
    assert found == pytest.approx(1348**2, rel=0.001)
