"""Amounts of money: decimal numbers only, rounded half up to the cent and only where said.

A price keeps up to four decimals. An order line is rounded once, tax once per amount it is asked
for. No binary fraction ever becomes money.

Source:
    Half up at the third decimal: Revised Code of Washington 82.08.054.
"""

import re
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction

from hoopwright.quantity.typed import ReadError, plain_text, read_figure

CENT = Decimal("0.01")
LARGEST = Decimal(1_000_000_000)
PRICE_DIGITS = 4

_EXACT = Context(prec=60)
_AMOUNT = re.compile(r"(?P<sign>\$)? ?(?P<number>[\d.,]+)(?: ?(?P<code>[A-Za-z]{3}))?", re.ASCII)
_FORMS = "Write it like 12.50 or 1250."


def round_cents(amount: Decimal) -> Decimal:
    """Return an amount rounded to whole cents; half a cent goes up, away from zero.

    Raises:
        ValueError: The amount is not finite or above a thousand million.

    Source:
        Revised Code of Washington 82.08.054.
    """
    _check_amount("amount", amount)
    rounded = amount.quantize(CENT, ROUND_HALF_UP, _EXACT)
    return rounded if rounded else abs(rounded)


def read_money(text: str, currency: str = "") -> Decimal:
    """Return an amount somebody typed, exactly, with up to four decimals.

    Args:
        text: What was typed, with or without the currency's sign or code.
        currency: Three-letter code of the farm's currency. Without it only bare numbers are
            read, so that no foreign amount slips in. In dollars a comma before three digits
            groups thousands; elsewhere such a number can be read in two ways and is refused.

    Raises:
        ReadError: It is no amount, is negative, has more than four decimals, is in another
            currency or can be read in two ways.

    Source:
        Common practice, no published source.
    """
    plain = plain_text(text)
    found = _AMOUNT.fullmatch(plain)
    if not found:
        if plain.startswith("-"):
            raise ReadError(f"\u201c{plain}\u201d is less than zero; a price is not. {_FORMS}")
        raise ReadError(f"\u201c{plain}\u201d is not an amount of money. {_FORMS}")
    given = "USD" if found["sign"] else (found["code"] or "").upper()
    mixed = found["sign"] and found["code"] and found["code"].upper() != "USD"
    if mixed or (given and given != currency):
        farm = f"in {currency}" if currency else "without a currency"
        raise ReadError(f"\u201c{plain}\u201d must be {farm} here. {_FORMS}")
    amount = read_figure(found["number"], comma_groups=currency == "USD")
    if amount * 10**PRICE_DIGITS % 1:
        raise ReadError(
            f"\u201c{plain}\u201d has more than {PRICE_DIGITS} decimals. "
            f"Round it to {PRICE_DIGITS} at most."
        )
    if amount > LARGEST:
        raise ReadError(f"\u201c{plain}\u201d is more than {LARGEST:,}. Check the number.")
    return _two_to_four(amount)


def _two_to_four(amount: Fraction) -> Decimal:
    """Return a number of at most four decimals as money, with two decimals where they do."""
    exact = Decimal(int(amount * 10**PRICE_DIGITS)).scaleb(-PRICE_DIGITS)
    cents = exact.quantize(CENT, ROUND_HALF_UP, _EXACT)
    return cents if cents == exact else exact


def format_money(amount: Decimal, currency: str) -> str:
    """Return an amount for people, as $1,234.50 in dollars and 1,234.50 EUR elsewhere.

    Args:
        amount: The amount, shown rounded half up to the cent.
        currency: Three-letter code.

    Raises:
        ValueError: The amount is not finite or above a thousand million.

    Source:
        Three-letter codes: ISO 4217. The forms: common practice, no published source.
    """
    cents = round_cents(amount)
    if currency == "USD":
        return f"{'-' if cents < 0 else ''}${abs(cents):,f}"
    return f"{cents:,f} {currency}"


def line_total(packs: int, price: Decimal) -> Decimal:
    """Return what an order line costs: packs times price, rounded once.

    Args:
        packs: Whole packs, zero or more.
        price: Price of one pack, with up to four decimals.

    Raises:
        ValueError: The packs are negative, or the price is negative or not finite.

    Source:
        Common practice, no published source.
    """
    if packs < 0:
        raise ValueError(f"packs must be zero or more, not {packs}")
    if not price.is_finite() or price < 0:
        raise ValueError(f"price must be zero or more, not {price}")
    return round_cents(_EXACT.multiply(Decimal(packs), price))


def tax_on(amount: Decimal, rate: Decimal) -> Decimal:
    """Return the tax on an amount, rounded half up to the cent.

    Args:
        amount: What is taxed.
        rate: Share of the amount, from 0 to 1; state and local rates added up before.

    Raises:
        ValueError: The amount is not finite, or the rate is not from 0 to 1.

    Source:
        Revised Code of Washington 82.08.054: carried to the third decimal and rounded up when
        that is greater than four, on state and local tax together.
    """
    _check_amount("amount", amount)
    if not rate.is_finite() or not 0 <= rate <= 1:
        raise ValueError(f"rate must be from 0 to 1, not {rate}")
    return round_cents(_EXACT.multiply(amount, rate))


def _check_amount(name: str, amount: Decimal) -> None:
    if not amount.is_finite() or abs(amount) > LARGEST:
        raise ValueError(f"{name} must be a finite number up to {LARGEST:,}, not {amount}")
