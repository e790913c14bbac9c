"""The door for quantities: what people write goes in, floats in one unit come out.

Reads “12,5”, “4.6 A”, “60W”, “1h30”, “5'6"”, “5 ft 6”, “4-5 A”, “4.6 A (4.3 to 5)”,
“2 x 110 Ah”, “~4 A” and “?”. Pint converts.
Inside the engine a value is a float in its kind's unit; the NewTypes keep them apart.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from math import isfinite
from typing import TYPE_CHECKING, Final, NewType

import pint

from engine.problem import Problem, quoted

if TYPE_CHECKING:
    from collections.abc import Iterable

Amp = NewType("Amp", float)
AmpHour = NewType("AmpHour", float)
Celsius = NewType("Celsius", float)
Hour = NewType("Hour", float)
Metre = NewType("Metre", float)
MetrePerSecond = NewType("MetrePerSecond", float)
Ohm = NewType("Ohm", float)
OhmPerKm = NewType("OhmPerKm", float)
PerHour = NewType("PerHour", float)
SquareMetre = NewType("SquareMetre", float)
SquareMm = NewType("SquareMm", float)
Share = NewType("Share", float)
Volt = NewType("Volt", float)
Watt = NewType("Watt", float)

DEFINITIONS: Final = """
kilo- = 1e3 = k-
centi- = 1e-2 = c-
milli- = 1e-3 = m-
meter = [length] = m = metre
second = [time] = s
ampere = [current] = A = amp
kilogram = [mass] = kg
kelvin = [temperature]; offset: 0 = K
degree_Celsius = kelvin; offset: 273.15 = degC = celsius
degree_Fahrenheit = 5 / 9 * kelvin; offset: 233.15 + 200 / 9 = degF = fahrenheit
percent = 0.01 = pct
minute = 60 * second = min
hour = 60 * minute = h = hr
day = 24 * hour = d
week = 7 * day
inch = 0.0254 * meter = in
foot = 12 * inch = ft = feet
yard = 3 * foot = yd
nautical_mile = 1852 * meter = nmi
gram = 0.001 * kilogram = g
pound = 0.45359237 * kilogram = lb
liter = 0.001 * meter ** 3 = l = litre
gallon = 3.785411784 * liter = gal
liter_per_hour = liter / hour
gallon_per_hour = gallon / hour
newton = kilogram * meter / second ** 2 = N
joule = newton * meter = J
watt = joule / second = W
horsepower = 745.69987158227022 * watt = hp
volt = watt / ampere = V
ohm = volt / ampere = Ω
hertz = 1 / second = Hz
knot = nautical_mile / hour = kn
meter_per_second = meter / second
kilometer_per_hour = 1000 * meter / hour
per_hour = 1 / hour
percent_per_hour = 0.01 / hour
amp_hour = ampere * hour = Ah
watt_hour = watt * hour = Wh
square_mm = 1e-6 * meter ** 2 = mm2
square_meter = meter ** 2
irradiance = watt / meter ** 2
arc_degree = [angle]
"""
"""Only the units this trade meets, so that the registry is small and quick. The inch, the pound,
the US gallon and the nautical mile are exact by definition (NIST SP 811, 2008, appendix B)."""

SPOKEN: Final = {
    "'": "foot", "′": "foot", "’": "foot", '"': "inch", "″": "inch", "”": "inch", "''": "inch",
    "%": "percent", "°c": "degC", "°f": "degF", "c": "degC", "f": "degF", "ºc": "degC",
    "deg c": "degC", "deg f": "degF", "degc": "degC", "degf": "degF",
    "a": "ampere", "amps": "ampere", "amperes": "ampere", "ma": "milliampere",
    "v": "volt", "volts": "volt", "mv": "millivolt", "w": "watt", "watts": "watt",
    "kw": "kilowatt", "ah": "amp_hour", "mah": "milliamp_hour", "wh": "watt_hour",
    "kwh": "kilowatt_hour", "hrs": "hour", "hours": "hour", "mins": "minute", "minutes": "minute",
    "secs": "second", "sec": "second", "seconds": "second", "days": "day",
    "metres": "meter", "meters": "meter", "foot": "foot", "inches": "inch", "ins": "inch",
    "ω": "ohm", "ohms": "ohm", "mω": "milliohm", "mohm": "milliohm", "mohms": "milliohm",
    "kgs": "kilogram", "lbs": "pound", "litres": "liter", "liters": "liter", "hz": "hertz",
    "vdc": "volt", "vac": "volt", "v dc": "volt", "v ac": "volt", "volts dc": "volt",
    "amp hour": "amp_hour", "amp hours": "amp_hour", "amp-hours": "amp_hour", "°": "degC",
    "ampere hours": "amp_hour", "ampere-hours": "amp_hour", "amphours": "amp_hour",
    "va": "watt", "ft.": "foot", "in.": "inch", "degree": "degC", "degrees": "degC",
    "/h": "per_hour", "/hr": "per_hour", "per h": "per_hour", "per hour": "per_hour",
    "%/h": "percent_per_hour", "m/s": "meter_per_second", "km/h": "kilometer_per_hour",
    "kt": "knot", "kts": "knot", "knots": "knot", "kn": "knot", "m2": "square_meter",
    "sq m": "square_meter", "m²": "square_meter", "m^2": "square_meter",
    "l/h": "liter_per_hour", "l/hr": "liter_per_hour", "gal/h": "gallon_per_hour",
    "w/m2": "irradiance", "w/m²": "irradiance", "w/m^2": "irradiance", "w/m**2": "irradiance",
    "h/24": "hour", "h a day": "hour", "hours a day": "hour", "h/day": "hour",
}  # fmt: skip
"""How people write a unit, in small letters, and the unit meant."""


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of quantity: its word, the unit inside, and an example of what to type."""

    word: str
    unit: str
    shown: str
    example: str

    @property
    def a_word(self) -> str:
        """The word with its article."""
        return f"{'an' if self.word[0] in 'aeiou' else 'a'} {self.word}"


