"""Reading: whatever unit a value is written in, the same value comes back; no entry crashes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.conductors.sizes import KNOWN, read_size
from engine.problem import Problem
from engine.units import (
    AREA,
    CHARGE,
    CURRENT,
    FRACTION,
    LENGTH,
    NUMBER,
    POWER,
    RESISTANCE,
    TEMPERATURE,
    TIME,
    VOLTS,
    in_unit,
    read,
    said,
)

UNITS = {
    CURRENT: ("A", "mA", "amps"),
    POWER: ("W", "kW", "hp"),
    VOLTS: ("V", "mV"),
    LENGTH: ("m", "cm", "mm", "ft", "in", "yd", "nmi"),
    TIME: ("h", "min", "s", "days"),
    TEMPERATURE: ("°C", "degF", "K"),
    CHARGE: ("Ah", "mAh"),
    RESISTANCE: ("ohm", "mΩ"),
    FRACTION: ("%", ""),
    AREA: ("mm2", "mm²"),
}
pairs = st.sampled_from([(kind, unit) for kind, units in UNITS.items() for unit in units])
values = st.floats(0.01, 900.0)
kinds = st.sampled_from([*UNITS, NUMBER])


@given(pairs, values)
def test_a_value_written_in_any_unit_reads_as_itself(pair, value):
    kind, unit = pair
    shown = in_unit(value, kind, unit or kind.unit)
    found = read(f"{shown!r} {unit}".strip(), kind)
    assert found.likely == pytest.approx(value, rel=1e-9, abs=1e-9)


@given(pairs, values, values)
def test_a_range_reads_in_order(pair, one, other):
    kind, unit = pair
    low, high = sorted((round(one, 6), round(other, 6)))
    found = read(f"{low!r} to {high!r} {unit}".strip(), kind)
    assert found.low is not None
    assert found.likely is not None
    assert found.high is not None
    assert found.low <= found.likely <= found.high


@given(st.integers(0, 30), st.integers(0, 11))
def test_feet_and_inches(feet, inches):
    found = read(f"{feet}'{inches}\"", LENGTH)
    assert found.likely == pytest.approx((12 * feet + inches) * 0.0254, rel=1e-9)


entries = st.text(max_size=80) | st.text("0123456789.,-+~±°'\"/½ eEhmftinAVW%toabu", max_size=24)


@given(entries, kinds)
def test_no_entry_crashes_and_every_refusal_has_a_mend(text, kind):
    try:
        found = read(text, kind)
    except Problem as problem:
        refused = problem
    else:
        assert (found.low is None) == (found.likely is None) == (found.high is None)
        return
    assert refused.what
    assert refused.mend


@given(st.floats(1e-3, 1e5), st.integers(3, 6))
def test_what_is_said_is_near_the_value(value, digits):
    assert float(said(value, digits)) == pytest.approx(value, rel=10.0 ** (1 - digits))


@given(st.sampled_from([size for row in KNOWN.values() for size in row.values()]))
def test_a_size_reads_as_it_prints(size):
    assert read_size(str(size)) is size


@given(st.text(max_size=30), st.sampled_from(["", "awg", "sae", "metric"]))
def test_no_size_crashes(text, catalogue):
    try:
        found = read_size(text, catalogue)
    except Problem as problem:
        refused = problem
    else:
        assert found in KNOWN[found.catalogue].values()
        return
    assert refused.mend
