from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.quantity.typed import ReadError, plain_text, read_figure, read_mixed


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("5\u2019 6\u201d", "5' 6\""),
        ("5\u2032 6\u2033", "5' 6\""),
        ("5' 6''", "5' 6\""),
        ("\uff11\uff12 \uff0d \uff13", "12 - 3"),
        ("5\u00bd", "5 1/2"),
        ("\u215c", "3/8"),
        ("1\u20442", "1/2"),
        ("\u22125", "-5"),
        ("1\u20136", "1-6"),
        ("  1\u00a0\u202f 2\t3 ", "1 2 3"),
        ("\ufeff12\u200b", "12"),
        ("\u03bcm", "\u00b5m"),
        ("5\u00b2", "5\u00b2"),
    ],
)
def test_each_sign_has_one_plain_form(typed, plain):
    assert plain_text(typed) == plain


@pytest.mark.parametrize("typed", ["", "   ", "\u00a0", "\u200b"])
def test_an_empty_field_says_so(typed):
    with pytest.raises(ReadError, match="Nothing is written"):
        plain_text(typed)


def test_a_long_text_is_refused_without_repeating_it():
    assert plain_text("7" * 40) == "7" * 40
    with pytest.raises(ReadError, match="longer than 40") as refused:
        plain_text("7" * 5_000_000)
    assert len(str(refused.value)) < 120


@pytest.mark.parametrize(
    ("token", "number"),
    [
        ("12", "12"),
        ("12.5", "12.5"),
        ("12,5", "12.5"),
        (".5", "0.5"),
        (",5", "0.5"),
        ("0,125", "0.125"),
        ("1.680", "1.68"),
        ("1,6805", "1.6805"),
        ("1,234,567", "1234567"),
        ("1,234.5", "1234.5"),
        ("1.234,5", "1234.5"),
        ("1.234.567", "1234567"),
        ("007", "7"),
    ],
)
def test_both_decimal_marks_are_read_exactly(token, number):
    assert read_figure(token) == Fraction(number)


def test_one_comma_before_three_digits_is_asked_about_unless_it_must_group():
    with pytest.raises(ReadError, match=r"can be 1680 or 1\.680"):
        read_figure("1,680")
    assert read_figure("1,680", comma_groups=True) == 1680
    assert read_figure("1,68", comma_groups=True) == Fraction("1.68")


@pytest.mark.parametrize(
    "token", ["", ".", ",", "5.", "1..2", "1,2,3", "12,34.5", "1,23,456", "1.2.3", "9" * 13]
)
def test_what_is_no_number_is_refused(token):
    with pytest.raises(ReadError, match="is not a number"):
        read_figure(token)


@pytest.mark.parametrize(
    ("number", "over", "value"),
    [("6", "1/2", "6.5"), (None, "3/8", "0.375"), ("1", None, "1"), ("0", "15/16", "0.9375")],
)
def test_whole_numbers_and_fractions_add_up(number, over, value):
    assert read_mixed(number, over) == Fraction(value)


@pytest.mark.parametrize(("number", "over"), [("6", "2/2"), (None, "1/0"), ("6.5", "1/2")])
def test_a_fraction_is_below_one_and_follows_a_whole_number(number, over):
    with pytest.raises(ReadError, match="fraction below one"):
        read_mixed(number, over)


@given(st.decimals(0, 10**9, places=6, allow_nan=False))
def test_a_decimal_is_read_the_same_with_point_and_comma(number):
    text = f"{number:f}"
    assert read_figure(text) == Fraction(number)
    assert read_figure(text.replace(".", ",")) == Fraction(number)


@given(st.text(alphabet="0123456789.,", max_size=16))
def test_only_read_errors_come_out(token):
    try:
        value = read_figure(token)
    except ReadError:
        return
    assert value >= 0
