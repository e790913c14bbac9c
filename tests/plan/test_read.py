"""A document read into a plan: each problem has its path, and the rest goes on."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.conductors.sizes import read_size
from engine.estimate import Estimate
from engine.plan.document import new_document
from engine.plan.read import plan_of
from engine.plan.read_load import is_power


def plan(**parts):
    return plan_of({"format": 1, **parts})


def load(**fields):
    found = plan(loads=[{"id": "L01", **fields}])
    return found.loads[0], [problem.where for problem in found.problems]


def circuit(boat=None, **fields):
    found = plan(circuits=[{"id": "D01", **fields}], boat=boat or {})
    return found.circuits[0], [problem.where for problem in found.problems]


def test_an_empty_plan():
    found = plan_of(new_document())
    assert (found.boat.volts, found.boat.tape, found.boat.catalogue) == (12.0, 0.3, "sae")
    assert (found.loads, found.circuits, found.bank, found.inverter) == ((), (), None, None)
    assert (found.problems, found.made_up, found.looks) == ((), False, ())


def test_a_load_with_all_it_may_state():
    found, problems = load(
        name="fridge", draw="4.6 A (4.3 to 5)", draw_by="measured", surge="12 A",
        hours_anchor="24 h", hours_passage="8-12 h", duty="40 %", window="night", essential="yes",
        always_live="yes", zone="galley", circuit="D05",
    )  # fmt: skip
    assert problems == []
    assert found.draw == Estimate(4.3, 4.6, 5.0, "measured")
    assert found.watts is None
    assert found.surge == 12.0
    assert found.hours == (
        Estimate.exact(24.0, "estimate"), Estimate(8.0, 10.0, 12.0), None, None,
    )  # fmt: skip
    assert found.duty == Estimate.exact(0.4, "estimate")
    assert (found.window, found.essential, found.always_live) == ("night", True, True)


def test_a_load_without_a_name_has_its_id():
    assert load()[0].name == "L01"
    assert load(name="")[0].name == "L01"


@pytest.mark.parametrize(
    ("text", "expected"),
    [("60 W", 60.0), ("60w", 60.0), ("0.1 kW", 100.0), ("1 hp", 745.69987158227022)],
)
def test_a_draw_in_watts(text, expected):
    found, problems = load(draw=text)
    assert problems == []
    assert found.draw is None
    assert found.watts is not None
    assert found.watts.likely == pytest.approx(expected)
    assert found.watts.known_by == "estimate"
    assert is_power(text)


@pytest.mark.parametrize("text", ["4.6 A", "", "?", "5", "12 m", "xyz"])
def test_what_is_no_power(text):
    assert not is_power(text)


@pytest.mark.parametrize(
    ("draw", "surge", "expected"),
    [
        ("5 A", "14 A", 14.0),
        ("5 A", "14", 14.0),
        ("5 A", "?", None),
        ("60 W", "150 W", 150.0),
        ("60 W", "150", 150.0),
        ("60 W", "0.2 kW", 200.0),
        ("60 W", "", None),
    ],
)
def test_a_surge_in_the_unit_of_the_draw(draw, surge, expected):
    found, problems = load(draw=draw, surge=surge)
    assert (found.surge, problems) == (expected, [])


@pytest.mark.parametrize(
    ("fields", "where"),
    [
        ({"draw": "3 kg"}, ["loads.L01.draw"]),
        ({"draw": "-1 A"}, ["loads.L01.draw"]),
        ({"draw": "3000 A"}, ["loads.L01.draw"]),
        ({"draw": "30000 W"}, ["loads.L01.draw"]),
        ({"draw": "-5 W"}, ["loads.L01.draw"]),
        ({"draw": "many W"}, ["loads.L01.draw"]),
        ({"draw": "nan"}, ["loads.L01.draw"]),
        ({"draw": "1e309"}, ["loads.L01.draw"]),
        ({"draw": "inf"}, ["loads.L01.draw"]),
        ({"draw": "5 A", "surge": "150 W"}, ["loads.L01.surge"]),
        ({"draw": "60 W", "surge": "14 A"}, ["loads.L01.surge"]),
        ({"draw": "60 W", "surge": "1 2 3 4 W"}, ["loads.L01.surge"]),
        ({"draw": "5 A", "surge": "-3 A"}, ["loads.L01.surge"]),
        ({"hours_anchor": "25 h"}, ["loads.L01.hours_anchor"]),
        ({"hours_dock": "-1 h"}, ["loads.L01.hours_dock"]),
        ({"duty": "140 %"}, ["loads.L01.duty"]),
        ({"essential": "maybe"}, ["loads.L01.essential"]),
        ({"draw": "x", "duty": "y", "hours_anchor": "z"},
         ["loads.L01.draw", "loads.L01.hours_anchor", "loads.L01.duty"]),
    ],
)  # fmt: skip
def test_a_load_that_cannot_be_read_counts_as_not_known(fields, where):
    found, problems = load(**fields)
    assert problems == where
    assert found.draw is None or "draw" not in fields or "loads.L01.draw" not in where


def test_a_circuit_with_all_it_may_state():
    found, problems = circuit(
        name="Pilot", run="20 ft", run_by="measured", current="14 A", size="8 AWG",
        allowed="other", insulation="75 degC", engine_space="yes", bundle="4", ambient="95 degF",
        protection="20 A", protection_kind="breaker", abreast="2", volts="21 V", continuous="no",
    )  # fmt: skip
    assert problems == []
    assert found.run is not None
    assert (found.run.low, found.run.likely, found.run.high) == pytest.approx((5.796, 6.096, 6.396))
    assert found.size == read_size("8 AWG")
    assert found.around is not None
    assert (found.around.insulation, found.around.bundle) == (75, 4)
    assert found.around.engine_space
    assert found.around.ambient == pytest.approx(35.0)
    assert (found.allowed, found.volts, found.rating) == ("other", 21.0, 20.0)
    assert (found.guard.words, found.guard.abreast, found.continuous) == ("breaker", 2, False)
    assert not found.on_bank


def test_a_circuit_that_states_nothing():
    found, problems = circuit()
    assert problems == []
    assert (found.name, found.run, found.current, found.size, found.rating) == (
        "D01", None, None, None, None,
    )  # fmt: skip
    assert (found.allowed, found.volts, found.continuous) == ("critical", 12.0, True)
    assert (found.guard.abreast, found.guard.series, found.guard.fitted) == (1, "", True)
    assert (found.fed_from, found.feeds, found.parallel) == ("", "loads", 1)
    assert (found.joints, found.stall, found.read_drop, found.on_bank) == (None, None, None, True)


@pytest.mark.parametrize(
    ("run", "boat", "expected"),
    [
        ("4 m", {}, (3.7, 4.0, 4.3)),
        ("4 m", {"tape": "0 m"}, (4.0, 4.0, 4.0)),
        ("4 m", {"tape": "10 cm"}, (3.9, 4.0, 4.1)),
        ("3-5 m", {}, (3.0, 4.0, 5.0)),
        ("20 cm", {}, (0.01, 0.2, 0.5)),
        ("5 mm", {}, (0.005, 0.005, 0.305)),
    ],
)
def test_the_tape_may_be_off_where_no_range_was_typed(run, boat, expected):
    found, problems = circuit(boat, run=run)
    assert problems == []
    assert found.run is not None
    assert (found.run.low, found.run.likely, found.run.high) == pytest.approx(expected)


def test_a_bare_size_is_metric_only_where_the_boat_says_so():
    found, problems = circuit({"catalogue": "metric"}, size="6")
    assert (str(found.size), problems) == ("6 mm2", [])
    found, problems = circuit({"catalogue": "awg"}, size="6")
    assert (found.size, problems) == (None, ["circuits.D01.size"])
    assert circuit(size="?")[0].size is None


@pytest.mark.parametrize(
    ("fields", "where"),
    [
        ({"run": "3 kg"}, "run"),
        ({"run": "0"}, "run"),
        ({"run": "-4 m"}, "run"),
        ({"run": "4 km"}, "run"),
        ({"run": "four"}, "run"),
        ({"run": "1e308 km"}, "run"),
        ({"run": "1,250 m"}, "run"),
        ({"current": "0 A"}, "current"),
        ({"size": "10 elephants"}, "size"),
        ({"size": "11 SAE"}, "size"),
        ({"insulation": "77 degC"}, "insulation"),
        ({"insulation": "hot"}, "insulation"),
        ({"bundle": "0"}, "bundle"),
        ({"ambient": "3 V"}, "ambient"),
        ({"protection": "-5 A"}, "protection"),
        ({"engine_space": "perhaps"}, "engine_space"),
    ],
)
def test_a_circuit_that_cannot_be_read_says_where(fields, where):
    assert circuit(**fields)[1] == [f"circuits.D01.{where}"]


def test_insulation_no_table_gives_leaves_the_rest():
    found, _ = circuit(run="4 m", insulation="77 degC")
    assert found.around is None
    assert found.run is not None


def test_a_bank_with_typical_values_where_nothing_is_stated():
    bank = plan(bank={"chemistry": "flooded", "capacity": "2 x 110 Ah"}).bank
    assert bank is not None
    assert (bank.capacity, bank.rated_hours, bank.charge, bank.temperature) == (220, 20, 1, 20)
    assert (bank.reserve, bank.exponent, bank.health, bank.new) == (0.5, 1.25, None, False)
    assert plan(bank={"capacity": "100 Ah"}).bank is None
    stated = plan(bank={"chemistry": "lithium", "reserve": "10 %", "exponent": "1.1",
                        "resistance": "5 mohm", "age": "New"}).bank  # fmt: skip
    assert stated is not None
    assert (stated.capacity, stated.reserve, stated.exponent) == (None, 0.1, 1.1)
    assert (stated.resistance, stated.new) == (0.005, True)


def test_an_inverter_with_its_curve_and_cut_off():
    """Idle 8 W of 2000 W is 0.004 per unit; it cuts off at 0.875 of the nominal volts."""
    stated = plan(inverter={"rating": "2000 W", "idle": "8 W", "curve": "good", "surge": "4 kW",
                            "circuit": "D02", "cutoff": "11 V"}).inverter  # fmt: skip
    assert stated is not None
    assert stated.curve.fixed == pytest.approx(0.004)
    assert (stated.surge, stated.cutoff, stated.circuit) == (4000.0, 11.0, "D02")
    plain = plan(inverter={"rating": "2000 W"}, boat={"volts": "24 V"})
    assert plain.inverter is not None
    assert (plain.inverter.cutoff, plain.inverter.surge) == (21.0, None)
    assert plain.supply.curve == plain.inverter.curve
    with_bank = plan(inverter={"rating": "2000 W"}, bank={"chemistry": "lithium"}).inverter
    assert with_bank is not None
    assert with_bank.cutoff == 10.5
    assert plan(inverter={"surge": "4 kW"}).inverter is None


def test_problems_of_every_part_are_collected():
    found = plan(
        boat={"volts": "x", "people": "0", "tape": "-1 m"},
        loads=[{"id": "L01", "draw": "x"}],
        circuits=[{"id": "D01", "run": "x"}],
        bank={"chemistry": "agm", "capacity": "0 Ah"},
        inverter={"rating": "-1 W"},
        looks={"fuse": "no"},
    )
    assert [problem.where for problem in found.problems] == [
        "boat.volts", "boat.tape", "boat.people", "loads.L01.draw", "circuits.D01.run",
        "bank.capacity", "inverter.rating",
    ]  # fmt: skip
    assert found.boat.volts == 12.0
    assert found.looks == (("fuse", "no"),)
    problem = found.problem_at("loads.L01.draw")
    assert problem is not None
    assert "“x”" in problem.what
    assert found.problem_at("loads.L01.name") is None


ENTRIES = st.text(max_size=30) | st.sampled_from(
    ["4.6 A", "60 W", "4-5", "~3 A", "1h30", "3 kg", "1e400", "nan", "½", "?", "0", "-1", "5'6\""]
)


@given(
    st.dictionaries(
        st.sampled_from(
            ["draw", "surge", "hours_anchor", "duty", "essential", "always_live", "name"]
        ),
        ENTRIES,
    ),
    st.dictionaries(
        st.sampled_from(
            ["run", "current", "size", "insulation", "bundle", "ambient", "protection", "volts",
             "abreast", "continuous", "engine_space"]
        ),
        ENTRIES,
    ),
    st.dictionaries(
        st.sampled_from(["capacity", "rated_hours", "health", "age", "charge", "reserve",
                         "temperature", "exponent", "resistance"]),
        ENTRIES,
    ),
)  # fmt: skip
def test_no_entry_stops_the_reading(load_fields, circuit_fields, bank_fields):
    found = plan(
        loads=[{"id": "L01", **load_fields}, {"id": "L02", "draw": "1 A"}],
        circuits=[{"id": "D01", **circuit_fields}],
        bank={"chemistry": "agm", **bank_fields},
    )
    assert found.loads[1].draw == Estimate.exact(1.0, "estimate")
    for problem in found.problems:
        assert problem.where
        assert problem.what
        assert problem.mend
