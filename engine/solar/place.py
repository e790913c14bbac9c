"""What a place is like by month: the climatology in cells of 3 degrees, and the sea areas."""

from __future__ import annotations

import json
import zlib
from base64 import b64decode
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from math import floor
from typing import Final

from engine.problem import Problem
from engine.solar.clouded import outside_day
from engine.solar.dates import checked_month, mean_day
from engine.solar.sun import checked_latitude
from engine.source import Source
from engine.units import Share, said

CLIMATOLOGY: Final = Source(
    "MERRA-2 of NASA (Gelaro 2017) × 0.93 and Esbensen-Kushnir 1981 of NOAA",
    "months in cells of 3°",
    "averaged where both know a cell; wind of COADS, NOAA",
)
FAINTEST: Final = 1e-6
"""Weight of a corner that has no share in a place: it counts where no other corner is known."""
DARKEST: Final = 50.0
"""Irradiation outside the air below which a month is called dark, Wh/m² a day."""


@dataclass(frozen=True, slots=True)
class Grid:
    """Cells by latitude, longitude and month: middle of the first cell and step in °, and bytes.

    ``sun`` in 0.04 kWh/m² a day, ``spread`` of the daily clearness in 0.002, ``wind`` in 0.1 m/s;
    0 is not known.
    """

    south: float
    west: float
    step: float
    rows: int
    columns: int
    sun: bytes
    spread: bytes
    wind: bytes

    @property
    def north(self) -> float:
        """Middle of the last row, °."""
        return self.south + self.step * (self.rows - 1)

    def corners(self, latitude: float, longitude: float) -> tuple[tuple[int, int, float], ...]:
        """Return the four cells round a place: row, column and weight.

        Parameters
        ----------
        latitude : float
            North positive; beyond the last row that row counts. [°]
        longitude : float
            East positive, any turn. [°]

        Returns
        -------
        tuple of tuple
            Shape ``(4, 3)``. [1]
        """
        up = (min(max(latitude, self.south), self.north) - self.south) / self.step
        across = (longitude - self.west) / self.step
        row, column = min(floor(up), self.rows - 2), floor(across)
        north, east = up - row, across - column
        return tuple(
            (row + i, (column + j) % self.columns, max(down * over, FAINTEST))
            for i, down in ((0, 1 - north), (1, north))
            for j, over in ((0, 1 - east), (1, east))
        )

    def at(self, row: int, column: int, month: int) -> int:
        """Return where the bytes of a cell's month stand.

        Parameters
        ----------
        row : int
            From the south. [1]
        column : int
            From the west. [1]
        month : int
            From 1 to 12. [1]

        Returns
        -------
        int
            Place in the bytes. [1]
        """
        return (row * self.columns + column) * 12 + month - 1


@dataclass(frozen=True, slots=True)
class Climate:
    """One month of a place: mean clearness, its spread from day to day, and wind in m/s.

    ``beyond`` is true where the place lies north or south of every cell, and the nearest speaks
    for it.
    """

    clearness: Share
    spread: float
    wind: float | None
    beyond: bool


@lru_cache(maxsize=1)
def grid() -> Grid:
    """Return the climatology, read on first use."""
    text = files("engine.solar").joinpath("climatology.json").read_text(encoding="utf-8")
    read = json.loads(text)
    sun, spread, wind = (zlib.decompress(b64decode(read[key])) for key in ("ghi", "sdkt", "wind"))
    return Grid(
        read["lat0"], read["lon0"], read["dlat"], read["nlat"], read["nlon"], sun, spread, wind
    )


def is_dark(latitude: float, month: int) -> bool:
    """Return whether a month has no sun to speak of.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    month : int
        From 1 to 12. [1]

    Raises
    ------
    Problem
        If the latitude lies beyond a pole or the year has no such month.

    Examples
    --------
    >>> is_dark(80.0, 12), is_dark(60.0, 12)
    (True, False)
    """
    return outside_day(latitude, mean_day(month).of_year) < DARKEST


@lru_cache(maxsize=1024)
def climate(latitude: float, longitude: float, month: int) -> Climate:
    """Return one month of a place.

    Parameters
    ----------
    latitude : float
        North positive. [°]
    longitude : float
        East positive, −180 to 360. [°]
    month : int
        From 1 to 12. [1]

    Raises
    ------
    Problem
        If no such place or month is.

    Notes
    -----
    In proportion between the middles of four cells. What is carried between them is clearness, so
    that the sun's height follows the place itself.
    """
    checked_latitude(latitude)
    checked_month(month)
    if not -180 <= longitude <= 360:
        what = f"A longitude of {said(longitude, 6)}° is more than once round."
        raise Problem("longitude", what, "Enter -180 to 180, such as 5.5 W.")
    cells = grid()
    day = mean_day(month).of_year
    sun = spread = known = wind = blown = 0.0
    for row, column, weight in cells.corners(latitude, longitude):
        place = cells.at(row, column, month)
        if cells.sun[place]:
            outside = outside_day(cells.south + row * cells.step, day)
            sun += weight * cells.sun[place] * 40 / outside
            spread += weight * cells.spread[place] * 0.002
            known += weight
        if cells.wind[place]:
            wind += weight * cells.wind[place] * 0.1
            blown += weight
    half = cells.step / 2
    beyond = not cells.south - half <= latitude <= cells.north + half
    wind_known = None if blown < 0.25 else wind / blown
    return Climate(Share(sun / known), spread / known, wind_known, beyond)


def sea_map() -> tuple[tuple[bool, ...], ...]:
    """Return which cells are sea, north first, for a small map of the world.

    A cell is sea where ships have told the wind in some month; the far south is seldom visited.

    Returns
    -------
    tuple of tuple of bool
        Shape ``(41, 120)``, from 63° N down and from 180° W on.
    """
    cells = grid()
    return tuple(
        tuple(
            any(cells.wind[cells.at(row, column, 1) : cells.at(row, column, 13)])
            for column in range(cells.columns)
        )
        for row in reversed(range(cells.rows))
    )


def place_on_map(across: float, down: float) -> tuple[float, float]:
    """Return the place of a tap on the map.

    Parameters
    ----------
    across : float
        Share of its width, from the left. [1]
    down : float
        Share of its height, from the top. [1]

    Returns
    -------
    tuple of float
        Shape ``(2,)``: latitude and longitude. [°]

    Examples
    --------
    >>> place_on_map(0.5, 0.5)
    (3.0, -1.5)
    """
    cells = grid()
    half = cells.step / 2
    inside = min(max(down, 0.0), 1.0)
    latitude = cells.north + half - inside * cells.rows * cells.step
    return latitude, cells.west - half + min(max(across, 0.0), 1.0) * cells.columns * cells.step
