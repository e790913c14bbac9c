"""Estimates: a range and how it is known."""

from engine.estimate import KNOWN_BY, SURENESS, Estimate


def test_an_exact_value_has_no_range():
    assert Estimate.exact(4.6) == Estimate(4.6, 4.6, 4.6, "measured")
    assert Estimate.exact(4.6, "nameplate").known_by == "nameplate"
    assert Estimate.exact(4.6).certain
    assert not Estimate(4.0, 4.6, 5.0).certain


def test_scaling_scales_the_whole_range():
    assert Estimate(1.0, 2.0, 4.0, "default").scaled(0.5) == Estimate(0.5, 1.0, 2.0, "default")


def test_the_ladders_are_in_order():
    assert list(KNOWN_BY) == ["measured", "nameplate", "estimate", "default", "unknown"]
    widths = [high - low for low, high in SURENESS.values()]
    assert widths == sorted(widths)
