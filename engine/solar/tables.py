"""Printed, derived and typical figures of the sun and of panels."""

from __future__ import annotations

from typing import Final

from engine.source import Source
from engine.table import Table

MEAN_DAYS: Final = Table(
    title="Day of the month whose sun outside the air is the month's mean",
    key="month",
    value="day",
    source=Source("Klein", "Solar Energy 19 (1977) 325", "as handbooks reprint it"),
    rows={
        1: 17, 2: 16, 3: 16, 4: 15, 5: 15, 6: 11, 7: 17, 8: 16, 9: 15, 10: 15, 11: 14, 12: 10,
    },
)  # fmt: skip

BAND: Final = 10
"""Width of a band of the turbidity table, ° of latitude."""

TURBIDITY: Final = Table(
    title="Linke's turbidity over the sea, mean of all longitudes",
    key="southern edge of a band of 10° of latitude",
    value="January to December",
    source=Source(
        "SoDa, Remund and others", "2003", "as pvlib 0.16 reprints it, averaged here over the sea"
    ),
    rows={
        -70: (2.35, 2.23, 2.11, 2.02, 1.99, 1.97, 1.96, 1.97, 1.97, 2.01, 2.08, 2.16),
        -60: (2.66, 2.51, 2.11, 2.16, 2.07, 2.05, 2.04, 2.04, 2.21, 2.21, 2.47, 2.56),
        -50: (3.03, 2.88, 2.37, 2.54, 2.21, 2.16, 2.13, 2.14, 2.61, 2.6, 2.92, 2.95),
        -40: (3.29, 3.24, 2.85, 2.89, 2.53, 2.46, 2.43, 2.26, 2.89, 2.92, 3.23, 3.21),
        -30: (3.59, 3.59, 3.29, 3.16, 2.78, 2.87, 2.69, 2.56, 3.13, 3.26, 3.5, 3.51),
        -20: (3.83, 3.85, 3.57, 3.36, 3.03, 3.23, 2.97, 2.91, 3.39, 3.66, 3.8, 3.75),
        -10: (3.84, 4.02, 3.98, 3.72, 3.43, 3.62, 3.35, 3.34, 3.75, 3.96, 3.86, 3.87),
        0: (3.54, 3.73, 4.07, 3.99, 3.87, 3.93, 3.85, 3.89, 4.1, 3.93, 3.62, 3.74),
        10: (3.15, 3.3, 3.67, 3.95, 4.01, 3.97, 4.03, 4.22, 4.05, 3.71, 3.33, 3.41),
        20: (2.8, 2.95, 3.29, 3.56, 3.85, 3.87, 3.99, 4.01, 3.75, 3.45, 3.09, 3.04),
        30: (2.47, 2.6, 2.9, 3.19, 3.55, 3.61, 3.8, 3.71, 3.52, 3.13, 2.74, 2.57),
        40: (2.28, 2.35, 2.52, 2.84, 3.21, 3.31, 3.51, 3.37, 3.13, 2.7, 2.38, 2.28),
        50: (2.2, 2.19, 2.31, 2.45, 2.78, 2.96, 3.21, 3.08, 2.76, 2.42, 2.23, 2.15),
        60: (2.07, 2.04, 2.12, 2.18, 2.38, 2.56, 2.73, 2.65, 2.43, 2.24, 2.16, 2.0),
    },
)

LOSSES: Final = Table(
    title="Losses of a system of panels",
    key="loss",
    value="%",
    source=Source("PVWatts version 5 manual", "NREL/TP-6A20-62641, 2014", "default losses"),
    rows={
        "dirt": 2.0, "shading": 3.0, "snow": 0.0, "mismatch": 2.0, "wiring": 2.0,
        "connections": 0.5, "first light": 1.5, "nameplate": 1.0, "age": 0.0, "outages": 3.0,
    },
)  # fmt: skip