CURRENT: Final = Kind("current", "ampere", "A", "4.6 A")
POWER: Final = Kind("power", "watt", "W", "60 W")
VOLTS: Final = Kind("voltage", "volt", "V", "12 V")
LENGTH: Final = Kind("length", "meter", "m", "4.5 m or 14 ft 9")
TIME: Final = Kind("time", "hour", "h", "1.5 h, 1h30 or 90 min")
CLOCK: Final = Kind("time of day", "hour", "", "19:30 or 7 pm")
TEMPERATURE: Final = Kind("temperature", "degC", "°C", "30 degC or 86 degF")
CHARGE: Final = Kind("charge", "amp_hour", "Ah", "220 Ah")
RESISTANCE: Final = Kind("resistance", "ohm", "Ω", "3 mohm")
FRACTION: Final = Kind("share", "dimensionless", "", "3 % or 0.03")
NUMBER: Final = Kind("number", "dimensionless", "", "4")
AREA: Final = Kind("area", "square_mm", "mm²", "6 mm2")
SWEPT: Final = Kind("area", "square_meter", "m²", "1.1 m2")
SPEED: Final = Kind("speed", "meter_per_second", "m/s", "6 m/s or 12 kn")
RATE: Final = Kind("rate per hour", "per_hour", "/h", "0.25 /h or 25 %/h")
DAYS: Final = Kind("number of days", "day", "days", "3 days")
FUEL: Final = Kind("use of fuel", "liter_per_hour", "L/h", "1.2 L/h")
IRRADIANCE: Final = Kind("irradiance", "irradiance", "W/m²", "1361 W/m2")
ANGLE: Final = Kind("angle", "arc_degree", "°", "15 deg")
LATITUDE: Final = Kind("latitude", "arc_degree", "°", "43.5 N, -43.5 or 12°30' S")
LONGITUDE: Final = Kind("longitude", "arc_degree", "°", "5.5 W, -5.5 or 151°15' E")

