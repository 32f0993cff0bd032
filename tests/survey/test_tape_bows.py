"""Bows from string and tape, against circles drawn by hand.

The circle of radius 5 m with a chord of 8 m has its centre 3 m below the chord (3-4-5 triangle), so
it rises 2 m; the half angle is asin 4/5 and the bend is 10 asin 0.8 m long.
"""

import math

import pytest

from hoopwright.survey.tape_bows import bow_from_string, bow_from_tape


def test_a_short_string_tells_the_rise_of_the_whole_bow() -> None:
    # A string of 6 m on the same circle stands 5 - 4 = 1 m off.
    taped = bow_from_string(8.0, 1.5, 6.0, 1.0)
    assert taped.radius_m == pytest.approx(5.0)
    assert taped.rise_m == pytest.approx(2.0)
    assert taped.bow.peak_height_m == pytest.approx(3.5)
    assert taped.bow.span_m == 8.0


def test_a_bend_too_tight_for_its_span_is_refused_at_the_offset() -> None:
    with pytest.raises(ValueError, match=r"^offset_m: .*too tight"):
        bow_from_string(12.0, 1.5, 6.0, 1.0)


@pytest.mark.parametrize(
    ("half_angle", "rise_m"), [(math.asin(0.8), 2.0), (math.pi - math.asin(0.8), 8.0)]
)
def test_a_tape_along_and_across_tells_a_flat_and_a_high_bow(
    half_angle: float, rise_m: float
) -> None:
    taped = bow_from_tape(1.0, 10 * half_angle, 8.0)
    assert taped.radius_m == pytest.approx(5.0, rel=1e-9)
    assert taped.rise_m == pytest.approx(rise_m, rel=1e-9)
    assert taped.bow.leg_height_m == 1.0


@pytest.mark.parametrize("along_m", [8.0, 7.0])
def test_a_tape_not_longer_than_the_way_across_is_refused(along_m: float) -> None:
    with pytest.raises(ValueError, match=r"^along_m: "):
        bow_from_tape(1.0, along_m, 8.0)
