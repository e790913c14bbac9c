"""46 CFR 183.340(p): the table of conductor sizes for 12 V at 10 % drop, read as public law.

The length is one way, the areas are AWG, and no size is thinner than 14 AWG (183.340(c)). The
table bears out K = 10.75 with the loop there and back: read as round-trip lengths most cells fail.
"""

import pytest

from engine.conductors.carrying import Surroundings
from engine.conductors.drop import FOOT, K, Task, circular_mils_needed
from engine.conductors.sizes import KNOWN
from engine.conductors.sizing import least_size
from engine.units import Amp, Metre, Share, Volt

CELLS = {
    5: "10 14, 20 14, 30 14, 35 14, 45 14, 55 12, 60 12",
    10: "20 14, 25 12, 30 12, 40 10, 60 8",
    15: "10 14, 15 14, 20 12, 35 10, 40 8, 55 8, 60 8",
    20: "20 10, 25 10, 30 8, 55 6, 60 6",
    25: "20 10, 25 8, 40 6, 50 6, 60 4",
}
"""By amperes: feet one way and the printed size."""
PRINTED = [
    (amps, float(feet), size)
    for amps, row in CELLS.items()
    for feet, size in (cell.split() for cell in row.split(", "))
]


def size_by_rule(amps: float, feet: float) -> str:
    task = Task(Volt(12.0), Amp(amps), Metre(feet * FOOT), Share(0.10))
    found = least_size("awg", task, Surroundings()).for_drop
    assert found is not None
    return max(found, KNOWN["awg"]["14"], key=lambda size: size.area).name


@pytest.mark.parametrize(("amps", "feet", "printed"), PRINTED)
def test_a_cell_is_reproduced(amps, feet, printed):
    assert size_by_rule(amps, feet) == printed


def test_the_worked_pairs_at_the_edge_of_a_size():
    """9854 cmil fits 10 AWG (10 383), 10 750 cmil does not: W19 and W20."""
    assert size_by_rule(15, 40) == "8"
    assert size_by_rule(10, 55) == "10"
    assert size_by_rule(10, 60) == "8"


@pytest.mark.parametrize(
    ("amps", "feet", "printed", "by_drop"), [(25, 10, 10, 12), (20, 10, 12, 14)]
)
def test_two_cells_are_thicker_than_the_drop_asks(amps, feet, printed, by_drop):
    """They fit a carrying floor (14 AWG to 15 A, 12 AWG to 20 A), which is no matter of drop."""
    assert size_by_rule(amps, feet) == str(by_drop)
    assert by_drop == printed + 2


def test_lengths_read_as_round_trip_would_break_most_cells():
    wrong = [size_by_rule(amps, feet / 2) != printed for amps, feet, printed in PRINTED]
    assert sum(wrong) > len(wrong) / 2


def test_the_metric_constant_of_the_text_is_a_slip():
    """It prints 3.28, which is 10.75 × 0.3048; per metre the constant is 10.75 / 0.3048."""
    assert pytest.approx(3.28, abs=0.005) == K * FOOT
    assert pytest.approx(35.27, abs=0.005) == K / FOOT
    task = Task(Volt(12.0), Amp(15.0), Metre(12.192), Share(0.10))
    by_metres = 35.27 * 15 * 2 * 12.192 / 1.2
    assert circular_mils_needed(task) == pytest.approx(by_metres, rel=1e-4)
