"""A measured line moved outward: corners, dents and feet, by hand."""

import math
from itertools import pairwise

import pytest

from hoopwright.survey.measured_line import measured_halves
from hoopwright.survey.segment import Straight

R = 0.1
TENT = ((-2.0, 0.0), (0.0, 2.0), (2.0, 0.0))


def test_an_unmoved_line_is_cut_at_its_highest_point() -> None:
    left, right = measured_halves(((-2.0, 0.0), (-1.0, 1.0), (1.0, 3.0), (2.0, 0.0)), 0.0)
    assert left == (Straight(-2.0, 0.0, -1.0, 1.0), Straight(-1.0, 1.0, 1.0, 3.0))
    # The right half is mirrored: from its foot at 2 up to the ridge at 1.
    assert right == (Straight(-2.0, 0.0, -1.0, 3.0),)


def test_feet_are_lengthened_to_the_ground_and_the_ridge_bends_round_the_tube() -> None:
    left, right = measured_halves(TENT, R)
    # Lines at 45 degrees moved out by R reach the ground R x sqrt 2 further out.
    assert left[0].point_at(0.0) == pytest.approx((-2.0 - R * math.sqrt(2), 0.0))
    assert left[-1].point_at(left[-1].length_m) == pytest.approx((0.0, 2.0 + R))
    for one, other in zip(left, right, strict=True):
        assert one.point_at(0.0) == pytest.approx(other.point_at(0.0))
    length_m = sum(s.length_m for s in (*left, *right))
    # Each slope: 2 sqrt 2, and R more down to the ground; the ridge turns by a right angle.
    assert length_m == pytest.approx(2 * (2 * math.sqrt(2) + R) + R * math.pi / 2, rel=1e-4)


def test_a_dent_is_cut_where_the_moved_lines_cross() -> None:
    # From 45 degrees to plumb at (-1, 1): the lines y = x + 2 + R sqrt 2 and x = -1 - R cross.
    left, _right = measured_halves(((-2.0, 0.0), (-1.0, 1.0), (-1.0, 2.0), (1.0, 0.0)), R)
    crossing = (-1.0 - R, 1.0 - R + R * math.sqrt(2))
    assert left[0].point_at(left[0].length_m) == pytest.approx(crossing)


def test_a_dent_narrower_than_the_tube_is_bridged() -> None:
    narrow = ((-2.0, 0.0), (-1.01, 1.0), (-1.0, 1.001), (-1.01, 1.02), (0.0, 3.0), (2.0, 0.0))
    left, _right = measured_halves(narrow, R)
    heights = [left[0].point_at(0.0)[1], *(s.point_at(s.length_m)[1] for s in left)]
    assert heights == sorted(heights)
    for before, after in pairwise(left):
        assert before.point_at(before.length_m) == pytest.approx(after.point_at(0.0))