DIMENSIONS: Final = {
    "meter": "a length",
    "second": "a time",
    "ampere": "a current",
    "kilogram": "a weight",
    "kelvin": "a temperature",
    "watt": "a power",
    "volt": "a voltage",
    "ohm": "a resistance",
    "amp_hour": "a charge",
    "watt_hour": "an energy",
    "liter": "a volume",
    "square_mm": "an area",
    "knot": "a speed",
    "hertz": "a frequency",
    "irradiance": "an irradiance",
    "arc_degree": "an angle",
    "percent": "a bare number",
}
"""One unit of each dimension, and the word for it."""


@lru_cache(maxsize=1)
def registry() -> pint.UnitRegistry[float]:
    """Return the one registry, made on first use."""
    made: pint.UnitRegistry[float] = pint.UnitRegistry(None)
    made.load_definitions(DEFINITIONS.strip().splitlines())
    return made


@lru_cache(maxsize=1024)
def meant(unit: str) -> str:
    """Return the registry's name of a unit as people write it.

    Raises
    ------
    Problem
        If no unit of that name is known.

    Examples
    --------
    >>> meant("Amps"), meant("mΩ"), meant("ft")
    ('ampere', 'milliohm', 'foot')
    """
    spoken = " ".join(unit.rstrip(".").split())
    if re.fullmatch(r"sq ?mm|mm(?:\*\*|\^)?[2²]", spoken.lower()):
        return "square_mm"
    if spoken.lower() in SPOKEN:
        return SPOKEN[spoken.lower()]
    if re.fullmatch(r"(?!(?i:nan)$)(?=.{1,20}$)[A-Za-zµΩ]+(?:_[A-Za-zµΩ]+)*²?", spoken):
        for form in (spoken, spoken.lower()):
            if form in registry():
                return str(registry().parse_units(form))
    raise Problem("", f"{quoted(unit)} is not a unit this program knows.", "")


@lru_cache(maxsize=1024)
def converts(unit: str, kind: Kind) -> tuple[float, float]:
    """Return factor and offset that take a spoken unit to the kind's unit.

    Raises
    ------
    Problem
        If the unit measures something else.

    Examples
    --------
    >>> converts("ft", LENGTH)
    (0.3048, 0.0)
    """
    name = meant(unit)
    known = registry()
    try:
        zero = known.Quantity(0.0, name).to(kind.unit).magnitude
        far = known.Quantity(1e4, name).to(kind.unit).magnitude
    except pint.DimensionalityError:
        measured = known.get_dimensionality(name)
        other = next(
            (
                word
                for unit, word in DIMENSIONS.items()
                if known.get_dimensionality(unit) == measured
            ),
            "something else",
        )
        raise Problem("", f"{quoted(unit)} measures {other}, not {kind.a_word}.", "") from None
    return ((far - zero) / 1e4, zero) if zero else (far / 1e4, 0.0)


def in_unit(value: float, kind: Kind, unit: str) -> float:
    """Return a value of the kind's unit in another unit, for showing only.

    Parameters
    ----------
    value : float
        In the kind's unit. [1]
    kind : Kind
        What it measures.
    unit : str
        The unit to show.

    Examples
    --------
    >>> in_unit(30.0, TEMPERATURE, "degF")
    86.0
    """
    factor, offset = converts(unit, kind)
    return (value - offset) / factor


