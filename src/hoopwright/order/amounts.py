"""Whole packs for an amount."""

from decimal import ROUND_CEILING, Decimal

from hoopwright.farm.catalogue import Part

NANO = Decimal("1e-9")


def whole_packs(amount: float, holds: float) -> int:
    """Return the packs that hold an amount.

    The quotient is rounded to the ninth decimal before it is rounded up, so that the last digits
    of a float never buy a pack.

    Args:
        amount: Metres or pieces, zero or more.
        holds: Metres or pieces in a pack, above zero.

    Raises:
        ValueError: The amount is negative or a pack holds nothing.

    Source:
        Whole packs are sold, rounded up: common practice, no published source.
    """
    if amount < 0 or holds <= 0:
        raise ValueError(f"amount must be zero or more and holds above zero: {amount}, {holds}")
    quotient = Decimal(repr(amount)) / Decimal(repr(holds))
    return int(quotient.quantize(NANO).to_integral_value(ROUND_CEILING))


def packs_for(part: Part, amount: float) -> tuple[float, int]:
    """Return the spares on top of an amount, in the part's unit, and the packs for both.

    Args:
        part: What is bought.
        amount: Metres or pieces without spares, zero or more.

    Source:
        Spares are a share of what is bought, of pieces whole ones: common practice, no published
        source.
    """
    spares = amount * part.spare_share
    if part.counted_in == "count":
        spares = float(whole_packs(spares, 1.0))
    return spares, whole_packs(amount + spares, part.holds)
