"""Straights and arcs against numerical integration."""

import math

import pytest
from scipy.integrate import quad

from hoopwright.survey.segment import Arc, Straight

RISING = Straight(-4.0, 0.5, -1.0, 2.5)
ARC = Arc(-0.5, 1.0, 3.0, math.radians(200.0), math.radians(95.0))


def _by_quad(segment: Straight | Arc) -> tuple[float, float]:
    """Integrate length and y dx over the points alone, by central differences."""
    length_m, step = segment.length_m, 1e-5

    def speed(s: float) -> tuple[float, float]:
        (x0, y0), (x1, y1) = segment.point_at(s - step), segment.point_at(s + step)
        return (x1 - x0) / (2 * step), (y1 - y0) / (2 * step)

    run_m = quad(lambda s: math.hypot(*speed(s)), 0, length_m)[0]
    area_m2 = quad(lambda s: segment.point_at(s)[1] * speed(s)[0], 0, length_m)[0]
    return run_m, area_m2


@pytest.mark.parametrize("segment", [RISING, ARC], ids=["straight", "arc"])
def test_length_and_area_agree_with_integration(segment: Straight | Arc) -> None:
    run_m, area_m2 = _by_quad(segment)
    assert segment.length_m == pytest.approx(run_m, rel=1e-8)
    assert segment.area_m2 == pytest.approx(area_m2, rel=1e-8)


@pytest.mark.parametrize("segment", [RISING, ARC], ids=["straight", "arc"])
def test_heading_points_along_the_segment(segment: Straight | Arc) -> None:
    for at_m, heading_rad in (
        (0.0, segment.start_heading_rad),
        (segment.length_m, segment.end_heading_rad),
    ):
        (x0, y0), (x1, y1) = segment.point_at(at_m - 1e-6), segment.point_at(at_m + 1e-6)
        assert math.cos(heading_rad) == pytest.approx((x1 - x0) / 2e-6, abs=1e-6)
        assert math.sin(heading_rad) == pytest.approx((y1 - y0) / 2e-6, abs=1e-6)


@pytest.mark.parametrize("segment", [RISING, ARC], ids=["straight", "arc"])
def test_shifting_moves_every_point_outward_by_the_distance(segment: Straight | Arc) -> None:
    moved = segment.shifted(0.25)
    for share in (0.0, 0.3, 1.0):
        x0, y0 = segment.point_at(share * segment.length_m)
        x1, y1 = moved.point_at(share * moved.length_m)
        heading_rad = (
            segment.start_heading_rad
            if isinstance(segment, Straight)
            else segment.start_heading_rad - share * segment.turn_rad
        )
        # Outside is on the left hand of the way: a quarter turn anticlockwise.
        assert x1 - x0 == pytest.approx(-0.25 * math.sin(heading_rad), abs=1e-12)
        assert y1 - y0 == pytest.approx(0.25 * math.cos(heading_rad), abs=1e-12)


@pytest.mark.parametrize("segment", [RISING, ARC], ids=["straight", "arc"])
def test_mirror_image_runs_back_on_the_other_side(segment: Straight | Arc) -> None:
    image = segment.mirrored()
    for share in (0.0, 0.25, 0.8, 1.0):
        x0, y0 = segment.point_at(share * segment.length_m)
        x1, y1 = image.point_at((1 - share) * image.length_m)
        assert (x1, y1) == pytest.approx((-x0, y0))


@pytest.mark.parametrize("segment", [RISING, ARC], ids=["straight", "arc"])
def test_height_is_found_where_it_lies(segment: Straight | Arc) -> None:
    for share in (0.1, 0.5, 0.9):
        along_m = share * segment.length_m
        assert segment.along_to(segment.point_at(along_m)[1]) == pytest.approx(along_m)


@pytest.mark.parametrize("segment", [RISING, ARC], ids=["straight", "arc"])
def test_grounded_segment_starts_on_the_ground_and_keeps_its_end(segment: Straight | Arc) -> None:
    standing = segment.grounded()
    assert standing.point_at(0.0)[1] == pytest.approx(0.0, abs=1e-12)
    assert standing.point_at(standing.length_m) == pytest.approx(segment.point_at(segment.length_m))


def test_reach_counts_the_widest_place_of_an_arc() -> None:
    points = [ARC.point_at(ARC.length_m * k / 5000)[0] for k in range(5001)]
    assert ARC.reach_m == pytest.approx((min(points), max(points)), abs=1e-6)
    assert RISING.reach_m == (-4.0, -1.0)
