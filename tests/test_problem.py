"""Problems: where, what, mend."""

from engine.problem import Problem, quoted


def test_a_problem_prints_with_its_place_or_without():
    problem = Problem("", "“four” is not a number.", "Enter metres.")
    assert str(problem) == "“four” is not a number. Enter metres."
    assert str(problem.at("run")) == "run: “four” is not a number. Enter metres."


def test_a_problem_as_a_row():
    row = Problem("run", "what", "mend").as_row()
    assert row == {"where": "run", "what": "what", "mend": "mend"}


def test_quoted_keeps_messages_short_clean_and_on_one_line():
    assert quoted("3 kg") == "“3 kg”"
    assert quoted("a\n\tb") == "“a b”"
    assert len(quoted("x" * 1_000_000)) == 42
    assert quoted("\u202eabc\u200b") == "“abc”"
