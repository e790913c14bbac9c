"""The made-up boat against the printed figures of its plan.

*Wherrilow*'s plan, section 2: ampere-hours a day of each of the 43 loads at anchor and on passage,
to one decimal; likely, all-low and all-high sums; the middle 80 % of days and its median; the five
largest; what stays live. Section 6: drop of each of the 24 circuits in volts and in percent, and
the one that fails by a hair. Every figure was worked out apart from this program.
"""

import pytest

from engine.check.circuits import answers_of
from engine.check.findings import findings_of
from engine.check.report import report_of
from engine.finding import Verdict
from engine.loads.day_use import always_live, day_use
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of

PLAN = plan_of(made_up_document())

DAYS = [
    ("L01", 1.7, 0.0), ("L02", 0.0, 2.2), ("L03", 0.0, 0.7), ("L04", 0.3, 0.3), ("L05", 0.0, 0.5),
    ("L06", 3.9, 1.1), ("L07", 0.5, 0.2), ("L08", 1.3, 0.9), ("L09", 0.2, 0.8), ("L10", 0.1, 0.1),
    ("L11", 44.2, 44.2), ("L12", 0.5, 0.5), ("L13", 1.4, 0.7), ("L14", 0.3, 0.1),
    ("L15", 0.1, 0.2), ("L16", 0.4, 0.4), ("L17", 2.2, 2.2), ("L18", 1.2, 0.8), ("L19", 1.0, 1.0),
    ("L20", 1.6, 0.8), ("L21", 3.6, 2.9), ("L22", 2.7, 10.8), ("L23", 0.5, 0.8), ("L24", 2.2, 6.7),
    ("L25", 1.2, 22.5), ("L26", 1.8, 14.4), ("L27", 0.0, 6.3), ("L28", 0.0, 2.0),
    ("L29", 0.0, 52.0), ("L30", 0.3, 0.9), ("L31", 0.3, 0.4), ("L32", 5.5, 0.3), ("L33", 4.8, 4.8),
    ("L34", 8.4, 2.1), ("L35", 2.2, 0.9), ("L36", 3.1, 0.0), ("L37", 13.8, 9.2), ("L38", 2.0, 0.3),
    ("L39", 9.6, 4.8), ("L40", 6.9, 0.0), ("L41", 0.8, 0.8), ("L42", 1.4, 1.4), ("L43", 0.5, 0.5),
]  # fmt: skip
DROPS = [
    ("D01", 0.11, 0.9), ("D02", 0.18, 1.5), ("D03", 0.48, 4.0), ("D04", 0.31, 2.6),
    ("D05", 0.23, 1.9), ("D06", 0.15, 1.3), ("D07", 0.26, 2.2), ("D08", 0.29, 2.4),
    ("D09", 0.15, 1.2), ("D10", 0.31, 2.6), ("D11", 0.27, 2.3), ("D12", 0.13, 1.1),
    ("D13", 0.06, 0.5), ("D14", 0.37, 3.0), ("D15", 0.33, 2.7), ("D16", 0.68, 5.7),
    ("D17", 0.49, 4.1), ("D18", 0.48, 4.0), ("D19", 0.09, 0.7), ("D20", 0.30, 2.5),
    ("D21", 0.58, 2.8), ("D22", 0.17, 1.5), ("D23", 0.26, 2.1), ("D24", 0.24, 2.0),
]  # fmt: skip

CONSTANTS = 0.002
"""The plan was printed with 0.0179 Ω·mm²/m; the rule's 10.75 Ω·cmil/ft are 0.01787."""


def test_the_boat_is_whole_and_flagged():
    assert PLAN.made_up
    assert PLAN.problems == ()
    assert [load.ident for load in PLAN.loads] == [row[0] for row in DAYS]
    assert [circuit.ident for circuit in PLAN.circuits] == [row[0] for row in DROPS]


@pytest.mark.parametrize(("ident", "anchor", "passage"), DAYS)
def test_a_load_takes_what_is_printed(ident, anchor, passage):
    for condition, printed in (("anchor", anchor), ("passage", passage)):
        uses = day_use(PLAN.loads, condition, PLAN.supply).uses
        found = next(use.day.likely for use in uses if use.load.ident == ident)
        assert found == pytest.approx(printed, abs=0.0500001)


@pytest.mark.parametrize(
    ("condition", "likely", "low", "high"),
    [("anchor", 132, 84, 219), ("passage", 202, 122, 373)],
)
def test_the_sums_of_a_day(condition, likely, low, high):
    total = day_use(PLAN.loads, condition, PLAN.supply).total
    assert [total.likely, total.low, total.high] == pytest.approx([likely, low, high], abs=0.5)


