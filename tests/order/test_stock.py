from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.order.stock import StockTable, stock_table
from order.rolls_checked import film_of

SIZES = st.tuples(st.integers(1, 8), st.integers(1, 8), st.integers(1, 50).map(str))


@given(st.lists(SIZES, min_size=1, max_size=12), st.floats(0.1, 9), st.floats(0.1, 9))
def test_cheapest_roll_is_that_of_a_plain_search(
    sizes: list[tuple[int, int, str]], width_m: float, length_m: float
) -> None:
    film = film_of(*sizes)
    holds = [r.price for r in film.rolls if r.width_m >= width_m and r.length_m >= length_m]
    found = StockTable(film).cheapest(width_m, length_m)
    assert (found.roll.price if found else None) == min(holds, default=None)
    if found:
        assert found.roll.width_m >= width_m
        assert found.roll.length_m >= length_m


def test_sheet_of_a_stock_size_fits_in_spite_of_float_digits() -> None:
    # 0.1 + 0.2 is a little over 0.3 in binary.
    film = film_of((0.3, 1.0, "1"), (2.0, 1.0, "9"))
    found = stock_table(film).cheapest(0.1 + 0.2, 1.0)
    assert found is not None
    assert found.roll.price == Decimal(1)


def test_a_real_length_over_the_stock_does_not_fit() -> None:
    assert stock_table(film_of((2.0, 1.0, "9"))).cheapest(2.0, 1.0001) is None


def test_among_equal_prices_the_narrower_roll_is_taken() -> None:
    found = stock_table(film_of((6.0, 30.0, "90"), (4.0, 30.0, "90"))).cheapest(3.0, 10.0)
    assert found is not None
    assert found.roll.width_m == 4.0


def test_prices_of_a_hundredth_of_a_cent_are_told_apart() -> None:
    found = stock_table(film_of((4.0, 30.0, "90.0002"), (5.0, 30.0, "90.0001"))).cheapest(3, 10)
    assert found is not None
    assert found.roll.width_m == 5.0


@pytest.mark.parametrize(("width_m", "longest_m"), [(3.0, 60.0), (5.0, 30.0), (7.0, 0.0)])
def test_longest_roll_of_a_width_that_fits(width_m: float, longest_m: float) -> None:
    table = stock_table(film_of((4.0, 60.0, "90"), (6.0, 30.0, "80")))
    assert table.longest_m(width_m) == longest_m
