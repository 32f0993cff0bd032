"""Openings in an end wall: where they stand and what room the bow leaves, checked with shapely."""

import math

import pytest
from shapely import Polygon, box

from hoopwright.farm import Cut, Door, End, MeasuredBow, RoundBow, TwoTapes
from hoopwright.farm.end_places import (
    Box,
    door_lefts,
    free_spot,
    highest_sill,
    opening_boxes,
    reach_at,
    room_across,
)
from hoopwright.farm.measured_bow import AcrossUp
from samples import gothic_profile, rafter_profile, round_profile

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
LOPSIDED = MeasuredBow(
    span_m=8.0,
    points=(
        AcrossUp(across_m=0.2, up_m=1.5),
        TwoTapes(first_m=math.hypot(3, 3.6), second_m=math.hypot(5, 3.6)),
        AcrossUp(across_m=7.0, up_m=1.8),
    ),
)


def test_doors_are_spread_evenly_and_a_placed_one_moves_no_other() -> None:
    # 10 m less 1 m and 3 m leaves 6 m: three gaps of 2 m.
    doors = (Door(width_m=1.0, height_m=2.0), Door(width_m=3.0, height_m=2.0))
    assert door_lefts(End(name="Front", film=None, doors=doors), 10.0) == (-3.0, 0.0)
    placed = End(name="Front", film=None, doors=(doors[0].but(left_m=-4.5), doors[1]))
    assert door_lefts(placed, 10.0) == (-4.5, 0.0)


def test_openings_are_rectangles() -> None:
    cut = Cut(left_m=1.0, sill_m=2.0, width_m=0.6, height_m=0.5)
    end = End(name="Front", film=None, doors=(Door(width_m=2.0, height_m=2.1),), cuts=(cut,))
    assert opening_boxes(end, 8.0) == ((Box(-1.0, 0.0, 1.0, 2.1),), (Box(1.0, 2.0, 1.6, 2.5),))


def test_reach_of_a_half_circle_is_that_of_pythagoras() -> None:
    # At 2.4 m in a half circle of 4 m: sqrt(16 - 5.76) = 3.2 m.
    assert reach_at(HALF_CIRCLE, 0, 2.4) == pytest.approx((-3.2, 3.2))
    assert room_across(HALF_CIRCLE, 0, 0.0, 2.4) == pytest.approx((-3.2, 3.2))


def test_an_unsymmetrical_bow_is_mirrored_at_the_back() -> None:
    # The ridge stands 3 m from the first foot of 8 m: 1 m left of the middle.
    left_m, right_m = reach_at(LOPSIDED, 0, 1.6)
    assert reach_at(LOPSIDED, 1, 1.6) == (-right_m, -left_m)
    # Straight from (0.2, 1.5) to (3.0, 3.6): 0.1 m up of 2.1 is 0.1333 m of 2.8 across.
    assert left_m == pytest.approx(-4.0 + 0.2 + 2.8 / 21)
    # Straight from the second foot (8.0, 0.0) to (7.0, 1.8): 1.6 of 1.8 is 0.8889 m across.
    assert right_m == pytest.approx(4.0 - 1.6 / 1.8)


@pytest.mark.parametrize("profile", [round_profile(), gothic_profile(), rafter_profile(), LOPSIDED])
@pytest.mark.parametrize("number", [0, 1])
def test_an_opening_as_high_as_it_goes_lies_in_the_bow(profile: RoundBow, number: int) -> None:
    sill_m = highest_sill(profile, number, 0.6, 0.5)
    left_m, right_m = room_across(profile, number, sill_m, sill_m + 0.5)
    assert right_m - left_m >= 0.6
    steps = [n * 0.01 for n in range(round(profile.peak_height_m / 0.01))]
    sides = [reach_at(profile, number, y) for y in steps]
    wall = Polygon(
        [(x, y) for (x, _r), y in zip(sides, steps, strict=True)]
        + [(r, y) for (_x, r), y in reversed(list(zip(sides, steps, strict=True)))]
    )
    fitted = box(left_m, sill_m, left_m + 0.6, sill_m + 0.5)
    assert fitted.difference(wall.buffer(0.005)).area < 1e-6
    assert highest_sill(profile, number, 0.6, 0.5) > highest_sill(profile, number, 2.0, 0.5)


def test_what_has_room_nowhere_stays_on_the_ground() -> None:
    assert highest_sill(HALF_CIRCLE, 0, 9.0, 0.5) == 0.0
    assert highest_sill(HALF_CIRCLE, 0, 0.5, 5.0) == 0.0


def test_the_nearest_free_place_is_beside_what_is_in_the_way() -> None:
    wanted = Box(-0.5, 1.0, 0.5, 2.0)
    assert free_spot(HALF_CIRCLE, 0, wanted, (), on_ground=False) == wanted
    taken = Box(-0.3, 0.0, 1.7, 2.6)
    spot = free_spot(HALF_CIRCLE, 0, wanted, (taken,), on_ground=False)
    # To the left by 0.8 m, until its right edge meets the left edge of the other.
    assert spot is not None
    edges = (spot.left_m, spot.low_m, spot.right_m, spot.high_m)
    assert edges == pytest.approx((-1.3, 1.0, -0.3, 2.0))
    assert not spot.overlaps(taken)
    assert spot.overlaps(wanted)


def test_an_opening_larger_than_the_wall_has_no_place() -> None:
    assert free_spot(HALF_CIRCLE, 0, Box(-5.0, 0.0, 5.0, 2.0), (), on_ground=True) is None
    assert free_spot(HALF_CIRCLE, 0, Box(-1.0, 0.0, 1.0, 4.5), (), on_ground=True) is None
    assert free_spot(HALF_CIRCLE, 0, Box(-1.0, 0.0, 1.0, 4.5), (), on_ground=False) is None
