"""Tables: exact look-up, every table on the list."""

import pytest

from engine.problem import Problem
from engine.source import Source
from engine.table import ALL, Table


@pytest.fixture
def table():
    made = Table("Ohms", "size", "Ω/km", Source("a", "b", "c"), {"10": 4.2, "12": 6.7})
    yield made
    ALL.pop()


def test_a_row_is_found_exactly(table):
    assert table["10"] == 4.2
    assert "12" in table
    assert "11" not in table
    assert table in ALL


def test_a_missing_row_names_those_there_are(table):
    with pytest.raises(Problem, match=r"“11” is not in the table “Ohms”\. It has 10, 12\."):
        table["11"]
