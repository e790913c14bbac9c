"""Where the sun stands, against NREL's algorithm, pvlib, FAO-56 and Klein.

NREL SPA: Reda and Andreas, NREL/TP-560-34302, 2004, appendix A.5. pvlib 0.16.1: apparent zenith and
azimuth at the instants below. FAO Irrigation and Drainage Paper 56, 1998, examples 8 to 10: Ra in
MJ/m² a day (constant 0.0820 MJ/m² a minute = 1366.67 W/m²) and daylight hours without refraction.
Klein 1977: the sun outside the air on the mean day is the mean of the month's days.
"""

from datetime import UTC, datetime
from math import acos, cos, degrees, radians, sin
from statistics import fmean

import pandas as pd
import pytest
from pvlib.solarposition import get_solarposition, sun_rise_set_transit_spa

from engine.solar.clouded import outside_day
from engine.solar.dates import LENGTHS, Date, mean_day
from engine.solar.daylight import day_length, day_outside, sun_times, sunset_angle
from engine.solar.sky import Frame
from engine.solar.sun import declination, orbit, position
from engine.units import Hour

INSTANTS = [
    ("2003-10-17T19:30:30", 39.742476, -105.1786, 50.11162, 194.34024),
    ("2023-01-15T16:08:00", 17.0, -62.0, 38.14563, 176.4715),
    ("2023-06-21T20:00:00", 17.0, -62.0, 54.01812, 286.98152),
    ("2023-07-15T11:55:00", 39.5, 3.0, 17.97936, 180.7601),
    ("2023-12-21T12:20:00", 50.0, -5.0, 73.38534, 180.49265),
    ("2023-04-10T20:00:00", -17.5, -150.0, 39.37601, 51.96293),
    ("2023-06-21T04:00:00", 60.0, 5.0, 81.41579, 56.90776),
    ("2023-03-20T14:47:00", 0.0, -40.0, 0.16363, 131.90131),
    ("2023-01-10T00:30:00", -36.0, 175.0, 13.98545, 357.30684),
]
"""UTC, latitude, longitude, zenith as seen, azimuth; the first is NREL's, the rest pvlib's."""


def seen(instant, latitude, longitude):
    at = datetime.fromisoformat(instant)
    hour = Hour(at.hour + at.minute / 60 + at.second / 3600)
    sun = orbit(at.timetuple().tm_yday, hour, at.year)
    return position(latitude, longitude, sun, hour)


def apart(one, other):
    """Return the angle between two places in the sky, each zenith and azimuth, °."""
    a, b = radians(one[0]), radians(other[0])
    level = sin(a) * sin(b) * cos(radians(one[1] - other[1]))
    return degrees(acos(min(cos(a) * cos(b) + level, 1.0)))


@pytest.mark.parametrize(("instant", "latitude", "longitude", "zenith", "azimuth"), INSTANTS)
def test_the_sun_stands_where_nrel_and_pvlib_see_it(instant, latitude, longitude, zenith, azimuth):
    found = seen(instant, latitude, longitude)
    assert found.zenith == pytest.approx(zenith, abs=0.02)
    assert apart((found.zenith, found.azimuth), (zenith, azimuth)) < 0.02


def test_a_year_of_suns_from_pole_to_pole_against_pvlib():
    """pvlib's NREL SPA with its refraction, every 5 days and 7 hours from 2019 to 2025."""
    times = pd.date_range("2019-01-01", "2025-12-31", freq="127h", tz="UTC")
    for latitude, longitude in ((-65, 20), (-33, -70), (0, 100), (43, 5), (66, -20)):
        true = get_solarposition(times, latitude, longitude)
        for time, zenith, azimuth in zip(
            times, true["apparent_zenith"], true["azimuth"], strict=True
        ):
            if zenith < 89:
                at = time.to_pydatetime().astimezone(UTC).replace(tzinfo=None)
                found = seen(at.isoformat(), latitude, longitude)
                assert apart((found.zenith, found.azimuth), (zenith, azimuth)) < 0.02


