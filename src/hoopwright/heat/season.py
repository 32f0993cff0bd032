"""What a season's heating takes in heat, fuel and money.

A degree-day is one day one kelvin colder than the base. The base is the temperature to hold less
what sun and crop keep up for nothing. The loss for one kelvin times the degree-days is the
season's heat; the heater brings its share of the fuel's heat in, the rest goes up the flue.
"""

import math
from dataclasses import dataclass
from decimal import Decimal

from hoopwright.quantity.money import LARGEST, round_cents
from hoopwright.quantity.working import ENTERED, Explained, Term, Working

DAY_H = 24.0
WATT_KW = 1000.0

DEGREE_DAY_SOURCE = (
    "Degree-days times loss times 24 h (textbook). Days counted by their mean run a few percent "
    "low when afternoons pass the base"
)


@dataclass(frozen=True, slots=True)
class Fuel:
    """What the heater burns.

    Attributes:
        unit: What it is bought by, for example "gallon of propane" or "kWh".
        heat_kwh: Heat in one unit, kWh, above zero.
        efficiency: Share of it that the heater brings into the tunnel, above 0 to 1.
        price: Price of one unit, zero or more.
    """

    unit: str
    heat_kwh: float
    efficiency: float
    price: Decimal

    def __post_init__(self) -> None:
        """Refuse figures that no fuel has.

        Raises:
            ValueError: A figure is out of its range; the message names the field and the mend.
        """
        if not 0 < self.heat_kwh < math.inf:
            raise ValueError(f"heat_kwh must be above zero, not {self.heat_kwh!r} kWh. Mend it.")
        if not 0 < self.efficiency <= 1:
            raise ValueError(
                f"efficiency must be above 0 and at most 1, not {self.efficiency!r}. Enter 0.8 for "
                "four fifths of the fuel's heat."
            )
        if not self.price.is_finite() or self.price < 0:
            raise ValueError(f"price must be zero or more, not {self.price}. Mend the price.")


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonHeat(Explained):
    """A season's heating.

    Attributes:
        heat_kwh: Heat the tunnel loses and the heater brings, kWh.
        fuel_units: Units of fuel burnt.
        cost: What they cost; never above the largest amount of money that is reckoned with.
    """

    heat_kwh: float
    fuel_units: float
    cost: Decimal


def season_heat(whole_w_k: float, degree_days_k_d: float, fuel: Fuel) -> SeasonHeat:
    """Return what a season's heating takes.

    Args:
        whole_w_k: Loss of the tunnel for one kelvin, W/K, zero or more.
        degree_days_k_d: Degree-days of the season, K d, zero or more; 1 degF d is 5/9 K d.
        fuel: What the heater burns.

    Raises:
        ValueError: A figure is out of its range; the message names the field and the mend.

    Source:
        Each figure keeps its own working.
    """
    _check_zero_or_more("whole_w_k", whole_w_k)
    _check_zero_or_more("degree_days_k_d", degree_days_k_d)
    heat_kwh = whole_w_k * degree_days_k_d * DAY_H / WATT_KW
    fuel_units = heat_kwh / (fuel.heat_kwh * fuel.efficiency)
    cost = round_cents(min(LARGEST, Decimal(repr(fuel_units)) * fuel.price))
    return SeasonHeat(
        heat_kwh=heat_kwh,
        fuel_units=fuel_units,
        cost=cost,
        workings=(
            Working(
                "heat_kwh",
                "Loss for one degree times the degree-days times 24 hours.",
                (Term("loss", whole_w_k, "W/K"), Term("degree-days", degree_days_k_d, "K day")),
                DEGREE_DAY_SOURCE,
            ),
            Working(
                "fuel_units",
                f"Heat over what one {fuel.unit} brings into the tunnel.",
                (
                    Term("heat", heat_kwh, "kWh"),
                    Term(f"heat in one {fuel.unit}", fuel.heat_kwh, "kWh"),
                    Term("share the heater brings in", fuel.efficiency, "share"),
                ),
                ENTERED,
            ),
            Working(
                "cost",
                f"Units of fuel times the price of one {fuel.unit}, rounded to the cent.",
                (Term("units", fuel_units, "ratio"), Term("price", fuel.price, "money")),
                ENTERED,
            ),
        ),
    )


def _check_zero_or_more(field: str, figure: float) -> None:
    if not 0 <= figure < math.inf:
        raise ValueError(f"{field} must be zero or more, not {figure!r}. Mend the figure.")
