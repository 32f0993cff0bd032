"""A smooth line through points against scipy's natural cubic spline."""

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import CubicSpline

from hoopwright.farm.bow_spline import natural_spline, smooth_line

ARCH = [(-4.0, 0.0), (-3.9, 1.4), (-1.6, 2.9), (0.6, 3.5), (2.6, 2.6), (4.1, 1.2), (4.0, 0.0)]


@given(
    st.lists(st.tuples(st.floats(0.1, 3.0), st.floats(-5.0, 5.0)), min_size=2, max_size=12),
)
def test_cubics_are_those_of_scipy(drawn: list[tuple[float, float]]) -> None:
    knots = np.cumsum([step for step, _ in drawn])
    values = [value for _, value in drawn]
    true = CubicSpline(knots, values, bc_type="natural")
    made = natural_spline(list(knots), values)
    # scipy keeps the highest power first.
    assert np.allclose(np.array(made).T[::-1], true.c, atol=1e-9)


def test_line_lies_on_the_curve_and_is_as_long() -> None:
    knots = np.cumsum([0.0, *(math.dist(a, b) for a, b in pairwise(ARCH))])
    true = CubicSpline(knots, np.array(ARCH), bc_type="natural")
    fine = true(np.linspace(0.0, knots[-1], 200_001))
    line = [spot for run in smooth_line(ARCH) for spot in run] + [ARCH[-1]]
    assert np.allclose([run[0] for run in smooth_line(ARCH)], ARCH[:-1])
    for spot in line:
        assert np.hypot(*(fine - spot).T).min() < 1e-4
    length_m = sum(math.dist(a, b) for a, b in pairwise(line))
    assert length_m == pytest.approx(np.hypot(*np.diff(fine, axis=0).T).sum(), rel=2e-4)


def test_highest_place_of_the_curve_is_on_the_line() -> None:
    knots = np.cumsum([0.0, *(math.dist(a, b) for a, b in pairwise(ARCH))])
    up = CubicSpline(knots, [y for _, y in ARCH], bc_type="natural")
    highest_m = max(float(up(at)) for at in up.derivative().roots() if 0 < at < knots[-1])
    assert max(y for run in smooth_line(ARCH) for _, y in run) == pytest.approx(highest_m)


def test_points_on_a_straight_stay_straight() -> None:
    runs = smooth_line([(0.0, 0.0), (1.0, 2.0), (1.5, 3.0), (2.0, 4.0)])
    assert all(y == pytest.approx(2 * x) for run in runs for x, y in run)