@pytest.mark.parametrize(
    ("latitude", "tilt", "nearness", "megajoules", "hours"),
    [(-20.0, 0.120, 0.985, 32.2, 11.7), (-22.9, 0.3288, 0.9774, 25.1, 10.9)],
)
def test_fao_examples_8_to_10_by_fao_s_sun(latitude, tilt, nearness, megajoules, hours):
    """Example 8 prints its declination; that of example 10 is 0.409 sin(2π 135/365 − 1.39)."""
    found = day_outside(latitude, degrees(tilt), 1366.67 * nearness) * 0.0036
    assert found == pytest.approx(megajoules, abs=0.05)
    assert sunset_angle(latitude, degrees(tilt)) * 2 / 15 == pytest.approx(hours, abs=0.05)


@pytest.mark.parametrize(
    ("latitude", "date", "megajoules", "hours"),
    [(-20.0, Date(2023, 9, 3), 32.2, 11.7), (-22.9, Date(2023, 5, 15), 25.1, 10.9)],
)
def test_fao_examples_by_our_own_sun(latitude, date, megajoules, hours):
    """FAO's one-term declination is up to 0.5° out: 1.5 % of Ra here."""
    frame = Frame(constant=1366.67)
    found = outside_day(latitude, date.of_year, frame) * 0.0036
    assert found == pytest.approx(megajoules, rel=0.015)
    assert day_length(latitude, date.of_year, altitude=0.0) == pytest.approx(hours, abs=0.1)


@pytest.mark.parametrize("latitude", [-45, -20, 0, 20, 45])
@pytest.mark.parametrize("month", range(1, 13))
def test_klein_s_day_is_the_mean_of_its_month(latitude, month):
    days = [Date(2023, month, day).of_year for day in range(1, LENGTHS[month - 1] + 1)]
    whole = fmean(outside_day(latitude, day) for day in days)
    assert outside_day(latitude, mean_day(month).of_year) == pytest.approx(whole, rel=0.02)


def test_solstices_and_equinoxes():
    """Astronomical almanac 2023: 20 March 21:24, 21 June 14:58, 23 September 06:50 UTC."""
    assert orbit(79, Hour(21.4)).declination == pytest.approx(0, abs=0.005)
    assert orbit(266, Hour(6.83)).declination == pytest.approx(0, abs=0.005)
    assert declination(172) == pytest.approx(23.44, abs=0.01)


def test_the_equation_of_time_at_its_ends():
    """Almanac: −14.2 min about 11 February, +16.4 min about 3 November."""
    equations = [orbit(day).equation for day in range(1, 366)]
    assert min(equations) == pytest.approx(-14.24, abs=0.05)
    assert max(equations) == pytest.approx(16.45, abs=0.05)
    assert abs(equations.index(min(equations)) + 1 - 42) <= 1
    assert abs(equations.index(max(equations)) + 1 - 307) <= 1


def test_rise_and_set_against_pvlib():
    """pvlib's SPA rise, transit and set (upper edge, usual refraction), to a minute and a half."""
    for latitude, longitude in ((-35, 0), (0, 30), (43, 5), (58, -7)):
        for text in ("2023-02-10", "2023-06-21", "2023-10-05"):
            day = pd.DatetimeIndex([text], tz="UTC")
            true = sun_rise_set_transit_spa(day, latitude, longitude).iloc[0]
            found = sun_times(latitude, longitude, day[0].day_of_year)
            pairs = {"sunrise": found.rise, "transit": found.noon, "sunset": found.set}
            for name, hour in pairs.items():
                clock = true[name]
                hours = clock.hour + clock.minute / 60 + clock.second / 3600
                assert hour == pytest.approx(hours, abs=0.025)


def test_no_rise_where_the_sun_stays_up_or_down():
    down, up = sun_times(75.0, 20.0, 355), sun_times(75.0, 20.0, 172)
    assert (down.rise, down.set, down.night) == (None, None, 24.0)
    assert (up.rise, up.set, up.night) == (None, None, 0.0)
