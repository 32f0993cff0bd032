"""Heat as entered: whether a tunnel is heated and how, the winter outside, fuel and power."""

from decimal import Decimal
from typing import Annotated

from hoopwright.farm.entered import Entered, choice, measure

Transmission = Annotated[float, measure("heat transmission", "W/m2/K", 0.1, 20.0)]
Changes = Annotated[float, measure("air changes", "1/h", 0.0, 20.0)]


class Heating(Entered, frozen=True):
    """How a tunnel is heated and what its skin lets through.

    The transmissions are starting values with published sources, named where they are shown.

    Attributes:
        inside_k: Temperature kept inside, K.
        gain_k: How much sun and soil lift it without fuel, K.
        u_one: One layer, W/m2/K.
        u_two: Two layers with air between, W/m2/K.
        u_two_thermal: Two layers, the inner one thermal film, W/m2/K.
        u_rigid: Rigid sheets of an end wall, W/m2/K; about 3.3 to 3.7 for twin walls of 6 to 8 mm
            (from memory, to be confirmed by the seller), 6 and more for one wall.
        changes_one_per_h: Air changes with one layer, 1/h.
        changes_two_per_h: Air changes with two layers, 1/h.
        efficiency: Share of the fuel's heat that reaches the tunnel.
        fuel: Name of the fuel.
        fuel_unit: Unit it is sold in.
        fuel_unit_j: Heat of one unit, J.
        fuel_price: Price of one unit.
    """

    inside_k: Annotated[float, measure("kept inside", "K", 263.15, 313.15)] = 283.15
    gain_k: Annotated[float, measure("free warmth", "dK", 0.0, 20.0)] = 3.0
    u_one: Transmission = 6.3
    u_two: Transmission = 4.0
    u_two_thermal: Transmission = 3.3
    u_rigid: Transmission = 3.5
    changes_one_per_h: Changes = 1.0
    changes_two_per_h: Changes = 0.75
    efficiency: Annotated[float, measure("heater efficiency", "share", 0.05, 1.0)] = 0.8
    fuel: Annotated[str, choice("fuel")] = "propane"
    fuel_unit: Annotated[str, choice("sold by the")] = "gallon"
    fuel_unit_j: Annotated[float, measure("heat of one unit", "J_heat", 1e5, 1e12)] = 9.636e7
    fuel_price: Annotated[Decimal, choice("price of one unit")] = Decimal("2.40")


class Climate(Entered, frozen=True):
    """The winter at the farm, and what power costs.

    Attributes:
        design_outside_k: Coldest air that the heater must meet, K.
        base_k: Temperature to which the degree-days are counted, K.
        degree_days: Degree-days of the season, K day.
        install_k: Film temperature on the day it is put on, K.
        coldest_k: Coldest film temperature, K.
        power_price: Price of one kWh.
        blower_hours: Hours in a year that the blower runs.
    """

    design_outside_k: Annotated[float, measure("coldest outside", "K", 213.15, 293.15)] = 258.15
    base_k: Annotated[float, measure("base of degree-days", "K", 263.15, 303.15)] = 280.15
    degree_days: Annotated[float, measure("degree-days", "K day", 0.0, 10000.0)] = 900.0
    install_k: Annotated[float, measure("day of pulling the film", "K", 253.15, 323.15)] = 288.15
    coldest_k: Annotated[float, measure("coldest film", "K", 213.15, 303.15)] = 253.15
    power_price: Annotated[Decimal, choice("price of one kWh")] = Decimal("0.16")
    blower_hours: Annotated[float, measure("blower runs", "h", 0.0, 8784.0)] = 8760.0
