"""The sun of a day by its contract; figures are pvlib 0.16.1's, and the calendar's.

pvlib at one-minute midpoints, 17 July and 17 January 2023, longitude −40, constant 1366.1,
Hay-Davies, albedo 0.06, PVWatts with its default losses.
"""

import pytest

from engine.sums.sum import answered, outcome_of
from engine.sums.sun_day import SUN_DAY

PVLIB = {"longitude": "40 W", "constant": "1366.1 W/m2", "watts": "100 W"}


def asked(**given):
    return answered(SUN_DAY, {"latitude": "43 N", **given})


def values(**given):
    found = asked(**given)
    assert found["problems"] == []
    return {key: one["value"] for key, one in found["answers"].items()}


@pytest.mark.parametrize("month", ["7", "07", "jul", "July", "JULY"])
def test_a_month_is_read_as_people_write_it(month):
    assert values(month=month) == values(month="july")


@pytest.mark.parametrize("month", ["0", "13", "ju", "juli", "7.5", "²"])
def test_what_is_no_month_says_so(month):
    assert "is not a choice for month" in problems(month=month)["month"]["what"]


def test_a_dark_month_says_so_first_and_loses_nothing():
    found, wrong = outcome_of(SUN_DAY, {"latitude": "80 N", "month": "12"})
    assert found
    assert (found.words, wrong) == ("There is no sun on 10 December at 80 N.", [])
    assert not any("×" in one.value for one in found.working)
    assert found.cautions == ()


def problems(**given):
    found = asked(**given)
    assert found["answers"] == {}
    return {row["where"]: row for row in found["problems"]}


def test_a_clear_july_day_as_pvlib_has_it():
    found = values(latitude="20", month="july", tilt="30", azimuth="90", turbidity="3.7", **PVLIB)
    assert found["tilted"] == pytest.approx(6870.4, rel=0.001)
    assert found["panel"] == pytest.approx(504.37, rel=0.001)


def test_a_clear_august_day_far_south_as_pvlib_has_it():
    found = values(latitude="60 S", month="august", turbidity="1.95", **PVLIB)
    assert found["irradiation"] == pytest.approx(1291.3, rel=0.001)


def test_the_date_counts_before_the_month():
    assert values(date="2023-07-17", month="january") == values(month="july")
    assert values(date="2024-02-29") != values(month="july")


def test_units_and_what_is_stated():
    found = asked()
    units = {key: one["unit"] for key, one in found["answers"].items()}
    assert units == {
        "irradiation": "Wh/m²", "tilted": "Wh/m²", "panel": "Wh", "extraterrestrial": "Wh/m²",
    }  # fmt: skip
    working = "\n".join(found["working"])
    for stated in ("17 July 2023, day 198", "5 min", "1361 W/m²", "wiring", "outages", "turbidity"):
        assert stated in working


def test_the_constant_scales_what_is_above_the_air():
    one, other = values(), values(constant="1366.1 W/m2")
    assert other["extraterrestrial"] / one["extraterrestrial"] == pytest.approx(1366.1 / 1361)
    assert other["irradiation"] / one["irradiation"] == pytest.approx(1366.1 / 1361)


def test_a_cloudy_sky_is_the_month_s_mean_at_the_place():
    found = asked(latitude="15 N", longitude="60 W", month="january", sky="cloudy")
    level = found["answers"]["irradiation"]["value"]
    assert level == pytest.approx(4600, abs=71)
    assert any("15 %" in caution for caution in found["cautions"])
    assert any("MERRA-2" in line for line in found["working"])


def test_beyond_the_cells_says_so():
    found = asked(latitude="72", sky="cloudy")
    assert any("30 %" in caution for caution in found["cautions"])
    assert any("nearest" in caution for caution in found["cautions"])


@pytest.mark.parametrize("sky", ["clear", "cloudy"])
def test_polar_night_is_an_answer(sky):
    found = asked(latitude="80 N", month="december", sky=sky)
    assert found["problems"] == []
    assert {one["value"] for one in found["answers"].values()} == {0.0}
    assert found["cautions"] == []


@pytest.mark.parametrize(
    ("key", "text", "word"),
    [
        ("latitude", "95 N", "latitude"),
        ("latitude", "95 S", "latitude"),
        ("latitude", "43 E", "not a latitude"),
        ("longitude", "200 E", "longitude"),
        ("month", "juli", "juli"),
        ("month", "13", "13"),
        ("date", "2023-02-30", "calendar"),
        ("date", "yesterday", "not a date"),
        ("turbidity", "0.5", "turbidity"),
        ("turbidity", "much", "much"),
        ("watts", "0 W", "watts"),
        ("watts", "-5 W", "watts"),
        ("sky", "foggy", "foggy"),
        ("tilt", "200 deg", "tilt"),
        ("constant", "1361 W", "power"),
        ("constant", "0", "constant"),
    ],
)
def test_what_cannot_be_read_is_named_with_its_mend(key, text, word):
    found = problems(**{key: text})
    assert list(found) == [key]
    assert word in found[key]["what"].lower() or word in found[key]["what"]
    assert found[key]["mend"]


def test_a_limit_in_the_south_is_shown_in_the_mend():
    assert problems(latitude="95 S")["latitude"]["mend"] == "Enter -90 ° to 90 °."
