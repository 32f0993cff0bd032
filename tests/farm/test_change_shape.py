"""Bows change their shape, and measured ones point by point."""

import math

import pytest

from hoopwright.farm import AcrossUp, MeasuredBow, RoundBow, Tunnel, TwoTapes
from hoopwright.farm.change_shape import (
    add_point,
    outline_step,
    point_taken,
    remove_point,
    straight_leg,
    with_point_taken,
    with_shape,
)
from samples import rafter_tunnel, tunnel

# A bow on legs of 1.5 m whose ridge is off the middle of a span of 8 m.
POINTS = ((0.0, 1.5), (2.0, 3.0), (4.5, 3.7), (7.0, 2.6), (8.0, 1.6))


def measured(points: tuple[tuple[float, float], ...] = POINTS) -> Tunnel:
    plain = tunnel()
    bow = MeasuredBow(span_m=8.0, points=tuple(AcrossUp(across_m=x, up_m=y) for x, y in points))
    return plain.but(frame=plain.frame.but(profile=bow))


def bow_of(made: Tunnel) -> MeasuredBow:
    assert isinstance(made.frame.profile, MeasuredBow)
    return made.frame.profile


def test_measured_bow_starts_from_the_outline_of_the_shape_before() -> None:
    outline = ((-4.0, 0.0), (-4.0, 1.5), (-2.0, 3.2), (0.0, 3.7), (2.0, 3.2), (4.0, 1.5), (4.0, 0))
    assert bow_of(with_shape(tunnel(), "measured", outline)).spots == outline


@pytest.mark.parametrize(
    ("leg_m", "peak_m", "join"),
    [(1.5, 3.7, "corners"), (0.0, 3.7, "curve"), (1.5, 5.5, "curve")],
)
def test_points_of_a_bow_without_a_kink_are_joined_smoothly(
    leg_m: float, peak_m: float, join: str
) -> None:
    # Over 8 m an arc that rises 4 m leaves its legs without a kink.
    plain = tunnel(RoundBow(span_m=8.0, leg_height_m=leg_m, peak_height_m=peak_m))
    outline = ((-4.0, 0.0), (-3.0, 2.0), (0.0, peak_m), (3.0, 2.0), (4.0, 0.0))
    assert bow_of(with_shape(plain, "measured", outline)).join == join
    assert bow_of(with_shape(rafter_tunnel(), "measured", outline)).join == "corners"


def test_bends_of_rafters_get_points_closer_together() -> None:
    # 8 m in 40 steps, and in 12.
    assert outline_step(rafter_tunnel().frame.profile) == pytest.approx(0.2)
    assert outline_step(tunnel().frame.profile) == pytest.approx(8 / 12)


def test_round_bow_takes_span_leg_and_peak_of_a_measured_one() -> None:
    made = with_shape(measured(), "round", ()).frame.profile
    # The legs stand upright to 1.5 m on the first side and to 1.6 m on the second.
    assert made == RoundBow(span_m=8.0, leg_height_m=1.5, peak_height_m=3.7)


def test_the_shape_it_has_changes_nothing() -> None:
    plain = measured()
    assert with_shape(plain, "measured", ()) is plain


def test_shape_that_cannot_stand_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="points: enter at least three"):
        with_shape(tunnel(), "measured", ((-4.0, 0.0), (0.0, 3.7), (4.0, 0.0)))


def test_bow_that_leans_from_its_foot_has_no_leg() -> None:
    leaning = measured(((0.3, 1.0), (4.0, 3.7), (7.9, 1.0)))
    assert straight_leg(bow_of(leaning)) == 0.0


def test_point_is_told_by_two_tapes_and_back() -> None:
    taped = with_point_taken(measured(), 1, "two_tapes")
    point = bow_of(taped).points[1]
    assert isinstance(point, TwoTapes)
    assert point_taken(point) == "two_tapes"
    # 2 m across and 3 m up: sqrt(4 + 9) from one foot, sqrt(36 + 9) from the other, 8 m away.
    assert point.first_m == pytest.approx(math.sqrt(13))
    assert point.second_m == pytest.approx(math.sqrt(45))
    back = bow_of(with_point_taken(taped, 1, "across_up")).points[1]
    assert isinstance(back, AcrossUp)
    assert (back.across_m, back.up_m) == (pytest.approx(2.0), pytest.approx(3.0))


def test_point_is_added_in_the_longest_gap() -> None:
    # From (4.5, 3.7) to (7.0, 2.6) are 2.73 m, more than between any others (2.50, 2.60, 1.41).
    more = bow_of(add_point(measured()))
    assert len(more.points) == 6
    point = more.points[3]
    assert isinstance(point, AcrossUp)
    assert (point.across_m, point.up_m) == (pytest.approx(5.75), pytest.approx(3.15))


def test_point_is_taken_away_but_three_stay() -> None:
    fewer = remove_point(measured(), 1)
    assert bow_of(fewer).points == (bow_of(measured()).points[0], *bow_of(measured()).points[2:])
    three = remove_point(fewer, 0)
    with pytest.raises(ValueError, match="at least three points"):
        remove_point(three, 0)
