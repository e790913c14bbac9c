"""Clear days against pvlib 0.16.1: Ineichen, without enhancement, at sea level.

DAYS: pvlib at one-minute midpoints of 2023 at longitude −40, mean day of the month, apparent
zenith, Kasten-Young air mass, extraterrestrial by Spencer with 1366.1 W/m². INSTANTS: pvlib,
turbidity 3.5. Air mass as Kasten and Young print it (Applied Optics 28, 1989, table II).
"""

from math import cos, pi, radians, sin

import pandas as pd
import pytest
from pvlib.atmosphere import get_relative_airmass
from pvlib.clearsky import ineichen
from pvlib.irradiance import get_extra_radiation
from pvlib.solarposition import get_solarposition

from engine.solar.clouded import diffuse_share
from engine.solar.dates import mean_day, read_date
from engine.solar.daylight import normal_outside, sunset_angle
from engine.solar.plane import day_profile
from engine.solar.sky import Frame, air_mass, clear_air, clear_day
from engine.solar.sun import declination
from engine.units import Share

DAYS = [
    (-60, 1, 2.55, 8146.7), (-60, 8, 1.95, 1291.3), (-50, 1, 2.85, 8456.1),
    (-50, 8, 2.05, 2527.6), (-50, 12, 2.7, 8924.0), (-40, 7, 2.2, 2662.2), (-30, 1, 2.95, 8749.0),
    (-30, 8, 2.35, 4895.8), (-20, 2, 3.9, 7711.3), (-20, 6, 3.05, 4635.1), (-10, 3, 4.3, 7134.0),
    (-10, 8, 3.4, 6410.3), (0, 1, 3.65, 7048.8), (0, 6, 3.75, 6436.5), (10, 8, 4.0, 7212.4),
    (20, 2, 2.85, 6208.1), (20, 10, 3.35, 6268.6), (30, 4, 3.25, 7339.4), (40, 2, 2.25, 4147.2),
    (40, 6, 3.45, 8193.2), (50, 1, 2.15, 1593.6), (50, 12, 2.15, 1292.5), (60, 8, 2.45, 6147.7),
    (60, 1, 2.0, 482.5),
]  # fmt: skip
INSTANTS = [
    (50.11162, 1375.791, 620.209, 801.517, 106.201),
    (38.14563, 1412.985, 812.06, 878.004, 121.56),
    (54.01812, 1321.624, 535.456, 745.78, 97.288),
    (73.38534, 1412.709, 219.423, 536.323, 66.07),
    (81.41579, 1321.624, 71.664, 257.181, 33.276),
    (0.16363, 1377.689, 1044.385, 909.847, 134.542),
]
"""Zenith, outside, level, beam, diffuse."""


@pytest.mark.parametrize("step", [5, 15])
@pytest.mark.parametrize(("latitude", "month", "turbidity", "printed"), DAYS)
def test_a_clear_day_as_pvlib_sums_it(latitude, month, turbidity, printed, step):
    frame = Frame(-40.0, 2023, 1366.1, step)
    found = clear_day(latitude, mean_day(month).of_year, turbidity, frame)
    assert found == pytest.approx(printed, rel=0.001)


@pytest.mark.parametrize(("zenith", "outside", "level", "beam", "diffuse"), INSTANTS)
def test_a_clear_moment_as_pvlib_gives_it(zenith, outside, level, beam, diffuse):
    found = clear_air(zenith, 3.5, outside)
    assert found == pytest.approx((level, beam, diffuse), rel=2e-5)


@pytest.mark.parametrize(
    ("altitude", "printed"),
    [(90, 1.0), (60, 1.154), (30, 1.994), (20, 2.904), (10, 5.586), (5, 10.31), (1, 26.31)],
)
def test_air_mass_as_tabled(altitude, printed):
    """The table is for the refracted sun; the formula is within 0.5 % of it."""
    assert air_mass(90 - altitude) == pytest.approx(printed, rel=0.005)


@pytest.mark.parametrize(("day", "printed"), [(3, 1.0351), (185, 0.9666), (80, 1.0085)])
def test_the_earth_s_distance(day, printed):
    """Spencer 1971; perihelion 1.0351 and aphelion 0.9666 by (1 ± 0.0167)² of the almanac."""
    assert normal_outside(day, 1.0) == pytest.approx(printed, abs=0.001)


@pytest.mark.parametrize(
    ("clearness", "sunset", "printed"),
    [
        (0.2, 100, 1 + 0.05664 - 0.10223 + 0.00676),
        (0.5, 100, 1 + 0.14160 - 0.63893 + 0.10560),
        (0.2, 70, 1 - 0.05454 + 0.09798 - 0.09561 + 0.01502),
        (0.5, 70, 1 - 0.13635 + 0.61238 - 1.49393 + 0.58674),
        (0.75, 100, 0.175),
        (0.75, 70, 0.143),
    ],
)
def test_erbs_of_a_day_by_hand(clearness, sunset, printed):
    assert diffuse_share(Share(clearness), sunset) == pytest.approx(printed, abs=1.5e-5)


@pytest.mark.parametrize(("sunset", "end"), [(70, 0.715), (100, 0.722)])
def test_erbs_runs_into_its_own_flat_end(sunset, end):
    """A slip in a coefficient would leave a step; the published one is below 0.016."""
    before, after = (diffuse_share(Share(end + more), sunset) for more in (-1e-6, 0.0))
    assert before == pytest.approx(after, abs=0.016)


@pytest.mark.parametrize("latitude", [-40, 0, 25, 50])
@pytest.mark.parametrize("month", [1, 3, 6, 9])
def test_the_day_s_shape_is_near_collares_pereira_and_rabl_s(latitude, month):
    """rt = π/24 (a + b cos ω)(cos ω − cos ωs)/(sin ωs − ωs cos ωs), Solar Energy 22 (1979) 155."""
    day = mean_day(month).of_year
    half = radians(sunset_angle(latitude, declination(day)))
    a, b = 0.409 + 0.5016 * sin(half - pi / 3), 0.6609 - 0.4767 * sin(half - pi / 3)
    profile = day_profile(latitude, day, Share(0.6), 60)
    noon = max(profile) / sum(profile)
    top = pi / 24 * (a + b) * (1 - cos(half)) / (sin(half) - half * cos(half))
    assert noon == pytest.approx(top, rel=0.06)


@pytest.mark.parametrize(
    ("latitude", "longitude", "date", "turbidity"),
    [
        (43.0, 5.0, "2023-07-17", 3.5),
        (-17.5, -149.5, "2024-02-29", 4.1),
        (57.0, 12.0, "2025-03-05", 2.2),
        (0.0, 179.0, "2026-11-11", 3.7),
    ],
)
def test_a_day_of_one_s_own_against_pvlib(latitude, longitude, date, turbidity):
    """The same constant, date, step and local mean day in pvlib."""
    read = read_date(date)
    frame = Frame(longitude, read.year, 1366.1, 15)
    start = pd.Timestamp(date, tz="UTC") - pd.Timedelta(hours=longitude / 15)
    times = pd.date_range(start + pd.Timedelta("7.5min"), periods=96, freq="15min")
    sun = get_solarposition(times, latitude, longitude)["apparent_zenith"]
    mass = get_relative_airmass(sun)
    outside = get_extra_radiation(read.of_year, solar_constant=1366.1)
    sky = ineichen(sun, mass, turbidity, 0, outside)
    found = clear_day(latitude, read.of_year, turbidity, frame)
    assert found == pytest.approx(sky["ghi"].sum() / 4, rel=0.001)
