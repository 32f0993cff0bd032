"""Outlets and gutters against weirs and orifices of a general library and the momentum of water."""

import math

import fluids
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from hoopwright.outfit.outlets import bore_for, gutter_section, outlet_flow

G_M_S2 = 9.80665
BORE_M = 0.0762


def test_weir_and_orifice_meet_where_the_water_stands_half_a_bore_high() -> None:
    # EN 12056-3 (from memory) changes from one formula to the other at h = D / 2:
    # 76.2 mm x 38.1^1.5 mm / 7500 = 2.389 l/s, 76.2^2 x 38.1^0.5 / 15000 = 2.389 l/s.
    assert outlet_flow(BORE_M, BORE_M / 2) == pytest.approx(2.389e-3, rel=1e-3)
    shallow, deep = outlet_flow(BORE_M, BORE_M / 8), outlet_flow(BORE_M, 2 * BORE_M)
    assert shallow == pytest.approx(2.389e-3 * 0.25**1.5, rel=1e-3)
    assert deep == pytest.approx(2.389e-3 * 4**0.5, rel=1e-3)


def test_deep_outlet_is_a_sharp_orifice() -> None:
    head_m = 0.15
    flow = outlet_flow(BORE_M, head_m)
    # An orifice in a wide pipe, ISO 5167 as in the library: C is 0.601.
    sharp = fluids.flow_meter.C_Reader_Harris_Gallagher(
        D=0.5, Do=BORE_M, rho=1000.0, mu=1e-3, m=1000 * flow, taps="corner"
    )
    ideal = math.pi / 4 * BORE_M**2 * math.sqrt(2 * G_M_S2 * head_m)
    assert flow / ideal == pytest.approx(sharp, rel=0.02)


def test_shallow_outlet_takes_no_more_than_a_sharp_weir_as_long_as_its_rim() -> None:
    head_m = 0.02
    straight = fluids.open_flow.Q_weir_rectangular_full_Rehbock(head_m, 0.3, math.pi * BORE_M)
    assert 0.65 * straight < outlet_flow(BORE_M, head_m) < straight


@pytest.mark.parametrize("head_m", [0.01, 0.0381, 0.2])
def test_bore_for_a_flow_takes_just_that_flow(head_m: float) -> None:
    bore_m = bore_for(2e-3, head_m)
    assert outlet_flow(bore_m, head_m) == pytest.approx(2e-3)
    assert outlet_flow(0.99 * bore_m, head_m) < 2e-3


def _free_fall_flow(radius_m: float) -> float:
    """Return what a level half-round gutter, full at its far end, spills without friction, m3/s.

    The momentum Q^2 / gA + (area times depth of its centre) is the same at both ends; at the fall
    the water is critical, Q^2 T = g A^3.
    """

    def section(depth_m: float) -> tuple[float, float, float]:
        def width_m(at_m: float) -> float:
            return 2 * math.sqrt(at_m * (2 * radius_m - at_m))

        area_m2 = quad(width_m, 0, depth_m)[0]
        moment_m3 = quad(lambda at_m: (depth_m - at_m) * width_m(at_m), 0, depth_m)[0]
        return area_m2, width_m(depth_m), moment_m3

    full_m3 = section(radius_m)[2]

    def missing_m3(depth_m: float) -> float:
        area_m2, top_m, moment_m3 = section(depth_m)
        return area_m2**2 / top_m + moment_m3 - full_m3

    area_m2, top_m, _ = section(brentq(missing_m3, 1e-4, radius_m))
    return math.sqrt(G_M_S2 * area_m2**3 / top_m)


@pytest.mark.parametrize("radius_m", [0.05, 0.075, 0.1])
def test_gutter_carries_seven_tenths_of_what_water_without_friction_would(radius_m: float) -> None:
    area_m2 = math.pi * radius_m**2 / 2
    carried = brentq(lambda flow: gutter_section(flow) - area_m2, 1e-5, 0.1)
    assert carried / _free_fall_flow(radius_m) == pytest.approx(0.72, abs=0.005)


def test_gutter_of_the_standard_s_formula() -> None:
    # 0.9 x 2.78e-5 x 6136^1.25 = 1.359 l/s for a half-round gutter 125 mm wide (from memory).
    assert gutter_section(1.3587e-3) == pytest.approx(6136e-6, rel=1e-3)
