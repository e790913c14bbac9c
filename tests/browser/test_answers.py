"""A newcomer reaches the three answers, makes mistakes, goes offline, and sends the plan on."""

import json
import re
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import Browser

if TYPE_CHECKING:
    from tests.browser.conftest import Host, Reader

pytestmark = pytest.mark.browser


def test_the_first_paint_carries_the_answer(site: str, browser: Browser) -> None:
    """Prerendered by the engine's own views: no script runs at all here."""
    page = browser.new_context(java_script_enabled=False).new_page()
    page.goto(site)
    words = page.locator("#page").inner_text()
    assert "Start my boat" in words
    assert re.search(r"About\s146\sAh a day", words)


def test_seven_questions_give_a_wide_answer(page_ready: "Reader") -> None:
    """An 11 m sloop: fridge, pilot, plotter, LED lights, two flooded 110 Ah, the rest unknown."""
    reader = page_ready.press("start-own")
    reader.type_in("boat.name", "Try-out")
    for place in (0, 2, 5, 7):
        reader.go("#start/3").page.locator(f'[name="start.have.{place}"]').check()
        reader.settle()
    reader.go("#start/4").press("dont-know")
    reader.go("#start/5").choose("bank.chemistry", "flooded")
    reader.type_in("bank.capacity", "2 x 110 Ah")
    reader.go("#start/answer")
    words = reader.text()
    low, high = map(int, re.findall(r"between (\d+) and (\d+)", words)[0])
    assert high > 1.4 * low
    assert "Three things that would sharpen this most" in words
    assert "Fridge" in words
    assert re.search(r"bank alone lasts about", words)


def test_one_wire_standing_in_a_locker(page_ready: "Reader") -> None:
    """6 A, 16 ft away, 14 AWG in hand, engine space on the way: too thin for 3 %, by the drop.

    By hand: 10.75 × 6 × 32 / 4106.7 = 0.5026 V, 4.19 % of 12 V.
    """
    page_ready.page.set_viewport_size({"width": 390, "height": 844})
    page_ready.go("#sum/conductor")
    page_ready.type_in("sum.conductor.current", "6")
    page_ready.type_in("sum.conductor.run", "16 ft")
    page_ready.type_in("sum.conductor.in_hand", "14 AWG")
    words = page_ready.text("#sum-answer").replace("\u00a0", " ")
    assert "not enough, by drop" in words
    assert "4.19 % where 3 % may be lost" in words
    assert "12 SAE" in words
    assert "run=16+ft" in page_ready.page.url


def test_tonight(page_ready: "Reader") -> None:
    """1 000 W for six minutes from 280 Ah of lithium at 55 %: a few percent, no trip."""
    reader = page_ready.press("start-own").go("#wiring/inverter")
    reader.type_in("inverter.rating", "1500 W")
    reader.choose("bank.chemistry", "lithium")
    reader.type_in("bank.capacity", "280")
    reader.type_in("bank.charge", "55")
    reader.press("add-appliance")
    reader.type_in("loads.L01.name", "Microwave")
    reader.type_in("loads.L01.draw", "1000 W")
    reader.type_in("loads.L01.hours_anchor", "6 min")
    words = reader.go("#wiring/inverter").text("#inverter-answer").replace("\u00a0", " ")
    assert "from 55 % to the reserve line at 20 %" in words
    assert re.search(r"leave 5[0-3](\.\d)? %", words)


MISTAKES = (
    ("12,5", "12,5 m", ""),
    ("5'6\"", "5'6\"", ""),
    ("3 kg", "3 kg", "weight"),
    ("1,250", "1,250", "1250 or 1.250"),
    ("4 km", "4 km", "more than"),
    ("-3", "-3 m", "above"),
    ("0", "0 m", "above"),
    ("four", "four", "not a length"),
    ("1e309", "1e309", "beyond"),
    ("NaN", "NaN", "not a length"),
    ("<script>alert(1)</script>", "<script>alert(1)</script>", "not a length"),
)


