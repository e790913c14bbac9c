"""The wiring pages as used: what is switched on, who feeds whom, legs, and the boat as found."""

import pytest

from engine.check.findings import findings_of
from engine.plan.made_up import AS_FOUND


def words(visit):
    return visit.screen.at("network-answer").text


def test_switching_a_load_off_lifts_the_rest(visit):
    visit.go("#wiring/network")
    before = words(visit)
    visit.set("show.running.L36", "no")
    assert words(visit) != before
    assert visit.state.running is not None
    assert "L36" not in visit.state.running
    row = visit.screen.at("row-D05").text
    assert "+" in row
    visit.set("show.running.L36", "yes")
    assert "−" in visit.screen.at("row-D05").text


def test_nothing_and_all_again(visit):
    visit.go("#wiring/network")
    whole = words(visit)
    visit.do("run-none")
    assert "nothing draws" in words(visit)
    visit.do("run-condition")
    assert words(visit) == whole


def test_another_way_of_living_starts_afresh(visit):
    visit.go("#wiring/network")
    visit.set("show.running.L36", "no")
    visit.set("show.condition", "passage")
    assert visit.state.running is None
    assert "on passage" in words(visit)


def test_the_bank_at_its_reserve_line(visit):
    visit.go("#wiring/network")
    before = words(visit)
    visit.set("show.level", "lowest")
    assert words(visit) != before
    visit.set("show.level", "sideways")
    assert visit.state.level == "lowest"


def test_fed_from_the_bank_again(visit):
    visit.go("#wiring/circuits/D05")
    visit.set("circuits.D05.fed_from", "bank")
    assert "fed_from" not in visit.document["circuits"][4]
    visit.set("circuits.D05.fed_from", "D05")
    assert "D05 feeds itself" in visit.screen.at("page").text
    visit.set("circuits.D05.fed_from", "D77")
    assert "no circuit “D77”" in visit.screen.at("page").text


def test_a_run_from_its_legs(visit):
    """Z02 4.4 m and Z03 13.1 m with a tenth for bends: 19.25 m, each tape reading ± 0.3 m."""
    visit.set("circuits.D06.run", "")
    visit.set("circuits.D06.legs", "z02, Z03")
    run = next(one for one in visit.state.plan().circuits if one.ident == "D06").run
    assert run is not None
    assert (run.low, run.likely, run.high) == pytest.approx((18.59, 19.25, 19.91))
    visit.set("circuits.D06.bends", "0")
    run = next(one for one in visit.state.plan().circuits if one.ident == "D06").run
    assert run is not None
    assert run.likely == pytest.approx(17.5)


def test_a_leg_that_is_not_there(visit):
    visit.go("#wiring/circuits/D06")
    visit.set("circuits.D06.run", "")
    visit.set("circuits.D06.legs", "Z09")
    assert "no leg “Z09”" in visit.screen.at("page").text
    visit.do("add-leg")
    assert [row["id"] for row in visit.document["legs"]] == ["Z01", "Z02", "Z03", "Z04"]
    visit.set("circuits.D06.legs", "Z04")
    assert next(one for one in visit.state.plan().circuits if one.ident == "D06").run is None


def test_the_boat_as_found_and_back(visit):
    visit.do("as-found")
    assert visit.state.plan().boat.revision == AS_FOUND
    assert not visit.state.mine
    assert "No protection" in visit.screen.at("page").text
    visit.do("as-planned")
    assert visit.state.plan().boat.revision == "planned"


def test_feeders_in_a_ring_are_named_and_the_rest_still_answers(visit):
    visit.set("circuits.D01.fed_from", "D04")
    problems = [str(one) for one in visit.state.plan().problems]
    assert len(problems) == 2
    assert all("in a ring" in one for one in problems)
    visit.go("#wiring/network")
    assert "Not counted" in visit.screen.at("page").text
    visit.go("#wiring/circuits")
    assert "stop" in visit.screen.at("circuits-answer").text
    assert "It is fed by itself" in str([one.words for one in findings_of(visit.state.plan())])
