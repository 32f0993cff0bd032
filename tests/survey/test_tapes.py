"""Strings, tapes and circles against worked figures and a general solver."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq, least_squares

from hoopwright.survey.tapes import best_circle, string_radius, tape_radius

FOOT_M = 0.3048


def test_string_and_offset_by_hand() -> None:
    # String 6 ft, offset 9 in: 36 / 6 + 0.375 = 6.375 ft.
    assert string_radius(6 * FOOT_M, 0.75 * FOOT_M) == pytest.approx(6.375 * FOOT_M)


@given(st.floats(0.5, 20.0), st.floats(0.01, 3.1))
def test_string_and_tapes_find_the_circle_they_were_taken_on(radius_m: float, half: float) -> None:
    chord_m, offset_m = 2 * radius_m * math.sin(half), radius_m * (1 - math.cos(half))
    assert string_radius(chord_m, offset_m) == pytest.approx(radius_m, rel=1e-6)
    assert tape_radius(2 * radius_m * half, chord_m) == pytest.approx(radius_m, rel=1e-4)


def test_tape_along_and_across_by_hand_and_by_a_general_solver() -> None:
    # 10.5 ft along, 9.75 ft across: 7.932 ft.
    assert tape_radius(10.5 * FOOT_M, 9.75 * FOOT_M) / FOOT_M == pytest.approx(7.932, abs=5e-4)
    u = brentq(lambda u: math.sin(u) / u - 3.0 / 5.0, 1e-6, math.pi)
    assert tape_radius(5.0, 3.0) == pytest.approx(5.0 / (2 * u), rel=1e-9)


@pytest.mark.parametrize(
    ("along_m", "chord_m", "field"),
    [
        (3.0, 3.0, "along_m"),
        (2.0, 3.0, "along_m"),
        (math.nan, 3.0, "along_m"),
        (3.0, 0.0, "chord_m"),
    ],
)
def test_tapes_that_cannot_be_are_refused(along_m: float, chord_m: float, field: str) -> None:
    with pytest.raises(ValueError, match=f"^{field}: .*measure"):
        tape_radius(along_m, chord_m)


@pytest.mark.parametrize(
    ("chord_m", "offset_m", "field"),
    [
        (0.0, 0.2, "chord_m"),
        (2.0, 0.0, "offset_m"),
        (2.0, -0.1, "offset_m"),
        (math.inf, 1, "chord_m"),
    ],
)
def test_strings_that_cannot_be_are_refused(chord_m: float, offset_m: float, field: str) -> None:
    with pytest.raises(ValueError, match=f"^{field}: .*measure"):
        string_radius(chord_m, offset_m)


@given(
    st.floats(1.0, 10.0),
    st.floats(-5.0, 5.0),
    st.lists(st.floats(-0.05, 0.05), min_size=5, max_size=12),
)
def test_best_circle_is_that_of_a_general_solver(
    radius_m: float, low_m: float, off: list[float]
) -> None:
    angles = np.linspace(0.2, math.pi - 0.2, len(off))
    far = radius_m + np.array(off)
    spots = np.column_stack([far * np.cos(angles), far * np.sin(angles) + low_m])
    found = least_squares(
        lambda q: np.hypot(*(spots - q[:2]).T) - q[2], [0.0, low_m, radius_m], xtol=1e-14
    )
    made = best_circle([(float(x), float(y)) for x, y in spots])
    assert (made.x_m, made.y_m, made.radius_m) == pytest.approx(found.x, abs=1e-5)
    assert made.misfit_m == pytest.approx(math.sqrt(2 * found.cost / len(off)), abs=1e-8)


def test_three_points_lie_on_their_circle() -> None:
    made = best_circle([(-3.0, 0.0), (0.0, 3.0), (3.0, 0.0)])
    assert (made.x_m, made.y_m, made.radius_m) == pytest.approx((0.0, 0.0, 3.0), abs=1e-9)
    assert made.misfit_m == pytest.approx(0.0, abs=1e-9)


def test_points_without_a_circle_are_refused() -> None:
    with pytest.raises(ValueError, match="points: a circle needs at least three"):
        best_circle([(0.0, 0.0), (1.0, 1.0)])
    with pytest.raises(ValueError, match="points: they lie on a straight line"):
        best_circle([(0.0, 0.0), (1.0, 1.0), (3.0, 3.0)])
