"""The sea nearest to a place, for a tap on the map that met land."""

from __future__ import annotations

from math import cos, floor, radians

from engine.solar.place import grid, sea_map


def nearest_sea(latitude: float, longitude: float) -> tuple[float, float]:
    """Return the place itself at sea, or the middle of the nearest cell that is sea.

    Parameters
    ----------
    latitude, longitude : float
        North and east positive. [°]

    Returns
    -------
    tuple of float
        Shape ``(2,)``: latitude and longitude. [°]

    Examples
    --------
    >>> nearest_sea(43.0, -47.0), nearest_sea(0.0, 25.0)
    ((43.0, -47.0), (-3.0, 12.0))
    """
    cells, sea = grid(), sea_map()
    south, east = cells.step * cells.rows, cells.step * cells.columns
    top, left = cells.north + cells.step / 2, cells.west - cells.step / 2

    row = min(max(floor((top - latitude) / cells.step), 0), cells.rows - 1)
    column = floor(((longitude - left) % east) / cells.step)
    if sea[row][column] or latitude < top - south:
        return latitude, longitude

    def far(place: tuple[float, float]) -> float:
        across = (place[1] - longitude + 180) % 360 - 180
        return (place[0] - latitude) ** 2 + (across * cos(radians(latitude))) ** 2

    middles = (
        (float(cells.north - cells.step * n), float(cells.west + cells.step * m))
        for n in range(cells.rows)
        for m in range(cells.columns)
        if sea[n][m]
    )
    return min(middles, key=far)
