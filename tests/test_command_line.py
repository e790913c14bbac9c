"""The command line as another program meets it: text or JSON out, 0 or 2, never a crash."""

import io
import json
import runpy
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from engine.__main__ import main
from engine.plan.document import new_document, written
from engine.plan.made_up import AS_FOUND, made_up_document
from engine.shore.earthing import CAUTION, SWIM_CAUTION
from engine.sums import SUMS

ROOT = Path(__file__).parents[1]
PLANS = ROOT / "tests" / "plans"
ASKED = ["volts=12 V", "current=20 A", "run=10 ft"]


@pytest.fixture
def run(capsys):
    """Run the command line here; the exit code and what it printed."""

    def run(*arguments):
        code = main(list(arguments))
        return code, capsys.readouterr().out

    return run


@pytest.fixture
def lines(run, monkeypatch):
    """Put lines on standard input and return the exit code and the answers."""

    def lines(*texts):
        monkeypatch.setattr("sys.stdin", io.StringIO("\n".join(texts) + "\n"))
        code, out = run("sums")
        return code, [json.loads(line) for line in out.splitlines()]

    return lines


@pytest.mark.parametrize("name", ["sum", "sums"])
def test_as_a_program_of_its_own(name):
    question = json.dumps({"sum": "conductor", "inputs": dict(one.split("=") for one in ASKED)})
    words = ["sum", "conductor", *ASKED, "--json"] if name == "sum" else ["sums"]
    done = subprocess.run(
        [sys.executable, "-m", "engine", *words],
        input=question, capture_output=True, text=True, cwd=ROOT, check=False,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["answers"]["size"]["value"] == "8 SAE"


def test_the_exit_code_is_the_program_s(monkeypatch, capsys):
    monkeypatch.delitem(sys.modules, "engine.__main__")
    monkeypatch.setattr("sys.argv", ["engine", "nonsense"])
    with pytest.raises(SystemExit) as left:
        runpy.run_module("engine", run_name="__main__")
    assert left.value.code == 2
    assert "Usage" in capsys.readouterr().out


def test_a_sum_as_json(run):
    code, out = run("sum", "conductor", *ASKED, "--json")
    found = json.loads(out)
    assert code == 0
    assert found["sum"] == "conductor"
    assert found["answers"]["size"] == {"value": "8 SAE", "unit": ""}
    assert found["governing"] == "drop"


def test_a_sum_as_text(run):
    code, out = run("sum", "conductor", *ASKED)
    assert code == 0
    assert "size: 8 SAE\n" in out
    assert "governing: drop" in out
    code, out = run("sum", "conductor", *ASKED, "run=1000 m", "current=500 A")
    assert code == 0
    assert "size: cannot say" in out
    assert "cannot say \n" not in out
    assert out.count("No single conductor of this catalogue") == 1


def test_the_sentence_that_answers_stands_first(run):
    _, out = run("sum", "conductor", *ASKED)
    assert out.startswith("8 SAE")
    _, out = run("sum", "days-alone", "daily=100 Ah", "capacity=220 Ah", "usable=50 %",
                 "income=120 Ah")  # fmt: skip
    assert out.startswith("No limit by this sum")
    assert "days: cannot say\n" in out
    _, out = run("sum", "runtime", "watts=1000", "capacity=200", "exponent=1.1", "usable=80 %")
    assert out.startswith("Danger.")
    assert "\nAbout " in out


def test_a_sum_with_a_problem(run):
    code, out = run("sum", "conductor", "current=3 kg", "--json")
    found = json.loads(out)
    assert code == 2
    assert found["answers"] == {}
    assert [row["where"] for row in found["problems"]] == ["current", "run"]
    code, out = run("sum", "conductor", "current=3 kg")
    assert code == 2
    assert "current: “3 kg”" in out


def test_a_word_that_states_nothing(run):
    code, out = run("sum", "carrying", "size=10 AWG", "please", "--json")
    found = json.loads(out)
    assert code == 2
    assert found["answers"] == {}
    assert found["problems"][0]["where"] == "please"


def test_no_such_sum(run):
    code, out = run("sum", "juggling", "--json")
    assert code == 2
    assert "juggling" in json.loads(out)["problems"][0]["what"]


def test_many_sums_in_order(lines):
    questions: list[dict[str, Any]] = [
        {"sum": "conductor", "inputs": {"volts": 12, "current": "20 A", "run": "10 ft"}},
        {"sum": "conductor", "inputs": {"current": "x", "run": "10 ft"}},
        {"sum": "carrying", "inputs": {"size": "10 AWG", "engine_space": True, "bundle": None}},
        {"sum": "carrying", "inputs": {"size": "10 AWG", "engine_space": False}},
        {"sum": "discharge"},
    ]
    code, found = lines(*(json.dumps(one) for one in questions), "")
    assert code == 2
    assert [one["sum"] for one in found] == [one["sum"] for one in questions]
    assert [bool(one["problems"]) for one in found] == [False, True, False, False, True]
    assert found[2]["answers"]["carries"]["value"] == pytest.approx(51.0)
    assert found[3]["answers"]["carries"]["value"] == 60.0


def test_many_sums_all_well(lines):
    code, found = lines('{"sum":"carrying","inputs":{"size":"10 AWG"}}')
    assert code == 0
    assert found[0]["problems"] == []


@pytest.mark.parametrize(
    "line",
    ["{", "5", "[]", "null", '"x"', "{}", '{"sum":[]}', '{"sum":"drop","inputs":5}',
     '{"sum":"drop","inputs":null}', "[" * 100_000,
     '{"sum":"drop","inputs":{"run":' + "9" * 5000 + "}}"],
    ids=lambda line: line[:32],
)  # fmt: skip
def test_a_line_that_is_no_question_has_its_answer_too(lines, line):
    code, found = lines(line, '{"sum":"carrying","inputs":{"size":"10 AWG"}}')
    assert code == 2
    assert found[0]["problems"]
    assert found[1]["problems"] == []


@pytest.mark.parametrize("number", ["NaN", "Infinity", "1e309", "[]", "{}", '"3 kg"'])
def test_a_value_that_is_none(lines, number):
    code, found = lines(
        f'{{"sum":"discharge","inputs":{{"current":{number},"capacity":9,"exponent":1}}}}'
    )
    assert code == 2
    assert found[0]["problems"][0]["where"] == "current"


def test_a_report(run, tmp_path):
    path = tmp_path / "boat.json"
    path.write_text(written(made_up_document()), encoding="utf-8")
    code, out = run("report", str(path), "--json")
    found = json.loads(out)
    assert code == 0
    assert round(found["day_use"]["anchor"]["likely"]) == 132
    code, out = run("report", str(path))
    assert code == 0
    assert "boat: Wherrilow" in out.splitlines()


@pytest.mark.parametrize(("as_found", "headline"), [(True, True), (False, False)])
def test_a_report_with_alternating_current_says_the_danger_first(run, tmp_path, as_found, headline):
    path = tmp_path / "boat.json"
    document = made_up_document(AS_FOUND) if as_found else made_up_document()
    path.write_text(written(document), encoding="utf-8")
    told = json.loads(run("report", str(path), "--json")[1])["cautions"]
    assert told == [*(["Do not plug in."] if headline else []), CAUTION, SWIM_CAUTION]
    assert run("report", str(path))[1].splitlines()[: len(told)] == told


def test_a_report_without_alternating_current_has_no_danger_line(run, tmp_path):
    path = tmp_path / "boat.json"
    path.write_text(written(new_document()), encoding="utf-8")
    assert json.loads(run("report", str(path), "--json")[1])["cautions"] == []


@pytest.mark.parametrize("path", sorted(PLANS.glob("*.json")), ids=lambda path: path.name)
def test_a_report_of_each_kept_plan(run, path):
    code, out = run("report", "--json", str(path))
    assert code == 0
    assert "problems" in json.loads(out)


def test_a_report_of_a_file_with_a_byte_order_mark(run, tmp_path):
    path = tmp_path / "boat.json"
    path.write_text(written(new_document()), encoding="utf-8-sig")
    assert run("report", str(path))[0] == 0


@pytest.mark.parametrize("content", [b"", b"x", b"{}", b"\xff\xfe\x00", b'{"format":7}', b"[[[["])
def test_what_is_no_plan(run, tmp_path, content):
    path = tmp_path / "no.json"
    path.write_bytes(content)
    code, out = run("report", str(path), "--json")
    assert code == 2
    assert json.loads(out)["problems"][0]["what"]
    assert run("report", str(path))[0] == 2


@pytest.mark.parametrize("arguments", [[], ["a", "b"], ["no such file"], ["."]])
def test_no_file_to_report_on(run, arguments):
    code, out = run("report", *arguments, "--json")
    assert code == 2
    assert json.loads(out)["problems"]


def test_every_table_with_its_source(run):
    code, out = run("tables")
    assert code == 0
    assert out.count("source: ") > 10


@pytest.mark.parametrize(
    ("arguments", "expected"),
    [([], 0), (["--help"], 0), (["nonsense"], 2), (["sum"], 2), (["sum", "--json"], 2)],
)
def test_what_it_can_do(run, arguments, expected):
    code, out = run(*arguments)
    assert code == expected
    assert "Usage" in out
    assert all(name in out for name in SUMS)
