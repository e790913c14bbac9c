"""What must always hold of the sun: halves that mirror, sums that agree, and nothing beyond."""

from math import isfinite

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.generator import mixed, share_of, stepped
from engine.solar.cloud import Clearness, at_score, spell
from engine.solar.clouded import clouded_light, outside_day
from engine.solar.daylight import day_length, sunset_angle
from engine.solar.month import month_irradiation, month_sun
from engine.solar.panel import Panel, panel_day
from engine.solar.plane import FLAT, Plane, day_profile, through_glass, tilted
from engine.solar.sky import air_mass, clear_air, clear_day, clear_light
from engine.solar.sun import declination
from engine.units import Share, Watt

latitudes = st.integers(-900, 900).map(lambda tenths: tenths / 10)
longitudes = st.integers(-180, 180).map(float)
days = st.integers(1, 365)
months = st.integers(1, 12)
clearnesses = st.integers(5, 80).map(lambda percent: Share(percent / 100))
tilts = st.integers(0, 90).map(float)
azimuths = st.integers(0, 359).map(float)
few = settings(max_examples=20)


@given(latitudes, days)
def test_day_and_night_change_places_across_the_equator(latitude, day):
    """Without refraction the day here is the night on the other side."""
    both = sum(day_length(side, day, altitude=0.0) for side in (latitude, -latitude))
    assert both == pytest.approx(24, abs=1e-9)


@given(latitudes, days)
def test_refraction_never_shortens_the_day(latitude, day):
    assert 0 <= day_length(latitude, day, altitude=0.0) <= day_length(latitude, day) <= 24


@given(latitudes)
def test_the_sun_is_half_a_circle_away_at_most(latitude):
    for day in (80, 172, 266, 355):
        assert 0 <= sunset_angle(latitude, declination(day)) <= 180


@few
@given(latitudes, days, st.integers(10, 60), st.integers(10, 60))
def test_more_haze_never_means_more_sun(latitude, day, one, other):
    thin, thick = sorted((one / 10, other / 10))
    assert clear_day(latitude, day, thin) >= clear_day(latitude, day, thick)


@few
@given(latitudes, days)
def test_the_air_never_adds_sun(latitude, day):
    """Refraction lets a sun below the horizon in: some Wh near polar night."""
    assert 0 <= clear_day(latitude, day) <= 0.85 * outside_day(latitude, day) + 10


@given(st.floats(0.0, 89.99), st.floats(1.0, 10.0))
def test_light_from_everywhere_is_all_light(zenith, turbidity):
    level, beam, diffuse = clear_air(zenith, turbidity, 1361.0)
    assert 0 <= diffuse <= level <= 1361
    assert 0 <= beam <= 1361
    assert air_mass(zenith) > 0.999


@few
@given(latitudes, days, clearnesses)
def test_a_day_of_some_clearness_has_so_much_sun(latitude, day, clearness):
    light = clouded_light(latitude, day, clearness)
    outside = outside_day(latitude, day)
    if light.moments and outside > 50:
        assert light.irradiation == pytest.approx(clearness * outside, rel=1e-9)


@few
@given(latitudes, days, clearnesses, st.sampled_from([5, 6, 10, 15, 30, 60]), tilts)
def test_a_profile_sums_to_the_day_on_its_plane(latitude, day, clearness, step, tilt):
    plane = Plane(tilt, 180.0)
    profile = day_profile(latitude, day, clearness, step, plane)
    assert len(profile) == 1440 // step
    assert min(profile) >= 0
    total = sum(profile) * step / 60
    whole = tilted(clouded_light(latitude, day, clearness), plane)
    assert total == pytest.approx(whole, rel=1e-9 if step % 5 == 0 else 0.01, abs=0.5)


@few
@given(latitudes, days, azimuths)
def test_a_level_panel_faces_nowhere(latitude, day, azimuth):
    light = clear_light(latitude, day)
    assert tilted(light, Plane(0.0, azimuth)) == pytest.approx(tilted(light, FLAT), rel=1e-9)
    assert tilted(light, FLAT) == pytest.approx(light.irradiation, rel=0.01, abs=1.0)


@few
@given(latitudes, days, tilts, azimuths, st.integers(1, 5000))
def test_a_panel_twice_the_size_makes_twice_as_much(latitude, day, tilt, azimuth, watts):
    light, plane = clear_light(latitude, day), Plane(tilt, azimuth)
    one, two = (panel_day(light, plane, Panel(Watt(n * watts))).watt_hours for n in (1.0, 2.0))
    assert two == pytest.approx(2 * one, rel=1e-9)
    assert one <= watts * tilted(light, plane) / 1000


@given(st.integers(0, 1000), st.integers(0, 1000))
def test_slanting_light_never_passes_better(one, other):
    low, high = sorted((one / 1000, other / 1000))
    assert 0 <= through_glass(low) <= through_glass(high) + 1e-9 <= 1 + 1e-8


@few
@given(latitudes, longitudes, months)
def test_every_place_and_month_has_an_answer_in_order(latitude, longitude, month):
    found = month_sun(latitude, longitude, month)
    assert found.words
    assert 0 <= found.dull <= found.clear
    assert found.irradiation.low <= found.irradiation.likely <= found.irradiation.high
    assert found.irradiation.likely <= found.clear + 1e-9
    assert isfinite(month_irradiation(latitude, longitude, month).high)


@few
@given(clearnesses, st.integers(0, 40), st.integers(50, 85), st.integers(0, 10**9))
def test_no_spell_leaves_the_ends(mean, spread, clearest, seed):
    month = Clearness(mean, spread / 100, Share(clearest / 100))
    for clearness in spell(month, 20, seed):
        assert 0.03 <= clearness <= clearest / 100 + 1e-9


@few
@given(clearnesses, st.integers(2, 20), st.floats(-5, 5), st.floats(-5, 5))
def test_a_higher_score_is_never_a_duller_day(mean, spread, one, other):
    month = Clearness(mean, spread / 100, Share(0.85))
    low, high = sorted((one, other))
    assert at_score(month, low) <= at_score(month, high)


@given(st.integers(0, 2**64 - 1), st.text(max_size=9))
def test_a_share_lies_between_nothing_and_all(seed, text):
    assert 0 < share_of(stepped(mixed(seed, text))) < 1
