"""The house keeps its habits: short modules, plain words, and an engine that knows no machine."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
ENGINE = sorted((ROOT / "engine").rglob("*.py"))
LONGEST = 260
LONGER = {
    "engine/loads/day_use.py": "one answer, with all it rests on",
    "engine/session/commands.py": "every command of the page",
    "engine/units.py": "the door: every way a quantity is written",
    "engine/views/energy/use.py": "one screen",
    "engine/views/home/home.py": "one screen",
    "engine/views/papers/papers.py": "one screen",
}
"""Modules longer than that, each with its reason; split one rather than add one."""

SKIPPED = {"node_modules", "pictures", "__pycache__"}
TEXTS = [
    path
    for folder in ("engine", "site", "tests", ".ci")
    for path in sorted((ROOT / folder).rglob("*"))
    if path.suffix in {".py", ".md", ".js", ".mjs", ".css", ".html", ".json", ".toml", ".txt", ""}
    and path.is_file()
    and not SKIPPED & set(path.parts)
] + [path for path in sorted(ROOT.glob("*")) if path.suffix in {".py", ".md", ".toml"}]
BACKWARDS = ("odot", "emxif", "tpircsnart", "tnemucod dees")
"""Words of the making, not of the boat; spelt so that this file passes too."""
BANNED = re.compile(rf"\b(?:{'|'.join(word[::-1] for word in BACKWARDS)})\b", re.IGNORECASE)
TRADE_MARKS = re.compile(r"\b(?:MRB|AN|MID|MEG)[FLIA]\b")
MACHINE_PATH = re.compile(r"(?<![\w.])/(?:work|home(?!/pyodide)|tmp|root|Users)/\w")
URL = re.compile(r"\bhttps?://(?!127\.0\.0\.1|localhost|www\.w3\.org/)[\w.]+")
MACHINE = {"js", "pyodide", "os", "pathlib", "time", "random", "socket", "datetime", "threading"}


def shown(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


@pytest.mark.parametrize("path", ENGINE, ids=shown)
def test_a_module_is_seen_in_a_few_screens(path):
    lines = len(path.read_text(encoding="utf-8").splitlines())
    assert lines <= LONGEST or shown(path) in LONGER, f"{lines} lines"


@pytest.mark.parametrize("path", ENGINE, ids=shown)
def test_the_engine_knows_no_machine(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    found = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found |= {one.name.partition(".")[0] for one in node.names}
        elif isinstance(node, ast.ImportFrom):
            found.add((node.module or "").partition(".")[0])
    assert not found & MACHINE


@pytest.mark.parametrize("path", ENGINE, ids=shown)
def test_a_module_says_what_it_is(path):
    assert ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))


@pytest.mark.parametrize("path", TEXTS, ids=shown)
def test_no_word_that_belongs_elsewhere(path):
    text = path.read_text(encoding="utf-8")
    for pattern in (BANNED, TRADE_MARKS, MACHINE_PATH, URL):
        assert not pattern.findall(text)


def test_the_patterns_see_what_they_are_for():
    assert BANNED.search(f"# {BACKWARDS[0][::-1].upper()}: later")
    assert TRADE_MARKS.search("LNA epyt fo esuf"[::-1])
    assert MACHINE_PATH.search("enoemos/emoh/ ees"[::-1])
    assert URL.search("gro.elpmaxe//:sptth"[::-1])
    assert not URL.search("http://127.0.0.1:8314/")
    assert all((ROOT / name).exists() for name in LONGER)
