from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.quantity.lengths import (
    format_length,
    length_in_metres,
    read_length,
    read_signed_length,
)
from hoopwright.quantity.typed import ReadError

# 1 in = 25.4 mm exactly: NIST Special Publication 811, appendix B (read in a copy).
INCH_MM = Fraction("25.4")

# Lengths in inches, worked by hand: feet times twelve, plus inches, plus the fraction.
WRITTEN_IN_INCHES = [
    ("5' 6 1/2\"", "66.5"),
    ("5'6.5\"", "66.5"),
    ("5'6 1/2", "66.5"),
    ("5-6-1/2", "66.5"),
    ("5-6 1/2", "66.5"),
    ('5-6-1/2"', "66.5"),
    ("5-6", "66"),
    ("5 - 6", "66"),
    ("5'-6\"", "66"),
    ("5' - 6-1/2\"", "66.5"),
    ("5 ft 6 in", "66"),
    ("5 ft. 6 in.", "66"),
    ("5 FT 6 IN", "66"),
    ("5 feet 6 inches", "66"),
    ("5ft6", "66"),
    ("5'6", "66"),
    ('66-1/2"', "66.5"),
    ('66 1/2"', "66.5"),
    ("5 1/2'", "66"),
    ("5-1/2'", "66"),
    ('5-1/2"', "5.5"),
    ('\u00bd"', "0.5"),
    ('6\u00bd"', "6.5"),
    ("5' 6\u00bd\"", "66.5"),
    ('6-\u00be"', "6.75"),
    ("5\u2019 6\u201d", "66"),
    ("5\u2032 6\u2033", "66"),
    ("5\u00a0ft\u202f6\u00a0in", "66"),
    ("\uff15\uff07 \uff16\uff02", "66"),
    ("\uff15 ft", "60"),
    ("5' 6''", "66"),
    ("66\u2032\u2032", "66"),
    ("5 1\u204416 in", "5.0625"),
    ("5' 0 1/16\"", "60.0625"),
    ("1 yd 2 ft 3 in", "63"),
    ("1,234' 5\"", "14813"),
    ("60 mil", "0.06"),
]
WRITTEN_IN_METRES = [
    ("1.68 m", "1.68"),
    ("168 cm", "1.68"),
    ("1 m 68 cm", "1.68"),
    ("1m68cm", "1.68"),
    ("1,68 m", "1.68"),
    ("0,125 m", "0.125"),
    ("1.680 m", "1.68"),
    ("1,680.5 mm", "1.6805"),
    ("1.680,5 mm", "1.6805"),
    ("1 m 680 mm", "1.68"),
    ("150 \u00b5m", "0.00015"),
    ("150 \u03bcm", "0.00015"),
    ("9.14 metres", "9.14"),
]
REFUSED = [
    ("5-1/2", "feet or inches? Write 5 1/2\" or 5 1/2'"),
    ("5 6", "is it 5 ft 6 in?"),
    ("5 6 1/2", "is it 5 ft 6 1/2 in?"),
    ("1,680 mm", "can be 1680 or 1.680"),
    ("1,680", "can be 1680 or 1.680"),
    ("5' 14\"", "not less than one ft"),
    ("5' 12\"", "not less than one ft"),
    ("5-14", "not less than one ft"),
    ("5.5' 6\"", "must be a whole number"),
    ("5 1/2' 6\"", "must be a whole number"),
    ('3/2"', "fraction below one"),
    ('1/0"', "fraction below one"),
    ('5.5 1/2"', "fraction below one"),
    ("5 M", "metres or mil"),
    ("1e5", "not a unit of length"),
    ("5 kg", "\u201ckg\u201d is not a unit of length"),
    ("nan", "not a length"),
    ("inf", "not a length"),
    ("", "Nothing is written"),
    (" \u00a0 ", "Nothing is written"),
    ("9" * 41, "longer than 40 characters"),
    ("9" * 40, "not a number"),
    ("20000 m", "longer than 10,000 m"),
    ("-5", "less than zero"),
    ("\u22125' 6\"", "less than zero"),
    ("1 m 68", "which unit has 68"),
    ("5 ft 1 m", "mixes ft and m"),
    ("1 in 2 ft", "cannot follow in"),
    ("5 in 0 in", "cannot follow in"),
    ("5 ft -", "not finished"),
    ("5\u00b2", "not a length"),
    ("\u0665 ft", "not a length"),
    ("1_000", "not a length"),
    ("5.", "not a number"),
    ("2**3", "not a length"),
]


@pytest.mark.parametrize("units", ["imperial", "metric"])
@pytest.mark.parametrize(("text", "inches"), WRITTEN_IN_INCHES)
def test_feet_and_inches_are_read_in_either_system(text, inches, units):
    expected_m = float(Fraction(inches) * INCH_MM / 1000)
    assert read_length(text, units).value_m == expected_m


@pytest.mark.parametrize("units", ["imperial", "metric"])
@pytest.mark.parametrize(("text", "metres"), WRITTEN_IN_METRES)
def test_metres_are_read_in_either_system(text, metres, units):
    assert read_length(text, units).value_m == float(metres)


