"""Places: between cells, over the date line, beyond the cells, on the map, and no place at all."""

import pytest

from engine.problem import Problem
from engine.solar.cloud import Clearness
from engine.solar.month import month_irradiation, month_sun
from engine.solar.place import climate, grid, is_dark, place_on_map, sea_map
from engine.solar.tables import SEA_AREAS
from engine.units import Share


def at(latitude, longitude):
    """Return what the map says of a place."""
    rows = sea_map()
    return rows[round((63 - latitude) / 3)][round((longitude + 180) / 3) % 120]


def test_between_two_cells_lies_their_mean():
    west, east = (climate(-18.0, longitude, 3) for longitude in (177.0, 180.0))
    middle = climate(-18.0, 178.5, 3)
    assert middle.clearness == pytest.approx((west.clearness + east.clearness) / 2, rel=1e-4)
    assert middle.spread == pytest.approx((west.spread + east.spread) / 2, rel=1e-4)


@pytest.mark.parametrize(("one", "other"), [(-170.0, 190.0), (-174.5, 185.5), (-1.0, 359.0)])
def test_once_round_is_the_same_place(one, other):
    here, there = (month_irradiation(10.0, longitude, 6).likely for longitude in (one, other))
    assert here == pytest.approx(there, rel=1e-9)


def test_the_date_line_is_no_edge():
    near = [climate(-18.0, longitude, 7).clearness for longitude in (179.99, -179.99)]
    assert near[0] == pytest.approx(near[1], abs=0.001)


def test_a_missing_cell_is_filled_by_its_neighbours():
    """No source knows the cells at 54° N, 147° and 150° E."""
    cells = grid()
    assert not any(cells.sun[cells.at(37, column, 7)] for column in (109, 110))
    around = climate(54.0, 148.5, 7).clearness
    assert 0.3 < around < 0.5
    assert climate(54.0, 150.0, 7).clearness == pytest.approx(around, abs=0.05)


def test_give_or_take_15_percent_and_beyond_the_cells_30():
    near, far = month_irradiation(60.0, 5.0, 7), month_irradiation(70.0, 20.0, 7)
    assert near.low == pytest.approx(0.85 * near.likely)
    assert near.high == pytest.approx(1.15 * near.likely)
    assert near.known_by == "default"
    assert far.low == pytest.approx(0.70 * far.likely)
    assert not climate(64.4, 5.0, 7).beyond
    assert climate(64.6, 5.0, 7).beyond
    assert "nearest" in month_sun(70.0, 20.0, 7).words


@pytest.mark.parametrize("latitude", [75.0, 90.0, -75.0, -90.0])
def test_polar_night_is_said_and_is_no_error(latitude):
    month = 12 if latitude > 0 else 6
    found = month_sun(latitude, 0.0, month)
    assert is_dark(latitude, month)
    assert found.words == "There is no sun this month."
    assert (found.irradiation.likely, found.clear, found.dull) == (0, 0, 0)
    assert found.clearness is None
    assert month_irradiation(latitude, 0.0, month).likely == 0
    assert month_sun(latitude, 0.0, 18 - month).irradiation.likely > 1


@pytest.mark.parametrize(("latitude", "said"), [(90.5, "90.5°"), (-123.4567, "-123.457°")])
def test_no_latitude_beyond_the_poles(latitude, said):
    with pytest.raises(Problem, match="beyond the pole") as caught:
        month_irradiation(latitude, 0.0, 7)
    assert caught.value.where == "latitude"
    assert said in caught.value.what


@pytest.mark.parametrize("longitude", [-181.0, 361.0, float("nan"), float("inf")])
def test_no_longitude_more_than_once_round(longitude):
    with pytest.raises(Problem, match="once round"):
        climate(0.0, longitude, 7)


@pytest.mark.parametrize("month", [0, 13])
def test_no_such_month(month):
    with pytest.raises(Problem, match="no month"):
        month_sun(0.0, 0.0, month)


def test_the_map_knows_sea_from_land():
    """Mid-Atlantic, Tasman Sea and Caribbean; Sahara, Amazon, Siberia and Australia."""
    rows = sea_map()
    assert (len(rows), {len(row) for row in rows}) == (41, {120})
    assert all(at(*place) for place in ((30, -45), (-36, 159), (15, -75), (0, 60), (36, 3)))
    assert not any(at(*place) for place in ((24, 9), (-6, -60), (60, 100), (-24, 135)))


def test_a_tap_on_the_map():
    """Its corners are 64.5° N 181.5° W and 58.5° S 178.5° E; a tap outside counts as the edge."""
    assert place_on_map(0.0, 0.0) == pytest.approx((64.5, -181.5))
    assert place_on_map(1.0, 1.0) == pytest.approx((-58.5, 178.5))
    assert place_on_map(-3.0, 7.0) == pytest.approx((-58.5, -181.5))


@pytest.mark.parametrize("area", SEA_AREAS.rows)
def test_a_sea_area_is_a_place_with_sun(area):
    latitude, longitude = SEA_AREAS[area]
    for month in (1, 7):
        assert 0.1 < month_irradiation(latitude, longitude, month).likely < 8.5
    assert any(at(latitude + up, longitude + across) for up in (-3, 0, 3) for across in (-3, 0, 3))


def test_the_wind_where_ships_have_told_it():
    """The trades blow near 7 m/s; nobody has sailed the Sahara."""
    assert climate(15.0, -60.0, 7).wind == pytest.approx(7.5, abs=0.06)
    assert climate(24.0, 9.0, 7).wind is None


def test_a_spread_too_wide_or_too_narrow_is_still_a_spread():
    for spread in (0.0, 0.5):
        a, b = Clearness(Share(0.5), spread, Share(0.75)).shape()
        assert a > 0
        assert b > 0
