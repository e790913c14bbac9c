"""The What if page: answers first, work in slices, an evening, and variants that are kept."""

import re

import pytest

from engine.plan.made_up import AS_FOUND, made_up_document


@pytest.fixture
def page(visit):
    """Return the page of the made-up boat before any long work is done."""
    visit.go("#energy/what-if")
    return visit


def text(page, ident):
    return page.screen.at(ident).text


def finish(page):
    while page.reply.get("more"):
        page.send({"kind": "more", "steps": 50})


def test_the_page_answers_at_once_and_says_what_is_still_reckoned(page):
    lasts = r"part cloud every day and no engine, the charge lasts \d+(\.\d)? days"
    assert re.search(lasts, text(page, "whatif-answer"))
    assert "reckoning…" in text(page, "whatif-columns")
    assert "Reckoning…" in text(page, "whatif-ranking")
    assert page.reply["more"]


def test_once_reckoned_the_best_change_stands_first(page):
    finish(page)
    assert text(page, "whatif-answer").index("100 W more panel gains most") > 0
    assert "times in 10" in text(page, "whatif-columns")
    assert "reckoning" not in text(page, "whatif-columns").lower()
    ranking = text(page, "whatif-ranking")
    assert ranking.index("100 W more panel") < ranking.index("100 Ah more bank")
    assert "Fridge compressor (running): duty" in text(page, "whatif-next")
    links = [one.attributes["href"] for one in page.screen.at("whatif-next").named("a")]
    assert links[0] == "#energy/use/L11"


def test_what_each_variant_changes_stands_before_its_figures(page):
    tables = page.screen.at("whatif-columns").named("table")
    assert "Watermaker, 30 L/h, hours at anchor: 0 h, was 1.5 h" in tables[0].text
    assert "Days to the reserve" in tables[1].text


def test_a_ranked_change_is_kept_as_a_variant_and_taken_back(page):
    finish(page)
    keep = next(
        one
        for one in page.screen.at("whatif-ranking").named("button")
        if one.attributes["data-do"] == "keep-variant"
    )
    page.do("keep-variant", keep.attributes["data-arg"])
    kept = page.document["variants"][-1]
    assert kept["id"] == "V05"
    assert kept["changes"].startswith("loads.")
    page.do("undo")
    assert len(page.document["variants"]) == 4


def test_an_empty_variant_is_added_and_changes_nothing(page):
    page.do("add-variant")
    assert page.reply["focus"] == "f-variants-V05-name"
    page.set("variants.V01.shown", None)
    page.set("variants.V02.shown", None)
    assert "V05" in text(page, "whatif-columns")
    page.do("delete-row", "variants.V05")
    assert "V05" not in text(page, "whatif-columns")


def test_a_line_that_changes_nothing_says_so_beside_its_field(page):
    page.set("variants.V01.changes", "bank.wheels = 4")
    problem = page.screen.at("f-variants-V01-changes-p").text
    assert "“bank.wheels” is no field of a plan." in problem
    assert "cannot say" in text(page, "whatif-columns")
    assert page.screen.at("f-variants-V01-changes").attributes["aria-invalid"] == "true"


def test_another_chemistry_brings_its_caution(page):
    assert "Charging lead-acid" not in text(page, "whatif-columns")
    page.set("variants.V01.shown", None)
    page.set("variants.V04.shown", "yes")
    assert "Charging lead-acid" in text(page, "whatif-columns")


def test_an_evening_is_answered_in_words(page):
    page.set("show.tonight.charge", "34")
    page.set("show.tonight.sky", "dull")
    found = text(page, "whatif-tonight")
    assert "At 34 % now you reach the reserve of 20 % about" in found
    assert "engine 1 h" in found
    assert "left off together" in found
    page.set("show.tonight.charge", "15 %")
    assert "at the reserve of 20 % or below it" in text(page, "whatif-tonight")
    page.set("show.tonight.charge", "100")
    page.set("show.tonight.sky", "clear")
    assert "for the next 8 days" in text(page, "whatif-tonight")


