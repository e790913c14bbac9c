"""Inlet, plugs, breakers, leakage, bonds and transfer: verdicts, and entries that cannot be."""

import re
from itertools import count

import pytest

from engine.conductors.carrying import Surroundings
from engine.conductors.sizes import read_size
from engine.finding import Rule, Severity, Verdict, Who
from engine.problem import Problem
from engine.shore import (
    cord,
    earthing,
    generator,
    isolation,
    leakage,
    panel,
    starting,
    transfer,
    wave,
)
from engine.shore import services as docks
from engine.shore import together as at_once
from engine.shore.appliances import Nature
from engine.shore.legs import Legs
from engine.shore.services import Service, crossing, service, split
from engine.shore.tables import LEAST_CORD
from engine.shore.together import Branch
from engine.shore.wave import MODIFIED, idle, saved_by_search, warm_share
from engine.source import Source
from engine.units import Amp, Celsius, Hour, Metre, Ohm, Volt, Watt

Supply = earthing.Supply
THIRTY, FIFTY, TWO_LEGS = (
    service(f"{name} V") for name in ("30 A 120", "50 A 120", "50 A 125/250")
)
ROOMS = (
    at_once, cord, docks, earthing, generator, isolation, leakage, panel, starting, transfer, wave,
)  # fmt: skip
RULES = {
    one.name: one for room in ROOMS for one in vars(room).values() if isinstance(one, Rule)
}.values()


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_every_rule_says_where_it_stands(rule):
    assert isinstance(rule.source, Source)
    assert rule.source.document
    assert rule.source.place
    assert rule.words
    if rule.source.document == "common practice":
        assert rule.source.typical


def test_no_text_says_more_than_it_can():
    said = " ".join(rule.words for rule in RULES)
    said += " ".join(
        f"{one.bond} {one.transfers} {one.measured}" for one in earthing.STATES.values()
    )
    assert not re.search(r"\b(?:safe|approved|compliant|optimal)\b", said)


@pytest.mark.parametrize(
    ("dock", "inlet", "verdict"),
    [
        ("30 A 120 V", "30 A 120 V", "within limit"),
        ("16 A 230 V", "30 A 120 V", "stop"),
        ("30 A 120 V", "16 A 230 V", "stop"),
        ("50 A 120 V", "30 A 120 V", "should"),
        ("50 A 125/250 V", "30 A 120 V", "should"),
        ("30 A 120 V", "50 A 125/250 V", "should"),
        ("50 A 125/250 V", "50 A 120 V", "should"),
        ("16 A 230 V", "32 A 230 V", "should"),
        ("63 A 230 V", "16 A 230 V", "should"),
    ],
)
def test_what_may_be_crossed(dock, inlet, verdict):
    found = crossing(service(dock), service(inlet))
    assert found.verdict.value == verdict
    one_leg_for_two = service(dock).legs < service(inlet).legs
    assert ("one phase" in found.words) is (one_leg_for_two and found.verdict is Verdict.SHOULD)


def test_a_service_of_another_name_and_the_same_form():
    mine = Service("mine", Volt(120.0), 60, Amp(30.0), 1, THIRTY.plug)
    assert crossing(mine, THIRTY).verdict is Verdict.FINE


def test_a_splitter():
    """Two legs of 50 A feed two inlets of 30 A; one leg of 30 A feeds two with 30 A in all."""
    assert split(TWO_LEGS, (THIRTY, THIRTY)).together == 60.0
    assert split(THIRTY, (THIRTY, THIRTY)).together == 30.0
    assert split(FIFTY, (THIRTY, THIRTY)).each == (30.0, 30.0)
    assert split(THIRTY, (FIFTY,)).each == (30.0,)


@pytest.mark.parametrize(
    ("main", "verdicts"),
    [
        (panel.Main(Amp(30.0), Metre(0.3)), []),
        (panel.Main(Amp(30.0), Metre(0.3), poles=1), ["stop"]),
        (panel.Main(Amp(50.0), Metre(0.3)), ["stop"]),
        (panel.Main(Amp(50.0), Metre(5.0), poles=1), ["stop", "stop", "stop"]),
        (panel.Main(Amp(30.0), Metre(2.0)), ["should"]),
    ],
)
def test_a_main(main, verdicts):
    found = panel.judge_main(main, THIRTY)
    assert [one.verdict.value for one in found] == verdicts
    assert {one.who for one in found} <= {Who.LICENSED}


def test_two_poles_are_enough_for_two_legs():
    assert panel.judge_main(panel.Main(Amp(50.0), Metre(0.3)), TWO_LEGS) == ()


def test_a_branch_breaker_guards_its_conductor():
    """14 AWG of 105 °C prints 35 A; three together in the engine space 35 × 0.7 × 0.85 = 20.8."""
    hot = Surroundings(bundle=3, engine_space=True)
    size = read_size("14 AWG")
    assert panel.judge_branch(Branch("A02", Amp(20.0)), size, hot) is None
    found = panel.judge_branch(Branch("A02", Amp(25.0)), size, hot)
    assert found is not None
    assert found.where == "A02"
    assert "20.8 A" in found.words


