"""Appliances on alternating current, and how each class answers to weak volts."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from engine.problem import Problem, quoted
from engine.shore.tables import VOLTS_EXPONENT
from engine.units import POWER, Amp, Volt, Watt, read, said


class Nature(StrEnum):
    """The class of an appliance, by what its current does as the volts fall."""

    RESISTIVE = "resistive"
    CONSTANT_POWER = "constant power"
    MOTOR = "motor"
    TRANSFORMER = "transformer"
    ELECTRONIC = "electronic"


NATURES: Final = {
    Nature.RESISTIVE: (
        "kettle", "water heater", "space heater", "heater", "toaster", "iron", "hair dryer",
        "hairdryer", "coffee", "hob", "oven", "immersion", "grill", "rice cooker",
    ),
    Nature.CONSTANT_POWER: ("charger",),
    Nature.MOTOR: (
        "dehumidifier", "air conditioner", "air-conditioner", "fridge", "freezer", "pump", "fan",
        "drill", "grinder", "vacuum", "compressor", "watermaker", "washing machine", "ice maker",
    ),
    Nature.TRANSFORMER: ("microwave", "isolation transformer", "step-down", "step-up"),
    Nature.ELECTRONIC: (
        "laptop", "computer", "television", "tv", "phone", "light", "lamp", "router", "induction",
        "tool charger", "phone charger",
    ),
}  # fmt: skip
"""Words in an appliance's name that tell its class; the longest word that fits decides."""

SHORT: Final = (
    "kettle", "microwave", "toaster", "iron", "hair dryer", "hairdryer", "coffee", "induction",
    "hob", "oven", "grill", "drill", "grinder", "vacuum",
)  # fmt: skip
"""What a person starts and waits for: minutes, never hours."""

MOST_WATTS: Final = 30000.0
MOST_APPLIANCES: Final = 100
LONGEST: Final = 80
"""Letters of one appliance with its watts."""


@dataclass(frozen=True, slots=True)
class Appliance:
    """One appliance: watts in at its rated volts, its class, and whether it runs only minutes."""

    name: str
    watts: Watt
    nature: Nature
    short: bool = False
    branch: str = ""

    def __post_init__(self) -> None:
        if not 0 < self.watts <= MOST_WATTS:
            raise Problem(
                "loads",
                f"{quoted(self.name)} of {said(self.watts)} W is no appliance aboard.",
                "Enter the watts on its plate, such as 1000 W.",
            )


def nature_of(name: str) -> Nature | None:
    """Return the class that an appliance's name tells, or None where it tells none.

    Parameters
    ----------
    name : str
        Such as ``kettle``.

    Examples
    --------
    >>> [str(nature_of(name)) for name in ("Kettle", "tool charger", "charger", "box")]
    ['resistive', 'electronic', 'constant power', 'None']
    """
    said_words = re.sub(r"[^a-z0-9-]+", " ", name.lower())
    found = [
        (len(word), nature)
        for nature, named in NATURES.items()
        for word in named
        if re.search(rf"\b{word}s?\b", said_words)
    ]
    return max(found)[1] if found else None


def is_short(name: str) -> bool:
    """Return whether an appliance of this name runs minutes rather than hours.

    Parameters
    ----------
    name : str
        Such as ``kettle``.
    """
    return any(re.search(rf"\b{word}s?\b", name.lower()) for word in SHORT)


def named(name: str, watts: Watt, branch: str = "") -> Appliance:
    """Return an appliance with the class its name tells; electronic where it tells none.

    Parameters
    ----------
    name : str
        Such as ``kettle``.
    watts : Watt
        In, at its rated volts. [W]
    branch : str
        The branch it hangs on, if that matters.
    """
    return Appliance(name, watts, nature_of(name) or Nature.ELECTRONIC, is_short(name), branch)


