"""Shore power against what is published.

Cord drops: a reference sheet worked from K = 10.75, NFPA 70 (NEC) chapter 9 table 8 (coated, at
75 °C) and IEC 60228 table 3 class 5 (plain, 0.00393 per degree at 20 °C); 50 ft or 25 m one way.
Code letters: NFPA 70 (NEC) table 430.7(B). Trip time: UL 943 class A, (20 / mA) ^ 1.43 s, no trip
below 4 mA. Sag: 2000 W from 12.4 V behind 6 mΩ is 176.3 A at 11.34 V; a maker's page has 10 W at
12 V behind 12 m of 40 mV per ampere and metre. Fuel: a public diesel generator chart, litres an
hour at quarter loads. Green wire: 0.35 V by 0.5 Ω, zinc of 780 Ah/kg (MIL-A-18001K). Breakers:
ABYC E-11 table V.B as reprinted. Main within 10 ft (3 m), leakage 30 mA and 100 ms, exempt behind
a transformer within 10 ft (3 m): ABYC E-11.11.1 as reprinted. Polarity: ISO 13297:2020, 6.10.
"""

from itertools import pairwise
from math import sqrt

import numpy as np
import pytest

from engine.conductors.drop import FOOT, rule_drop
from engine.conductors.sizes import read_size
from engine.conductors.tables import RESISTANCE_CLASS_5
from engine.finding import Verdict
from engine.shore.cord import Cord, cord_drop, cord_resistance
from engine.shore.generator import fuel
from engine.shore.isolation import blocks, green_wire
from engine.shore.leakage import Guard, judge_main_leakage, longest_trip, may_open
from engine.shore.legs import Legs, leg_drops
from engine.shore.panel import NEAR, Main, interrupts_needed, judge_interrupting, judge_main
from engine.shore.services import SERVICES, service
from engine.shore.starting import horsepower_of, line_current, locked_rotor
from engine.shore.tables import CODE_LETTERS, RESISTANCE_PLAIN
from engine.shore.transfer import polarity_needed
from engine.sums import SUMS
from engine.sums.sum import answered
from engine.units import Amp, Celsius, Metre, OhmPerKm, Volt, Watt

FIFTY_FEET = 50 * FOOT

CORDS = [
    (120, 30, FIFTY_FEET, "10 AWG", 75, 3.87, 3.2),
    (120, 50, FIFTY_FEET, "6 AWG", 75, 2.55, 2.1),
    (230, 16, 25.0, "2.5 mm2", 20, 6.38, 2.8),
    (230, 16, 25.0, "2.5 mm2", 70, 7.64, 3.3),
    (230, 32, 25.0, "6 mm2", 20, 5.28, 2.3),
    (230, 32, 25.0, "6 mm2", 70, 6.32, 2.7),
]


@pytest.mark.parametrize(("volts", "amps", "run", "size", "warm", "drop", "percent"), CORDS)
def test_cord_drops_as_worked(volts, amps, run, size, warm, drop, percent):  # noqa: PLR0913, PLR0917
    cord = Cord(Metre(run), read_size(size), Celsius(warm))
    lost = cord_drop(Amp(amps), cord)
    assert lost == pytest.approx(drop, abs=0.006)
    assert lost / volts * 100 == pytest.approx(percent, abs=0.05)


@pytest.mark.parametrize(
    ("volts", "amps", "size", "drop", "percent"),
    [(120, 30, "10 AWG", 3.11, 2.6), (120, 50, "6 AWG", 2.05, 1.7)],
)
def test_cord_drops_by_the_compliance_rule(volts, amps, size, drop, percent):
    lost = rule_drop(Amp(amps), Metre(FIFTY_FEET), read_size(size))
    assert lost == pytest.approx(drop, abs=0.005)
    assert lost / volts * 100 == pytest.approx(percent, abs=0.05)


@pytest.mark.parametrize("name", RESISTANCE_PLAIN.rows)
def test_plain_class_5_is_a_little_more_than_solid_copper_and_less_than_tinned(name):
    """1/58 Ω·mm²/m; the lay of the strands adds a tenth or so, tin another 2 to 4 %."""
    plain = cord_resistance(read_size(f"{name} mm2"), Celsius(20.0))
    assert 1.08 < plain / (1000 / 58 / float(name)) < 1.18
    assert 1.01 < RESISTANCE_CLASS_5[name] / plain < 1.04


@pytest.mark.parametrize(
    ("letter", "least", "most"),
    [
        ("A", 0.0, 3.14),
        ("G", 5.6, 6.29),
        ("H", 6.3, 7.09),
        ("J", 7.1, 7.99),
        ("K", 8.0, 8.99),
        ("L", 9.0, 9.99),
        ("M", 10.0, 11.19),
    ],
)
def test_code_letters_as_printed(letter, least, most):
    found = locked_rotor(1.0, letter)
    assert (found.least, found.most) == pytest.approx((least, most))


