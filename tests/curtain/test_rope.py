"""Wind rope and straps against lines drawn from eye to eye and a parabola under load."""

import math

import numpy as np
import pytest
from shapely.geometry import LineString

from hoopwright.curtain.rope import (
    ROPE_END_M,
    STRAP_END_M,
    leg_pull,
    rope_legs,
    strap_count,
    strap_rope,
    zigzag_rope,
)

FOOT_M = 0.3048


def _drawn(length_m: float, height_m: float, legs: int) -> float:
    step_m = length_m / legs
    return LineString([(k * step_m, height_m * (k % 2)) for k in range(legs + 1)]).length


# Worked by hand: 48 ft by steps of 2 ft: 24 legs of sqrt(4 + 4.5^2) = 4.924 ft, 118.19 ft.
def test_rope_agrees_with_the_hand_sum() -> None:
    legs = rope_legs(48 * FOOT_M, 2 * FOOT_M)
    ends_m = 2 * ROPE_END_M
    assert legs == 24
    rope_m = zigzag_rope(48 * FOOT_M, 4.5 * FOOT_M, legs)
    assert (rope_m - ends_m) / FOOT_M == pytest.approx(118.19, abs=0.01)


@pytest.mark.parametrize(("length_m", "step_m"), [(14.3, 1.2), (0.9, 1.2), (30.0, 0.61)])
def test_rope_is_as_long_as_the_zigzag_drawn(length_m: float, step_m: float) -> None:
    legs = rope_legs(length_m, step_m)
    assert length_m / legs <= step_m
    assert legs == 1 or length_m / (legs - 1) > step_m
    rope_m = zigzag_rope(length_m, 1.25, legs)
    assert rope_m - 2 * ROPE_END_M == pytest.approx(_drawn(length_m, 1.25, legs))


def test_tail_and_knot_take_two_feet_at_each_end() -> None:
    # Common practice, no published source: about 2 ft for a rope, 1 ft for a strap.
    assert pytest.approx(2 * FOOT_M, abs=0.02) == ROPE_END_M
    assert pytest.approx(FOOT_M, abs=0.02) == STRAP_END_M


@pytest.mark.parametrize(
    ("length_m", "step_m", "count"), [(12.0, 1.5, 9), (12.1, 1.5, 10), (1.0, 1.5, 2)]
)
def test_straps_stand_at_both_ends_and_no_farther_apart_than_wanted(
    length_m: float, step_m: float, count: int
) -> None:
    assert strap_count(length_m, step_m) == count
    apart_m = np.diff(np.linspace(0.0, length_m, count))
    assert apart_m.max() <= step_m + 1e-9


def test_straps_are_as_long_as_lines_drawn_straight_down() -> None:
    drawn_m = sum(LineString([(x, 0.0), (x, 1.4)]).length for x in range(9))
    assert strap_rope(9, 1.4) - 9 * 2 * STRAP_END_M == pytest.approx(drawn_m)


def test_pull_agrees_with_the_hand_sum() -> None:
    # Worked by hand: 300 Pa on a patch of 0.61 by 1.5 m is 274.5 N; leg sqrt(0.61^2 + 1.5^2) =
    # 1.619 m, bow 0.1 m: along 274.5 * 1.619 / 0.8 = 555.6 N, with half the load across 572 N.
    tension_n, eye_n = leg_pull(300.0, 1.0, 0.61, 1.5, math.hypot(0.61, 1.5), 0.1)
    assert tension_n == pytest.approx(572, abs=0.5)
    assert eye_n == pytest.approx(274.5)


@pytest.mark.parametrize("bow_m", [0.05, 0.1, 0.3])
def test_pull_follows_the_slope_of_the_parabola_at_its_end(bow_m: float) -> None:
    leg_m, load_n = 1.8, 0.5 * 400.0 * 0.9 * 1.6
    through = np.polyfit([0.0, leg_m / 2, leg_m], [0.0, bow_m, 0.0], 2)
    angle_rad = math.atan(np.polyval(np.polyder(through), 0.0))
    tension_n, eye_n = leg_pull(400.0, 0.5, 0.9, 1.6, leg_m, bow_m)
    assert tension_n * math.sin(angle_rad) == pytest.approx(load_n / 2)
    assert eye_n == pytest.approx(load_n)


def test_strap_pulls_its_eye_half_as_hard_as_a_zigzag() -> None:
    inner_n = leg_pull(400.0, 0.5, 0.9, 1.6, 1.8, 0.1)[1]
    assert leg_pull(400.0, 0.5, 0.9, 1.6, 1.8, 0.1, legs_at_eye=1)[1] == pytest.approx(inner_n / 2)


def test_less_bow_pulls_harder_and_none_is_refused() -> None:
    pulls_n = [leg_pull(300.0, 1.0, 0.6, 1.5, 1.6, bow_m)[0] for bow_m in (0.01, 0.1, 0.5)]
    assert pulls_n == sorted(pulls_n, reverse=True)
    assert leg_pull(300.0, 0.0, 0.6, 1.5, 1.6, 0.1) == (0.0, 0.0)
    with pytest.raises(ValueError, match="bow_m"):
        leg_pull(300.0, 1.0, 0.6, 1.5, 1.6, 0.0)
