"""The trade's 12 V tables of conductor sizes, round-trip feet, as reprinted.

3 % and 10 %: two cable catalogues' reprints of the ABYC tables, which rest on SAE areas. 3 % with
AWG areas: a handbook's table. Cells no consistent reading gives are named below and not asked:
in the first the rows of 25 and 30 ft (the row printed at 30 ft is that of 25 ft: a misprint) and
60 ft at 15 A and 50 ft at 90 A; in the second 15 ft at 20 A and 100 ft at 30 A; in the third
20 ft at 70 A, 60 ft at 15 A and 70 ft at 5 A.
"""

import pytest

from engine.conductors.carrying import Surroundings
from engine.conductors.drop import FOOT, Task
from engine.conductors.sizing import least_size
from engine.units import Amp, Metre, Share, Volt

THREE_PERCENT_SAE = {
    10: "5 18, 30 10, 70 6, 90 4, 100 4",
    15: "10 12, 15 10, 20 10, 25 8, 30 8, 40 6, 50 6, 60 4, 80 4, 90 2",
    20: "15 10, 25 6, 40 6, 50 4, 60 4, 90 2",
    40: "15 6, 30 4, 40 2, 60 1, 70 1/0, 80 1/0, 90 2/0, 100 2/0",
    50: "5 10, 10 6, 15 6, 20 4, 25 4, 30 2, 40 2, 50 1, 80 2/0",
    60: "5 10, 25 2, 40 1, 60 2/0, 80 3/0, 100 4/0",
    70: "5 8, 10 6, 20 2, 40 1/0, 50 2/0, 60 3/0, 70 3/0, 90 4/0",
    80: "5 8, 10 6, 20 2, 25 2, 40 1/0, 70 4/0, 80 4/0",
    100: "60 4/0",
}
THREE_PERCENT_AWG = {10: "20 12, 50 8", 100: "5 8"}
TEN_PERCENT_SAE = {
    10: "5 18, 10 18, 15 18, 50 12, 60 12, 70 10, 90 10, 100 10",
    15: "5 18, 10 18, 25 14, 50 10, 60 10, 100 8",
    20: "5 18, 10 16, 20 14, 25 12, 60 8, 80 8, 90 6, 100 6",
    25: "15 14, 20 12, 50 8, 90 6, 100 6",
    30: "5 18, 25 10, 30 10, 50 8, 60 6, 80 6",
    40: "5 16, 10 14, 40 8, 50 6, 60 6, 80 4, 100 4",
    50: "5 16, 15 10, 20 10, 40 6, 50 6, 70 4, 80 4, 90 2, 100 2",
    60: "5 14, 15 10, 20 8, 25 8, 30 6, 40 6, 50 4, 60 4, 90 2",
    70: "5 14, 15 8, 60 2, 80 2, 90 2, 100 1",
    80: "15 8, 25 6, 30 6, 40 4, 60 2",
    100: "5 12, 20 6, 25 6, 40 4, 50 2, 80 1",
}
TEN_PERCENT_AWG = {40: "70 6", 100: "70 2"}
HANDBOOK_BOTH = {
    15: "5 16, 25 8, 50 6, 70 4",
    20: "15 10, 20 8",
    25: "10 10, 15 8, 50 4",
    30: "5 12, 10 10, 20 6, 25 6, 30 4, 40 4, 60 2",
    40: "10 8, 15 6, 25 4, 60 1",
    50: "5 10, 30 2, 40 2, 50 1",
    60: "5 10, 25 2, 50 1/0",
    70: "10 6, 15 4, 25 2",
    80: "5 8, 20 2, 50 2/0, 60 3/0",
    90: "40 2/0, 50 3/0",
}
HANDBOOK_AWG = {
    20: "10 12, 25 8",
    30: "70 2",
    40: "5 12",
    50: "70 1/0",
    90: "15 4, 60 3/0",
}
HANDBOOK_SAE = {70: "40 1/0, 50 2/0", 90: "30 1/0"}


def cells(table: dict[int, str]) -> list[tuple[int, float, str]]:
    """Round-trip feet, amperes and printed size of each cell."""
    return [
        (feet, float(amps), size)
        for feet, row in table.items()
        for amps, size in (cell.split() for cell in row.split(", "))
    ]


def size_by_rule(catalogue: str, feet: float, amps: float, allowed: float) -> str:
    task = Task(Volt(12.0), Amp(amps), Metre(feet / 2 * FOOT), Share(allowed))
    found = least_size(catalogue, task, Surroundings()).for_drop
    assert found is not None
    return found.name


@pytest.mark.parametrize(("feet", "amps", "printed"), cells(THREE_PERCENT_SAE))
def test_3_percent_by_sae_areas(feet, amps, printed):
    assert size_by_rule("sae", feet, amps, 0.03) == printed


@pytest.mark.parametrize(("feet", "amps", "printed"), cells(THREE_PERCENT_AWG))
def test_3_percent_cells_that_fit_awg_areas_only(feet, amps, printed):
    assert size_by_rule("awg", feet, amps, 0.03) == printed
    assert size_by_rule("sae", feet, amps, 0.03) != printed


@pytest.mark.parametrize(("feet", "amps", "printed"), cells(TEN_PERCENT_SAE))
def test_10_percent_by_sae_areas(feet, amps, printed):
    assert size_by_rule("sae", feet, amps, 0.10) == printed


@pytest.mark.parametrize(("feet", "amps", "printed"), cells(TEN_PERCENT_AWG))
def test_10_percent_cells_that_fit_awg_areas_only(feet, amps, printed):
    assert size_by_rule("awg", feet, amps, 0.10) == printed
    assert size_by_rule("sae", feet, amps, 0.10) != printed


@pytest.mark.parametrize(("feet", "amps", "printed"), cells(HANDBOOK_BOTH))
def test_handbook_cells_that_fit_either_catalogue(feet, amps, printed):
    assert size_by_rule("awg", feet, amps, 0.03) == printed
    assert size_by_rule("sae", feet, amps, 0.03) == printed


@pytest.mark.parametrize(
    ("catalogue", "other", "feet", "amps", "printed"),
    [("awg", "sae", *cell) for cell in cells(HANDBOOK_AWG)]
    + [("sae", "awg", *cell) for cell in cells(HANDBOOK_SAE)],
)
def test_handbook_cells_that_fit_one_catalogue(catalogue, other, feet, amps, printed):
    assert size_by_rule(catalogue, feet, amps, 0.03) == printed
    assert size_by_rule(other, feet, amps, 0.03) != printed