def test_code_letters_leave_no_gap_and_skip_i_o_and_q():
    assert "".join(CODE_LETTERS.rows) == "ABCDEFGHJKLMNPRSTUV"
    for (_, *most), (least, *_) in pairwise(CODE_LETTERS.rows.values()):
        assert least == pytest.approx(most[0] + 0.01)


def test_a_half_horsepower_motor_of_code_l_by_hand():
    """746 / (0.6 × 0.65) = 1.9 kVA/hp running; code L is about five times that."""
    running = 0.5 * 745.7 / (0.6 * 0.65) / 1000
    still = locked_rotor(horsepower_of(Watt(0.5 * 745.7)), "l")
    assert still.most is not None
    assert (still.least + still.most) / 2 / running == pytest.approx(4.9, abs=0.1)
    assert line_current(still.most, Volt(120.0), 1) == pytest.approx(4995 / 120, rel=1e-3)


def test_three_phases_carry_it_on_root_three():
    """10 hp of code G at 460 V: 62.9 kVA, 62 900 / (460 √3) = 78.9 A."""
    found = locked_rotor(10.0, "G").most
    assert found == pytest.approx(62.9)
    assert line_current(62.9, Volt(460.0), 3) == pytest.approx(62900 / 460 / sqrt(3))
    assert line_current(62.9, Volt(460.0), 3) == pytest.approx(78.9, abs=0.05)


@pytest.mark.parametrize(("milliamps", "seconds"), [(6, 5.5939), (20, 1.0), (264, 0.025)])
def test_trip_time_as_printed(milliamps, seconds):
    assert longest_trip(Amp(milliamps / 1000)) == pytest.approx(seconds, abs=0.0005)


@pytest.mark.parametrize(("milliamps", "may"), [(3.9, False), (4.0, True), (5.0, True)])
def test_below_6_milliamps_it_need_not_open_and_below_4_it_must_not(milliamps, may):
    assert longest_trip(Amp(milliamps / 1000)) is None
    assert may_open(Amp(milliamps / 1000)) is may


SAGS = [
    ("2000 W", "12.4 V", "6 mohm", 176.3, 11.34),
    ("10 W", "12 V", "0.48 ohm", 0.8631, 12 - 0.4143),
]


@pytest.mark.parametrize(("power", "volts", "ohms", "amps", "left"), SAGS)
def test_constant_power_on_a_sagging_supply(power, volts, ohms, amps, left):
    found = answered(SUMS["sag"], {"power": power, "open_volts": volts, "resistance": ohms})
    answers = found["answers"]
    assert answers["current"]["value"] == pytest.approx(amps, rel=0.0003)
    assert answers["volts"]["value"] == pytest.approx(left, abs=0.005)


@pytest.mark.parametrize("share", [0.05, 0.5, 0.95])
def test_a_sag_against_a_library_s_roots(share):
    """V² − E V + P R = 0 has two roots; the load settles at the upper. Most power is at E / 2."""
    volts, ohms = 118.0, 0.4
    power = share * (volts / 2) ** 2 / ohms
    asked = {"power": f"{power} W", "open_volts": "118", "resistance": "0.4"}
    found = answered(SUMS["sag"], asked)["answers"]
    assert found["collapse_power"]["value"] == pytest.approx((volts / 2) ** 2 / ohms)
    upper = max(np.roots([1.0, -volts, power * ohms]).real)
    assert found["volts"]["value"] == pytest.approx(upper, rel=1e-9)
    assert found["current"]["value"] == pytest.approx(power / upper, rel=1e-9)


@pytest.mark.parametrize(
    ("rating", "share", "litres", "per_kwh"),
    [
        (20, 0.25, 2.3, 0.46),
        (20, 0.50, 3.4, 0.34),
        (20, 0.75, 4.9, 0.327),
        (20, 1.00, 6.1, 0.305),
        (8, 0.50, 1.48, 0.37),
        (8, 0.75, 2.05, 0.342),
        (8, 1.00, 2.61, 0.326),
    ],
)
def test_fuel_chart_as_printed(rating, share, litres, per_kwh):
    burnt = fuel(Watt(rating * 1000.0), Watt(rating * share * 1000))
    assert burnt == pytest.approx(litres)
    assert burnt / (rating * share) == pytest.approx(per_kwh, abs=0.0005)


