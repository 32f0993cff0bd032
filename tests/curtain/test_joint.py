"""The universal joint against its own motion and a drawn triangle."""

import math

import numpy as np
import pytest
import shapely

from hanging import FREE, bar, crank, geared, hung, round_tube, span
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.joint import MOST_SWING, joint_angle, joint_swing

RAIL = bar(round_tube(1.375, 0.058))


def _speeds(angle_rad: float) -> tuple[float, float]:
    """Return least and greatest output over input speed of a single joint through a turn.

    The output angle follows from tan(out) = tan(in) / cos(beta) (textbook); its slope is taken
    numerically.
    """
    turned = np.linspace(0, 2 * math.pi, 20001)
    out = np.unwrap(np.arctan2(np.sin(turned), math.cos(angle_rad) * np.cos(turned)))
    speed = np.gradient(out, turned)
    return float(speed.min()), float(speed.max())


@pytest.mark.parametrize("degrees", [5, 20, 45, 70])
def test_swing_is_that_of_the_joint_turned_numerically(degrees: float) -> None:
    slowest, fastest = _speeds(math.radians(degrees))
    assert joint_swing(math.radians(degrees)) == pytest.approx(fastest, rel=1e-5)
    assert joint_swing(math.radians(degrees)) == pytest.approx(1 / slowest, rel=1e-5)


def test_joint_bent_by_twenty_degrees_agrees_with_the_hand_sum() -> None:
    # Worked by hand: cos 20 degrees = 0.9397, 1 / 0.9397 = 1.0642.
    assert joint_swing(math.radians(20)) == pytest.approx(1.0642, abs=5e-5)


def test_straight_joint_does_not_swing_and_a_square_one_is_capped() -> None:
    assert joint_swing(0.0) == 1.0
    assert joint_swing(math.pi / 2) == MOST_SWING
    assert joint_swing(math.radians(80)) < MOST_SWING


def test_angle_is_that_of_a_drawn_pipe() -> None:
    # The pipe ends where a circle round the joint meets the height of the handle.
    reach = shapely.Point(0, 1.7).buffer(1.5, quad_segs=4096).exterior
    end = max(reach.intersection(shapely.LineString([(-3, 1), (3, 1)])).geoms, key=lambda p: p.x)
    assert joint_angle(1.7, 1.0, 1.5) == pytest.approx(math.atan2(0.7, end.x), abs=1e-6)
    assert joint_angle(0.3, 1.0, 1.5) == joint_angle(1.7, 1.0, 1.5)


def test_pipe_too_short_to_reach_stands_at_a_right_angle() -> None:
    assert joint_angle(3.0, 1.0, 1.5) == math.pi / 2


# Worked by hand: bar at 1 ft shut, 3.5 ft half way and 6 ft open, handle at 3 ft, pipe of 5 ft:
# sines 2/5, 0.5/5 and 3/5, so 23.58, 5.74 and 36.87 degrees; swing 1 / 0.8 = 1.25.
def test_angles_through_the_travel_agree_with_the_hand_sum() -> None:
    limits = FREE.but(handle_height_m=3 * 0.3048)
    work = work_curtain(hung(span(60, 5), RAIL, crank(7, extension_m=5 * 0.3048), limits))
    degrees = [math.degrees(angle) for angle in work.joint_angles_rad]
    assert degrees == pytest.approx([23.58, 5.74, 36.87], abs=5e-3)
    assert work.joint_swing == pytest.approx(1.25)
    assert work.guide_m == 0.0


def test_geared_crank_has_a_guide_up_to_the_open_bar_instead_of_a_joint() -> None:
    # Worked by hand: bar at 1 + 5 = 6 ft when open, 2 ft in the ground.
    work = work_curtain(hung(span(60, 5), RAIL, geared(7, guide_buried_m=2 * 0.3048)))
    assert work.guide_m == pytest.approx(8 * 0.3048)
    assert work.joint_angles_rad == (0.0, 0.0, 0.0)
    assert work.joint_swing == 1.0
