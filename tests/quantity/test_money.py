import random
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.quantity.money import (
    format_money,
    line_total,
    read_money,
    round_cents,
    tax_on,
)
from hoopwright.quantity.typed import ReadError

CENTS = st.integers(-(10**9), 10**9).map(lambda cents: Decimal(cents).scaleb(-2))


@pytest.mark.parametrize(
    ("amount", "cents"),
    [
        ("0.005", "0.01"),
        ("0.015", "0.02"),
        ("0.025", "0.03"),
        ("2.675", "2.68"),
        ("1.005", "1.01"),
        ("0.0049999", "0.00"),
        ("-0.005", "-0.01"),
        ("-0.004", "0.00"),
        ("12", "12.00"),
    ],
)
def test_half_a_cent_goes_up(amount, cents):
    rounded = round_cents(Decimal(amount))
    assert str(rounded) == cents


@pytest.mark.parametrize(
    ("amount", "rate", "tax"),
    [
        # Revised Code of Washington 82.08.054 (read): carry to the third decimal, round up to
        # the next cent whenever the third decimal is greater than four. Products by hand.
        ("1.50", "0.07", "0.11"),  # 0.105
        ("1.49", "0.07", "0.10"),  # 0.1043, third decimal four
        ("0.50", "0.09", "0.05"),  # 0.045, half even would give 0.04
        ("10.50", "0.087", "0.91"),  # 0.9135, third decimal three
        ("10.55", "0.087", "0.92"),  # 0.91785
        ("100.00", "0.08545", "8.55"),  # 8.545
        ("100.00", "0.08544", "8.54"),  # 8.544
        ("0.00", "0.1", "0.00"),
        ("250.00", "0", "0.00"),
    ],
)
def test_tax_is_rounded_as_the_revised_code_says(amount, rate, tax):
    assert tax_on(Decimal(amount), Decimal(rate)) == Decimal(tax)


@given(st.integers(0, 10**8), st.integers(0, 20_000))
def test_tax_follows_the_third_decimal(cents, rate_points):
    # The rule of RCW 82.08.054 in whole numbers: cut after the third decimal, then look at it.
    thousandths = cents * rate_points * 10 // 100_000
    whole, third = divmod(thousandths, 10)
    expected = whole + (1 if third > 4 else 0)
    tax = tax_on(Decimal(cents).scaleb(-2), Decimal(rate_points).scaleb(-5))
    assert tax == Decimal(expected).scaleb(-2)


def test_lines_with_ties_are_right_where_floats_are_not():
    # Prices with three decimals and a five at the end, times an odd number of packs, are ties.
    chance = random.Random(811)
    by_float = 0
    for _ in range(2000):
        packs, mills = chance.randrange(1, 60, 2), chance.randrange(5, 99_995, 10)
        total = line_total(packs, Decimal(mills).scaleb(-3))
        assert total == Decimal((packs * mills + 5) // 10).scaleb(-2)
        by_float += Decimal(str(round(packs * (mills / 1000), 2))) != total
    assert by_float > 100


def test_a_line_is_rounded_once():
    # By hand: 1000 x 0.0135 = 13.50, where a price rounded first would give 1000 x 0.01 = 10.
    assert line_total(1000, Decimal("0.0135")) == Decimal("13.50")
    assert line_total(0, Decimal("9.99")) == Decimal("0.00")


@pytest.mark.parametrize(
    ("packs", "price"), [(-1, "1"), (1, "-0.01"), (1, "NaN"), (1, "Infinity"), (10**9, "1000")]
)
def test_a_line_that_cannot_be_is_a_fault_of_the_caller(packs, price):
    with pytest.raises(ValueError, match=r"packs|price|amount"):
        line_total(packs, Decimal(price))


@pytest.mark.parametrize("rate", ["-0.01", "1.01", "NaN"])
def test_a_rate_is_a_share(rate):
    with pytest.raises(ValueError, match="rate must be from 0 to 1"):
        tax_on(Decimal(1), Decimal(rate))


@pytest.mark.parametrize("amount", ["NaN", "Infinity", "-Infinity", "1000000000.01"])
def test_an_amount_that_is_none_is_a_fault_of_the_caller(amount):
    for call in (
        round_cents,
        lambda bad: tax_on(bad, Decimal(0)),
        lambda bad: format_money(bad, ""),
    ):
        with pytest.raises(ValueError, match="amount must be a finite number"):
            call(Decimal(amount))


@pytest.mark.parametrize(
    ("text", "currency", "amount"),
    [
        ("12.50", "USD", "12.50"),
        ("12,50", "EUR", "12.50"),
        ("12", "", "12.00"),
        ("0.0135", "USD", "0.0135"),
        ("0.1230", "USD", "0.1230"),
        ("$1,234.50", "USD", "1234.50"),
        ("$ 5", "USD", "5.00"),
        ("1,234", "USD", "1234.00"),
        ("1,234.50 EUR", "EUR", "1234.50"),
        ("1.234,50 eur", "EUR", "1234.50"),
        ("5 usd", "USD", "5.00"),
        ("\uff11\uff12.5", "", "12.50"),
        (".5", "", "0.50"),
    ],
)
def test_amounts_are_read_exactly(text, currency, amount):
    assert str(read_money(text, currency)) == amount


@pytest.mark.parametrize(
    ("text", "currency", "why"),
    [
        ("NaN", "USD", "not an amount"),
        ("Infinity", "USD", "not an amount"),
        ("1_000", "USD", "not an amount"),
        ("1e3", "USD", "not an amount"),
        ("(5.00)", "USD", "not an amount"),
        ("3.90/ft", "USD", "not an amount"),
        ("-5", "USD", "less than zero"),
        ("0.12345", "USD", "more than 4 decimals"),
        ("1,234", "EUR", "1234 or 1.234"),
        ("5 EUR", "USD", "must be in USD"),
        ("$5", "EUR", "must be in EUR"),
        ("$5 EUR", "EUR", "must be in EUR"),
        ("$5", "", "without a currency"),
        ("", "USD", "Nothing is written"),
        ("1.2.3", "USD", "not a number"),
        ("2000000000", "USD", "more than 1,000,000,000"),
    ],
)
def test_what_is_no_amount_is_refused_with_words(text, currency, why):
    with pytest.raises(ReadError) as refused:
        read_money(text, currency)
    assert why in str(refused.value)


@pytest.mark.parametrize(
    ("amount", "currency", "text"),
    [
        ("1234.5", "USD", "$1,234.50"),
        ("1234.5", "EUR", "1,234.50 EUR"),
        ("-1234.5", "USD", "-$1,234.50"),
        ("-3", "CAD", "-3.00 CAD"),
        ("-0.001", "USD", "$0.00"),
        ("0.125", "USD", "$0.13"),
    ],
)
def test_amounts_are_shown_with_their_currency(amount, currency, text):
    assert format_money(Decimal(amount), currency) == text


@given(CENTS.map(abs), st.sampled_from(["USD", "EUR", "CAD"]))
def test_what_is_shown_can_be_typed_back(amount, currency):
    assert read_money(format_money(amount, currency), currency) == amount


@given(st.text(max_size=42) | st.text(alphabet="0123456789.,$ -USDeur", max_size=14))
def test_nonsense_is_read_or_refused_and_nothing_else(text):
    try:
        amount = read_money(text, "USD")
    except ReadError:
        return
    assert 0 <= amount <= 10**9
    assert -amount.as_tuple().exponent in range(2, 5)
