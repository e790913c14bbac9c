"""Where protection stands: what straddles a limit cannot be said; two sources want two."""

import pytest

from engine.estimate import Estimate
from engine.finding import Verdict
from engine.protection.placement import (
    PLACED,
    PLACED_AT_BATTERY,
    PLACED_SHEATHED,
    STARTER,
    End,
    output_limit,
    placed,
    two_sources,
)
from engine.units import Amp


def test_a_range_that_straddles_the_limit_cannot_be_said():
    found = placed(Estimate(0.1, 0.15, 0.3), sheathed=False, at_battery=False)
    assert (found.verdict, found.rule) == (Verdict.CANNOT_SAY, PLACED)
    assert found.words == (
        "Protection stands 0.15 m (6 in) along the conductor, perhaps 0.10 to 0.30 m; the limit "
        "is 0.18 m (7 in)."
    )


@pytest.mark.parametrize(
    ("sheathed", "at_battery", "rule"),
    [
        (False, False, PLACED),
        (True, False, PLACED_SHEATHED),
        (True, True, PLACED_AT_BATTERY),
        (False, True, PLACED_AT_BATTERY),
    ],
)
def test_the_limit_that_holds(sheathed, at_battery, rule):
    near = placed(Estimate.exact(0.1), sheathed=sheathed, at_battery=at_battery)
    far = placed(Estimate.exact(2.0), sheathed=sheathed, at_battery=at_battery)
    assert (near.verdict, near.rule, near.mend) == (Verdict.FINE, rule, "")
    assert (far.verdict, far.rule) == (Verdict.STOP, rule)
    assert far.mend


def test_the_cranking_motor_is_let_off_by_law_only():
    far = Estimate.exact(3.0)
    found = placed(far, sheathed=False, at_battery=True, cranking=True)
    assert (found.verdict, found.rule) == (Verdict.FINE, STARTER)
    assert "heat and drop do count" in found.words


BANK = End("bank", protected=True)


@pytest.mark.parametrize(
    ("other", "verdict"),
    [
        (End("charger", protected=True), Verdict.FINE),
        (End("charger", protected=False), Verdict.STOP),
        (End("charger", protected=False, limits_itself=True), Verdict.CANNOT_SAY),
        (End("charger", protected=False, limits_itself=True, most=Amp(60.0)), Verdict.FINE),
        (End("charger", protected=False, limits_itself=True, most=Amp(61.0)), Verdict.STOP),
    ],
)
def test_a_source_at_each_end(other, verdict):
    assert two_sources(BANK, other, Amp(60.0)).verdict is verdict
    assert two_sources(other, BANK, Amp(60.0)).verdict is verdict


def test_the_graver_end_is_told():
    found = two_sources(
        End("alternator", protected=False, limits_itself=True),
        End("second bank", protected=False),
        Amp(60.0),
    )
    assert found.verdict is Verdict.STOP
    assert "second bank" in found.mend


def test_a_source_that_does_not_limit_itself():
    """33 CFR 183.460(b): 120 % of its output."""
    assert output_limit(Amp(50.0)) == 60.0
