"""What runs together, on the made-up boat's dock (invented figures, hand sums).

Charger 680, kettle 1000, dehumidifier, laptop and tool charger 440, water heater 750: 2870 W of
120 V are 23.9 A, 80 % of 30 A. With a microwave of 1050 W 3920 W are 32.7 A. At 108 V a heater
takes 0.9 of its amperes, a charger 1/0.9.
"""

from itertools import count

import pytest

from engine.finding import Verdict
from engine.problem import Problem
from engine.shore.abroad import Plate, abroad, plate_of
from engine.shore.apart import mends, pairs_apart, relief
from engine.shore.appliances import (
    Appliance,
    Nature,
    current_at,
    named,
    nature_of,
    read_appliances,
)
from engine.shore.pass_through import limit_setting, pass_through
from engine.shore.services import service
from engine.shore.together import (
    Branch,
    judged,
    on_branch,
    sentence,
    together,
    total,
    trips_words,
)
from engine.units import Amp, Volt, Watt

DOCK = service("30 A 120 V")
BASE = read_appliances(
    "charger 680 W, kettle 1 000 W, dehumidifier 280 W, laptop 65 W, tool charger 95 W, "
    "water heater 750 W"
)
MICROWAVE = read_appliances("microwave 1050 W")
RATED = Volt(120.0)


def test_together_without_the_microwave_and_with_it():
    base, all_on = together(BASE, DOCK), together(BASE + MICROWAVE, DOCK)
    assert base.current == pytest.approx(23.9, abs=0.05)
    assert base.share == pytest.approx(0.80, abs=0.005)
    assert base.verdict is Verdict.FINE
    assert all_on.current == pytest.approx(32.7, abs=0.05)
    assert all_on.verdict is Verdict.STOP


def test_kettle_and_microwave_are_the_pair():
    pairs = pairs_apart(BASE + MICROWAVE, Amp(30.0), RATED, RATED)
    assert [{one.name, other.name} for one, other in pairs] == [{"kettle", "microwave"}]
    assert pairs_apart(BASE, Amp(30.0), RATED, RATED) == ()


def test_pairs_without_anything_started_by_hand():
    """2000 + 1500 + 100 W are 30 A: over 20 A; without the first or the second it is not."""
    loads = read_appliances("space heater 2000 W; water heater 1500 W; router 100 W")
    ((one, other),) = pairs_apart(loads, Amp(20.0), RATED, RATED)
    assert (one.name, other.name) == ("space heater", "water heater")


def test_one_that_is_too_much_alone_has_no_pair():
    loads = read_appliances("heater 3000 W, router 20 W")
    assert pairs_apart(loads, Amp(20.0), RATED, RATED) == ()
    assert [one.name for one in mends(loads, Amp(20.0), RATED, RATED)] == ["heater"]


def test_a_weak_dock():
    weak = DOCK.weak_volts
    assert weak == pytest.approx(108.0)
    assert service("16 A 230 V").weak_volts == pytest.approx(207.0)
    by_name = {one.name: current_at(one, weak, RATED) * 120 / one.watts for one in BASE}
    assert by_name["kettle"] == pytest.approx(0.9)
    assert by_name["water heater"] == pytest.approx(0.9)
    assert by_name["charger"] == pytest.approx(1 / 0.9)
    assert weak * current_at(BASE[1], weak, RATED) == pytest.approx(810.0)
    assert weak * current_at(BASE[0], weak, RATED) == pytest.approx(680.0)
    found = together(BASE, DOCK, weak)
    assert found.current == pytest.approx(total(BASE, weak, RATED))
    assert found.current == pytest.approx((1750 * 0.9 + 1120 / 0.9) / 120)


