"""Quick sums of alternating current. Figures are hand sums, shown beside each."""

import pytest

from engine.shore.earthing import CAUTION
from engine.shore.generator import EXHAUST_CAUTION
from engine.sums import SUMS
from engine.sums.sum import answered

DEMO = (
    "charger 680 W, kettle 1000 W, dehumidifier 280 W, laptop 65 W, tool charger 95 W, "
    "water heater 750 W"
)


def asked(name, **given):
    return answered(SUMS[name], given)


def value(name, key, **given):
    found = asked(name, **given)
    assert found["problems"] == []
    return found["answers"][key]["value"]


def problems(name, **given):
    found = asked(name, **given)
    assert found["answers"] == {}
    assert all(row["what"] and row["mend"] for row in found["problems"])
    return [row["where"] for row in found["problems"]]


def test_a_cord_by_size_and_by_square_millimetres():
    """2 × 25 m × 7.98 Ω/km × 16 A = 6.384 V of 230."""
    asks = {"volts": "230 V", "current": "16 A", "length": "25 m", "temperature": "20 degC"}
    for size in ({"size": "2.5 mm2"}, {"mm2": "2.5"}, {"mm2": "2.5 mm2"}):
        assert value("cord", "drop", **asks, **size) == pytest.approx(6.384)
        assert value("cord", "share", **asks, **size) == pytest.approx(6.384 / 230)


def test_a_cord_in_feet_by_the_rule():
    """10.75 × 30 × 100 / 10 383 = 3.106 V."""
    asks = {"current": "30 A", "length": "50 ft", "size": "10 AWG"}
    assert value("cord", "rule_drop", **asks) == pytest.approx(3.106, abs=0.0005)


def test_a_cord_that_is_too_thin_or_too_long_is_said():
    thin = asked("cord", current="30 A", length="50 ft", size="14 AWG")["cautions"]
    assert any("5 %" in one for one in thin)
    assert any("thinner" in one for one in thin)
    lost = asked("cord", current="100 A", length="900 m", size="14 AWG")["cautions"]
    assert any("all the volts" in one for one in lost)


@pytest.mark.parametrize(
    ("more", "where"),
    [
        ({"volts": "600 V", "size": "10 AWG"}, "volts"),
        ({}, "size"),
        ({"size": "10 AWG", "mm2": "6"}, "size"),
        ({"size": "11 AWG"}, "size"),
        ({"mm2": "5"}, "mm2"),
        ({"mm2": "-5"}, "mm2"),
        ({"mm2": "3 V"}, "mm2"),
        ({"size": "10 AWG", "length": "0"}, "length"),
    ],
)
def test_a_cord_that_cannot_be(more, where):
    assert problems("cord", **{"current": "16 A", "length": "25 m", **more}) == [where]


def test_a_sag_beyond_all_power_says_so():
    """118² / (4 × 0.4) = 8702.5 W."""
    asks = {"open_volts": "118 V", "resistance": "0.4 ohm"}
    found = asked("sag", power="9000 W", **asks)
    assert found["answers"]["current"]["value"] is None
    assert found["answers"]["volts"]["value"] is None
    assert found["answers"]["collapse_power"]["value"] == pytest.approx(8702.5)
    assert found["governing"] == "operating point"
    assert found["cautions"]
    assert value("sag", "volts", power="8702.5 W", **asks) == pytest.approx(59.0)


def test_a_motor_by_horsepower_and_by_watts():
    """0.5 × 9.99 = 4.995 kVA; / 120 V = 41.6 A; three phases / √3."""
    for power in ({"horsepower": "0.5"}, {"horsepower": "0.5 hp"}, {"watts": "372.85 W"}):
        assert value("motor-start", "kva", code="l", **power) == pytest.approx(4.995, rel=1e-5)
        assert value("motor-start", "current", code="L", **power) == pytest.approx(41.625, rel=1e-5)
    three = value("motor-start", "current", horsepower="0.5", code="L", phases="3", volts="230 V")
    assert three == pytest.approx(4995 / 230 / 3**0.5)


def test_the_last_letter_has_no_high_end():
    found = asked("motor-start", horsepower="1", code="V")
    assert found["answers"]["kva"]["value"] == pytest.approx(22.4)
    assert any("no high end" in one for one in found["cautions"])


@pytest.mark.parametrize(
    ("given", "where"),
    [
        ({"code": "L"}, "horsepower"),
        ({"code": "L", "horsepower": "1", "watts": "700 W"}, "horsepower"),
        ({"code": "I", "horsepower": "1"}, "code"),
        ({"code": "", "horsepower": "1"}, "code"),
        ({"code": "L", "horsepower": "-1"}, "horsepower"),
        ({"code": "L", "horsepower": "1", "phases": "2"}, "phases"),
        ({"code": "L", "horsepower": "1", "volts": "0"}, "volts"),
    ],
)
def test_a_motor_that_cannot_be(given, where):
    assert problems("motor-start", **given) == [where]


