"""What comes late to the browser is asked for by nothing early, and is simply here natively."""

import json
import subprocess
import sys
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

import pytest

from engine import late
from engine.sums import SUMS, TITLES
from engine.sums.late import LATE as LATE_SUMS
from engine.sums.titles import LATE_TITLES
from engine.views import late as pages
from engine.views import page
from engine.views.parts.html import block, tag
from tests.session.page import Page

ROOT = Path(__file__).parents[1]
PACKING = ROOT / "site" / "boot" / "packing.py"
# A visit with nothing of the late parcel, then with it: what the page says, and what was imported.
VISIT = """
import json, sys
late = tuple(json.loads(sys.argv[1]))
class Early:
    def __init__(self, finder):
        self.finder = finder
    def find_spec(self, name, path=None, target=None):
        place = name.replace(".", "/")
        if not is_here and {place + "/__init__.py", place + ".py"} & set(late):
            return None
        return self.finder.find_spec(name, path, target)
    def invalidate_caches(self):
        pass
is_here = False
sys.meta_path[:] = [Early(one) for one in sys.meta_path]
import engine.door as door
def ask(**event):
    return json.loads(door.answer(json.dumps({"events": [event]})))
door.warm()
told = [ask(kind="open", route="#home"), ask(kind="go", route="#sum/sun-day")]
told.append(ask(kind="state", key="later", value="missing: no connection"))
told += [ask(kind="go", route="#energy/ahead"), ask(kind="go", route="#sum/drop?current=6+A")]
before = set(sys.modules)
is_here = True
ask(kind="state", key="later", value="here")
told.append(ask(kind="go", route="#sum/sun-day?latitude=43"))
import engine.sums.late, engine.views.late
told.append(ask(kind="go", route="#energy/ahead"))
told.append(ask(kind="more"))
print(json.dumps([told, sorted(set(sys.modules) - before)]))
"""


@pytest.fixture(scope="module")
def later():
    spec = spec_from_file_location("packing", PACKING)
    assert spec
    assert spec.loader
    packing = module_from_spec(spec)
    spec.loader.exec_module(packing)
    return packing.late_modules(ROOT / "engine")


@pytest.fixture(scope="module")
def visit(later):
    command = [sys.executable, "-c", VISIT, json.dumps(later)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    told, imported = json.loads(done.stdout)
    return ["".join(html for _, html in reply["fragments"]) for reply in told], imported, told


def test_the_days_ahead_come_late_and_home_does_not(later):
    assert {"engine/simulate/run.py", "engine/solar/place.py", "engine/ahead/setup.py",
            "engine/views/late.py", "engine/sums/sun_day.py"} <= set(later)  # fmt: skip
    assert not {"engine/views/home/home.py", "engine/plan/read.py", "engine/door.py"} & set(later)


def test_a_late_module_stands_after_all_that_it_imports(later):
    assert later.index("engine/solar/sun.py") < later.index("engine/solar/sky.py")
    assert later.index("engine/ahead/setup.py") < later.index("engine/views/late.py")


def test_home_draws_and_knows_every_sum_without_it(visit):
    (home, *_), _, _ = visit
    assert all(title in home for title in TITLES.values())


def test_a_late_sum_says_that_it_is_coming_or_why_not(visit):
    (_, waiting, missing, *_), _, _ = visit
    assert TITLES["sun-day"] in waiting
    assert "Fetching the part that reckons days ahead" in waiting
    assert "no connection" in missing
    assert "Connect once" in missing


def test_no_long_work_begins_without_it(visit):
    assert "more" not in visit[2][3]


def test_once_it_is_here_it_answers(visit):
    assert "Wh/m²" in visit[0][5]
    assert visit[2][6]["more"]


def test_it_needs_nothing_that_is_not_awake_yet(visit, later):
    """Else a page would wait for files that are only a fallback."""
    imported = [name.replace(".", "/") for name in visit[1]]
    assert imported
    assert not [one for one in imported if not {f"{one}/__init__.py", f"{one}.py"} & set(later)]


def test_titles_and_sums_are_the_same_ones():
    assert set(LATE_TITLES) == set(LATE_SUMS)
    assert {name: SUMS[name].title for name in SUMS} == TITLES
    assert list(SUMS) == list(TITLES)
    assert len(SUMS) == len(TITLES)
    assert "none" not in SUMS
    assert SUMS.get("none") is None


def test_the_addresses_of_late_pages_are_those_that_come():
    assert set(pages.PAGES) | set(pages.ROWS) == page.LATE
    assert not page.LATE & set(page.PAGES)


def test_a_late_page_shows_once_it_is_here(monkeypatch):
    address = ("energy", "trial")
    monkeypatch.setattr(page, "LATE", frozenset({address}))
    monkeypatch.setitem(pages.PAGES, address, lambda _: (block("trial", tag("h1", "Trial")),))
    monkeypatch.setitem(pages.ROWS, address, lambda _, row: (block("trial", tag("h1", row)),))
    visit = Page(monkeypatch)
    with monkeypatch.context() as gone:
        gone.setattr(page, "here", lambda: False)
        visit.open("#energy/trial")
        assert visit.screen.at("late").text.startswith("Fetching")
        assert visit.screen.named("h1")[0].text == "Energy"
    visit.send({"kind": "state", "key": "later", "value": "here"})
    assert visit.screen.at("trial").text == "Trial"
    visit.go("#energy/trial/T7")
    assert visit.screen.at("trial").text == "T7"


def test_natively_all_is_here():
    assert late.here()
