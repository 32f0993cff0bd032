"""Wind pressure against the sums of the wind standard and against the physics of moving air."""

import pytest

from hoopwright.curtain.storm import DIRECTION_SHARE, exposure_factor, storm_pressure
from hoopwright.farm.weather import Exposure

FOOT_M = 0.3048
MPH_M_S = 0.44704
PSF_PA = 47.88026


def test_pressure_agrees_with_the_sum_in_the_units_of_the_standard() -> None:
    # ASCE 7-05 to 7-16 in feet: q = 0.00256 Kz Kzt Kd V**2, Kz = 2.01 (20 / 1200)**(2 / 7).
    # At 100 mph over ground B, 20 ft up: 0.00256 * 0.624 * 0.85 * 10000 = 13.58 lb/ft2.
    pressure_pa = storm_pressure(100 * MPH_M_S, 20 * FOOT_M, "B")
    assert pressure_pa / PSF_PA == pytest.approx(13.58, rel=1e-3)


@pytest.mark.parametrize(
    ("height_ft", "exposure", "factor"),
    # ASCE 7-05, table of velocity pressure exposure coefficients; from memory.
    [(15, "C", 0.85), (20, "C", 0.90), (30, "B", 0.70), (30, "C", 0.98), (30, "D", 1.16)],
)
def test_factors_are_those_of_the_table(
    height_ft: float, exposure: Exposure, factor: float
) -> None:
    assert exposure_factor(height_ft * FOOT_M, exposure) == pytest.approx(factor, abs=0.006)


@pytest.mark.parametrize("exposure", ["B", "C", "D"])
def test_wind_near_the_ground_counts_as_at_15_ft(exposure: Exposure) -> None:
    at_m = 15 * FOOT_M
    assert exposure_factor(1.0, exposure) == exposure_factor(at_m, exposure)
    assert exposure_factor(at_m * 1.2, exposure) > exposure_factor(at_m, exposure)


def test_pressure_is_that_of_moving_air() -> None:
    # Half the density times the square of the speed, 1.225 kg/m3 at sea level (ISO 2533).
    factor = exposure_factor(6.0, "C") * DIRECTION_SHARE
    for speed_m_s in (10.0, 45.0):
        expected_pa = 0.5 * 1.225 * speed_m_s**2 * factor
        assert storm_pressure(speed_m_s, 6.0, "C") == pytest.approx(expected_pa, rel=1e-3)


def test_pressure_is_within_a_fortieth_of_a_published_round_figure() -> None:
    # Bartok, Reduce Storm Damage to Your Greenhouses (Cornell Vegetable Program, 2014): a wind of
    # 80 mph presses with about 16 lb/ft2, without the factors of the standard.
    factor = exposure_factor(10.0, "C") * DIRECTION_SHARE
    bare_pa = storm_pressure(80 * MPH_M_S, 10.0, "C") / factor
    assert bare_pa / PSF_PA == pytest.approx(16.0, rel=0.025)
