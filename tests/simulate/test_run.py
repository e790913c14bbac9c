"""Runs that can be reckoned by hand."""

from dataclasses import replace

import pytest

from engine.charging.intake import Intake
from engine.simulate.ledger import Ledger, UnbalancedError, Volts
from engine.simulate.policy import NEVER
from engine.simulate.run import days_alone, run
from engine.units import Amp, AmpHour, PerHour, Share
from tests.simulate.banks import alone, driven, flooded, lithium, steady


def told(series):
    return [(event.kind, pytest.approx(event.time, abs=1e-9)) for event in series.events]


def test_a_bank_runs_down_to_reserve_and_disconnect_on_the_minute():
    """240 Ah at 10 A: the reserve of 20 % after 19.2 h, 10 % after 21.6 h; 24 Ah unmet after."""
    found = run(alone(lithium()), steady(10.0))
    assert told(found) == [
        ("full", 0.0), ("reserve", 19.2), ("disconnect", 21.6), ("unmet", 21.6),
    ]  # fmt: skip
    assert found.lowest == pytest.approx(0.1)
    assert found.lowest_at == pytest.approx(21.6)
    assert found.reserve_at == found.needed_at == pytest.approx(19.2)
    assert found.charge.unmet == pytest.approx(24.0)
    assert found.charge.served == pytest.approx(216.0)
    assert found.days[0].asked == pytest.approx(240.0)
    assert found.days_until_needed == pytest.approx(0.8)


def test_essential_loads_stay_on_until_the_bank_is_empty():
    """After 21.6 h 24 Ah are left; 2.5 A of the 10 A go on for 9.6 h, to 31.2 h, then nothing."""
    days = steady(10.0, days=2, essential=2.5)
    found = run(alone(lithium()), days)
    assert found.lowest == pytest.approx(0.0, abs=1e-12)
    assert found.lowest_at == pytest.approx(31.2)
    assert found.charge.unmet == pytest.approx(9.6 * 7.5 + (48 - 31.2) * 10.0)


def test_a_disconnected_bank_comes_back_with_hysteresis():
    """Half of 240 Ah at 12 A is down to 10 % after 8 h. 24 A from 8.25 h on: 20 % at 9.25."""
    days = steady(12.0)
    late = replace(days, shore=tuple(Amp(24.0 if n >= 33 else 0.0) for n in range(96)))
    found = run(alone(lithium(start=0.5)), late)
    assert [event.kind for event in found.events] == [
        "reserve", "disconnect", "unmet", "reconnect", "met",
    ]  # fmt: skip
    assert found.events[1].time == pytest.approx(8.0)
    assert found.events[3].time == pytest.approx(9.25)
    assert found.charge.unmet == pytest.approx(15.0)
    assert found.charges[-1] == pytest.approx((48.0 + 14.75 * 12.0) / 240)


def test_a_bank_gives_no_more_than_its_largest_discharge():
    found = run(alone(lithium(largest=Amp(8.0))), steady(10.0))
    assert found.charge.unmet == pytest.approx(48.0)
    assert found.charges[-1] == pytest.approx(0.2)
    assert ("unmet", 0.0) in told(found)


def test_what_a_full_bank_cannot_take_is_curtailed():
    found = run(alone(lithium()), steady(4.0, sun=10.0))
    assert found.charge.curtailed == pytest.approx(144.0)
    assert found.charge.sources == pytest.approx(96.0)
    assert found.full_at == 0.0
    assert found.since_full == 0.0
    assert found.energy.curtailed == pytest.approx(144.0 * 13.25, rel=1e-3)


def test_a_cold_bank_is_not_charged_but_its_loads_are_served():
    cold = Intake(AmpHour(240.0), PerHour(0.0), PerHour(10.0))
    found = run(alone(lithium(start=0.5, intake=cold)), steady(4.0, sun=10.0))
    assert found.charges[-1] == 0.5
    assert found.charge.curtailed == pytest.approx(144.0)
    assert found.charge.unmet == 0.0


def test_the_engine_starts_at_its_line_and_runs_to_the_other():
    """From 40 % at 12 A: 30 % after 2 h. At 60 A, 48 into the bank: 70 % after 2 h more."""
    house = lithium(start=0.4)
    found = run(driven(house, current=60.0, fuel=1.5), steady(12.0))
    assert [one for one in told(found) if "engine" in one[0]][:2] == [
        ("engine start", 2.0), ("engine stop", 4.0),
    ]  # fmt: skip
    # 96 Ah last 8 h: from 4 to 12, 14 to 22, and then the second run is over.
    assert found.engine_hours == pytest.approx(2.0 + 2.0 + 2.0)
    assert found.charge.engine == pytest.approx(360.0)
    # It began at 40 % and ended at 70: 72 Ah at 60 A are 1.2 h that it will not run next week.
    assert found.fuel_a_week == pytest.approx((6.0 - 1.2) * 7 * 1.5)
    assert found.needed_at == pytest.approx(2.0)
    assert max(found.engine) == pytest.approx(60.0)


def test_quiet_hours_delay_the_start_and_end_a_run():
    """30 % is reached at 2 h, in quiet hours that last to 7; a run at 16.5 h ends at 17, quiet."""
    found = run(driven(lithium(start=0.4), quiet_from=1.0, quiet_to=7.0), steady(12.0))
    starts = [event.time for event in found.events if event.kind == "engine start"]
    assert starts[0] == pytest.approx(7.0)
    assert found.needed_at == pytest.approx(2.0)
    ended = run(driven(lithium(start=0.3), quiet_from=1.0, quiet_to=7.0), steady(12.0))
    stops = [event for event in ended.events if event.kind == "engine stop"]
    assert stops[0].time == pytest.approx(1.0)
    assert "quiet" in stops[0].words