LONGEST: Final = 60
_HALVES: Final = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3}
_SPACES: Final = "[ \u00a0\u2009\u202f]"
_DIGITS: Final = rf"(?:\d{{1,3}}(?:{_SPACES}\d{{3}})+(?!\d)|\d+)"
_PLAIN: Final = rf"(?:{_DIGITS}(?:[.,]\d+)*[.,]?|[.,]\d+)(?:[eE][+-]?\d+)?"
_PART: Final = rf"(?:\d+{_SPACES}+)?\d+/\d+|(?:{_DIGITS})?[½¼¾⅓⅔]|{_PLAIN}"
_AREA: Final = r"sq ?mm?|mm?(?:\*\*|\^)?2"
_SPACED: Final = (
    r"(?:h|hours) a day|per h(?:our)?|[Aa]mp(?:ere)?[ -]hours?|[Vv](?:olts?)? [DdAa][Cc]"
)
_LIGHT: Final = r"[Ww]/m(?:\*\*|\^)?[2²]"
_UNIT: Final = (
    rf"(?:{_AREA}|{_LIGHT}|{_SPACED}|(?!to\b)[A-Za-z°º%'\"′″’”µμΩω²^*/.]+(?: ?[CFcf]\b)?)"
)
_SIGNED: Final = rf"[+\-−]?(?:{_PART})"
_ONE: Final = re.compile(rf"({_SIGNED})\s*((?:{_UNIT})?)")
_RANGE: Final = re.compile(
    rf"({_SIGNED})\s*({_UNIT})?\s*(?:-|–|—|−|\bto\b|\.\.\.?|…)\s*({_SIGNED})\s*({_UNIT})?"
)
_AROUND: Final = re.compile(rf"({_SIGNED})\s*({_UNIT})?\s*(?:±|\+/-|\+-)\s*({_PART})\s*({_UNIT})?")
_ENCLOSED: Final = re.compile(
    rf"(.+?)\s*\(\s*({_SIGNED})\s*({_UNIT})?\s*(?:-|–|—|\bto\b)\s*({_SIGNED})\s*({_UNIT})?\s*\)"
)
_TIMES: Final = re.compile(r"(\d{1,3})\s*[x×*]\s*(.+)")
_PAIR: Final = re.compile(
    rf"(\d+)\s*(ft\.?|feet|foot|['′’]|m|metres?|meters?|h|hrs?|hours?|:)\s*({_PART})\s*"
    rf"(in\.?|ins|inch|inches|[\"″”]|''|cm|m|min|mins|minutes)?"
)
_ON_EARTH: Final = re.compile(
    rf"({_SIGNED})\s*(?:[°º]|deg(?:rees?)?\b)?"
    rf"(?:\s*({_PLAIN})\s*['′’])?(?:\s*({_PLAIN})\s*[\"″”])?\s*([NSEWnsew]?)"
)
_CLOCK: Final = re.compile(r"(\d{1,2})(?:[:.h ]?([0-5]\d))?\s*(am|pm|h|hours)?")
_UNKNOWN: Final = {"", "?", "-", "–", "unknown", "don't know", "dont know", "not known", "n/a"}
_ABOUT: Final = re.compile(r"(?:~|≈|ca\.?\s|about\s|approx\.?\s|around\s)\s*(.+)", re.IGNORECASE)


def number(text: str) -> float:
    """Return a number as people write it.

    Raises
    ------
    Problem
        If it is no number, can be read two ways, or is out of all bounds.

    Examples
    --------
    >>> number("12,5"), number("1 250"), number("5 1/2"), number("1.250,5")
    (12.5, 1250.0, 5.5, 1250.5)
    """
    plain = re.sub(_SPACES, " ", text.strip()).replace("−", "-")
    sign = -1.0 if plain.startswith("-") else 1.0
    plain = plain.lstrip("+-").strip()
    if not re.fullmatch(_PART, plain):
        raise Problem("", f"{quoted(text)} is not a number.", "")
    if plain[-1] in _HALVES:
        return sign * (float(plain[:-1].strip() or 0) + _HALVES[plain[-1]])
    if "/" in plain:
        *whole, part = plain.split()
        above, below = part.split("/")
        if not int(below):
            raise Problem("", f"{quoted(text)} divides by zero.", "")
        return sign * (sum(map(float, whole)) + int(above) / int(below))
    value = float(_with_point(plain.replace(" ", ""), text))
    if not isfinite(value):
        raise Problem("", f"{quoted(text)} is beyond all bounds.", "")
    return sign * value


