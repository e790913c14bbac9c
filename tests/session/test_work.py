"""Long work goes on in slices, lets whatever is done meanwhile go first, and can be stopped."""

import pytest

from engine.problem import Problem
from engine.session import work
from engine.simulate.chance import Chance
from engine.views.parts.progress import progress_of

ADDRESS = "#energy/bank"


@pytest.fixture
def counting(visit, monkeypatch):
    """Ten steps on the page of the bank, each adding its number; every start is noted."""
    started = []

    def steps():
        total = 0
        for number in range(1, 11):
            total += number
            yield number / 10, total

    def job(state):
        def start():
            started.append(state.condition)
            return steps()

        return work.Job("counting", (state.document, state.condition), start)

    monkeypatch.setitem(work.JOBS, ("energy", "bank"), job)
    visit.do("look-around")
    return started


def more(visit, steps=1):
    return visit.send({"kind": "more", "steps": steps})


def progress(visit):
    found = visit.state.scene().progress
    return found and (round(found.done, 9), found.result, found.running)


def test_it_begins_on_arriving_and_the_page_comes_before_the_first_step(visit, counting):
    assert "more" not in visit.go("#wiring")
    assert progress(visit) is None
    assert visit.go(ADDRESS)["more"]
    assert (progress(visit), counting) == ((0.0, None, True), ["anchor"])


@pytest.mark.usefixtures("counting")
def test_each_slice_goes_on_until_all_is_done(visit):
    visit.go(ADDRESS)
    assert more(visit)["more"]
    assert progress(visit) == (0.1, 1, True)
    assert more(visit, 4)["more"]
    assert progress(visit) == (0.5, 15, True)
    assert "more" not in more(visit, 99)
    assert progress(visit) == (1.0, 55, False)
    assert "more" not in more(visit)
    assert progress(visit) == (1.0, 55, False)


@pytest.mark.parametrize("steps", [1, 3, 10, 5000, 0, -2, None])
@pytest.mark.usefixtures("counting")
def test_the_result_does_not_hang_on_the_slices(visit, steps):
    visit.go(ADDRESS)
    for _ in range(10):
        more(visit, steps)
    assert progress(visit) == (1.0, 55, False)


def test_an_edit_begins_it_anew_and_several_begin_it_once(visit, counting):
    visit.go(ADDRESS)
    more(visit, 3)
    edits = [{"kind": "set", "path": "bank.capacity", "value": f"{n} Ah"} for n in (280, 290, 300)]
    assert visit.send(*edits)["more"]
    assert progress(visit) == (0.0, None, True)
    assert len(counting) == 2
    visit.do("undo")
    assert len(counting) == 3


def test_what_changes_nothing_of_it_lets_it_go_on(visit, counting):
    visit.go(ADDRESS)
    more(visit, 3)
    assert visit.set("settings.charge", "Wh")["more"]
    assert progress(visit) == (0.3, 6, True)
    assert len(counting) == 1


@pytest.mark.usefixtures("counting")
def test_a_tap_goes_before_a_slice(visit):
    visit.go(ADDRESS)
    reply = visit.send(
        {"kind": "more", "steps": 5}, {"kind": "state", "key": "saved", "value": "1"}
    )
    assert reply["more"]
    assert progress(visit) == (0.0, None, True)


@pytest.mark.usefixtures("counting")
def test_leaving_drops_what_is_not_done(visit):
    visit.go(ADDRESS)
    more(visit, 3)
    assert "more" not in visit.go("#home")
    assert progress(visit) is None
    assert "more" not in more(visit, 3)
    visit.go(ADDRESS)
    assert progress(visit) == (0.0, None, True)


def test_what_is_done_is_still_there_on_coming_back(visit, counting):
    visit.go(ADDRESS)
    more(visit, 10)
    visit.go("#home")
    assert progress(visit) is None
    assert "more" not in visit.go(ADDRESS)
    assert progress(visit) == (1.0, 55, False)
    assert len(counting) == 1


@pytest.mark.usefixtures("counting")
def test_it_stops_and_goes_on(visit):
    visit.go(ADDRESS)
    more(visit, 4)
    assert "more" not in visit.do("stop-work")
    assert progress(visit) == (0.4, 10, False)
    assert visit.state.scene().progress.stopped
    assert "more" not in more(visit, 3)
    assert progress(visit) == (0.4, 10, False)
    assert visit.do("go-on")["more"]
    more(visit, 6)
    assert progress(visit) == (1.0, 55, False)
    for name in ("stop-work", "go-on"):
        visit.do(name)
        assert progress(visit) == (1.0, 55, False)


def test_without_work_nothing_stops_or_goes_on(visit):
    visit.go(ADDRESS)
    for reply in (visit.do("stop-work"), visit.do("go-on"), more(visit)):
        assert "more" not in reply
    assert progress(visit) is None


@pytest.mark.usefixtures("counting")
def test_trouble_is_told_and_ends_it(visit, monkeypatch):
    def steps():
        yield 0.5, "half"
        raise Problem("runs", "There is no sun.", "Enter a latitude.")

    job = work.Job("trouble", 1, steps)
    monkeypatch.setitem(work.JOBS, ("energy", "bank"), lambda _: job)
    visit.go(ADDRESS)
    assert "more" not in more(visit, 3)
    assert progress(visit) == (0.5, "half", False)
    found = visit.state.scene()
    assert not found.progress.stopped
    assert "Enter a latitude" in str(progress_of(found, "Counting"))


@pytest.mark.usefixtures("counting")
def test_work_that_finds_nothing_to_do_is_done(visit, monkeypatch):
    monkeypatch.setitem(
        work.JOBS, ("energy", "bank"), lambda _: work.Job("nothing", 1, lambda: iter(()))
    )
    visit.go(ADDRESS)
    assert "more" not in more(visit)
    assert progress(visit) == (1.0, None, False)


@pytest.mark.usefixtures("counting")
def test_the_bar_says_how_far_it_is(visit):
    def shown():
        return str(progress_of(visit.state.scene(), "Counting") or "")

    assert shown() == ""
    visit.go(ADDRESS)
    assert "Counting: 0\N{NO-BREAK SPACE}%" in shown()
    more(visit, 4)
    assert 'value="40"' in shown()
    assert "stop-work" in shown()
    visit.do("stop-work")
    assert "Stopped after 40\N{NO-BREAK SPACE}%" in shown()
    assert "go-on" in shown()
    visit.do("go-on")
    more(visit, 6)
    assert shown() == ""


@pytest.mark.parametrize("steps", [1, 7, 50])
def test_the_chances_are_the_same_however_they_are_sliced(visit, steps):
    """The last estimate of 500 runs: the same as in one go."""
    visit.do("look-around")
    visit.go("#energy/ahead")
    while more(visit, steps).get("more"):
        pass
    found = visit.state.scene().progress
    job = work.chance_of_the_days(visit.state)
    assert job
    [*_, (_, whole)] = job.start()
    assert isinstance(whole, Chance)
    assert found.result == whole
    assert (whole.runs, whole.asked) == (500, 500)


def test_an_empty_plan_has_no_chances(visit):
    visit.do("start-own")
    visit.go("#energy/ahead")
    more(visit, 3)
    assert progress(visit) == (1.0, None, False)


def test_no_chances_before_their_rooms_are_here(visit, monkeypatch):
    monkeypatch.setattr(work, "here", lambda: False)
    assert "more" not in visit.go("#energy/ahead")
    assert progress(visit) is None
