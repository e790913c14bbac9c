"""Inverter curves, sag and runtime against rows computed elsewhere from the stated formulas.

Curve rows: DC watts and efficiency per unit of rating, to five places. Sag: 2000 W from 12.4 V
behind 6 mΩ (176.3 A, 11.34 V) and from 12.1 V behind 10 mΩ (197.5 A; its 10.13 V come from that
rounded current). W21: 1000 W, efficiency 0.88, a steady 12.0 V, 400 Ah, exponent 1.2, half used.
Efficiencies at 10, 50 and 100 % of rating are those the presets state.
"""

import pytest

from engine.inverter.efficiency import Curve, best_load, dc_watts, efficiency, preset
from engine.inverter.runtime import Job, Store, run
from engine.inverter.sag import operating_point
from engine.units import AmpHour, Hour, Ohm, Share, Volt, Watt

ROWS = [
    ("good", 0.01, 0.01625, 0.61523),
    ("good", 0.02, 0.02652, 0.75426),
    ("good", 0.05, 0.05735, 0.87184),
    ("good", 0.5, 0.5285, 0.94607),
    ("typical", 0.01, 0.02041, 0.49005),
    ("typical", 0.05, 0.06215, 0.80451),
    ("typical", 0.1, 0.1146, 0.8726),
    ("typical", 0.2, 0.2204, 0.90744),
    ("basic", 0.01, 0.03051, 0.32776),
    ("basic", 0.1, 0.126, 0.79365),
    ("basic", 0.3, 0.344, 0.87209),
    ("basic", 0.5, 0.57, 0.87719),
    ("basic", 1.0, 1.17, 0.8547),
]
STATED = {
    "good": (0.918, 0.946, 0.934),
    "typical": (0.873, 0.917, 0.901),
    "basic": (0.794, 0.877, 0.855),
}


@pytest.mark.parametrize(("kind", "part", "taken", "share"), ROWS)
def test_curve_as_printed(kind, part, taken, share):
    curve = preset(kind, Watt(2000.0))
    assert dc_watts(curve, Watt(2000 * part)) / 2000 == pytest.approx(taken, abs=0.0000051)
    assert efficiency(curve, Watt(2000 * part)) == pytest.approx(share, abs=0.0000051)


@pytest.mark.parametrize(("kind", "shares"), STATED.items())
def test_presets_do_what_they_state(kind, shares):
    curve = preset(kind, Watt(1500.0))
    found = [efficiency(curve, Watt(1500 * part)) for part in (0.1, 0.5, 1.0)]
    assert found == pytest.approx(shares, abs=0.0005)


@pytest.mark.parametrize("kind", STATED)
def test_best_load_and_its_efficiency_by_the_closed_form(kind):
    """At √(fixed / square) of the rating, 1 / (1 + v + 2 √(p0 r))."""
    curve = preset(kind, Watt(1000.0))
    peak = 1 / (1 + curve.linear + 2 * (curve.fixed * curve.square) ** 0.5)
    assert efficiency(curve, best_load(curve)) == pytest.approx(peak, rel=1e-12)


@pytest.mark.parametrize(
    ("open_volts", "ohms", "amperes", "volts"),
    [(12.4, 0.006, 176.3, 11.34), (12.1, 0.010, 197.5, 12.1 - 0.010 * 197.5)],
)
def test_2000_watts_on_a_sagging_bank(open_volts, ohms, amperes, volts):
    point = operating_point(Volt(open_volts), Ohm(ohms), Watt(2000.0))
    assert point is not None
    assert point.current == pytest.approx(amperes, abs=0.05)
    assert point.volts == pytest.approx(volts, abs=0.005)


def steady(volts: float = 12.0, ohms: float = 0.0) -> Store:
    return Store(
        capacity=AmpHour(400.0),
        rated_hours=Hour(20.0),
        exponent=1.2,
        low_rate_gain=1.15,
        nominal_volts=Volt(12.0),
        open_volts=lambda _: Volt(volts),
        resistance=lambda _: Ohm(ohms),
    )


def test_w21_runtime_with_steady_volts_and_efficiency():
    """94.70 A and 1.548 h; 200 Ah at that current would be 2.11 h, and lossless it is 2.4 h."""
    curve = Curve(Watt(2000.0), 0.0, 1 / 0.88 - 1, 0.0)
    job = Job(Watt(1000.0), Share(1.0), Share(0.5), Ohm(0.0), Volt(10.5))
    found = run(steady(), curve, job)
    assert found.first is not None
    assert found.first.current == pytest.approx(94.70, abs=0.005)
    assert found.time == pytest.approx(1.548, abs=0.0005)
    assert 200 / found.first.current == pytest.approx(2.11, abs=0.005)
    assert found.lossless_time == pytest.approx(200 * 12 / 1000)


def test_a_deep_sag_trips_a_common_cut_off():
    """2000 W from 12.1 V behind 10 mΩ: 10.13 V is under 10.5 V."""
    lossless = Curve(Watt(2000.0), 0.0, 0.0, 0.0)
    job = Job(Watt(2000.0), Share(1.0), Share(0.5), Ohm(0.004), Volt(10.5))
    found = run(steady(12.1, 0.006), lossless, job)
    assert not found.time
    assert found.tripped_at == 1.0
    assert not found.no_point