def test_the_sentence():
    asked = read_appliances("charger 680 W, kettle 1000 W, heater 1190 W")
    assert sentence(asked, DOCK, MICROWAVE) == (
        "Shore power carries the charger, kettle and heater together (80 % of 30 A); add the "
        "microwave and it trips, late or not at all at 109 %: plug and cord heat first."
    )
    assert sentence(asked, DOCK).endswith("(80 % of 30 A).")
    assert "it trips, late or not at all at 109 %" in sentence(asked + MICROWAVE, DOCK)


def test_a_breaker_far_over_its_rating_opens_within_the_hour():
    """UL 489 from 1.35 times, IEC 60898 from 1.45 times, both as remembered: 40.5 and 23.2 A."""
    assert trips_words(Amp(40.4), DOCK).endswith("plug and cord heat first")
    assert trips_words(Amp(40.6), DOCK) == "it trips"
    abroad_dock = service("16 A 230 V")
    assert trips_words(Amp(23.1), abroad_dock).endswith("plug and cord heat first")
    assert trips_words(Amp(23.3), abroad_dock) == "it trips"


def test_what_to_leave_off_and_for_how_long():
    """3920 W are 32.7 A. Less 1050 W: 23.9 A, 80 %; less 1000 W: 24.3 A, 81 %; less 280 W: over."""
    assert relief(BASE + MICROWAVE, Amp(30.0), RATED, RATED) == (
        "Leave off the microwave; or, for minutes only, the kettle, water heater or charger."
    )
    assert relief(BASE, Amp(30.0), RATED, RATED) == ""
    two = read_appliances("heater 3000 W, oven 3000 W, kettle 3000 W")
    assert relief(two, Amp(20.0), RATED, RATED) == "Leave off more than one."


def test_a_sentence_between_80_and_100_percent():
    """3240 W are 27 A: 90 %."""
    text = sentence(read_appliances("heater 3240 W"), DOCK)
    assert text == ("Shore power carries the heater (90 % of 30 A), for minutes rather than hours.")


def test_a_branch_with_two_appliances():
    loads = (
        named("kettle", Watt(1000.0), "galley"),
        named("toaster", Watt(900.0), "galley"),
        named("laptop", Watt(65.0), "saloon"),
    )
    found = on_branch(Branch("galley", Amp(15.0)), loads, RATED, RATED)
    assert found.current == pytest.approx(1900 / 120)
    assert found.verdict is Verdict.STOP


def test_the_variant_for_abroad_names_four_that_may_not_be_used():
    """Charger 90 to 265 V, 47 to 63 Hz; the others are made for 120 V 60 Hz."""
    there, home = service("16 A 230 V"), plate_of(DOCK)
    wide = Plate((Volt(90.0), Volt(265.0)), (47.0, 63.0))
    plates = {"charger": wide, "laptop": wide, "tool charger": None}
    found = {
        one.name: abroad(one, plates.get(one.name, home), there).verdict for one in BASE + MICROWAVE
    }
    assert {name for name, verdict in found.items() if verdict is Verdict.STOP} == {
        "kettle",
        "water heater",
        "dehumidifier",
        "microwave",
    }
    assert found["charger"] is found["laptop"] is Verdict.FINE
    assert found["tool charger"] is Verdict.NOT_KNOWN


@pytest.mark.parametrize(
    ("nature", "hertz", "there", "verdict", "part"),
    [
        (Nature.RESISTIVE, 60.0, "16 A 230 V", "stop", "times its watts"),
        (Nature.MOTOR, 60.0, "16 A 230 V", "stop", "saturates"),
        (Nature.ELECTRONIC, 60.0, "16 A 230 V", "stop", "at once"),
        (Nature.RESISTIVE, 50.0, "30 A 120 V", "stop", "hardly warm"),
        (Nature.MOTOR, 50.0, "30 A 120 V", "stop", "stall"),
        (Nature.CONSTANT_POWER, 50.0, "30 A 120 V", "stop", "does not start"),
    ],
)
def test_other_volts(nature, hertz, there, verdict, part):
    home = service("30 A 120 V" if hertz == 60 else "16 A 230 V")
    found = abroad(Appliance("box", Watt(100.0), nature), plate_of(home), service(there))
    assert found.verdict.value == verdict
    assert part in found.words


