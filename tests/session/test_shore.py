"""Shore power as used: the load board, circuits, results, and the licensed person's sheet."""

import pytest


def words(visit):
    return visit.screen.at("shore-answer").text


def test_switching_the_microwave_on_trips_and_says_which_pair(visit):
    visit.go("#wiring/shore")
    assert "80 % of 30 A" in words(visit)
    visit.set("show.shore.A06.1", "yes")
    assert "it trips" in words(visit)
    assert "109 %" in words(visit)
    assert "microwave and kettle" in visit.screen.at("shore-load").text
    visit.set("show.shore.A03.1", "no")
    assert "Load alone: above 80 % of 30 A" in words(visit)
    assert "A03.1" not in (visit.state.plugged or ())


def test_the_load_board_never_changes_the_plan_nor_its_findings(visit):
    visit.go("#wiring/shore")
    before = visit.document
    strip = visit.screen.at("strip").text
    visit.set("show.shore.A06.1", "yes")
    assert visit.document is before
    assert visit.screen.at("strip").text == strip


def test_nothing_and_as_planned_again(visit):
    visit.go("#wiring/shore")
    whole = words(visit)
    visit.do("plug-none")
    assert "Nothing is switched on" in words(visit)
    visit.do("plug-planned")
    assert words(visit) == whole


def test_another_boat_starts_as_planned(visit):
    visit.set("show.shore.A06.1", "yes")
    visit.do("as-found")
    assert visit.state.plugged is None


def test_add_fill_and_delete_a_circuit(visit):
    visit.go("#wiring/shore")
    visit.do("add-ac")
    assert visit.state.route == ("wiring", "shore", "A07")
    assert visit.reply["focus"] == "f-ac-A07-name"
    visit.set("ac.A07.appliances", "toaster 900 W")
    visit.set("ac.A07.breaker", "15")
    assert visit.document["ac"][-1]["breaker"] == "15 A"
    visit.go("#wiring/shore")
    assert "toaster" in words(visit)
    visit.go("#wiring/shore/A07")
    visit.do("delete-row", "ac.A07")
    assert visit.state.route == ("wiring", "shore")
    assert "toaster" not in words(visit)


def test_copy_and_move_a_circuit(visit):
    visit.go("#wiring/shore/A03")
    visit.do("copy-row", "ac.A03")
    assert [row["id"] for row in visit.document["ac"]][3] == "A07"
    visit.do("move-up", "ac.A07")
    assert visit.document["ac"][2]["id"] == "A07"


def test_add_and_delete_a_result(visit):
    visit.go("#wiring/shore")
    visit.do("add-record")
    assert visit.reply["focus"] == "f-records-R04-name"
    visit.set("records.R04.name", "Insulation")
    visit.set("records.R04.result", "fail")
    visit.set("records.R04.person", "Yard electrician")
    assert "stop now" in visit.screen.at("strip").text
    visit.go("#home/findings")
    assert "#wiring/shore" in {
        one.attributes.get("href") for one in visit.screen.at("page").named("a")
    }
    visit.do("delete-row", "records.R04")
    assert "stop now" not in visit.screen.at("strip").text


@pytest.mark.parametrize(
    ("path", "text", "named"),
    [
        ("ac.A03.breaker", "-15 A", "-15 A"),
        ("ac.A03.appliances", "kettle", "kettle"),
        ("shore.service", "600 V", "600 V"),
        ("shore.cord_length", "long", "long"),
        ("shore.leakage_trip", "30 kg", "30 kg"),
    ],
)
def test_what_cannot_be_read_is_named_beside_its_field(visit, path, text, named):
    visit.go("#wiring/shore/A03" if path.startswith("ac.") else "#wiring/shore")
    visit.set(path, text)
    page = visit.screen.at("page")
    problems = [one for one in page.every() if one.attributes.get("class") == "problem"]
    if path == "shore.service":
        assert "600 V" in str(visit.state.refused[path])
    else:
        assert any(named in one.text for one in problems)


def test_a_transfer_with_no_source_is_named(visit):
    visit.do("start-own")
    visit.set("shore.transfer", "switch")
    visit.go("#wiring/shore")
    assert "no source" in visit.screen.at("page").text


def test_the_sheet_shows_what_is_left_to_mend(visit):
    visit.set("shore.main_poles", "1")
    visit.go("#wiring/shore/licensed")
    assert "one conductor only" in visit.screen.at("licensed-mend").text
    assert "Yard electrician" in visit.screen.at("licensed-results").text
    assert "reads open on board" in visit.screen.at("licensed-states").text
