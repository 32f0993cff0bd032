"""The outline of an end wall and what lies in it, checked with shapely and by hand."""

import math

import pytest
from shapely import Polygon, box
from shapely.ops import unary_union

from hoopwright.cover.end_shape import EndShape, clipped_m2, end_shape
from hoopwright.farm import MeasuredBow, RoundBow
from hoopwright.farm.end_places import Box
from hoopwright.farm.measured_bow import AcrossUp
from hoopwright.farm.profile import Profile
from hoopwright.survey.bow_curve import bow_curve
from samples import gothic_profile, rafter_profile, round_profile

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
HORSESHOE = RoundBow(span_m=4.0, leg_height_m=0.0, peak_height_m=3.0)
LOPSIDED = MeasuredBow(
    span_m=8.0,
    join="corners",
    points=(
        AcrossUp(across_m=-0.3, up_m=1.5),
        AcrossUp(across_m=3.0, up_m=3.6),
        AcrossUp(across_m=7.0, up_m=1.8),
    ),
)
PROFILES = [round_profile(), gothic_profile(), rafter_profile(), HORSESHOE, LOPSIDED]
BOXES = (
    Box(-1.0, 0.0, 1.4, 2.1),
    Box(0.8, 1.0, 2.0, 3.4),
    Box(-9.0, 0.5, -1.5, 1.2),
    Box(-0.4, 2.6, 0.3, 9.0),
)


def shape_of(profile: Profile, number: int = 0, tube_m: float = 0.0) -> EndShape:
    return end_shape(bow_curve(profile, tube_m), number)


def test_reach_of_a_half_circle_is_that_of_pythagoras() -> None:
    shape = shape_of(HALF_CIRCLE)
    # At 2.4 m: sqrt(16 - 5.76) = 3.2 m.
    assert shape.reach_at(2.4) == pytest.approx((-3.2, 3.2))
    assert shape.room(0.0, 2.4) == pytest.approx((-3.2, 3.2))
    assert shape.widest(2.4, 4.0) == pytest.approx((-3.2, 3.2))
    assert shape.room(0.0, 4.1) == (math.inf, -math.inf)


def test_a_horseshoe_is_widest_above_the_ground() -> None:
    # R = (2^2 + 3^2) / 6 = 2.16667 m, its centre at 0.83333 m.
    shape = shape_of(HORSESHOE)
    assert shape.widest(0.0, 3.0) == pytest.approx((-13 / 6, 13 / 6), abs=1e-9)
    assert shape.room(0.0, 1.0) == pytest.approx((-2.0, 2.0), abs=1e-9)
    assert shape.widest(2.0, 3.0)[1] == pytest.approx(math.sqrt((13 / 6) ** 2 - (7 / 6) ** 2))


def test_the_back_end_is_seen_from_the_other_side() -> None:
    front, back = shape_of(LOPSIDED, 0), shape_of(LOPSIDED, 1)
    assert back.outline == tuple((-x, y) for x, y in reversed(front.outline))
    left_m, right_m = front.reach_at(1.5)
    assert (left_m, right_m) == pytest.approx((-4.3, 4.0 - 1.5 / 1.8))
    assert back.reach_at(1.5) == pytest.approx((-right_m, -left_m))
    assert back.height_m == pytest.approx(3.6)


@pytest.mark.parametrize("profile", PROFILES)
@pytest.mark.parametrize("number", [0, 1])
def test_openings_cover_what_another_library_finds(profile: Profile, number: int) -> None:
    shape = shape_of(profile, number, 0.048)
    wall = Polygon(shape.outline)
    rectangles = [box(b.left_m, b.low_m, b.right_m, b.high_m) for b in BOXES]
    expected = unary_union(rectangles).intersection(wall).area
    assert shape.covered_m2(BOXES) == pytest.approx(expected, abs=2e-3)
    for one, rectangle in zip(BOXES, rectangles, strict=True):
        assert shape.holds(one) == wall.buffer(2e-4).contains(rectangle)
        assert clipped_m2(shape.outline, one) == pytest.approx(wall.intersection(rectangle).area)


def test_an_opening_in_the_wall_counts_to_the_last_digit() -> None:
    assert shape_of(HALF_CIRCLE).covered_m2((Box(-1.2, 0.0, 1.2, 2.1),)) == pytest.approx(
        2.4 * 2.1, rel=1e-12
    )
    assert shape_of(HALF_CIRCLE).covered_m2(()) == 0.0


def test_what_touches_the_outline_lies_in_it_and_what_is_below_the_ground_does_not() -> None:
    shape = shape_of(HALF_CIRCLE)
    assert shape.holds(Box(-3.2, 0.0, 3.2, 2.4))
    assert not shape.holds(Box(-3.21, 0.0, 3.2, 2.4))
    assert not shape.holds(Box(-1.0, -0.1, 1.0, 1.0))


def test_the_highest_place_over_a_stretch() -> None:
    # x = 2.4 m: sqrt(16 - 5.76) = 3.2 m high; over the middle the ridge at 4 m.
    shape = shape_of(HALF_CIRCLE)
    assert shape.highest(2.4, 3.9) == pytest.approx(3.2, abs=1e-4)
    assert shape.highest(-0.6, 0.6) == pytest.approx(4.0)
    assert shape.highest(5.0, 6.0) == 0.0
