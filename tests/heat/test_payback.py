"""Pay-back by hand, against a general library of finance, and at its limits."""

from decimal import Decimal

import numpy_financial as npf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.heat.payback import pay_back, season_saving


# Worked by hand: 900 over 300 a year is 3 years.
def test_pay_back_agrees_with_the_hand_sum() -> None:
    assert pay_back(Decimal(900), Decimal(300)).years == 3.0


@given(extra=st.decimals(100, 20000, places=2), saving=st.decimals(10, 2000, places=2))
def test_years_are_the_periods_of_the_library(extra: Decimal, saving: Decimal) -> None:
    # The library gives no periods without interest, so it gets next to none: at 1e-7 a year some
    # 2000 years come out a ten thousandth too long.
    sure = float(npf.nper(1e-7, -float(saving), float(extra)))
    assert pay_back(extra, saving).years == pytest.approx(sure, rel=2e-4)


@pytest.mark.parametrize("saving", [Decimal(0), Decimal(-20)])
@pytest.mark.parametrize("extra", [Decimal(900), Decimal(0)])
def test_nothing_saved_never_pays(extra: Decimal, saving: Decimal) -> None:
    assert pay_back(extra, saving).years is None


def test_nothing_extra_is_paid_at_once() -> None:
    assert pay_back(Decimal(0), Decimal(300)).years == 0.0


def test_saving_is_less_what_the_blower_takes() -> None:
    assert season_saving(Decimal("2000"), Decimal("1300"), Decimal("78.84")) == Decimal("621.16")
    assert season_saving(Decimal("100"), Decimal("80"), Decimal("78.84")) < 0


def test_years_tell_how_they_were_got() -> None:
    found = pay_back(Decimal(900), Decimal(300))
    assert [t.value for t in found.working("years").inputs] == [900, 300]


@pytest.mark.parametrize(
    ("amounts", "field"),
    [((Decimal("NaN"), Decimal(1)), "extra"), ((Decimal(1), Decimal("Infinity")), "saving")],
)
def test_pay_back_refuses_what_cannot_be(amounts: tuple[Decimal, Decimal], field: str) -> None:
    with pytest.raises(ValueError, match=f"^{field} must be"):
        pay_back(*amounts)
