"""The outside of a bow against polygons: lengths, areas, distance from the centre line."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon, box

from hoopwright.farm import AcrossUp, GothicBow, MeasuredBow, RoundBow, StraightRafters
from hoopwright.farm.measured_bow import BowJoin
from hoopwright.farm.profile import Profile
from hoopwright.survey.bow_curve import BowCurve, bow_curve
from profiles import profiles, scaled

TUBE_M = 0.06
SHAPES: dict[str, Profile] = {
    "round on legs": RoundBow(span_m=8.0, leg_height_m=1.5, peak_height_m=3.7),
    "round without legs": RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=3.0),
    "half circle": RoundBow(span_m=6.0, leg_height_m=1.2, peak_height_m=4.2),
    "horseshoe": RoundBow(span_m=4.0, leg_height_m=0.0, peak_height_m=2.6),
    "horseshoe on legs": RoundBow(span_m=4.0, leg_height_m=0.8, peak_height_m=3.4),
    "horseshoe on stumps": RoundBow(span_m=4.0, leg_height_m=0.005, peak_height_m=2.7),
    "gothic without kink": GothicBow(span_m=7.0, leg_height_m=1.5, peak_height_m=5.3),
    "gothic": GothicBow(span_m=8.0, leg_height_m=1.2, peak_height_m=3.9, arc_radius_m=6.0),
    "gothic without legs": GothicBow(
        span_m=8.0, leg_height_m=0.0, peak_height_m=3.9, arc_radius_m=7.0
    ),
    "gothic that bulges": GothicBow(
        span_m=5.0, leg_height_m=1.0, peak_height_m=4.6, arc_radius_m=2.8
    ),
    "sharp rafters": StraightRafters(span_m=6.0, leg_height_m=2.0, peak_height_m=3.2),
    "rafters on the ground": StraightRafters(span_m=6.0, leg_height_m=0.0, peak_height_m=3.2),
    "bent rafters": StraightRafters(
        span_m=6.0, leg_height_m=2.0, peak_height_m=3.4, corner_radius_m=0.6, ridge_radius_m=0.5
    ),
}
each_shape = pytest.mark.parametrize("profile", SHAPES.values(), ids=SHAPES)


def _line(curve: BowCurve) -> LineString:
    return LineString(curve.outline(0.0005))


@each_shape
@pytest.mark.parametrize("tube_m", [0.0, TUBE_M])
def test_length_area_and_sizes_agree_with_a_fine_polygon(profile: Profile, tube_m: float) -> None:
    curve = bow_curve(profile, tube_m)
    line = _line(curve)
    left, low, right, high = line.bounds
    assert line.is_simple
    assert curve.length_m == pytest.approx(line.length, rel=1e-6)
    assert curve.area_m2 == pytest.approx(Polygon(line.coords).area, rel=1e-6)
    assert curve.width_m == pytest.approx(right - left, abs=1e-6)
    assert curve.height_m == pytest.approx(high, abs=1e-6)
    assert low == pytest.approx(0.0, abs=1e-9)


@each_shape
def test_outside_lies_half_a_tube_from_the_centre_line(profile: Profile) -> None:
    # Legs are lengthened below the ground, so that the tube does not end at the ground line.
    centre = _line(bow_curve(profile, 0.0)).coords
    (x0, y0), (x1, y1) = centre[0], centre[1]
    reach = 0.2 / math.hypot(x1 - x0, y1 - y0)
    foot = (x0 - reach * (x1 - x0), y0 - reach * (y1 - y0))
    below = LineString([foot, *centre, (-foot[0], foot[1])])
    for x_m, y_m in bow_curve(profile, TUBE_M).outline(0.05):
        assert Point(x_m, y_m).distance(below) == pytest.approx(TUBE_M / 2, abs=2e-5)


@each_shape
def test_outside_bounds_the_tube_as_a_buffer_does(profile: Profile) -> None:
    centre = Polygon(_line(bow_curve(profile, 0.0)).coords)
    above = box(-100, 0.3, 100, 100)
    grown = centre.buffer(TUBE_M / 2, quad_segs=64).intersection(above)
    outside = Polygon(_line(bow_curve(profile, TUBE_M)).coords).intersection(above)
    # At the notch under an arc that bulges past its leg, both end where the two lines cross.
    assert outside.symmetric_difference(grown).area < 1e-4 * grown.area


@pytest.mark.parametrize(
    "name", ["round on legs", "half circle", "gothic without kink", "gothic", "bent rafters"]
)
def test_outside_is_longer_by_half_a_turn_of_half_the_tube(name: str) -> None:
    # From one plumb leg to the other the direction turns by half a turn, corners included:
    # the outside is longer by half the tube times pi, whatever the shape.
    extra_m = bow_curve(SHAPES[name], TUBE_M).length_m - bow_curve(SHAPES[name], 0.0).length_m
    assert extra_m == pytest.approx(math.pi * TUBE_M / 2, rel=1e-6)


@each_shape
def test_positions_and_heights_are_found_back(profile: Profile) -> None:
    curve = bow_curve(profile, TUBE_M)
    for share in (0.0, 0.1, 0.35, 0.6, 0.9, 1.0):
        height_m = share * curve.height_m
        left_m = curve.position_at_height(height_m, 0)
        right_m = curve.position_at_height(height_m, 1)
        assert left_m + right_m == pytest.approx(curve.length_m)
        (x0, y0), (x1, y1) = curve.point_at(left_m), curve.point_at(right_m)
        assert (y0, y1) == pytest.approx((height_m, height_m), abs=1e-9)
        assert x0 == pytest.approx(-x1, abs=1e-6)
        assert x0 <= 1e-6


@each_shape
def test_length_between_heights_agrees_with_a_cut_polygon(profile: Profile) -> None:
    curve = bow_curve(profile, TUBE_M)
    low_m, high_m = 0.2 * curve.height_m, 0.7 * curve.height_m
    band = _line(curve).intersection(box(-100, low_m, 0, high_m))
    along_m = curve.position_at_height(high_m, 0) - curve.position_at_height(low_m, 0)
    assert along_m == pytest.approx(band.length, abs=1e-5)


def _measured(join: BowJoin, *points: tuple[float, float], span_m: float = 8.0) -> MeasuredBow:
    taken = tuple(AcrossUp(across_m=x, up_m=y) for x, y in points)
    return MeasuredBow(span_m=span_m, points=taken, join=join)


LEANING = ((0.1, 1.4), (2.4, 2.9), (4.6, 3.5), (6.6, 2.6), (8.1, 1.2))
DENTED = ((0.0, 1.5), (1.0, 2.9), (2.2, 3.1), (3.4, 4.0), (6.8, 2.9), (8.3, 1.6))
MEASURED = {
    "curve": _measured("curve", *LEANING),
    "corners": _measured("corners", *LEANING),
    "dented curve": _measured("curve", *DENTED),
    "dented corners": _measured("corners", *DENTED),
}
each_measured = pytest.mark.parametrize("bow", MEASURED.values(), ids=MEASURED)


@each_measured
@pytest.mark.parametrize("tube_m", [0.0, TUBE_M])
def test_measured_sizes_agree_with_a_polygon(bow: MeasuredBow, tube_m: float) -> None:
    curve = bow_curve(bow, tube_m)
    line = _line(curve)
    left, low, right, high = line.bounds
    assert line.is_simple
    assert curve.length_m == pytest.approx(line.length)
    assert curve.area_m2 == pytest.approx(Polygon(line.coords).area)
    assert curve.width_m == pytest.approx(right - left)
    assert curve.height_m == pytest.approx(high)
    highest = max(line.coords, key=lambda spot: spot[1])
    assert curve.point_at(curve.ridge_m) == pytest.approx(highest)
    assert low == pytest.approx(0.0, abs=1e-9)


@each_measured
def test_measured_outside_lies_half_a_tube_from_the_measured_line(bow: MeasuredBow) -> None:
    spots = [(x, y) for x, y in bow.line if y > 0]
    # Both ends run on below the ground the way they come.
    ends = [
        (x0 + (x0 - x1) * 0.2 / math.dist((x0, y0), (x1, y1)), y0 - 0.2)
        for (x0, y0), (x1, y1) in (
            ((-bow.span_m / 2, 0.0), spots[0]),
            ((bow.span_m / 2, 0.0), spots[-1]),
        )
    ]
    middle = LineString([ends[0], (-bow.span_m / 2, 0), *spots, (bow.span_m / 2, 0), ends[1]])
    outside = middle.offset_curve(TUBE_M / 2, quad_segs=64).intersection(box(-50, 0.1, 50, 50))
    taken = _line(bow_curve(bow, TUBE_M)).intersection(box(-50, 0.1, 50, 50))
    assert taken.hausdorff_distance(outside) < 2e-4
    assert taken.length == pytest.approx(outside.length, abs=1e-3)


@each_measured
def test_measured_heights_are_found_on_each_side(bow: MeasuredBow) -> None:
    curve = bow_curve(bow, TUBE_M)
    for share in (0.0, 0.1, 0.35, 0.6, 0.9, 1.0):
        height_m = share * curve.height_m
        left_m, right_m = (curve.position_at_height(height_m, side) for side in (0, 1))
        assert left_m <= curve.ridge_m <= right_m
        for at_m in (left_m, right_m):
            assert curve.point_at(at_m)[1] == pytest.approx(height_m, abs=1e-6)
    for height_m in (-0.1, curve.height_m + 0.01):
        for side in (0, 1):
            with pytest.raises(ValueError, match="height_m"):
                curve.position_at_height(height_m, side)


@each_measured
def test_measured_length_between_heights_agrees_with_a_cut_line(bow: MeasuredBow) -> None:
    curve = bow_curve(bow, TUBE_M)
    peak_x_m = curve.point_at(curve.ridge_m)[0]
    for side, reach in enumerate(((-50.0, peak_x_m), (peak_x_m, 50.0))):
        band = _line(curve).intersection(box(reach[0], 0.5, reach[1], 2.0))
        along_m = abs(curve.position_at_height(2.0, side) - curve.position_at_height(0.5, side))
        assert along_m == pytest.approx(band.length, abs=1e-6)


def test_a_bow_measured_in_the_mirror_has_its_sides_changed() -> None:
    mirrored = _measured("curve", *((8.0 - x, y) for x, y in reversed(LEANING)))
    one, other = (bow_curve(bow, TUBE_M) for bow in (MEASURED["curve"], mirrored))
    assert other.length_m == pytest.approx(one.length_m)
    assert other.ridge_m == pytest.approx(one.length_m - one.ridge_m)
    assert other.position_at_height(1.5, 0) == pytest.approx(
        one.length_m - one.position_at_height(1.5, 1)
    )


@pytest.mark.parametrize("name", ["half circle", "bent rafters"])
def test_many_points_on_a_bow_give_that_bow(name: str) -> None:
    # Points on the true centre line; a straight leg wants points of its own.
    true = bow_curve(SHAPES[name], 0.0)
    half_m = SHAPES[name].span_m / 2
    points = [true.point_at(true.length_m * k / 30) for k in range(1, 30)]
    made = _measured("curve", *((x + half_m, y) for x, y in points), span_m=2 * half_m)
    bow, bent = bow_curve(made, TUBE_M), bow_curve(SHAPES[name], TUBE_M)
    assert bow.length_m == pytest.approx(bent.length_m, rel=1e-3)
    assert bow.area_m2 == pytest.approx(bent.area_m2, rel=1e-3)
    assert bow.height_m == pytest.approx(bent.height_m, abs=2e-3)


def test_straight_joins_turn_half_a_turn_round_the_tube() -> None:
    # Plumb at both feet: the outside is longer by pi x half the tube, corners included.
    bow = _measured("corners", (0.0, 1.6), (3.0, 3.0), (8.0, 1.2))
    extra_m = bow_curve(bow, TUBE_M).length_m - bow_curve(bow, 0.0).length_m
    assert extra_m == pytest.approx(math.pi * TUBE_M / 2, rel=5e-4)


def test_height_off_the_bow_is_refused() -> None:
    curve = bow_curve(SHAPES["round on legs"], TUBE_M)
    for height_m in (-0.1, curve.height_m + 0.01):
        with pytest.raises(ValueError, match="height_m"):
            curve.position_at_height(height_m, 0)


def test_outline_keeps_ends_and_corners() -> None:
    curve = bow_curve(SHAPES["sharp rafters"], 0.0)
    assert curve.outline(1.0) == ((-3.0, 0.0), (-3.0, 2.0), (0.0, 3.2), (3.0, 2.0), (3.0, 0.0))


def test_points_beyond_the_ends_stay_at_the_ends() -> None:
    curve = bow_curve(SHAPES["half circle"], 0.0)
    assert curve.point_at(-1.0) == (-3.0, 0.0)
    assert curve.point_at(curve.length_m + 1) == pytest.approx((3.0, 0.0))


@given(profiles(), st.floats(0.0, 0.1), st.sampled_from([0.75, 2.0]))
def test_all_lengths_grow_with_the_scale(profile: Profile, tube_m: float, factor: float) -> None:
    small, large = bow_curve(profile, tube_m), bow_curve(scaled(profile, factor), factor * tube_m)
    assert large.length_m == pytest.approx(factor * small.length_m, rel=1e-6)
    assert large.width_m == pytest.approx(factor * small.width_m, rel=1e-6)
    assert large.area_m2 == pytest.approx(factor**2 * small.area_m2, rel=1e-6)


@given(profiles(), st.floats(0.0, 0.1))
def test_every_bow_is_one_unbroken_line_from_ground_to_ground(
    profile: Profile, tube_m: float
) -> None:
    curve = bow_curve(profile, tube_m)
    for before, after in zip(curve.segments, curve.segments[1:], strict=False):
        assert before.point_at(before.length_m) == pytest.approx(after.point_at(0.0), abs=1e-6)
    ends = (curve.outline()[0], curve.outline()[-1])
    assert [y for _, y in ends] == pytest.approx([0.0, 0.0], abs=1e-6)
    assert all(segment.length_m > 0 for segment in curve.segments)
