"""A changed field: in the plan, in a sum, in the seven questions, in the way of showing."""

import json

import pytest

from engine.loads.common import COMMON
from engine.loads.day_use import day_use
from engine.plan.made_up import made_up_document
from engine.session.fields import WIDE_DUTY, with_unit
from engine.units import CHARGE, CURRENT, LENGTH, TEMPERATURE, TIME, VOLTS
from engine.views.parts.scene import Units

FEET = Units("ft", "degF")


def fridge(visit):
    return visit.document["loads"][10]


@pytest.mark.parametrize(
    ("text", "kind", "units", "expected"),
    [
        ("14", LENGTH, Units(), "14 m"),
        ("14", LENGTH, FEET, "14 ft"),
        ("14 ft 9", LENGTH, Units(), "14 ft 9"),
        ("4.5 m", LENGTH, FEET, "4.5 m"),
        ("86", TEMPERATURE, FEET, "86 degF"),
        ("4,6", CURRENT, Units(), "4,6 A"),
        ("4-5", CURRENT, Units(), "4-5 A"),
        ("4.6 (4 to 5)", CURRENT, Units(), "4.6 A (4 to 5)"),
        ("1h30", TIME, Units(), "1h30"),
        ("220", CHARGE, Units(), "220 Ah"),
        ("3 kg", CURRENT, Units(), "3 kg"),
        ("?", VOLTS, Units(), "?"),
        ("", CURRENT, Units(), ""),
    ],
)
def test_what_was_typed_stays_and_a_bare_figure_gets_the_unit_beside_it(
    text, kind, units, expected
):
    assert with_unit(text, kind, units) == expected


def test_a_field_of_the_plan(visit):
    visit.set("loads.L11.draw", " 5 ")
    assert fridge(visit)["draw"] == "5 A"
    visit.set("loads.L11.duty", "40")
    assert fridge(visit)["duty"] == "40"
    visit.set("loads.L11.essential", "yes")
    visit.set("loads.L11.draw", None)
    assert "draw" not in fridge(visit)
    assert visit.state.done[-1].name == "draw of Fridge compressor (running)"
    visit.set("circuits.D01.continuous", "")
    assert visit.document["circuits"][0]["continuous"] == "no"
    visit.set("looks.fuse", "no")
    assert visit.state.done[-1].name.startswith("is there a fuse")
    visit.set("boat.name", "Gannet")
    assert visit.state.done[-1].name == "boat's name of the boat"


@pytest.mark.parametrize(
    "path",
    ["", "boat", "boat.wheels", "loads.L11.wheels", "loads.L11.x.draw", "loads.draw", "hull.x",
     "loads.L99.draw", "circuits.D99.run:low", "sources.S09.marked"],
)  # fmt: skip
def test_an_unknown_path_is_said_on_top(visit, path):
    visit.set(path, "x")
    assert visit.notice()
    assert visit.document == made_up_document()
    visit.go("#home")
    assert visit.notice() == ""


def test_too_long_a_text_is_said_beside_it_and_nothing_stored_is_lost(visit):
    visit.go("#energy/use")
    before = visit.document
    visit.set("loads.L11.name", "x" * 1_000_000)
    assert visit.document == before
    assert "1,000,000" in visit.screen.at("f-loads-L11-name-p").text
    assert len(visit.screen.at("f-loads-L11-name").attributes["value"]) == 500
    visit.set("loads.L11.name", "Fridge")
    assert fridge(visit)["name"] == "Fridge"
    assert not [one for one in visit.screen.every() if "-p" in str(one.attributes.get("id"))]


def test_a_choice_nobody_offered_is_refused(visit):
    visit.set("boat.month", "Smarch")
    assert visit.document == made_up_document()
    assert visit.go("#start/7")["title"]


def test_units_of_showing_never_change_what_is_stored(visit):
    for name, value in (("length", "ft"), ("temperature", "degF"), ("charge", "Wh"),
                        ("view", "dim-red"), ("hand", "right"), ("extra_dim", "2")):  # fmt: skip
        reply = visit.set(f"settings.{name}", value)
        assert reply["settings"][name] == value
        for route in ("#home", "#energy/use", "#wiring/circuits", "#wiring/circuits/D14"):
            visit.go(route)
    assert visit.document == made_up_document()
    assert "20 ft" in visit.screen.at("page").text
    assert visit.state.done == ()


@pytest.mark.parametrize(("path", "value"), [("settings.view", "neon"), ("settings.gear", "x")])
def test_a_setting_nobody_offered(visit, path, value):
    assert "settings" not in visit.set(path, value)


def test_watt_hours_are_ampere_hours_times_the_volts(visit):
    """About 146 Ah at 12 V are about 1750 Wh."""
    visit.do("look-around")
    assert "146" in visit.screen.at("home-answer").text
    visit.set("settings.charge", "Wh")
    shown = visit.screen.at("home-answer").named("b")[0].text
    assert shown.endswith("Wh")
    assert 1700 < float(shown.split()[0]) < 1800


def test_what_is_shown(visit):
    visit.set("show.condition", "passage")
    assert visit.state.condition == "passage"
    visit.set("show.condition", "adrift")
    assert visit.state.condition == "passage"
    visit.go("#energy/use")
    for group, titles in (("zone", 16), ("circuit", 20)):
        visit.set("show.group", group)
        found = [one for one in visit.screen.named("th") if one.attributes.get("colspan")]
        assert len(found) >= titles - 5
        assert len(visit.screen.at("use-groups").named("tr")) == len(found) + 1
    visit.set("show.group", "colour")
    assert visit.state.group == "circuit"


