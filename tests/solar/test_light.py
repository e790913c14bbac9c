"""Refusals of the sun's chain, and its ends: steps, panels, controllers, poles."""

import pytest

from engine.problem import Problem
from engine.solar.clouded import clouded_light, outside_day
from engine.solar.daylight import day_length, sun_times
from engine.solar.panel import (
    ABOARD,
    Panel,
    cell_temperature,
    panel_day,
    plain,
    shaded,
    tracking,
)
from engine.solar.plane import FLAT, Plane, day_profile, tilted
from engine.solar.sky import Frame, clear_day, clear_light, turbidity_at
from engine.solar.tables import TURBIDITY
from engine.units import Share, Volt, Watt

HUNDRED = Panel(Watt(100.0))


@pytest.mark.parametrize(
    "ask",
    [
        lambda latitude: day_length(latitude, 100),
        lambda latitude: sun_times(latitude, 0.0, 100),
        lambda latitude: clear_day(latitude, 100),
        lambda latitude: outside_day(latitude, 100),
        lambda latitude: day_profile(latitude, 100, Share(0.5)),
    ],
    ids=["day length", "sun times", "clear day", "outside day", "day profile"],
)
@pytest.mark.parametrize("latitude", [90.01, -91.0, float("nan"), float("inf")])
def test_no_latitude_beyond_the_poles(ask, latitude):
    with pytest.raises(Problem, match="beyond the pole"):
        ask(latitude)


@pytest.mark.parametrize("step", [0, -5, 7, 1441])
def test_a_step_must_divide_the_day(step):
    with pytest.raises(Problem, match=f"step of {step} minutes"):
        Frame(step=step)
    with pytest.raises(Problem):
        day_profile(43.0, 100, Share(0.5), step)


def test_no_such_day():
    with pytest.raises(Problem, match="no day 366"):
        clear_day(43.0, 366)


@pytest.mark.parametrize("watts", [0.0, -100.0, float("nan")])
def test_a_panel_without_watts(watts):
    with pytest.raises(Problem, match="makes nothing") as caught:
        Panel(Watt(watts))
    assert caught.value.where == "watts"


def test_unknown_mounts_and_shades_name_the_known_ones():
    with pytest.raises(Problem, match="bonded to the deck"):
        cell_temperature(800.0, Panel(Watt(100.0), mount="glued"))
    with pytest.raises(Problem, match="bimini"):
        shaded("mast")


def test_polar_night_makes_nothing_and_divides_by_nothing():
    light = clouded_light(80.0, 355, Share(0.5))
    assert light.moments == ()
    found = panel_day(light, FLAT, HUNDRED, tracking())
    assert found.watt_hours == 0
    assert all(0 < line.factor <= 1 for line in found.lines)
    assert day_profile(80.0, 355, Share(0.5)) == (0.0,) * 96


def test_the_lines_multiply_to_the_harvest():
    light, plane = clear_light(43.0, 198), Plane(20.0, 180.0)
    found = panel_day(light, plane, HUNDRED, tracking(), (*ABOARD, shaded("heeling on passage")))
    whole = 100 * tilted(light, plane) / 1000
    for line in found.lines:
        assert line.why
        whole *= line.factor
    assert found.watt_hours == pytest.approx(whole, rel=1e-12)
    names = [line.name for line in found.lines]
    assert names[:2] == ["glass", "warm cells"]
    assert names[-2:] == ["shade", "tracking controller"]


def test_a_plain_controller_has_no_line_for_warmth():
    light = clear_light(43.0, 198)
    found = panel_day(light, FLAT, HUNDRED, plain(Volt(18.0)))
    assert "warm cells" not in [line.name for line in found.lines]
    less = panel_day(light, FLAT, HUNDRED, tracking()).watt_hours
    assert 0.8 * less < found.watt_hours < less


@pytest.mark.parametrize("volts", [12.0, 13.2])
def test_a_panel_below_the_bank_s_volts_charges_nothing(volts):
    found = plain(Volt(volts))
    assert found.factor == 0
    assert "cannot charge" in found.why


def test_turbidity_is_the_row_in_the_middle_of_a_band():
    for edge, row in TURBIDITY.rows.items():
        for month in (1, 7):
            assert turbidity_at(edge + 5.0, month) == pytest.approx(row[month - 1], rel=1e-12)
    assert turbidity_at(-90.0, 1) == TURBIDITY[-70][0]
    assert turbidity_at(90.0, 12) == TURBIDITY[60][11]
