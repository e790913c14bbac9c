"""Charts: every stroke lies inside its frame, tells the figures it was given, and is told in words.

The days are invented; the shape of the land is asked of the climatology's own cells.
"""

import re
from itertools import pairwise
from math import sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.ahead.told import times_in_ten
from engine.estimate import Estimate
from engine.solar.place import place_on_map
from engine.solar.place import sea_map as sea_cells
from engine.views.energy.chance_strip import Odds, chance_strip
from engine.views.energy.course import Course, Mark, Trace, lowest_of, nights_of, read_off
from engine.views.energy.curve import FOOT, LEFT, OFF, TALL, TOP, WIDE, curve
from engine.views.energy.day_bars import Bar, day_bars
from engine.views.energy.drawn import FINE, thinned, trail
from engine.views.energy.sea_map import outlines, sea_map
from engine.views.energy.tide_day import tide_day
from engine.views.energy.year_strip import Month, year_strip
from engine.views.parts.html import tag
from tests.views.markup import parsed

shares = st.floats(0.0, 1.0)
DAYS = 14
CHARGES = tuple(0.55 + 0.4 * sin(n / 15.3) * sin(n / 400) for n in range(DAYS * 96 + 1))
BAND = tuple((0.8 * one, one, min(1.1 * one, 1.0)) for one in CHARGES[::12])
MARKS = (
    Mark(30.5, 0.3, "engine on"),
    Mark(31.0, 0.4, "engine on"),
    Mark(32.0, 0.6, "engine off"),
    Mark(200.0, 0.3, "engine on"),
)
FULL = Course(
    DAYS,
    0.25,
    (Trace("planned", CHARGES), Trace("with <more> panel", CHARGES[::-1])),
    BAND,
    reserve=0.2,
    disconnect=0.1,
    nights=nights_of(5.4, 20.6, DAYS),
    marks=MARKS,
)


def said(element, name):
    """Return an attribute that must be there."""
    return str(element.attributes[name])


def points_of(path):
    """Return the points of a path of M, h, v, l with whole numbers, and z."""
    x = y = 0
    found = []
    for letter, figures in re.findall(r"([Mhvlz])([^Mhvlz]*)", path):
        one = [int(each) for each in re.findall(r"-?\d+", figures)]
        if letter == "M":
            x, y = one
        elif letter == "h":
            x += one[0]
        elif letter == "v":
            y += one[0]
        elif letter == "l":
            x, y = x + one[0], y + one[1]
        found.append((x, y))
    return found


def between(points, x):
    """Return the height of a way at a place, by proportion."""
    for (x1, y1), (x2, y2) in pairwise(points):
        if x1 <= x <= x2 and x2 > x1:
            return y1 + (y2 - y1) * (x - x1) / (x2 - x1)
    return points[-1][1]


# ---- Strokes ----


@given(st.lists(st.tuples(st.integers(-999, 999), st.integers(-999, 999)), min_size=1))
def test_a_trail_goes_through_its_points(points):
    walked = points_of(trail(points))
    assert walked[0] == points[0]
    assert walked[-1] == points[-1]
    assert set(walked) == set(points)


@given(st.lists(shares, min_size=1, max_size=60), st.sampled_from([0.0, 0.0025, 0.1]))
def test_what_is_left_out_of_a_curve_does_not_show(values, most):
    kept = thinned(values, most)
    assert kept[0] == 0
    assert kept[-1] == len(values) - 1
    for one, other in pairwise(kept):
        for place in range(one, other + 1):
            line = values[one] + (values[other] - values[one]) * (place - one) / (other - one)
            assert abs(line - values[place]) <= most + 1e-9


def test_a_straight_curve_needs_two_points():
    assert thinned([0.1 * n for n in range(50)], 0.001) == [0, 49]


# ---- The curve ----


