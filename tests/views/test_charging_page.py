"""The Charging page: the answer first, each source from marked to brought, the bank, the place."""

import pytest

from engine.plan.document import new_document
from engine.plan.edit import with_row, with_value
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.plan.source_fields import KINDS, SOURCE
from engine.units import said
from tests.views.test_pages import check

ROUTE = "#energy/charging"
WHOLE = {
    "solar": {"watts": "400 W", "overall": "60 %"},
    "alternator": {"current": "90 A"},
    "shore": {"current": "40 A"},
    "wind": {"watts": "400 W", "diameter": "1.2 m"},
    "water": {"watts": "500 W", "diameter": "0.24 m", "boat_speed": "5 kn"},
    "generator": {"watts": "500 W"},
}


def every_source():
    """Return a boat with a source of every kind, and one of none."""
    document = {**made_up_document(), "sources": []}
    for kind, more in WHOLE.items():
        document, _ = with_row(document, "sources", {"kind": kind, **more})
    document, _ = with_row(document, "sources", {"note": "found in the lazarette"})
    return document


def shown(visit, document, condition="anchor"):
    """Put a boat on the page."""
    visit.state.open_own(document)
    visit.state.condition = condition
    visit.go(ROUTE)
    return visit.screen


def reckoned(visit, document):
    """Put a boat on the page and let its year run out."""
    shown(visit, document)
    while visit.reply.get("more"):
        visit.send({"kind": "more", "steps": 20})
    return visit.screen


def told(screen, ident):
    return " ".join(screen.at(ident).text.split())


def test_the_answer_stands_first_with_its_working(visit):
    text = told(shown(visit, made_up_document()), "charging-answer")
    assert "Likely sun 121 Ah a day in July, 50 on a dull day; 146 are used at anchor" in text
    assert "short by 25" in text
    assert "S02 solar panels : likely, after every derate = 121 Ah" in text


def test_the_answer_in_other_ways_of_living_and_units(visit):
    screen = shown(visit, made_up_document(), "dock")
    assert "shore charger" not in told(screen, "charging-answer")
    assert "Up to 39.5 A, as much as bank and loads ask." in told(screen, "source-S03")
    visit.set("settings.charge", "Wh")
    assert "1453" in told(visit.screen, "charging-answer").replace(",", "").replace(" ", "")
    rain = with_value(made_up_document(), "sources.S02.counted", "no")
    text = told(shown(visit, with_value(rain, "sources.S04.counted", "yes")), "charging-answer")
    assert text.count("Wind turbine") == 1
    assert "a day; " in text
    text = told(shown(visit, rain), "charging-answer")
    assert "Nothing charges by itself at anchor" in text


def test_even_and_over(visit):
    sunny = with_value(made_up_document(), "sources.S02.watts", "800 W")
    assert "over" in told(shown(visit, sunny), "charging-answer")
    level = with_value(made_up_document(), "sources.S02.watts", "505.2 W")
    assert "even" in told(shown(visit, level), "charging-answer")


@pytest.mark.parametrize("condition", ["anchor", "passage", "dock", "unattended"])
def test_every_kind_is_whole_in_every_way_of_living(visit, condition):
    screen = shown(visit, every_source(), condition)
    check(screen)
    for ident in ("S01", "S02", "S03", "S04", "S05", "S06", "S07"):
        assert screen.at(f"source-{ident}")
    assert "Not known yet: what kind of source it is" in told(screen, "source-S07")


@pytest.mark.parametrize("document", [made_up_document(), made_up_document(AS_FOUND),
                                      new_document(), every_source()])  # fmt: skip
def test_the_page_is_whole_as_its_year_comes_in(visit, document):
    check(shown(visit, document))
    check(reckoned(visit, document))


def test_every_derate_is_a_line_with_its_reason_and_what_is_left(visit):
    screen = shown(visit, made_up_document())
    rows = [[cell.text for cell in row.named("th", "td")] for row in
            screen.at("source-S01").named("table")[0].named("tr")[1:]]  # fmt: skip
    assert [(row[0], row[2]) for row in rows] == [
        ("Marked", "90 A"), ("Speed", "76.6 A"), ("Heat", "57.5 A"), ("Limit", "50 A"),
    ]  # fmt: skip
    text = told(screen, "source-S02")
    for line in ("Glass", "Warm cells", "Shade", "Dirt and salt", "Mismatch", "Wiring"):
        assert line in text
    assert "Brings 121 Ah a day at anchor, 183 on a clear day and 50 on a dull one" in text


def test_both_controllers_stand_side_by_side(visit):
    text = told(shown(visit, made_up_document()), "source-S02")
    assert "(MPPT) (fitted) passes on what the panel makes 121 50" in text
    assert "bank's 13.2 V 88 35" in text


def test_drag_is_told_and_knots_are_not_claimed(visit):
    """Rotor 0.24 m at 5 kn, power coefficient 0.25: 102 N × 25/30."""
    text = told(shown(visit, every_source(), "passage"), "source-S05")
    assert "85" in text.split("N,")[0].split()[-1]
    assert "kgf" in text
    assert "not said here" in text


def test_wind_tells_why_the_mean_wind_is_not_enough(visit):
    text = told(shown(visit, made_up_document()), "source-S04")
    assert "Mean wind at the hub" in text
    assert "Power in the mean wind" in text
    assert "does not count in this plan" in text


