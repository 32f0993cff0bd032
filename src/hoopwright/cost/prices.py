"""What an order costs: sums by group, freight, tax once, and what is worth knowing beside it.

Every order line is rounded by itself and tax is rounded once on the whole amount, half up to the
cent. The wage for the sealing bench is shown beside and is no part of what is to pay.
"""

from decimal import ROUND_HALF_UP, Decimal

from hoopwright.cost.cost import Cost, GroupCost
from hoopwright.farm.farm import Bench, Money
from hoopwright.order.order import Order
from hoopwright.quantity.money import round_cents, tax_on
from hoopwright.quantity.working import ENTERED, PRACTICE, LaterWorkings, Term, Working

NANO = Decimal("1e-9")
PRICE_STEP = Decimal("0.0001")
MINUTES_PER_HOUR = Decimal(60)
TAX_SOURCE = (
    "Half up at the third decimal, on the invoice: Revised Code of Washington 82.08.054; "
    "North Dakota Century Code 57-39.4-25; Rhode Island General Laws 44-18.1-25"
)


def price_order(
    order: Order,
    money: Money,
    floor_area_m2: float,
    bench_min: float,
    bench: Bench,
    with_freight: bool,
) -> Cost:
    """Return what an order costs.

    Args:
        order: What is bought.
        money: Tax and freight.
        floor_area_m2: Floor under the skin, m2, above zero.
        bench_min: Time at the sealing bench, minutes.
        bench: What an hour there costs.
        with_freight: Whether the freight of the whole order is counted.

    Raises:
        ValueError: The floor area is not above zero.

    Source:
        Tax rounded half up at the third decimal, once: Revised Code of Washington 82.08.054;
        North Dakota Century Code 57-39.4-25; Rhode Island General Laws 44-18.1-25.
    """
    if floor_area_m2 <= 0:
        raise ValueError(f"floor_area_m2 must be above zero, not {floor_area_m2}")
    freight = round_cents(money.freight) if with_freight else Decimal("0.00")
    taxed = order.goods + (freight if money.tax_on_freight else Decimal(0))
    tax = tax_on(taxed, exact(money.tax_share))
    to_pay = order.goods + freight + tax
    bench_labour = round_cents(exact(bench_min) * bench.wage_per_hour / MINUTES_PER_HOUR)
    per_floor_m2 = (to_pay / exact(floor_area_m2)).quantize(PRICE_STEP, ROUND_HALF_UP)
    return Cost(
        groups=_sum_groups(order),
        goods=order.goods,
        freight=freight,
        tax=tax,
        to_pay=to_pay,
        film_waste=film_waste(order),
        bench_labour=bench_labour,
        per_floor_m2=per_floor_m2,
        saved=order.saved,
        workings=LaterWorkings(
            lambda: (
                *_pay_workings(order, money, freight, taxed, tax),
                *_beside_workings(order, bench_min, bench, to_pay, floor_area_m2),
            )
        ),
    )


def film_waste(order: Order) -> Decimal:
    """Return the price of the bought film that is in no sheet, rounded once.

    Source:
        Each roll's price times the share of its area that is in no sheet: derived here.
    """
    wasted = Decimal(0)
    for roll in order.rolls:
        share = 1.0 - roll.used_m2 / (roll.width_m * roll.length_m)
        wasted += roll.price * exact(max(0.0, share))
    return round_cents(wasted)


def exact(number: float) -> Decimal:
    """Return a float as a decimal of nine places, for reckoning with money.

    Source:
        Derived here: the shortest decimal that reads back as the float, then nine places.
    """
    return Decimal(repr(float(number))).quantize(NANO)


def _sum_groups(order: Order) -> tuple[GroupCost, ...]:
    sums: dict[str, Decimal] = {}
    for line in order.lines:
        sums[line.group] = sums.get(line.group, Decimal("0.00")) + line.total
    return tuple(GroupCost(group=group, amount=amount) for group, amount in sums.items())


def _pay_workings(
    order: Order, money: Money, freight: Decimal, taxed: Decimal, tax: Decimal
) -> tuple[Working, ...]:
    goods = Term("goods", order.goods, "money")
    carried = Term("freight", freight, "money")
    on_freight = "goods and freight" if money.tax_on_freight else "goods"
    return (
        Working("goods", "Sum of all lines", (Term("lines", len(order.lines), "count"),), PRACTICE),
        Working("freight", "Freight of the whole order, counted once for the farm", (), ENTERED),
        Working(
            "tax",
            f"Tax on {on_freight}, rounded half up to the cent once",
            (Term("taxed", taxed, "money"), Term("rate", money.tax_share, "share")),
            TAX_SOURCE,
        ),
        Working(
            "to_pay",
            "Goods, freight and tax",
            (goods, carried, Term("tax", tax, "money")),
            PRACTICE,
        ),
    )


def _beside_workings(
    order: Order, bench_min: float, bench: Bench, to_pay: Decimal, floor_area_m2: float
) -> tuple[Working, ...]:
    return (
        Working(
            "film_waste",
            "Each roll's price times the share of its area that is in no sheet",
            (
                Term("film bought", order.film_bought_m2, "m2"),
                Term("film in sheets", order.film_used_m2, "m2"),
            ),
        ),
        Working(
            "bench_labour",
            "Bench time times the wage; not part of what is to pay",
            (
                Term("bench", bench_min, "min"),
                Term("wage for an hour", bench.wage_per_hour, "money"),
            ),
            ENTERED,
        ),
        Working(
            "per_floor_m2",
            "What is to pay divided by the floor, in square metres",
            (Term("to pay", to_pay, "money"), Term("floor", floor_area_m2, "m2")),
        ),
        Working(
            "saved",
            "What the kept parts and sheets would cost new, before tax; not part of what is to pay",
            (Term("lines that stay", len(order.reused), "count"),),
        ),
    )