def test_the_curve_is_the_charges_it_was_given():
    line = parsed(curve("c", "Charge", Course(DAYS, traces=(Trace("a", CHARGES),))))
    points = points_of(said(line.at("c-lines").named("path")[0], "d"))
    assert len(points) < len(CHARGES) / 2
    per = len(CHARGES) / WIDE / FINE  # steps in the finest part across
    steepest = max(abs(one - other) for one, other in pairwise(CHARGES))
    for place, share in enumerate(CHARGES):
        y = between(points, place * WIDE * FINE / (len(CHARGES) - 1))
        drawn = 1 - y / TALL / FINE
        assert drawn == pytest.approx(share, abs=OFF + 0.5 / TALL / FINE + per / 2 * steepest)


def test_every_stroke_of_the_curve_lies_in_its_frame():
    for course in (
        FULL,
        Course(3, 3.0, band=BAND[:25]),
        Course(1, 1.0, (Trace("a", (2.0, -1.0)),)),
    ):
        found = parsed(curve("c", "Charge", course))
        for path in found.at("c-lines").named("path"):
            for x, y in points_of(said(path, "d")):
                assert 0 <= x <= WIDE * FINE
                assert 0 <= y <= TALL * FINE
        frames = [one for one in found.named("svg") if "data-plot" in one.attributes]
        for frame in frames:
            width, height = map(int, said(frame, "viewbox").split()[2:])
            left, right, top, foot, start, end = map(int, said(frame, "data-plot").split())
            assert (left, top, foot) == (LEFT, TOP, FOOT)
            assert 0 < right <= width
            assert start < end <= course.hours
            for text in frame.named("text"):
                assert 0 <= int(said(text, "x")) <= width
                assert 0 <= int(said(text, "y")) <= height


def test_a_phone_shows_a_week_a_line_with_the_same_strokes():
    found = parsed(curve("c", "Charge", FULL))
    narrow = [one for one in found.named("svg") if one.attributes.get("class") == "narrow"]
    assert [said(one, "data-plot").split()[4:] for one in narrow] == [
        ["0", "168"],
        ["168", "336"],
    ]
    assert [said(one, "href") for one in found.named("use")] == ["#c-lines"] * 2


def test_a_curve_of_two_weeks_is_light():
    assert len(curve("c", "Charge", FULL)) < 25_000


def test_a_curve_is_told_in_words():
    found = parsed(curve("c", "Charge", FULL))
    for one in found.named("svg"):
        if one.attributes.get("role") == "img":
            assert one.named("title")[0].text.startswith("Charge")
            assert "Lowest" in one.named("desc")[0].text
    rows = found.at("c-table").named("tbody")[0].named("tr")
    assert len(rows) == DAYS
    low, when = lowest_of(CHARGES, 0.25, 13)
    assert f"{low * 100:.0f} % at {int(when % 24):02d}:" in rows[13].text.replace("\u00a0", " ")
    marks = found.at("c-marks").named("tbody")[0].named("tr")
    assert [one.named("b")[0].text for one in marks] == ["A", "B"]
    assert "day 2 06:30, day 2 07:00, day 9 08:00" in marks[0].text
    letters = [one for one in found.named("text") if one.attributes["class"] == "letter halo"]
    assert len(letters) == 6  # the second A stands too near to the first; each on both widths
    assert [one.text for one in found.named("figcaption")[0].named("span")] == [
        "planned", "with <more> panel", "the middle run", "8 runs in 10", "night",
    ]  # fmt: skip


