"""Bows through measured points: where two tapes meet, and what is refused."""

import pytest

from hoopwright.farm import AcrossUp, MeasuredBow, TwoTapes

FOOT_M = 0.3048


def bow(*points: AcrossUp | TwoTapes, span_m: float = 8.0) -> MeasuredBow:
    return MeasuredBow(span_m=span_m, points=points)


def at(across_m: float, up_m: float) -> AcrossUp:
    return AcrossUp(across_m=across_m, up_m=up_m)


ARCH = (at(1, 1.5), at(4, 3), at(7, 1.5))


def test_two_tapes_meet_where_two_circles_cross() -> None:
    # By hand, in feet: tapes 10 and 20, span 24: x = (100 - 400 + 576) / 48 = 5.75,
    # y = sqrt(100 - 5.75^2) = 8.182.
    tapes = TwoTapes(first_m=10 * FOOT_M, second_m=20 * FOOT_M)
    peak = at(12 * FOOT_M, 11 * FOOT_M)
    right = at(18.25 * FOOT_M, 8 * FOOT_M)
    x_m, y_m = bow(tapes, peak, right, span_m=24 * FOOT_M).spots[1]
    assert x_m / FOOT_M + 12 == pytest.approx(5.75)
    assert y_m / FOOT_M == pytest.approx(8.182, abs=5e-4)


def test_tapes_that_do_not_meet_are_refused_at_their_point() -> None:
    with pytest.raises(ValueError, match=r"points\[1\]: the two tapes of 3\.000 m and 4\.000 m"):
        bow(at(1, 1.5), TwoTapes(first_m=3, second_m=4), at(7, 1.5))


def test_fewer_than_three_points_are_refused() -> None:
    with pytest.raises(ValueError, match="at least three points"):
        bow(at(1, 1.5), at(4, 3))


def test_a_point_entered_twice_is_refused() -> None:
    with pytest.raises(ValueError, match=r"points\[1\]: the point lies on the one before it"):
        bow(at(1, 1.5), at(1.001, 1.5), at(4, 3), at(7, 1.5))


def test_a_point_below_the_one_before_it_is_refused_by_its_number() -> None:
    with pytest.raises(ValueError, match=r"points\[1\]: the bow must rise"):
        bow(at(1, 1.5), at(2, 1.2), at(4, 3), at(7, 1.5))
    with pytest.raises(ValueError, match=r"points\[3\]: the bow must rise"):
        bow(at(1, 1.5), at(4, 3), at(6, 1.5), at(7, 1.8))


def test_the_peak_is_the_highest_point() -> None:
    assert bow(*ARCH).peak_height_m == 3.0


def test_straight_joins_run_from_point_to_point() -> None:
    plain = bow(*ARCH).but(join="corners")
    assert plain.line == plain.spots


def test_smooth_curve_passes_through_every_point() -> None:
    curved = bow(*ARCH)
    assert len(curved.line) > 100
    for x_m, y_m in curved.spots:
        assert any((x, y) == pytest.approx((x_m, y_m)) for x, y in curved.line)


def test_points_that_make_a_smooth_curve_swing_are_refused_beside_the_swing() -> None:
    # A long level stretch after a steep rise: the curve would dip under it.
    steep = (at(0.05, 2.5), at(0.4, 2.55), at(4, 2.6), at(7.6, 2.55), at(7.95, 2.5))
    with pytest.raises(ValueError, match=r"points\[\d\]: the smooth curve swings up and down"):
        bow(*steep)
    assert MeasuredBow(span_m=8.0, points=steep, join="corners").peak_height_m == 2.6
