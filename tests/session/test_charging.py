"""Buttons of the Charging page: a source of a kind in one tap, and a sea area in one undo step."""

import pytest

from engine.plan.source_fields import KINDS
from engine.session import charging, work
from engine.solar.tables import SEA_AREAS


@pytest.mark.parametrize("kind", [kind for kind, _ in KINDS])
def test_a_source_is_added_in_one_tap(mine, kind):
    mine.go("#energy/charging")
    reply = mine.do("add-source", kind)
    assert mine.document["sources"] == [{"id": "S01", "kind": kind}]
    assert reply["focus"] == "f-sources-S01-marked"
    assert mine.screen.at("f-sources-S01-marked")


def test_a_kind_nobody_knows_is_asked_for(mine):
    mine.go("#energy/charging")
    reply = mine.do("add-source", "sails")
    assert mine.document["sources"] == [{"id": "S01"}]
    assert reply["focus"] == "f-sources-S01-kind"
    assert mine.screen.at("f-sources-S01-kind")


def test_a_source_is_copied_and_deleted(visit):
    visit.go("#energy/charging")
    reply = visit.do("copy-row", "sources.S02")
    rows = visit.document["sources"]
    assert [row["id"] for row in rows] == ["S01", "S02", "S05", "S03", "S04"]
    assert {**rows[2], "id": "S02"} == rows[1]
    assert reply["focus"] == "f-sources-S05-marked"
    visit.do("delete-row", "sources.S05")
    assert [row["id"] for row in visit.document["sources"]] == ["S01", "S02", "S03", "S04"]


def test_a_sea_area_moves_the_boat_in_one_step(mine):
    mine.go("#energy/charging")
    mine.set("boat.latitude", "95 N")
    reply = mine.set("start.place.area", "Galápagos")
    boat = mine.document["boat"]
    assert (boat["latitude"], boat["longitude"]) == ("1 S", "90 W")
    assert boat["place"] == "Galápagos"
    assert "Galápagos: 1 S, 90 W" in reply["say"]
    mine.do("undo")
    assert "longitude" not in mine.document["boat"]
    assert mine.document["boat"]["latitude"] == "95 N"


def test_a_place_that_has_a_name_keeps_it(visit):
    visit.set("start.place.area", "Fiji")
    assert visit.document["boat"]["place"] == "Hesper Skerries"
    assert visit.document["boat"]["longitude"] == "178 E"


def test_the_name_of_an_area_goes_with_the_boat_and_a_tap_is_one_step(mine):
    mine.set("start.place.area", "Galápagos")
    mine.set("start.place.area", "Fiji")
    assert mine.document["boat"]["place"] == "Fiji"
    mine.set("start.place.spot", "38 N, 30 W")
    boat = mine.document["boat"]
    assert (boat["latitude"], boat["longitude"]) == ("38 N", "30 W")
    assert "place" not in boat
    mine.do("undo")
    assert mine.document["boat"]["longitude"] == "178 E"
    assert mine.document["boat"]["place"] == "Fiji"


def test_a_tap_on_land_moves_to_the_nearest_sea(mine):
    reply = mine.set("start.place.spot", "0, 25 E")
    assert "That is land; the nearest sea is" in reply["say"]
    assert mine.state.plan().boat.longitude != 25.0
    mine.set("start.place.spot", "somewhere")
    assert mine.notice()


@pytest.mark.parametrize("name", SEA_AREAS.rows)
def test_every_area_is_read_back_as_it_was_meant(visit, name):
    visit.set("start.place.area", name)
    boat = visit.state.plan().boat
    assert (boat.latitude, boat.longitude) == pytest.approx(SEA_AREAS[name])


def test_no_such_area_and_none_yet(visit, monkeypatch):
    visit.set("start.place.area", "Atlantis")
    assert "No such sea area" in visit.notice()
    monkeypatch.setattr(charging, "here", lambda: False)
    visit.set("start.place.area", "Fiji")
    assert "still being fetched" in visit.notice()


def test_the_year_is_kept_until_the_plan_changes(visit):
    reply = visit.go("#energy/charging")
    assert reply["more"]
    for _ in range(4):
        reply = visit.send({"kind": "more", "steps": 10})
    assert "more" not in reply
    assert visit.state.progress.done == 1
    assert visit.set("sources.S02.watts", "300 W")["more"]


def test_no_year_while_its_rooms_are_not_here(visit, monkeypatch):
    monkeypatch.setattr(work, "here", lambda: False)
    assert work.year_of_the_plan(visit.state) is None