def test_a_least_run_goes_on_past_the_line():
    """At 132 A, 120 into the bank, 30 to 32 % takes 2.4 minutes; the engine runs half an hour."""
    setup = driven(lithium(start=0.3), current=132.0, engine_off_at=Share(0.32))
    found = run(setup, steady(12.0))
    assert told(found)[:2] == [("engine start", 0.0), ("engine stop", 0.5)]


def test_an_engine_that_may_not_start_is_said_never_to():
    found = run(alone(lithium(start=0.25)), steady(2.0))
    assert not [event for event in found.events if "engine" in event.kind]
    assert "never" in NEVER.words
    assert found.engine_hours == 0.0
    assert found.fuel_a_week == 0.0


def test_the_sun_comes_before_the_engine():
    """60 A of sun against 10 A of load: the engine, though it runs, has 50 A of 120 A to give."""
    setup = driven(lithium(start=0.2), current=70.0)
    found = run(setup, steady(10.0, sun=60.0))
    run_hours = found.engine_hours
    assert found.charge.engine == pytest.approx(70.0 * run_hours)
    assert run_hours == pytest.approx(120.0 / 120.0)


def test_a_lead_bank_gone_dry_takes_its_loads_off_and_gets_them_back_by_seeping():
    """A rested full bank gives what its wells hold at that rate, then rests."""
    found = run(alone(flooded(start=0.6)), steady(60.0))
    kinds = [event.kind for event in found.events]
    assert kinds[:4] == ["reserve", "disconnect", "unmet", "reconnect"] or "reconnect" in kinds
    first = next(event.time for event in found.events if event.kind == "disconnect")
    assert 0 < first < 0.6 * 237 / 60
    assert found.charge.unmet > 0


def test_essential_loads_take_what_seeps_from_a_dry_lead_bank():
    found = run(alone(flooded(start=0.3)), steady(80.0, days=3, essential=80.0))
    assert found.charge.unmet > 0
    assert found.charge.served > 0.25 * 237
    assert 0 < found.charges[-1] < found.charges[0]


def test_each_day_says_what_drove_it():
    """By hand: 6 A is 144 Ah a day; 20 A and 2 A of sun are 480 and 48 Ah, 264 on the mean day."""
    sun = tuple(Amp(20.0 if n < 96 else 2.0) for n in range(192))
    found = run(alone(lithium(start=0.5)), replace(steady(6.0, days=2), sun=sun))
    first, second = found.drove
    assert first.startswith("Sun brings 480 Ah, 336 Ah more than is used; ")
    assert first.endswith("cannot be taken; 216 Ah more sun than on the mean day.")
    assert second == (
        "Sun brings 48 Ah, 96 Ah less than is used; 216 Ah less sun than on the mean day."
    )
    assert found.days[1].start == found.days[0].end


def test_a_day_without_any_source_or_like_the_others_says_so():
    same = run(alone(lithium(start=0.5)), steady(2.0, days=2))
    assert same.drove == ("Nothing brings charge by itself: 48 Ah are used.",) * 2
    even = run(alone(lithium(start=0.5)), steady(2.0, days=2, sun=2.0))
    assert even.drove == ("Sun brings 48 Ah, as much as is used.",) * 2
    moored = replace(steady(2.0, days=2), shore=(Amp(40.0),) * 192)
    assert run(alone(lithium()), moored).drove == ("Shore power covers the 48 Ah used.",) * 2


def test_an_engine_run_and_a_lack_come_first():
    driven_days = run(driven(lithium(start=0.32)), steady(4.0, days=2))
    assert any(one.startswith("The engine runs ") for one in driven_days.drove)
    bare = run(alone(lithium(start=0.2)), steady(6.0, days=3))
    assert bare.drove[-1].startswith("Loads go without 144 Ah. ")
    heavy = replace(
        steady(1.0, days=2), loads=tuple(Amp(1.0 if n < 96 else 3.0) for n in range(192))
    )
    assert (
        "72 Ah are used, 24 Ah more than on the mean day."
        in (run(alone(lithium(start=0.9)), heavy).drove[1])
    )


def test_days_alone_forgets_every_source():
    """240 Ah to 20 % at 4 A: two days, whatever the sun brings."""
    days = steady(4.0, days=3, sun=100.0)
    assert days_alone(driven(lithium()), days) == pytest.approx(2.0)
    assert days_alone(driven(lithium()), steady(0.5, days=3)) is None


def test_a_ledger_that_does_not_close_is_a_fault():
    with pytest.raises(UnbalancedError):
        Ledger(100.0, 10.0, 0.0, 5.0, 0.0, 104.0, 0.0, 0.0).closed()


def test_volts_are_those_at_rest():
    volts = Volts(flooded())
    assert volts.at(0.5) == pytest.approx(12.24)
    assert volts.stored(1.0) == pytest.approx(
        (11.89 + 12.06 * 2 + 12.24 * 2 + 12.45 * 2 + 12.65) / 8
    )
    assert volts.mean(0.5, 0.75) == pytest.approx((12.24 + 12.45) / 2)
