"""A load within its limit never speaks for shore power: what is gravest stands above it."""

from copy import deepcopy

import pytest

from engine.check.shore_gravest import NO_PLUG
from engine.finding import Severity
from engine.plan.document import new_document, shaped
from engine.plan.made_up import made_up_document
from engine.views.wiring.shore_asked import ABOVE

FORBIDS = {
    "hot inlet": ("looks", {"inlet": "yes"}),
    "household lead": ("looks", {"lead": "yes"}),
    "no leakage trip": ("shore", {"leakage": "no"}),
    "neutral joined at the panel": ("shore", {"panel_bond": "yes"}),
    "a join a licensed person found": ("looks", {"bond": "yes"}),
    "another dock's volts": ("shore", {"dock": "16 A 230 V"}),
    "a failed result of nobody": ("records", {"id": "R09", "name": "Polarity", "result": "fail"}),
}


def changed(part, fields):
    document = deepcopy(made_up_document())
    if isinstance(document.get(part, {}), list):
        document[part] = [*document[part], fields]
    else:
        document[part] = {**document.get(part, {}), **fields}
    return document


def shown(visit, document, route="#wiring/shore"):
    visit.state.open_own(shaped(document))
    visit.go(route)
    return visit.screen.at("page")


@pytest.mark.parametrize("route", ["#wiring/shore", "#wiring/shore/licensed"])
@pytest.mark.parametrize("fault", FORBIDS)
def test_do_not_plug_in_stands_above_the_load(visit, fault, route):
    text = shown(visit, changed(*FORBIDS[fault]), route).text
    assert NO_PLUG in text
    if "Load alone:" in text:
        assert text.index(NO_PLUG) < text.index("Load alone:")
    first = min(text.index(one) for one in ("Within limit", "within 30 A") if one in text)
    assert text.index(NO_PLUG) < first


@pytest.mark.parametrize("fault", FORBIDS)
def test_a_circuit_within_its_limit_says_so_too(visit, fault):
    text = shown(visit, changed(*FORBIDS[fault]), "#wiring/shore/A03").text
    assert text.index(NO_PLUG) < text.index("Within limit")


def test_the_answer_that_stays_in_sight_repeats_it(visit):
    page = shown(visit, changed(*FORBIDS["hot inlet"]))
    assert page.at("shore-answer").text.startswith(NO_PLUG)


def test_the_load_speaks_of_itself_alone(visit):
    for route in ("#wiring/shore", "#wiring/shore/licensed"):
        text = shown(visit, made_up_document(), route).text
        assert NO_PLUG not in text
        assert "Load alone: within 30 A" in text


def test_an_empty_plan_with_a_hot_inlet_says_so(visit):
    page = shown(visit, {**new_document(), "looks": {"inlet": "yes"}})
    assert NO_PLUG in page.at("shore-gravest").text
    assert "The shore inlet or its plug" in page.at("shore-asked").text


def test_many_grave_findings_are_folded_after_the_first(visit):
    document = changed("looks", {"inlet": "yes", "lead": "yes", "bond": "yes", "leakage": "no"})
    part = shown(visit, document).at("shore-gravest")
    rows = [len(one.named("li")) for one in part.named("ul")]
    assert rows[0] == ABOVE
    assert len(rows) == 2
    assert part.named("summary")[0].text == f"{rows[1]} more"


def test_what_was_asked_is_folded_under_its_count_and_gravest(visit):
    part = shown(visit, changed(*FORBIDS["hot inlet"])).at("shore-asked")
    summary = part.named("summary")[0].text
    count = len(part.named("tbody")[0].named("tr"))
    assert summary.startswith(f"{count} asked")
    assert summary.endswith("Stop")


def test_the_looks_of_shore_power_are_among_what_was_asked(visit):
    looks = {"inlet": "yes", "lead": "no", "leakage": "", "isolator": "unknown", "bond": "no"}
    part = shown(visit, changed("looks", looks)).at("shore-asked")
    rows = [row.text for row in part.named("tbody")[0].named("tr")]
    assert any("hot, brown or loose" in row and "Stop" in row for row in rows)
    assert any("household lead" in row and "Within limit No, by looking." in row for row in rows)
    open_ = part.at("shore-open").text
    assert "Is there a leakage trip with a test button" in open_
    assert "Is there a galvanic isolator" in open_


def test_a_finding_on_the_sheet_has_one_word(visit):
    document = changed("looks", {"isolator": "no", "inlet": "yes"})
    rows = shown(visit, document, "#wiring/shore/licensed").at("licensed-mend").named("li")
    assert rows
    words = {one.value for one in Severity}
    for row in rows:
        verdicts = [one.text.lower() for one in row.named("span")
                    if "verdict" in str(one.attributes.get("class"))]  # fmt: skip
        assert len(verdicts) == 1
        assert verdicts[0] in words
        assert not row.text.startswith(("Stop should", "Stop stop"))


def test_the_sheet_fills_in_what_was_found(visit):
    page = shown(visit, made_up_document(), "#wiring/shore/licensed")
    table = page.at("licensed-states").named("table")[0]
    labels = [one.text for one in table.named("thead")[0].named("th")]
    assert labels[1:3] == ["Should be", "In this plan"]
    assert labels[-2:] == ["Should be found", "Found"]
    found = [row.named("td")[-1].text for row in table.named("tbody")[0].named("tr")]
    assert any("open on shore" in one for one in found)
    assert "" not in found


def test_a_sheet_without_a_name_or_a_day_has_a_whole_foot(visit):
    page = shown(visit, new_document(), "#wiring/shore/licensed")
    foot = next(one for one in page.every() if "print-foot" in str(one.attributes.get("class")))
    assert foot.text.startswith("No name yet. ")
    assert ". ." not in foot.text


@pytest.mark.parametrize("route", ["#wiring/shore/licensed", "#wiring/shore/A03"])
def test_a_sheet_keeps_the_first_line_of_its_dangers(visit, route):
    page = shown(visit, made_up_document(), route)
    dangers = [one for one in page.every() if "danger" in str(one.attributes.get("class"))]
    assert all("brief" in str(one.attributes["class"]) for one in dangers)


def test_an_owners_acts_and_a_licensed_persons_stand_apart(visit):
    danger = shown(visit, made_up_document()).at("caution-shore")
    owner, licensed = danger.named("ul")
    assert "Opening an AC panel" in licensed.text
    assert "prove it dead" in licensed.text
    assert "panel" not in owner.text
    order = ("dock breaker and boat main off", "then boat end", "then dock end",
             "then dock breaker", "then boat main")  # fmt: skip
    places = [owner.text.index(one) for one in order]
    assert places == sorted(places)
    assert "nobody in the water, and nothing wet, hot or damaged" in owner.text


def test_about_says_what_is_worked_out(visit):
    text = shown(visit, made_up_document(), "#papers").at("papers-about").text
    done = text[: text.index("worked out")]
    for one in ("shore power", "fault current", "DC network"):
        assert one in done
