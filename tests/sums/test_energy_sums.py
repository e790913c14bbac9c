"""The quick sums of bank and charging, asked as a person would; sources in ``tests/published``."""

import pytest

from engine.sums import SUMS
from engine.sums.sum import answered


def asked(name, **given):
    found = answered(SUMS[name], given)
    assert found["problems"] == []
    return found


def values(name, **given):
    return {key: one["value"] for key, one in asked(name, **given)["answers"].items()}


REFRIGERATOR = {
    "daily": "51.4 Ah", "days": "6 days", "depth": "80 %", "daily_depth": "0.2",
    "end_of_life": "0.8", "margin": "1.10", "largest_current": "6.1 A",
}  # fmt: skip


def test_the_worked_bank_of_the_lecture():
    """308, 386, 257, 386 and 424 Ah at the 70 h rate (W1)."""
    found = values("bank", **REFRIGERATOR)
    assert found["unadjusted"] == pytest.approx(308, abs=0.5)
    assert found["by_depth"] == found["by_age"] == pytest.approx(386, abs=0.6)
    assert found["by_daily_depth"] == pytest.approx(257, abs=0.5)
    assert found["capacity"] == pytest.approx(424, abs=0.5)
    assert found["hour_rate"] == pytest.approx(70, abs=0.5)
    assert asked("bank", **REFRIGERATOR)["governing"] == "depth"


def test_a_bank_at_ten_degrees_and_shallow_days():
    """51.4 / 0.1 = 514 Ah governs; × 1.19 × 1.1 = 672.8 Ah."""
    given = {**REFRIGERATOR, "daily_depth": "10 %", "temperature_factor": "1.19"}
    assert values("bank", **given)["capacity"] == pytest.approx(672.8, abs=0.05)
    assert asked("bank", **given)["governing"] == "daily depth"


@pytest.mark.parametrize(
    ("given", "days"),
    [
        ({"capacity": "2 x 110 Ah", "usable": "50 %", "health": "61 %"}, 0.5),
        ({"capacity": "280 Ah", "usable": "80 %"}, 1.7),
        ({"capacity": "440 Ah", "usable": "50 %"}, 1.7),
        ({"capacity": "280 Ah", "usable": "80 %", "income": "79 Ah"}, 4.2),
    ],
)
def test_days_alone(given, days):
    """132.4 Ah a day; 224 / (132.4 − 79) = 4.19 days."""
    assert values("days-alone", daily="132.4 Ah", **given)["days"] == pytest.approx(days, abs=0.05)


def test_days_alone_without_end_is_not_a_number():
    found = asked("days-alone", daily="60 Ah", capacity="280", usable="80", income="60 Ah")
    assert found["answers"]["days"] == {"value": None, "unit": "days"}


CHARGE = {"capacity": "400", "from": "0.5", "source": "150", "limit": "0.25", "taper": "0.6"}


def test_charge_time_in_bare_numbers():
    assert values("charge-time", to="0.95", **CHARGE)["time"] == pytest.approx(3.8671, abs=0.001)
    assert asked("charge-time", to="0.95", **CHARGE)["governing"] == "limit"
    assert asked("charge-time", to="0.95", **CHARGE)["cautions"]


def test_a_loss_lengthens_the_charge_by_its_share():
    whole, lossy = (
        values("charge-time", to="0.95", efficiency=share, **CHARGE)["time"]
        for share in ("1", ".8")
    )
    assert lossy == pytest.approx(whole / 0.8)


def test_charging_up_to_the_taper_is_steady():
    """0.2 × 400 / 40 A = 2 h, and nothing is said of a taper."""
    given = {**CHARGE, "source": "40 A", "to": "70 %"}
    assert values("charge-time", **given)["time"] == pytest.approx(2.0)
    assert not any("tapers" in one for one in asked("charge-time", **given)["cautions"])


WELLS = {"rate": "0.677", "share": "0.4751", "full": "108.16", "step": "1"}


def test_the_two_wells_of_a_published_test():
    """1.5 A, then 3 A for an hour each, from half: 22.1211 and 27.4586 Ah."""
    first = values("two-well", available="25.6934", bound="28.3866", current="1.5 A", **WELLS)
    second = values(
        "two-well",
        available=str(first["available"]),
        bound=str(first["bound"]),
        current="3 A",
        **WELLS,
    )
    found = [second["available"], second["bound"]]
    assert found == pytest.approx([22.1211, 27.4586], abs=0.01)


@pytest.mark.parametrize(("current", "verb"), [("490 A", "give"), ("-490 A", "take")])
def test_more_than_the_bank_can_is_held_and_said(current, verb):
    found = asked("two-well", available="22.1211", bound="27.4586", current=current, **WELLS)
    answers = {key: one["value"] for key, one in found["answers"].items()}
    total = answers["available"] + answers["bound"]
    most = answers["most_current" if verb == "give" else "most_charge"]
    assert total == pytest.approx(49.5797 - most, abs=1e-6)
    assert any(f"cannot {verb}" in note for note in found["cautions"])
    if verb == "give":
        assert total == pytest.approx(22.9271, abs=0.01)
        assert answers["available"] == pytest.approx(0, abs=1e-9)
    else:
        assert answers["available"] == pytest.approx(0.4751 * 108.16)


def test_a_printed_full_well_may_be_rounded_up():
    """0.4751 × 108.16 = 51.3868; a sheet that says 51.387 means a full well."""
    found = values("two-well", available="51.387", bound="56.774", current="0 A", **WELLS)
    assert found["available"] == pytest.approx(51.3868, abs=0.0005)


def test_a_wind_day():
    """44.392 W and 85.23 Ah at 12.5 V; 23.89 W in a steady wind."""
    given = {"mean_speed": "5", "area": "1.04", "power_coefficient": "30 %"}
    found = values("wind-day", **given)
    assert [found["mean_power"], found["charge"]] == pytest.approx([44.392, 85.23], abs=0.005)
    assert found["steady_power"] == pytest.approx(23.89, abs=0.005)
    assert values("wind-day", **{**given, "mean_speed": "0"})["charge"] == 0


def test_a_wind_day_behind_the_land():
    """A pole of 10 m and a wind of 10 m/s halved are a wind of 5 m/s."""
    given = {"area": "1.04 m²", "power_coefficient": "0.3"}
    halved = values("wind-day", mean_speed="10 m/s", shelter="50 %", **given)
    assert halved["mean_power"] == pytest.approx(44.392, abs=0.001)
    knots = values("wind-day", mean_speed="9.7192 kn", **given)
    assert knots["mean_power"] == pytest.approx(44.392, abs=0.01)


def test_charging_says_what_the_cold_forbids():
    given = {"capacity": "220", "from": "50 %", "to": "60 %", "source": "30 A", "limit": "0.25",
             "taper": "0.6"}  # fmt: skip
    assert any(
        "below 0 °C must not be charged" in one for one in asked("charge-time", **given)["cautions"]
    )
