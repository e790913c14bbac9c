"""An estimate is one text; its parts are edited apart and stay what was typed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.estimate import SURENESS
from engine.plan.compose import composed, parts_of, with_sureness
from engine.problem import Problem
from engine.units import CURRENT, FRACTION, LENGTH, NUMBER, TIME, read


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("4.6 A (4.3 to 5)", ("4.6 A", "4.3", "5")),
        (" 4.6 A ( 4.3 - 5 A ) ", ("4.6 A", "4.3", "5 A")),
        ("4.6 A", ("4.6 A", "", "")),
        ("", ("", "", "")),
        ("a (b)", ("a (b)", "", "")),
    ],
)
def test_parts_of_a_text(text, parts):
    assert parts_of(text) == parts


@pytest.mark.parametrize("text", ["4.6 A (4.3 to 5)", "4.6 A", "? (4 to 5)", ""])
def test_taken_apart_and_put_together(text):
    assert composed(*parts_of(text)) == text


def test_half_a_range_waits_for_the_other():
    assert composed("4 A", "3") == "4 A (3 to ?)"
    assert composed("4 A", "", "5") == "4 A (? to 5)"


@pytest.mark.parametrize(
    ("text", "sureness", "kind", "expected"),
    [
        ("4.6 A", "exact", CURRENT, "4.6 A"),
        ("4.6 A (4 to 5)", "exact", CURRENT, "4.6 A"),
        ("4.6 A", "rough ±30 %", CURRENT, "4.6 A (3.22 to 5.98)"),
        ("10 h", "wild ×2", TIME, "10 h (5 to 20)"),
        ("4-5 A", "about ±10 %", CURRENT, "4.5 A (4.05 to 4.95)"),
        ("5'6\"", "about ±10 %", LENGTH, "1.676 m (1.51 to 1.84)"),
        ("4,6 A", "about ±10 %", CURRENT, "4,6 A (4.14 to 5.06)"),
        ("0.4", "about ±10 %", FRACTION, "0.4 (0.36 to 0.44)"),
        ("2-4", "exact", NUMBER, "3"),
    ],
)
def test_how_sure(text, sureness, kind, expected):
    assert with_sureness(text, sureness, kind) == expected


@pytest.mark.parametrize("text", ["", "?"])
def test_nothing_to_be_sure_of(text):
    with pytest.raises(Problem, match="no value yet"):
        with_sureness(text, "exact", CURRENT)


@given(st.integers(1, 9999).map(lambda n: f"{n / 100:g} A"), st.sampled_from(sorted(SURENESS)))
def test_a_range_put_around_a_value_reads_as_that_range(text, sureness):
    below, above = SURENESS[sureness]
    likely = read(text, CURRENT).likely
    found = read(with_sureness(text, sureness, CURRENT), CURRENT)
    assert likely is not None
    assert found.likely == likely
    assert found.low == pytest.approx(likely * below, rel=0.006)
    assert found.high == pytest.approx(likely * above, rel=0.006)
