"""What looking turns up: questions that need no tools, and two readings."""

from __future__ import annotations

from typing import Final

from engine.field import CHOICE, Field, by_name
from engine.units import CURRENT, NUMBER

ANSWERS: Final = (("yes", "Yes"), ("no", "No"), ("unknown", "Don't know"))


def _question(name: str, words: str, help_: str = "") -> Field:
    return Field(name, words, CHOICE, help_, choices=ANSWERS)


FIRST: Final = (
    _question("fuse", "Is there a fuse or breaker within reach of the battery, in every lead?"),
    _question("inlet", "Is anything hot, brown or loose at the shore inlet or its plug?"),
    _question("posts", "Are the battery posts covered and the box strapped down?"),
    _question("live", "Is anything wired to the battery with no fuse at all?"),
)
"""The four looks before anything else."""
MORE: Final = (
    _question("vent", "Can gas leave the battery box at its top?"),
    _question("selector", "Does the alternator's output pass through the battery selector switch?"),
    _question("unlabelled", "Are there wires with no label, or with cut ends?"),
    _question("backbone", "Is the instrument backbone fed at more than one place?"),
    Field("stack", "Most ring terminals on one post or stud", NUMBER, "Count the fullest one.",
          "", 0.0, 30.0),
    Field("standing", "Current with the main switch off", CURRENT,
          "Read with a clamp on the battery lead, everything off.", "", 0.0, 100.0),
)  # fmt: skip
"""More to look at aboard, and one reading."""
SHORE: Final = (
    _question("leakage", "Is there a leakage trip with a test button at the AC main?"),
    _question("polarity", "Does the reverse-polarity light come on when its button is pressed?"),
    _question("isolator", "Is there a galvanic isolator or an isolation transformer?"),
    _question("lead", "Is anything aboard fed by a household lead or a twist connector?"),
    _question("bond", "Did a licensed person find neutral joined to safety ground aboard, on "
              "shore power?", "Their result, not yours: nobody else measures here."),
)  # fmt: skip
"""Shore power, only by looking, by test buttons, and by a licensed person's result."""

LOOKS: Final = by_name(*FIRST, *MORE, *SHORE)
