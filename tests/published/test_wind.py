"""The mean power of a wind turbine against rows integrated elsewhere and against SciPy.

Turbine of the rows: 1.04 m², coefficient 0.30, cut-in 3, 400 W, furling at 18, stop at 25 m/s.
"""

from itertools import pairwise
from math import exp, pi

import pytest
from scipy.integrate import quad

from engine.charging.site import apparent_speed, speed_at_hub
from engine.charging.wind import Turbine, density, mean_power, power_at
from engine.units import Metre, MetrePerSecond, Share, SquareMetre, Watt

TURBINE = Turbine(SquareMetre(1.04), Share(0.30), Watt(400.0))
ROWS = [
    (3, 31.584, 8.916, 5.16),
    (4, 74.866, 22.665, 12.23),
    (5, 146.224, 44.392, 23.89),
    (6, 252.674, 72.984, 41.28),
    (7, 401.238, 104.434, 65.55),
    (8, 598.932, 134.276, 97.84),
    (9, 852.776, 159.492, 139.31),
    (10, 1169.789, 178.78, 191.1),
    (12, 2021.395, 199.903, 330.22),
]
"""Mean wind (m/s), the wind's mean power (W/m²), the turbine's mean power and in a steady wind."""


@pytest.mark.parametrize("row", ROWS)
def test_mean_power_as_integrated_elsewhere(row):
    speed, wind, mean, steady = row
    at = MetrePerSecond(speed)
    assert density(at) == pytest.approx(wind, abs=0.001)
    assert mean_power(TURBINE, at) == pytest.approx(mean, abs=0.001)
    assert power_at(TURBINE, at) == pytest.approx(steady, abs=0.006)


@pytest.mark.parametrize(
    "turbine",
    [
        TURBINE,
        Turbine(SquareMetre(0.5), Share(0.25), Watt(160.0), *map(MetrePerSecond, (3.5, 14, 20))),
        Turbine(SquareMetre(0.3), Share(0.2), Watt(900.0), *map(MetrePerSecond, (2, 12, 30))),
        Turbine(SquareMetre(9.0), Share(0.4), Watt(50.0), *map(MetrePerSecond, (4, 15, 15))),
    ],
)
@pytest.mark.parametrize("mean", [1.5, 5.5, 11.0])
def test_the_closed_form_is_the_integral(turbine, mean):
    def weighed(speed):
        often = pi * speed / (2 * mean**2) * exp(-pi / 4 * (speed / mean) ** 2)
        return power_at(turbine, MetrePerSecond(speed)) * often

    half = (turbine.rated / 2 / turbine.per_cube) ** (1 / 3)
    edges = sorted({
        turbine.cut_in,
        *(min(max(v, turbine.cut_in), turbine.cut_out)
          for v in (turbine.full_speed, half, turbine.furl)),
        turbine.cut_out,
    })  # fmt: skip
    summed = sum(
        quad(weighed, low, high, epsabs=1e-12, epsrel=1e-11)[0] for low, high in pairwise(edges)
    )
    assert mean_power(turbine, MetrePerSecond(mean)) == pytest.approx(summed, rel=1e-9, abs=1e-12)


def test_the_textbook_s_taller_mast():
    """Masters: 6 m/s at 10 m is 7.55 m/s at 50 m by the one-seventh law, and 504 W/m²."""
    found = speed_at_hub(MetrePerSecond(6.0), Metre(50.0))
    assert found == pytest.approx(7.55, abs=0.005)
    assert density(found) == pytest.approx(504, abs=1)


def test_a_hub_on_a_stern_pole_in_an_anchorage():
    """3.5 m: (0.35)^(1/7) = 0.861, × 0.6 sheltered."""
    found = speed_at_hub(MetrePerSecond(10.0), Metre(3.5), Share(0.6))
    assert found == pytest.approx(5.164, abs=0.001)


@pytest.mark.parametrize(("angle", "felt"), [(0, 11.0), (90, 8.544), (120, 7.0), (180, 5.0)])
def test_the_wind_a_boat_feels(angle, felt):
    """8 m/s true and 3 of the boat: the law of cosines; at 120° 64 + 9 − 24 = 7²."""
    found = apparent_speed(MetrePerSecond(8.0), MetrePerSecond(3.0), angle)
    assert found == pytest.approx(felt, abs=0.0005)
