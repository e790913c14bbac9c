"""Rates, speeds, swept areas and days as people write them."""

import pytest

from engine.problem import Problem
from engine.units import DAYS, LENGTH, RATE, SPEED, SWEPT, read


@pytest.mark.parametrize(
    "text", ["0.25 /h", "0.25/h", "0,25 per hour", "0.25", "25 %/h", "1/4 per h", "0.2-0.3 /h"]
)
def test_a_rate_per_hour(text):
    assert read(text, RATE).likely == pytest.approx(0.25)


@pytest.mark.parametrize("text", ["6 m/s", "21.6 km/h", "11.663 kn", "11.663 knots", "6"])
def test_a_speed(text):
    """One knot is 1852 m an hour: 6 × 3600 / 1852 = 11.663."""
    assert read(text, SPEED).likely == pytest.approx(6.0, abs=0.0001)


@pytest.mark.parametrize("text", ["1.04 m2", "1.04 m²", "1.04 sq m", "1.04", "1040000 mm2"])
def test_a_swept_area(text):
    assert read(text, SWEPT).likely == pytest.approx(1.04)


@pytest.mark.parametrize("text", ["3", "3 days", "3 d", "72 h"])
def test_a_number_of_days(text):
    assert read(text, DAYS).likely == pytest.approx(3.0)


@pytest.mark.parametrize(
    ("text", "kind", "word"),
    [
        ("25 A", RATE, "current"),
        ("25 %", RATE, "bare number"),
        ("6 m", SPEED, "length"),
        ("6 m/s", LENGTH, "speed"),
        ("1 m", SWEPT, "length"),
        ("3 A", DAYS, "current"),
    ],
)
def test_another_measure_is_named(text, kind, word):
    with pytest.raises(Problem, match=word) as raised:
        read(text, kind)
    assert kind.example in raised.value.mend
