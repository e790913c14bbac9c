"""The quick sums that come late, by name: what a list says of them before they are here."""

from __future__ import annotations

from typing import Final

LATE_TITLES: Final = {
    "bank": "How large must the bank be?",
    "days-alone": "How many days without charging?",
    "charge-time": "How long does charging take?",
    "two-well": "What is left at hand after a while?",
    "sun-day": "What does the sun bring on a day?",
    "wind-day": "What does a wind turbine give in a day?",
}
