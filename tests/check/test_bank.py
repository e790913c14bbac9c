"""The bank in figures, at a rate, sized and compared; each by a hand sum or the made-up boat.

*Wherrilow*'s plan, section 3: 134 of 220 Ah, 67 usable; 280 Ah, 224 usable, 140 A at most; AGM of
440 Ah, 220 usable, lasts as long; 58, 33 and 124 kg. Invented, as all of her. That is at 25 °C; at
20 °C lead holds 1 / 1.054 of it (IEEE 485, between 1.04 and 1.11) and lithium 0.987.
"""

import pytest

from engine.check.bank import figures_of, rates_of
from engine.check.bank_compare import INSTEAD, OWN, compare
from engine.check.bank_rest import resting_curve
from engine.check.bank_sizing import counts_as, sizing_of
from engine.check.report import report_of
from engine.plan.made_up import AS_FOUND, PLANNED, made_up_document
from engine.plan.read import plan_of

LAMP = {"id": "L01", "name": "Lamp", "draw": "5 A", "hours_anchor": "20 h"}
WINDLASS = {"id": "L02", "name": "Windlass", "draw": "80 A", "hours_anchor": "0.05 h"}


def plan(*loads, boat=None, **bank):
    bank = {"chemistry": "flooded", "temperature": "25 degC", "age": "new", **bank}
    return plan_of({"format": 1, "boat": boat or {}, "loads": list(loads), "bank": bank})


def figures(bank):
    found = figures_of(bank)
    assert found is not None
    return found


def sized(*given):
    found = sizing_of(*given)
    assert found is not None
    return found


def whole(number):
    assert number is not None
    return number


def made_up(revision):
    return plan_of(made_up_document(revision))


@pytest.mark.parametrize(
    ("revision", "held", "usable", "most"),
    [(AS_FOUND, 134 / 1.054, 67 / 1.054, 22), (PLANNED, 280 * 0.9872, 224 * 0.9872, 138.2)],
)
def test_the_made_up_banks(revision, held, usable, most):
    found = figures(made_up(revision).bank)
    assert [found.held, found.usable] == pytest.approx([held, usable], abs=0.5)
    assert found.most_charge.likely == pytest.approx(most, abs=0.05)


@pytest.mark.parametrize(
    ("bank", "kg"),
    [({"capacity": "220 Ah"}, 58), ({"chemistry": "lithium", "capacity": "280 Ah"}, 33),
     ({"chemistry": "agm", "capacity": "440 Ah"}, 124)],
)  # fmt: skip
def test_the_printed_masses_lie_within_what_is_typical(bank, kg):
    mass = figures(plan(**bank).bank).mass
    assert mass.low <= kg <= mass.high
    assert mass.known_by == "default"


def test_what_a_label_says_stands_before_what_is_typical():
    found = figures(plan(capacity="220 Ah", mass="70 kg", cycles="500", most_charge="30 A").bank)
    assert [found.mass.likely, found.cycles.likely, found.most_charge.likely] == [70, 500, 30]
    assert {one.known_by for one in (found.mass, found.cycles, found.most_charge)} == {"nameplate"}


def test_a_cold_lithium_bank_takes_no_charge():
    found = figures(
        plan(chemistry="lithium", capacity="100 Ah", temperature="-1 degC", most_charge="90 A").bank
    )
    assert found.most_charge.likely == 0
    assert found.cold


def test_a_bank_emptied_in_its_rated_hours_gives_its_label():
    slow, _, fast = rates_of(plan(capacity="200 Ah"), "anchor")
    assert (slow.current, slow.label, slow.cold, slow.now) == (10.0, 200.0, 200.0, 200.0)
    assert fast.label == pytest.approx(200 * 0.05**0.2)
    assert fast.time == pytest.approx(1.0)


def test_at_a_current_by_hand():
    """Flooded, 200 Ah, 50 %, 80 A: 200 (200/1600)^0.25 = 118.92; 12.24 V − 80 × 3 mΩ = 12 V.

    At half its health 100 (100/1600)^0.25 = 50 Ah, which 80 A take in 37.5 min.
    """
    new = rates_of(plan(WINDLASS, capacity="200 Ah"), "dock")[-1]
    assert new.label == pytest.approx(118.92, abs=0.005)
    assert new.volts == pytest.approx(12.0)
    old = rates_of(plan(WINDLASS, capacity="200 Ah", health="50 %"), "dock")[-1]
    assert old.now == pytest.approx(50.0)
    assert old.time == pytest.approx(0.625)
    assert "for its age" in old.why


def test_a_slow_discharge_gives_no_more_than_the_bank_holds():
    slow = next(one for one in rates_of(plan(LAMP, capacity="2000 Ah"), "anchor")
                if one.name == "a day's mean use")  # fmt: skip
    assert slow.label == pytest.approx(2000 * 1.185)
    assert "all it holds" in slow.why