@pytest.mark.parametrize(
    ("kind", "words"),
    [("alternator", "while the engine turns"), ("solar", "live whenever there is light"),
     ("wind", "Turning blades"), ("generator", "Carbon monoxide"), ("shore", "can kill"),
     ("water", "takes fingers")],
)  # fmt: skip
def test_a_caution_stands_before_every_field_of_its_step(visit, kind, words):
    screen = shown(visit, every_source())
    ident = f"S0{list(WHOLE).index(kind) + 1}"
    block = screen.at(f"source-{ident}")
    assert words in block.text
    every = list(block.every())
    care = next(one for one in every if "caution" in str(one.attributes.get("class")))
    assert every.index(care) < min(every.index(one) for one in block.named("input", "table"))


def test_every_field_of_a_source_can_be_reached(visit):
    shown(visit, every_source())
    reached = set()
    for kind, ident in zip(WHOLE, ("S01", "S02", "S03", "S04", "S05", "S06"), strict=True):
        names = {one for one in SOURCE if f"f-sources-{ident}-{one}" in idents(visit.screen)}
        assert {"kind", "marked", "counted", "note"} <= names, kind
        reached |= names
    assert reached == set(SOURCE)


def idents(screen):
    return {str(one.attributes.get("id")) for one in screen.every()}


def test_the_bank_takes_the_least_of_three(visit):
    text = told(reckoned(visit, made_up_document()), "charging-bank")
    assert "Takes 138 A at most" in text
    assert "S01 Engine alternator, from 95 %" in text
    assert "there" in text
    assert "38 Ah of the 183 Ah" in text
    assert "Lithium is not compensated" in text
    text = told(shown(visit, made_up_document(AS_FOUND)), "charging-bank")
    assert "fit the sensor on the bank" in text
    assert "explodes" in text


def test_volts_follow_the_temperature_of_a_lead_bank(visit):
    """Flooded lead: 14.4 V at 25 °C and −5 mV a cell and degree, so 15.2 V at 5 °C."""
    cold = with_value(made_up_document(AS_FOUND), "bank.temperature", "5 degC")
    row = next(row for row in shown(visit, cold).at("charging-bank").named("tr")
               if row.text.split()[0] == "Absorb")  # fmt: skip
    assert said(15.2) in row.text


def test_a_cold_lithium_bank_takes_nothing(visit):
    cold = with_value(made_up_document(), "bank.temperature", "-5 degC")
    text = told(shown(visit, with_value(cold, "bank.charge", "50 %")), "charging-bank")
    assert "Takes no charge now" in text
    assert "never: nothing flows" in text


def test_all_of_little_sun_is_taken(visit):
    small = with_value(made_up_document(), "sources.S02.watts", "50 W")
    assert "takes all that comes by itself" in told(reckoned(visit, small), "charging-bank")
    none = {**made_up_document(), "sources": []}
    assert "No alternator, charger or generator" in told(shown(visit, none), "charging-bank")


def test_an_empty_boat_is_told_what_comes_first(visit):
    screen = shown(visit, new_document())
    assert "No source yet" in told(screen, "charging-sources-head")
    buttons = [one.attributes.get("data-arg") for one in screen.at("charging-add").named("button")]
    assert buttons == [kind for kind, _ in KINDS]
    assert "Enter latitude and month" in told(screen, "charging-place")
    assert "Not known yet: the bank's chemistry" in told(screen, "charging-year")


def test_a_place_in_the_dark_has_no_sun(visit):
    dark = with_value(made_up_document(), "boat.latitude", "80 N")
    screen = reckoned(visit, with_value(dark, "boat.month", "december"))
    assert "the sun does not rise to speak of none" in told(screen, "charging-place")
    assert "There is no sun in that month." in told(screen, "source-S02")
    assert "no sun" in told(screen, "charging-year")


def test_the_year_comes_in_and_marks_the_month(visit):
    visit.go(ROUTE)
    assert "Reckoning the months" in told(visit.screen, "charging-year")
    text = told(reckoned(visit, made_up_document()), "charging-year")
    assert "Reckoning" not in text
    assert "July ▲ chosen" in text
    assert "7.2" in text


def test_half_typed_numbers_stay_with_what_is_wrong(visit):
    shown(visit, made_up_document())
    visit.set("sources.S02.watts", "2 x")
    assert visit.screen.at("f-sources-S02-watts").attributes["value"] == "2 x"
    assert "problem" in str([one.attributes for one in visit.screen.at("source-S02").every()])


def test_the_first_questions_offer_the_sea_areas(visit):
    visit.go("#start/7")
    assert visit.screen.at("area")
    visit.go("#start/6")
    assert "Charging page" in visit.screen.at("page").text


def test_a_likely_day_is_drawn_by_the_hour(visit):
    screen = shown(visit, made_up_document())
    day = screen.at("charging-day")
    assert day.named("svg")
    assert len(screen.at("tide-table").named("tbody")[0].named("tr")) == 24
    assert "those of the sun at the 13.2 V of a bank it charges" in told(screen, "charging-day")
    visit.set("settings.charge", "Wh")
    assert "Watt-hours here are ampere-hours × 12 V." in told(visit.screen, "charging-day")
    assert not shown(visit, new_document()).at("charging-day").named("svg")


def test_equalising_warns_first_of_the_loads(visit):
    flooded = with_value(made_up_document(), "bank.chemistry", "flooded")
    text = told(shown(visit, flooded), "charging-bank")
    assert "15.5 V" in text
    assert "switch off every load first" in text
    assert "Equalise only" not in told(shown(visit, made_up_document()), "charging-bank")


def test_degrees_keep_their_letter(visit):
    cold = with_value(made_up_document(), "bank.temperature", "-2 degC")
    assert "°c" not in shown(visit, cold).at("page").text
    cold = with_value(made_up_document(), "bank.temperature", "5 degC")
    assert "°c" not in shown(visit, cold).at("page").text
