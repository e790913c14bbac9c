"""Three catalogues, never mixed. Areas from the definition: d = 0.005 in · 92^((36 − n)/39)."""

import pytest

from engine.conductors.sizes import (
    CATALOGUES,
    KNOWN,
    STOCKED,
    area_of_awg,
    gauge_number,
    read_size,
)
from engine.problem import Problem


@pytest.mark.parametrize(
    ("text", "catalogue", "size"),
    [
        ("10 AWG", "", "10 AWG"),
        ("10awg", "", "10 AWG"),
        ("AWG 10", "", "10 AWG"),
        ("#10", "", "10 AWG"),
        ("#10", "sae", "10 SAE"),
        ("10 ga", "", "10 AWG"),
        ("10 gauge", "sae", "10 SAE"),
        ("2/0", "", "2/0 AWG"),
        ("2/0", "sae", "2/0 SAE"),
        ("00", "", "2/0 AWG"),
        ("0", "", "1/0 AWG"),
        ("0000", "", "4/0 AWG"),
        ("0000 SAE", "", "4/0 SAE"),
        ("10", "awg", "10 AWG"),
        ("10", "sae", "10 SAE"),
        ("10", "metric", "10 mm2"),
        ("10 SAE", "awg", "10 SAE"),
        ("10 AWG", "metric", "10 AWG"),
        ("16mm2", "", "16 mm2"),
        ("16 mm²", "awg", "16 mm2"),
        ("2,5 mm2", "", "2.5 mm2"),
        ("2.50 sq mm", "", "2.5 mm2"),
        ("6 qmm", "", "6 mm2"),
        ("  6   MM2 ", "", "6 mm2"),
    ],
)
def test_a_size_as_people_write_it_stays_in_its_catalogue(text, catalogue, size):
    assert str(read_size(text, catalogue)) == size


@pytest.mark.parametrize(
    ("text", "catalogue", "what"),
    [
        ("10", "", "“10” may be a gauge or square millimetres."),
        ("thick", "", "“thick” is not a conductor size."),
        ("", "sae", "is not a conductor size"),
        ("3 SAE", "", "“3 SAE” is not a trade size."),
        ("11 AWG", "", "is not a trade size"),
        ("7 mm2", "", "is not a trade size"),
        ("5/0", "", "is not a conductor size"),
        ("99", "awg", "is not a trade size"),
        ("<script>", "", "“<script>” is not a conductor size."),
    ],
)
def test_what_is_no_size_says_why_and_what_there_is(text, catalogue, what):
    with pytest.raises(Problem) as caught:
        read_size(text, catalogue)
    assert what in caught.value.what
    assert caught.value.mend


def test_gauges_are_numbered_past_one():
    assert [gauge_number(gauge) for gauge in ("18", "1", "1/0", "4/0")] == [18, 1, 0, -3]
    assert area_of_awg("4/0") == pytest.approx(0.460**2 / 4 * 3.14159265 * 25.4**2, rel=1e-6)


def test_a_metric_size_counts_as_the_gauge_below_it():
    """2.5 mm² lies between 14 AWG (2.08) and 12 AWG (3.31); 0.75 is thinner than 18 AWG (0.823)."""
    counts = {name: size.counts_as for name, size in KNOWN["metric"].items()}
    assert counts["2.5"] == "14"
    assert counts["50"] == "1"
    assert counts["0.75"] == ""
    assert "0.75" not in [size.name for size in STOCKED["metric"]]


def test_the_shelf_runs_thin_to_thick_without_3_awg():
    for catalogue, _ in CATALOGUES:
        areas = [size.area for size in STOCKED[catalogue]]
        assert areas == sorted(areas)
    assert "3" not in [size.name for size in STOCKED["awg"]]
    assert "3" in KNOWN["awg"]
