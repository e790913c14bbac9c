"""What does a wind turbine give in a day?"""

from __future__ import annotations

from typing import Final

from engine.charging.site import site_derates, speed_at_hub
from engine.charging.wind import BETZ, RAYLEIGH, Turbine, mean_power, power_at
from engine.derate import working_of
from engine.field import Field
from engine.finding import Step
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.sums.titles import LATE_TITLES
from engine.units import (
    FRACTION,
    LENGTH,
    POWER,
    SPEED,
    SWEPT,
    VOLTS,
    Metre,
    MetrePerSecond,
    Share,
    SquareMetre,
    Watt,
    said,
)

MEAN: Final = Field(
    "mean_speed", "Mean wind", SPEED, "Of many days, 10 m above open water.", "", 0.0, 50.0
)
AREA: Final = Field(
    "area", "Swept area", SWEPT, "π/4 × diameter²: 1.15 m across sweeps 1.04 m².", "", 0.01, 1000.0
)
COEFFICIENT: Final = Field(
    "power_coefficient", "Power coefficient", FRACTION,
    "Electrical power over the wind's: 20 to 30 % for a small turbine.", "", 0.01, BETZ,
    like="25 %",
)  # fmt: skip
RATED: Final = Field("rated", "Rated power", POWER, "On its sheet.", "400 W", 1.0, 1e6)
CUT_IN: Final = Field("cut_in", "Starts at", SPEED, "", "3 m/s", 0.0, 50.0)
FURL: Final = Field(
    "furl", "Furls at", SPEED, "From here on it gives half its rating.", "18 m/s", 0.0, 100.0
)
CUT_OUT: Final = Field("cut_out", "Stops at", SPEED, "", "25 m/s", 0.0, 100.0)
HEIGHT: Final = Field(
    "height", "Height of the hub", LENGTH, "Above the water; 3 to 4 m on a stern pole.", "10 m",
    0.5, 200.0,
)  # fmt: skip
SHELTER: Final = Field(
    "shelter", "Share of the open wind", FRACTION, "50 to 70 % in an anchorage.", "100 %",
    0.05, 1.0,
)  # fmt: skip
VOLTS_MEAN: Final = Field("volts", "Bank's volts meanwhile", VOLTS, "", "12.5 V", 1.0, 1000.0)
CURTAILED: Final = "What the bank does not take when it is nearly full is lost."


def answer(inputs: Inputs) -> Outcome:
    """Return the mean power and a day's charge, and what the mean wind alone would give.

    Raises
    ------
    Problem
        If cut-in, furling and cut-out do not rise.
    """
    turbine = Turbine(
        SquareMetre(inputs["area"]),
        Share(inputs["power_coefficient"]),
        Watt(inputs["rated"]),
        MetrePerSecond(inputs["cut_in"]),
        MetrePerSecond(inputs["furl"]),
        MetrePerSecond(inputs["cut_out"]),
    )
    open_wind = MetrePerSecond(inputs["mean_speed"])
    height, shelter = Metre(inputs["height"]), Share(inputs["shelter"])
    hub = speed_at_hub(open_wind, height, shelter)
    mean, steady = mean_power(turbine, hub), power_at(turbine, hub)
    charge = mean * 24 / inputs["volts"]
    steps = (
        *working_of(open_wind, "m/s", site_derates(height, shelter)),
        Step("rating reached", "(rated / (½ × air × area × coefficient)) ^ ⅓",
             f"{said(turbine.full_speed)} m/s"),
        Step("mean power", "power at each wind × how often it blows", f"{said(mean, 4)} W",
             RAYLEIGH),
        Step("charge", "mean power × 24 h / volts", f"{said(charge, 4)} Ah"),
        Step("steady wind", "power at the mean wind only, which misleads", f"{said(steady, 4)} W"),
    )  # fmt: skip
    found = (
        f"{said(mean)} W on average, {said(charge)} Ah a day, in winds that average "
        f"{said(hub)} m/s at the hub. A steady wind of that speed would give {said(steady)} W."
    )
    answers = {
        "mean_power": Value(mean, "W", "mean power"),
        "charge": Value(charge, "Ah", "charge in a day"),
        "steady_power": Value(steady, "W", "in a steady wind of the mean"),
    }
    return Outcome(answers, found, steps, None, (CURTAILED,))


WIND_DAY: Final = Sum(
    "wind-day",
    LATE_TITLES["wind-day"],
    "The mean over many days: winds about their mean as Rayleigh's distribution has them.",
    (MEAN, AREA, COEFFICIENT, RATED, CUT_IN, FURL, CUT_OUT, HEIGHT, SHELTER, VOLTS_MEAN),
    answer,
)
