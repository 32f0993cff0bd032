"""What the second layer costs: its film, what keeps air in it, and the wage of its seals.

Film is bought by the roll, and a roll often yields sheets of both layers. Each roll's price is
shared by area among the sheets cut from it, so that its waste falls on all of them alike. Tax and
freight are left out, and what stays of the old skin costs nothing.
"""

from decimal import Decimal

from msgspec import Struct

from hoopwright.cover.cover import Cover
from hoopwright.order.order import Line, Order
from hoopwright.quantity.money import round_cents
from hoopwright.quantity.working import DERIVED, PRACTICE, Term, Working

AIR_MARKS = ("air/", "jumper/")
AIR_KEYS = ("seal_element",)


class SecondLayer(Struct, frozen=True, kw_only=True):
    """What the second layer costs.

    Attributes:
        film: Inner sheets, their share of each roll.
        parts: Blower, hoses and their fittings, elements of the sealer.
        wage: Wage for the sealing bench.
        unpriced: Names of inner sheets that no stock roll yields.
    """

    film: Decimal
    parts: Decimal
    wage: Decimal
    unpriced: tuple[str, ...]

    @property
    def cost(self) -> Decimal:
        """Return film, parts and wage together."""
        return self.film + self.parts + self.wage

    def working(self) -> Working:
        """Return how the cost was got."""
        return Working(
            "second_layer_cost",
            "Inner sheets that are bought, at their share by area of each roll's price, waste "
            "included, all parts bought for the air between the layers, and the wage for the "
            "sealing bench; what stays of them costs nothing; without tax and freight.",
            (
                Term("inner film", self.film, "money"),
                Term("parts for the air", self.parts, "money"),
                Term("sealing bench", self.wage, "money"),
            ),
            f"{DERIVED}; which parts belong to the air: {PRACTICE}",
        )


def price_second_layer(cover: Cover, order: Order, bench_labour: Decimal) -> SecondLayer:
    """Return what the second layer of a tunnel costs.

    Args:
        cover: The skin as laid.
        order: What is bought for this tunnel by itself.
        bench_labour: Wage for the sealing bench; all seals are there for two layers.
    """
    inner = {piece.mark for piece in cover.pieces if piece.layer == "inner"}
    film = Decimal(0)
    for roll in order.rolls:
        inner_m2 = sum(cut.length_m * cut.width_m for cut in roll.cuts if cut.piece in inner)
        if inner_m2 > 0:
            film += roll.price * Decimal(repr(inner_m2 / roll.used_m2))
    return SecondLayer(
        film=round_cents(film),
        parts=sum((line.total for line in order.lines if _is_air(line)), Decimal("0.00")),
        wage=bench_labour,
        unpriced=tuple(sheet.name for sheet in order.unplaced if sheet.piece in inner),
    )


def _is_air(line: Line) -> bool:
    """Return whether a line of the order is bought for the air between the layers alone."""
    only_air = all(mark.startswith(AIR_MARKS) for mark in line.marks)
    return line.key in AIR_KEYS or (bool(line.marks) and only_air)