@pytest.mark.parametrize("units", ["imperial", "metric"])
@pytest.mark.parametrize(("text", "why"), REFUSED)
def test_what_cannot_be_one_length_is_refused_with_words(text, why, units):
    with pytest.raises(ReadError) as refused:
        read_length(text, units)
    assert why in str(refused.value)
    assert str(refused.value).rstrip().endswith((".", "?"))


@pytest.mark.parametrize(
    ("text", "units", "metres"),
    [
        ("30", "imperial", "9.144"),
        ("30", "metric", "30"),
        ("5.6", "imperial", "1.70688"),
        ("5,6", "metric", "5.6"),
        (".5", "imperial", "0.1524"),
        ("5\u00bd", "imperial", "1.6764"),
        ("0", "metric", "0"),
    ],
)
def test_a_bare_number_is_in_the_unit_of_the_field(text, units, metres):
    assert read_length(text, units).value_m == float(metres)


@pytest.mark.parametrize(
    ("text", "units", "doubtful"),
    [
        ("5.6", "imperial", True),
        ("5.6 ft", "imperial", False),
        ("5.0", "imperial", False),
        ("30", "imperial", False),
        ("5 1/2", "imperial", True),
        ("1/2", "metric", True),
        ("5.6", "metric", False),
        ("1680", "metric", True),
        ("1680 mm", "metric", False),
        ("5-6", "imperial", False),
        ("5-6", "metric", True),
        ("5' 6\"", "metric", False),
    ],
)
def test_what_is_often_meant_otherwise_is_marked_doubtful(text, units, doubtful):
    assert read_length(text, units).doubtful is doubtful


@pytest.mark.parametrize(
    ("text", "units", "echo"),
    [
        ("5.6", "imperial", "5.6 ft = 5' 7 1/4\""),
        ("5-6-1/2", "imperial", "5' 6 1/2\""),
        ("5' 6\"", "metric", "5' 6\" = 1.676 m"),
        ('66-1/2"', "imperial", '66 1/2" = 5\' 6 1/2"'),
        ("5' 6 1/16\"", "imperial", "5' 6 1/16\""),
        ("30", "imperial", "30' 0\""),
        ("1,68", "metric", "1.68 m"),
        ("168 cm", "metric", "168 cm = 1.680 m"),
        ("1 m 68 cm", "imperial", "1 m 68 cm = 5' 6 1/8\""),
    ],
)
def test_the_echo_says_how_it_was_read(text, units, echo):
    assert read_length(text, units).echo == echo


# Worked by hand from 1 in = 0.0254 m; the last rows sit just beside a step.
@pytest.mark.parametrize(
    ("inches", "step", "rounding", "text"),
    [
        ("66.5", 8, "near", "5' 6 1/2\""),
        ("7.25", 8, "near", '7 1/4"'),
        ("0.5", 8, "near", '1/2"'),
        ("60.5", 8, "near", "5' 0 1/2\""),
        ("144", 8, "near", "12' 0\""),
        ("0", 8, "near", '0"'),
        ("12", 8, "near", "1' 0\""),
        ("11.96875", 16, "near", "1' 0\""),
        ("11.96875", 16, "down", '11 15/16"'),
        ("11.96875", 32, "near", '11 31/32"'),
        ("11.9", 8, "up", "1' 0\""),
        ("11.9", 8, "down", '11 7/8"'),
        ("66.01", 8, "up", "5' 6 1/8\""),
        ("66.0000001", 8, "up", "5' 6\""),
        ("65.9999999", 8, "down", "5' 6\""),
        ("66.0625", 8, "near", "5' 6 1/8\""),
        ("67.3", 1, "near", "5' 7\""),
        ("-66.5", 8, "near", "-5' 6 1/2\""),
        ("-0.001", 8, "near", '0"'),
        ("-11.9", 8, "up", '-11 7/8"'),
        ("-11.9", 8, "down", "-1' 0\""),
        ("14813", 8, "near", "1,234' 5\""),
    ],
)
def test_feet_and_inches_are_rounded_and_carried(inches, step, rounding, text):
    metres = float(Fraction(inches) * INCH_MM / 1000)
    assert format_length(metres, "imperial", step=step, rounding=rounding) == text


@pytest.mark.parametrize(
    ("metres", "rounding", "text"),
    [
        (9.144, "near", "9.144 m"),
        (9.1441, "up", "9.145 m"),
        (9.1449, "down", "9.144 m"),
        (9.144, "up", "9.144 m"),
        (0.9996, "near", "1.000 m"),
        (1234.5, "near", "1,234.500 m"),
        (-0.0001, "near", "0.000 m"),
        (-1.5, "near", "-1.500 m"),
    ],
)
def test_metres_are_rounded_to_the_millimetre(metres, rounding, text):
    assert format_length(metres, "metric", rounding=rounding) == text


