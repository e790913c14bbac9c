"""Reading what people write; each expected figure is the definition of its unit, by hand."""

import pytest

from engine.problem import Problem
from engine.units import (
    ANGLE,
    AREA,
    CHARGE,
    CURRENT,
    FRACTION,
    IRRADIANCE,
    LATITUDE,
    LENGTH,
    LONGITUDE,
    NUMBER,
    POWER,
    RESISTANCE,
    TEMPERATURE,
    TIME,
    UNKNOWN,
    VOLTS,
    converts,
    fixed,
    in_unit,
    meant,
    number,
    read,
    said,
    words,
)


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("12,5", VOLTS, 12.5),
        ("12.5 A", CURRENT, 12.5),
        ("+12.5 A", CURRENT, 12.5),
        ("60W", POWER, 60.0),
        ("1.2 kW", POWER, 1200.0),
        ("1 hp", POWER, 745.69987158227),
        ("15 mA", CURRENT, 0.015),
        ("1h30", TIME, 1.5),
        ("1h30min", TIME, 1.5),
        ("1 hr 30 min", TIME, 1.5),
        ("1:30", TIME, 1.5),
        ("90 min", TIME, 1.5),
        ("2 days", TIME, 48.0),
        ("3 h a day", TIME, 3.0),
        ("5'6\"", LENGTH, 1.6764),
        ("5′6″", LENGTH, 1.6764),
        ("5 ft 6", LENGTH, 1.6764),
        ("5 ft 6 in", LENGTH, 1.6764),
        ("5 ft. 6 in.", LENGTH, 1.6764),
        ("5 ft 6½ in", LENGTH, 1.6891),
        ("14 ft", LENGTH, 4.2672),
        ("66 in", LENGTH, 1.6764),
        ("4m50", LENGTH, 4.5),
        ("4 m 50 cm", LENGTH, 4.5),
        ("45 cm", LENGTH, 0.45),
        ("5 1/2 m", LENGTH, 5.5),
        ("5½ m", LENGTH, 5.5),
        ("½ m", LENGTH, 0.5),
        ("1 250 m", LENGTH, 1250.0),
        ("1\u202f250,5 m", LENGTH, 1250.5),
        ("1.250,5 m", LENGTH, 1250.5),
        ("1,250.5 m", LENGTH, 1250.5),
        ("1,234,567 m", LENGTH, 1234567.0),
        ("1e3 m", LENGTH, 1000.0),
        (".5 m", LENGTH, 0.5),
        ("5. m", LENGTH, 5.0),
        ("0,250 m", LENGTH, 0.25),
        ("86 degF", TEMPERATURE, 30.0),
        ("86 °F", TEMPERATURE, 30.0),
        ("30 deg C", TEMPERATURE, 30.0),
        ("-10 °C", TEMPERATURE, -10.0),
        ("−10", TEMPERATURE, -10.0),
        ("3 mohm", RESISTANCE, 0.003),
        ("3 mΩ", RESISTANCE, 0.003),
        ("220 Ah", CHARGE, 220.0),
        ("500 mAh", CHARGE, 0.5),
        ("3 %", FRACTION, 0.03),
        ("0.03", FRACTION, 0.03),
        ("16mm2", AREA, 16.0),
        ("16 sq mm", AREA, 16.0),
        ("16 mm²", AREA, 16.0),
        ("16 mm^2", AREA, 16.0),
        ("4", NUMBER, 4.0),
    ],
)
def test_one_value_as_people_write_it(text, kind, value):
    found = read(text, kind)
    assert found.likely == pytest.approx(value, rel=1e-9)
    assert found.low == found.likely == found.high
    assert found.known


@pytest.mark.parametrize(
    ("text", "low", "likely", "high"),
    [
        ("4-5", 4, 4.5, 5),
        ("4–5 A", 4, 4.5, 5),
        ("4 A to 5 A", 4, 4.5, 5),
        ("4 to 5 A", 4, 4.5, 5),
        ("400 mA - 5 A", 0.4, 2.7, 5),
        ("4...5 A", 4, 4.5, 5),
        ("4…5 A", 4, 4.5, 5),
        ("~4", 2.8, 4, 5.2),
        ("about 4 A", 2.8, 4, 5.2),
        ("ca. 4 A", 2.8, 4, 5.2),
        ("~4-5 A", 2.8, 4.5, 6.5),
        ("4 ± 0.5 A", 3.5, 4, 4.5),
        ("4 A ± 0.5", 3.5, 4, 4.5),
        ("4 A +/- 10 %", 3.6, 4, 4.4),
        ("4 ± 10%", 3.6, 4, 4.4),
        ("4 A ± 500 mA", 3.5, 4, 4.5),
        ("4.6 A (4.3 to 5)", 4.3, 4.6, 5),
        ("4.6 (4.3-5 A)", 4.3, 4.6, 5),
        ("460 mA (0.4 A to 500 mA)", 0.4, 0.46, 0.5),
        ("4600 mA (4300 – 5000)", 4.3, 4.6, 5),
        ("4-5 A (3 to 6)", 3, 4.5, 6),
        ("2 x 4.5 A", 9, 9, 9),
        ("3×4-5 A", 12, 13.5, 15),
    ],
)
def test_a_range(text, low, likely, high):
    found = read(text, CURRENT)
    assert (found.low, found.likely, found.high) == pytest.approx((low, likely, high))