def test_what_is_typed_stays_and_is_explained(page_ready: "Reader") -> None:
    reader = page_ready.press("start-own").go("#wiring/circuits").press("add-circuit")
    for typed, kept, asks in MISTAKES:
        reader.type_in("circuits.D01.run", typed)
        assert reader.page.locator('[name="circuits.D01.run"]').input_value() == kept
        problem = reader.page.locator("#f-circuits-D01-run-p")
        assert (asks in problem.inner_text()) if asks else problem.count() == 0, typed
    assert reader.errors == []
    assert reader.go("#home").text()


def test_a_plan_survives_offline_a_restart_and_damage_on_the_way(
    reader: "Reader", stoppable_site: "Host"
) -> None:
    reader.open(stoppable_site.address).press("start-own")
    reader.type_in("boat.name", "Keepsake")
    reader.go("#start/3").page.locator('[name="start.have.0"]').check()
    reader.settle().wait_offline()
    stoppable_site.stop()
    context = reader.page.context
    reader.page.close()
    reader.page = context.new_page()
    reader.open(stoppable_site.address).go("#energy/use")
    assert reader.page.locator('[name="loads.L01.name"]').input_value() == "Fridge"
    before = reader.text("#use-answer")
    reader.go("#energy/use/L01").type_in("loads.L01.hours_anchor", "6 h")
    assert reader.go("#energy/use").text("#use-answer") != before
    reader.press("undo")
    assert reader.text("#use-answer") == before
    reader.go("#papers").press("share")
    link = reader.page.locator("#link-text").input_value()
    place = link.index("#") + 40
    damaged = link[:place] + ("A" if link[place] != "A" else "B") + link[place + 1 :]
    reader.go(damaged[link.index("#") :])
    assert "damaged" in reader.text()
    reader.go(link[link.index("#") :])
    assert "Keepsake" in reader.text()
    reader.press("accept")
    assert reader.go("#papers").text("#papers-plans").count("Keepsake") == 2


def test_undo_survives_a_reload(page_ready: "Reader") -> None:
    page_ready.press("start-own").type_in("boat.name", "First")
    page_ready.type_in("boat.name", "Second")
    page_ready.page.wait_for_timeout(400)
    page_ready.page.reload()
    page_ready.wait_ready()
    assert "Second" in page_ready.text("#strip")
    page_ready.press("undo")
    assert "First" in page_ready.text("#strip")
    page_ready.press("redo")
    assert "Second" in page_ready.text("#strip")


def test_a_pasted_table_is_looked_at_before_it_is_taken(page_ready: "Reader") -> None:
    reader = page_ready.press("start-own").go("#energy/paste")
    table = (
        "Load\tAmps\tHours\t\tNote\n"
        "Fridge\t4.6\t10\t\t=HYPERLINK(1)\n"
        "Pump\tsix\t0.5\t\t\n"
        "Total\t10.6\t\t\t\n"
    )
    reader.page.locator("#paste-text").fill(table)
    reader.press("paste")
    words = reader.text("#paste-preview")
    assert "2 loads found" in words
    assert "total" in words
    assert "“six” is not a current" in words
    reader.press("take-table")
    assert reader.page.locator('[name="loads.L02.draw"]').input_value() == "six"


def test_choices_of_showing_change_nothing_stored(page_ready: "Reader") -> None:
    reader = page_ready.press("start-own").go("#wiring/circuits").press("add-circuit")
    reader.type_in("circuits.D01.run", "4.5 m")
    reader.page.locator("#menu > summary").click()
    reader.choose("settings.length", "ft")
    assert reader.page.locator('[name="circuits.D01.run"]').input_value() == "4.5 m"
    assert "29.5" in reader.text("#circuit-form")
    reader.type_in("circuits.D01.run", "14")
    assert reader.page.locator('[name="circuits.D01.run"]').input_value() == "14 ft"


def test_the_exported_file_is_the_plan(page_ready: "Reader") -> None:
    reader = page_ready.press("start-own").type_in("boat.name", "Filed").go("#papers")
    with reader.page.expect_download() as waiting:
        reader.page.locator('[data-do="export"]').first.click()
    saved = json.loads(waiting.value.path().read_text())
    assert saved["boat"]["name"] == "Filed"
    reader.page.set_input_files("#receive-file", str(waiting.value.path()))
    reader.wait("document.querySelector('.preview')")
    assert "Filed" in reader.text(".preview")