def _with_point(plain: str, text: str) -> str:
    """Return the digits with one decimal point, or say that they can be read two ways."""
    digits, mark, power = plain.lower().partition("e")
    marks = [c for c in digits if c in ".,"]
    if len(marks) == 1 and marks[0] == "," and re.fullmatch(r"[1-9]\d{0,2},\d{3}", digits):
        whole, part = digits.split(",")
        raise Problem(
            "",
            f"{quoted(text)} can be read as {whole}{part} or as {whole}.{part}.",
            f"Write {whole}{part} or {whole}.{part}.",
        )
    if len(marks) > 1:
        last = max(digits.rfind("."), digits.rfind(","))
        groups = re.split(r"[.,]", digits)
        if len(set(marks)) == 1:
            last = len(digits)
            grouped = groups[1:]
        else:
            grouped = groups[1:-1]
        if any(len(group) != 3 for group in grouped) or len(set(marks[:-1])) > 1:
            raise Problem("", f"{quoted(text)} is not a number.", "")
        digits = re.sub(r"[.,]", "", digits[:last]) + digits[last:]
    return digits.replace(",", ".") + mark + power


@dataclass(frozen=True, slots=True)
class Typed:
    """What was read: low, likely and high in the kind's unit; all None for “not known”."""

    low: float | None
    likely: float | None
    high: float | None
    bare: bool = False

    @property
    def known(self) -> bool:
        """True where there is a value."""
        return self.likely is not None


UNKNOWN: Final = Typed(None, None, None)


@lru_cache(maxsize=8192)
def read(text: str, kind: Kind, bare: str = "") -> Typed:
    r"""Return what a person wrote, as floats in the kind's unit.

    Parameters
    ----------
    text : str
        As typed.
    kind : Kind
        What it should measure.
    bare : str
        The unit meant where none is typed; the kind's own by default.

    Raises
    ------
    Problem
        If it cannot be read; it names what was read, what is wrong and what to type.

    Examples
    --------
    >>> read("5'6\"", LENGTH).likely
    1.6764
    >>> read("1h30", TIME)
    Typed(low=1.5, likely=1.5, high=1.5, bare=False)
    >>> read("4-5 A", CURRENT)
    Typed(low=4.0, likely=4.5, high=5.0, bare=False)
    >>> read("?", CURRENT).known
    False
    """
    shown = "".join(c for c in text if c.isprintable() or c.isspace())
    plain = re.sub(r"\s+", " ", shown).strip()
    if plain.lower() in _UNKNOWN:
        return UNKNOWN
    try:
        return _read(plain, kind, bare or kind.unit)
    except Problem as problem:
        mend = problem.mend or f"Enter {kind.a_word}, such as {kind.example}."
        raise Problem(problem.where, problem.what, mend) from None


def _read(plain: str, kind: Kind, bare: str) -> Typed:
    if len(plain) > LONGEST:
        raise Problem("", f"{quoted(plain)} is too long for {kind.a_word}.", "")
    if kind in _HEMISPHERES:
        return _on_earth(plain, kind)
    if kind is CLOCK:
        value = clock(plain)
        return Typed(value, value, value)
    for pattern, reader in _READERS:
        found = pattern.fullmatch(plain)
        typed = reader(found, kind, bare) if found else None
        if typed:
            return typed
    raise Problem("", f"{quoted(plain)} is not {kind.a_word}.", "")


def _times(found: re.Match[str], kind: Kind, bare: str) -> Typed:
    """Return so many equal ones, “2 x 110 Ah”."""
    each, count = _read(found[2], kind, bare), int(found[1])
    low, likely, high = ((end or 0.0) * count for end in (each.low, each.likely, each.high))
    return Typed(low, likely, high, each.bare)


def _about(found: re.Match[str], kind: Kind, bare: str) -> Typed:
    """Return a guess, “~4 A”: 30 % either way."""
    guess = _read(found[1], kind, bare)
    low, likely, high = (guess.low or 0.0, guess.likely or 0.0, guess.high or 0.0)
    return Typed(low - abs(low) * 0.3, likely, high + abs(high) * 0.3, guess.bare)


def _one(found: re.Match[str], kind: Kind, bare: str) -> Typed:
    """Return one value."""
    value = _value(found[1], found[2], kind, bare)
    return Typed(value, value, value, bare=not found[2])


