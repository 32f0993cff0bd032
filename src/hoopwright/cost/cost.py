"""What a skin costs. The stage function is `price_order` in `prices`."""

from dataclasses import dataclass
from decimal import Decimal

from msgspec import Struct

from hoopwright.quantity.working import Explained


class GroupCost(Struct, frozen=True, kw_only=True):
    """One group of the takeoff.

    Attributes:
        group: Heading.
        amount: Sum of its lines.
    """

    group: str
    amount: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost(Explained):
    """What an order costs.

    Attributes:
        groups: Sums by group.
        goods: Sum of all lines.
        freight: Freight as entered; 0 for a single tunnel of a farm.
        tax: Sales tax, rounded once.
        to_pay: Goods, freight and tax.
        film_waste: Price of the bought film that is in no sheet.
        bench_labour: Wages for the sealing bench, not part of what is to pay.
        per_floor_m2: What is to pay for one square metre of floor.
        saved: What the kept parts and sheets would cost new, not part of what is to pay.
    """

    groups: tuple[GroupCost, ...]
    goods: Decimal
    freight: Decimal
    tax: Decimal
    to_pay: Decimal
    film_waste: Decimal
    bench_labour: Decimal
    per_floor_m2: Decimal
    saved: Decimal = Decimal("0.00")
