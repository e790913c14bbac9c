"""Charging: time and acceptance against rows marched elsewhere at one second, SciPy, and a PyBaMM
cell; the fuel of diesel sets against a public chart; alternator and charger against hand sums.
"""

from itertools import pairwise

import pytest
from scipy.integrate import quad, solve_ivp

from engine.batteries.chemistry import CHEMISTRIES
from engine.charging.acceptance import acceptance, charge_for, time_to_charge
from engine.charging.alternator import Alternator, engine_power, output, share_at
from engine.charging.generator import Generator, engine_fuel, generator_fuel
from engine.charging.intake import Intake, intake_of
from engine.charging.mains import Charger, ac_current, ac_watts
from engine.charging.water import Rotor, drag, power
from engine.units import (
    Amp,
    AmpHour,
    Celsius,
    Hour,
    Metre,
    MetrePerSecond,
    PerHour,
    Share,
    Volt,
    Watt,
)

FLOODED, AGM, GEL, LITHIUM = (0.25, 0.6), (0.4, 1.0), (0.3, 0.7), (0.5, 10.0)
MARCHED = [
    (FLOODED, 0.5, 0.8, 40, 3.0),
    (FLOODED, 0.5, 0.9, 40, 4.1847),
    (FLOODED, 0.5, 0.95, 40, 5.34),
    (FLOODED, 0.5, 0.95, 80, 3.9952),
    (FLOODED, 0.5, 0.95, 150, 3.8671),
    (FLOODED, 0.5, 0.98, 150, 5.3943),
    (FLOODED, 0.8, 0.95, 80, 2.3105),
    (FLOODED, 0.2, 0.9, 150, 3.9119),
    (AGM, 0.5, 0.8, 40, 3.0),
    (AGM, 0.5, 0.8, 150, 0.9619),
    (AGM, 0.5, 0.9, 150, 1.6551),
    (AGM, 0.5, 0.95, 40, 4.6931),
    (AGM, 0.5, 0.98, 40, 5.6094),
    (AGM, 0.8, 0.95, 80, 1.3863),
    (AGM, 0.2, 0.9, 40, 7.0),
    (GEL, 0.5, 0.8, 80, 1.581),
    (GEL, 0.5, 0.9, 40, 4.081),
    (GEL, 0.5, 0.98, 40, 6.3802),
    (GEL, 0.8, 0.95, 80, 1.9804),
    (GEL, 0.2, 0.9, 150, 3.3171),
    (LITHIUM, 0.5, 0.8, 150, 0.8),
    (LITHIUM, 0.5, 0.95, 80, 2.25),
    (LITHIUM, 0.5, 0.98, 150, 1.2962),
    (LITHIUM, 0.2, 0.9, 40, 7.0),
]
"""(limit, taper), from, to, source in A, hours; 400 Ah. A march at 1 s is 0.0004 h off."""


def bank(kind, efficiency=1.0):
    return Intake(AmpHour(400.0), PerHour(kind[0]), PerHour(kind[1]), Share(efficiency))


@pytest.mark.parametrize("row", MARCHED)
def test_charge_time_as_marched(row):
    kind, start, end, source, hours = row
    found = time_to_charge(bank(kind), Share(start), Share(end), Amp(source))
    assert found == pytest.approx(hours, abs=0.001)


@pytest.mark.parametrize("kind", [FLOODED, AGM, GEL, LITHIUM])
@pytest.mark.parametrize(("start", "end", "source"), [(0.1, 0.99, 30), (0.6, 0.97, 500)])
@pytest.mark.parametrize("efficiency", [1.0, 0.88])
def test_charge_time_is_the_integral_of_what_is_taken(kind, start, end, source, efficiency):
    """C / (η × least of source, limit and taper), over the charge, by SciPy."""
    limit, taper = kind

    def slowness(charge):
        taken = min(source, limit * 400, taper * 400 * (1 - charge))
        return 400 / (efficiency * taken)

    line = 1 - min(source, limit * 400) / (taper * 400)
    parts = sorted({start, end, min(max(line, start), end)})
    summed = sum(
        quad(slowness, low, high, epsabs=1e-12, epsrel=1e-12)[0] for low, high in pairwise(parts)
    )
    found = time_to_charge(bank(kind, efficiency), Share(start), Share(end), Amp(source))
    assert found == pytest.approx(summed, rel=1e-9)


@pytest.mark.parametrize(("start", "hours"), [(0.5, 0.25), (0.6, 1.5), (0.9, 0.25)])
def test_a_step_is_exact_within_itself(start, hours):
    """80 A into 400 Ah at 88 %, by SciPy from the taper line on; steady before it."""
    line = 1 - 80 / 240
    steady = max(min((line - start) * 400 / (0.88 * 80), hours), 0.0)
    begun = start + 0.88 * 80 * steady / 400

    def slope(_time, held):
        return [0.88 * 0.6 * (1 - held[0])]

    found = charge_for(bank(FLOODED, 0.88), Share(start), Amp(80.0), Hour(hours))
    expected = begun
    if hours > steady:
        solved = solve_ivp(slope, (0, hours - steady), [begun], rtol=1e-12, atol=1e-14)
        expected = solved.y[0, -1]
    assert found.charge == pytest.approx(expected, rel=1e-9)
    assert found.taken == pytest.approx((expected - start) * 400 / 0.88, rel=1e-7)


