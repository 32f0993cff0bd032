"""Readings of a frame: what is refused, in which words, and how they are changed."""

import math

import pytest

from hoopwright.farm import BowReading, RoundBow, SideReading, StraightRafters, Tape
from hoopwright.farm.change_tape import suggested_bows, with_bow_value
from hoopwright.farm.half_width import half_width
from samples import round_profile, tunnel


def test_a_bow_that_is_not_there_is_refused_by_its_number() -> None:
    with pytest.raises(ValueError, match="there is no bow 18; this tunnel has 17 bows, which make"):
        with_bow_value(tunnel(), 18, ("over_hips_m",), 9.5)


def test_a_girth_shorter_than_the_straight_line_over_the_ridge_is_refused() -> None:
    # By hand: hips at 1.5 m on legs 8 m apart, ridge at 3.7 m: 2 sqrt(4^2 + 2.2^2) = 9.130 m.
    straight_m = 2 * math.hypot(4.0, 2.2)
    assert straight_m == pytest.approx(9.130, abs=5e-4)
    with pytest.raises(
        ValueError, match=r"over_hips_m: 9\.100 m at bow 3 is shorter .* \(9\.130 m"
    ):
        with_bow_value(tunnel(), 3, ("over_hips_m",), 9.1)
    kept = with_bow_value(tunnel(), 3, ("over_hips_m",), 9.14)
    assert kept.frame.tape.at(3).over_hips_m == 9.14


def test_the_whole_girth_must_be_longer_than_that_of_the_roof() -> None:
    row = with_bow_value(tunnel(), 2, ("over_hips_m",), 9.6)
    with pytest.raises(ValueError, match=r"over_baseboards_m: .* must be longer"):
        with_bow_value(row, 2, ("over_baseboards_m",), 9.5)


def test_a_hip_board_below_its_ground_is_refused() -> None:
    with pytest.raises(ValueError, match="hip_m: the hip board must be above the ground"):
        SideReading(hip_m=0.5, ground_m=0.6)


def test_rows_out_of_order_are_refused() -> None:
    with pytest.raises(ValueError, match="enter each bow once"):
        Tape(bows=(BowReading(bow=3, dip_m=0.0), BowReading(bow=2, dip_m=0.0)))


@pytest.mark.parametrize("name", ["hip_lengths_m", "diagonals_m", "leans_m"])
def test_a_length_no_tunnel_has_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match=name):
        Tape(**{name: (None, math.nan)})


def test_readings_are_kept_in_order_and_an_empty_row_goes() -> None:
    once = with_bow_value(tunnel(), 9, ("dip_m",), 0.02)
    twice = with_bow_value(once, 1, ("sides", 1, "hip_m"), 1.52)
    assert [row.bow for row in twice.frame.tape.bows] == [1, 9]
    assert twice.frame.tape.at(1).sides[1].hip_m == 1.52
    gone = with_bow_value(twice, 9, ("dip_m",), None)
    assert [row.bow for row in gone.frame.tape.bows] == [1]
    assert with_bow_value(gone, 1, ("sides", 1, "hip_m"), None).frame.tape.is_empty


def test_five_bows_are_suggested_from_end_to_end() -> None:
    assert suggested_bows(tunnel()) == (1, 5, 9, 13, 17)


def test_half_width_of_a_round_bow_is_that_of_its_circle() -> None:
    # By hand: half span 4, rise 2.2: R = (16 + 4.84) / 4.4 = 4.7364; centre at 3.7 - R.
    radius_m = (4.0**2 + 2.2**2) / (2 * 2.2)
    up_m = 2.5 - (3.7 - radius_m)
    expected_m = math.sqrt(radius_m**2 - up_m**2)
    assert half_width(round_profile(), 2.5, 0) == pytest.approx(expected_m)
    assert half_width(round_profile(), 1.0, 1) == 4.0


def test_half_width_never_passes_a_bent_corner() -> None:
    sharp = StraightRafters(span_m=8, leg_height_m=2, peak_height_m=3.5)
    bent = sharp.but(corner_radius_m=0.5)
    for height_m in (1.9, 2.0, 2.05):
        assert half_width(bent, height_m, 0) < half_width(sharp, height_m, 0) or height_m < 1.8
    assert half_width(sharp, 2.75, 0) == pytest.approx(2.0)


def test_half_circle_is_as_wide_as_its_span_at_the_foot() -> None:
    assert half_width(RoundBow(span_m=6, leg_height_m=0, peak_height_m=3), 0.0, 0) == 3.0
