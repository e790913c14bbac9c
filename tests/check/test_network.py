"""The whole DC network of a plan: who is switched on, what sags, and what is left out.

Hand sums: 4 mm² class 5 coated has 5.09 Ω/km at 20 °C; a branch is there and back.
"""

import pytest

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.voltage import open_circuit
from engine.check.network import bank_at, network_answer
from engine.check.path import loop_ohms
from engine.check.shared import shared
from engine.check.users import used_in, users_of
from engine.feeders.tree import Behaves
from engine.inverter.efficiency import dc_watts
from engine.plan.made_up import made_up_document
from engine.plan.read import plan_of
from engine.units import Volt, Watt

BUS = {"id": "D01", "name": "Bus", "run": "2 m", "current": "10 A", "size": "25 mm2",
       "feeds": "bus"}  # fmt: skip
LAMP = {"id": "D02", "name": "Lamp", "run": "5 m", "current": "2 A", "size": "4 mm2",
        "fed_from": "D01"}  # fmt: skip
PUMP = {"id": "D03", "name": "Pump", "run": "4 m", "current": "8 A", "size": "4 mm2",
        "fed_from": "D01"}  # fmt: skip
LIGHT = {"id": "L01", "name": "Light", "draw": "2 A", "hours_anchor": "4 h", "circuit": "d02"}


def plan(*circuits, loads=(LIGHT,), **parts):
    boat = {"tape": "0 m", **parts.pop("boat", {})}
    return plan_of({"format": 1, "boat": boat, "circuits": list(circuits), "loads": list(loads),
                    **parts})  # fmt: skip


def test_everything_that_can_run_is_listed_once():
    users = users_of(plan(BUS, LAMP, PUMP))
    assert [(user.ident, user.node, user.amount) for user in users] == [
        ("L01", "D02", 2.0), ("D03", "D03", 8.0),
    ]  # fmt: skip


def test_volts_by_hand():
    """No bank: 12 V that nothing pulls down. Loops warm with the square of their current."""
    both = plan(BUS, LAMP, PUMP)
    found = network_answer(both, frozenset({"L01", "D03"}))
    assert found.solved is not None
    bus, lamp, pump = (loop_ohms(one) for one in both.circuits)
    assert bus is not None
    assert lamp is not None
    assert pump is not None
    assert found.volts_at("D01") == pytest.approx(12 - 10 * bus)
    assert found.volts_at("D02") == pytest.approx(12 - 10 * bus - 2 * lamp)
    assert found.lost_to("D03") == pytest.approx(10 * bus + 8 * pump)
    assert found.solved.worst == "D03"
    cold = 2 * 5 * 5.09 / 1000
    assert cold < lamp < cold * 1.06


def test_what_is_off_draws_nothing():
    both = plan(BUS, LAMP, PUMP)
    found = network_answer(both, frozenset())
    assert found.solved is not None
    assert found.solved.current == pytest.approx(0)
    assert found.volts_at("D03") == 12.0


def test_a_pump_switched_on_pulls_the_lamp_down():
    both = plan(BUS, LAMP, PUMP)
    alone = network_answer(both, frozenset({"L01"})).volts_at("D02")
    shared_volts = network_answer(both, frozenset({"L01", "D03"})).volts_at("D02")
    assert alone is not None
    assert shared_volts is not None
    assert shared_volts < alone


def test_how_a_load_behaves():
    loads = [
        {"id": "L01", "draw": "24 W", "circuit": "D02"},
        {"id": "L02", "draw": "2 A", "circuit": "D02", "behaves": "resistance"},
        {"id": "L03", "draw": "2 A", "circuit": "D02", "behaves": "power"},
        {"id": "L04", "draw": "24 W", "circuit": "D02", "behaves": "current"},
        {"id": "L05", "draw": "0 A", "circuit": "D02", "behaves": "resistance"},
        {"id": "L06", "draw": "2 A", "supply": "shore", "circuit": "D02"},
        {"id": "L07", "circuit": "D02"},
    ]
    users = users_of(plan(BUS, LAMP, loads=loads))
    assert [(user.ident, user.behaves, user.amount) for user in users] == [
        ("L01", Behaves.POWER, 24.0), ("L02", Behaves.RESISTANCE, 6.0),
        ("L03", Behaves.POWER, 24.0), ("L04", Behaves.CURRENT, 2.0),
    ]  # fmt: skip


def test_an_ac_load_keeps_its_power():
    loads = [{"id": "L01", "draw": "500 W", "supply": "inverter", "circuit": "D02"}]
    (user,) = users_of(plan(LAMP | {"fed_from": ""}, loads=loads, inverter={"rating": "1 kW"}))
    assert (user.behaves, user.amount) == (Behaves.POWER, 500.0)


