"""Protection, against law, reprints of standards, and a published bank.

BS 7671, table 43.1, as reprinted: six factors k. ABYC E-11, table V.A, as reprinted: least
interrupting ratings by cold-cranking amperes. W17: a maker's page, six 6 V batteries. 33 CFR
183.455 and 46 CFR 183.380(d), 169.673(g): public law. Stalled pumps: reference rows by copper of
1/58 Ω·mm²/m (IEC 60028) on areas after ASTM B258, of which the motor's 12 V / 14 A is a part.
FAA AC 43.13-1B, tables 11-7 and 11-8: two misprints, named.
"""

import pytest

from engine.batteries.tables import RESISTANCE_100_AH
from engine.conductors.drop import FOOT, loop_drop
from engine.conductors.sizes import read_size
from engine.conductors.tables import ADIABATIC_K
from engine.conductors.withstand import BOAT_CABLE, k_of, limit
from engine.estimate import Estimate
from engine.finding import Verdict
from engine.protection.fault import cold_cable, fault_current, strings
from engine.protection.interrupting import is_large, published_minimum
from engine.protection.motor import judge_stall, motor_limit, stalled_current
from engine.protection.placement import placed, placed_from_charger
from engine.protection.window import limit_by_law, next_size
from engine.units import Amp, AmpHour, Celsius, Metre, Ohm, OhmPerKm, Volt

K_43_1 = [
    (70, 160, 115),
    (70, 140, 103),
    (90, 160, 100),
    (90, 140, 86),
    (60, 200, 141),
    (90, 250, 143),
]
"""BS 7671, table 43.1, copper: initial °C, final °C, k. Typed here a second time."""


def test_table_43_1_as_printed():
    assert sorted(ADIABATIC_K.rows.values()) == sorted(K_43_1)


@pytest.mark.parametrize(("initial", "final", "printed"), K_43_1)
def test_the_formula_reproduces_the_printed_k(initial, final, printed):
    assert k_of(Celsius(initial), Celsius(final)) == pytest.approx(printed, abs=0.5)


def test_k_of_a_separate_conductor_that_starts_cold():
    """IEC 60364-5-54 prints 143 for PVC from 30 to 160 °C."""
    assert k_of(Celsius(30.0), Celsius(160.0)) == pytest.approx(143, abs=0.5)


def test_boat_cable_is_stricter_than_any_printed_pvc_of_its_size():
    """By hand: 226 √ln(394.5 / 339.5) = 87.6, so 10 mm² bear (876)² = 767 000 A²s."""
    assert k_of(*BOAT_CABLE) == pytest.approx(87.6, abs=0.05)
    assert limit(read_size("10 mm2")) == pytest.approx(767_000, rel=0.001)


V_A = [
    (300, 1500, 750),
    (650, 1500, 750),
    (651, 3000, 1500),
    (1100, 3000, 1500),
    (1101, 5000, 2500),
    (2200, 5000, 2500),
]
"""ABYC E-11, table V.A, 12 and 24 V: at 650 or less, 651 to 1100, above: main and branch, A."""


@pytest.mark.parametrize("volts", [12.0, 24.0])
@pytest.mark.parametrize(("cranking", "main", "branch"), V_A)
def test_the_least_interrupting_rating(volts, cranking, main, branch):
    assert published_minimum(Volt(volts), Amp(cranking), main=True) == main
    assert published_minimum(Volt(volts), Amp(cranking), main=False) == branch


@pytest.mark.parametrize(("cranking", "capacity"), [(2201, None), (900, 501), (900, 2000)])
def test_above_its_bounds_the_last_row_is_the_floor(cranking, capacity):
    """Later edition, as quoted: up to 2200 cold-cranking amperes or 500 Ah; then its maker's."""
    hours = None if capacity is None else AmpHour(capacity)
    assert published_minimum(Volt(12.0), Amp(cranking), main=True, capacity=hours) == 5000.0
    assert is_large(Amp(cranking), hours)
    assert not is_large(Amp(900), AmpHour(500))
    assert published_minimum(Volt(12.0), Amp(900), main=True, capacity=AmpHour(500)) == 3000.0


def test_w17_six_batteries_of_six_volts():
    """2400 A each, three strings of two: printed 7200 A."""
    bank = strings(Ohm(6 / 2400), series=2, parallel=3)
    assert fault_current(Volt(12.0), bank, Ohm(0.0), Ohm(0.0)) == pytest.approx(7200, rel=1e-9)


@pytest.mark.parametrize(("chemistry", "volts", "milliohms"), [("flooded", 12.65, 6.0),
                                                               ("lithium", 13.4, 3.0)])  # fmt: skip
