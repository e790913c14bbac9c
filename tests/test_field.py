"""Fields: declared once, read within limits."""

from math import inf

import pytest

from engine.estimate import Estimate
from engine.field import CHOICE, TEXT, Field, chosen, estimate_of, value_of, yes
from engine.problem import Problem
from engine.units import CURRENT, FRACTION, LENGTH, NUMBER

RUN = Field("run", "Run, one way", LENGTH, least=0.0, most=1000.0, above=True)
SHARE = Field("allowed", "Drop allowed", FRACTION, least=0.0, most=0.5)
DRAW = Field("draw", "Draw", CURRENT, least=0.0)
COUNT = Field("bundle", "Bundle", NUMBER, least=1.0, most=60.0)
KIND = Field("kind", "Catalogue", CHOICE, default="sae", choices=(("awg", "AWG"), ("sae", "SAE")))


def test_a_value_within_limits():
    assert value_of(RUN, "14 ft").likely == pytest.approx(4.2672)
    assert value_of(RUN, "?").likely is None
    assert value_of(COUNT, "1").likely == 1.0


@pytest.mark.parametrize("text", ["3", "3 %", "0.03"])
def test_a_bare_share_above_its_limit_is_a_percent(text):
    assert value_of(SHARE, text).likely == pytest.approx(0.03)


@pytest.mark.parametrize(
    ("field", "text", "what", "mend"),
    [
        (RUN, "0", "run, one way must be above 0 m", "Enter more than 0 m, up to 1000 m."),
        (RUN, "-4 m", "run, one way must be above 0 m", "Enter more than 0 m, up to 1000 m."),
        (RUN, "4 km", "run, one way of 4000 m is more than this program can believe", "1000 m"),
        (RUN, "1 m - 4 km", "of 4000 m is more", "1000 m"),
        (DRAW, "-1 A", "draw must be at least 0 A", "Enter a current, such as 4.6 A."),
        (COUNT, "0", "bundle must be at least 1.", "Enter 1 to 60."),
        (SHARE, "80 %", "drop allowed of 80 % is more", "Enter 0 % to 50 %."),
    ],
)
def test_a_value_outside_its_limits_says_which(field, text, what, mend):
    with pytest.raises(Problem) as caught:
        value_of(field, text)
    assert what in caught.value.what
    assert mend in caught.value.mend


def test_the_unit_beside_a_field():
    assert (RUN.unit, SHARE.unit, Field("a", "A", TEXT).unit) == ("m", "%", "")
    assert (RUN.most, DRAW.most) == (1000.0, inf)


@pytest.mark.parametrize(
    ("parts", "expected"),
    [
        (("4.6 A", "", "", "measured"), Estimate(4.6, 4.6, 4.6, "measured")),
        (("4-5 A", "", "", "nameplate"), Estimate(4.0, 4.5, 5.0, "nameplate")),
        (("4.6", "4.3", "5", ""), Estimate(4.3, 4.6, 5.0, "estimate")),
        (("4-5", "3", "", "no such tag"), Estimate(3.0, 4.5, 5.0, "estimate")),
        (("", "4", "5", "default"), Estimate(4.0, 4.5, 5.0, "default")),
    ],
)
def test_an_estimate_from_its_parts(parts, expected):
    assert estimate_of(DRAW, *parts) == expected


@pytest.mark.parametrize("parts", [("",), ("?", "4", ""), ("?", "", "5")])
def test_an_estimate_not_known(parts):
    assert estimate_of(DRAW, *parts) is None


def test_an_estimate_out_of_order():
    with pytest.raises(Problem, match="5, 4 and 6 are not low, likely and high"):
        estimate_of(DRAW, "4 A", "5 A", "6 A")


def test_yes_and_no():
    assert [yes(text) for text in ("Yes", " on ", "1", "no", "false", "")] == [
        True, True, True, False, False, False,
    ]  # fmt: skip
    with pytest.raises(Problem, match="“maybe” is neither yes nor no"):
        yes("maybe")


def test_a_choice():
    assert (chosen(KIND, "AWG "), chosen(KIND, "")) == ("awg", "sae")
    assert chosen(Field("kind", "Kind", CHOICE), "") == ""
    with pytest.raises(Problem, match="“brass” is not a choice for catalogue") as caught:
        chosen(KIND, "brass")
    assert caught.value.mend == "Choose awg, sae."