def test_ac_loads_that_run_together_cost_the_inverter_s_own_loss_once():
    loads = [
        {"id": f"L0{n}", "draw": "250 W", "supply": "inverter", "circuit": "D09"} for n in (1, 2)
    ] + [{"id": "L03", "draw": "8 W", "supply": "idle"}]
    parts = {"loads": loads, "inverter": {"rating": "1 kW", "circuit": "d02"}}
    boat = plan(LAMP | {"fed_from": "", "size": "70 mm2", "run": "10 cm"}, **parts)
    assert {user.node for user in users_of(boat)} == {"D02"}
    curve = boat.supply.curve
    assert curve is not None
    both = network_answer(boat, frozenset({"L01", "L02", "L03"})).solved
    assert both is not None
    assert both.taken == pytest.approx(dc_watts(curve, Watt(500.0)))
    idle = network_answer(boat, frozenset({"L03"})).solved
    assert idle is not None
    assert idle.taken == pytest.approx(8.0)


def test_a_source_pushes_and_nothing_switches_it_on_by_itself():
    sun = {"id": "D04", "run": "3 m", "current": "10 A", "size": "6 mm2", "feeds": "source"}
    boat = plan(BUS, LAMP, sun)
    assert "D04" not in used_in(boat, "anchor")
    dark = network_answer(boat, frozenset({"L01"})).solved
    lit = network_answer(boat, frozenset({"L01", "D04"})).solved
    assert dark is not None
    assert lit is not None
    assert lit.current == pytest.approx(dark.current - 10)
    assert lit.volts["D04"] > 12


def test_a_circuit_at_its_design_current():
    """The lamp's circuit is asked for 2 A by its load; forced it carries its design current."""
    boat = plan(BUS, LAMP | {"current": "5 A"}, PUMP)
    forced = network_answer(boat, frozenset({"L01"}), "now", "D02").solved
    assert forced is not None
    assert forced.amps["D02"] == pytest.approx(5.0)
    bus = network_answer(boat, frozenset({"L01"}), "now", "D01").solved
    assert bus is not None
    assert bus.amps["D01"] == pytest.approx(2.0)


def test_what_is_not_known_is_left_out_and_named():
    boat = plan(BUS | {"size": "?"}, LAMP, PUMP | {"fed_from": "D09"})
    found = network_answer(boat, frozenset({"L01"}))
    assert found.solved is not None
    assert {ident for ident, _ in found.left_out} == {"bank", "D01", "D02", "D03", "L01"}
    assert all(why for _, why in found.left_out)


def test_a_load_with_no_circuit_is_named():
    boat = plan(BUS, loads=[{"id": "L01", "draw": "2 A"}])
    left_out = network_answer(boat, frozenset({"L01"})).left_out
    assert left_out[0] == ("L01", "its circuit is not entered")
    assert left_out[1][0] == "bank"


def test_the_bank_at_its_levels():
    bank = {"chemistry": "flooded", "capacity": "200 Ah", "charge": "80 %", "reserve": "50 %"}
    stated = plan(BUS, bank=bank).bank
    assert stated is not None
    volts = [bank_at(stated, level, Volt(12.0))[0] for level in ("full", "now", "lowest")]
    assert volts == sorted(volts, reverse=True)
    assert bank_at(None, "now", Volt(24.0)) == (24.0, 0.0)
    ohms = [bank_at(stated, level, Volt(12.0))[1] for level in ("full", "lowest")]
    assert all(one > 0 for one in ohms)


def test_no_operating_point_is_a_finding():
    """30 m of 1 mm²: 20.0 Ω/km, 1.2 Ω; 12² / 4.8 = 30 W is the most that arrives."""
    thin = {"id": "D02", "run": "30 m", "current": "3 A", "size": "1 mm2"}
    loads = [{"id": "L01", "draw": "40 W", "circuit": "D02", "hours_anchor": "1 h"}]
    boat = plan(thin, loads=loads)
    assert network_answer(boat, frozenset({"L01"})).solved is None
    (found,) = shared(boat)
    assert found.where == "network"
    assert "at anchor" in found.words
    assert "passage" not in found.words
    (low,) = shared(plan(thin, loads=[{**loads[0], "draw": "20 W"}]))
    assert "D02 falls to" in low.words
    assert shared(plan(thin, loads=[{**loads[0], "draw": "9 W"}])) == []


def test_the_windlass_while_the_fridge_runs():
    """The made-up boat: the windlass alone against the windlass with all that runs at anchor."""
    boat = plan_of(made_up_document())
    alone = network_answer(boat, frozenset({"L36"}), "lowest")
    everything = network_answer(boat, used_in(boat, "anchor"), "lowest")
    one, other = alone.volts_at("D03"), everything.volts_at("D03")
    assert one is not None
    assert other is not None
    assert 10.5 < other < one < 13
    assert alone.open_volts == pytest.approx(open_circuit_of(boat))
    assert everything.left_out == ()


def open_circuit_of(boat):
    return open_circuit(CHEMISTRIES[boat.bank.chemistry], boat.bank.reserve, boat.bank.volts)