@pytest.mark.parametrize(
    ("place", "trip", "wrong"),
    [
        ("Galley", None, True),
        ("head", Amp(0.03), True),
        ("head", Amp(0.005), False),
        ("saloon", None, False),
    ],
)
def test_receptacles_where_people_are_wet(place, trip, wrong):
    assert (leakage.judge_receptacle(place, trip, service("30 A 120 V")) is not None) is wrong


def test_standing_leakage_adds_up():
    found = leakage.judge_standing((Amp(0.004), Amp(0.0075), Amp(0.0075)))
    assert found is Verdict.SHOULD
    assert leakage.judge_standing(()) is Verdict.FINE


@pytest.mark.parametrize("supply", list(Supply))
def test_one_bond_at_the_source_in_use(supply):
    right = earthing.BOND_OF[supply]
    assert earthing.judge_bonds(supply, frozenset({right})) is None
    for closed in (set(), {right, "panel"}, {right, *set(earthing.BOND_OF.values())}, {"panel"}):
        found = earthing.judge_bonds(supply, frozenset(closed))
        assert found is not None
        assert found.severity is Severity.STOP_NOW
        assert found.who is Who.LICENSED


def test_a_permanent_bond_on_shore_power_is_a_stop_now_rule():
    found = earthing.judge_bonds(Supply.SHORE, frozenset({"shore", "inverter"}))
    assert found is not None
    assert found.rule is earthing.PERMANENT_BOND
    assert earthing.permanent_bond().severity is Severity.STOP_NOW


def test_the_table_of_states():
    found = earthing.states(tuple(Supply))
    assert [one.supply for one in found] == list(Supply)
    assert all(one.who is Who.LICENSED and "icensed person" in one.measured for one in found)
    assert "None on board" in found[0].bond


@pytest.mark.parametrize(
    ("change", "rules"),
    [
        ({}, []),
        ({"interlocked": False}, ["interlock"]),
        ({"breaks_first": False}, ["all live conductors"]),
        ({"switches_neutral": False}, ["all live conductors"]),
    ],
)
def test_a_transfer(change, rules):
    found = transfer.judge_transfer(transfer.Transfer((Supply.SHORE, Supply.INVERTER), **change))
    assert [one.rule.name for one in found] == rules
    assert all(one.severity is Severity.STOP_NOW for one in found)


def test_one_source_has_nothing_to_transfer_and_two_inlets_have():
    assert transfer.judge_transfer(transfer.Transfer(("shore",), interlocked=False)) == ()
    two = transfer.Transfer(("shore 1", "shore 2"), interlocked=False)
    assert len(transfer.judge_transfer(two)) == 1


def test_polarity():
    assert transfer.judge_polarity(needed=True, fitted=True) is None
    assert transfer.judge_polarity(needed=False, fitted=False) is None
    missing = transfer.judge_polarity(needed=True, fitted=False)
    crossed = transfer.judge_polarity(needed=True, fitted=True, reversed_now=True)
    assert missing is not None
    assert crossed is not None
    assert crossed.severity is Severity.STOP_NOW


@pytest.mark.parametrize(
    ("rating", "fails_closed", "monitored", "count"),
    [(30, True, False, 0), (30, False, True, 0), (30, False, False, 1), (16, False, False, 2)],
)
def test_an_isolator(rating, fails_closed, monitored, count):
    one = isolation.Isolator(Amp(rating), fails_closed, monitored)
    assert len(isolation.judge_isolator(one, Amp(30.0))) == count


def test_a_transformer_near_the_inlet_stands_in_for_leakage_protection():
    """3600 VA at 120 V are 30 A; 8 to 12 times that at switching on; 6 to 12 kg/kVA."""
    found = isolation.transformer(Watt(3600.0), Volt(120.0), Metre(3.2))
    assert found.inrush == (240.0, 360.0)
    assert found.weight == pytest.approx((21.6, 43.2))
    assert not found.exempts


def test_two_that_start():
    """Fridge 100 W × 7, pump 400 W × 5: at once 2700, in turn 100 + 2000 or 700 + 400."""
    two = (
        starting.Starter("fridge", Watt(100.0), "mains compressor"),
        starting.Starter("pump", Watt(400.0), "induction motor"),
    )
    assert starting.start_together(two, Watt(0.0)) == pytest.approx(2700.0)
    assert starting.start_in_turn(two, Watt(0.0)) == pytest.approx(2100.0)
    assert "at one moment: 2700 W" in starting.starts(two, Watt(0.0), Watt(3000.0))
    assert "one after another" in starting.starts(two, Watt(0.0), Watt(2500.0))
    assert "do not start" in starting.starts(two, Watt(0.0), Watt(1000.0))
    assert starting.start_in_turn((), Watt(50.0)) == 50.0


