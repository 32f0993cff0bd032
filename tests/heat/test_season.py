"""A season's heating against an hourly sum, published fuel figures and by hand."""

import math
from decimal import Decimal

import pytest

from hoopwright.heat.loss import Surface, heat_loss
from hoopwright.heat.season import Fuel, season_heat
from hoopwright.quantity.factors import CUBIC_FOOT_M3, FAHRENHEIT_K, SQUARE_FOOT_M2

KWH_BTU = 3.6e6 / 1055.056
POWER = Fuel("kWh", 1.0, 1.0, Decimal("0.20"))


# Worked by hand: 86 400 s x 4103 W/K x 1500 K d = 531.7 GJ.
def test_heat_agrees_with_the_hand_sum() -> None:
    found = season_heat(4103.0, 1500.0, POWER)
    assert found.heat_kwh * 3.6e6 == pytest.approx(531.7e9, rel=1e-4)
    assert found.cost == Decimal("29541.60")


# Worked by hand in the units of the trade: two films on a half round house 30 x 96 ft, 5230.8 ft2
# at 0.7 Btu/(h ft2 degF), 33 929 ft3 changed 0.75 times an hour at 0.018 Btu/(ft3 degF), 5000
# degF d: 494.3 million Btu; propane of 91 333 Btu a gallon burnt at 80 %: 6766 gallons.
def test_season_in_trade_units_agrees_with_the_hand_sum() -> None:
    cover_m2 = (15 * math.pi * 96 + math.pi * 225) * SQUARE_FOOT_M2
    volume_m3 = math.pi * 225 / 2 * 96 * CUBIC_FOOT_M3
    loss = heat_loss((Surface("cover", cover_m2, 0.7 * 5.678263),), volume_m3, 0.75, 288.0, 260.0)
    propane = Fuel("gallon of propane", 91333 / KWH_BTU, 0.8, Decimal("2.10"))
    found = season_heat(loss.whole_w_k, 5000 * FAHRENHEIT_K, propane)
    assert found.heat_kwh * KWH_BTU == pytest.approx(494.3e6, rel=1e-3)
    assert found.fuel_units == pytest.approx(6766, rel=1e-3)


# University of Wisconsin Extension, Heat loss: one saving is 400 gallons of oil, 610 gallons of
# propane or 558 therms. Heat in each (from memory): 138 690, 91 333 and 100 000 Btu.
def test_fuels_of_one_published_saving_hold_one_heat() -> None:
    heat = [units * btu / KWH_BTU for units, btu in ((400, 138690), (610, 91333), (558, 100000))]
    for each, units, btu in zip(heat, (400, 610, 558), (138690, 91333, 100000), strict=True):
        fuel = Fuel("unit", btu / KWH_BTU, 0.8, Decimal(1))
        whole_w_k = heat[2] * 0.8 * 1000 / (24 * 1000)
        assert season_heat(whole_w_k, 1000.0, fuel).fuel_units == pytest.approx(units, rel=0.01)
        assert each == pytest.approx(heat[2], rel=0.01)


def _hourly(hour: int) -> float:
    """Return the temperature outside of an invented season: a slow and a daily sine, K."""
    day = hour / 24
    return 275.0 - 8 * math.sin(math.pi * day / 150) + 4 * math.sin(2 * math.pi * day)


# As long as even the afternoons stay below the base, means of days lose nothing.
def test_season_is_the_hourly_sum_when_no_hour_passes_the_base() -> None:
    hours = [_hourly(hour) for hour in range(150 * 24)]
    means = [sum(hours[24 * day : 24 * day + 24]) / 24 for day in range(150)]
    hourly_kwh = sum(4103.0 * (285.0 - outside_k) / 1000 for outside_k in hours)
    degree_days_k_d = sum(285.0 - mean_k for mean_k in means)
    found = season_heat(4103.0, degree_days_k_d, POWER)
    assert found.heat_kwh == pytest.approx(hourly_kwh, rel=1e-9)


def test_absurd_fuel_costs_no_more_than_money_goes() -> None:
    dear = Fuel("kWh", 1.0, 1.0, Decimal(100_000_000))
    assert season_heat(4000.0, 3000.0, dear).cost == Decimal(1_000_000_000)


def test_half_the_efficiency_burns_twice_the_fuel() -> None:
    good, poor = (Fuel("litre", 10.0, share, Decimal("1.5")) for share in (0.9, 0.45))
    burnt = season_heat(1000.0, 100.0, good).fuel_units
    assert season_heat(1000.0, 100.0, poor).fuel_units == pytest.approx(2 * burnt)


def test_each_figure_tells_how_it_was_got() -> None:
    season = season_heat(1000.0, 1000.0, POWER)
    for figure in ("heat_kwh", "fuel_units", "cost"):
        assert season.working(figure).inputs
    assert season.working("cost").inputs[1].value == Decimal("0.20")


@pytest.mark.parametrize(
    ("fuel", "field"),
    [
        ((0.0, 0.8, Decimal(1)), "heat_kwh"),
        ((10.0, 0.0, Decimal(1)), "efficiency"),
        ((10.0, 1.1, Decimal(1)), "efficiency"),
        ((10.0, 0.8, Decimal(-1)), "price"),
        ((10.0, 0.8, Decimal("NaN")), "price"),
    ],
)
def test_fuel_refuses_what_cannot_be(fuel: tuple[float, float, Decimal], field: str) -> None:
    with pytest.raises(ValueError, match=f"^{field} must be"):
        Fuel("litre", *fuel)


def test_season_refuses_what_cannot_be() -> None:
    with pytest.raises(ValueError, match=r"^whole_w_k must be"):
        season_heat(-1.0, 100.0, POWER)
    with pytest.raises(ValueError, match=r"^degree_days_k_d must be"):
        season_heat(1.0, math.nan, POWER)
