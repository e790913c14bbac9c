"""Engine hours that last, and how lead takes charge through whole days.

Times to charge are the closed form of Mas' law (a steady current to the taper line, then an
exponential), worked by hand for 440 Ah that 50 A charge while 6 A of loads run: 44 A; flooded lead
keeps 0.88 and tapers at 0.6 A for each ampere-hour it lacks, AGM 0.93 and 1.0.
"""

from dataclasses import replace

import pytest

from engine.batteries.chemistry import CHEMISTRIES
from engine.batteries.two_well import wells_of
from engine.charging.acceptance import time_to_charge
from engine.charging.intake import Intake
from engine.simulate.house import house_of
from engine.simulate.policy import Engine, Policy, Setup
from engine.simulate.run import run
from engine.units import Amp, AmpHour, Hour, PerHour, Share, Volt
from tests.simulate.banks import driven, lithium, steady

ENDS = (Share(0.8), Share(0.9), Share(0.98))
LABEL = AmpHour(440.0)


def stops(house, end):
    """Return when an engine of 50 A against 6 A of loads has charged from 50 % to its end."""
    policy = Policy(Share(0.5), end, Hour(0.0))
    found = run(Setup(house, policy, Engine(Amp(50.0))), steady(6.0))
    return next(event.time for event in found.events if event.kind == "engine stop")


@pytest.mark.parametrize(
    ("name", "hours"),
    [("flooded", (3.41, 4.76, 7.80)), ("agm", (3.23, 4.30, 6.03))],
)
def test_lead_charges_by_limit_and_taper_alone(name, hours):
    """Both wells together hold 440 Ah: what overfills the well at hand goes to the bound one."""
    kind = CHEMISTRIES[name]
    house = house_of(kind, LABEL, Volt(12.0), Share(0.5))
    house = replace(house, wells=wells_of(kind, AmpHour(LABEL / kind.low_rate_gain)))
    assert house.full == pytest.approx(LABEL)
    assert [stops(house, end) for end in ENDS] == pytest.approx(hours, abs=0.01)


@pytest.mark.parametrize("name", ["flooded", "agm", "gel", "lithium"])
def test_the_times_of_the_charging_page_are_those_of_the_days(name):
    house = house_of(CHEMISTRIES[name], LABEL, Volt(12.0), Share(0.5))
    for end in ENDS:
        told = time_to_charge(house.filling, Share(0.5), end, Amp(44.0))
        assert stops(house, end) == pytest.approx(told, rel=1e-9)


def test_the_charge_lost_on_the_way_is_made_good():
    """240 Ah at 2 A lose 192 Ah in 4 days, down to 20 %: at 50 A that is 3.84 h, 6.72 a week."""
    lossless = Intake(AmpHour(240.0), PerHour(0.5), PerHour(10.0))
    setup = driven(lithium(intake=lossless), engine_on_at=Share(0.15))
    found = run(setup, steady(2.0, days=4))
    assert not found.engine_hours
    assert found.engine_hours_a_week == pytest.approx(192 / 50 / 4 * 7)


def test_hours_a_week_hardly_hang_on_how_many_days_are_run():
    """48 Ah a day, all of the engine's 50 A counted: 0.96 h a day, 6.72 a week."""
    for days in (3, 14, 60):
        found = run(driven(lithium()), steady(2.0, days=days))
        assert found.engine_hours_a_week == pytest.approx(6.72, rel=1e-6), days


def test_a_bank_that_fills_by_itself_has_lost_nothing():
    days = steady(4.0, days=4)
    sun = tuple(Amp(20.0 if 32 <= n % 96 < 64 else 0.0) for n in range(len(days.loads)))
    found = run(driven(lithium()), replace(days, sun=sun))
    assert found.charges[-1] < found.charges[0]
    assert not found.engine_hours_a_week


def test_the_loads_are_taken_off_below_the_reserve_only():
    """Lead leaves its loads at 20 %, lithium at 10 %, and no bank at or above a lower reserve."""
    for name, usual in (("agm", 0.2), ("lithium", 0.1)):
        for reserve, expected in ((0.5, usual), (0.1, 0.08), (0.01, 0.0)):
            house = house_of(CHEMISTRIES[name], LABEL, Volt(12.0), Share(1.0), Share(reserve))
            assert house.disconnect == pytest.approx(min(usual, expected))


def test_dropped_loads_call_for_charging_and_start_the_engine():
    """To start at 2 % were never: loads go at 10 %, after 21.6 h at 10 A of 240 Ah."""
    found = run(driven(lithium(), engine_on_at=Share(0.02)), steady(10.0))
    assert found.needed_at == pytest.approx(21.6)
    starts = [event for event in found.events if event.kind == "engine start"]
    assert starts[0].time == pytest.approx(21.6)
    assert "taken loads off" in starts[0].words


def test_a_charger_ashore_has_nothing_over():
    """40 A of shore power beside 10 A of sun and 4 A of loads: 6 A of sun are over when full."""
    days = replace(steady(4.0, sun=10.0, shore=40.0), on_demand=True)
    found = run(driven(lithium()), days)
    assert found.charge.curtailed == pytest.approx(144.0)
    assert found.charge.sources == pytest.approx(96.0)
    assert run(driven(lithium()), replace(days, on_demand=False)).charge.curtailed > 1000
