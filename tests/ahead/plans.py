"""Small plans whose days can be reckoned by hand."""

from typing import Any

from engine.ahead.setup import outlook_of
from engine.loads.day_use import day_use
from engine.plan.read import plan_of


def small(draw: str = "4 A", **parts: Any) -> dict[str, Any]:
    """Return a plan of one load that never rests, a lithium bank, and no source."""
    return {
        "format": 1,
        "boat": {"latitude": "43 N", "longitude": "47 W", "month": "july", "volts": "12 V"},
        "loads": [{"id": "L01", "name": "Lamp", "draw": draw, "hours_anchor": "24 h"}],
        "bank": {"chemistry": "lithium", "capacity": "240 Ah", "charge": "100 %",
                 "reserve": "20 %", "age": "new", "temperature": "25 degC"},
        **parts,
    }  # fmt: skip


def median(document: dict[str, Any]) -> float:
    """Return what the day takes in the middle of all days, Ah."""
    plan = plan_of(document)
    return day_use(plan.loads, "anchor", plan.supply).band.median


def read(document):
    """Return a plan, read."""
    return plan_of(document)


def ahead(plan):
    """Return what lies ahead at anchor."""
    return outlook_of(plan, "anchor")