def _around(found: re.Match[str], kind: Kind, bare: str) -> Typed:
    """Return a value give or take, “4.6 A ± 0.3” or “± 5 %”."""
    if found[4] == "%" and kind.unit != "dimensionless":
        middle = _value(found[1], found[2] or "", kind, bare)
        swing = abs(middle) * number(found[3]) / 100
    else:
        unit = found[2] or found[4] or ""
        middle = _value(found[1], unit, kind, bare)
        swing = abs(_value(found[3], found[4] or unit, kind, bare))
    return Typed(middle - swing, middle, middle + swing)


def _span(found: re.Match[str], kind: Kind, bare: str) -> Typed:
    """Return a range, “4-5 A”."""
    low = _value(found[1], found[2] or found[4] or "", kind, bare)
    high = _value(found[3], found[4] or found[2] or "", kind, bare)
    if low > high:
        raise Problem("", f"{quoted(found[0])} runs from high to low.", "Write the low end first.")
    return Typed(low, (low + high) / 2, high, bare=not (found[2] or found[4]))


def _enclosed(found: re.Match[str], kind: Kind, bare: str) -> Typed:
    """Return a likely value with its range, “4.6 A (4.3 to 5)”."""
    likely = _read(found[1], kind, bare)
    spoken = _ONE.fullmatch(found[1])
    unit = found[5] or found[3] or (spoken[2] if spoken else "")
    low = _value(found[2], found[3] or unit, kind, bare)
    high = _value(found[4], unit, kind, bare)
    if likely.likely is None or not low <= likely.likely <= high:
        raise Problem(
            "",
            f"{quoted(found[0])}: the range does not hold the likely value.",
            f"Write the likely value, then low to high, such as {kind.example} (low to high).",
        )
    return Typed(low, likely.likely, high, likely.bare)


def _value(digits: str, unit: str, kind: Kind, bare: str) -> float:
    value = number(digits)
    if not unit and kind is FRACTION and bare == "percent":
        unit = "percent"
    if kind is ANGLE and unit.lower() in _DEGREES:
        unit = "arc_degree"
    try:
        factor, offset = converts(unit or bare, kind)
    except Problem as problem:
        raise Problem("", f"{quoted(digits + ' ' + unit)}: {problem.what}", problem.mend) from None
    found = value * factor + offset
    if not isfinite(found):
        raise Problem("", f"{quoted(digits + ' ' + unit)} is beyond all bounds.", "")
    return found


def _pair(pair: re.Match[str], kind: Kind, _bare: str) -> Typed | None:
    """Return feet and inches, metres and centimetres, or hours and minutes."""
    first = pair[2].lower().rstrip(".")
    if first in {"h", "hr", "hrs", "hour", "hours", ":"}:
        big, small = "hour", "minute"
    elif first in {"m", "metre", "metres", "meter", "meters"}:
        if not pair[4] and kind is not LENGTH:
            return None
        big, small = "meter", "centimeter"
    else:
        big, small = "foot", "inch"
    if pair[4] and not (small == "minute" and pair[4] == "m"):
        small = meant(pair[4])
    value = _value(pair[1], big, kind, big) + _value(pair[3], small, kind, small)
    return Typed(value, value, value)


def _on_earth(plain: str, kind: Kind) -> Typed:
    """Return a latitude or longitude, “43.5 N”, “-43.5” or “12°30' S”; south and west negative."""
    if plain[:1].isalpha():  # “S 12” is “12 S”
        plain = f"{plain[1:].strip()} {plain[0]}"
    found = _ON_EARTH.fullmatch(plain)
    letter = found[4].upper() if found else ""
    if not found or letter not in _HEMISPHERES[kind]:
        raise Problem("", f"{quoted(plain)} is not {kind.a_word}.", "")
    degrees, minutes, seconds = (number(part or "0") for part in found.groups()[:3])
    signed = found[1].startswith(("-", "−"))
    if (signed and letter) or max(minutes, seconds) >= 60:
        raise Problem("", f"{quoted(plain)} is not {kind.a_word}.", "")
    value = abs(degrees) + minutes / 60 + seconds / 3600
    value *= -1 if signed or letter in {"S", "W"} else 1
    return Typed(value, value, value)