def test_the_last_code_letter_has_no_high_end():
    assert starting.locked_rotor(2.0, "V") == starting.LockedRotor(44.8, None)


def test_every_class_is_said_on_a_modified_wave():
    assert set(MODIFIED) == set(Nature)
    assert MODIFIED[Nature.CONSTANT_POWER].verdict is Verdict.STOP


def test_idle_search_and_warmth():
    """2000 W: 20 W idle, 2 W searching; 20 h of it save 360 Wh."""
    assert idle(Watt(2000.0)) == pytest.approx((10.0, 20.0, 40.0))
    assert saved_by_search(Watt(2000.0), Hour(20.0)) == pytest.approx(360.0)
    assert saved_by_search(Watt(100.0), Hour(20.0)) == 0.0
    assert [warm_share(Celsius(air)) for air in (10, 25, 32.5, 40, 60, 70)] == pytest.approx(
        [1.0, 1.0, 0.9, 0.8, 0.5, None]
    )


def test_cords_by_service():
    assert cord.thick_enough(read_size("4 mm2"), Amp(32.0)) is False
    assert cord.thick_enough(read_size("6 AWG"), Amp(50.0)) is True
    assert cord.thick_enough(read_size("6 AWG"), Amp(40.0)) is None


def test_a_larger_service_never_has_a_thinner_cord():
    areas = [read_size(LEAST_CORD[rating]).area for rating in sorted(LEAST_CORD.rows)]
    assert areas == sorted(areas)


def test_a_feed_of_two_parts_loses_what_both_lose():
    """30 A by 2.5 mm² at 20 °C: 2 × (10 + 5) m × 7.98 Ω/km × 30 A."""
    size = read_size("2.5 mm2")
    parts = (
        cord.Cord(Metre(10.0), size, Celsius(20.0)),
        cord.Cord(Metre(5.0), size, Celsius(20.0)),
    )
    assert cord.feed_drop(Amp(30.0), parts) == pytest.approx(30 * 7.98 * 0.030)


def test_a_generator_that_idles():
    assert generator.works_hard_enough(Watt(8000.0), Watt(2400.0))
    assert not generator.works_hard_enough(Watt(8000.0), Watt(2300.0))
    assert generator.charted(Watt(20000.0), Watt(5000.0))
    assert not generator.charted(Watt(8000.0), Watt(2000.0))
    assert not generator.charted(Watt(4000.0), Watt(4000.0))
    runs, starts = generator.size_needed(Watt(4000.0), Watt(4500.0))
    assert (runs.least, starts.least) == pytest.approx((5000.0, 4500.0))


@pytest.mark.parametrize(
    "bad",
    [
        lambda: Service("long", Volt(600.0), 60, Amp(30.0), 1, ""),
        lambda: Service("none", Volt(120.0), 60, Amp(-30.0), 1, ""),
        lambda: service("30 A"),
        lambda: Legs(Amp(-1.0), Amp(3.0)),
        lambda: split(THIRTY, ()),
        lambda: split(THIRTY, (THIRTY,) * 3),
        lambda: panel.Main(Amp(-30.0), Metre(1.0)),
        lambda: panel.Main(Amp(30.0), Metre(-1.0)),
        lambda: panel.Main(Amp(30.0), Metre(1.0), poles=0),
        lambda: transfer.Transfer(()),
        lambda: transfer.Transfer(("shore", "shore")),
        lambda: earthing.states(()),
        lambda: earthing.judge_bonds(Supply.SHORE, frozenset({"mast"})),
        lambda: leakage.longest_trip(Amp(-0.001)),
        lambda: leakage.judge_standing((Amp(-0.001),)),
        lambda: isolation.Isolator(Amp(0.0), fails_closed=True),
        lambda: isolation.green_wire(Volt(0.3), Ohm(0.0)),
        lambda: isolation.green_wire(Volt(-0.3), Ohm(0.5)),
        lambda: isolation.transformer(Watt(0.0), Volt(120.0), Metre(1.0)),
        lambda: starting.locked_rotor(1.0, "Q"),
        lambda: starting.locked_rotor(0.0, "A"),
        lambda: starting.line_current(1.0, Volt(120.0), 2),
        lambda: starting.line_current(1.0, Volt(0.0), 1),
        lambda: starting.starts((), Watt(0.0), Watt(100.0)),
        lambda: idle(Watt(0.0)),
        lambda: saved_by_search(Watt(100.0), Hour(25.0)),
        lambda: generator.fuel(Watt(0.0), Watt(0.0)),
        lambda: generator.fuel(Watt(8000.0), Watt(9000.0)),
        lambda: generator.size_needed(Watt(-1.0), Watt(0.0)),
        lambda: cord.Cord(Metre(0.0), read_size("10 AWG")),
    ],
    ids=count(),
)
def test_what_cannot_be(bad):
    with pytest.raises(Problem) as found:
        bad()
    assert found.value.where
    assert found.value.what
    assert found.value.mend