def test_a_share_with_a_swing_in_percent_swings_by_shares():
    """3 % ± 1 % is 2 % to 4 %, not 2.97 % to 3.03 %."""
    found = read("3 % ± 1 %", FRACTION)
    assert (found.low, found.high) == pytest.approx((0.02, 0.04))


@pytest.mark.parametrize("text", ["", "  ", "?", "-", "–", "unknown", "Don't know", "n/a"])
def test_not_known_is_an_answer(text):
    assert read(text, CURRENT) is UNKNOWN
    assert not read(text, CURRENT).known


def test_a_bare_figure_takes_the_unit_the_field_means():
    assert read("50", FRACTION, "percent").likely == pytest.approx(0.5)
    assert read("10", LENGTH, "foot").likely == pytest.approx(3.048)
    assert read("10", LENGTH, "foot").bare
    assert read("4-5", LENGTH, "foot").bare
    assert not read("10 m", LENGTH, "foot").bare


@pytest.mark.parametrize(
    ("text", "kind", "what", "mend"),
    [
        ("3 kg", LENGTH, "measures a weight, not a length", "Enter a length, such as 4.5 m"),
        ("3 kg - 4 kg", LENGTH, "measures a weight", "Enter a length"),
        ("12 V", CURRENT, "measures a voltage, not a current", "4.6 A"),
        ("5 Ah", CURRENT, "measures a charge", "4.6 A"),
        ("3 m ohm m", LENGTH, "not a length", "4.5 m"),
        ("5 ft 6 h", LENGTH, "", ""),
        ("3 kg m", LENGTH, "", "4.5 m"),
        ("3 q/s", LENGTH, "not a unit", "4.5 m"),
        ("3 blorp", LENGTH, "“blorp” is not a unit", "4.5 m"),
        ("four", LENGTH, "“four” is not a length", "4.5 m"),
        ("1,250 m", LENGTH, "can be read as 1250 or as 1.250", "Write 1250 or 1.250."),
        ("1,25,0 m", LENGTH, "is not a number", "4.5 m"),
        ("1.25,0.5 m", LENGTH, "is not a number", "4.5 m"),
        ("1,250.500,5 m", LENGTH, "is not a number", "4.5 m"),
        ("NaN", LENGTH, "“NaN” is not a length", "4.5 m"),
        ("inf", LENGTH, "is not a length", "4.5 m"),
        ("1e309", LENGTH, "beyond all bounds", "4.5 m"),
        ("1/0 m", LENGTH, "divides by zero", "4.5 m"),
        ("4.6 A (5 to 6)", CURRENT, "range does not hold the likely value", "4.6 A (low to high)"),
        ("2 x four", CURRENT, "“four” is not a current", "4.6 A"),
        ("5-4 A", CURRENT, "runs from high to low", "Write the low end first."),
        ("9" * 61, LENGTH, "too long", "4.5 m"),
        ("9" * 1_000_000, LENGTH, "too long", "4.5 m"),
        ("<script>alert(1)</script>", LENGTH, "“<script>alert(1)</script>” is not a length", "m"),
        ("٣ ٤ متر", LENGTH, "is not a length", "4.5 m"),
        ("12 V 5", VOLTS, "is not a voltage", "12 V"),
        ("1h30 A", CURRENT, "", "4.6 A"),
        ("7 m 5", TIME, "", "1.5 h"),
        ("5 ft 6", CURRENT, "measures a length", "4.6 A"),
    ],
)
def test_what_cannot_be_read_says_why_and_what_to_type(text, kind, what, mend):
    with pytest.raises(Problem) as caught:
        read(text, kind)
    assert what in caught.value.what
    assert mend in caught.value.mend
    assert len(caught.value.what) < 120


@pytest.mark.parametrize("mark", ["\u200b", "\u200f", "\u202e", "\ufeff", "\u2066"])
def test_marks_that_print_nothing_never_reach_a_message(mark):
    with pytest.raises(Problem) as caught:
        read(f"12{mark} kg", LENGTH)
    assert mark not in caught.value.what


@pytest.mark.parametrize("text", ["", "four", "1 2", "--", "1/2/3", "½½"])
def test_number_refuses_what_is_none(text):
    with pytest.raises(Problem, match="is not a number"):
        number(text)