def test_short_circuit_of_a_default_battery(chemistry, volts, milliohms):
    """Hand sums, not printed: 12.65 / 0.006 = 2108 A and 13.4 / 0.003 = 4467 A of 100 Ah."""
    _, likely, _ = RESISTANCE_100_AH[chemistry]
    found = fault_current(Volt(volts), Ohm(likely / 1000), Ohm(0.0), Ohm(0.0))
    assert found == pytest.approx(volts / milliohms * 1000, rel=1e-9)
    assert found > 1500


@pytest.mark.parametrize(
    ("metres", "gauge", "amperes"), [(5, "14", 12.77), (10, "16", 10.71), (20, "18", 7.08)]
)
def test_a_stalled_pump_through_its_conductor(metres, gauge, amperes):
    """12 / (12/14 + 2 L R): to 0.02 A."""
    cable = cold_cable(Metre(metres), read_size(f"{gauge} AWG"))
    found = stalled_current(Volt(12.0), Amp(14.0), cable, Ohm(0.0))
    assert found == pytest.approx(amperes, abs=0.02)


def test_a_stalled_pump_against_its_fuse():
    """10 m of 16 AWG on 7.5 A: 1.43 times; 20 m of 18 AWG: the fuse never opens."""
    cables = [
        cold_cable(Metre(10), read_size("16 AWG")),
        cold_cable(Metre(20), read_size("18 AWG")),
    ]
    near, far = [stalled_current(Volt(12.0), Amp(14.0), cable, Ohm(0.0)) for cable in cables]
    assert near / 7.5 == pytest.approx(1.43, abs=0.02)
    assert judge_stall(near, Amp(7.5)).verdict is Verdict.SHOULD
    assert far < 7.5
    assert judge_stall(far, Amp(7.5)).verdict is Verdict.STOP


@pytest.mark.parametrize(("volts", "limit_of_60"), [(12, 90), (49.9, 90), (50, 60), (120, 60)])
def test_33_cfr_183_455_c(volts, limit_of_60):
    """Below 50 V 150 % of table 5, from 50 V 100 %; 10 AWG of 105 °C has 60 A."""
    assert limit_by_law(Amp(60.0), Volt(volts)) == limit_of_60


@pytest.mark.parametrize(
    ("inches", "sheathed", "at_battery", "verdict"),
    [
        (7, False, False, "within limit"),
        (7.1, False, False, "stop"),
        (40, True, False, "within limit"),
        (40.1, True, False, "stop"),
        (72, True, True, "within limit"),
        (72.1, True, True, "stop"),
    ],
)
def test_33_cfr_183_455_b_and_183_460_a(inches, sheathed, at_battery, verdict):
    """7 in; 40 in sheathed the whole way; 72 in for the battery's output conductor."""
    distance = Estimate.exact(inches * 0.0254)
    found = placed(distance, sheathed=sheathed, at_battery=at_battery)
    assert found.verdict == verdict


def test_iso_13297_12_3():
    """Within 1.8 m of the charging source."""
    assert placed_from_charger(Estimate.exact(1.8)).verdict is Verdict.FINE
    assert placed_from_charger(Estimate.exact(1.81)).verdict is Verdict.STOP


@pytest.mark.parametrize(
    ("carries", "above"), [(51, 60), (60, None), (61, 70), (119, 125), (651, None), (1, None)]
)
def test_46_cfr_183_380_d(carries, above):
    """The next larger standard rating, up to 150 %, where none is just what it carries."""
    assert next_size(Amp(carries), "magnetic breaker") == above


def test_46_cfr_169_673_g():
    """A motor below 50 V: 125 % of its full-load current."""
    assert motor_limit(Amp(8.0)) == 10.0


@pytest.mark.parametrize(
    ("feet", "ohms_per_foot", "printed", "right"),
    [
        pytest.param(88, 0.00202, 3.60, 3.555, id="W06, table 11-7"),
        pytest.param(19.5, 0.00126, 0.366, 0.4914, id="W09, table 11-8"),
    ],
)
def test_misprints_of_the_faa(feet, ohms_per_foot, printed, right):
    """20 A in a single wire with the hull as return; by its own ohms the printed drop is wrong."""
    per_km = OhmPerKm(ohms_per_foot / FOOT * 1000)
    drop = loop_drop(Amp(20), Metre(feet * FOOT), per_km) / 2
    assert drop == pytest.approx(right, abs=0.0005)
    assert drop != pytest.approx(printed, abs=0.02)
