"""The command line: a quick sum, many sums, a plan's report, every table with its source."""

from __future__ import annotations

import json
import sys
from typing import TYPE_CHECKING, Any, Final

from engine.problem import Problem, quoted
from engine.sums import SUMS
from engine.sums.sum import answered, outcome_of
from engine.units import said, words

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from engine.plan.parts import Plan

USAGE: Final = """Usage:
  python -m engine sum NAME key=value … [--json]   one quick sum
  python -m engine sums                            JSON lines in, one answer a line out
  python -m engine report PLAN.json [--json]       what a plan comes to
  python -m engine tables                          every table with its source

Quick sums:"""


def ask(name: str, given: Mapping[str, object]) -> dict[str, Any]:
    """Return the answer of one quick sum as plain data, problems included."""
    if name not in SUMS:
        return {
            "sum": name,
            "answers": {},
            "governing": None,
            "problems": [
                Problem(
                    "sum", f"{quoted(str(name))} is no quick sum.", f"Choose {words(SUMS, 'or')}."
                ).as_row()
            ],
            "working": [],
            "cautions": [],
        }
    return answered(SUMS[name], _texts(given))


def _texts(given: Mapping[str, object]) -> dict[str, str]:
    return {str(key): _typed(value) for key, value in given.items()}


def _typed(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "" if value is None else str(value)


def one_sum(arguments: list[str]) -> int:
    """Answer one quick sum from ``key=value`` arguments; 0, or 2 where it cannot be read."""
    as_json = "--json" in arguments
    name, *pairs = [word for word in arguments if word != "--json"]
    odd = [pair for pair in pairs if "=" not in pair]
    given = dict(pair.split("=", 1) for pair in pairs if "=" in pair)
    answer = ask(name, given)
    if odd:
        answer["answers"] = {}
        answer["problems"] += [
            Problem(word, f"{quoted(word)} states nothing.", "Write key=value.").as_row()
            for word in odd
        ]
    if as_json:
        print(json.dumps(answer, ensure_ascii=False))
    else:
        found = outcome_of(SUMS[name], _texts(given))[0] if answer["answers"] else None
        dangers = SUMS[name].dangers if name in SUMS else ()
        print("\n".join(as_text(answer, found.words if found else "", dangers)))
    return 2 if answer["problems"] else 0


def as_text(answer: Mapping[str, Any], sentence: str, dangers: Sequence[str] = ()) -> Iterable[str]:
    """Return an answer as lines for people: dangers, the sentence that answers, then the rest."""
    yield from dangers
    if sentence:
        yield sentence
    for problem in answer["problems"]:
        yield f"{problem['where']}: {problem['what']} {problem['mend']}".strip()
    for key, found in answer["answers"].items():
        value = found["value"]
        if value is None:
            yield f"{key}: cannot say"
            continue
        if isinstance(value, float):
            value = said(value, 4)
        yield f"{key}: {value} {found['unit']}".rstrip()
    if answer["governing"]:
        yield f"governing: {answer['governing']}"
    yield from (one for one in answer["cautions"] if one not in (*dangers, sentence))
    for step in answer["working"]:
        yield f"  {step}"


def many_sums() -> int:
    """Answer JSON lines from standard input in order; 2 where any could not be read."""
    worst = 0
    for line in sys.stdin:
        if not line.strip():
            continue
        try:
            asked = json.loads(line)
            answer = ask(asked["sum"], asked.get("inputs", {}))
        except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
            answer = ask("", {})
            answer["problems"] = [
                Problem(
                    "line",
                    f"{quoted(line)} is not a question.",
                    'Write {"sum": NAME, "inputs": {…}}.',
                ).as_row()
            ]
        worst = 2 if answer["problems"] else worst
        print(json.dumps(answer, ensure_ascii=False))
    return worst


def report(arguments: list[str]) -> int:
    """Print what a plan comes to; 0, or 2 where the file is no plan."""
    from engine.check.report import as_lines, report_of
    from engine.plan.document import parsed
    from engine.plan.read import plan_of

    as_json = "--json" in arguments
    files = [word for word in arguments if word != "--json"]
    if len(files) != 1:
        return _refused(
            Problem("", "Name one plan file.", "python -m engine report PLAN.json"), as_json=as_json
        )
    try:
        with open(files[0], encoding="utf-8") as file:  # noqa: PTH123 - the engine has no pathlib
            plan = plan_of(parsed(file.read()))
            found = {"cautions": cautions_of(plan), **report_of(plan)}
    except OSError as error:
        problem = Problem("", f"{quoted(files[0])} cannot be read: {error.strerror}.", "")
        return _refused(problem, as_json=as_json)
    except UnicodeDecodeError:
        problem = Problem("", f"{quoted(files[0])} is not text.", "Choose a plan file.")
        return _refused(problem, as_json=as_json)
    except Problem as problem:
        return _refused(problem, as_json=as_json)
    if as_json:
        print(json.dumps(found, ensure_ascii=False))
    else:
        print("\n".join((*found.pop("cautions"), *as_lines(found))))
    return 0


def cautions_of(plan: Plan) -> list[str]:
    """Return what to say above a report where there is alternating current aboard."""
    from engine.check.shore_gravest import gravest
    from engine.shore.earthing import CAUTION, SWIM_CAUTION

    found = gravest(plan)
    if not (plan.shore.stated or plan.shore.records or found.findings):
        return []
    return [*([found.headline] if found.headline else []), CAUTION, SWIM_CAUTION]


def _refused(problem: Problem, *, as_json: bool) -> int:
    print(json.dumps({"problems": [problem.as_row()]}, ensure_ascii=False) if as_json else problem)
    return 2


def tables() -> int:
    """Print every table of the program with its source."""
    import engine.views  # noqa: F401 - declares every table
    from engine.table import ALL

    for table in ALL:
        print(f"{table.title}\n  source: {table.source}\n  {table.key} → {table.value}")
        for key, value in table.rows.items():
            print(f"    {key}: {value}")
    return 0


def main(arguments: list[str]) -> int:
    """Do what the arguments ask; the exit code."""
    name, *rest = arguments or [""]
    if name == "sum" and rest != ["--json"] * len(rest):
        return one_sum(rest)
    if name == "sums":
        return many_sums()
    if name == "report":
        return report(rest)
    if name == "tables":
        return tables()
    print(USAGE)
    for one in SUMS.values():
        print(f"  {one.name:14} {one.title} ({words(field.name for field in one.fields)})")
    return 0 if arguments in ([], ["--help"]) else 2


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
