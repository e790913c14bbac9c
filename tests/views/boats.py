"""Boats that try a page: whole, empty, unreadable, and with words as long as they may be."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from engine.field import CHOICE, TEXT, YES_NO
from engine.plan.document import new_document
from engine.plan.fields import LETTERS, ROWS, SINGLE
from engine.plan.made_up import made_up_document

ROUTES = (
    "#home", "#home/findings", "#energy/use", "#energy/use/L01", "#energy/use/L39",
    "#energy/use/L99", "#energy/bank", "#energy/charging", "#energy/ahead",
    "#energy/what-if", "#energy/paste", "#wiring/circuits",
    "#wiring/circuits/D01", "#wiring/circuits/D14", "#wiring/circuits/D99", "#wiring/network",
    "#wiring/heavy", "#wiring/inverter", "#wiring/shore", "#wiring/shore/A01",
    "#wiring/shore/A03", "#wiring/shore/A99", "#wiring/shore/licensed",
    "#proving", "#papers", "#papers/receive", "#start/1", "#start/2", "#start/3", "#start/4",
    "#start/5", "#start/6", "#start/7", "#start/answer", "#sum/conductor", "#sum/none",
    "#sum/conductor?current=6+A&run=16+ft", "#sum/conductor?current=600+A&run=900+m",
    "#sum/carrying?size=many",
    "#sum/drop?current=x&run=1&size=10+AWG", "#sum/drop?current=9&run=900+m&size=18+AWG",
    "#sum/carrying?size=10+AWG", "#sum/runtime?watts=9&capacity=9&exponent=1",
    "#sum/discharge?current=9&capacity=999&exponent=1.2", "#sum/inverter-loss?rating=9&load=1",
    "#sum/feeder?ladder=main,+4+AWG,+3+m;+lamp,+14+AWG,+3+m,+20+W", "#sum/feeder?ladder=a,+4",
    "#sum/feeder?ladder=main,+14+AWG,+30+m,+900+W", "#sum/share?resistance=3+mohm",
)  # fmt: skip
"""Every page, and each of the forms it can take."""


def filled(text: str) -> dict[str, Any]:
    """Return a plan with the same text in every field that takes any."""
    document = new_document()
    for part, fields in SINGLE.items():
        document[part] = _row(fields, text)
    for part, fields in ROWS.items():
        letter = LETTERS[part]
        document[part] = [{"id": f"{letter}01", **_row(fields, text)}]
    document["bank"]["chemistry"] = "agm"
    document["loads"].append({"id": "L39", "name": text, "supply": "inverter", "draw": text})
    return document


def _row(fields: dict[str, Any], text: str) -> dict[str, str]:
    return {name: text for name, field in fields.items() if field.kind not in (CHOICE, YES_NO)}


def named(text: str) -> dict[str, Any]:
    """Return the made-up boat with the same text in every field of words."""
    document = deepcopy(made_up_document())
    for part, fields in (SINGLE | ROWS).items():
        words = {name: text for name, field in fields.items() if field.kind is TEXT}
        rows = document.get(part, {}) if part in SINGLE else document.get(part, [])
        for row in [rows] if isinstance(rows, dict) else rows:
            keep = {name for name in ("circuit", "age") if name in row}
            row.update({name: one for name, one in words.items() if name not in keep})
    return document


def broken() -> dict[str, Any]:
    """Return a plan that breaks every rule a page can speak of."""
    return {
        "format": 1,
        "boat": {"name": "Old", "tape": "0 m"},
        "loads": [
            {"id": "L01", "name": "Mystery", "hours_anchor": "3 h"},
            {"id": "L39", "name": "Oven", "supply": "inverter", "draw": "3000 W",
             "surge": "9000 W", "hours_anchor": "0.5 h", "zone": "galley", "circuit": "D01"},
        ],
        "circuits": [
            {"id": "D01", "run": "90 m", "current": "900 A", "size": "4/0 AWG",
             "protection": "1000 A"},
            {"id": "D02", "run": "9 ft", "current": "20 A", "size": "10 AWG", "protection": "9 A"},
            {"id": "D03", "run": "9 ft", "current": "100 A", "size": "16 AWG",
             "protection": "50 A", "engine_space": "yes"},
            {"id": "D14", "run": "3 m", "current": "5 A"},
        ],
        "bank": {"chemistry": "flooded", "capacity": "50 Ah", "charge": "40 %",
                 "resistance": "200 mohm"},
        "inverter": {"rating": "1000 W", "surge": "1500 W", "circuit": "D01"},
        "looks": {"fuse": "no", "inlet": "yes", "posts": "no", "live": "yes"},
    }  # fmt: skip


TIRED: dict[str, Any] = {
    "format": 1,
    "boat": {"tape": "0 m"},
    "loads": [{"id": "L39", "name": "Oven", "supply": "inverter", "draw": "800 W"},
              {"id": "L01", "name": "Bulb", "draw": "40 W", "hours_anchor": "2 h"}],
    "circuits": [{"id": "D01", "run": "5 m", "current": "80 A", "size": "6 AWG"},
                 {"id": "D14", "run": "5 m", "current": "8 A", "size": "0.75 mm2"}],
    "bank": {"chemistry": "flooded", "capacity": "100 Ah", "health": "60 %", "reserve": "10 %"},
    "inverter": {"rating": "1000 W", "circuit": "D01"},
}  # fmt: skip
"""Its cut-off trips in the drop of its feed."""
SPENT = {**TIRED, "bank": {"chemistry": "lithium", "capacity": "400 Ah", "charge": "10 %"}}
"""Nothing is left above its reserve."""
NO_AC_LOAD: dict[str, Any] = {**TIRED, "loads": []}
NO_BANK = {**TIRED, "bank": {}, "circuits": []}

BOATS = {
    "made up": made_up_document(),
    "empty": new_document(),
    "unreadable": filled("3 kg"),
    "unknown": filled("?"),
    "long names": named("W" * 200),
    "broken": broken(),
    "tired": TIRED,
    "spent": SPENT,
    "without a bank": NO_BANK,
    "without an AC load": NO_AC_LOAD,
}
