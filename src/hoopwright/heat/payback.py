"""When a dearer choice has paid for itself by what it saves every year, interest left out."""

from dataclasses import dataclass
from decimal import Decimal

from hoopwright.quantity.working import DERIVED, Explained, Term, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class PayBack(Explained):
    """When a dearer choice has paid for itself.

    Attributes:
        years: Years without interest; None when never.
    """

    years: float | None


def season_saving(one_layer: Decimal, two_layers: Decimal, blower: Decimal) -> Decimal:
    """Return what the second layer saves a year; below zero when the blower eats it up.

    Args:
        one_layer: Fuel for a year with one layer.
        two_layers: Fuel for a year with two layers.
        blower: Electricity of the blower for a year.

    Source:
        Derived here.
    """
    return one_layer - two_layers - blower


def pay_back(extra: Decimal, saving: Decimal) -> PayBack:
    """Return when a dearer choice has paid for itself.

    Args:
        extra: What it costs more today; zero or less is paid at once by any saving.
        saving: What it saves every year; zero or less never pays.

    Raises:
        ValueError: An amount is not finite; the message names the field and the mend.

    Source:
        Each figure keeps its own working.
    """
    for field, amount in (("extra", extra), ("saving", saving)):
        if not amount.is_finite():
            raise ValueError(f"{field} must be a finite amount, not {amount}. Mend the amount.")
    return PayBack(
        years=None if saving <= 0 else max(0.0, float(extra / saving)),
        workings=(
            Working(
                "years",
                "What it costs more over what it saves a year, without interest; never when it "
                "saves nothing.",
                (Term("costs more", extra, "money"), Term("saves a year", saving, "money")),
                DERIVED,
            ),
        ),
    )
