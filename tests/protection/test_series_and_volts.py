"""What each kind interrupts, and at how many volts; figures as the reference gives them."""

import pytest

from engine.conductors.tables import STUDS
from engine.finding import Verdict
from engine.problem import Problem
from engine.protection.kinds import (
    VOLTS_RATED,
    charging_volts,
    interrupts,
    judge_volts,
    most_volts,
)
from engine.protection.series import SERIES
from engine.protection.tables import BANDS, INTERRUPTING
from engine.units import Volt

TYPICAL: dict[str, tuple[float | None, ...]] = {
    "blade": (1000.0, None, None),
    "large blade": (1000.0, None, None),
    "bolt-down small": (2000.0, None, None),
    "bolt-down large": (2000.0, None, None),
    "terminal-mount": (5000.0, 2000.0, None),
    "plate": (6000.0, None, None),
    "class T": (20000.0, 20000.0, 20000.0),
    "thermal breaker": (2500.0, None, None),
    "magnetic breaker": (5000.0, 5000.0, None),
}
"""Amperes at 24, 48 and 120 V."""


@pytest.mark.parametrize("series", SERIES)
def test_every_series_has_its_interrupting_rating(series):
    for volts, amperes_there in zip((24.0, 48.0, 120.0), TYPICAL[series], strict=True):
        assert interrupts(series, Volt(volts)) == amperes_there
    marked = [volts for volts, _ in INTERRUPTING[series]]
    amperes = [one for _, one in INTERRUPTING[series]]
    assert marked == sorted(marked)
    assert amperes == sorted(amperes, reverse=True)
    assert most_volts(series) == marked[-1]
    assert INTERRUPTING.source.typical


def test_the_mark_of_14_v_is_for_12_v_systems():
    assert interrupts("terminal-mount", Volt(12.0)) == 10_000.0


def test_names_are_the_same_in_every_table():
    assert set(INTERRUPTING.rows) == set(SERIES)
    assert set(BANDS) < set(SERIES)
    assert set(STUDS.rows) < set(SERIES)
    assert all(table.source.typical for table in BANDS.values())


def test_a_bank_of_48_v_charges_beyond_the_mark_of_a_blade():
    """14.6 / 12 × 48 = 58.4 V."""
    assert charging_volts(Volt(48.0)) == pytest.approx(58.4)
    found = judge_volts("blade", Volt(48.0))
    assert (found.verdict, found.rule) == (Verdict.STOP, VOLTS_RATED)
    assert "58.4 V" in found.words
    assert "terminal-mount, class T or magnetic breaker" in found.mend
    assert judge_volts("class T", Volt(48.0)).verdict is Verdict.FINE
    assert judge_volts("class T", Volt(400.0)).mend == "Read the volts marked on it."


@pytest.mark.parametrize(
    "ask", [most_volts, lambda one: interrupts(one, Volt(12.0))], ids=["volts", "amperes"]
)
def test_a_series_that_is_none(ask):
    with pytest.raises(Problem, match="“string” is not in the table"):
        ask("string")
