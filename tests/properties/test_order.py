"""For every order: all sheets are cut once, and packs, totals and taxes add up."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from hoopwright.cover.cover import Piece
from hoopwright.farm import Film
from hoopwright.order.amounts import whole_packs
from hoopwright.order.cut_plan import cut_sheets
from hoopwright.quantity.money import tax_on
from order.rolls_checked import faults, film_of, sheet

STOCK = st.lists(
    st.tuples(
        st.sampled_from([2.0, 3.5, 6.0, 8.0, 10.0, 12.192]),
        st.sampled_from([15.24, 25.0, 30.0, 50.0]),
        st.decimals("5", "900", places=2).map(str),
    ),
    min_size=1,
    max_size=10,
)
SIZES = st.lists(
    st.tuples(
        st.one_of(st.floats(0.3, 13.0), st.sampled_from([2.0, 6.0, 12.192])),
        st.one_of(st.floats(0.5, 55.0), st.sampled_from([15.24, 25.0, 50.0])),
    ),
    max_size=16,
)


def named(sizes: list[tuple[float, float]]) -> list[tuple[str, Piece]]:
    return [(f"T{n % 3}", sheet(str(n), w, s)) for n, (w, s) in enumerate(sizes)]


def fits(piece: Piece, film: Film) -> list[Decimal]:
    return [
        r.price
        for r in film.rolls
        if r.width_m >= piece.width_m - 1e-6 and r.length_m >= piece.length_m - 1e-6
    ]


@given(STOCK, SIZES)
def test_every_sheet_is_cut_once_by_straight_cuts_inside_its_roll(
    stock: list[tuple[float, float, str]], sizes: list[tuple[float, float]]
) -> None:
    film, pieces = film_of(*stock), named(sizes)
    rolls, _, unplaced = cut_sheets(pieces, (film,))
    assert faults(rolls, [s for s in pieces if fits(s[1], film)], film) == []
    assert [u.piece for u in unplaced] == [p.mark for _, p in pieces if not fits(p, film)]
    assert all(u.over_width_m > 0 or u.over_length_m > 0 for u in unplaced)


@given(STOCK, SIZES)
def test_sharing_rolls_never_costs_more_than_a_roll_for_each_sheet(
    stock: list[tuple[float, float, str]], sizes: list[tuple[float, float]]
) -> None:
    film, pieces = film_of(*stock), named(sizes)
    rolls, _, _ = cut_sheets(pieces, (film,))
    alone = sum((min(fits(p, film)) for _, p in pieces if fits(p, film)), Decimal(0))
    assert sum((roll.price for roll in rolls), Decimal(0)) <= alone


@given(STOCK, SIZES)
def test_a_near_miss_names_what_the_narrower_width_would_save(
    stock: list[tuple[float, float, str]], sizes: list[tuple[float, float]]
) -> None:
    film, pieces = film_of(*stock), named(sizes)
    by_mark = {piece.mark: piece for _, piece in pieces}
    _, near_misses, _ = cut_sheets(pieces, (film,))
    for miss in near_misses:
        piece = by_mark[miss.piece]
        narrow = sheet("narrow", miss.stock_width_m, piece.length_m)
        assert 0 < miss.over_m <= min(0.6, 0.1 * miss.stock_width_m)
        assert miss.saving == min(fits(piece, film)) - min(fits(narrow, film)) > 0


@given(STOCK, SIZES)
def test_the_same_sheets_are_cut_the_same_way(
    stock: list[tuple[float, float, str]], sizes: list[tuple[float, float]]
) -> None:
    film, pieces = film_of(*stock), named(sizes)
    assert cut_sheets(pieces, (film,)) == cut_sheets(list(pieces), (film_of(*stock),))


@given(st.integers(0, 10**6), st.integers(1, 10**4))
def test_whole_packs_are_exact_for_whole_numbers(amount: int, holds: int) -> None:
    assert whole_packs(float(amount), float(holds)) == -(-amount // holds)


@given(st.integers(1, 5000), st.integers(1, 400))
def test_float_noise_never_buys_a_pack(sticks: int, sixteenths: int) -> None:
    # A run of exactly so many sticks, added up stick by stick in binary fractions of a metre.
    stick_m = sixteenths * 0.0254 / 16
    run_m = sum([stick_m] * min(sticks, 300))
    assert whole_packs(run_m, stick_m) == min(sticks, 300)


@given(st.floats(0.0, 1e5), st.floats(0.01, 1e3))
def test_packs_hold_the_need_and_one_less_would_not(amount: float, holds: float) -> None:
    packs = whole_packs(amount, holds)
    quotient = Fraction(amount) / Fraction(holds)
    assert packs >= quotient - Fraction(1, 10**9)
    assert packs - 1 < quotient or packs == 0


@given(st.decimals("0", "1000000", places=2), st.decimals("0", "1", places=6))
def test_decimal_half_up_is_the_rule_of_the_third_decimal(amount: Decimal, rate: Decimal) -> None:
    # Carried to the third decimal (further ones dropped) and raised when it is greater than four.
    mills = int(amount * rate * 1000)
    by_rule = Decimal(mills // 10 + (1 if mills % 10 > 4 else 0)) / 100
    assert tax_on(amount, rate) == by_rule
    assert by_rule == (amount * rate).quantize(Decimal("0.01"), ROUND_HALF_UP)