def test_the_green_wire():
    """0.7 A; 0.7 × 8760 / 780 = 7.9 kg of zinc a year."""
    found = green_wire(Volt(0.35), 0.5)  # type: ignore[arg-type]
    assert found.current == pytest.approx(0.7)
    assert found.zinc == pytest.approx(7.9, abs=0.05)


def test_an_isolator_blocks_up_to_1_2_to_1_4_volts_and_not_magnesium_with_stainless():
    assert [blocks(Volt(volts)) for volts in (1.2, 1.3, 1.6)] == [True, None, False]


@pytest.mark.parametrize(
    ("name", "branch", "main"),
    [("30 A 120 V", 3000, 3000), ("50 A 120 V", 3000, 3000), ("50 A 125/250 V", 3000, 5000)],
)
def test_interrupting_ratings_as_printed(name, branch, main):
    for place, least in ((False, branch), (True, main)):
        found = interrupts_needed(service(name), main=place)
        assert found is not None
        assert found[0] == least
        assert not found[1].typical
        assert judge_interrupting(Amp(least), service(name), main=place) is None
        under = judge_interrupting(Amp(least - 1.0), service(name), main=place)
        assert under is not None
        assert under.verdict is Verdict.STOP


def test_what_is_remembered_is_said_to_be_typical_and_what_is_not_known_cannot_be_said():
    large = interrupts_needed(service("100 A 125/250 V"), main=True)
    assert large is not None
    assert large[1].typical
    found = judge_interrupting(Amp(6000.0), service("16 A 230 V"), main=True)
    assert found is not None
    assert found.verdict is Verdict.CANNOT_SAY


def test_the_main_is_within_ten_feet_of_the_inlet():
    assert pytest.approx(3.048) == NEAR
    at = [judge_main(Main(Amp(30.0), Metre(m)), service("30 A 120 V")) for m in (0.5, 3.048, 3.1)]
    assert [one.verdict for found in at for one in found] == [Verdict.SHOULD, Verdict.STOP]
    far = judge_main(Main(Amp(30.0), Metre(6.0), further_protected=True), service("30 A 120 V"))
    assert far == ()


@pytest.mark.parametrize(
    ("guard", "transformer", "verdict"),
    [
        (Guard(Amp(0.030), 0.100), None, None),
        (Guard(Amp(0.030), 0.200), None, "stop"),
        (Guard(Amp(0.100), 0.100), None, "stop"),
        (Guard(), None, "stop"),
        (Guard(), 3.0, None),
        (Guard(), 3.1, "stop"),
        (Guard(Amp(0.030)), None, "not known"),
    ],
)
def test_leakage_at_the_main_is_30_milliamps_and_100_milliseconds(guard, transformer, verdict):
    found = judge_main_leakage(guard, transformer, service("30 A 120 V"))
    assert (found.verdict.value if found else None) == verdict


@pytest.mark.parametrize(
    ("double", "transformer", "needed"),
    [(False, False, True), (True, False, False), (False, True, False)],
)
def test_when_polarity_is_to_be_shown(double, transformer, needed):
    assert polarity_needed(double_pole_branches=double, transformer=transformer) is needed


@pytest.mark.parametrize(("one", "two"), [(50.0, 50.0), (50.0, 0.0), (13.0, 41.0)])
@pytest.mark.parametrize("one_phase", [False, True])
def test_legs_and_neutral_against_a_network_solver(one, two, one_phase):
    """Three equal conductors, loads as current sinks, solved node by node with complex volts."""
    run, ohms = 15.0, 1.7
    source = np.array([120.0, 120.0 if one_phase else -120.0], complex)
    drawn = np.array([one, two]) * source / 120.0
    conductance = np.eye(3) / (run / 1000 * ohms)
    held = np.array([*source, 0.0])
    nodes = np.linalg.solve(conductance, conductance @ held + np.array([*-drawn, drawn.sum()]))
    left = np.abs(nodes[:2] - nodes[2])
    lost = leg_drops(Legs(Amp(one), Amp(two), one_phase), Metre(run), OhmPerKm(ohms))
    assert 120.0 - left == pytest.approx(lost, abs=1e-9)
    neutral = abs(nodes[2]) / (run / 1000 * ohms)
    assert Legs(Amp(one), Amp(two), one_phase).neutral == pytest.approx(neutral)


def test_the_services_of_the_trade():
    ratings = {one.volts: set() for one in SERVICES.values()}  # type: ignore[var-annotated]
    for one in SERVICES.values():
        ratings[one.volts].add((one.rating, one.legs, one.hertz))
    assert ratings == {
        120.0: {(30.0, 1, 60), (50.0, 1, 60), (50.0, 2, 60), (100.0, 2, 60)},
        230.0: {(16.0, 1, 50), (32.0, 1, 50), (63.0, 1, 50)},
    }
