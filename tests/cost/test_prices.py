from decimal import Decimal

import pytest

from hoopwright.cost import Cost, price_order
from hoopwright.cost.prices import exact, film_waste
from hoopwright.farm import Bench, Money
from hoopwright.order import Order, place_order
from hoopwright.order.order import Line
from order.rolls_checked import film_of, sheet
from samples import small_catalogue


def line(total: str, group: str = "Fixing") -> Line:
    amount = Decimal(total)
    return Line(
        key="piece",
        group=group,
        name="piece",
        where=(),
        marks=(),
        counted_in="count",
        needed=1.0,
        spares=0.0,
        holds=1.0,
        sold_as="piece",
        packs=1,
        left_over=0.0,
        price=amount,
        total=amount,
        invented=True,
    )


def order(*lines: Line) -> Order:
    return Order(
        lines=lines,
        rolls=(),
        near_misses=(),
        unplaced=(),
        film_bought_m2=0.0,
        film_used_m2=0.0,
        waste_share=0.0,
        goods=sum((one.total for one in lines), Decimal("0.00")),
        missing=(),
    )


def price(goods: str, money: Money, *, with_freight: bool = True, floor_m2: float = 100.0) -> Cost:
    return price_order(order(line(goods)), money, floor_m2, 0.0, Bench(), with_freight)


# The laws of several states round alike: the tax is carried to the third decimal and raised to a
# whole cent when the third decimal is greater than four. Revised Code of Washington 82.08.054;
# North Dakota Century Code 57-39.4-25; Rhode Island General Laws 44-18.1-25.
@pytest.mark.parametrize(
    ("goods", "share", "tax"),
    [
        ("10.00", 0.0825, "0.83"),  # 0.825: the third decimal is five, up
        ("10.10", 0.05, "0.51"),  # 0.505: up; half to even would give 0.50
        ("10.30", 0.05, "0.52"),  # 0.515: up, as half to even does
        ("20.68", 0.05, "1.03"),  # 1.034: down
        ("0.07", 0.07, "0.00"),  # 0.0049: down
        ("0.00", 0.07, "0.00"),
    ],
)
def test_tax_is_rounded_at_the_third_decimal(goods: str, share: float, tax: str) -> None:
    assert price(goods, Money(tax_share=share)).tax == Decimal(tax)


def test_tax_is_rounded_once_and_not_line_by_line() -> None:
    # Three lines of 0.10 at 5 %: 0.005 each would be 0.01 three times; on 0.30 it is 0.015 = 0.02.
    placed = order(line("0.10"), line("0.10"), line("0.10"))
    cost = price_order(placed, Money(tax_share=0.05), 100.0, 0.0, Bench(), True)
    assert cost.tax == Decimal("0.02")
    assert cost.to_pay == Decimal("0.32")


def test_freight_is_taxed_when_entered_so() -> None:
    # Worked by hand: 864.00 and freight 140.00 at 6 %: 51.84 without and 60.24 with freight.
    plain = Money(tax_share=0.06, freight=Decimal("140.00"))
    without, with_tax = price("864.00", plain), price("864.00", plain.but(tax_on_freight=True))
    assert (without.tax, without.to_pay) == (Decimal("51.84"), Decimal("1055.84"))
    assert (with_tax.tax, with_tax.to_pay) == (Decimal("60.24"), Decimal("1064.24"))


def test_single_tunnel_carries_no_freight_and_no_tax_on_it() -> None:
    money = Money(tax_share=0.06, freight=Decimal("140.00"), tax_on_freight=True)
    cost = price("864.00", money, with_freight=False)
    assert (cost.freight, cost.tax, cost.to_pay) == (
        Decimal("0.00"),
        Decimal("51.84"),
        Decimal("915.84"),
    )


def test_groups_add_up_to_the_goods() -> None:
    placed = order(line("3.10", "Film"), line("2.05"), line("1.95"), line("0.40", "Film"))
    cost = price_order(placed, Money(), 100.0, 0.0, Bench(), True)
    assert [(g.group, g.amount) for g in cost.groups] == [
        ("Film", Decimal("3.50")),
        ("Fixing", Decimal("4.00")),
    ]
    assert sum(g.amount for g in cost.groups) == cost.goods == Decimal("7.50")


def test_bench_labour_is_shown_beside_what_is_to_pay() -> None:
    # 95 minutes at 22.00 an hour: 34.8333.
    cost = price_order(order(line("10.00")), Money(), 100.0, 95.0, Bench(), True)
    assert cost.bench_labour == Decimal("34.83")
    assert cost.to_pay == Decimal("10.00")


def test_cost_of_a_square_metre_has_four_decimals() -> None:
    # 1000 / 237.6 = 4.208754...
    assert price("1000.00", Money(), floor_m2=237.6).per_floor_m2 == Decimal("4.2088")


def test_film_waste_is_each_rolls_price_times_its_wasted_share() -> None:
    # Worked by hand: 300.00 x (450 - 320) / 450 = 86.67; 140.00 x (200 - 150) / 200 = 35.00.
    film = film_of((9.0, 50.0, "300"), (4.0, 50.0, "140"))
    pieces = (sheet("roof", 8.0, 40.0), sheet("curtain", 3.0, 50.0))
    placed = place_order((), (("T1", pieces),), small_catalogue().but(films=(film,)))
    assert sorted(roll.price for roll in placed.rolls) == [140, 300]
    assert film_waste(placed) == Decimal("121.67")


def test_floor_of_nothing_is_a_broken_promise() -> None:
    with pytest.raises(ValueError, match="floor_area_m2 must be above zero"):
        price("1.00", Money(), floor_m2=0.0)


def test_float_becomes_the_decimal_that_people_read() -> None:
    # Exactly, 0.0825 in binary is 0.08250000000000000444...
    assert exact(0.0825) == Decimal("0.0825")
    assert exact(0.1 + 0.2) == Decimal("0.3")


def test_every_number_is_explained() -> None:
    cost = price("10.00", Money())
    for figure in (
        "goods",
        "freight",
        "tax",
        "to_pay",
        "film_waste",
        "bench_labour",
        "per_floor_m2",
    ):
        assert cost.working(figure).source