@pytest.mark.parametrize("metres", [float("nan"), float("inf"), float("-inf")])
def test_a_length_that_is_no_number_is_never_shown(metres):
    with pytest.raises(ValueError, match="finite"):
        format_length(metres, "metric")


@pytest.mark.parametrize("step", [0, -8, 65])
def test_a_step_outside_the_tape_is_a_fault_of_the_caller(step):
    with pytest.raises(ValueError, match="step of an inch"):
        format_length(1.0, "imperial", step=step)


def _tape(sixteenths: int) -> str:
    """Return a length as it stands on a tape, without the code under test."""
    feet, rest = divmod(sixteenths, 192)
    inches, over = divmod(rest, 16)
    fraction = str(Fraction(over, 16)) if over else ""
    words = f"{inches} {fraction}" if fraction and (inches or feet) else fraction or str(inches)
    return f"{feet}' {words}\"" if feet else f'{words}"'


@pytest.mark.parametrize("as_metres", [lambda n: n / 16 * 0.0254, lambda n: n * 0.0254 / 16])
def test_every_sixteenth_to_200_ft_goes_through_metres_and_back(as_metres):
    for sixteenths in range(200 * 192 + 1):
        written = _tape(sixteenths)
        metres = as_metres(sixteenths)
        assert format_length(metres, "imperial", step=16) == written
        assert read_length(written, "imperial").value_m == pytest.approx(metres, rel=1e-15)


@pytest.mark.parametrize("rounding", ["up", "down"])
def test_a_length_on_a_step_stays_there_in_every_mode(rounding):
    for sixteenths in range(0, 200 * 192 + 1, 7):
        metres = sixteenths / 16 * 0.0254
        shown = format_length(metres, "imperial", step=16, rounding=rounding)
        assert shown == _tape(sixteenths)


@given(st.floats(0, 9_999), st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_what_is_shown_can_be_typed_back(metres, step):
    inch_step_m = 0.0254 / step
    near = read_length(format_length(metres, "imperial", step=step), "imperial").value_m
    assert abs(near - metres) <= inch_step_m * 0.500_01
    up = read_length(format_length(metres, "imperial", step=step, rounding="up"), "metric").value_m
    assert -1e-5 * inch_step_m - 1e-11 <= up - metres < inch_step_m
    down = format_length(metres, "metric", rounding="down")
    assert -1e-8 <= metres - read_length(down, "metric").value_m < 1e-3


@given(
    st.integers(0, 999),
    st.integers(0, 11),
    st.integers(0, 63),
    st.sampled_from(["imperial", "metric"]),
)
def test_every_way_of_writing_feet_and_inches_reads_the_same(feet, inches, over, units):
    fraction = f" {over}/64" if over else ""
    dashed = f"-{over}/64" if over else ""
    exact_m = float((feet * 12 + inches + Fraction(over, 64)) * INCH_MM / 1000)
    for text in (
        f"{feet}' {inches}{fraction}\"",
        f"{feet}-{inches}{dashed}",
        f"{feet}ft{inches}{fraction}",
        f"{feet} ft {inches}{dashed} in",
        f"{feet}\u2032{inches}{fraction}\u2033",
    ):
        assert read_length(text, units).value_m == exact_m


@given(
    st.text(max_size=45)
    | st.text(alphabet="0123456789 -/.,'\"ftincmM\u00bd\u2032\u2033\u00b5e", max_size=20),
    st.sampled_from(["imperial", "metric"]),
)
def test_nonsense_is_read_or_refused_and_nothing_else(text, units):
    try:
        reading = read_length(text, units)
    except ReadError:
        return
    assert 0 <= reading.value_m <= 10_000
    assert reading.echo


@pytest.mark.parametrize(
    ("text", "bare_unit", "metres"),
    [
        ("1 5/8", "in", "0.041275"),
        ("1.66", "in", "0.042164"),
        ("42,2", "mm", "0.0422"),
        ("6", "mil", "0.0001524"),
        ("150", "\u00b5m", "0.00015"),
        ('1/16"', "mm", "0.0015875"),
    ],
)
def test_thin_things_are_bare_in_their_own_unit(text, bare_unit, metres):
    assert length_in_metres(text, bare_unit) == float(metres)


def test_a_thin_thing_refused_names_its_own_unit():
    with pytest.raises(ReadError, match=r"12\.5 mil"):
        length_in_metres("6 kg", "mil")


@pytest.mark.parametrize(
    ("text", "inches"),
    [('-1 1/2"', "-1.5"), ("\u22121'2\"", "-14"), ("- 1-2-1/2", "-14.5"), ("1-2", "14")],
)
def test_a_height_below_the_line_has_a_minus_before_it(text, inches):
    found = read_signed_length(text, "imperial")
    assert found.value_m == pytest.approx(float(Fraction(inches) * INCH_MM / 1000), abs=1e-12)
    assert found.echo.startswith("-") == (Fraction(inches) < 0)


@pytest.mark.parametrize("text", ["--5", "-", "-5 kg"])
def test_a_minus_alone_makes_no_length(text):
    with pytest.raises(ReadError):
        read_signed_length(text, "metric")
