"""Days and months as the sun counts them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from engine.problem import Problem, quoted
from engine.solar.tables import MEAN_DAYS

MONTHS: Final = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september",
    "october", "november", "december",
)  # fmt: skip
LENGTHS: Final = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
YEAR: Final = 2023
"""The year meant where none is stated. The sun's path differs by 0.2° at most from year to year."""
FIRST_YEAR: Final = 1901
LAST_YEAR: Final = 2099
_DATE: Final = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")


@dataclass(frozen=True, slots=True)
class Date:
    """A day: year, month 1 to 12, and day of the month."""

    year: int
    month: int
    day: int

    @property
    def of_year(self) -> int:
        """Day of the year, from 1."""
        return sum(_lengths(self.year)[: self.month - 1]) + self.day

    def __str__(self) -> str:
        return f"{self.day} {MONTHS[self.month - 1].capitalize()}"


def is_leap(year: int) -> bool:
    """Return whether a year has a 29 February.

    Parameters
    ----------
    year : int
        Of our calendar. [1]

    Examples
    --------
    >>> [is_leap(year) for year in (1900, 2000, 2023, 2024)]
    [False, True, False, True]
    """
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def _lengths(year: int) -> tuple[int, ...]:
    return (31, 29, *LENGTHS[2:]) if is_leap(year) else LENGTHS


def checked_month(month: int) -> int:
    """Return a month, if it is one.

    Parameters
    ----------
    month : int
        From 1 to 12. [1]

    Returns
    -------
    int
        The same. [1]

    Raises
    ------
    Problem
        If the year has no such month.
    """
    if month not in range(1, 13):
        raise Problem("month", f"There is no month {month}.", "Enter 1 to 12, such as 7 for July.")
    return month


def mean_day(month: int) -> Date:
    """Return the day whose sun outside the air is the month's mean.

    Parameters
    ----------
    month : int
        From 1 to 12. [1]

    Raises
    ------
    Problem
        If the year has no such month.

    References
    ----------
    .. [1] Klein, Solar Energy 19 (1977) 325, as handbooks reprint it.

    Examples
    --------
    >>> str(mean_day(7)), mean_day(7).of_year
    ('17 July', 198)
    """
    return Date(YEAR, checked_month(month), MEAN_DAYS[month])


def month_of(day_of_year: int, year: int = YEAR) -> int:
    """Return the month a day of the year lies in.

    Parameters
    ----------
    day_of_year : int
        From 1. [1]
    year : int
        Of our calendar. [1]

    Returns
    -------
    int
        From 1 to 12. [1]

    Raises
    ------
    Problem
        If the year has no such day.

    Examples
    --------
    >>> month_of(31), month_of(32), month_of(366, 2024)
    (1, 2, 12)
    """
    left = day_of_year
    for month, length in enumerate(_lengths(year), start=1):
        if 1 <= left <= length:
            return month
        left -= length
    last = sum(_lengths(year))
    raise Problem("day", f"{year} has no day {day_of_year}.", f"Enter 1 to {last}.")


def read_date(text: str) -> Date:
    """Return a date as typed.

    Raises
    ------
    Problem
        If it is no date, or the calendar has no such day.

    Examples
    --------
    >>> read_date("2023-07-17").of_year
    198
    """
    found = _DATE.fullmatch(text.strip())
    mend = "Enter year, month and day, such as 2023-07-17."
    if not found:
        raise Problem("date", f"{quoted(text)} is not a date.", mend)
    year, month, day = (int(part) for part in found.groups())
    if not FIRST_YEAR <= year <= LAST_YEAR:
        years = f"Enter a year from {FIRST_YEAR} to {LAST_YEAR}."
        raise Problem("date", f"{quoted(text)} lies outside the years reckoned here.", years)
    if month not in range(1, 13) or not 1 <= day <= _lengths(year)[month - 1]:
        raise Problem("date", f"The calendar has no {quoted(text)}.", mend)
    return Date(year, month, day)