def test_an_evening_far_ahead_of_the_reserve_and_one_without_a_remedy(page):
    page.set("show.tonight.charge", "100")
    page.set("show.tonight.time", "12:00")
    page.set("show.tonight.sky", "dull")
    assert "about" in text(page, "whatif-tonight")
    assert "left off" in text(page, "whatif-tonight")
    page.set("policy.never", "yes")
    page.set("show.tonight.charge", "15")
    assert "Nothing here buys a whole day." in text(page, "whatif-tonight")


def test_what_cannot_be_read_of_an_evening_says_so_and_is_kept(page):
    page.set("show.tonight.time", "25:00")
    assert "“25:00” is no time of the day." in text(page, "whatif-tonight")
    assert page.screen.at("f-show-tonight-time").attributes["value"] == "25:00"
    assert "At 95 %" not in text(page, "whatif-tonight")
    page.do("start-own")
    assert page.state.tonight == {}


def test_volts_halve_currents_and_say_what_to_ask(page):
    found = text(page, "whatif-volts")
    assert "150 A" in found
    assert "75 A" in found
    assert "37.5 A" in found
    assert "12 V, least, now" in found
    assert "What is fitted now holds 24.2 kg." in found
    assert "Ask the nameplate" in found


def test_a_conductor_that_none_suits_and_a_circuit_not_known_say_so(page):
    page.set("circuits.D03.current", "900 A")
    page.set("circuits.D03.run", "90 m")
    page.set("circuits.D05.run", "?")
    found = text(page, "whatif-volts")
    assert "900 A, no conductor here is thick enough" in found
    assert re.search(r"at least [\d.]+ kg at 12 V \(1 circuit not counted", found)
    assert "is not known: Fridge." in found
    page.set("circuits.D03.current", "600 A")
    page.set("circuits.D03.run", "9 m")
    assert "600 A, 2 × " in text(page, "whatif-volts")


def test_a_plan_of_circuits_alone_is_told_its_volts(visit):
    visit.do("start-own")
    visit.do("add-circuit")
    for name, value in {"run": "5 m", "current": "10 A", "insulation": "105"}.items():
        visit.set(f"circuits.D01.{name}", value)
    visit.go("#energy/what-if")
    found = text(visit, "whatif-volts")
    assert "10 A" in found
    assert "Ask the nameplate" not in found


def test_an_empty_plan_says_what_is_missing_and_where(visit):
    visit.do("start-own")
    visit.go("#energy/what-if")
    lacking = visit.screen.at("whatif-lacking")
    assert [one.attributes["href"] for one in lacking.named("a")] == ["#energy/bank", "#energy/use"]
    assert visit.screen.at("f-boat-latitude")
    assert "No circuit" in text(visit, "whatif-volts")
    finish(visit)
    assert not visit.screen.at("whatif-answer").named("progress")


def test_a_policy_that_cannot_be_says_so(page):
    page.set("policy.quiet_from", "20 h")
    page.set("policy.quiet_to", "19.9 h")
    page.set("policy.least_run", "6 h")
    assert "does not fit between quiet hours" in text(page, "whatif-lacking")


def test_the_boat_as_found_is_asked_to_measure_her_shade(visit):
    visit.do("as-found")
    visit.go("#energy/what-if")
    finish(visit)
    assert "variants" not in made_up_document(AS_FOUND)
    assert "what shade leaves" in text(visit, "whatif-next")
    assert "None yet" in text(visit, "whatif-variants")


def test_without_an_engine_there_are_no_engine_hours(page):
    page.set("sources.S01.counted", None)
    finish(page)
    assert "Charging needed within 3 days" in text(page, "whatif-columns")
    assert "no engine" in text(page, "whatif-columns")
    assert "Engine saved a week" not in text(page, "whatif-ranking")


def test_a_sure_plan_has_nothing_to_measure(visit):
    visit.do("start-own")
    for path, value in {
        "boat.latitude": "20 N", "boat.month": "july", "bank.chemistry": "lithium",
        "bank.capacity": "100 Ah", "bank.age": "new",
    }.items():  # fmt: skip
        visit.set(path, value)
    visit.do("add-load")
    visit.set("loads.L01.draw", "2 A")
    visit.set("loads.L01.hours_anchor", "24 h")
    visit.go("#energy/what-if")
    finish(visit)
    assert "Nothing that is a guess" in text(visit, "whatif-next")
