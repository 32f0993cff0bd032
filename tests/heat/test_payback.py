"""Pay-back against a general library of finance and at its limits."""

from decimal import Decimal

import numpy_financial as npf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.heat.payback import pay_back, season_saving


# Worked by hand: 900 over 300 a year is 3 years; at 6 % -ln(1 - 900 x 0.06 / 300) / ln 1.06
# = 0.19845 / 0.05827 = 3.41 years.
def test_pay_back_agrees_with_the_hand_sum() -> None:
    found = pay_back(Decimal(900), Decimal(300), Decimal("0.06"))
    assert found.simple_years == 3.0
    assert found.discounted_years == pytest.approx(3.41, abs=0.005)


@given(
    extra=st.decimals(1, 20000, places=2),
    saving=st.decimals(1, 5000, places=2),
    rate=st.decimals("0.001", "0.15", places=3),
)
def test_years_are_the_periods_of_the_library(
    extra: Decimal, saving: Decimal, rate: Decimal
) -> None:
    found = pay_back(extra, saving, rate)
    if extra * rate >= saving:
        assert found.discounted_years is None
    else:
        sure = float(npf.nper(float(rate), -float(saving), float(extra)))
        assert found.discounted_years == pytest.approx(sure, rel=1e-6)


def test_without_interest_both_are_the_same() -> None:
    found = pay_back(Decimal(900), Decimal(300), Decimal(0))
    assert found.discounted_years == found.simple_years == 3.0


@pytest.mark.parametrize("saving", [Decimal(0), Decimal(-20)])
def test_nothing_saved_never_pays(saving: Decimal) -> None:
    found = pay_back(Decimal(900), saving, Decimal("0.06"))
    assert found.simple_years is None
    assert found.discounted_years is None


# A year's interest on 5000 at 6 % is the whole saving of 300.
def test_interest_that_eats_the_saving_never_pays() -> None:
    found = pay_back(Decimal(5000), Decimal(300), Decimal("0.06"))
    assert found.simple_years == pytest.approx(5000 / 300)
    assert found.discounted_years is None


def test_nothing_extra_is_paid_at_once() -> None:
    found = pay_back(Decimal(0), Decimal(300), Decimal("0.06"))
    assert (found.simple_years, found.discounted_years) == (0.0, 0.0)


def test_saving_is_less_what_the_blower_takes() -> None:
    assert season_saving(Decimal("2000"), Decimal("1300"), Decimal("78.84")) == Decimal("621.16")
    assert season_saving(Decimal("100"), Decimal("80"), Decimal("78.84")) < 0


def test_each_figure_tells_how_it_was_got() -> None:
    found = pay_back(Decimal(900), Decimal(300), Decimal("0.06"))
    assert [t.value for t in found.working("simple_years").inputs] == [900, 300]
    assert found.working("discounted_years").inputs[2].unit == "share"


@pytest.mark.parametrize(
    ("amounts", "field"),
    [
        ((Decimal("NaN"), Decimal(1), Decimal(0)), "extra"),
        ((Decimal(1), Decimal("Infinity"), Decimal(0)), "saving"),
        ((Decimal(1), Decimal(1), Decimal("-0.01")), "rate"),
    ],
)
def test_pay_back_refuses_what_cannot_be(
    amounts: tuple[Decimal, Decimal, Decimal], field: str
) -> None:
    with pytest.raises(ValueError, match=f"^{field} must be"):
        pay_back(*amounts)
