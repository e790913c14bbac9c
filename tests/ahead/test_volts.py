"""The same boat at 12, 24 and 48 V.

Copper: NBS Handbook 100 (1966), Copper Wire Tables, pounds per 1000 ft of bare annealed wire.
Drop: 46 CFR 183.340(p), and Ohm's law, by which the share lost is a quarter at twice the volts.
"""

import pytest

from engine.ahead.volts import MOST_ABREAST, SYSTEMS, copper, fitted_at, volts_of
from engine.conductors.sizes import read_size
from engine.plan.edit import with_value
from engine.plan.made_up import made_up_document
from engine.units import Metre, Volt
from tests.ahead.plans import read

BOAT = read(made_up_document())
FOUND = volts_of(BOAT, "anchor")


def fit(circuit):
    return fitted_at(circuit, Volt(12.0), Volt(12.0), "awg")


def row(ident):
    return next(one for one in FOUND.rows if one.circuit.ident == ident)


@pytest.mark.parametrize(
    ("gauge", "pounds"), [("4/0", 640.5), ("2", 200.9), ("10", 31.43), ("18", 4.917)]
)
def test_copper_weighs_what_the_wire_tables_print(gauge, pounds):
    """Two conductors of 500 ft are 1000 ft of wire."""
    found = copper(read_size(f"{gauge} AWG"), Metre(500 * 0.3048)) / 0.45359237
    assert found == pytest.approx(pounds, rel=1e-3)


def test_twice_the_volts_halve_the_current_and_quarter_the_share_lost():
    for one in FOUND.rows:
        first, second, third = one.fitted
        assert second.current == pytest.approx(first.current / 2)
        assert third.current == pytest.approx(first.current / 4)
        assert second.share == pytest.approx((first.share or 0) / 4)
        assert third.share == pytest.approx((first.share or 0) / 16)


def test_the_fridge_by_hand():
    """By hand: 6 A over 5.6 m within 3 %.

    12 V: 10.75 × 6 × 36.75 ft / 0.36 V = 6584 cmil: 10 AWG has 10 380, 12 AWG 6530.
    24 V: half the amperes, twice the volts: 1646 cmil: 16 AWG has 2580, 18 AWG 1620.
    Copper at 12 V: 2 × 5.6 m × 5.261 mm² × 8.89 g = 0.524 kg.
    """
    at12, at24, at48 = row("D05").fitted
    assert [str(one.size) for one in (at12, at24, at48)] == ["10 AWG", "16 AWG", "16 AWG"]
    assert at12.mass == pytest.approx(0.524, abs=0.0005)


def test_no_conductor_on_its_own_is_thinner_than_the_law_lets_it_be():
    """33 CFR 183.425(d): 16 AWG; in a sheath 18 AWG."""
    for one in FOUND.rows:
        least = read_size("18 AWG" if one.circuit.in_sheath else "16 AWG").area
        assert all(fitted.size and fitted.size.area >= least for fitted in one.fitted)


def test_copper_of_all_falls_with_the_volts_and_is_the_sum_of_its_rows():
    assert FOUND.mass[0] > FOUND.mass[1] > FOUND.mass[2] > 0
    assert FOUND.mass[0] == pytest.approx(sum(one.fitted[0].mass for one in FOUND.rows))
    currents = [one.fitted[0].current for one in FOUND.rows]
    assert currents == sorted(currents, reverse=True)


def test_what_is_aboard_weighs_what_its_conductors_do():
    """By hand for D05: 2 × 5.6 m of its own gauge; in all, run × area × 2 × 8.89 g/cm³."""
    mine = [one for one in BOAT.circuits if one.on_bank and one.size and one.run]
    weights = [one.size.area * 2 * one.run.likely * one.parallel * 8.89e-3 for one in mine]
    assert FOUND.aboard == pytest.approx(sum(weights))
    assert FOUND.aboard == pytest.approx(24.2, abs=0.05)
    assert FOUND.aboard > FOUND.mass[0]
    bare = volts_of(read({"format": 1, "boat": {}, "circuits": [
        {"id": "D01", "name": "Feed", "run": "5 m", "current": "6 A",
         "insulation": "105 degC"}]}), "anchor")  # fmt: skip
    assert (bare.aboard, bare.rows[0].aboard) == (0, None)


def test_panels_before_their_controller_keep_their_own_volts():
    on_bank = {one.ident for one in BOAT.circuits if one.on_bank}
    assert {one.circuit.ident for one in FOUND.rows} <= on_bank


def test_large_gear_is_bought_and_small_gear_is_asked():
    assert FOUND.large == ("Anchor windlass",)
    assert "Fridge compressor (running)" in FOUND.small
    assert "Microwave, through inverter" not in FOUND.small
    fed = read({"format": 1, "boat": {}, "loads": [
        {"id": "L01", "name": "Lamp", "draw": "2 A", "hours_anchor": "3 h"},
        {"id": "L02", "name": "Fan", "draw": "12 W", "hours_anchor": "3 h"},
        {"id": "L03", "name": "Radar", "draw": "2 A", "hours_anchor": "0 h"},
        {"id": "L04", "name": "Pump"},
    ]})  # fmt: skip
    assert volts_of(fed, "anchor").converter == pytest.approx(2 * 12 + 12)


def circuit(**fields):
    row = {"id": "D01", "name": "Feed", "run": "5 m", "current": "60 A", "insulation": "105 degC"}
    plan = read({"format": 1, "boat": {}, "circuits": [{**row, **fields}]})
    return plan.circuits[0]


def test_a_current_no_single_conductor_carries_is_shared_or_refused():
    shared = fit(circuit(current="600 A"))
    assert shared.abreast > 1
    assert shared.size.area >= read_size("1/0 AWG").area
    assert shared.mass == pytest.approx(copper(shared.size, Metre(5.0)) * shared.abreast)
    refused = fit(circuit(current="900 A", run="90 m"))
    assert (refused.size, refused.abreast, refused.mass) == (None, MOST_ABREAST, 0.0)


def test_what_is_not_known_is_told_and_not_counted():
    assert fitted_at(circuit(run="?"), Volt(24.0), Volt(12.0), "awg") is None
    found = volts_of(read({"format": 1, "boat": {}, "circuits": [
        {"id": "D01", "name": "Feed"}]}), "anchor")  # fmt: skip
    assert (found.rows, found.unknown, found.mass) == ((), ("Feed",), (0, 0, 0))


def test_a_boat_of_24_volts_is_compared_from_there():
    plan = read(with_value(made_up_document(), "boat.volts", "24 V"))
    found = volts_of(plan, "anchor")
    first = next(one for one in found.rows if one.circuit.ident == "D03")
    assert [one.current for one in first.fitted] == pytest.approx([156, 78, 39])
    assert [float(one) for one in SYSTEMS] == [12, 24, 48]