BOAT_LOSSES: Final = Table(
    title="Losses of panels aboard, shade apart",
    key="loss",
    value="%",
    source=Source("handbook range", "no document", "salt for soil, no snow, no grid", typical=True),
    rows={
        "dirt and salt": 3.0, "mismatch": 2.0, "wiring": 3.0, "connections": 0.5,
        "first light": 1.5, "nameplate": 1.0,
    },
)  # fmt: skip

SHADE: Final = Table(
    title="Sun left to a panel after rig and motion",
    key="where the panel lies",
    value="low, likely, high share",
    source=Source("handbook range", "no document", "one shaded string is a third", typical=True),
    rows={
        "arch clear of the boom": (0.95, 0.95, 0.95),
        "bimini under boom or backstay": (0.65, 0.80, 0.90),
        "deck among the rigging": (0.50, 0.70, 0.85),
        "heeling on passage": (0.95, 0.95, 0.95),
    },
)

MOUNTS: Final = Table(
    title="How a mounted panel warms",
    key="mount",
    value="a, b in s/m, and cell over back at 1000 W/m², K",
    source=Source("Sandia array performance model", "SAND2004-3535", "as pvlib 0.16 reprints it"),
    rows={
        "open rack": (-3.47, -0.0594, 3.0),
        "close to a roof": (-2.98, -0.0471, 1.0),
        "bonded to the deck": (-2.81, -0.0455, 0.0),
    },
)

SEA_AREAS: Final = Table(
    title="Sea areas and a point in each",
    key="area",
    value="latitude and longitude, °",
    source=Source("chart positions", "rounded", "one point stands for each area"),
    rows={
        "Lesser Antilles": (15.0, -61.0),
        "Virgin Islands": (18.4, -64.6),
        "Bahamas": (24.0, -76.0),
        "Florida Keys": (24.6, -81.5),
        "Belize and Bay of Honduras": (17.0, -87.5),
        "Panama": (9.3, -79.9),
        "Maine": (44.0, -68.5),
        "Bermuda": (32.3, -64.8),
        "Azores": (38.5, -28.6),
        "Madeira and Canaries": (29.0, -15.0),
        "Cape Verde": (16.0, -24.0),
        "Mid-Atlantic trades": (17.0, -42.0),
        "Western Scotland": (56.5, -6.0),
        "English Channel": (50.0, -3.5),
        "Southern Norway": (58.5, 6.0),
        "Baltic Sea": (57.0, 19.0),
        "Biscay and Brittany": (47.0, -4.0),
        "Galicia": (42.5, -9.0),
        "Balearics": (39.5, 3.0),
        "Tyrrhenian Sea": (40.0, 12.0),
        "Adriatic Sea": (43.0, 16.0),
        "Aegean Sea": (37.5, 25.0),
        "South-western Turkey": (36.6, 29.0),
        "Northern Red Sea": (26.0, 35.0),
        "Sea of Cortez": (25.0, -111.0),
        "Southern California": (33.5, -118.5),
        "Pacific Northwest": (48.5, -123.3),
        "Hawaii": (20.0, -157.0),
        "Galápagos": (-1.0, -90.0),
        "Marquesas": (-9.0, -140.0),
        "Society Islands": (-17.5, -150.0),
        "Tonga": (-19.0, -174.0),
        "Fiji": (-17.7, 178.0),
        "Northern New Zealand": (-36.0, 175.0),
        "Queensland": (-19.0, 147.5),
        "Tasmania": (-43.0, 147.5),
        "Indonesia, Bali": (-8.5, 115.5),
        "Western Thailand": (8.0, 98.3),
        "Philippines": (11.0, 123.0),
        "Inland Sea of Japan": (34.0, 133.0),
        "Maldives": (4.0, 73.0),
        "Seychelles": (-4.5, 55.5),
        "Chagos Archipelago": (-6.0, 72.0),
        "Cape Town": (-34.0, 18.0),
        "North-eastern Brazil": (-8.0, -34.5),
        "Rio de Janeiro": (-23.0, -43.0),
        "Western Patagonia": (-50.0, -75.0),
    },
)
