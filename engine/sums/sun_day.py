"""What does the sun bring on a day?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from engine.field import CHOICE, TEXT, Field, value_of
from engine.finding import Step
from engine.problem import Problem
from engine.solar.clouded import clouded_light, outside_day
from engine.solar.dates import MONTHS, Date, mean_day, read_date
from engine.solar.daylight import OUTSIDE
from engine.solar.month import DOUBT, FAR_DOUBT
from engine.solar.panel import AIR, MODEL, MPPT, WIND, Harvest, Panel, panel_day
from engine.solar.place import CLIMATOLOGY, Climate, climate
from engine.solar.plane import ALBEDO, GLASS, TILTED, Plane, tilted
from engine.solar.sky import (
    AIR_MASS,
    CLEAR_SKY,
    DIFFUSE,
    STEP,
    Frame,
    Light,
    clear_light,
    turbidity_at,
)
from engine.solar.sun import SUN
from engine.solar.tables import LOSSES, TURBIDITY
from engine.sums.sum import Inputs, Outcome, Sum, Value
from engine.sums.titles import LATE_TITLES
from engine.units import ANGLE, IRRADIANCE, LATITUDE, LONGITUDE, NUMBER, POWER, Watt, on_earth, said

if TYPE_CHECKING:
    from engine.source import Source

LATITUDE_FIELD: Final = Field(
    "latitude", "Latitude", LATITUDE, "North positive.", least=-90.0, most=90.0
)
LONGITUDE_FIELD: Final = Field(
    "longitude", "Longitude", LONGITUDE, "East positive; it counts for a cloudy sky.", "0",
    -180.0, 180.0,
)  # fmt: skip
MONTH: Final = Field(
    "month", "Month", CHOICE, "Its mean day; a date counts before it.", "july",
    choices=tuple((name, name.capitalize()) for name in MONTHS), counted=True,
)  # fmt: skip
DATE: Final = Field("date", "Date", TEXT, "Year, month and day, such as 2023-07-17.")
TILT: Final = Field(
    "tilt", "Tilt of the panel", ANGLE, "From level; a boat that swings is taken as level.", "0",
    0.0, 180.0,
)  # fmt: skip
AZIMUTH: Final = Field(
    "azimuth", "It faces", ANGLE, "Clockwise from true north; south is 180.", "180", -360.0, 360.0
)
TURBIDITY_FIELD: Final = Field(
    "turbidity",
    "Turbidity",
    TEXT,
    "Linke's, 1 to 10, of a clear sky; by latitude and month where none is given.",
)
HAZE: Final = Field("turbidity", "Turbidity", NUMBER, least=1.0, most=10.0)
SKY: Final = Field(
    "sky", "Sky", CHOICE, "", "clear",
    choices=(("clear", "clear all day"), ("cloudy", "the month's mean at this place")),
)  # fmt: skip
WATTS: Final = Field(
    "watts", "Panel's watts", POWER, "As labelled, in full sun.", "100 W", above=True,
    least=0.0, most=100000.0,
)  # fmt: skip
CONSTANT_FIELD: Final = Field(
    "constant", "Solar constant", IRRADIANCE, "1361 is today's; older works use 1366.1 or 1367.",
    "1361 W/m2", 1300.0, 1450.0,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Day:
    """The day asked for: where, when, how reckoned, turbidity, and its light."""

    latitude: float
    date: Date
    frame: Frame
    turbidity: float
    climate: Climate | None
    light: Light

    @property
    def outside(self) -> float:
        """Irradiation above the air, Wh/m²."""
        return outside_day(self.latitude, self.date.of_year, self.frame)


def turbidity_of(text: str) -> float | None:
    """Return the turbidity typed; None where none is.

    Raises
    ------
    Problem
        If it is no number of that size.
    """
    try:
        return value_of(HAZE, text).likely
    except Problem as problem:
        raise problem.at("turbidity") from None


def day_of(inputs: Inputs) -> Day:
    """Return the day asked for.

    Raises
    ------
    Problem
        If the date or the turbidity cannot be read.
    """
    typed = inputs.texts["date"]
    date = read_date(typed) if typed else mean_day(MONTHS.index(inputs.texts["month"]) + 1)
    latitude, longitude = inputs["latitude"], inputs["longitude"]
    frame = Frame(longitude, date.year, inputs["constant"])
    stated = turbidity_of(inputs.texts["turbidity"])
    haze = turbidity_at(latitude, date.month) if stated is None else stated
    if inputs.texts["sky"] == "clear":
        light = clear_light(latitude, date.of_year, haze, frame)
        return Day(latitude, date, frame, haze, None, light)
    here = climate(latitude, longitude, date.month)
    light = clouded_light(latitude, date.of_year, here.clearness, frame)
    return Day(latitude, date, frame, haze, here, light)


def answer(inputs: Inputs) -> Outcome:
    """Return a day's sun above the air, on a level plane, on the panel, and what it makes."""
    day = day_of(inputs)
    plane = Plane(inputs["tilt"], inputs["azimuth"])
    panel = Panel(Watt(inputs["watts"]))
    level, fallen = day.light.irradiation, tilted(day.light, plane)
    harvest = panel_day(day.light, plane, panel)
    answers = {
        "irradiation": Value(level, "Wh/m²", "on a level plane"),
        "tilted": Value(fallen, "Wh/m²", "on the panel"),
        "panel": Value(harvest.watt_hours, "Wh", "the panel makes"),
        "extraterrestrial": Value(day.outside, "Wh/m²", "level, above the air"),
    }
    steps = _of_the_day(day, level)
    if level > 0:
        steps += _of_the_panel(plane, panel, fallen, harvest)
    return Outcome(answers, _words(day, level, fallen, harvest), steps, None, _cautions(day))