@pytest.mark.parametrize(
    ("nature", "hertz", "verdict", "part"),
    [
        (Nature.MOTOR, 60.0, "stop", "1.2 times the flux"),
        (Nature.MOTOR, 40.0, "should", "1.25 times as fast"),
        (Nature.RESISTIVE, 60.0, "within limit", "do not matter"),
    ],
)
def test_other_hertz_at_the_same_volts(nature, hertz, verdict, part):
    plate = Plate((Volt(220.0), Volt(240.0)), (hertz, hertz))
    found = abroad(Appliance("box", Watt(100.0), nature), plate, service("16 A 230 V"))
    assert found.verdict.value == verdict
    assert part in found.words


def test_a_limit_in_an_inverter_charger():
    """12 A × 120 V = 1440 W: 1000 W pass, 440 of the 680 charge; 1800 W need 360 from the bank."""
    found = pass_through(Amp(12.0), RATED, Watt(1000.0), Watt(680.0))
    assert (found.shore, found.charging, found.from_bank) == pytest.approx((12.0, 440.0, 0.0))
    found = pass_through(Amp(12.0), RATED, Watt(1800.0), Watt(680.0))
    assert (found.shore, found.charging, found.from_bank) == pytest.approx((12.0, 0.0, 360.0))
    assert limit_setting(DOCK, Amp(18.25)) == pytest.approx(5.75)
    assert limit_setting(DOCK, Amp(24.0)) is None


@pytest.mark.parametrize(
    ("name", "nature"),
    [
        ("Fan heater", Nature.RESISTIVE),
        ("Battery charger 40 A", Nature.CONSTANT_POWER),
        ("Phone charger", Nature.ELECTRONIC),
        ("Air conditioner", Nature.MOTOR),
        ("Microwave", Nature.TRANSFORMER),
        ("Thing", None),
    ],
)
def test_a_name_tells_the_class(name, nature):
    assert nature_of(name) is nature


def test_how_a_list_of_loads_is_read():
    found = read_appliances("kettle 1,5 kW,charger: 680W; lamp 2 40 W\nFan=30")
    assert [(one.name, one.watts) for one in found] == [
        ("kettle", 1500.0),
        ("charger", 680.0),
        ("lamp 2", 40.0),
        ("Fan", 30.0),
    ]
    assert [one.short for one in found] == [True, False, False, False]


@pytest.mark.parametrize(
    "text",
    [
        *("", " , ", "kettle", "1000 W", "kettle 5 A", "kettle 0 W", "kettle 1e9 W"),
        *("kettle ?", "k" * 500, "kettle 1000 W, " * 101),
    ],
    ids=count(),
)
def test_a_list_that_cannot_be_read(text):
    with pytest.raises(Problem) as found:
        read_appliances(text)
    assert found.value.what
    assert found.value.mend


@pytest.mark.parametrize(
    "bad",
    [
        lambda: Branch("galley", Amp(-15.0)),
        lambda: judged(Amp(3.0), Amp(0.0)),
        lambda: mends(BASE, Amp(-1.0), RATED, RATED),
        lambda: together(BASE, DOCK, Volt(0.0)),
        lambda: pass_through(Amp(0.0), RATED, Watt(0.0), Watt(0.0)),
        lambda: pass_through(Amp(5.0), RATED, Watt(-1.0), Watt(0.0)),
        lambda: Plate((Volt(240.0), Volt(100.0)), (50.0, 60.0)),
        lambda: Plate((Volt(100.0), Volt(240.0)), (0.0, 60.0)),
    ],
    ids=count(),
)
def test_what_cannot_be(bad):
    with pytest.raises(Problem) as found:
        bad()
    assert found.value.where
    assert found.value.mend