def test_without_a_capacity_nothing_is_said():
    empty = plan()
    assert figures_of(empty.bank) is None
    assert rates_of(empty, "anchor") == ()
    assert counts_as(empty.bank) is None
    assert "problem" in report_of(empty)["bank"]


def test_the_worksheet_of_the_lecture_from_a_plan():
    """ESE 471, slides 38 to 47: 51.4 Ah a day, 6 days, 80 %, 20 %, 80 %, margin 1.1: 424 Ah."""
    loads = [
        {"id": f"L0{n}", "draw": f"{ah / 2} A", "hours_anchor": "2 h"}
        for n, ah in enumerate((18, 30, 1, 2.4), 1)
    ]
    found = sized(plan(*loads, reserve="20 %", days_wanted="6 days", daily_depth="20 %"), "anchor")
    assert found.sheet.capacity / found.sheet.need.daily == pytest.approx(424 / 51.4, rel=0.001)
    assert found.sheet.need.daily == pytest.approx(51.4, rel=0.03)
    assert found.sheet.need.largest_current == pytest.approx(51.4 / 2)


def test_bursts_by_hand():
    """AGM at exponent 1, a factor is its time: 48 h of the mean, 3 min of 80 A, × 1.1 / 0.8."""
    found = sized(plan(LAMP, WINDLASS, chemistry="agm", exponent="1"), "anchor")
    mean = found.sheet.need.daily / 24
    assert found.apart[0][0] == "Windlass"
    assert found.bursts == pytest.approx((mean * 48 + 80 * 0.05) * 1.1 / 0.8)
    assert found.sheet.need.largest_current == pytest.approx(5.0)
    assert found.capacity == max(found.bursts, found.sheet.capacity)


def test_what_runs_for_hours_is_no_burst():
    heavy = {**WINDLASS, "hours_anchor": "6 h"}
    found = sized(plan(LAMP, heavy), "anchor")
    assert found.apart == ()
    assert found.sheet.need.largest_current == pytest.approx(85.0)


def test_nothing_to_size_for():
    assert sizing_of(plan(LAMP), "passage") is None
    assert sizing_of(plan_of({"format": 1, "loads": [LAMP]}), "anchor") is None


def test_a_worn_bank_counts_for_less_than_its_label():
    """134.2 Ah over 80 % is 167.75 Ah; at 90 % health the label still counts."""
    assert counts_as(made_up(AS_FOUND).bank) == pytest.approx(134.2 / 0.8)
    assert counts_as(plan(capacity="200 Ah", health="90 %").bank) == 200.0


def test_the_made_up_boat_beside_other_banks():
    found = {(one.name, one.figures.kind.name): one for one in compare(made_up(PLANNED), "anchor")}
    own, agm = found[OWN, "lithium"], found[INSTEAD, "agm"]
    assert agm.capacity == pytest.approx(440 * 0.9872 * 1.054, rel=0.02)
    assert agm.days == pytest.approx(own.days)
    assert found[AS_FOUND, "flooded"].days == pytest.approx(0.5 / 1.054, abs=0.05)
    assert (INSTEAD, "lithium") not in found
    assert whole(own.hours) < whole(agm.hours) < whole(found[INSTEAD, "flooded"].hours)


def test_another_boat_s_alternatives_are_sized_by_the_worksheet():
    own = plan(LAMP, capacity="100 Ah", days_wanted="3 days")
    found = {one.figures.kind.name: one for one in compare(own, "anchor") if one.name == INSTEAD}
    assert set(found) == {"flooded", "agm", "gel", "lithium"}
    for name, one in found.items():
        assert one.capacity == sized(own, "anchor", name).capacity
        assert whole(one.days) >= 3
    assert found["lithium"].capacity < found["agm"].capacity


def test_a_bank_that_must_not_be_charged_has_no_time_to_full():
    cold = plan(LAMP, chemistry="lithium", capacity="100 Ah", temperature="-5 degC")
    assert compare(cold, "anchor")[0].hours is None
    assert compare(plan_of({"format": 1}), "anchor") == ()


@pytest.mark.parametrize("chemistry", ["flooded", "agm", "gel", "lithium"])
def test_volts_at_rest_never_fall_as_the_charge_grows(chemistry):
    volts = [one for _, one in resting_curve(plan(chemistry=chemistry).bank)]
    assert volts == sorted(volts)
    double = resting_curve(plan(boat={"volts": "24 V"}, chemistry=chemistry).bank)
    assert [one for _, one in double] == pytest.approx([2 * one for one in volts])


def test_the_report_says_the_same():
    found = report_of(made_up(PLANNED))["bank"]
    told = [found["holds"], found["usable"], found["most_charge"]]
    assert told == pytest.approx([280.0 * 0.9872, 224.0 * 0.9872, 140.0 * 0.9872], rel=1e-3)
    assert found["start_joined"] == "converter"
    assert found["size_asked"]["anchor"] < 280
