"""Pictures: every shape lies inside its frame, and the marks stand where the figures say."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.estimate import Estimate
from engine.views.parts.pictures import (
    Scale,
    Stop,
    bar,
    nice_step,
    scale_picture,
    share_bar,
    strip_picture,
)
from engine.views.parts.say import hours, whole
from tests.views.markup import parsed

amperes = st.floats(0.1, 900.0)
STOPS = [Stop("source", "12 V", 0.0), Stop("fuse", "", 0.3), Stop("load", "11.6 V", 1.0)]


def picture(html):
    found = parsed(html).named("svg")[0]
    _, _, width, height = (float(one) for one in str(found.attributes["viewbox"]).split())
    return found, width, height


@given(amperes, amperes, amperes, amperes | st.none(), st.booleans())
def test_a_scale_stays_in_its_frame(load, least, most, rating, narrow):
    scale = Scale(load, least, max(most, load), rating, "x")
    found, width, _ = picture(scale_picture(scale, "t", narrow=narrow))
    for line in found.named("line"):
        assert 0 <= float(line.attributes["x1"]) <= width
        assert 0 <= float(line.attributes["x2"]) <= width
    assert len(found.named("rect")) == (scale.most > scale.least)
    assert len(found.named("path")) == (rating is not None)


@given(st.lists(st.floats(0.01, 90.0), min_size=3, max_size=3).map(sorted), st.floats(0.0, 2.0))
def test_a_bar_and_its_whisker(ends, factor):
    day = Estimate(*ends)
    found, width, _ = picture(bar(day, day.high * factor, "t"))
    if factor >= 1:
        assert float(found.named("rect")[0].attributes["width"]) <= width
    low, high = (float(found.named("line")[n].attributes["x1"]) for n in (1, 2))
    assert low <= high


@given(
    st.lists(st.floats(0.0, 0.5), min_size=3, max_size=3).map(sorted), st.sampled_from([0.03, 0.1])
)
def test_a_drop_against_its_limit(ends, allowed):
    share = Estimate(*ends)
    found, width, _ = picture(share_bar(share, allowed, "t"))
    limit = float(found.named("line")[-1].attributes["x1"])
    drop = float(found.named("rect")[0].attributes["width"])
    assert 0 <= drop <= width
    assert 0 < limit < width
    assert (drop <= limit + 0.2) == (share.likely <= allowed * 1.002) or abs(
        share.likely - allowed
    ) < 0.005


@pytest.mark.parametrize("narrow", [True, False])
def test_a_strip_names_its_stops(narrow):
    found, _, _ = picture(strip_picture(STOPS, "above", "below", "title", narrow=narrow))
    assert len(found.named("circle")) == 3
    assert found.attributes["aria-label"] == "title"
    for word in ("source", "fuse", "load", "above", "below"):
        assert word in found.text


@given(st.floats(0.05, 5000.0), st.integers(3, 12))
def test_marks_of_a_scale_are_round_and_few(most, marks):
    step = nice_step(most, marks)
    assert most / step <= max(marks, 1) * 2.01
    assert f"{step:.1e}"[0] in "125"


def test_figures_for_people():
    assert [whole(one) for one in (132.4, 9.5, 9.44, 0.0)] == ["132", "10", "9.4", "0"]
    assert [hours(one) for one in (0.25, 1.0, 1.6, 20.01, 30.0, 0.0)] == [
        "15 min", "1 h", "1 h 36 min", "20 h", "30 h", "0 min",
    ]  # fmt: skip
