"""Tilted planes, glass, warmth and losses against pvlib 0.16.1 and the PVWatts manual.

CLEAR and HALF: pvlib at one-minute midpoints of 2023 at longitude −40, mean day of the month,
constant 1366.1, albedo 0.06, Hay-Davies; 100 W by physical glass on the beam, Sandia's close mount
at 25 °C and 4 m/s, −0.004/K and the default losses. HALF is half of the clear sun, split hour by
hour after Erbs as pvlib does. Losses: NREL/TP-6A20-62641, default 14.08 %. Mounts: King and
others, SAND2004-3535, table 1.
"""

from dataclasses import replace
from math import cos, prod, radians

import pytest
from pvlib.irradiance import erbs, haydavies
from pvlib.pvsystem import pvwatts_losses
from pvlib.temperature import TEMPERATURE_MODEL_PARAMETERS, sapm_cell

from engine.solar.dates import mean_day
from engine.solar.panel import ABOARD, PVWATTS, Panel, cell_temperature, panel_day, plain
from engine.solar.plane import Plane, fallen, through_glass, tilted
from engine.solar.sky import Frame, Light, Moment, clear_light
from engine.solar.tables import LOSSES, MOUNTS
from engine.units import Hour, Volt, Watt

CLEAR = [
    (20, 7, 30, 90, 3.7, 6870.4, 504.37), (60, 10, 10, 90, 2.1, 2083.1, 143.98),
    (10, 6, 0, 180, 3.8, 7165.2, 527.01), (40, 4, 0, 180, 2.95, 6939.1, 510.35),
    (50, 11, 15, 180, 2.2, 3228.2, 240.99), (0, 11, 15, 180, 3.55, 7678.4, 558.68),
    (0, 3, 10, 90, 4.1, 7180.0, 524.31), (50, 10, 30, 90, 2.4, 3200.8, 237.98),
    (20, 10, 30, 270, 3.35, 5661.2, 417.56), (60, 8, 45, 180, 2.45, 7707.1, 559.3),
    (40, 10, 90, 180, 2.85, 5371.8, 402.42), (10, 8, 90, 180, 4.0, 516.7, 44.03),
    (60, 7, 30, 180, 2.75, 8263.8, 601.56), (30, 5, 30, 270, 3.5, 7091.5, 519.43),
    (0, 5, 30, 180, 3.6, 4480.2, 331.02), (50, 4, 45, 180, 2.55, 7630.3, 552.0),
]  # fmt: skip
HALF = [
    (60, 6, 30, 180, 2.65, 3920.8, 318.4), (10, 8, 90, 180, 4.0, 1669.4, 139.11),
    (20, 4, 30, 180, 3.45, 3527.8, 283.22), (30, 12, 15, 180, 2.8, 1926.6, 158.05),
    (30, 2, 30, 90, 2.6, 2437.0, 198.31), (20, 10, 0, 180, 3.35, 3134.3, 252.43),
    (60, 3, 90, 180, 2.0, 1189.6, 99.39), (50, 7, 30, 270, 3.35, 3597.0, 291.8),
    (50, 4, 10, 90, 2.55, 3148.9, 255.4), (20, 5, 45, 180, 3.65, 3221.8, 260.14),
]  # fmt: skip
"""Latitude, month, tilt, azimuth, turbidity, Wh/m² on the plane, Wh of 100 W."""


def clear(latitude, month, turbidity):
    frame = Frame(-40.0, 2023, 1366.1)
    return clear_light(float(latitude), mean_day(month).of_year, turbidity, frame)


@pytest.mark.parametrize("row", CLEAR)
def test_a_clear_day_on_a_plane_and_what_100_watts_make(row):
    latitude, month, tilt, azimuth, turbidity, on_plane, made = row
    light, plane = clear(latitude, month, turbidity), Plane(tilt, azimuth)
    assert tilted(light, plane) == pytest.approx(on_plane, rel=0.001)
    found = panel_day(light, plane, Panel(Watt(100.0))).watt_hours
    assert found == pytest.approx(made, rel=0.001)


@pytest.mark.parametrize("row", HALF)
def test_half_a_clear_day_split_by_hourly_erbs(row):
    latitude, month, tilt, azimuth, turbidity, on_plane, made = row
    whole = clear(latitude, month, turbidity)
    moments = []
    for one in whole.moments:
        split = erbs(one.level / 2, one.zenith, mean_day(month).of_year)
        beam, diffuse = float(split["dni"]), float(split["dhi"])
        moments.append(replace(one, level=one.level / 2, beam=beam, diffuse=diffuse))
    light, plane = Light(tuple(moments), whole.hours), Plane(tilt, azimuth)
    assert tilted(light, plane) == pytest.approx(on_plane, rel=0.0015)
    found = panel_day(light, plane, Panel(Watt(100.0))).watt_hours
    assert found == pytest.approx(made, rel=0.0015)


def test_sky_light_of_one_moment_as_pvlib_gives_it():
    """haydavies(30, 180, 150, 600, 1367, 40, 170) = 162.7441."""
    moment = Moment(Hour(11.0), 40.0, 170.0, 0.0, 600.0, 150.0, 1367.0)
    on = fallen(moment, Plane(30.0, 180.0))
    assert on.scattered == pytest.approx(162.7441, abs=0.0001)
    assert on.scattered == pytest.approx(haydavies(30, 180, 150, 600, 1367, 40, 170), rel=1e-9)


@pytest.mark.parametrize(("angle", "printed"), [(0, 1.0), (60, 0.94600), (75, 0.77406)])
def test_glass_as_pvlib_gives_it(angle, printed):
    assert through_glass(cos(radians(angle))) == pytest.approx(printed, abs=0.00001)


@pytest.mark.parametrize(
    ("mount", "named"),
    [
        ("open rack", "open_rack_glass_glass"),
        ("close to a roof", "close_mount_glass_glass"),
        ("bonded to the deck", "insulated_back_glass_polymer"),
    ],
)
def test_warm_cells_as_sandia_gives_them(mount, named):
    printed = TEMPERATURE_MODEL_PARAMETERS["sapm"][named]
    assert MOUNTS[mount] == (printed["a"], printed["b"], printed["deltaT"])
    found = cell_temperature(900.0, Panel(Watt(100.0), mount=mount))
    assert found == pytest.approx(sapm_cell(900, 25, 4, **printed), rel=1e-9)


def test_the_manual_s_losses():
    """14.0757 %, which the manual rounds to 14.08."""
    assert 100 * (1 - prod(one.factor for one in PVWATTS)) == pytest.approx(14.0757, abs=0.0001)
    assert 100 * (1 - prod(one.factor for one in PVWATTS)) == pytest.approx(pvwatts_losses())
    assert sum(LOSSES.rows.values()) == 15.0


def test_losses_aboard():
    """0.97 × 0.98 × 0.97 × 0.995 × 0.985 × 0.99 by hand: 10.5 % lost."""
    assert prod(one.factor for one in ABOARD) == pytest.approx(0.8947, abs=0.0005)


@pytest.mark.parametrize(
    ("hot_volts", "warm_factor", "share"), [(16.6, 0.92, 0.84), (28.6, 0.92, 0.49)]
)
def test_a_plain_controller_against_a_tracking_one(hot_volts, warm_factor, share):
    """36 and 60 cells at 45 °C, 13.2 V: 0.84 and 0.49 of what tracking makes of the hot panel."""
    found = plain(Volt(hot_volts / warm_factor)).factor
    assert found == pytest.approx(share * warm_factor, abs=0.01)