_FIGURE: Final = r"~?(?:\d{1,3}(?: \d{3})+|[\d.,]+)"
_SEVERAL: Final = re.compile(
    r"\d\s*k?W\b|^\d+\s+(?![VA]\b)|\d\s*[x×*]\s|[x×*]\s*\d|\s[x×*]$", re.IGNORECASE
)
"""A name that holds watts of its own, or a count: more than one appliance."""
_THOUSANDS: Final = re.compile(r"\d{1,3}\.\d{3}(?!\d)")
"""A point that some read as the mark of thousands."""
_ONE: Final = re.compile(
    rf"(?P<name>.*?[^\W\d_].*?)[\s:=]+(?P<watts>-?{_FIGURE}\s*[^\W\d_]*)",
)


def read_appliances(text: str) -> tuple[Appliance, ...]:
    """Return the appliances of a list as people write it.

    Parameters
    ----------
    text : str
        Such as ``kettle 1000 W, charger 680 W``.

    Raises
    ------
    Problem
        If the list is empty or a part of it has no watts.

    Examples
    --------
    >>> [(one.name, one.watts) for one in read_appliances("kettle 1 kW, charger 680 W")]
    [('kettle', 1000.0), ('charger', 680.0)]
    """
    return tuple(_appliance(part) for part in _parts(text))


def _parts(text: str) -> list[str]:
    parts = [part.strip() for part in re.split(r",(?!\d)|[;\n]", text) if part.strip()]
    if not parts:
        raise Problem("loads", "No load is given.", "Enter such as kettle 1000 W, charger 680 W.")
    if len(parts) > MOST_APPLIANCES:
        raise Problem("loads", f"{len(parts)} loads are too many.", "Enter the largest of them.")
    return parts


@dataclass(frozen=True, slots=True)
class Listed:
    """One entry of a list: the appliance, what is wrong, or neither where its watts are unknown."""

    text: str
    appliance: Appliance | None = None
    problem: Problem | None = None


def listed(text: str) -> tuple[Listed, ...]:
    """Return every entry of a list of appliances, also what cannot be read.

    Parameters
    ----------
    text : str
        Such as ``kettle 1000 W, toaster``.

    Raises
    ------
    Problem
        If the list is empty or far too long.

    Examples
    --------
    >>> [(one.text, one.appliance is None) for one in listed("kettle 1000 W, toaster, iron ?")]
    [('kettle 1000 W', False), ('toaster', True), ('iron ?', True)]
    """
    return tuple(_listed(part) for part in _parts(text))


def _listed(part: str) -> Listed:
    if part.endswith("?"):
        return Listed(part)
    try:
        return Listed(part, _appliance(part))
    except Problem as problem:
        return Listed(part, None, problem)


def _appliance(part: str) -> Appliance:
    found = _ONE.fullmatch(part) if len(part) <= LONGEST else None
    try:
        watts = read(found["watts"], POWER).likely if found else None
    except Problem as problem:
        raise problem.at("loads") from None
    if not found or watts is None:
        raise Problem(
            "loads", f"{quoted(part)} has no name with watts.", "Enter such as kettle 1000 W."
        )
    if _SEVERAL.search(found["name"]) or _THOUSANDS.match(found["watts"]):
        raise Problem(
            "loads",
            f"{quoted(part)} can be read in more than one way.",
            "Enter one appliance a line, each with its own watts: heater 1500 W.",
        )
    return named(found["name"], Watt(watts))


def current_at(appliance: Appliance, volts: Volt, rated: Volt) -> Amp:
    """Return the current an appliance draws at the volts there are.

    Parameters
    ----------
    appliance : Appliance
        With its watts at the rated volts.
    volts : Volt
        At its plug, above zero. [V]
    rated : Volt
        What its plate says, above zero. [V]

    Returns
    -------
    Amp
        ``P/Vr · (V/Vr)^n``: n is 1 for a heater, whose watts go by V², and −1 for a charger. [A]

    Examples
    --------
    >>> kettle, charger = named("kettle", Watt(1000.0)), named("charger", Watt(680.0))
    >>> current_at(kettle, Volt(108.0), Volt(120.0)), current_at(charger, Volt(108.0), Volt(120.0))
    (7.5, 6.296)
    """
    exponent = VOLTS_EXPONENT[appliance.nature.value]
    return Amp(appliance.watts / rated * (volts / rated) ** exponent)
