"""What the second layer costs, by hand on an invented order."""

from decimal import Decimal

import pytest

from hoopwright.cover import Cover
from hoopwright.heat.second_layer import price_second_layer
from hoopwright.order.order import Cut, Order, Roll, Unplaced
from laying import laid
from samples import double_tunnel, tunnel
from warmed import ordered


def _cut(mark: str, length_m: float, width_m: float) -> Cut:
    return Cut(
        tunnel="t", piece=mark, name=mark, along_m=0, across_m=0, length_m=length_m, width_m=width_m
    )


def _roll(price: str, *cuts: Cut) -> Roll:
    return Roll(
        film="clear",
        width_m=10.0,
        length_m=20.0,
        price=Decimal(price),
        cuts=cuts,
        used_m2=sum(cut.length_m * cut.width_m for cut in cuts),
        left_m=0.0,
    )


def _order(cover: Cover, *rolls: Roll, unplaced: tuple[Unplaced, ...] = ()) -> Order:
    whole = ordered(cover)
    return Order(
        lines=whole.lines,
        rolls=rolls,
        near_misses=(),
        unplaced=unplaced,
        film_bought_m2=0.0,
        film_used_m2=0.0,
        waste_share=0.0,
        goods=whole.goods,
        missing=(),
    )


INNER = "piece/roof-sheet/inner/-/0"
OUTER = "piece/roof-sheet/outer/-/0"


# Worked by hand: a roll of 300 yields 90 m2 of outer and 30 m2 of inner film: a quarter, 75; one
# of 160.10 yields the inner alone: 160.10; together 235.10. A blower and a length of hose at 10
# each, the crank is none of it; 12 of wage: 267.10 in all.
def test_second_layer_agrees_with_the_hand_sum() -> None:
    cover = laid(double_tunnel())
    order = _order(
        cover,
        _roll("300", _cut(OUTER, 15.0, 6.0), _cut(INNER, 10.0, 3.0)),
        _roll("160.10", _cut(INNER, 10.0, 3.0)),
        _roll("999", _cut(OUTER, 10.0, 3.0)),
    )
    found = price_second_layer(cover, order, Decimal("12.00"))
    assert (found.film, found.parts, found.wage) == (
        Decimal("235.10"),
        Decimal("20.00"),
        Decimal("12.00"),
    )
    assert found.cost == Decimal("267.10")
    assert [t.value for t in found.working().inputs] == [found.film, found.parts, found.wage]


def test_inner_and_outer_film_share_all_rolls() -> None:
    cover = laid(double_tunnel())
    order = ordered(cover)
    inner = price_second_layer(cover, order, Decimal(0)).film
    rolls = sum(roll.price for roll in order.rolls)
    assert 0 < inner < rolls
    # The thin inner film is a film of its own, on rolls of its own.
    own = sum(roll.price for roll in order.rolls if roll.film == "inside")
    assert inner == pytest.approx(own)


def test_one_layer_has_no_second_film() -> None:
    cover = laid(tunnel())
    found = price_second_layer(cover, ordered(cover), Decimal("0.00"))
    assert found.film == 0
    assert found.unpriced == ()


def test_inner_sheet_without_stock_is_named() -> None:
    cover = laid(double_tunnel())
    missing = tuple(
        Unplaced(
            tunnel="t", piece=mark, name=name, over_width_m=1.0, over_length_m=0.0, stock_m=8.0
        )
        for mark, name in ((INNER, "Roof sheet, inner"), (OUTER, "Roof sheet, outer"))
    )
    found = price_second_layer(cover, _order(cover, unplaced=missing), Decimal(0))
    assert found.unpriced == ("Roof sheet, inner",)
    assert found.film == 0
