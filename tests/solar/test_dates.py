"""Days as a calendar has them; the counts are those of any almanac."""

from datetime import date, timedelta

import pytest

from engine.problem import Problem
from engine.solar.dates import Date, checked_month, mean_day, month_of, read_date


@pytest.mark.parametrize("year", [1901, 2000, 2023, 2024, 2099])
def test_every_day_of_a_year_as_python_counts_it(year):
    day = date(year, 1, 1)
    while day.year == year:
        of_year = day.timetuple().tm_yday
        assert Date(year, day.month, day.day).of_year == of_year
        assert month_of(of_year, year) == day.month
        day += timedelta(days=1)


def test_klein_s_days_as_he_numbers_them():
    printed = [17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344]
    assert [mean_day(month).of_year for month in range(1, 13)] == printed


@pytest.mark.parametrize("text", ["2023-07-17", " 2023-7-17 "])
def test_a_date_as_typed(text):
    assert read_date(text) == Date(2023, 7, 17)
    assert str(read_date(text)) == "17 July"


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("2023-02-29", "calendar"),
        ("2023-13-01", "calendar"),
        ("2023-00-10", "calendar"),
        ("2023-06-31", "calendar"),
        ("2023-06-00", "calendar"),
        ("17 July", "not a date"),
        ("17.7.2023", "not a date"),
        ("1850-01-01", "outside the years"),
        ("2100-01-01", "outside the years"),
    ],
)
def test_no_such_date(text, word):
    with pytest.raises(Problem, match=word) as caught:
        read_date(text)
    assert caught.value.where == "date"
    assert text in caught.value.what
    assert caught.value.mend


def test_a_leap_day_where_there_is_one():
    assert read_date("2024-02-29").of_year == 60


@pytest.mark.parametrize("month", [0, 13, -1])
def test_no_such_month(month):
    with pytest.raises(Problem, match=f"no month {month}"):
        checked_month(month)
    with pytest.raises(Problem):
        mean_day(month)


@pytest.mark.parametrize("day", [0, 366, -4])
def test_no_such_day(day):
    with pytest.raises(Problem, match=f"no day {day}"):
        month_of(day)