def test_what_the_knob_reads_is_what_was_given():
    found = parsed(curve("c", "Charge", FULL))
    reading = next(one for one in found.named("div") if "data-columns" in one.attributes)
    assert said(reading.named("input")[0], "max") == str(24 * DAYS)
    columns = [one.split("\t") for one in said(reading, "data-columns").split("\n")]

    def at(place):
        texts = [one[1 + place // abs(int(one[0])) % (len(one) - 1)] for one in columns]
        return re.sub(r"\{(\d+)\}", lambda one: texts[int(one[1])], said(reading, "data-words"))

    hour = 9 * 24 + 15
    low, _, high = BAND[hour // 3]
    assert at(hour) == (
        f"Day 10, 15:00: planned {CHARGES[hour * 4] * 100:.0f} %, "
        f"with <more> panel {CHARGES[::-1][hour * 4] * 100:.0f} %, "
        f"8 runs in 10 between {low * 100:.0f} and {high * 100:.0f} %"
    )
    assert at(0).startswith("Day 1, 00:00")
    assert at(24 * DAYS).startswith("Day 15, 00:00")


def test_without_a_trace_the_middle_of_the_band_is_the_line():
    found = parsed(curve("c", "Charge", Course(DAYS, band=BAND)))
    assert "middle of all runs" in found.named("figcaption")[0].text
    assert found.at("c-table").named("tr")


@pytest.mark.parametrize(
    "course", [Course(3), Course(0, band=BAND), Course(2, 1.0, (Trace("a", ()),))]
)
def test_an_empty_course_is_no_crash(course):
    found = parsed(curve("c", "Charge", course))
    assert "Nothing is reckoned yet." in found.named("desc")[0].text
    assert not found.named("input", "table")


def test_nights_and_days_by_name():
    course = Course(2, nights=nights_of(6.5, 19.0, 2))
    assert (course.dawn(0), course.sunset(0)) == (6.5, 19.0)
    assert (course.dawn(1), course.sunset(1)) == (30.5, 43.0)
    assert Course(1).dawn(0) is None
    assert (course.titled(1), course.named(0)) == ("Day 2", "day 1")


@given(st.lists(shares, min_size=9, max_size=9))
def test_the_lowest_of_a_day_is_none_of_the_next(values):
    low, when = lowest_of(values, 6.0, 0)
    assert low == min(values[:4])
    assert when < 24
    assert read_off(values, 6.0, when) == low


# ---- Chances ----


def test_what_is_rare_is_not_called_never():
    assert [times_in_ten(one) for one in (0.0, 0.001, 0.05, 0.14, 0.95, 0.999, 1.0)] == [
        "0", "under 1", "under 1", "1", "over 9", "over 9", "10",
    ]  # fmt: skip


def test_ten_marks_a_day_as_many_filled_as_times():
    odds = [Odds(share, 0.02) for share in (0.0, 0.43, 1.0)]
    found = parsed(chance_strip("s", "engine needed", odds, 500, 500))
    cells = found.named("li")
    assert [one.text for one in cells] == [
        "by day 1 0 times in 10", "by day 2 4 times in 10", "by day 3 10 times in 10",
    ]  # fmt: skip
    filled = [
        sum(said(p, "d").count("M") for p in one.named("path") if said(p, "class") == "fill")
        for one in cells
    ]
    assert filled == [0, 4, 10]
    assert "± 2 %" in found.at("s-table").text.replace("\u00a0", " ")
    assert not found.named("progress")


def test_a_strip_under_way_shows_how_far_and_a_way_to_stop():
    stop = tag("button", "Stop", type="button")
    found = parsed(chance_strip("s", "engine needed", [Odds(0.5, 0.1)], 120, 500, stop))
    assert found.named("progress")[0].attributes == {
        "value": "120", "max": "500", "aria-label": "Runs done",
    }  # fmt: skip
    assert "120 of 500 runs" in found.text
    assert found.named("button")[0].text == "Stop"
    assert parsed(chance_strip("s", "engine needed", [], 0, 500)).named("progress")


# ---- The year ----


def months_like(likely):
    sun = Estimate(0.85 * likely, likely, 1.15 * likely)
    return [
        Month("January", sun, dark=True),
        Month("February", sun, unknown="No climate is known here."),
        *(Month(f"Month {n}", sun) for n in range(3, 8)),
        *(Month(f"Month {n}", sun, sun, sun) for n in range(8, 13)),
    ]


@given(st.floats(0.0, 900.0), st.integers(1, 12) | st.none())
def test_the_year_lies_in_its_frame_and_in_words(likely, chosen):
    found = parsed(year_strip("y", "The year", months_like(likely), chosen))
    for frame in (one for one in found.named("svg") if one.attributes.get("role") == "img"):
        width, height = map(int, said(frame, "viewbox").split()[2:])
        for path in frame.named("path"):
            for x, y in points_of(said(path, "d")):
                assert 0 <= x <= width
                assert 0 <= y <= height
    rows = found.at("y-table").named("tbody")[0].named("tr")
    assert "no sun" in rows[0].text
    assert "No climate is known here." in rows[1].text
    assert "no need" in rows[3].text
    assert ["▲" in one.text for one in rows] == [n == chosen for n in range(1, 13)]


def test_the_year_is_light():
    assert len(year_strip("y", "The year", months_like(104.0), 7)) < 16_000


# ---- The map ----


def test_the_coasts_enclose_what_is_not_sea():
    cells = sea_cells()
    area = 0
    for way in outlines(cells):
        turned = zip(way, way[1:] + way[:1], strict=True)
        area += sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in turned)
    assert area / 2 == sum(not one for row in cells for one in row)


def test_a_lake_is_a_way_of_its_own():
    cells = [[True] * 5, [True, False, False, False, True], [True, False, True, False, True],
             [True, False, False, False, True], [True] * 5]  # fmt: skip
    assert sorted(len(one) for one in outlines(cells)) == [4, 4]
    assert outlines([[True]]) == []


@pytest.mark.parametrize(("latitude", "longitude"), [(43.0, 5.5), (-33.9, 151.2), (80.0, -180.0)])
def test_the_mark_stands_where_the_place_is(latitude, longitude):
    found = parsed(sea_map("m", sea_cells(), latitude, longitude))
    for frame in found.named("svg"):
        left, right, top, foot = map(float, said(frame, "data-plot").split())
        mark = frame.named("circle")[0]
        west, east, *_ = said(found.named("div")[0], "data-across").split()
        share = (float(said(mark, "cx")) - left) / (right - left)
        assert float(west) + share * (float(east) - float(west)) == pytest.approx(
            longitude, abs=0.6
        )
        share = (float(said(mark, "cy")) - top) / (foot - top)
        assert place_on_map(0.0, share)[0] == pytest.approx(min(latitude, 64.5), abs=0.6)


def test_the_map_is_light_and_needs_no_place():
    assert len(sea_map("m", sea_cells(), 43.0, 5.5)) < 12_000
    found = parsed(sea_map("m", sea_cells(), None, None))
    assert found.named("output")[0].text == "No place yet"
    assert not found.named("circle")
    assert said(found.named("div")[0], "data-field") == "start.place.spot"


# ---- A day ----


def test_bars_stand_from_the_largest_down_and_the_rest_is_folded():
    bars = [
        Bar(f"Load {n}", f"Load {n}", Estimate(n - 0.5, n, n + 1.0), str(n), f"{n - 1} to {n + 1}")
        for n in (3, 9, 1, 5)
    ]
    found = parsed(day_bars("d", bars, "Ah", 3))
    assert [one.named("td")[0].text for one in found.at("d").named("tbody")[0].named("tr")] == [
        "Load 9", "Load 5", "Load 3",
    ]  # fmt: skip
    assert found.at("d-more").named("summary")[0].text == "1 more"
    assert "Load 1: 1 Ah, 0 to 2" in found.at("d-more").text
    assert not parsed(day_bars("d", bars, "Ah")).named("details")
    assert not parsed(day_bars("d", [], "Ah")).named("td")


def test_a_day_by_the_hour():
    use = [3.0] * 9 + [12.0] + [4.0] * 14
    sun = [max(0.0, 20 * sin((n - 5) / 4.5)) if 5 < n < 19 else 0.0 for n in range(24)]
    found = parsed(tide_day("t", "Use and sun", use, sun, nights=((0.0, 5.0), (19.0, 24.0))))
    for frame in (one for one in found.named("svg") if one.attributes.get("role") == "img"):
        width, height = map(int, said(frame, "viewbox").split()[2:])
        for path in frame.named("path"):
            for x, y in points_of(said(path, "d")):
                assert 0 <= x <= width
                assert 0 <= y <= height
        assert "Most used between 9:00 and 10:00: 12" in frame.named("desc")[0].text
    assert len(found.at("t-table").named("tbody")[0].named("tr")) == 24
