"""What every entered value is held to."""

from decimal import Decimal

import pytest

from hoopwright.farm import Bench, Money


@pytest.mark.parametrize("amount", [Decimal("-5"), Decimal("NaN"), Decimal("1e12"), 5.0, "5"])
def test_money_that_is_no_amount_is_refused_by_name(amount: object) -> None:
    with pytest.raises(ValueError, match="freight"):
        Money(freight=amount)  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="wage_per_hour"):
        Bench(wage_per_hour=amount)  # type: ignore[arg-type]


@pytest.mark.parametrize("code", ["usd", "US", "DOLLAR", "U$D", ""])
def test_currency_is_a_three_letter_code(code: str) -> None:
    with pytest.raises(ValueError, match="currency"):
        Money(currency=code)


def test_values_are_equal_and_hash_alike_when_their_fields_are() -> None:
    assert Money(tax_share=0.05) == Money(tax_share=0.05)
    assert hash(Money(tax_share=0.05)) == hash(Money(tax_share=0.05))
    assert Money(tax_share=0.05) != Money(tax_share=0.06)