def test_a_minus_counts_in_every_form():
    assert (number("-½"), number("-1/2"), number("- 3"), number("−3,5")) == (-0.5, -0.5, -3.0, -3.5)


def test_meant_knows_spoken_and_written_units():
    spoken = [meant(unit) for unit in ("Amps", "mm²", "sq mm", "kW", "KW", "nmi", "deg  F")]
    assert spoken == [
        "ampere", "square_mm", "square_mm", "kilowatt", "kilowatt", "nautical_mile", "degF",
    ]  # fmt: skip


@pytest.mark.parametrize("unit", ["blorp", "q/s", "", "x" * 30])
def test_meant_refuses_the_rest(unit):
    with pytest.raises(Problem, match="is not a unit"):
        meant(unit)


def test_a_dimension_without_a_word_is_something_else():
    """Newtons are known, for the joule rests on them, but no field asks for a force."""
    with pytest.raises(Problem, match="measures something else, not a length"):
        converts("N", LENGTH)


def test_converts_gives_factor_and_offset():
    assert converts("degF", TEMPERATURE) == pytest.approx((5 / 9, -160 / 9))
    assert in_unit(30.0, TEMPERATURE, "degF") == pytest.approx(86.0)
    assert in_unit(1.6764, LENGTH, "ft") == pytest.approx(5.5)


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (0.0, 3, "0"),
        (146.2, 3, "146"),
        (0.04567, 3, "0.0457"),
        (12345.0, 3, "12300"),
        (3.0, 3, "3"),
        (999.96, 3, "1000"),
        (2e6, 3, "2e+06"),
        (0.00001, 3, "1e-05"),
        (-12.34, 3, "-12.3"),
    ],
)
def test_said_keeps_significant_digits(value, digits, text):
    assert said(value, digits) == text


def test_fixed_keeps_places():
    assert (fixed(12.6, 2), fixed(0.0, 1)) == ("12.60", "0.0")


def test_words_make_a_list():
    assert (words([]), words(["a"]), words(["a", "b"], "or"), words(["a", "b", "c"])) == (
        "", "a", "a or b", "a, b and c",
    )  # fmt: skip


def test_a_kind_has_its_article():
    assert (LENGTH.a_word, AREA.a_word) == ("a length", "an area")


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("43 N", LATITUDE, 43.0),
        ("43.5n", LATITUDE, 43.5),
        ("-12.5", LATITUDE, -12.5),
        ("12,5 S", LATITUDE, -12.5),
        ("12°30' S", LATITUDE, -12.5),
        ("12° 30′ S", LATITUDE, -12.5),
        ("12 30.6' N", LATITUDE, 12.51),
        ("0", LATITUDE, 0.0),
        ("5 deg W", LONGITUDE, -5.0),
        ("151°15'36\" E", LONGITUDE, 151.26),
        ("15", ANGLE, 15.0),
        ("15°", ANGLE, 15.0),
        ("-15 deg", ANGLE, -15.0),
        ("10 to 20 degrees", ANGLE, 15.0),
        ("1361", IRRADIANCE, 1361.0),
        ("1366.1 W/m2", IRRADIANCE, 1366.1),
        ("1366.1 W/m²", IRRADIANCE, 1366.1),
        ("1 000 w/m^2", IRRADIANCE, 1000.0),
    ],
)
def test_places_angles_and_light(text, kind, value):
    """60 minutes and 3600 seconds make a degree; south and west are negative."""
    assert read(text, kind).likely == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("43 E", LATITUDE),
        ("43 N", LONGITUDE),
        ("-43 N", LATITUDE),
        ("12°60' S", LATITUDE),
        ("12°30'60\" S", LATITUDE),
        ("43 kg", LATITUDE),
        ("north", LATITUDE),
        ("15 °C", ANGLE),
        ("15 W", IRRADIANCE),
        ("15 W/m3", IRRADIANCE),
    ],
)
def test_no_place_no_angle_and_no_light(text, kind):
    with pytest.raises(Problem) as caught:
        read(text, kind)
    assert kind.word in f"{caught.value.what} {caught.value.mend}"


def test_a_place_not_known():
    assert read("?", LATITUDE) == UNKNOWN


def test_degrees_stay_a_temperature_where_one_is_asked_for():
    assert read("30°", TEMPERATURE).likely == 30.0
    assert read("30 degrees", TEMPERATURE).likely == 30.0


@pytest.mark.parametrize(
    ("text", "degrees"), [("S 12", -12.0), ("N 43.5", 43.5), ("s12°30'", -12.5)]
)
def test_a_hemisphere_may_stand_first(text, degrees):
    assert read(text, LATITUDE).likely == degrees
