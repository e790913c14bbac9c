"""Every field of a variant: the plan with some of it changed, kept to compare."""

from __future__ import annotations

from typing import Final

from engine.field import TEXT, YES_NO, Field, by_name

VARIANT: Final = by_name(
    Field("name", "Variant", TEXT),
    Field("changes", "What it changes", TEXT,
          "A line each, such as bank.capacity = 380 Ah; sources.new.kind = wind adds a row."),
    Field("shown", "Shown beside the plan", YES_NO, default="yes"),
)  # fmt: skip
