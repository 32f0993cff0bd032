"""Blower curves against fits of a general library and by hand."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.pressure.fan import FanCurve

LINE = FanCurve(((0.0, 300.0), (0.04, 0.0)))
BOWED = FanCurve(((0.0, 150.0), (0.02, 120.0), (0.045, 0.0)))
HOLLOW = FanCurve(((0.0, 200.0), (0.02, 80.0), (0.05, 10.0)))


@pytest.mark.parametrize("curve", [LINE, BOWED, HOLLOW])
def test_curve_is_the_polynomial_through_its_points(curve: FanCurve) -> None:
    flows, pressures = zip(*curve.points, strict=True)
    fit = np.polynomial.Polynomial.fit(flows, pressures, deg=len(flows) - 1)
    for flow in np.linspace(flows[0], flows[-1], 7):
        assert curve.pressure_pa(float(flow)) == pytest.approx(float(fit(flow)), abs=1e-9)
        assert curve.slope(float(flow)) == pytest.approx(float(fit.deriv()(flow)), rel=1e-6)


@pytest.mark.parametrize("curve", [LINE, BOWED, HOLLOW])
@given(share=st.floats(0.0, 1.0))
def test_flow_and_pressure_are_each_other_turned_round(curve: FanCurve, share: float) -> None:
    flow = share * curve.most_m3_s
    assert curve.flow_m3_s(curve.pressure_pa(flow)) == pytest.approx(flow, abs=1e-9)


def test_half_the_pressure_of_a_line_is_half_its_flow() -> None:
    assert LINE.flow_m3_s(150.0) == pytest.approx(0.02)


def test_curve_is_held_outside_its_points() -> None:
    part = FanCurve(((0.01, 100.0), (0.03, 40.0)))
    assert part.pressure_pa(0.0) == part.most_pa == 100.0
    assert part.pressure_pa(1.0) == 40.0
    assert part.flow_m3_s(500.0) == part.least_m3_s == 0.01
    assert part.flow_m3_s(0.0) == part.most_m3_s == 0.03


def test_points_may_come_in_any_order() -> None:
    assert FanCurve(((0.04, 0.0), (0.0, 300.0))) == LINE


# p = p0 (1 - (q / q0)**2) is level where it begins and still falls everywhere after.
def test_parabola_may_begin_level() -> None:
    curve = FanCurve(((0.0, 100.0), (0.02, 75.0), (0.04, 0.0)))
    assert curve.flow_m3_s(100 * (1 - 0.3**2)) == pytest.approx(0.3 * 0.04)


@pytest.mark.parametrize(
    ("points", "words"),
    [
        (((0.0, 100.0),), "two or three points, not 1"),
        (((0.0, 100.0), (0.01, 80.0), (0.02, 40.0), (0.03, 0.0)), "not 4"),
        (((0.01, 100.0), (0.01, 50.0)), "same flow"),
        (((0.0, 100.0), (0.02, 100.0)), "rises"),
        (((0.0, 50.0), (0.02, 100.0)), "rises"),
        (((0.0, 100.0), (0.02, 90.0), (0.021, 20.0)), "rises"),
        (((0.0, 100.0), (0.001, 10.0), (0.04, 0.0)), "rises"),
        (((0.0, -1.0), (0.04, -2.0)), "zero or more"),
    ],
)
def test_curve_refuses_points_that_no_blower_has(
    points: tuple[tuple[float, float], ...], words: str
) -> None:
    with pytest.raises(ValueError, match=f"^points: .*{words}"):
        FanCurve(points)