PYBAMM_CHARGE = {
    0.0: 0.5, 0.5169: 0.5, 0.9944: 0.4971, 0.9945: 0.4764, 0.9955: 0.3669, 0.9965: 0.2815,
    0.9975: 0.1856, 0.9984: 0.1438, 0.999: 0.0988, 0.9996: 0.077,
}  # fmt: skip
"""Share returned and current per capacity of a cell charged at half its capacity to 3.6 V."""


@pytest.mark.parametrize(("charge", "current"), PYBAMM_CHARGE.items())
def test_lithium_is_never_promised_more_than_a_cell_model_takes(charge, current):
    found = acceptance(
        intake_of(CHEMISTRIES["lithium"], AmpHour(1.0), Celsius(25.0)), Share(charge), Amp(0.5)
    )
    assert found <= current * (1 + 1e-9)
    assert charge > 0.95 or found == pytest.approx(current)


def test_what_the_last_of_a_lead_bank_costs():
    """400 Ah flooded, 80 A: 1.68 h for 50 to 80 %, then 1.16, 1.16 and 1.53 h."""
    ends = [(0.5, 0.8), (0.8, 0.9), (0.9, 0.95), (0.95, 0.98)]
    found = [time_to_charge(bank(FLOODED), Share(a), Share(b), Amp(80.0)) for a, b in ends]
    assert found == pytest.approx([1.68, 1.16, 1.16, 1.53], abs=0.005)


CHART_20_KW = {0.25: 2.3, 0.5: 3.4, 0.75: 4.9, 1.0: 6.1}
CHART_8_KW = {0.5: 1.48, 0.75: 2.05, 1.0: 2.61}
"""A public chart of diesel sets: share of the load, L/h."""


@pytest.mark.parametrize(
    ("rating", "share", "litres"),
    [(20000, *row) for row in CHART_20_KW.items()] + [(8000, *row) for row in CHART_8_KW.items()],
)
def test_the_fuel_of_small_sets_lies_above_the_chart_s(rating, share, litres):
    """The typical line is for small, older sets: never below the chart, at most 30 % above."""
    found = generator_fuel(Generator(Watt(rating)), Watt(rating * share))
    assert litres <= found <= 1.3 * litres


@pytest.mark.parametrize(("share", "litres"), CHART_20_KW.items())
def test_the_chart_is_a_straight_line(share, litres):
    """Least squares through its four points: 0.95 L/h standing, 5.16 L/h at full load."""
    generator = Generator(Watt(20000.0), 0.95 / 20, 5.16 / 20)
    assert generator_fuel(generator, Watt(20000 * share)) == pytest.approx(litres, abs=0.15)


def test_the_fuel_of_an_engine_that_only_charges():
    """1.0 L/h idling and 0.6 L for each kWh: 50 A at 14 V are 0.7 kW, so 1.42 L/h."""
    found = engine_fuel(Watt(50.0 * 14.0))
    assert [found.low, found.likely, found.high] == pytest.approx([0.78, 1.42, 2.06])


def test_an_alternator_at_the_points_of_its_standard():
    """ISO 8854 as used: full at 6000, a third or so at 1800, and nothing below its cut-in."""
    assert share_at(6000.0) == pytest.approx(1.0, abs=0.05)
    assert 0.3 < share_at(1800.0) < 0.5
    assert share_at(1100.0) == share_at(0.0) == 0.0


def test_an_alternator_hot_and_set_by_hand():
    """90 A at 2.2 × 1800 rpm: 1 − exp(−2860/1500) = 0.8514, × 0.75 hot: 57.5 A, set to 50."""
    free, held = Alternator(Amp(90.0), 2.2), Alternator(Amp(90.0), 2.2, limit=Amp(50.0))
    found = output(free, 1800.0)
    assert found.current == pytest.approx(57.47, abs=0.01)
    assert [line.name for line in found.derates] == ["speed", "heat"]
    assert output(held, 1800.0).current == 50.0
    assert output(held, 1800.0).derates[-1].factor == pytest.approx(50 / 57.47, abs=0.0001)
    assert engine_power(Amp(50.0), Volt(14.2)) == pytest.approx(710 / 0.5225)


def test_a_charger_at_the_dock_by_hand():
    """40 A × 14.4 V / 0.85 = 678 W: 5.65 A at 120 V, 8.07 A where the power factor is 0.7."""
    plain = Charger(Amp(40.0), power_factor=Share(0.7))
    assert ac_watts(plain, Amp(40.0), Volt(14.4)) == pytest.approx(677.6, abs=0.1)
    for charger, amperes in ((Charger(Amp(40.0)), 5.65), (plain, 8.07)):
        found = ac_current(charger, Amp(40.0), Volt(14.4), Volt(120.0))
        assert found == pytest.approx(amperes, abs=0.005)


@pytest.mark.parametrize(("knots", "watts"), [(4, 61), (5, 118), (6, 205), (7, 325)])
def test_a_towed_rotor(knots, watts):
    """½ × 1025 × π/4 × 0.24² × v³ × 0.30, worked elsewhere; drag 102 N at 5 kn, 147 N at 6 kn."""
    rotor, speed = Rotor(Metre(0.24)), MetrePerSecond(knots * 1852 / 3600)
    assert power(rotor, speed) == pytest.approx(watts, abs=0.5)
    assert drag(rotor, speed) == pytest.approx(watts / (0.45 * speed), rel=0.01)
    if knots in {5, 6}:
        assert drag(rotor, speed) == pytest.approx({5: 102, 6: 147}[knots], abs=0.5)