def _of_the_day(day: Day, level: float) -> tuple[Step, ...]:
    frame = day.frame
    said_of = f"{day.date} {day.date.year}, day {day.date.of_year} of the year"
    steps = [
        Step("day", "the month's mean day after Klein, or the date given", said_of, SUN),
        Step("time step", "midnight to midnight of local mean time", f"{STEP} min"),
        Step("solar constant", "as given", f"{said(frame.constant, 5)} W/m²"),
        Step("above the air", "constant × eccentricity × height of the sun over the day",
             f"{said(day.outside, 5)} Wh/m²", OUTSIDE),
    ]  # fmt: skip
    if day.climate is None:
        steps += [
            Step("turbidity", "Linke's, given or by latitude and month", said(day.turbidity),
                 TURBIDITY.source),
            Step("air", "how much of it the light goes through, by the sun's height at each step",
                 "1 overhead, 38 at the horizon", AIR_MASS),
            Step("level, clear sky", "sum over the day", f"{said(level, 5)} Wh/m²", CLEAR_SKY),
        ]  # fmt: skip
    else:
        steps += [
            Step("clearness", "the month's mean at this place, in proportion between four cells",
                 said(day.climate.clearness), CLIMATOLOGY),
            Step("level, cloudy sky", "clearness × above the air, in the clear day's shape",
                 f"{said(level, 5)} Wh/m²", DIFFUSE),
        ]  # fmt: skip
    return tuple(steps)


def _of_the_panel(plane: Plane, panel: Panel, fallen: float, harvest: Harvest) -> tuple[Step, ...]:
    lies = f"tilt {said(plane.tilt)}°, facing {said(plane.azimuth)}°, albedo {ALBEDO}"
    full = f"{said(panel.watts)} W × {said(fallen, 5)} Wh/m² / 1000 W/m²"
    return (
        Step("on the panel", lies, f"{said(fallen, 5)} Wh/m²", TILTED),
        Step("before any loss", full, f"{said(panel.watts * fallen / 1000, 4)} Wh"),
        *(
            Step(line.name, line.why, f"× {said(line.factor, 4)}", _source_of(line.name))
            for line in harvest.lines
        ),
        Step("the panel makes", f"all lines multiplied; air {said(AIR)} °C, wind {said(WIND)} m/s",
             f"{said(harvest.watt_hours, 4)} Wh", MODEL),
    )  # fmt: skip


def _source_of(name: str) -> Source:
    return {"glass": GLASS, "warm cells": MODEL}.get(name, LOSSES.source)


def _words(day: Day, level: float, fallen: float, harvest: Harvest) -> str:
    if level <= 0:
        return f"There is no sun on {day.date} at {on_earth(day.latitude, LATITUDE)}."
    sky = "clear" if day.climate is None else "as cloudy as the month is on average"
    return (
        f"On {day.date}, {sky}, {said(level)} Wh/m² fall on a level plane and {said(fallen)} on "
        f"the panel. It makes {said(harvest.watt_hours)} Wh before its controller; a tracking "
        f"one passes on {said(MPPT * 100)} %."
    )


def _cautions(day: Day) -> tuple[str, ...]:
    if day.light.irradiation <= 0:
        return ()
    notes = ["Only 3 % is taken off for shade; rig and boom cost 5 to 30 %, and at worst half."]
    if day.climate is not None:
        doubt = FAR_DOUBT if day.climate.beyond else DOUBT
        notes.append(f"A month's mean may be out by {said(doubt * 100)} % either way.")
        if day.climate.beyond:
            notes.append("No cell of the climatology lies so near the pole; the nearest counts.")
    return tuple(notes)


SUN_DAY: Final = Sum(
    "sun-day",
    LATE_TITLES["sun-day"],
    "A day's sun above the air, on a level plane and on a tilted panel, and what the panel makes.",
    (
        LATITUDE_FIELD, LONGITUDE_FIELD, MONTH, DATE, TILT, AZIMUTH, TURBIDITY_FIELD, SKY, WATTS,
        CONSTANT_FIELD,
    ),
    answer,
)  # fmt: skip
