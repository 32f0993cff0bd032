"""Numbers of the plan as decimals of the farm's units."""

import math
from decimal import Decimal

import pytest

from hoopwright.papers.sheet_numbers import decimal_of, heading, length_values, shown, shown_size


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_no_cell_can_hold_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="finite"):
        decimal_of(value)


@pytest.mark.parametrize(
    ("value_m", "imperial", "metric"),
    [
        # 1 ft = 0.3048 m exactly: NIST Special Publication 811, appendix B.
        (12.192, "40.00", "12.192"),
        (0.1 + 0.2, "0.99", "0.300"),
        (12.1921, "40.01", "12.193"),
        (0.0, "0.00", "0.000"),
    ],
)
def test_sizes_are_rounded_up_without_the_dust_of_floats(
    value_m: float, imperial: str, metric: str
) -> None:
    assert shown_size(value_m, "imperial") == Decimal(imperial)
    assert shown_size(value_m, "metric") == Decimal(metric)


def test_feet_stand_beside_feet_and_inches_and_metres_alone() -> None:
    # 6.0960 m are 20 ft; 1 mm more is 0.04 in, rounded up to an eighth.
    assert length_values(6.097, "imperial") == (Decimal("20.01"), "20' 0 1/8\"")
    assert length_values(6.097, "metric") == (Decimal("6.097"),)


@pytest.mark.parametrize(
    ("value", "unit", "imperial", "metric"),
    [
        # 1 lbf = 4.4482216152605 N, 1 ft2 = 0.09290304 m2, 1 lb = 0.45359237 kg:
        # NIST Special Publication 811, appendix B.
        (44.482216152605, "N", "10.0", "44.5"),
        (9.290304, "m2", "100.0", "9.3"),
        (45.359237, "kg", "100.0", "45.4"),
    ],
)
def test_quantities_are_those_of_the_handbook(
    value: float, unit: str, imperial: str, metric: str
) -> None:
    assert shown(value, unit, "imperial", 1) == Decimal(imperial)
    assert shown(value, unit, "metric", 1) == Decimal(metric)


def test_heading_names_its_unit() -> None:
    assert heading("Mass", "kg", "imperial") == "Mass (lb)"
    assert heading("Mass", "kg", "metric") == "Mass (kg)"
