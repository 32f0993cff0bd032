"""When a dearer choice has paid for itself by what it saves every year.

Simply: what it costs more over what it saves a year. With a yearly rate i the savings S of later
years count for less; what N years save is worth S (1 - (1 + i)**-N) / i today, and setting that
equal to the cost C gives N = -ln(1 - C i / S) / ln(1 + i). When a year's interest on the cost eats
the whole saving, it never pays.
"""

import math
from dataclasses import dataclass
from decimal import Decimal

from hoopwright.quantity.working import DERIVED, Explained, Term, Working

ANNUITY_SOURCE = "worth today of a yearly sum (textbook), solved for the years here"


@dataclass(frozen=True, slots=True, kw_only=True)
class PayBack(Explained):
    """When a dearer choice has paid for itself.

    Attributes:
        simple_years: Years without interest; None when never.
        discounted_years: Years with interest; None when never.
    """

    simple_years: float | None
    discounted_years: float | None


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


def pay_back(extra: Decimal, saving: Decimal, rate: Decimal) -> PayBack:
    """Return when a dearer choice has paid for itself.

    Args:
        extra: What it costs more today; zero or less is paid at once.
        saving: What it saves every year; zero or less never pays.
        rate: Yearly rate of interest as a share, zero or more.

    Raises:
        ValueError: An amount is not finite or the rate is below zero; the message names the
            field and the mend.

    Source:
        Each figure keeps its own working.
    """
    for field, amount in (("extra", extra), ("saving", saving)):
        if not amount.is_finite():
            raise ValueError(f"{field} must be a finite amount, not {amount}. Mend the amount.")
    if not rate.is_finite() or rate < 0:
        raise ValueError(f"rate must be zero or more, not {rate}. Enter 0.06 for six percent.")
    inputs = (Term("costs more", extra, "money"), Term("saves a year", saving, "money"))
    return PayBack(
        simple_years=_years(extra, saving, Decimal(0)),
        discounted_years=_years(extra, saving, rate),
        workings=(
            Working(
                "simple_years",
                "What it costs more over what it saves a year; never when it saves nothing.",
                inputs,
                DERIVED,
            ),
            Working(
                "discounted_years",
                "Years until the savings, each counted at its worth today, make up for what it "
                "costs more; never when a year's interest on that is the whole saving or more.",
                (*inputs, Term("interest", rate, "share")),
                ANNUITY_SOURCE,
            ),
        ),
    )


def _years(extra: Decimal, saving: Decimal, rate: Decimal) -> float | None:
    if extra <= 0:
        return 0.0
    if saving <= 0 or extra * rate >= saving:
        return None
    simple = float(extra / saving)
    if rate == 0:
        return simple
    return -math.log1p(-simple * float(rate)) / math.log1p(float(rate))