def test_the_made_up_boat_at_its_dock():
    """2870 / 120 = 23.9 A, 80 % of 30 A; with the microwave 3920 / 120 = 32.7 A."""
    assert value("shore-load", "current", service="30 A", loads=DEMO) == pytest.approx(
        23.9167, abs=1e-4
    )
    assert value("shore-load", "share_of_service", service="30 A", loads=DEMO) == pytest.approx(
        0.797, abs=0.0005
    )
    assert value("shore-load", "verdict", service="30 A", loads=DEMO) == "within limit"
    with_more = asked("shore-load", service="30", loads=f"{DEMO}, microwave 1050 W")
    assert with_more["answers"]["current"]["value"] == pytest.approx(32.667, abs=0.001)
    assert with_more["answers"]["verdict"]["value"] == "stop"
    assert "Do not run together: microwave and kettle." in with_more["cautions"]


def test_a_weak_dock_is_said_beside_it():
    """(1750 × 0.9 + 1120 / 0.9) / 120 = 23.5 A at 108 V."""
    cautions = asked("shore-load", service="30 A", loads=DEMO)["cautions"]
    assert any("108 V it is 23.5 A" in one for one in cautions)


@pytest.mark.parametrize(
    ("loads", "service", "verdict", "said"),
    [
        ("heater 3000 W, router 20 W", "20 A", "stop", "Leave the heater off."),
        ("heater 3000 W, oven 3000 W", "20 A", "stop", "More than one"),
        ("heater 3240 W", "30 A", "should", "At a weak dock"),
        (
            "heater 1500 W, heater 1400 W",
            "20 A",
            "stop",
            "Do not run together: heater of 1500 W and heater of 1400 W.",
        ),
    ],
)
def test_other_verdicts(loads, service, verdict, said):
    found = asked("shore-load", loads=loads, service=service)
    assert found["answers"]["verdict"]["value"] == verdict
    assert any(said in one for one in found["cautions"])


@pytest.mark.parametrize(
    ("given", "where"),
    [
        ({"loads": DEMO, "service": "-30 A"}, "service"),
        ({"loads": DEMO, "service": "0 A"}, "service"),
        ({"loads": DEMO, "service": "30 A", "volts": "600 V"}, "volts"),
        ({"loads": "", "service": "30 A"}, "loads"),
        ({"loads": "kettle", "service": "30 A"}, "loads"),
        ({"loads": "kettle 5 A", "service": "30 A"}, "loads"),
    ],
)
def test_a_shore_load_that_cannot_be(given, where):
    assert problems("shore-load", **given) == [where]


@pytest.mark.parametrize("load", ["10 kW", "10000", "50 %", "0.5", "10000 W"])
def test_a_generator_at_half_load(load):
    """The chart's 3.4 L/h; six hours 20.4 L."""
    assert value("generator-fuel", "fuel", rating="20 kW", load=load) == pytest.approx(3.4)
    six = value("generator-fuel", "litres", rating="20 kW", load=load, hours="6 h")
    assert six == pytest.approx(20.4)


def test_a_generator_between_the_charted_sizes():
    """14 kW at half load, midway from 8 to 20: (1.48 / 8 + 3.4 / 20) / 2 × 14 = 2.485 L/h."""
    assert value("generator-fuel", "fuel", rating="14 kW", load="50 %") == pytest.approx(2.485)


def test_a_generator_beyond_its_chart_or_nearly_idle_is_said():
    """20 kW carried on to no load: 2.3 − 1.1 = 1.2 L/h."""
    found = asked("generator-fuel", rating="20 kW", load="0 W")
    assert found["answers"]["fuel"]["value"] == pytest.approx(1.2)
    assert found["answers"]["per_kwh"]["value"] is None
    assert len(found["cautions"]) == 4
    assert found["cautions"][1] == EXHAUST_CAUTION
    assert asked("generator-fuel", rating="20 kW", load="10 kW")["cautions"] == [
        CAUTION,
        EXHAUST_CAUTION,
    ]


@pytest.mark.parametrize(
    ("given", "where"),
    [
        ({"load": "30 kW"}, "load"),
        ({"load": "-1 kW"}, "load"),
        ({"load": "150 %"}, "load"),
        ({"load": "x"}, "load"),
        ({"load": "1 kW", "hours": "-1 h"}, "hours"),
    ],
)
def test_a_generator_that_cannot_be(given, where):
    assert problems("generator-fuel", rating="20 kW", **given) == [where]
