"""A number says its unit: every public function documents each number it takes with a [unit]."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MODULES = sorted((ROOT / "engine").rglob("*.py"))
UNITS = (ROOT / "engine" / "units.py").read_text(encoding="utf-8")
NUMBERS = {"float", "int", *re.findall(r"^(\w+) = NewType\(", UNITS, re.MULTILINE)}


def public_functions(tree: ast.Module) -> list[tuple[str, ast.FunctionDef]]:
    """Return functions of a module and methods of its classes, none of them private."""
    found = []
    for node in tree.body:
        if isinstance(node, ast.FunctionDef):
            found.append((node.name, node))
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            inside = [part for part in node.body if isinstance(part, ast.FunctionDef)]
            found += [(f"{node.name}.{part.name}", part) for part in inside]
    return [(name, node) for name, node in found if not node.name.startswith("_")]


def entries(docstring: str) -> list[tuple[str, str, str]]:
    """Return section, entry and text of every parameter or result of a docstring."""
    section, found = "", []
    lines = docstring.splitlines()
    for line, below in zip(lines, [*lines[1:], ""], strict=True):
        if below and set(below) == {"-"}:
            section = line
        elif section in {"Parameters", "Returns"} and line and not line.startswith((" ", "-")):
            found.append((section, line, ""))
        elif line.startswith("    ") and found and section in {"Parameters", "Returns"}:
            name, entry, text = found.pop()
            found.append((name, entry, f"{text} {line.strip()}"))
    return found


def unspoken(docstring: str) -> list[str]:
    """Return the entries of a number whose text names no unit."""
    missing = []
    for section, entry, text in entries(docstring):
        typed = entry.rpartition(" : ")[2] if section == "Parameters" else entry
        if set(re.findall(r"\w+", typed)) & NUMBERS and not re.search(r"\[[^\]]+\]", text):
            missing.append(entry)
    return missing


def takes(node: ast.FunctionDef) -> list[str]:
    """Return the parameters of a function that are numbers by their annotation."""
    stated = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
    return [
        one.arg
        for one in stated
        if one.annotation and set(re.findall(r"\w+", ast.unparse(one.annotation))) & NUMBERS
    ]


def complaints(source: str) -> list[str]:
    """Return what a module leaves unsaid."""
    found = []
    for name, node in public_functions(ast.parse(source)):
        docstring = ast.get_docstring(node) or ""
        named = {
            one.strip()
            for section, entry, _ in entries(docstring)
            if section == "Parameters"
            for one in entry.partition(" : ")[0].split(",")
        }
        found += [f"{name}: {one} is not documented" for one in takes(node) if one not in named]
        found += [f"{name}: “{entry}” has no [unit]" for entry in unspoken(docstring)]
    return found


TRADES = [
    path
    for path in MODULES
    if path.relative_to(ROOT / "engine").parts[0]
    in {
        "conductors",
        "batteries",
        "inverter",
        "protection",
        "feeders",
        "loads",
        "units.py",
        "finding.py",
        "charging",
        "solar",
        "simulate",
        "generator.py",
        "shore",
    }
]


@pytest.mark.parametrize("path", TRADES, ids=lambda path: str(path.relative_to(ROOT)))
def test_every_number_is_documented_with_its_unit(path):
    assert not complaints(path.read_text(encoding="utf-8"))


@pytest.mark.parametrize(
    "path", [path for path in MODULES if path not in TRADES], ids=lambda path: str(path)[-40:]
)
def test_what_is_documented_elsewhere_has_its_unit(path):
    found = complaints(path.read_text(encoding="utf-8"))
    assert not [one for one in found if one.endswith("has no [unit]")]


GOOD = '''
def drop(run: Metre, name: str) -> Volt:
    """Return the drop.

    Parameters
    ----------
    run : Metre
        One way. [m]
    name : str
        Of the circuit.

    Returns
    -------
    Volt
        Lost out
        and back. [V]
    """
'''


def test_the_reader_of_docstrings_sees_what_is_missing():
    assert not complaints(GOOD)
    assert complaints(GOOD.replace("[m]", "")) == ["drop: “run : Metre” has no [unit]"]
    assert complaints(GOOD.replace("[V]", "")) == ["drop: “Volt” has no [unit]"]
    assert complaints(GOOD.replace("name: str", "name: str, amps: int")) == [
        "drop: amps is not documented"
    ]
    assert not complaints(GOOD.replace("def drop", "def _drop").replace("[m]", ""))
    assert complaints(f"class A:\n    {GOOD.replace('[m]', '').replace(chr(10), chr(10) + '    ')}")