def clock(text: str) -> float:
    """Return an hour of the clock.

    Parameters
    ----------
    text : str
        Such as ``19:30``, ``7 pm``, ``19`` or ``19.5 h``.

    Returns
    -------
    float
        Since midnight. [h]

    Raises
    ------
    Problem
        If it is none.

    Examples
    --------
    >>> clock("19:30"), clock("7 pm"), clock("0730"), clock("21.5 h")
    (19.5, 19.0, 7.5, 21.5)
    """
    plain = text.strip()
    found, plainly = _CLOCK.fullmatch(plain.lower()), _ONE.fullmatch(plain)
    hour = -1.0
    if found:
        hour = int(found[1])
        if found[3] in {"am", "pm"}:
            hour = hour % 12 + 12 * (found[3] == "pm") if 1 <= hour <= 12 else -1
        hour += int(found[2] or 0) / 60
    elif plainly:
        hour = _value(plainly[1], plainly[2], TIME, TIME.unit)
    if 0 <= hour < 24:
        return hour
    raise Problem("", f"{quoted(text)} is no time of the day.", "Enter such as 19:30.")


def of_day(hour: float) -> str:
    """Return an hour of the clock as people write it.

    Parameters
    ----------
    hour : float
        Since midnight. [h]

    Examples
    --------
    >>> of_day(19.5), of_day(0.0)
    ('19:30', '00:00')
    """
    whole, minute = divmod(round(hour * 60), 60)
    return f"{whole:02d}:{minute:02d}"


def on_earth(degrees: float, kind: Kind) -> str:
    """Return a latitude or longitude as sailors write it, and as it can be typed.

    Parameters
    ----------
    degrees : float
        North or east positive. [°]
    kind : Kind
        LATITUDE or LONGITUDE.

    Examples
    --------
    >>> on_earth(-43.5, LATITUDE), on_earth(5.0, LONGITUDE), on_earth(0.0, LATITUDE)
    ('43.5 S', '5 E', '0')
    """
    _, positive, negative = _HEMISPHERES[kind]
    letter = (negative if degrees < 0 else positive) if degrees else ""
    return f"{said(abs(degrees), 4)} {letter}".strip()


_DEGREES: Final = {"°", "º", "deg", "degree", "degrees"}
"""What means a part of a turn where an angle is asked for, and a temperature elsewhere."""
_HEMISPHERES: Final = {LATITUDE: ("", "N", "S"), LONGITUDE: ("", "E", "W")}
_READERS: Final = (
    (_ENCLOSED, _enclosed),
    (_TIMES, _times),
    (_ABOUT, _about),
    (_PAIR, _pair),
    (_ONE, _one),
    (_AROUND, _around),
    (_RANGE, _span),
)
"""Ways of writing a quantity, tried in this order."""


def said(value: float, digits: int = 3) -> str:
    """Return a figure for people: so many significant digits, no needless zeros.

    Parameters
    ----------
    value : float
        Any unit. [1]
    digits : int
        Significant digits. [1]

    Examples
    --------
    >>> said(146.2), said(0.04567), said(12345.0), said(3.0)
    ('146', '0.0457', '12300', '3')
    """
    if value == 0:
        return "0"
    if abs(value) >= 1e6 or abs(value) < 1e-4:
        return f"{value:.{digits}g}"
    text = f"{value:.{digits}g}"
    if "e" in text:
        text = f"{float(text):.0f}"
    return text


def fixed(value: float, places: int) -> str:
    """Return a figure with so many places, for readings and percents.

    Parameters
    ----------
    value : float
        Any unit. [1]
    places : int
        Digits after the point. [1]

    Examples
    --------
    >>> fixed(12.6, 2)
    '12.60'
    """
    return f"{value:.{places}f}"


def words(items: Iterable[str], last: str = "and") -> str:
    """Return items as a list in a sentence.

    Examples
    --------
    >>> words(["a", "b", "c"])
    'a, b and c'
    """
    listed = list(items)
    return f" {last} ".join([", ".join(listed[:-1]), listed[-1]] if len(listed) > 1 else listed)