def test_what_runs_together(visit):
    visit.go("#wiring/inverter")
    visit.set("show.together.L40", "yes")
    visit.set("show.together.L39", "yes")
    assert visit.state.chosen == {"L39", "L40"}
    assert visit.screen.at("run-L40").attributes.keys() >= {"checked"}
    visit.set("show.together.L39", "no")
    assert visit.state.chosen == {"L40"}
    assert visit.document == made_up_document()


def test_a_sum_follows_its_fields_and_its_address(visit):
    visit.go("#sum/drop?current=20+A&run=10+ft")
    reply = visit.set("sum.drop.size", "10 AWG")
    assert reply["route"] == "#sum/drop?current=20+A&run=10+ft&size=10+AWG"
    assert "10 AWG" in visit.screen.at("sum-answer").text
    assert visit.document == made_up_document()


def test_a_field_being_typed_is_not_complained_about(visit):
    visit.go("#sum/drop?current=20+A&size=10+AWG")
    reply = visit.set("sum.drop.run", "12 k", typing=True)
    assert "route" not in reply
    ids = [one.attributes.get("id") for one in visit.screen.every()]
    assert "f-sum-drop-run-p" not in ids
    visit.set("sum.drop.run", "12 k")
    assert "12 k" in visit.screen.at("f-sum-drop-run-p").text


def test_a_common_load_is_ticked_and_unticked(mine):
    mine.set("start.have.0", "yes")
    mine.set("start.have.0", "yes")
    assert [row["name"] for row in mine.document["loads"]] == [COMMON[0].words]
    mine.set("start.have.2", "yes")
    mine.set("start.have.0", "no")
    mine.set("start.have.0", "no")
    assert [row["name"] for row in mine.document["loads"]] == [COMMON[2].words]


@pytest.mark.parametrize(
    ("typed", "duty"),
    [("12", "0.5"), ("9-13", "0.46 (0.38 to 0.54)"), ("?", WIDE_DUTY), ("1h30", "0.062")],
)
def test_hours_of_humming_become_a_duty(mine, typed, duty):
    """12 of 24 hours are 0.5; 9 to 13 are 0.375 to 0.542."""
    mine.set("start.have.0", "yes")
    mine.go("#start/4")
    mine.set("start.hum.L01", typed)
    assert mine.document["loads"][0]["duty"] == duty
    assert mine.screen.at("f-start-hum-L01").attributes["value"] == typed


def test_humming_that_cannot_be_read(mine):
    mine.set("start.have.0", "yes")
    mine.go("#start/4")
    before = mine.document
    mine.set("start.hum.L01", "30")
    assert mine.document == before
    assert "30" in mine.screen.at("start-body").text
    mine.set("start.hum.L01", " ")
    assert mine.document == before


def test_what_charges_it(mine):
    mine.set("start.source.solar", "")
    assert "sources" not in mine.document
    mine.set("start.source.solar", "100")
    mine.set("start.source.alternator", "60 A nominal")
    assert mine.document["sources"] == [
        {"id": "S01", "kind": "solar", "marked": "100 W"},
        {"id": "S02", "kind": "alternator", "marked": "60 A nominal"},
    ]
    mine.set("start.source.solar", "200")
    assert mine.document["sources"][0]["marked"] == "200 W"
    mine.go("#start/6")
    assert mine.screen.at("f-start-source-solar").attributes["value"] == "200 W"


@pytest.mark.parametrize(
    "path",
    ["start", "start.have", "start.have.99", "start.have.x", "start.have.-1", "start.fly.1",
     "start.hum.L99", "sum", "sum.drop", "show", "settings", "start.source.tide"],
)  # fmt: skip
def test_a_path_no_page_sends_harms_nothing(mine, path):
    mine.set("start.have.0", "yes")
    before = json.dumps(mine.document)
    mine.set(path, "yes")
    assert json.dumps(mine.document) == before


def test_seven_questions_end_in_an_answer_wide_enough_for_what_is_not_known(visit):
    """No question is asked twice, and the first answer's band is wider than ±20 %."""
    visit.go("#start")
    for step, sets in enumerate(
        (
            {"boat.name": "Gannet", "boat.volts": "12 V"},
            {"boat.use": "coast", "boat.people": "2"},
            {"start.have.0": "yes", "start.have.2": "yes", "start.have.7": "yes",
             "start.have.14": "yes"},
            {"start.hum.L01": "9-13"},
            {"bank.chemistry": "agm", "bank.capacity": "220"},
            {"start.source.solar": "100"},
            {"boat.month": "july", "boat.latitude": "43 N"},
        ),
        1,
    ):  # fmt: skip
        visit.go(f"#start/{step}")
        for path, value in sets.items():
            visit.set(path, value)
    visit.go("#start/answer")
    plan = visit.state.plan()
    assert plan.problems == ()
    answer = day_use(plan.loads, "anchor", plan.supply)
    assert answer.missing == ()
    assert answer.band.p10 < 0.8 * answer.band.median
    assert answer.band.p90 > 1.2 * answer.band.median
    text = visit.screen.at("first-answer").text
    assert f"{answer.band.median:.0f} Ah" in text
    assert f"{answer.band.p10:.0f} and {answer.band.p90:.0f}" in text
    assert "days" in text


def test_all_questions_skipped_still_end_in_an_answer(visit):
    visit.go("#start")
    for number in range(1, 8):
        visit.do("dont-know", str(number))
    assert visit.screen.at("first-answer").text
    visit.set("start.have.0", "yes")
    visit.set("start.have.2", "yes")
    visit.do("dont-know", "4")
    assert visit.document["loads"][0]["duty"] == WIDE_DUTY
    assert "duty" not in visit.document["loads"][1]