@pytest.mark.parametrize(
    ("condition", "ends", "median", "off", "middle_off"),
    [("anchor", [129, 164], 146, 2, 1), ("passage", [197, 274], 232, 5, 3)],
)
def test_the_middle_eight_days_in_ten(condition, ends, median, off, middle_off):
    answer = day_use(PLAN.loads, condition, PLAN.supply)
    assert [answer.band.p10, answer.band.p90] == pytest.approx(ends, abs=off)
    assert answer.band.median == pytest.approx(median, abs=middle_off)
    assert answer.band.median > answer.total.likely
    apart = answer.independent
    assert apart.p10 > answer.band.p10
    assert apart.p90 < answer.band.p90


@pytest.mark.parametrize(
    ("condition", "low", "high", "off"), [("anchor", 134, 157, 1), ("passage", 201, 267, 5)]
)
def test_the_band_of_errors_that_do_not_move_together(condition, low, high, off):
    apart = day_use(PLAN.loads, condition, PLAN.supply).independent
    assert [apart.p10, apart.p90] == pytest.approx([low, high], abs=off)


def test_the_five_largest_at_anchor():
    largest = day_use(PLAN.loads, "anchor", PLAN.supply).largest
    assert [(use.load.ident, round(use.day.likely, 1)) for use in largest] == [
        ("L11", 44.2), ("L37", 13.8), ("L39", 9.6), ("L34", 8.4), ("L40", 6.9),
    ]  # fmt: skip


def test_what_no_switch_stops():
    found = always_live(PLAN.loads, PLAN.supply)
    assert [load.ident for load in found.standing] == ["L16", "L17", "L19", "L42", "L43"]
    assert [load.ident for load in found.now_and_then] == ["L15"]
    assert found.current == pytest.approx(0.23, abs=0.0050001)
    assert found.day == pytest.approx(5.4, abs=0.05)
    assert found.week == pytest.approx(38, abs=0.5)


@pytest.mark.parametrize(("ident", "volts", "percent"), DROPS)
def test_a_circuit_drops_what_is_printed(ident, volts, percent):
    answer = next(one for one in answers_of(PLAN) if one.circuit.ident == ident)
    assert answer.wire is not None
    assert answer.wire.drop == pytest.approx(volts, abs=0.005 + CONSTANTS * volts)
    assert answer.wire.share.likely * 100 == pytest.approx(percent, abs=0.0500001)
    doubted = ident == "D14"
    assert answer.verdict == (Verdict.CANNOT_SAY if doubted else Verdict.FINE)
    assert answer.governing == "drop" or not doubted


def test_nothing_but_the_pilot_is_found():
    assert [one.where for one in findings_of(PLAN)] == ["circuits.D14"]


def test_in_10_mm2_the_pilot_passes_cleanly():
    """Printed beside the table: 2.55 % in 10 mm²; and 0.1 m less of run takes 8 AWG under 3 %."""
    rows = [{**row, "size": "10 mm2", "run": "6.1 m (6.1 to 6.1)"} for row in _rows("D14")] + [
        {**row, "id": "D15", "run": "6 m"} for row in _rows("D14")
    ]
    plan = plan_of({"format": 1, "boat": {"tape": "0 m"}, "circuits": rows})
    metric, shorter = answers_of(plan)
    assert metric.wire is not None
    assert shorter.wire is not None
    assert metric.wire.share.likely * 100 == pytest.approx(2.55, abs=0.02)
    assert metric.verdict == Verdict.FINE
    assert shorter.wire.share.likely < 0.03


def _rows(ident):
    """Return a circuit's row, fed from the bank."""
    rows = [row for row in made_up_document()["circuits"] if row["id"] == ident]
    return [{name: text for name, text in row.items() if name != "fed_from"} for row in rows]


def test_the_report_says_the_same():
    found = report_of(PLAN)
    assert found["made_up"] is True
    assert round(found["day_use"]["anchor"]["likely"]) == 132
    assert round(found["day_use"]["passage"]["likely"]) == 202
    assert found["circuits"]["D14"]["verdict"] == "cannot say"
    assert found["circuits"]["D14"]["governing"] == "drop"
    assert found["inverter"]["cut_off"] == "within limit"
    assert [one["where"] for one in found["findings"]] == ["circuits.D14"]
